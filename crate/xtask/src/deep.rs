//! What takes hours: oracles, long random runs, other engines. Each stage that
//! passed leaves a stamp, so a broken-off run goes on where it stopped.

use std::fs;
use std::path::PathBuf;

use anyhow::{Context, Result, bail};

use crate::{place, run, site, tools};

/// Cases per property in the long random runs; an ordinary run takes 256.
const CASES: &str = "20000";
/// The driver Firefox needs, as published by its makers.
const GECKODRIVER: &str = "0.37.1";

type Work = fn() -> Result<()>;

/// Runs every stage not yet stamped for this commit.
///
/// # Errors
/// When a stage fails; the next run starts with that stage.
pub(crate) fn all(fresh: bool) -> Result<()> {
    let stages: [(&str, Work); 3] = [
        ("oracles", oracles),
        ("random", random),
        ("engines", engines),
    ];
    let commit = run::output(&mut run::command("git", &["rev-parse", "HEAD"]))?;
    let commit = commit.trim();
    let stamps = place::target().join("deep");
    fs::create_dir_all(&stamps)?;
    for (name, work) in stages {
        let stamp = stamps.join(name);
        let passed = fs::read_to_string(&stamp).is_ok_and(|at| at == commit);
        if passed && !fresh {
            println!("== {name}: passed before at {commit}");
            continue;
        }
        println!("== {name}");
        work().with_context(|| format!("{name} failed"))?;
        fs::write(stamp, commit)?;
    }
    println!("all deep stages passed at {commit}");
    Ok(())
}

/// Makes the reference data anew with independent programs and fails when any
/// differs from what is committed.
fn oracles() -> Result<()> {
    let reference = place::root().join("tests/reference");
    let mut generators: Vec<PathBuf> = Vec::new();
    for entry in fs::read_dir(&reference).context("tests/reference is missing")? {
        let path = entry?.path();
        let name = path.file_name().unwrap_or_default().to_string_lossy();
        if name.starts_with("generate_") && name.ends_with(".py") {
            generators.push(path);
        }
    }
    generators.sort();
    if generators.is_empty() {
        bail!("tests/reference holds no generate_*.py");
    }
    let python = python_with(&reference.join("requirements.txt"))?;
    for generator in generators {
        println!("{}", generator.display());
        run::succeed(
            run::command(&python, &[])
                .arg(generator)
                .current_dir(&reference),
        )?;
    }
    let pattern = ":(glob)tests/**/*.csv";
    run::succeed(&mut run::command("git", &["diff", "--stat", "--", pattern]))?;
    let changed = run::output(&mut run::command(
        "git",
        &["status", "--porcelain", "--", pattern],
    ))?;
    if !changed.trim().is_empty() {
        bail!("the reference data differs from what is committed:\n{changed}");
    }
    Ok(())
}

/// A Python with the packages listed, in its own environment under tests.
fn python_with(requirements: &std::path::Path) -> Result<PathBuf> {
    let venv = place::root().join("tests/.venv");
    let python = venv.join("bin/python");
    if !python.exists() {
        run::succeed(run::command("python3", &["-m", "venv"]).arg(&venv))
            .context("install Python 3 with its venv module, then run this again")?;
    }
    let mut install = run::command(&python, &["-m", "pip", "install", "--quiet", "-r"]);
    run::succeed(install.arg(requirements))?;
    Ok(python)
}

/// The property tests with many more cases.
fn random() -> Result<()> {
    let mut tests = run::cargo(&[
        "test",
        "--profile",
        "deep",
        "--workspace",
        "--exclude",
        "xtask",
        "--no-fail-fast",
    ]);
    run::succeed(tests.env("PROPTEST_CASES", CASES))
}

/// The first remedy, from disk and from a server, in Firefox and WebKit.
fn engines() -> Result<()> {
    tools::apt_packages(&[
        ("firefox-esr", "firefox-esr"),
        ("WebKitWebDriver", "webkit2gtk-driver"),
        ("Xvfb", "xvfb"),
    ])?;
    let root = place::target().join("tools");
    let geckodriver = root.join("bin/geckodriver");
    if !geckodriver.exists() {
        let mut install = run::cargo(&["install", "geckodriver", "--locked", "--root"]);
        run::succeed(install.arg(&root).args(["--version", GECKODRIVER]))?;
    }
    let dist = site::build_with_single_file()?;
    let mut node = run::command("node", &[]);
    run::succeed(
        node.arg(place::browser().join("engines.mjs"))
            .env("OVERSPREAD_URL", crate::serve::beside(&dist)?)
            .env("GECKODRIVER", geckodriver),
    )
}
