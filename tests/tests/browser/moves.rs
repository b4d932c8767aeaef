//! What people do with the steps of the move and the drive.

use crate::harness::{Outcome, Page, journey};
use std::time::Duration;
use thirtyfour::prelude::*;

/// Whether a step is the one that is shown.
async fn shown(page: &Page, step: &str) -> Result<bool, Box<dyn std::error::Error + Send + Sync>> {
    Ok(page.find(&format!("step-{step}")).await?.attr("aria-pressed").await?.as_deref() == Some("true"))
}

async fn expect_step(page: &Page, step: &str) -> Outcome {
    page.wait(&format!("step {step}"), async || shown(page, step).await).await
}

/// The bob's place in the plan, as drawn.
async fn bob(page: &Page) -> Result<String, Box<dyn std::error::Error + Send + Sync>> {
    Ok(page.find("bob-plan").await?.attr("d").await?.unwrap_or_default())
}

#[test]
fn the_strip_goes_by_keys_and_by_taps_and_the_drawings_follow() {
    journey("strip", 1280, 800, |page| async move {
        page.tap("step-take_up").await?;
        expect_step(&page, "take_up").await?;
        let start = bob(&page).await?;
        page.find("step-take_up").await?.send_keys(Key::Right + "").await?;
        expect_step(&page, "tilt_back").await?;
        // The cursor goes along: the next key is pressed on what has it now.
        for (key, step) in [
            (Key::Right, "travel"),
            (Key::Left, "tilt_back"),
            (Key::End, "empty_corner_right"),
            (Key::Right, "empty_corner_right"),
            (Key::Home, "take_up"),
        ] {
            page.driver.active_element().await?.send_keys(key + "").await?;
            expect_step(&page, step).await?;
        }
        assert_eq!(bob(&page).await?, start);
        page.tap("step-corner_left").await?;
        expect_step(&page, "corner_left").await?;
        assert_ne!(bob(&page).await?, start, "the plumb bob goes to the right");
        assert!(page.there("pull-plan").await && page.there("handle-load-plan").await);
        page.tap("step-back_out").await?;
        expect_step(&page, "back_out").await?;
        assert!(!page.there("handle-load-side").await, "there is no load to take hold of");
        Ok(())
    });
}

#[test]
fn on_a_phone_the_strip_scrolls_sideways_with_room_for_a_glove() {
    journey("strip-phone", 390, 844, |page| async move {
        let script = r#"
            const steps = [...document.querySelectorAll('[data-testid^="step-"]')].map(e => e.getBoundingClientRect());
            const list = document.querySelector('.strip ol');
            return [Math.min(...steps.map(r => Math.min(r.width, r.height))), list.scrollWidth - list.clientWidth,
                document.documentElement.scrollWidth - window.innerWidth, new Set(steps.map(r => r.top)).size];
        "#;
        let answer = page.driver.execute(script, Vec::new()).await?.json().clone();
        let sizes: Vec<f64> = answer.as_array().into_iter().flatten().filter_map(serde_json::Value::as_f64).collect();
        let [least, beyond, page_beyond, rows] = sizes[..] else { return Err(format!("{answer}").into()) };
        assert!(least >= 44.0 && beyond > 0.0 && page_beyond <= 0.5 && rows < 1.5, "{answer}");
        page.tap("step-take_up").await?;
        page.find("step-take_up").await?.send_keys(Key::End + "").await?;
        expect_step(&page, "empty_corner_right").await?;
        page.wait("the last step in sight", async || {
            let script =
                "return document.querySelector('[data-testid=step-empty_corner_right]').getBoundingClientRect().right";
            Ok(page.driver.execute(script, Vec::new()).await?.json().as_f64().is_some_and(|right| right <= 390.5))
        })
        .await
    });
}

#[test]
fn the_move_plays_to_its_end_and_any_touch_stops_it() {
    journey("play", 1280, 800, |page| async move {
        let playing = async || Ok(page.find("play").await?.attr("data-playing").await?.as_deref() == Some("true"));
        page.tap("step-raised_back").await?;
        page.tap("play").await?;
        expect_step(&page, "take_up").await?;
        expect_step(&page, "tilt_back").await?;
        // A touch anywhere stops it; a step touched shows.
        page.tap("step-brake").await?;
        expect_step(&page, "brake").await?;
        page.wait("stopped", async || Ok(!playing().await?)).await?;
        // Its own button stops it as well, and does not begin anew.
        page.tap("play").await?;
        page.wait("playing", playing).await?;
        page.tap("play").await?;
        page.wait("stopped", async || Ok(!playing().await?)).await?;
        // Through to the end: twelve steps of a second and a half.
        page.tap("play").await?;
        page.wait("well under way", async || shown(&page, "raised_back").await).await?;
        page.wait("the end", async || Ok(!playing().await?)).await?;
        expect_step(&page, "empty_corner_right").await
    });
}

#[test]
fn with_less_motion_it_goes_on_only_when_pressed() {
    journey("play-still", 1280, 800, |page| async move {
        let features = serde_json::json!({"features": [{"name": "prefers-reduced-motion", "value": "reduce"}]});
        page.driver.cdp().send_raw("Emulation.setEmulatedMedia", features).await?;
        page.reload().await?;
        page.tap("step-take_up").await?;
        page.wait("another name", async || Ok(page.find("play").await?.text().await?.contains("Next step"))).await?;
        page.tap("play").await?;
        expect_step(&page, "tilt_back").await?;
        // Longer than a step would show: nothing may have moved.
        tokio::time::sleep(Duration::from_millis(1800)).await;
        assert!(shown(&page, "tilt_back").await?);
        page.tap("play").await?;
        expect_step(&page, "travel").await
    });
}

#[test]
fn percent_and_degrees_are_told_apart() {
    journey("slopes", 1280, 800, |page| async move {
        page.card("card-move").await?;
        assert!(!page.there("step-ramp_up").await);
        page.enter("drive.ramp_pct", "10").await?;
        page.find("step-ramp_up").await?;
        let other = async |says: &'static str| {
            page.wait(says, async || {
                Ok(page.find("other-drive.ramp_pct").await?.text().await?.replace('\u{a0}', " ") == says)
            })
            .await
        };
        other("10 % is 5.7 degrees").await?;
        page.tap("choice-drive.ramp_pct-unit-degrees").await?;
        other("5.7 degrees is 10 %").await?;
        assert_eq!(page.value("drive.ramp_pct").await?, "5.71", "the same slope, said otherwise");
        page.enter("drive.ramp_pct", "10").await?;
        other("10 degrees is 17.6 %").await?;
        // The other slope keeps its own unit, and both stay over a reload.
        page.enter("drive.cross_fall_pct", "3").await?;
        let kept = page.kept().await?;
        page.reload().await?;
        assert_eq!(page.kept().await?, kept);
        page.card("card-move").await?;
        assert_eq!(page.value("drive.ramp_pct").await?, "10");
        other("10 degrees is 17.6 %").await?;
        let cross = page.find("other-drive.cross_fall_pct").await?.text().await?;
        assert_eq!(cross.replace('\u{a0}', " "), "3 % is 1.7 degrees");
        Ok(())
    });
}

#[test]
fn a_bend_too_fast_turns_go_into_no_go() {
    journey("bend", 1280, 800, |page| async move {
        page.expect_state("go").await?;
        page.card("card-move").await?;
        page.enter("drive.corner_kmh", "5").await?;
        page.expect_state("go").await?;
        // What the load's underside is was not said: a little faster it may slide.
        page.enter("drive.corner_kmh", "6").await?;
        page.expect_state("hold").await?;
        page.enter("drive.corner_kmh", "12").await?;
        page.expect_state("no_go").await?;
        let reason = page.reason().await?.replace('\u{a0}', " ");
        assert!(reason.contains("hand bend at 12 km/h on 2.00 m"), "{reason}");
        assert_eq!(page.find("step-corner_left").await?.attr("data-state").await?.as_deref(), Some("no_go"));
        assert_eq!(page.find("step-travel").await?.attr("data-state").await?.as_deref(), Some("go"));
        // On a wider bend the same speed goes.
        page.enter("drive.radius_m", "12000").await?;
        page.expect_state("go").await?;
        page.enter("drive.radius_m", "2000").await?;
        page.expect_state("no_go").await?;
        page.tap("choice-drive.corner-no").await?;
        page.expect_state("go").await?;
        assert!(!page.there("step-corner_left").await && !page.there("field-drive.corner_kmh").await);
        page.card("card-cautions").await?;
        let cautions = page.find("cautions-here").await?.text().await?;
        assert!(cautions.contains("Bends with the load are left out"), "{cautions}");
        Ok(())
    });
}

#[test]
fn a_load_that_leads_down_a_steep_ramp_is_refused() {
    journey("ramp", 800, 1280, |page| async move {
        page.card("card-move").await?;
        page.enter("drive.ramp_pct", "11").await?;
        page.expect_state("go").await?;
        page.tap("choice-drive.ramp_down-forwards").await?;
        page.expect_state("no_go").await?;
        let reason = page.reason().await?;
        assert!(reason.contains("load leads downhill") && reason.contains("1910.178"), "{reason}");
        page.tap("undo").await?;
        page.expect_state("go").await
    });
}
