//! Journeys through the real page in a real browser.
//!
//! Needs chromium, chromedriver and a built page: `STANDFAST_DIST` names its folder (default:
//! `dist` of the workspace). Every journey has its own server on a free port, its own driver and
//! profile, polls instead of sleeping, takes a picture when it fails, and fails on any error in the
//! console and on any request to anywhere but its own server.

mod book;
mod harness;
mod journeys;
mod limits;
mod loads;
mod moves;
mod pictures;
mod plates;
mod remedies;
mod server;
mod speed;
mod tolerances;
