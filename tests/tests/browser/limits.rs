//! What is uncertain as it is drawn, what it costs, and how far everything could go.

use crate::harness::{Outcome, Page, journey};
use standfast_core::document::{Document, Known, PlateFor};
use standfast_core::example;
use standfast_core::limit::{Limit, Reach, Solved};
use standfast_core::report::{Assessment, assess};
use standfast_core::step::StepId;
use thirtyfour::prelude::*;

type Found<T> = Result<T, Box<dyn std::error::Error + Send + Sync>>;

/// The first example with two tolerances of one's own.
fn known_so(tolerance: f64, mass: f64) -> Document {
    let mut document = example::document(example::THREE_WHEEL);
    for (path, tolerance) in [("truck.load_distance_m", tolerance), ("load.mass_kg", mass)] {
        document.known.insert(path.to_owned(), Known { by: None, tolerance: Some(tolerance) });
    }
    document
}

fn assessment(document: &Document) -> Assessment {
    assess(document).assessment.expect("nothing is missing")
}

/// Opens a document as a saved file.
async fn opened(page: &Page, name: &str, document: &Document) -> Outcome {
    let file = std::env::temp_dir().join(format!("standfast-{}-{name}.json", std::process::id()));
    std::fs::write(&file, document.to_json())?;
    let before = page.kept().await?;
    page.find("open-file").await?.send_keys(file.display().to_string()).await?;
    page.wait("the file is taken", async || Ok(page.kept().await? != before)).await?;
    std::fs::remove_file(&file)?;
    Ok(())
}

/// The area inside a path of straight lines, in units of the sheet.
fn area(path: &str) -> f64 {
    let numbers: Vec<f64> = path.split(['M', 'L', 'Z', ' ']).filter_map(|n| n.parse().ok()).collect();
    let spots: Vec<&[f64]> = numbers.chunks_exact(2).collect();
    let next = spots.iter().cycle().skip(1);
    0.5 * spots.iter().zip(next).map(|(a, b)| a[0] * b[1] - b[0] * a[1]).sum::<f64>().abs()
}

async fn path_of(page: &Page, name: &str) -> Found<String> {
    Ok(page.find(name).await?.attr("d").await?.unwrap_or_default())
}

async fn drawn(page: &Page, name: &str) -> Found<f64> {
    Ok(area(&path_of(page, name).await?))
}

/// Whether the diagram is of the entries as they are.
async fn rests(page: &Page) -> Found<bool> {
    Ok(page.find("capacity").await?.attr("aria-busy").await?.as_deref() == Some("false"))
}

#[test]
fn the_frame_in_the_drawings_grows_with_a_tolerance() {
    journey("spread", 1280, 800, |page| async move {
        let frames = ["spread-plan", "spread-side", "band-side"];
        let mut last = [0.0; 3];
        for (k, (tolerance, mass)) in [(0.001, 5.0), (0.02, 60.0), (0.08, 150.0)].into_iter().enumerate() {
            opened(&page, &format!("spread-{k}"), &known_so(tolerance, mass)).await?;
            page.tap("step-raised_forward").await?;
            page.wait("the frames are wider", async || {
                let mut wider = true;
                for (name, last) in frames.iter().zip(&last) {
                    wider &= drawn(&page, name).await? > *last * 1.05;
                }
                Ok(wider)
            })
            .await?;
            for (name, last) in frames.iter().zip(&mut last) {
                *last = drawn(&page, name).await?;
            }
        }
        // Its numbers are beside the drawings.
        page.tap("numbers").await?;
        let said = page.find("numbers-spread").await?.text().await?;
        assert!(said.contains("line of action on the ground, ahead") && said.matches(" to ").count() == 5, "{said}");
        Ok(())
    });
}

#[test]
fn what_the_margin_hangs_on_leads_to_its_field() {
    journey("gains", 1280, 800, |page| async move {
        page.expect_state("go").await?;
        leads_to_fields(&page).await
    });
}

#[test]
fn on_a_phone_what_the_margin_hangs_on_leads_to_its_field() {
    journey("gains-phone", 390, 844, |page| async move {
        leads_to_fields(&page).await?;
        let beyond = "return document.documentElement.scrollWidth - window.innerWidth";
        let beyond = page.driver.execute(beyond, Vec::new()).await?.json().as_f64().unwrap_or(f64::MAX);
        assert!(beyond <= 0.5, "the page is {beyond} px wider than the screen");
        Ok(())
    });
}

async fn leads_to_fields(page: &Page) -> Outcome {
    let gains = assessment(&example::document(example::THREE_WHEEL)).gains;
    page.tap("gains-fold").await?;
    let buttons = async || Ok(page.find("gains").await?.find_all(By::Css(".gain")).await?);
    let first: Found<Vec<WebElement>> = buttons().await;
    assert_eq!(first?.len(), 5);
    page.tap("gains-all").await?;
    page.wait("all of them", async || {
        let all: Found<Vec<WebElement>> = buttons().await;
        Ok(all?.len() == gains.len())
    })
    .await?;
    for gain in [&gains[0], gains.iter().find(|g| g.place.to_string() == "lift.offset_m").expect("on the list")] {
        page.tap(&format!("gain-{}", gain.place)).await?;
        page.wait(&format!("the cursor at {}", gain.place), async || {
            let at = page.driver.active_element().await?.attr("data-testid").await?;
            Ok(at == Some(format!("field-{}", gain.place)))
        })
        .await?;
    }
    Ok(())
}

/// The figure that a cell shows last, in the document's unit, and the step that it is shown to.
async fn figure(page: &Page, name: &str) -> Found<(f64, f64)> {
    let cell = page.find(name).await?.find(By::Css("strong")).await?.text().await?;
    let text = cell.replace('\u{202f}', "").replace('\u{b0}', " \u{b0}");
    let mut words = text.split_whitespace().rev();
    let (Some(unit), Some(number)) = (words.next(), words.next()) else { return Err(format!("{name}: {cell}").into()) };
    let number: f64 = number.parse().map_err(|e| format!("{name}: {cell}: {e}"))?;
    let (factor, step) = match unit {
        "kg" => (1.0, 1.0),
        "mm" => (0.001, 0.001),
        "m" | "m/s\u{b2}" => (1.0, 0.01),
        "%" | "\u{b0}" | "km/h" => (1.0, 0.1),
        _ => return Err(format!("{name}: {cell}").into()),
    };
    Ok((number * factor, step))
}

/// A cell shows what the core says: never more than passes, and less by no more than a step of what is printed.
async fn agrees(page: &Page, limit: &Solved, column: &str) -> Outcome {
    let code = serde_json::to_value(limit.what)?;
    let name = format!("limit-{}-{column}", code.as_str().unwrap_or_default());
    let Some(value) = limit.reach.value() else {
        let text = page.find(&name).await?.text().await?;
        assert!(text.contains("at none"), "{name}: {text}");
        return Ok(());
    };
    let (shown, step) = figure(page, &name).await?;
    let in_hand = if limit.what == Limit::BatteryLeast { shown - value } else { value - shown };
    assert!((-1e-9..step + 1e-9).contains(&in_hand), "{name}: shown {shown}, solved {value}");
    Ok(())
}

#[test]
fn limits_of_the_move_and_of_a_step_are_the_cores() {
    journey("limits", 1280, 800, |page| async move {
        let found = assessment(&example::document(example::THREE_WHEEL));
        page.tap("limits-fold").await?;
        for limit in &found.limits {
            agrees(&page, limit, "whole").await?;
        }
        for step in ["raised_forward", "corner_left", "brake"] {
            page.tap(&format!("step-{step}")).await?;
            page.wait("the step's column", async || {
                Ok(page.find(&format!("step-{step}")).await?.attr("aria-pressed").await?.as_deref() == Some("true"))
            })
            .await?;
            let named = |id| serde_json::to_value(id).is_ok_and(|v| v == step);
            let report = found.steps.iter().find(|s| named(s.id)).expect("in the move");
            assert!(report.limits.len() >= 5, "{step}");
            for limit in &report.limits {
                agrees(&page, limit, "step").await?;
            }
        }
        // Entered just inside it goes, just outside it does not.
        let most = found.limits.iter().find(|l| l.what == Limit::LoadMass).and_then(|l| l.reach.value());
        let most = most.expect("it can be lifted").floor();
        page.card("card-load").await?;
        page.enter("load.mass_kg", &format!("{most}")).await?;
        page.expect_state("go").await?;
        page.enter("load.mass_kg", &format!("{}", most + 1.0)).await?;
        page.wait("no longer go", async || Ok(page.state().await? != "go")).await?;
        page.wait("marked in the table", async || {
            let class = page.find("limit-load_mass").await?.attr("class").await?;
            Ok(class.as_deref() == Some("over"))
        })
        .await
    });
}

#[test]
fn where_nothing_alone_helps_that_is_said() {
    journey("limits-none", 390, 844, |page| async move {
        let mut document = example::document(example::THREE_WHEEL);
        document.truck.plate.iter_mut().for_each(|p| p.issued_for = Some(PlateFor::Attachment));
        let found = assessment(&document);
        assert!(found.limits.iter().all(|l| l.reach == Reach::Never));
        opened(&page, "no-plate", &document).await?;
        page.tap("limits-fold").await?;
        let said = page.find("limits-none").await?.text().await?;
        assert!(said.contains("No one of these"), "{said}");
        for limit in &found.limits {
            agrees(&page, limit, "whole").await?;
        }
        Ok(())
    });
}

#[test]
fn the_diagram_has_plate_and_load_and_rests_while_a_hand_moves() {
    journey("capacity", 1280, 800, |page| async move {
        page.tap("capacity-fold").await?;
        for name in ["capacity-plate", "capacity-plate-other", "capacity-model", "capacity-both", "capacity-range"] {
            page.find(name).await?;
        }
        let before = path_of(&page, "capacity-now").await?;
        // The plate's own rows are its steps.
        page.tap("capacity-numbers").await?;
        let numbers = page.find("capacity").await?.find(By::Css("table")).await?.text().await?;
        let at_600 = numbers.lines().find(|l| l.starts_with("600")).unwrap_or_default().replace('\u{202f}', "");
        assert!(at_600.contains("1580 kg") && at_600.contains("1320 kg"), "{at_600}");
        // A heavier load stands higher in it, a moment later.
        page.card("card-load").await?;
        page.enter("load.mass_kg", "1400").await?;
        page.wait("the load is drawn where it is now", async || Ok(path_of(&page, "capacity-now").await? != before))
            .await?;
        page.wait("at rest", async || rests(&page).await).await?;
        // While a hand moves the load nothing of it is worked out.
        let script = r#"
            const done = arguments[arguments.length - 1];
            const grip = document.querySelector('[data-testid=handle-load-side]'), svg = grip.closest('svg');
            const box = grip.getBoundingClientRect(), busy = [], drawn = new Set();
            const send = (kind, to, dy) => to.dispatchEvent(new PointerEvent(kind, { bubbles: true, cancelable: true,
                pointerId: 1, button: 0, buttons: 1, clientX: box.x + box.width / 2, clientY: box.y + box.height / 2 + dy }));
            const look = () => {
                busy.push(document.querySelector('[data-testid=capacity]').getAttribute('aria-busy'));
                drawn.add(document.querySelector('[data-testid=capacity-model]').getAttribute('d'));
            };
            (async () => {
                send('pointerdown', grip, 0);
                for (let k = 1; k <= 12; k++) {
                    send('pointermove', svg, -4 * k);
                    await new Promise(r => setTimeout(r, 15));
                    look();
                }
                send('pointerup', svg, -48);
                done([busy.filter(b => b === 'true').length, drawn.size]);
            })().catch(e => done('failed: ' + e));
        "#;
        let answer = page.driver.execute_async(script, Vec::new()).await?.json().clone();
        assert_eq!(answer, serde_json::json!([12, 1]));
        page.wait("worked out anew", async || rests(&page).await).await
    });
}

/// The load's centre stands inside what is drawn exactly where the step passes at the worst corner.
#[test]
fn where_the_loads_centre_may_stand_is_where_the_step_passes() {
    journey("may-stand", 1280, 800, |page| async move {
        page.tap("may-stand").await?;
        let mut seen = [0, 0];
        for (k, offset) in [0.0, 0.1, 0.25, 0.4].into_iter().enumerate() {
            let mut document = example::document(example::THREE_WHEEL);
            document.lift.offset_m = Some(offset);
            opened(&page, &format!("may-stand-{k}"), &document).await?;
            page.tap("step-travel").await?;
            page.wait("at rest", async || {
                let outline = page.find("may-stand-outline").await?;
                let class = outline.attr("class").await?.unwrap_or_default();
                let shown = page.find("step-travel").await?.attr("aria-pressed").await?;
                Ok(!class.contains("stale") && shown.as_deref() == Some("true"))
            })
            .await?;
            let path = path_of(&page, "may-stand-outline").await?;
            let at = page.find("handle-centre-plan").await?.attr("transform").await?.unwrap_or_default();
            let found = assessment(&document);
            let step = found.steps.iter().find(|s| s.id == StepId::Travel).expect("in the move");
            assert_eq!(inside(&numbers(&path), &numbers(&at)), step.passes_worst, "{offset}: {at} in {path}");
            seen[usize::from(step.passes_worst)] += 1;
        }
        assert!(seen[0] > 0 && seen[1] > 0, "{seen:?}");
        page.tap("may-stand").await?;
        page.wait("gone", async || Ok(!page.there("may-stand-outline").await)).await
    });
}

fn numbers(text: &str) -> Vec<f64> {
    text.split(|c: char| !(c.is_ascii_digit() || ".-".contains(c))).filter_map(|n| n.parse().ok()).collect()
}

/// Whether a spot is inside a convex outline.
fn inside(outline: &[f64], spot: &[f64]) -> bool {
    let corners: Vec<&[f64]> = outline.chunks_exact(2).collect();
    let sides: Vec<f64> = corners
        .iter()
        .zip(corners.iter().cycle().skip(1))
        .map(|(a, b)| (b[0] - a[0]) * (spot[1] - a[1]) - (b[1] - a[1]) * (spot[0] - a[0]))
        .collect();
    corners.len() > 2 && (sides.iter().all(|s| *s >= 0.0) || sides.iter().all(|s| *s <= 0.0))
}

/// One move of a hand on the load: the whole check, every limit, both drawings and all else that shows.
#[test]
fn a_frame_of_a_drag_is_short() {
    journey("drag-frame", 1280, 800, |page| async move {
        let script = r#"
            const done = arguments[arguments.length - 1], folds = arguments[0], way = arguments[1];
            const settled = () => new Promise(r => { const c = new MessageChannel(); c.port1.onmessage = r; c.port2.postMessage(0); });
            (async () => {
                for (const f of folds) document.querySelector(`[data-testid=${f}]`).click();
                await settled();
                const grip = document.querySelector('[data-testid=handle-load-side]'), svg = grip.closest('svg');
                const box = grip.getBoundingClientRect();
                const at = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
                const send = (kind, to, dy) => to.dispatchEvent(new PointerEvent(kind, { bubbles: true, cancelable: true,
                    pointerId: 1, button: 0, buttons: 1, clientX: at.x, clientY: at.y + dy }));
                send('pointerdown', grip, 0);
                await settled();
                const times = [];
                for (let k = 1; k <= 60; k++) {
                    const start = performance.now();
                    send('pointermove', svg, way * k);
                    await settled();
                    document.body.getBoundingClientRect();
                    times.push(performance.now() - start);
                    await new Promise(r => requestAnimationFrame(r));
                }
                send('pointerup', svg, way * 60);
                await settled();
                times.sort((a, b) => a - b);
                done([times[30], times[54], times[59]]);
            })().catch(e => done('failed: ' + e));
        "#;
        for (folds, way) in [(&[][..], -1), (&["gains-fold", "limits-fold"], 1), (&["capacity-fold", "may-stand"], -1)]
        {
            let answer =
                page.driver.execute_async(script, vec![serde_json::json!(folds), way.into()]).await?.json().clone();
            let times: Vec<f64> =
                answer.as_array().into_iter().flatten().filter_map(serde_json::Value::as_f64).collect();
            let [median, most, longest] = times[..] else { return Err(format!("{answer}").into()) };
            println!(
                "a frame of a drag, open {folds:?}: {median:.1} ms, nine of ten under {most:.1} ms, at most {longest:.1} ms"
            );
            assert!(median < 150.0, "a frame of a drag takes {median:.0} ms");
        }
        page.wait("it was dragged", async || Ok(page.find("undo").await?.is_enabled().await?)).await
    });
}
