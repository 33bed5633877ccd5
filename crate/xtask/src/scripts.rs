//! Tasks whose work is done by a script that drives a browser.

use std::process::Command;

use anyhow::Result;

use crate::{place, run, serve, site, tools};

/// Redraws the committed pictures.
///
/// # Errors
/// When a build or the browser fails.
pub(crate) fn shots() -> Result<()> {
    run::succeed(&mut script("shots.mjs")?)
}

/// A script of tests/browser, ready to run against a freshly built page.
///
/// # Errors
/// When a build fails or Chromium cannot be had.
pub(crate) fn script(name: &str) -> Result<Command> {
    tools::chromium()?;
    let dist = site::build_with_single_file()?;
    let mut node = run::command("node", &[]);
    node.arg(place::browser().join(name))
        .env("OVERSPREAD_URL", serve::beside(&dist)?)
        .env("OVERSPREAD_XTASK", place::program()?);
    Ok(node)
}
