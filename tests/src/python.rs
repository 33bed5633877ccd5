//! Programs of another language that answer while the tests run.
use std::io::Write as _;
use std::process::{Command, Stdio};

use crate::tree::in_tests;

/// What `reference/SCRIPT` writes when it is given this text to read.
///
/// # Panics
/// When there is no `python3`, or the program ends badly.
#[must_use]
pub fn answer(script: &str, asked: String) -> String {
    let script = in_tests(&format!("reference/{script}"));
    let mut python = Command::new("python3")
        .arg(&script)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .unwrap_or_else(|e| panic!("python3 is needed to run {}: {e}", script.display()));
    let mut stdin = python.stdin.take().expect("a pipe");
    // Beside it, or both would wait where either pipe is full.
    let writer = std::thread::spawn(move || stdin.write_all(asked.as_bytes()));
    let out = python.wait_with_output().expect("python3 ends");
    writer.join().expect("joined").expect("python3 reads");
    assert!(out.status.success(), "{} ended badly", script.display());
    String::from_utf8(out.stdout).expect("UTF-8")
}
