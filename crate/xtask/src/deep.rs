//! What takes long. Each stage that passed leaves a stamp, so a broken-off run goes
//! on where it stopped.

use std::fs;
use std::path::{Path, PathBuf};
use std::time::Instant;

use anyhow::{Context, Result, bail};
use clap::{Args, ValueEnum};

use crate::{advisories, fuzz, mutants, place, run, scripts, site, test, tools};

/// What the oracles write: tables, and the hostile corpus.
const WRITTEN: [&str; 3] = [
    ":(glob)tests/**/*.csv",
    ":(glob)tests/**/*.jsonl",
    "tests/hostile",
];

/// A stage, in the order they run.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(crate) enum Stage {
    /// Reference data made anew by independent programs
    Oracles,
    /// Documentation of every public item, warnings as errors
    Docs,
    /// What the registries say against the versions in use
    Advisories,
    /// Property tests with many more cases
    Random,
    /// Fuzzers left to look for more
    Fuzz,
    /// Faults put into the formulas, at most 400 a run
    Mutants,
    /// Every browser test on every kind of screen
    Page,
    /// Every place of the page in longer words, and in ones from right to left
    Words,
    /// Firefox and WebKit
    Engines,
    /// Ten spreads laid by touch, counted, and pictured in target/spreads
    Spreads,
    /// Tabs and browsers killed at work; writes tests/reports/kills.md
    Kills,
}

/// What to run, and for how long.
#[derive(Args)]
pub(crate) struct Wish {
    /// Only these stages; all when none is named
    stages: Vec<Stage>,
    /// Leave these stages out
    #[arg(long, value_name = "STAGE")]
    skip: Vec<Stage>,
    /// Forget which stages already passed
    #[arg(long)]
    fresh: bool,
    /// Cases per property in the random runs; an ordinary run takes 256
    #[arg(long, default_value_t = 20_000)]
    cases: u32,
    /// Faults put into the formulas, at most 400
    #[arg(long, default_value_t = 400)]
    faults: usize,
    /// Minutes for each fuzzer
    #[arg(long, default_value_t = 10)]
    minutes: u32,
    /// How often a tab or a whole browser is killed
    #[arg(long, default_value_t = 200)]
    kills: u32,
    /// What the acts before a kill, and its moment, are drawn from
    #[arg(long, default_value_t = 1)]
    seed: u32,
}

/// Runs every stage wished for and not yet stamped for this commit and these
/// settings.
///
/// # Errors
/// When a stage fails; the next run starts with that stage.
pub(crate) fn all(wish: &Wish) -> Result<()> {
    // Not `deep`, where cargo puts what it builds with the profile of that name.
    let stamps = place::target().join("deep-passed");
    fs::create_dir_all(&stamps)?;
    let mark = mark(wish)?;
    let mut times = Vec::new();
    for &stage in Stage::value_variants() {
        let name = name(stage);
        if (!wish.stages.is_empty() && !wish.stages.contains(&stage)) || wish.skip.contains(&stage)
        {
            println!("== {name}: left out");
            continue;
        }
        let stamp = stamps.join(&name);
        let passed = fs::read_to_string(&stamp).is_ok_and(|old| Some(old) == mark);
        if passed && !wish.fresh {
            println!("== {name}: passed before");
            continue;
        }
        println!("== {name}");
        let start = Instant::now();
        match stage {
            Stage::Oracles => oracles(),
            Stage::Docs => docs(),
            Stage::Advisories => advisories::ask(),
            Stage::Random => random(wish.cases),
            Stage::Fuzz => fuzz::explore(wish.minutes, mark.as_deref()),
            Stage::Mutants => mutants::try_some(wish.faults),
            Stage::Page => test::every_screen(),
            Stage::Words => words(),
            Stage::Engines => engines(),
            Stage::Spreads => spreads(),
            Stage::Kills => kills(wish),
        }
        .with_context(|| format!("{name} failed"))?;
        times.push((name, start.elapsed()));
        // Those tried so far are kept in a tally, and one run seldom tries all.
        if let Some(mark) = &mark
            && stage != Stage::Mutants
        {
            fs::write(stamp, mark)?;
        }
    }
    for (name, time) in times {
        println!("{name:<8} {:>7.1} s", time.as_secs_f64());
    }
    println!("every deep stage that was to run has passed");
    Ok(())
}

fn name(stage: Stage) -> String {
    let value = stage.to_possible_value();
    value.map_or_else(String::new, |value| value.get_name().to_owned())
}

/// Builds the documentation of every crate.
fn docs() -> Result<()> {
    let mut docs = run::cargo(&[
        "doc",
        "--workspace",
        "--no-deps",
        "--exclude",
        fuzz::PACKAGE,
    ]);
    run::succeed(docs.env("RUSTDOCFLAGS", "-D warnings"))
}

/// What a stamp stands for: the commit and the settings. Nothing when files
/// differ from the commit, as a stamp would then say too much.
fn mark(wish: &Wish) -> Result<Option<String>> {
    let git = |words: &[&str]| run::output(&mut run::command("git", words));
    let changed = git(&["status", "--porcelain", "--", ".", ":!tests/reports"])?;
    let commit = git(&["rev-parse", "HEAD"])?;
    let Wish {
        cases,
        minutes,
        kills,
        seed,
        ..
    } = wish;
    let settings = format!("{} {cases} {minutes} {kills} {seed}", commit.trim());
    Ok(changed.trim().is_empty().then_some(settings))
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
    // First, as the validator judges what it writes.
    generators.insert(0, place::root().join("tests/hostile/generate.py"));
    let python = python_with(&reference.join("requirements.txt"))?;
    for generator in generators {
        println!("{}", generator.display());
        run::succeed(
            run::command(&python, &["-W", "ignore"])
                .arg(generator)
                .current_dir(&reference),
        )?;
    }
    let git = |words: &[&str]| run::command("git", &[words, &["--"], &WRITTEN].concat());
    run::succeed(&mut git(&["--no-pager", "diff", "--stat"]))?;
    let changed = run::output(&mut git(&["status", "--porcelain"]))?;
    if !changed.trim().is_empty() {
        bail!("reference data differs from what is committed (`git diff` shows it):\n{changed}");
    }
    Ok(())
}

/// A Python with the packages listed, in its own environment under tests.
fn python_with(requirements: &Path) -> Result<PathBuf> {
    tools::python()?;
    let venv = place::root().join("tests/.venv");
    // Where the venv module is not whole, an environment without pip is left.
    if !venv.join("bin/pip").exists() {
        run::succeed(run::command("python3", &["-m", "venv", "--clear"]).arg(&venv))
            .context("Python's venv module is missing; on Debian or Ubuntu run: sudo apt-get install -y python3-venv")?;
    }
    let python = venv.join("bin/python");
    let mut install = run::command(&python, &["-m", "pip", "install", "--quiet", "-r"]);
    run::succeed(install.arg(requirements))?;
    Ok(python)
}

/// The property tests with many more cases.
fn random(cases: u32) -> Result<()> {
    tools::python()?;
    let mut tests = run::cargo(&[
        "test",
        "--profile",
        "deep",
        "--workspace",
        "--exclude",
        "xtask",
        "--exclude",
        fuzz::PACKAGE,
        "--no-fail-fast",
    ]);
    run::succeed(tests.env("PROPTEST_CASES", cases.to_string()))
}

/// Every place in words as no one speaks them, on two phones and at a desk;
/// their pictures are there to be looked at.
fn words() -> Result<()> {
    tools::chromium()?;
    for (words, name) in [
        (site::Words::Long, "long"),
        (site::Words::Mirrored, "mirrored"),
    ] {
        let page = site::build_speaking(words)?;
        let mut node = run::command("node", &[]);
        run::succeed(
            node.arg(place::browser().join("pseudo.mjs"))
                .arg(name)
                .arg(place::target().join("words"))
                .env("OVERSPREAD_URL", crate::serve::beside(&page)?),
        )?;
    }
    Ok(())
}

/// The main job from end to end in Firefox and WebKit, from a server and from
/// disk, and on paper; writes what was done to tests/reports/engines.md.
fn engines() -> Result<()> {
    tools::engines()?;
    tools::npm_packages()?;
    let dist = site::build_with_single_file()?;
    let mut node = run::command("node", &["--test", "--test-reporter=spec"]);
    run::succeed(
        node.arg(place::engines().join("full.mjs"))
            .env("OVERSPREAD_URL", crate::serve::beside(&dist)?)
            .env("OVERSPREAD_XTASK", place::program()?),
    )
}

/// Ten spreads laid by touch in Chromium, each in at most a hundred touches;
/// their pictures are there to be looked at beside each other.
fn spreads() -> Result<()> {
    tools::chromium()?;
    tools::npm_packages()?;
    let dist = site::build_with_single_file()?;
    let mut node = run::command("node", &[]);
    run::succeed(
        node.arg(place::browser().join("spreads.mjs"))
            .arg(place::target().join("spreads"))
            .env("OVERSPREAD_URL", crate::serve::beside(&dist)?),
    )
}

/// Kills tabs and whole browsers at random moments of work, and holds what is
/// kept after each to what was there before or after the act in hand.
fn kills(wish: &Wish) -> Result<()> {
    let [count, seed] = [wish.kills, wish.seed].map(|number| number.to_string());
    run::succeed(scripts::script("kills.mjs")?.args([count, seed]))
}
