//! The pictures of the README, taken anew on every run into the folder that `STANDFAST_PICTURES` names,
//! or else into a temporary one.

use crate::harness::journey;
use std::path::PathBuf;

#[test]
fn pictures_show_more_than_paper() {
    let folder = std::env::var_os("STANDFAST_PICTURES")
        .map_or_else(|| std::env::temp_dir().join("standfast-pictures"), PathBuf::from);
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
