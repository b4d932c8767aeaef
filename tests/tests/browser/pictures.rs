//! The pictures of the README, taken anew on every run into the folder that `STANDFAST_PICTURES` names,
//! or else into a temporary one.

use crate::harness::journey;
use std::path::PathBuf;

fn folder() -> PathBuf {
    std::env::var_os("STANDFAST_PICTURES")
        .map_or_else(|| std::env::temp_dir().join("standfast-pictures"), PathBuf::from)
}

/// The bench where a load is built from parts.
#[test]
fn a_load_built_from_parts_is_pictured() {
    let picture = folder().join("parts.png");
    journey("parts-pictured", 1280, 900, |page| async move {
        page.tap("example-3").await?;
        page.card("card-load").await?;
        page.tap("open-parts").await?;
        page.find("parts-centre-side").await?;
        page.driver.execute("document.activeElement.blur(); scrollTo(0, 0)", Vec::new()).await?;
        let bytes = page.driver.screenshot_as_png().await?;
        assert!(bytes.len() > 30_000, "{} bytes: a blank page", bytes.len());
        std::fs::create_dir_all(picture.parent().unwrap_or(&picture))?;
        std::fs::write(&picture, bytes)?;
        Ok(())
    });
}

#[test]
fn pictures_show_more_than_paper() {
    let folder = folder();
    for (name, width, height) in [("tablet", 1280, 800), ("portrait", 800, 1280), ("phone", 390, 844)] {
        let picture = folder.join(format!("{name}.png"));
        journey(name, width, height, |page| async move {
            page.expect_state("go").await?;
            let bytes = page.driver.screenshot_as_png().await?;
            assert!(bytes.len() > 30_000, "{} bytes: a blank page", bytes.len());
            std::fs::create_dir_all(picture.parent().unwrap_or(&picture))?;
            std::fs::write(&picture, bytes)?;
            Ok(())
        });
    }
}
