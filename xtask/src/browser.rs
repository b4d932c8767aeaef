//! The browser that the journeys run in, and its driver.

use std::path::PathBuf;

use crate::failure::{Failure, Outcome};
use crate::{install, process};

/// Names under which the browser is found.
const BROWSERS: [&str; 4] = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable"];

/// Debian's packages for both, and a font for the page's text.
const PACKAGES: [&str; 3] = ["chromium", "chromium-driver", "fonts-dejavu-core"];

/// A browser and its driver.
#[derive(Debug)]
pub struct Browser {
    /// The browser.
    pub program: PathBuf,
    /// Its driver.
    pub driver: PathBuf,
}

impl Browser {
    /// Finds both, or installs them.
    ///
    /// # Errors
    /// When they are not there and cannot be installed; the message names what to install.
    pub fn provide() -> Outcome<Self> {
        if let Some(found) = Self::find() {
            return Ok(found);
        }
        install::by_apt(&PACKAGES, "a browser with its driver (for the journeys)")?;
        Self::find().ok_or_else(|| Failure::new("chromium and chromedriver were installed but are not on the PATH"))
    }

    fn find() -> Option<Self> {
        let program = BROWSERS.iter().find_map(|name| process::on_path(name))?;
        Some(Self { program, driver: process::on_path("chromedriver")? })
    }
}
