//! Tasks whose work is done by a script that drives a browser.

use anyhow::Result;

use crate::{place, run, serve, site, tools};

/// Measures times natively and in the browser, and writes the report.
///
/// # Errors
/// When a build, a bench or the browser fails.
pub(crate) fn bench() -> Result<()> {
    run::succeed(&mut run::cargo(&["bench", "--package", "planner"]))?;
    script("bench.mjs")
}

/// Redraws the committed pictures.
///
/// # Errors
/// When a build or the browser fails.
pub(crate) fn shots() -> Result<()> {
    script("shots.mjs")
}

/// Runs a script of tests/browser against a freshly built page.
fn script(name: &str) -> Result<()> {
    tools::chromium()?;
    let dist = site::build_with_single_file()?;
    let script = place::browser().join(name);
    let mut node = run::command("node", &[]);
    run::succeed(
        node.arg(script)
            .env("OVERSPREAD_URL", serve::beside(&dist)?)
            .env("OVERSPREAD_XTASK", place::program()?),
    )
}
