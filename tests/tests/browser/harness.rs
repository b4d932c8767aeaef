//! A browser with the page open, and what a journey asks of it.

use crate::server::Server;
use serde_json::{Value, json};
use std::future::Future;
use std::io::{BufRead, BufReader};
use std::path::PathBuf;
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};
use thirtyfour::prelude::*;

/// What a journey returns; an error ends it with a picture.
pub type Outcome = Result<(), Box<dyn std::error::Error + Send + Sync>>;

/// How long anything may take to appear.
const PATIENCE: Duration = Duration::from_secs(20);

/// The folder with the built page.
pub fn dist() -> PathBuf {
    std::env::var_os("STANDFAST_DIST")
        .map_or_else(|| PathBuf::from(concat!(env!("CARGO_MANIFEST_DIR"), "/../dist")), PathBuf::from)
}

/// The program that a variable names, or the usual one.
fn program(variable: &str, usual: &str) -> String {
    std::env::var(variable).unwrap_or_else(|_| usual.to_owned())
}

struct Chromedriver {
    child: Child,
    port: u16,
}

impl Chromedriver {
    /// Starts one. Two that start at once can choose the same port, and then one gives up: it is started again.
    fn start() -> std::io::Result<Self> {
        let again = |e: std::io::Error| {
            eprintln!("{e}, once more");
            std::thread::sleep(Duration::from_millis(300));
            Self::start_once()
        };
        Self::start_once().or_else(again).or_else(again)
    }

    fn start_once() -> std::io::Result<Self> {
        let mut child = Command::new(program("STANDFAST_DRIVER", "chromedriver"))
            .arg("--port=0")
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()?;
        let out = child.stdout.take().ok_or_else(|| std::io::Error::other("chromedriver has no output"))?;
        let mut lines = BufReader::new(out).lines();
        // The first line says "on port 0": only this one has the real number.
        let port = lines
            .by_ref()
            .map_while(Result::ok)
            .find_map(|line| {
                line.split("started successfully on port ").nth(1).map(|p| p.trim_end_matches('.').to_owned())
            })
            .and_then(|p| p.parse().ok());
        std::thread::spawn(move || lines.for_each(drop));
        // Dropped without a port, it is ended.
        let driver = Self { child, port: port.unwrap_or_default() };
        if driver.port > 0 { Ok(driver) } else { Err(std::io::Error::other("chromedriver did not start")) }
    }
}

impl Drop for Chromedriver {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

/// The page in a browser.
pub struct Page {
    /// The browser.
    pub driver: WebDriver,
    /// Where the page is served.
    pub server: Server,
}

/// Runs one journey in a window of this size, and holds the console and the network to account.
pub fn journey<F, R>(name: &str, width: u32, height: u32, steps: F)
where
    F: FnOnce(Page) -> R,
    R: Future<Output = Outcome>,
{
    let runtime = tokio::runtime::Builder::new_multi_thread().worker_threads(2).enable_all().build().expect("runtime");
    runtime.block_on(async {
        let chromedriver = Chromedriver::start().expect("chromedriver starts");
        let server = Server::start(dist()).expect("server starts");
        let mut caps = DesiredCapabilities::chrome();
        caps.set_binary(&program("STANDFAST_BROWSER", "/usr/bin/chromium")).expect("capability");
        for arg in [
            "--headless=new",
            "--no-sandbox",
            "--disable-gpu",
            "--disable-dev-shm-usage",
            "--hide-scrollbars",
            "--no-first-run",
            "--disable-background-networking",
            "--disable-component-update",
            "--disable-sync",
            "--lang=en",
        ] {
            caps.add_arg(arg).expect("capability");
        }
        caps.add_arg(&format!("--window-size={width},{height}")).expect("capability");
        caps.set("goog:loggingPrefs", json!({"browser": "ALL", "performance": "ALL"})).expect("capability");
        let driver =
            WebDriver::new(format!("http://127.0.0.1:{}", chromedriver.port), caps).await.expect("browser starts");
        let page = Page { driver: driver.clone(), server };
        let (origin, missing) = (page.server.origin.clone(), page.server.missing.clone());
        let outcome = async {
            let metrics = json!({"width": width, "height": height, "deviceScaleFactor": 1, "mobile": false});
            page.driver.cdp().send_raw("Emulation.setDeviceMetricsOverride", metrics).await?;
            page.open().await?;
            steps(page).await
        }
        .await;
        if outcome.is_err() {
            let picture = std::env::temp_dir().join(format!("standfast-{name}.png"));
            let _ = driver.screenshot(&picture).await;
            eprintln!("{name}: picture in {}", picture.display());
        }
        let console = driver.get_log("browser").await.unwrap_or_default();
        let network = driver.get_log("performance").await.unwrap_or_default();
        let _ = driver.quit().await;
        drop(chromedriver);
        outcome.unwrap_or_else(|e| panic!("{name}: {e}"));
        let errors: Vec<String> = console
            .iter()
            .map(|entry| format!("{entry:?}"))
            .filter(|text| text.contains("Severe") || text.contains("SEVERE") || text.contains("Warning"))
            .collect();
        assert!(errors.is_empty(), "{name}: console: {errors:#?}");
        assert_eq!(*missing.lock().expect("list"), Vec::<String>::new(), "{name}: files not there");
        let asked: Vec<String> = network.iter().filter_map(|entry| requested(&entry.message)).collect();
        assert!(asked.iter().any(|url| url.starts_with(&origin)), "{name}: the network log is empty");
        let outside: Vec<_> = asked
            .iter()
            .filter(|url| !url.starts_with(&origin) && !url.starts_with("data:") && !url.starts_with("blob:"))
            .collect();
        assert!(outside.is_empty(), "{name}: requests outside: {outside:?}");
    });
}

/// The address of a request in a line of the performance log.
fn requested(message: &str) -> Option<String> {
    let value: Value = serde_json::from_str(message).ok()?;
    let event = value.get("message")?;
    if event.get("method")?.as_str()? != "Network.requestWillBeSent" {
        return None;
    }
    Some(event.pointer("/params/request/url")?.as_str()?.to_owned())
        .filter(|url| url.starts_with("http") || url.contains(':'))
}

impl Page {
    /// Opens the page and waits until it answers.
    pub async fn open(&self) -> Outcome {
        self.driver.goto(&self.server.origin).await?;
        self.find("verdict").await?;
        Ok(())
    }

    /// Loads it again.
    pub async fn reload(&self) -> Outcome {
        self.driver.refresh().await?;
        self.find("verdict").await?;
        Ok(())
    }

    /// The element with a test name, as soon as it is there.
    pub async fn find(&self, name: &str) -> Result<WebElement, Box<dyn std::error::Error + Send + Sync>> {
        let by = By::Css(format!("[data-testid=\"{name}\"]"));
        let start = Instant::now();
        loop {
            match self.driver.find(by.clone()).await {
                Ok(element) => return Ok(element),
                Err(_) if start.elapsed() < PATIENCE => tokio::time::sleep(Duration::from_millis(30)).await,
                Err(e) => return Err(format!("no `{name}`: {e}").into()),
            }
        }
    }

    /// Whether it is there now.
    pub async fn there(&self, name: &str) -> bool {
        self.driver.find(By::Css(format!("[data-testid=\"{name}\"]"))).await.is_ok()
    }

    /// Taps it, scrolled into view.
    pub async fn tap(&self, name: &str) -> Outcome {
        let element = self.find(name).await?;
        element.scroll_into_view().await?;
        element.click().await?;
        Ok(())
    }

    /// Opens a card unless it is open.
    pub async fn card(&self, name: &str) -> Outcome {
        let header = self.find(name).await?;
        if header.attr("aria-expanded").await?.as_deref() != Some("true") {
            self.tap(name).await?;
            self.wait(&format!("{name} open"), async || {
                Ok(self.find(name).await?.attr("aria-expanded").await?.as_deref() == Some("true"))
            })
            .await?;
        }
        Ok(())
    }

    /// Replaces what stands in a field.
    pub async fn enter(&self, path: &str, text: &str) -> Outcome {
        let field = self.find(&format!("field-{path}")).await?;
        field.scroll_into_view().await?;
        field.focus().await?;
        field.send_keys(Key::Control + "a").await?;
        if text.is_empty() {
            field.send_keys(Key::Delete + "").await?
        } else {
            field.send_keys(text).await?
        }
        let shown = self.value(path).await?;
        if shown == text { Ok(()) } else { Err(format!("{path}: typed `{text}`, shows `{shown}`").into()) }
    }

    /// What a field shows.
    pub async fn value(&self, path: &str) -> Result<String, Box<dyn std::error::Error + Send + Sync>> {
        Ok(self.find(&format!("field-{path}")).await?.prop("value").await?.unwrap_or_default())
    }

    /// The verdict's state.
    pub async fn state(&self) -> Result<String, Box<dyn std::error::Error + Send + Sync>> {
        Ok(self.find("verdict").await?.attr("data-state").await?.unwrap_or_default())
    }

    /// The verdict's sentence.
    pub async fn reason(&self) -> Result<String, Box<dyn std::error::Error + Send + Sync>> {
        Ok(self.find("verdict-reason").await?.text().await?)
    }

    /// Waits for a verdict.
    pub async fn expect_state(&self, state: &str) -> Outcome {
        self.wait(&format!("verdict {state}"), async || Ok(self.state().await? == state)).await
    }

    /// Waits until something holds.
    pub async fn wait<F>(&self, what: &str, holds: F) -> Outcome
    where
        F: AsyncFn() -> Result<bool, Box<dyn std::error::Error + Send + Sync>>,
    {
        let start = Instant::now();
        while start.elapsed() < PATIENCE {
            if holds().await.unwrap_or(false) {
                return Ok(());
            }
            tokio::time::sleep(Duration::from_millis(30)).await;
        }
        Err(format!("waited in vain for {what}").into())
    }

    /// Everything kept in the browser, as one text.
    pub async fn kept(&self) -> Result<String, Box<dyn std::error::Error + Send + Sync>> {
        let script = "return JSON.stringify(Object.entries(localStorage).sort())";
        Ok(self.driver.execute(script, Vec::new()).await?.json().as_str().unwrap_or_default().to_owned())
    }

    /// Drags the middle of an element by so many pixels, as a pointer does, in several moves.
    pub async fn drag(&self, name: &str, right: i64, down: i64) -> Outcome {
        let element = self.find(name).await?;
        element.scroll_into_view().await?;
        let mut chain = self.driver.action_chain().move_to_element_center(&element).click_and_hold();
        for _ in 0..4 {
            chain = chain.move_by_offset(right / 4, down / 4);
        }
        chain.release().perform().await?;
        Ok(())
    }
}
