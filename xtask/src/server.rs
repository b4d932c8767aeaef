//! A server of static files for this machine alone, to look at the page. It reads GET requests and closes after each.

use std::fs;
use std::io::{Read, Write};
use std::net::{Ipv4Addr, TcpListener, TcpStream};
use std::path::{Path, PathBuf};
use std::thread;
use std::time::Duration;

use crate::failure::{Failure, Outcome};
use crate::mime;

/// How many ports are tried after the one asked for.
const MORE_PORTS: u16 = 50;
/// The longest request head that is read.
const HEAD_LIMIT: usize = 16 * 1024;
/// How long a slow client is waited for.
const PATIENCE: Duration = Duration::from_secs(10);

/// Serves `folder` until the program is stopped.
///
/// # Errors
/// When no port is free.
pub fn serve(folder: &Path, port: u16) -> Outcome<()> {
    let root = folder.canonicalize().map_err(|e| Failure::at("serve", folder, e))?;
    let listener = listen(port)?;
    let address = listener.local_addr().map_err(|e| Failure::new(format!("the port was lost: {e}")))?;
    println!("\nStandfast is at http://{address}/ for this machine only. Ctrl-C stops it.");
    for stream in listener.incoming().flatten() {
        let root = root.clone();
        // A visitor who leaves early is no reason to stop.
        thread::spawn(move || converse(stream, &root).ok());
    }
    Ok(())
}

/// Takes `port` or the next free one, on the loopback interface.
fn listen(port: u16) -> Outcome<TcpListener> {
    let last = port.saturating_add(MORE_PORTS);
    for candidate in port..=last {
        if let Ok(listener) = TcpListener::bind((Ipv4Addr::LOCALHOST, candidate)) {
            return Ok(listener);
        }
    }
    Err(Failure::new(format!("none of the ports {port} to {last} is free; choose another with --port")))
}

fn converse(mut stream: TcpStream, root: &Path) -> std::io::Result<()> {
    stream.set_read_timeout(Some(PATIENCE))?;
    stream.set_write_timeout(Some(PATIENCE))?;
    let mut head = Vec::new();
    let mut piece = [0; 2048];
    while !head.windows(4).any(|four| four == b"\r\n\r\n") && head.len() < HEAD_LIMIT {
        match stream.read(&mut piece)? {
            0 => break,
            length => head.extend_from_slice(&piece[..length]),
        }
    }
    let line = String::from_utf8_lossy(&head);
    stream.write_all(&answer(root, line.lines().next().unwrap_or_default()))
}

/// The whole answer to a request line.
fn answer(root: &Path, request: &str) -> Vec<u8> {
    let mut words = request.split(' ');
    let (method, target) = (words.next().unwrap_or_default(), words.next().unwrap_or_default());
    let with_body = method == "GET";
    if !with_body && method != "HEAD" {
        return response("405 Method Not Allowed", "text/plain; charset=utf-8", b"only GET and HEAD\n", true);
    }
    let found = resolve(root, target).and_then(|path| Some((mime::of(&path), fs::read(&path).ok()?)));
    match found {
        Some((kind, body)) => response("200 OK", kind, &body, with_body),
        // A missing file is missing. Answering with the page instead would hide broken links.
        None => response("404 Not Found", "text/plain; charset=utf-8", b"not found\n", with_body),
    }
}

fn response(status: &str, kind: &str, body: &[u8], with_body: bool) -> Vec<u8> {
    let length = body.len();
    let mut bytes = format!(
        "HTTP/1.1 {status}\r\nContent-Type: {kind}\r\nContent-Length: {length}\r\nCache-Control: no-store\r\n\
         X-Content-Type-Options: nosniff\r\nConnection: close\r\n\r\n"
    )
    .into_bytes();
    if with_body {
        bytes.extend_from_slice(body);
    }
    bytes
}

/// The file that a request names, if it is one inside `root` (a canonical path).
fn resolve(root: &Path, target: &str) -> Option<PathBuf> {
    let path = target.split(['?', '#']).next()?.strip_prefix('/')?;
    let path = percent_decoded(path)?;
    let mut file = root.to_path_buf();
    for part in path.split('/').filter(|part| !part.is_empty()) {
        // No way up, no hidden files, no drive or device names.
        if part.starts_with('.') || part.contains(['\\', ':', '\0']) {
            return None;
        }
        file.push(part);
    }
    if path.is_empty() || path.ends_with('/') {
        file.push("index.html");
    }
    // A link in the folder must not lead out of it either.
    let file = file.canonicalize().ok()?;
    (file.starts_with(root) && file.is_file()).then_some(file)
}

/// Undoes `%20` and the like. `None` if the result is not text.
fn percent_decoded(text: &str) -> Option<String> {
    let mut bytes = Vec::new();
    let mut rest = text.bytes();
    while let Some(byte) = rest.next() {
        if byte != b'%' {
            bytes.push(byte);
            continue;
        }
        let digit = |byte: Option<u8>| char::from(byte?).to_digit(16);
        let (high, low) = (digit(rest.next())?, digit(rest.next())?);
        bytes.push(u8::try_from(high * 16 + low).ok()?);
    }
    String::from_utf8(bytes).ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    type Tried = Result<(), Box<dyn std::error::Error>>;

    /// A folder `site` to serve, beside a file that must stay out of reach.
    fn site() -> Result<(tempfile::TempDir, PathBuf), Box<dyn std::error::Error>> {
        let folder = tempfile::tempdir()?;
        let root = folder.path().join("site");
        fs::create_dir_all(root.join("sub"))?;
        fs::write(folder.path().join("secret.txt"), "secret")?;
        fs::write(root.join("index.html"), "<p>front")?;
        fs::write(root.join("page_bg.wasm"), b"\0asm")?;
        fs::write(root.join("two words.txt"), "two")?;
        fs::write(root.join(".hidden"), "hidden")?;
        fs::write(root.join("sub/index.html"), "<p>sub")?;
        let root = root.canonicalize()?;
        Ok((folder, root))
    }

    fn ask(root: &Path, request: &str) -> String {
        String::from_utf8_lossy(&answer(root, request)).into_owned()
    }

    #[test]
    fn files_are_served_with_type_length_and_no_caching() -> Tried {
        let (_folder, root) = site()?;
        let front = ask(&root, "GET / HTTP/1.1");
        assert!(front.starts_with("HTTP/1.1 200 OK\r\nContent-Type: text/html; charset=utf-8\r\n"), "{front}");
        assert!(front.contains("Content-Length: 8\r\nCache-Control: no-store\r\n"), "{front}");
        assert!(front.ends_with("\r\n\r\n<p>front"), "{front}");
        assert!(ask(&root, "GET /page_bg.wasm?x=1 HTTP/1.1").contains("Content-Type: application/wasm\r\n"));
        assert!(ask(&root, "GET /two%20words.txt HTTP/1.1").ends_with("two"));
        assert!(ask(&root, "GET /sub/ HTTP/1.1").ends_with("<p>sub"));
        Ok(())
    }

    #[test]
    fn head_has_the_length_but_no_body() -> Tried {
        let (_folder, root) = site()?;
        let front = ask(&root, "HEAD / HTTP/1.1");
        assert!(front.contains("Content-Length: 8\r\n") && front.ends_with("\r\n\r\n"), "{front}");
        Ok(())
    }

    #[test]
    fn what_is_missing_is_missing() -> Tried {
        let (_folder, root) = site()?;
        for target in ["/none", "/none/", "/sub", "", "none", "/%", "/%zz", "/%ff", "/index.html/x"] {
            assert!(ask(&root, &format!("GET {target} HTTP/1.1")).starts_with("HTTP/1.1 404"), "{target}");
        }
        for request in ["POST / HTTP/1.1", "", "\0\0", "get / HTTP/1.1"] {
            assert!(ask(&root, request).starts_with("HTTP/1.1 405"), "{request}");
        }
        Ok(())
    }

    #[test]
    fn there_is_no_way_out_of_the_folder() -> Tried {
        let (folder, root) = site()?;
        for target in [
            "/../secret.txt",
            "/sub/../../secret.txt",
            "/%2e%2e/secret.txt",
            "/..%2fsecret.txt",
            "/%2e%2e%2fsecret.txt",
            "/..\\secret.txt",
            "//../secret.txt",
            "/.hidden",
            "/C:/secret.txt",
            "/secret.txt%00",
        ] {
            assert_eq!(resolve(&root, target), None, "{target}");
        }
        let absolute = folder.path().join("secret.txt");
        assert_eq!(resolve(&root, &format!("/{}", absolute.display())), None);
        Ok(())
    }

    #[cfg(unix)]
    #[test]
    fn a_link_does_not_lead_out_either() -> Tried {
        let (folder, root) = site()?;
        std::os::unix::fs::symlink(folder.path().join("secret.txt"), root.join("inside.txt"))?;
        assert_eq!(resolve(&root, "/inside.txt"), None);
        Ok(())
    }

    #[test]
    fn a_taken_port_leads_to_the_next_one_on_this_machine() -> Tried {
        let taken = TcpListener::bind((Ipv4Addr::LOCALHOST, 0))?;
        let port = taken.local_addr()?.port();
        let address = listen(port)?.local_addr()?;
        assert!(address.ip().is_loopback());
        assert_ne!(address.port(), port);
        Ok(())
    }

    #[test]
    fn a_conversation_over_the_wire() -> Tried {
        let (_folder, root) = site()?;
        let listener = TcpListener::bind((Ipv4Addr::LOCALHOST, 0))?;
        let address = listener.local_addr()?;
        let server = thread::spawn(move || listener.accept().and_then(|(stream, _)| converse(stream, &root)));
        let mut client = TcpStream::connect(address)?;
        client.write_all(b"GET /index.html HTTP/1.1\r\nHost: x\r\n\r\n")?;
        let mut text = String::new();
        client.read_to_string(&mut text)?;
        assert!(text.ends_with("<p>front"), "{text}");
        assert!(server.join().is_ok_and(|result| result.is_ok()));
        Ok(())
    }
}
