//! Running other programs.

use std::ffi::OsStr;
use std::io::{BufRead, BufReader, Write};
use std::process::{Command, Stdio};

use anyhow::{Context, Result, bail};

use crate::place;

/// A command to be run at the top of the work tree.
pub(crate) fn command(program: impl AsRef<OsStr>, arguments: &[&str]) -> Command {
    let mut command = Command::new(program);
    command.args(arguments).current_dir(place::root());
    command
}

/// The cargo that runs this task.
pub(crate) fn cargo(arguments: &[&str]) -> Command {
    let program = std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into());
    let mut command = command(program, arguments);
    // The outer cargo describes this task to itself; to the inner one the same
    // variables would look like a changed build.
    for (name, _) in std::env::vars_os() {
        let text = name.to_string_lossy();
        if text.starts_with("CARGO_PKG_") || text.starts_with("CARGO_MANIFEST_") {
            command.env_remove(&name);
        }
    }
    command
}

/// A command as a person would type it.
pub(crate) fn written(command: &Command) -> String {
    let words = std::iter::once(command.get_program()).chain(command.get_args());
    let words: Vec<_> = words
        .map(OsStr::to_string_lossy)
        .map(|word| match word.rsplit_once('/') {
            Some((_, name)) if word.starts_with('/') => name.to_owned(),
            _ => word.into_owned(),
        })
        .collect();
    words.join(" ")
}

/// Runs a command, its output going where ours goes.
///
/// # Errors
/// When the program cannot be started or does not succeed.
pub(crate) fn succeed(command: &mut Command) -> Result<()> {
    let text = written(command);
    let status = command
        .status()
        .with_context(|| format!("cannot start `{text}`"))?;
    if !status.success() {
        bail!("`{text}` failed ({status})");
    }
    Ok(())
}

/// Runs a command and returns what it printed.
///
/// # Errors
/// When the program cannot be started or does not succeed.
pub(crate) fn output(command: &mut Command) -> Result<String> {
    let text = written(command);
    let output = command
        .stderr(Stdio::inherit())
        .output()
        .with_context(|| format!("cannot start `{text}`"))?;
    if !output.status.success() {
        bail!("`{text}` failed ({})", output.status);
    }
    String::from_utf8(output.stdout).with_context(|| format!("`{text}` printed no UTF-8"))
}

/// Runs a command, shows every line it prints and hands each to `read`;
/// returns whether it succeeded.
///
/// # Errors
/// When the program cannot be started or its output cannot be read.
pub(crate) fn watch(command: &mut Command, mut read: impl FnMut(&str)) -> Result<bool> {
    let text = written(command);
    let mut child = command
        .stdout(Stdio::piped())
        .spawn()
        .with_context(|| format!("cannot start `{text}`"))?;
    if let Some(stdout) = child.stdout.take() {
        let mut shown = std::io::stdout().lock();
        for line in BufReader::new(stdout).split(b'\n') {
            let line = line.with_context(|| format!("cannot read `{text}`"))?;
            let line = String::from_utf8_lossy(&line);
            writeln!(shown, "{line}")?;
            read(&line);
        }
    }
    Ok(child.wait()?.success())
}
