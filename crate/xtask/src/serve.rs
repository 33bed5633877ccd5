//! A small HTTP server for the finished page, on this machine only.
//!
//! One thread and one request per connection: the server that the test runner
//! brings along hands kept-alive connections to a pool of threads and, under a
//! browser that opens many, sometimes leaves one waiting for seconds.

use std::fs;
use std::io::{self, BufRead, BufReader, Read, Write};
use std::net::{TcpListener, TcpStream};
use std::path::{Path, PathBuf};
use std::thread;
use std::time::Duration;

use anyhow::{Context, Result};

/// Longest request head taken, in bytes.
const MAX_HEAD: u64 = 64 * 1024;
/// How long a connection may keep its thread waiting.
const PATIENCE: Duration = Duration::from_secs(30);

/// Serves `dir` until the process is ended, and prints the address.
///
/// # Errors
/// When the port is taken.
pub(crate) fn forever(dir: &Path, port: u16) -> Result<()> {
    let listener = listen(port)?;
    println!("http://{}/", listener.local_addr()?);
    accept_all(&listener, dir);
    Ok(())
}

/// Serves `dir` on a free port from another thread, and returns the address.
///
/// # Errors
/// When no port can be had.
pub(crate) fn beside(dir: &Path) -> Result<String> {
    let listener = listen(0)?;
    let address = format!("http://{}/", listener.local_addr()?);
    let dir = dir.to_path_buf();
    thread::spawn(move || accept_all(&listener, &dir));
    Ok(address)
}

fn listen(port: u16) -> Result<TcpListener> {
    TcpListener::bind(("127.0.0.1", port)).with_context(|| format!("cannot listen on port {port}"))
}

fn accept_all(listener: &TcpListener, dir: &Path) {
    for stream in listener.incoming().flatten() {
        let dir = dir.to_path_buf();
        thread::spawn(move || {
            // A browser that hangs up early is no fault of ours.
            let _hung_up = answer(stream, &dir);
        });
    }
}

fn answer(mut stream: TcpStream, dir: &Path) -> io::Result<()> {
    stream.set_read_timeout(Some(PATIENCE))?;
    stream.set_write_timeout(Some(PATIENCE))?;
    let mut head = BufReader::new(stream.try_clone()?).take(MAX_HEAD);
    let mut request = String::new();
    head.read_line(&mut request)?;
    // The headers change nothing, but must be read before the answer.
    let mut line = String::new();
    while head.read_line(&mut line)? > 2 {
        line.clear();
    }
    let mut words = request.split_ascii_whitespace();
    let method = words.next().unwrap_or_default();
    let response = respond(dir, method, words.next().unwrap_or_default());
    stream.write_all(response.head().as_bytes())?;
    if method != "HEAD" {
        stream.write_all(&response.body)?;
    }
    stream.flush()
}

struct Response {
    status: &'static str,
    mime: &'static str,
    body: Vec<u8>,
}

impl Response {
    fn refusal(status: &'static str) -> Self {
        Self {
            status,
            mime: "text/plain; charset=utf-8",
            body: status.into(),
        }
    }

    /// Status line and headers. `no-cache` lets a browser keep a copy but makes
    /// it ask every time, so a rebuilt page is never mixed with an older one.
    fn head(&self) -> String {
        format!(
            "HTTP/1.1 {}\r\nContent-Type: {}\r\nContent-Length: {}\r\nCache-Control: no-cache\r\n\
             X-Content-Type-Options: nosniff\r\nConnection: close\r\n\r\n",
            self.status,
            self.mime,
            self.body.len()
        )
    }
}

fn respond(dir: &Path, method: &str, target: &str) -> Response {
    if !matches!(method, "GET" | "HEAD") {
        return Response::refusal("405 Method Not Allowed");
    }
    let path = target.split(['?', '#']).next().unwrap_or_default();
    let file = locate(dir, path).and_then(|path| Some((mime(&path), fs::read(path).ok()?)));
    match file {
        Some((mime, body)) => Response {
            status: "200 OK",
            mime,
            body,
        },
        None => Response::refusal("404 Not Found"),
    }
}

/// The file a URL path names; a directory names its `index.html`. None for
/// what is not there or lies outside `dir`. Emitted names need no escapes, so
/// none are read.
fn locate(dir: &Path, url_path: &str) -> Option<PathBuf> {
    let dir = dir.canonicalize().ok()?;
    let path = dir.join(url_path.trim_start_matches('/'));
    let mut path = path.canonicalize().ok()?;
    if !path.starts_with(&dir) {
        return None;
    }
    if path.is_dir() {
        path.push("index.html");
    }
    Some(path)
}

fn mime(path: &Path) -> &'static str {
    match path.extension().and_then(|extension| extension.to_str()) {
        Some("css") => "text/css; charset=utf-8",
        Some("html") => "text/html; charset=utf-8",
        Some("js") => "text/javascript; charset=utf-8",
        Some("json") => "application/json",
        Some("png") => "image/png",
        Some("svg") => "image/svg+xml",
        Some("wasm") => "application/wasm",
        Some("webmanifest") => "application/manifest+json",
        _ => "application/octet-stream",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn site() -> tempfile::TempDir {
        let dir = tempfile::tempdir().expect("a temporary directory");
        fs::create_dir(dir.path().join("site")).expect("site directory");
        fs::write(dir.path().join("site/index.html"), "page").expect("index");
        fs::write(dir.path().join("site/core.wasm"), "wasm").expect("wasm");
        fs::write(dir.path().join("outside.txt"), "private").expect("outside");
        dir
    }

    fn get(dir: &tempfile::TempDir, target: &str) -> Response {
        respond(&dir.path().join("site"), "GET", target)
    }

    #[test]
    fn the_root_is_the_index() {
        let response = get(&site(), "/?from=home");
        assert_eq!(response.body, b"page", "the root answers");
        assert_eq!(
            response.mime, "text/html; charset=utf-8",
            "the root is HTML"
        );
    }

    #[test]
    fn wasm_has_the_type_browsers_stream() {
        let response = get(&site(), "/core.wasm");
        assert_eq!(
            response.mime, "application/wasm",
            "streaming refuses any other type"
        );
    }

    #[test]
    fn nothing_outside_the_directory_is_served() {
        let dir = site();
        for target in [
            "/../outside.txt",
            "/%2e%2e/outside.txt",
            "//etc/passwd",
            "/gone.js",
            "",
        ] {
            let response = get(&dir, target);
            assert_ne!(response.body, b"private", "{target} is not served");
            let known = target.is_empty() || response.status.starts_with("404");
            assert!(known, "{target} is not found: {}", response.status);
        }
    }

    #[test]
    fn other_methods_are_refused() {
        let dir = site();
        let response = respond(dir.path(), "POST", "/");
        assert!(
            response.status.starts_with("405"),
            "POST is refused: {}",
            response.status
        );
    }

    #[test]
    fn a_whole_exchange_over_the_network() {
        let dir = site();
        let address = beside(&dir.path().join("site")).expect("a server");
        let host = address.trim_start_matches("http://").trim_end_matches('/');
        let mut stream = TcpStream::connect(host).expect("a connection");
        let request = format!("GET /index.html HTTP/1.1\r\nHost: {host}\r\n\r\n");
        stream.write_all(request.as_bytes()).expect("sent");
        let mut answer = String::new();
        stream
            .read_to_string(&mut answer)
            .expect("answered and closed");
        assert!(
            answer.starts_with("HTTP/1.1 200 OK\r\n"),
            "status: {answer}"
        );
        assert!(
            answer.contains("Cache-Control: no-cache\r\n"),
            "no stale copies: {answer}"
        );
        assert!(answer.ends_with("\r\n\r\npage"), "body: {answer}");
    }
}
