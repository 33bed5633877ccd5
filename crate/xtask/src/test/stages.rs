//! What each stage runs.

use std::fs;
use std::path::PathBuf;

use anyhow::Result;

use super::tally::{Tally, counted, one_check};
use crate::{fuzz, place, run, serve, site, tools};

/// Formatting, and lints for every crate where it runs.
pub(super) fn lint() -> Result<Tally> {
    tools::wasm_target()?;
    tools::cxx()?;
    let format = one_check(&mut run::cargo(&["fmt", "--all", "--check"]))?;
    let native = one_check(&mut run::cargo(&[
        "clippy",
        "--workspace",
        "--all-targets",
        "--",
        "-D",
        "warnings",
    ]))?;
    let wasm = one_check(&mut run::cargo(&[
        "clippy",
        "--package",
        "planner",
        "--package",
        "web",
        "--package",
        "outputs-web",
        "--package",
        "early-web",
        "--target",
        tools::WASM,
        "--",
        "-D",
        "warnings",
    ]))?;
    Ok(format + native + wasm)
}

/// The tests of every crate. This crate's run on their own, as `cargo xtask`
/// builds it on its own: together, its many dependencies would be compiled a
/// second time with other features. `compiled` is called before they run.
pub(super) fn native(compiled: impl FnOnce() -> Result<()>) -> Result<Tally> {
    tools::python()?;
    let others = || {
        run::cargo(&[
            "test",
            "--workspace",
            "--exclude",
            "xtask",
            "--exclude",
            "benches",
            "--exclude",
            fuzz::PACKAGE,
            "--lib",
            "--bins",
            "--tests",
            "--no-fail-fast",
        ])
    };
    run::succeed(others().arg("--no-run"))?;
    compiled()?;
    let others = counted(&mut others())?;
    let mut examples = run::cargo(&["test", "--workspace", "--exclude", "xtask", "--doc"]);
    examples.args(["--exclude", "benches", "--exclude", fuzz::PACKAGE]);
    let examples = counted(&mut examples)?;
    let own = counted(&mut run::cargo(&["test", "--package", "xtask"]))?;
    Ok(others + examples + own)
}

/// The fuzzers over every input kept for them.
pub(super) fn fuzzers() -> Result<Tally> {
    let mut tally = Tally::default();
    fuzz::replay(|held| tally = tally + Tally::one(held))?;
    Ok(tally)
}

/// The boundary's tests in headless Chromium. Not with `--quiet`, which the
/// runner does not understand. They are held to what this machine makes of the
/// demonstration table.
pub(super) fn wasm() -> Result<Tally> {
    tools::wasm_target()?;
    tools::chromium()?;
    // Chosen out of all but this crate, so that cargo takes the planner made for
    // the native tests.
    let example = fuzz::EXAMPLE;
    let build = [
        "build",
        "--workspace",
        "--exclude",
        "xtask",
        "--exclude",
        "benches",
        "--example",
        example,
    ];
    run::succeed(&mut run::cargo(&build))?;
    let program = place::target().join("debug/examples").join(example);
    let native = run::output(&mut run::command(program, &[]))?;
    let mut tests = run::cargo(&[
        "test",
        "--package",
        "web",
        "--target",
        tools::WASM,
        "--tests",
        "--no-fail-fast",
    ]);
    // Here one table is read: unoptimised, that is done before more is compiled.
    tests.args(["--config", "profile.dev.opt-level=0"]);
    counted(tests.env("OVERSPREAD_SUPPER", native.trim()))
}

/// Types, bundle, site and single file: one check, as each needs the one
/// before.
pub(super) fn site() -> Result<Tally> {
    let dist = site::build_with_single_file()?;
    println!("built {}", site::listing(&dist)?.join(", "));
    Ok(Tally::one(true))
}

/// The browser tests, against the finished page: each on its first kind of
/// screen, or every one on every kind.
pub(super) fn page(every: bool) -> Result<Tally> {
    tools::chromium()?;
    tools::npm_packages()?;
    let dist = finished()?;
    let mut node = run::command("node", &["--test", "--test-reporter=spec"]);
    // Two browsers at a time: a test mostly waits for its own.
    node.arg("--test-concurrency=2");
    let mut tests: Vec<_> = fs::read_dir(place::browser())?
        .map(|entry| entry.map(|entry| entry.path()))
        .collect::<Result<_, _>>()?;
    tests.retain(|path| path.to_string_lossy().ends_with(".test.mjs"));
    tests.sort();
    if every {
        node.env("OVERSPREAD_LONG", "1");
    }
    node.args(tests)
        .env("OVERSPREAD_URL", serve::beside(&dist)?)
        .env("OVERSPREAD_XTASK", place::program()?);
    counted(&mut node)
}

/// What must work in Firefox and WebKit too, one browser at a time.
pub(super) fn engines() -> Result<Tally> {
    tools::engines()?;
    tools::npm_packages()?;
    let dist = finished()?;
    let mut node = run::command("node", &["--test", "--test-reporter=spec"]);
    node.arg(place::engines().join("smoke.mjs"))
        .env("OVERSPREAD_URL", serve::beside(&dist)?)
        .env("OVERSPREAD_XTASK", place::program()?);
    counted(&mut node)
}

/// The finished page, built only where it is missing.
fn finished() -> Result<PathBuf> {
    let dist = place::dist();
    if !dist.join(site::SINGLE_FILE).exists() {
        site::build_with_single_file()?;
    }
    Ok(dist)
}
