//! A file server for the built page on a free port of this machine, with a list of what was asked for.

use std::io::{BufRead, BufReader, Write};
use std::net::{TcpListener, TcpStream};
use std::path::{Component, Path, PathBuf};
use std::sync::{Arc, Mutex};

/// A running server; it ends with the process.
pub struct Server {
    /// Where it answers, with a final slash.
    pub origin: String,
    /// Paths asked for that were not there.
    pub missing: Arc<Mutex<Vec<String>>>,
}

impl Server {
    /// Serves a folder.
    pub fn start(root: PathBuf) -> std::io::Result<Self> {
        let listener = TcpListener::bind(("127.0.0.1", 0))?;
        let origin = format!("http://127.0.0.1:{}/", listener.local_addr()?.port());
        let missing = Arc::new(Mutex::new(Vec::new()));
        let noted = Arc::clone(&missing);
        std::thread::spawn(move || {
            for stream in listener.incoming().flatten() {
                let (root, noted) = (root.clone(), Arc::clone(&noted));
                std::thread::spawn(move || answer(stream, &root, &noted));
            }
        });
        Ok(Self { origin, missing })
    }
}

fn answer(mut stream: TcpStream, root: &Path, missing: &Mutex<Vec<String>>) -> Option<()> {
    let mut reader = BufReader::new(stream.try_clone().ok()?);
    let mut request = String::new();
    reader.read_line(&mut request).ok()?;
    let mut header = String::new();
    while reader.read_line(&mut header).ok()? > 2 {
        header.clear();
    }
    let path = request.split_whitespace().nth(1)?.split(['?', '#']).next()?.trim_start_matches('/');
    let file = if path.is_empty() { Path::new("index.html") } else { Path::new(path) };
    let inside = file.components().all(|c| matches!(c, Component::Normal(_)));
    let body = if inside { std::fs::read(root.join(file)).ok() } else { None };
    let kind = match file.extension().and_then(|e| e.to_str()) {
        Some("html") => "text/html; charset=utf-8",
        Some("js") => "text/javascript",
        Some("css") => "text/css",
        Some("wasm") => "application/wasm",
        Some("svg") => "image/svg+xml",
        Some("png") => "image/png",
        _ => "application/octet-stream",
    };
    let (status, body) = match body {
        Some(body) => ("200 OK", body),
        // What a browser asks of its own accord for a page that names no icon, as the page itself does.
        None if path == "favicon.ico" => ("200 OK", Vec::new()),
        None => {
            missing.lock().ok()?.push(path.to_owned());
            ("404 Not Found", Vec::new())
        }
    };
    let head = format!(
        "HTTP/1.1 {status}\r\nContent-Type: {kind}\r\nContent-Length: {}\r\nCache-Control: no-store\r\nConnection: close\r\n\r\n",
        body.len()
    );
    stream.write_all(head.as_bytes()).ok()?;
    stream.write_all(&body).ok()
}
