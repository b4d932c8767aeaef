//! The committed examples and the program that assesses saved checks.

use serde_json::{Value, json};
use standfast_core::document::Document;
use standfast_core::report::assess;
use standfast_core::{example, units::GRAVITY};
use standfast_tests::draw::Draws;
use standfast_tests::{sensible, walk};
use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::{Command, Output, Stdio};
use std::sync::OnceLock;

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).parent().expect("workspace").to_owned()
}

fn examples() -> [(PathBuf, &'static str); 2] {
    let folder = root().join("core/examples");
    [(folder.join("three-wheel.json"), example::THREE_WHEEL), (folder.join("four-wheel.json"), example::FOUR_WHEEL)]
}

/// Builds the program once, and says where it is.
fn program() -> &'static Path {
    static PROGRAM: OnceLock<PathBuf> = OnceLock::new();
    PROGRAM.get_or_init(|| {
        let arguments = ["build", "--quiet", "-p", "standfast-core", "--example", "assess", "--message-format=json"];
        let built = Command::new(env!("CARGO")).args(arguments).current_dir(root()).output().expect("cargo runs");
        assert!(built.status.success(), "{}", String::from_utf8_lossy(&built.stderr));
        let messages = String::from_utf8(built.stdout).expect("cargo writes text");
        let executable =
            |line: &str| serde_json::from_str::<Value>(line).ok()?["executable"].as_str().map(PathBuf::from);
        messages.lines().filter_map(executable).next_back().expect("cargo names what it built")
    })
}

/// Runs the program with text on its standard input.
fn run(arguments: &[&str], input: &str) -> Output {
    let mut child = Command::new(program())
        .args(arguments)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .expect("the program starts");
    let mut stdin = child.stdin.take().expect("a pipe");
    std::thread::scope(|scope| {
        // On a thread of its own, so that neither side waits for the other with its pipe full.
        scope.spawn(move || stdin.write_all(input.as_bytes()).unwrap_or_default());
        child.wait_with_output().expect("the program ends")
    })
}

fn answer(output: &Output) -> Value {
    serde_json::from_slice(&output.stdout).expect("the answer is JSON")
}

/// Writes a file for one test; the name keeps tests apart.
fn file(name: &str, text: &str) -> PathBuf {
    let path = Path::new(env!("CARGO_TARGET_TMPDIR")).join(name);
    std::fs::write(&path, text).expect("a file for the test");
    path
}

#[track_caller]
fn number(value: &Value, pointer: &str) -> f64 {
    value.pointer(pointer).and_then(Value::as_f64).unwrap_or_else(|| panic!("no number at {pointer}"))
}

/// What a report of an example must hold, whoever made it.
fn complete(report: &Value, wheels: usize) {
    assert_eq!(report["problems"], json!([]));
    let assessment = &report["assessment"];
    let state = assessment["verdict"]["state"].as_str().expect("a verdict");
    assert!(["no_go", "hold", "go"].contains(&state));
    assert!(assessment["verdict"]["governing"]["reason"]["code"].is_string());
    assert!(number(assessment, "/plate/allowed") > 0.0 && assessment["plate"]["row"].is_u64());
    assert!(assessment["assumed"].as_array().is_some_and(|list| !list.is_empty()));
    assert!(number(assessment, "/forks/to_tips") > 0.0);
    let steps = assessment["steps"].as_array().expect("steps");
    assert_eq!(steps.len(), 12);
    for step in steps {
        let bodies = step["bodies"].as_array().expect("bodies");
        let has = |id: &str| bodies.iter().any(|b| b["id"] == id);
        assert!(has("chassis") && has("battery") && has("mast_outer") && has("forks"));
        let laden = step["laden"] == true;
        assert_eq!((has("load"), step["load_centre"].is_object()), (laden, laden));
        assert_eq!(has("steer_axle"), wheels == 4);
        let total: f64 = bodies.iter().map(|b| number(b, "/mass")).sum();
        assert!((total - number(step, "/total_mass")).abs() < 1e-6);
        for axis in ["x", "y", "z"] {
            let at = format!("/at/{axis}");
            let sum: f64 = bodies.iter().map(|b| number(b, "/mass") * number(b, &at)).sum();
            assert!((sum / total - number(step, &format!("/centre/{axis}"))).abs() < 1e-9);
        }
        assert!((number(step, "/field/z") + GRAVITY).abs() < 1e-12);
        let (front, steer) = (number(step, "/wheels/front"), number(step, "/wheels/steer"));
        assert!((front + steer - total * GRAVITY).abs() < 1e-6 * total);
        assert!((number(step, "/wheels/left") + number(step, "/wheels/right") - front).abs() < 1e-6 * total);
        let lines = step["lines"].as_array().expect("lines");
        assert_eq!(
            lines.iter().map(|l| l["id"].as_str()).collect::<Vec<_>>(),
            [Some("front"), Some("left"), Some("right")]
        );
        for line in lines {
            for end in ["from", "to"] {
                assert!(["x", "y", "z"].iter().all(|axis| line[end][axis].is_number()));
            }
            for figure in ["moment", "share", "distance"] {
                number(line, &format!("/{figure}/nominal"));
                number(line, &format!("/{figure}/worst"));
            }
            assert!(number(line, "/tip_angle_deg") > 0.0 && number(line, "/tip_angle_worst_deg") > 0.0);
            let entries: f64 = line["entries"].as_array().expect("entries").iter().map(|e| number(e, "/moment")).sum();
            let driven = number(line, "/slope_entry") + number(line, "/acceleration_entry");
            assert!((entries + driven - number(line, "/moment/nominal")).abs() < 1e-6);
        }
        // The pivot stands at its own height; a steer wheel on the ground.
        let height = number(step, "/lines/1/to/z");
        assert_eq!(height > 0.0, wheels == 4);
        // Either the slopes of the platform tests are asked, or a reserve.
        let reserve = number(step, "/share_allowed") < 1.0;
        assert_eq!(step["tests"].as_array().map(Vec::len), Some(if reserve { 0 } else { 3 }));
    }
    assert_eq!(walk::broken_numbers(report), Vec::<String>::new());
}

#[test]
fn the_examples_are_the_committed_files_and_give_whole_reports() {
    for ((path, text), wheels) in examples().into_iter().zip([3, 4]) {
        assert_eq!(std::fs::read_to_string(&path).expect("a committed file"), text);
        let document = Document::from_json(text).expect("an example");
        assert!(document.note.starts_with("Invented"), "{}", document.note);
        complete(&serde_json::to_value(assess(&document)).expect("JSON"), wheels);
    }
}

#[test]
fn the_program_prints_the_librarys_report() {
    for ((path, text), wheels) in examples().into_iter().zip([3, 4]) {
        let output = run(&[path.to_str().expect("a plain path")], "");
        assert_eq!(output.status.code(), Some(0));
        let report = answer(&output);
        complete(&report, wheels);
        let own = serde_json::to_string(&assess(&example::document(text))).expect("JSON");
        assert_eq!(report, serde_json::from_str::<Value>(&own).expect("JSON"));
    }
}

#[test]
fn a_thousand_lines_get_a_thousand_answers_in_order() {
    let mut input = String::new();
    for seed in 0..1000 {
        let mut document = sensible::document(&mut Draws::seeded(seed));
        document.note = format!("check {seed}");
        match seed % 100 {
            // Refused, incomplete, and with a blank line before it.
            7 => input.push_str("{\"format\": \"standfast-check\", \"version\": 1, \"colour\": 1}\n"),
            8 => input.push_str("{\"format\": \"standfast-check\", \"version\": 1}\n"),
            k => {
                if k == 9 {
                    input.push('\n');
                }
                input.push_str(&serde_json::to_string(&document).expect("JSON"));
                input.push('\n');
            }
        }
    }
    let output = run(&["--lines"], &input);
    assert_eq!(output.status.code(), Some(0));
    let text = String::from_utf8(output.stdout).expect("text");
    let answers: Vec<Value> = text.lines().map(|l| serde_json::from_str(l).expect("one JSON a line")).collect();
    assert_eq!(answers.len(), 1000);
    for (k, (answer, line)) in answers.iter().zip(input.lines().filter(|l| !l.is_empty())).enumerate() {
        match k % 100 {
            7 => assert!(answer["refused"]["detail"].as_str().is_some_and(|d| d.contains("colour")), "{answer}"),
            8 => assert!(answer["assessment"].is_null() && answer["problems"].as_array().is_some_and(|p| p.len() > 10)),
            _ if k % 50 == 0 => {
                let document = Document::from_json(line).expect("ours");
                let own = serde_json::to_string(&assess(&document)).expect("JSON");
                assert_eq!(*answer, serde_json::from_str::<Value>(&own).expect("JSON"), "line {k}");
            }
            _ => assert!(answer["assessment"].is_object(), "line {k}: {}", answer["problems"]),
        }
    }
}

#[test]
fn a_refused_file_is_said_and_fails() {
    let next = standfast_core::document::VERSION + 1;
    let newer = file("newer.json", &format!("{{\"format\": \"standfast-check\", \"version\": {next}}}"));
    let output = run(&[newer.to_str().expect("a plain path")], "");
    assert_eq!(output.status.code(), Some(1));
    assert_eq!(answer(&output)["refused"]["code"], "newer");

    let cut_off = file("cut-off.json", &example::THREE_WHEEL[..900]);
    let output = run(&[cut_off.to_str().expect("a plain path")], "");
    assert_eq!(output.status.code(), Some(1));
    assert_eq!(answer(&output)["refused"]["code"], "unreadable");

    // Incomplete is not refused: the answer says what is missing.
    let bare = file("bare.json", "{\"format\": \"standfast-check\", \"version\": 1}");
    let output = run(&[bare.to_str().expect("a plain path")], "");
    assert_eq!(output.status.code(), Some(0));
    assert!(answer(&output)["problems"].as_array().is_some_and(|p| !p.is_empty()));

    let absent = file("absent.json", "").with_file_name("no-such-file.json");
    assert!(!run(&[absent.to_str().expect("a plain path")], "").status.success());
    assert_eq!(run(&[], "").status.code(), Some(2));
}
