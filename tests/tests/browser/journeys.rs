//! What people do with the page.

use crate::harness::journey;
use serde_json::Value;
use standfast_core::document::Document;

#[test]
fn first_open_shows_an_invented_example_with_a_verdict() {
    journey("first-open", 1280, 800, |page| async move {
        page.expect_state("go").await?;
        assert!(page.reason().await?.contains("kg"), "{}", page.reason().await?);
        let text = page.driver.find(thirtyfour::By::Css("body")).await?.text().await?;
        assert!(text.contains("nvented"), "the example is not marked as invented");
        assert!(!text.to_lowercase().contains(" safe"), "the word is never used for a result");
        assert!(page.driver.find(thirtyfour::By::Css("link[rel~=icon]")).await.is_ok(), "the page names no icon");
        let standing = page.find("verdict-standing").await?.text().await?;
        assert!(standing.contains("plate") && standing.contains("come first"), "{standing}");
        for name in ["drawing-side", "drawing-plan", "step-take_up", "step-raised_forward", "card-truck", "start-own"] {
            page.find(name).await?;
        }
        Ok(())
    });
}

#[test]
fn an_own_truck_is_entered_from_nothing() {
    journey("own-truck", 1280, 800, |page| async move {
        page.tap("start-own").await?;
        page.expect_state("none").await?;
        page.card("card-truck").await?;
        page.tap("choice-truck.wheels-three").await?;
        for (path, text) in [
            ("truck.wheelbase_m", "1400"),
            ("truck.tread_m", "920"),
            ("truck.load_distance_m", "360"),
            ("truck.service_kg", "3200"),
            ("truck.front_axle_kg", "1560"),
            ("truck.steer_axle_kg", "1640"),
            ("truck.top_speed_kmh", "16"),
            ("truck.battery.stated_kg", "860"),
            ("truck.battery.fitted_kg", "860"),
            ("truck.mast.lift_m", "4700"),
            ("truck.mast.tilt_back_deg", "6"),
            ("truck.mast.tilt_forward_deg", "5"),
        ] {
            page.enter(path, text).await?;
        }
        if !page.there("field-truck.plate.rows[0].height_m").await {
            page.tap("plate-row-add").await?;
        }
        page.tap("choice-truck.plate.issued_for-forks").await?;
        page.enter("truck.plate.rows[0].height_m", "3300").await?;
        page.enter("truck.plate.rows[0].load_centre_m", "600").await?;
        page.enter("truck.plate.rows[0].capacity_kg", "1500").await?;
        page.card("card-load").await?;
        page.enter("load.mass_kg", "900").await?;
        page.tap("choice-load.weight_known-scale").await?;
        page.enter("load.length_m", "1000").await?;
        page.enter("load.width_m", "800").await?;
        page.enter("load.height_m", "900").await?;
        page.card("card-move").await?;
        assert_eq!(page.state().await?, "none", "nothing is answered while a figure is missing");
        page.enter("lift.height_m", "3000").await?;
        page.wait("a verdict", async || Ok(page.state().await? != "none")).await?;
        let first = page.state().await?;
        assert!(["go", "hold"].contains(&first.as_str()), "{first}: {}", page.reason().await?);
        // The same truck cannot lift what its plate does not allow.
        page.card("card-load").await?;
        page.enter("load.mass_kg", "1600").await?;
        page.expect_state("no_go").await
    });
}

#[test]
fn each_verdict_appears() {
    journey("verdicts", 1280, 800, |page| async move {
        page.expect_state("go").await?;
        page.card("card-load").await?;
        page.enter("load.mass_kg", "1380").await?;
        page.tap("choice-load.weight_known-estimate").await?;
        page.expect_state("hold").await?;
        page.tap("choice-load.weight_known-scale").await?;
        page.expect_state("go").await?;
        page.enter("load.mass_kg", "1581").await?;
        page.expect_state("no_go").await?;
        let reason = page.reason().await?;
        assert!(reason.contains("1,580") || reason.contains("1\u{202f}580") || reason.contains("1 580"), "{reason}");
        page.enter("load.mass_kg", "").await?;
        page.expect_state("none").await
    });
}

#[test]
fn a_wrong_entry_keeps_its_text_and_says_why() {
    journey("wrong-entry", 1280, 800, |page| async move {
        page.card("card-load").await?;
        for (text, says) in [("12 tons", "number"), ("1,050", "1050"), ("99000", "20"), ("-4", "1")] {
            page.enter("load.mass_kg", text).await?;
            let problem = page.find("problem-load.mass_kg").await?.text().await?;
            assert!(problem.contains(says), "{text}: {problem}");
            assert_eq!(page.state().await?, "none");
        }
        page.reload().await?;
        page.card("card-load").await?;
        assert_eq!(page.value("load.mass_kg").await?, "-4");
        page.enter("load.mass_kg", "1050").await?;
        page.expect_state("go").await?;
        assert!(!page.there("problem-load.mass_kg").await);
        Ok(())
    });
}

#[test]
fn reload_keeps_everything() {
    journey("reload", 1280, 800, |page| async move {
        page.card("card-load").await?;
        page.enter("load.mass_kg", "1 234,5").await?;
        page.card("card-move").await?;
        page.enter("lift.height_m", "2,").await?;
        page.tap("units-us").await?;
        page.enter("lift.height_m", "99.").await?;
        page.tap("step-travel").await?;
        let before = page.kept().await?;
        let reason = page.reason().await?;
        page.reload().await?;
        assert_eq!(page.kept().await?, before);
        assert_eq!(page.reason().await?, reason);
        page.card("card-move").await?;
        assert_eq!(page.value("lift.height_m").await?, "99.");
        page.tap("units-metric").await?;
        page.card("card-load").await?;
        assert_eq!(page.value("load.mass_kg").await?, "1 234,5");
        Ok(())
    });
}

#[test]
fn units_there_and_back_change_nothing() {
    journey("units", 1280, 800, |page| async move {
        page.card("card-truck").await?;
        let metric = page.value("truck.wheelbase_m").await?;
        page.enter("truck.wheelbase_m", "1400,0").await?;
        page.card("card-move").await?;
        page.enter("lift.height_m", "3217").await?;
        let (kept, reason) = (page.kept().await?, page.reason().await?);
        page.tap("units-us").await?;
        let us = page.value("lift.height_m").await?;
        assert!(us.starts_with("126.6"), "3,217 mm is 126.65 in, shown as {us}");
        page.tap("units-metric").await?;
        assert_eq!(page.kept().await?, kept);
        assert_eq!(page.reason().await?, reason);
        assert_eq!(page.value("lift.height_m").await?, "3217");
        page.card("card-truck").await?;
        assert_eq!(page.value("truck.wheelbase_m").await?, "1400,0");
        assert_eq!(metric, "1400");
        Ok(())
    });
}

#[test]
fn dragging_in_the_side_view_raises_the_load() {
    journey("drag-side", 1280, 800, |page| async move {
        page.tap("step-raised_upright").await?;
        page.card("card-move").await?;
        let before: f64 = page.value("lift.height_m").await?.parse()?;
        page.drag("handle-load-side", 0, -24).await?;
        page.wait("a higher lift", async || Ok(page.value("lift.height_m").await?.parse::<f64>()? > before + 20.0))
            .await?;
        page.card("card-load").await?;
        let centre: f64 = page.value("load.cg_from_heel_m").await?.parse()?;
        page.drag("handle-centre-side", 16, 0).await?;
        page.wait("a centre further out", async || {
            Ok(page.value("load.cg_from_heel_m").await?.parse::<f64>()? > centre + 20.0)
        })
        .await?;
        page.tap("undo").await?;
        page.wait("the centre back", async || {
            Ok((page.value("load.cg_from_heel_m").await?.parse::<f64>()? - centre).abs() < 0.5)
        })
        .await
    });
}

#[test]
fn dragging_in_the_plan_moves_the_load_sideways() {
    journey("drag-plan", 1280, 800, |page| async move {
        page.card("card-move").await?;
        let before: f64 = page.value("lift.offset_m").await?.parse()?;
        page.drag("handle-load-plan", 0, -16).await?;
        page.wait("the load further left", async || {
            Ok(page.value("lift.offset_m").await?.parse::<f64>()? > before + 5.0)
        })
        .await?;
        page.tap("undo").await?;
        page.wait("the load back", async || {
            Ok((page.value("lift.offset_m").await?.parse::<f64>()? - before).abs() < 0.5)
        })
        .await?;
        page.card("card-load").await?;
        let left: f64 = page.value("load.cg_left_m").await?.parse()?;
        page.drag("handle-centre-plan", 0, 16).await?;
        page.wait("the centre further right", async || {
            Ok(page.value("load.cg_left_m").await?.parse::<f64>()? < left - 5.0)
        })
        .await
    });
}

#[test]
fn undo_and_redo_go_there_and_back() {
    journey("undo", 1280, 800, |page| async move {
        page.card("card-load").await?;
        page.enter("load.mass_kg", "1581").await?;
        page.expect_state("no_go").await?;
        page.tap("start-own").await?;
        if page.there("start-own-yes").await {
            page.tap("start-own-yes").await?;
        }
        page.expect_state("none").await?;
        page.tap("undo").await?;
        page.expect_state("no_go").await?;
        page.tap("redo").await?;
        page.expect_state("none").await?;
        page.tap("undo").await?;
        page.expect_state("no_go").await
    });
}

#[test]
fn a_file_is_opened_and_a_foreign_one_refused_whole() {
    journey("files", 1280, 800, |page| async move {
        let folder = std::env::temp_dir().join(format!("standfast-files-{}", std::process::id()));
        std::fs::create_dir_all(&folder)?;
        let four = folder.join("four.json");
        std::fs::write(&four, standfast_core::example::FOUR_WHEEL)?;
        let wrong = folder.join("wrong.json");
        std::fs::write(&wrong, standfast_core::example::THREE_WHEEL.replace("\"tread_m\"", "\"colour\""))?;
        let input = page.find("open-file").await?;
        input.send_keys(four.display().to_string()).await?;
        page.expect_state("no_go").await?;
        let before = page.reason().await?;
        page.find("open-file").await?.send_keys(wrong.display().to_string()).await?;
        page.wait("a refusal", async || Ok(page.find("file-refused").await?.text().await?.contains("colour"))).await?;
        assert_eq!(page.reason().await?, before, "nothing is taken from a refused file");
        std::fs::remove_dir_all(&folder)?;
        Ok(())
    });
}

#[test]
fn damaged_storage_is_set_aside_and_said() {
    journey("damaged", 1280, 800, |page| async move {
        page.card("card-load").await?;
        page.enter("load.mass_kg", "1111").await?;
        let script = "for (const k of Object.keys(localStorage)) localStorage.setItem(k, '{\"broken')";
        page.driver.execute(script, Vec::new()).await?;
        page.reload().await?;
        page.expect_state("go").await?;
        assert!(page.kept().await?.contains("broken"), "what was there is kept aside");
        Ok(())
    });
}

/// Where two reports differ; numbers are compared as numbers, 1580 being 1580.0, and to the last bit.
fn differences(at: &str, a: &Value, b: &Value) -> Vec<String> {
    match (a, b) {
        (Value::Object(a), Value::Object(b)) if a.len() == b.len() => b
            .iter()
            .flat_map(|(key, v)| differences(&format!("{at}/{key}"), a.get(key).unwrap_or(&Value::Null), v))
            .collect(),
        (Value::Array(a), Value::Array(b)) if a.len() == b.len() => {
            a.iter().zip(b).enumerate().flat_map(|(k, (a, b))| differences(&format!("{at}/{k}"), a, b)).collect()
        }
        (Value::Number(a), Value::Number(b)) if a.as_f64().map(f64::to_bits) == b.as_f64().map(f64::to_bits) => {
            Vec::new()
        }
        (a, b) if a == b => Vec::new(),
        (a, b) => vec![format!("{at}: {a} and {b}")],
    }
}

#[test]
fn another_page_can_call_assess() {
    journey("embed", 1280, 800, |page| async move {
        // Any page of the same server but the program's own: here the module shown as a text.
        page.driver.goto(format!("{}standfast.js", page.server.origin)).await?;
        let script = r#"
            const done = arguments[arguments.length - 1];
            import(new URL('standfast.js', location.href)).then(async m => {
                await m.default();
                const good = m.assess(JSON.parse(arguments[0]));
                let refused = '';
                try { m.assess({ format: 'standfast-check', version: 1, colour: 'red' }); } catch (e) { refused = String(e); }
                const mounted = document.querySelector('[data-testid=verdict]') !== null;
                done(JSON.stringify({ good, refused, mounted }));
            }).catch(e => done('failed: ' + e));
        "#;
        let document = Value::from(standfast_core::example::THREE_WHEEL);
        let answer =
            page.driver.execute_async(script, vec![document]).await?.json().as_str().unwrap_or_default().to_owned();
        let answer: Value = serde_json::from_str(&answer).map_err(|e| format!("{answer}: {e}"))?;
        let document = Document::from_json(standfast_core::example::THREE_WHEEL)?;
        let native = serde_json::to_value(standfast_core::report::assess(&document))?;
        let differences = differences("", &answer["good"], &native);
        assert!(differences.is_empty(), "page and native must agree to the last bit: {differences:#?}");
        assert_eq!(answer["mounted"], false, "the other page's body is left alone");
        assert!(answer["refused"].as_str().is_some_and(|r| r.contains("colour")), "{answer}");
        Ok(())
    });
}

#[test]
fn the_single_file_opens_by_itself() {
    journey("single-file", 1280, 800, |page| async move {
        let file = crate::harness::dist().join("standfast.html").canonicalize()?;
        let single = std::fs::read_to_string(&file)?;
        assert!(!single.contains("src=\"./") && !single.contains("href=\"./"), "the single file leans on others");
        // Served alone under another name, so that the network log still counts what it asks for.
        page.driver.goto(format!("{}standfast.html", page.server.origin)).await?;
        page.expect_state("go").await
    });
}

#[test]
fn phone_and_portrait_show_the_verdict_and_a_drawing() {
    for (name, width, height) in [("portrait", 800, 1280), ("phone", 390, 844)] {
        journey(name, width, height, |page| async move {
            page.expect_state("go").await?;
            assert!(page.find("verdict").await?.is_displayed().await?);
            assert!(page.find("drawing-side").await?.is_displayed().await?);
            let script = "return document.documentElement.scrollWidth - window.innerWidth";
            let over = page.driver.execute(script, Vec::new()).await?.json().as_f64().unwrap_or(f64::MAX);
            assert!(over <= 0.5, "{over} px too wide");
            Ok(())
        });
    }
}
