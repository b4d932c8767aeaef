//! What a plate was issued for, the type sheet held against itself, and the sheet to ask for a plate.

use crate::harness::{Page, journey};
use serde_json::json;
use thirtyfour::prelude::*;

async fn text(page: &Page, name: &str) -> Result<String, Box<dyn std::error::Error + Send + Sync>> {
    Ok(page.find(name).await?.text().await?.replace(['\u{a0}', '\u{202f}'], " "))
}

/// How many pages it prints on, on paper of this size in inches.
async fn pages(page: &Page, width: f64, height: f64) -> Result<i64, Box<dyn std::error::Error + Send + Sync>> {
    let paper = json!({"paperWidth": width, "paperHeight": height});
    let printed = page.driver.cdp().send_raw("Page.printToPDF", paper).await?;
    let data = printed.get("data").cloned().unwrap_or_default();
    let count = r"return (atob(arguments[0]).match(/\/Type\s*\/Page[^s]/g) || []).length";
    Ok(page.driver.execute(count, vec![data]).await?.json().as_i64().unwrap_or_default())
}

/// A mast swapped under an old plate is a no-go that says which mast; tyres likewise; undo brings it back.
#[test]
fn a_mast_swapped_needs_another_plate() {
    journey("plate-mast", 1280, 800, |page| async move {
        page.expect_state("go").await?;
        page.card("card-truck").await?;
        page.enter("truck.mast.lift_m", "5500").await?;
        page.expect_state("no_go").await?;
        let said = page.reason().await?.replace(['\u{a0}', '\u{202f}'], " ");
        assert_eq!(said, "The plate is for a mast that lifts to 4.70 m; the one fitted lifts to 5.50 m.");
        // What the plate says of its mast has unfolded, and the right figure there makes it that mast's plate.
        page.enter("truck.plate.mast_lift_m", "5500").await?;
        page.expect_state("go").await?;
        page.tap("choice-truck.plate.tyres-pneumatic").await?;
        page.expect_state("no_go").await?;
        let said = page.reason().await?;
        assert_eq!(said, "The plate is for pneumatic tyres; fitted: cushion tyres.");
        page.tap("undo").await?;
        page.expect_state("go").await?;
        page.enter("truck.plate.issued", "March 2024").await?;
        page.expect_state("none").await?;
        let said = text(&page, "problem-truck.plate.issued").await?;
        assert!(said.contains("\u{201c}March 2024\u{201d} is not a day"), "{said}");
        page.enter("truck.plate.issued", "2024-03-12").await?;
        page.expect_state("go").await?;
        page.reload().await?;
        page.expect_state("go").await?;
        Ok(())
    });
}

/// A type sheet whose laden axle load was copied wrongly holds, and says which figure and what it should be.
#[test]
fn a_sheet_that_contradicts_itself_is_said() {
    journey("type-sheet", 1280, 800, |page| async move {
        page.card("card-truck").await?;
        page.tap("type-sheet").await?;
        let held = text(&page, "closure").await?;
        assert!(held.contains("Laden axle loads add up: 5 000 kg"), "{held}");
        page.enter("truck.steer_axle_laden_kg", "835").await?;
        page.expect_state("hold").await?;
        let (reason, more) = (page.reason().await?, text(&page, "verdict-more").await?);
        assert!(reason.contains("does not fit together"), "{reason}");
        assert!(more.starts_with("If only one figure is wrong: Steer axle load, laden (rather "), "{more}");
        page.enter("truck.steer_axle_laden_kg", "535").await?;
        page.expect_state("go").await?;
        Ok(())
    });
}

/// A clamp under a plate for bare forks: no-go with its name and weight; the sheet holds every fact, prints on one page
/// and goes back to the check.
#[test]
fn the_request_sheet_shows_the_facts() {
    journey("plate-request", 1280, 800, |page| async move {
        page.expect_state("go").await?;
        assert!(!page.there("request-open").await, "a plate that covers it is not asked for");
        page.card("card-truck").await?;
        page.tap("choice-truck.attachment-there").await?;
        page.enter("truck.attachment.name", "Drum clamp").await?;
        page.enter("truck.attachment.mass_kg", "120").await?;
        page.enter("truck.attachment.lost_load_m", "110").await?;
        page.enter("truck.attachment.cg_ahead_m", "80").await?;
        page.expect_state("no_go").await?;
        let said = page.reason().await?.replace(['\u{a0}', '\u{202f}'], " ");
        assert_eq!(said, "The plate is for the bare forks; fitted: Drum clamp, 120 kg.");
        page.tap("request-open").await?;
        let sheet = text(&page, "request").await?;
        for fact in
            ["Drum clamp", "CB-3 (invented)", "3 200 kg", "1 400 mm", "cushion tyres", "110 mm", "2024-03-12", "820 kg"]
        {
            assert!(sheet.contains(fact), "no {fact} in {sheet}");
        }
        assert!(text(&page, "request-gaps").await?.contains("for the bare forks"));
        assert!(text(&page, "request-estimate").await?.contains("for planning only"));
        // On A4 and on Letter.
        for (width, height) in [(8.27, 11.69), (8.5, 11.0)] {
            assert_eq!(pages(&page, width, height).await?, 1, "{width} x {height}");
        }
        page.driver.active_element().await?.send_keys(Key::Escape + "").await?;
        page.expect_state("no_go").await?;
        page.tap("undo").await?;
        page.find("verdict").await?;
        Ok(())
    });
}

/// On a phone the same, and nothing is wider than the screen.
#[test]
fn the_request_sheet_fits_a_phone() {
    journey("plate-request-phone", 390, 844, |page| async move {
        page.card("card-truck").await?;
        page.tap("choice-truck.plate-none").await?;
        page.tap("request-open-plate").await?;
        let sheet = text(&page, "request").await?;
        assert!(sheet.contains("There is no plate."), "{sheet}");
        let script = "return document.documentElement.scrollWidth - document.documentElement.clientWidth";
        let over = page.driver.execute(script, Vec::new()).await?.json().as_i64();
        assert_eq!(over, Some(0));
        page.tap("request-close").await?;
        page.find("verdict").await?;
        Ok(())
    });
}
