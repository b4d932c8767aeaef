//! What people do with how a figure is known: the way, and a tolerance of one's own.

use crate::harness::{Outcome, Page, journey};
use standfast_core::document::{By, Document, Known};
use standfast_core::example;

type Text = Result<String, Box<dyn std::error::Error + Send + Sync>>;

/// The small line under a figure, without what only a screen reader hears.
async fn line(page: &Page, path: &str) -> Text {
    let script = "return document.querySelector('[data-testid=\"known-' + arguments[0] + '\"] .line').textContent";
    let text = page.driver.execute(script, vec![path.into()]).await?.json().clone();
    Ok(text.as_str().unwrap_or_default().replace('\u{a0}', " "))
}

async fn expect_line(page: &Page, path: &str, says: &str) -> Outcome {
    page.wait(&format!("{path}: {says}"), async || Ok(line(page, path).await? == says)).await
}

/// Opens the truck's card. It comes into sight a moment later; a timer set after that one's ends after it.
async fn truck(page: &Page) -> Outcome {
    page.card("card-truck").await?;
    page.driver.execute_async("setTimeout(arguments[0], 50)", Vec::new()).await?;
    Ok(())
}

/// Opens what changes it, unless it is open.
async fn change(page: &Page, path: &str) -> Outcome {
    let button = format!("known-{path}");
    if page.find(&button).await?.attr("aria-expanded").await?.as_deref() != Some("true") {
        page.tap(&button).await?;
    }
    page.find(&format!("field-known.{path}")).await?;
    Ok(())
}

/// The text of the file that the page would hand over.
async fn saved(page: &Page) -> Text {
    let script = r#"
        const done = arguments[arguments.length - 1];
        const make = URL.createObjectURL, click = HTMLAnchorElement.prototype.click;
        URL.createObjectURL = blob => { blob.text().then(done); return make.call(URL, blob); };
        HTMLAnchorElement.prototype.click = () => {};
        document.querySelector('[data-testid="save-file"]').click();
        URL.createObjectURL = make;
        HTMLAnchorElement.prototype.click = click;
    "#;
    let text = page.driver.execute_async(script, Vec::new()).await?.json().clone();
    Ok(text.as_str().unwrap_or_default().to_owned())
}

#[test]
fn the_way_is_changed_by_taps_and_taken_back() {
    journey("known-way", 1280, 800, |page| async move {
        truck(&page).await?;
        expect_line(&page, "truck.tread_m", "sheet, \u{b1} 5 mm").await?;
        change(&page, "truck.tread_m").await?;
        page.tap("choice-known.truck.tread_m-estimate").await?;
        expect_line(&page, "truck.tread_m", "changed: estimate, \u{b1} 92 mm").await?;
        let pressed = page.find("choice-known.truck.tread_m-estimate").await?.attr("aria-pressed").await?;
        assert_eq!(pressed.as_deref(), Some("true"));
        // One is open at a time.
        change(&page, "truck.wheelbase_m").await?;
        assert!(!page.there("field-known.truck.tread_m").await);
        page.tap("undo").await?;
        expect_line(&page, "truck.tread_m", "sheet, \u{b1} 5 mm").await?;
        page.tap("redo").await?;
        expect_line(&page, "truck.tread_m", "changed: estimate, \u{b1} 92 mm").await?;
        change(&page, "truck.tread_m").await?;
        page.tap("known-usual-truck.tread_m").await?;
        expect_line(&page, "truck.tread_m", "sheet, \u{b1} 5 mm").await?;
        assert!(!page.there("known-usual-truck.tread_m").await);
        Ok(())
    });
}

#[test]
fn a_tolerance_of_ones_own_is_kept_as_typed() {
    journey("known-kept", 1280, 800, |page| async move {
        truck(&page).await?;
        change(&page, "truck.tread_m").await?;
        page.tap("choice-known.truck.tread_m-tape").await?;
        page.enter("known.truck.tread_m", "2,5").await?;
        expect_line(&page, "truck.tread_m", "changed: tape, \u{b1} 2.5 mm").await?;
        page.tap("units-us").await?;
        page.wait("the same in inches", async || Ok(page.value("known.truck.tread_m").await? == "0.098")).await?;
        page.tap("units-metric").await?;
        let kept = page.kept().await?;
        page.reload().await?;
        assert_eq!(page.kept().await?, kept);
        truck(&page).await?;
        expect_line(&page, "truck.tread_m", "changed: tape, \u{b1} 2.5 mm").await?;
        change(&page, "truck.tread_m").await?;
        assert_eq!(page.value("known.truck.tread_m").await?, "2,5");
        // Its letters are one step to undo.
        page.enter("known.truck.tread_m", "31").await?;
        expect_line(&page, "truck.tread_m", "changed: tape, \u{b1} 31 mm").await?;
        page.tap("undo").await?;
        expect_line(&page, "truck.tread_m", "changed: tape, \u{b1} 2.5 mm").await
    });
}

#[test]
fn a_nonsense_tolerance_says_what_is_wrong_and_keeps_its_text() {
    journey("known-nonsense", 390, 844, |page| async move {
        truck(&page).await?;
        change(&page, "truck.tread_m").await?;
        for (text, says) in [("a bit", "not a number"), ("1,050", "1050"), ("-4", "0 to 2"), ("99999", "0 to 2")] {
            page.enter("known.truck.tread_m", text).await?;
            let problem = page.find("problem-known.truck.tread_m").await?.text().await?;
            assert!(problem.contains(says) && problem.contains("Give or take"), "{text}: {problem}");
            assert_eq!(page.state().await?, "none");
            assert!(!page.there("problem-truck.tread_m").await, "nothing is wrong with the figure itself");
        }
        page.reload().await?;
        truck(&page).await?;
        assert_eq!(page.value("known.truck.tread_m").await?, "99999", "what is wrong shows without a tap");
        page.tap("verdict-go").await?;
        page.wait("the cursor in the tolerance's box", async || {
            let at = page.driver.active_element().await?.attr("data-testid").await?;
            Ok(at.as_deref() == Some("field-known.truck.tread_m"))
        })
        .await?;
        page.enter("known.truck.tread_m", "3").await?;
        page.expect_state("go").await?;
        assert!(!page.there("problem-known.truck.tread_m").await);
        Ok(())
    });
}

#[test]
fn how_figures_are_known_goes_into_a_file_and_comes_back() {
    journey("known-file", 1280, 800, |page| async move {
        let mut document = example::document(example::THREE_WHEEL);
        let mass = "truck.mast.stages[1].mass_kg";
        document.known.insert(mass.to_owned(), Known { by: Some(By::Scale), tolerance: Some(1.25) });
        let file = std::env::temp_dir().join(format!("standfast-known-{}.json", std::process::id()));
        std::fs::write(&file, document.to_json())?;
        page.find("open-file").await?.send_keys(file.display().to_string()).await?;
        page.expect_state("go").await?;
        truck(&page).await?;
        page.tap("more-truck").await?;
        expect_line(&page, mass, "changed: scale, \u{b1} 1.25 kg").await?;
        // A section taken away takes its own along.
        page.tap("stage-remove-0").await?;
        expect_line(&page, "truck.mast.stages[0].mass_kg", "changed: scale, \u{b1} 1.25 kg").await?;
        page.tap("undo").await?;
        expect_line(&page, mass, "changed: scale, \u{b1} 1.25 kg").await?;
        change(&page, "truck.tread_m").await?;
        page.tap("choice-known.truck.tread_m-tape").await?;
        let saved = Document::from_json(&saved(&page).await?)?;
        document.known.insert("truck.tread_m".to_owned(), Known { by: Some(By::Tape), tolerance: None });
        assert_eq!(saved, document);
        // What cannot be known so is refused whole.
        document.known.insert("truck.colour".to_owned(), Known { by: Some(By::Tape), tolerance: None });
        std::fs::write(&file, document.to_json())?;
        page.find("open-file").await?.send_keys(file.display().to_string()).await?;
        page.wait("a refusal", async || Ok(page.find("file-refused").await?.text().await?.contains("truck.colour")))
            .await?;
        std::fs::remove_file(&file)?;
        expect_line(&page, "truck.tread_m", "changed: tape, \u{b1} 10 mm").await
    });
}

#[test]
fn every_line_has_room_for_a_glove() {
    for (name, width, height) in [("known-room-tablet", 1280, 800), ("known-room-phone", 390, 844)] {
        journey(name, width, height, |page| async move {
            truck(&page).await?;
            change(&page, "truck.service_kg").await?;
            let script = r#"
                const boxes = [...document.querySelectorAll('.known, .how-known button, .how-known .box')]
                    .map(e => e.getBoundingClientRect()).filter(r => r.width > 0);
                const inputs = [...document.querySelectorAll('.field.has-known > .box')].map(e => e.getBoundingClientRect());
                const over = boxes.filter(r => inputs.some(i => r.top < i.bottom - 0.5 && r.bottom > i.top + 0.5
                    && r.left < i.right && r.right > i.left));
                return [boxes.length, Math.min(...boxes.map(r => r.height)), Math.min(...boxes.map(r => r.width)),
                    over.length, document.documentElement.scrollWidth - innerWidth];
            "#;
            let answer = page.driver.execute(script, Vec::new()).await?.json().clone();
            let sizes: Vec<f64> =
                answer.as_array().into_iter().flatten().filter_map(serde_json::Value::as_f64).collect();
            let [count, height, width, over, beyond] = sizes[..] else { return Err(format!("{answer}").into()) };
            assert!(count > 10.0 && height >= 44.0 && width >= 44.0 && over < 0.5 && beyond <= 0.5, "{answer}");
            Ok(())
        });
    }
}

#[test]
fn a_tolerance_tightened_turns_hold_into_go() {
    journey("known-tightened", 1280, 800, |page| async move {
        page.expect_state("go").await?;
        truck(&page).await?;
        change(&page, "truck.wheelbase_m").await?;
        page.enter("known.truck.wheelbase_m", "300").await?;
        page.expect_state("hold").await?;
        page.enter("known.truck.wheelbase_m", "3").await?;
        expect_line(&page, "truck.wheelbase_m", "changed: sheet, \u{b1} 3 mm").await?;
        page.expect_state("go").await?;
        // A weight that was estimated, but by somebody who knows it to a few kilograms.
        page.card("card-load").await?;
        page.enter("load.mass_kg", "1330").await?;
        page.tap("choice-load.weight_known-estimate").await?;
        page.expect_state("hold").await?;
        expect_line(&page, "load.mass_kg", "estimate, \u{b1} 20 %").await?;
        change(&page, "load.mass_kg").await?;
        page.enter("known.load.mass_kg", "30").await?;
        expect_line(&page, "load.mass_kg", "changed: estimate, \u{b1} 30 kg").await?;
        page.expect_state("go").await?;
        page.tap("undo").await?;
        page.expect_state("hold").await?;
        page.tap("redo").await?;
        page.expect_state("go").await?;
        // Known another way, what was typed for the one before no longer counts.
        page.tap("choice-load.weight_known-note").await?;
        expect_line(&page, "load.mass_kg", "note, \u{b1} 5 %").await
    });
}
