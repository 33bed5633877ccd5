//! The fuzzers of `tests/fuzz`: replayed over what is kept, or left to look
//! for more.
//!
//! Their runner is libFuzzer, which `libfuzzer-sys` builds with the C++
//! compiler. Replaying needs nothing else. To look for more it has to see
//! which code an input reaches; the compiler pass for that is switched on by
//! flags that the stable compiler takes, so no nightly one is needed. What it
//! lacks without one is the address sanitizer, of little use as `unsafe` is
//! forbidden in the core; `cargo +nightly fuzz run link_decode` in `tests` adds
//! it.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Stdio;

use anyhow::{Context, Result, bail};

use crate::{place, run, tools};

/// Their crate.
pub(crate) const PACKAGE: &str = "overspread-fuzz";
/// Each fuzzer and the hostile input of its kind.
const FUZZERS: [(&str, &str); 5] = [
    ("file_open", "files"),
    ("link_decode", "links"),
    ("answer_read", "answers"),
    ("list_read", "lists"),
    ("photo_head", "photos"),
];
/// An example of the page's module.
pub(crate) const EXAMPLE: &str = "supper_digest";
/// What makes libFuzzer see the code reached; the flags of `cargo-fuzz`.
const COVERAGE: &str = "--cfg fuzzing -Ccodegen-units=1 -Cpasses=sancov-module \
    -Cllvm-args=-sanitizer-coverage-level=4 \
    -Cllvm-args=-sanitizer-coverage-inline-8bit-counters \
    -Cllvm-args=-sanitizer-coverage-pc-table \
    -Cllvm-args=-sanitizer-coverage-trace-compares";
/// An input that takes longer than this, in seconds, hangs.
const HANG: u32 = 60;
/// More memory than this, in MB, is too much for any input.
const MEMORY: u32 = 256;

/// The folders whose files a fuzzer starts from.
fn seeds(fuzzer: &str, hostile: &str) -> [PathBuf; 2] {
    let tests = place::root().join("tests");
    [
        tests.join("fuzz/corpus").join(fuzzer),
        tests.join("hostile").join(hostile),
    ]
}

/// Builds the fuzzers and runs each over every file kept for it; calls `tell`
/// with whether each held.
///
/// # Errors
/// When they cannot be built or have nothing to run over.
pub(crate) fn replay(mut tell: impl FnMut(bool)) -> Result<()> {
    tools::cxx()?;
    // Chosen out of what the tests are chosen of, and with an example, which needs
    // what tests need, so that cargo takes what it has just made for them instead
    // of libraries with fewer features.
    let mut build = run::cargo(&["build", "--workspace", "--exclude", "xtask"]);
    build.args(["--exclude", "benches", "--example", EXAMPLE]);
    for (fuzzer, _) in FUZZERS {
        build.args(["--bin", fuzzer]);
    }
    run::succeed(&mut build)?;
    let found = place::target().join("fuzz");
    fs::create_dir_all(&found)?;
    for (fuzzer, hostile) in FUZZERS {
        let mut files = Vec::new();
        for folder in seeds(fuzzer, hostile) {
            files.extend(listed(&folder)?);
        }
        let mut command = run::command(place::target().join("debug").join(fuzzer), &[]);
        // An input that breaks something is written here.
        command.arg(format!("-artifact_prefix={}/", found.display()));
        let output = command.args(&files).output()?;
        let said = String::from_utf8_lossy(&output.stderr);
        let ran = said.lines().filter(|l| l.starts_with("Executed ")).count();
        let held = output.status.success() && ran == files.len();
        if !held {
            println!("{said}");
        }
        println!("{fuzzer}: {ran} of {} inputs do no harm", files.len());
        tell(held);
    }
    Ok(())
}

/// The files of a folder.
fn listed(folder: &Path) -> Result<Vec<PathBuf>> {
    let entries = fs::read_dir(folder).with_context(|| format!("{}", folder.display()))?;
    let mut files: Vec<PathBuf> = entries
        .map(|entry| entry.map(|entry| entry.path()))
        .collect::<Result<_, _>>()?;
    files.sort();
    if files.is_empty() {
        bail!("{} holds no input", folder.display());
    }
    Ok(files)
}

/// Looks for inputs that break something, `minutes` for each fuzzer, and writes
/// what each did to `tests/reports/fuzz.md`. What was found worth keeping stays
/// under `target/fuzz`, where the next run goes on; a fuzzer that held at this
/// `mark` is not run again.
///
/// # Errors
/// When they cannot be built, or one broke; the input is named.
pub(crate) fn explore(minutes: u32, mark: Option<&str>) -> Result<()> {
    tools::cxx()?;
    let home = place::target().join("fuzz");
    let host = host()?;
    // A target named keeps the flags off build scripts.
    let mut build = run::cargo(&["build", "--profile", "deep", "--package", PACKAGE]);
    build.args(["--target", &host, "--target-dir"]).arg(&home);
    run::succeed(build.env("RUSTFLAGS", COVERAGE))?;
    let mut rows = Vec::new();
    for (fuzzer, hostile) in FUZZERS {
        let held = home.join(fuzzer).with_extension("held");
        let before = fs::read_to_string(&held).ok();
        let row = match before.as_deref().and_then(|text| text.split_once('\n')) {
            Some((at, row)) if Some(at) == mark => row.to_owned(),
            _ => {
                println!("{fuzzer}: {minutes} minutes");
                let kept = home.join("corpus").join(fuzzer);
                fs::create_dir_all(&kept)?;
                let mut command = run::command(home.join(&host).join("deep").join(fuzzer), &[]);
                command
                    .arg(format!("-max_total_time={}", minutes * 60))
                    .arg(format!("-timeout={HANG}"))
                    .arg(format!("-rss_limit_mb={MEMORY}"))
                    .arg(format!("-artifact_prefix={}/", home.display()))
                    .args(["-max_len=65536", "-print_final_stats=1", "-verbosity=0"])
                    .arg(kept)
                    .args(seeds(fuzzer, hostile));
                let output = command.stdout(Stdio::null()).output()?;
                let said = String::from_utf8_lossy(&output.stderr);
                if !output.status.success() {
                    bail!("{fuzzer} broke:\n{said}");
                }
                let row = told(fuzzer, &said)?;
                if let Some(mark) = mark {
                    fs::write(&held, format!("{mark}\n{row}"))?;
                }
                row
            }
        };
        println!("{row}");
        rows.push(row);
    }
    report(minutes, &rows)
}

/// The row of one fuzzer, from what it said at its end.
fn told(fuzzer: &str, said: &str) -> Result<String> {
    let stat = |name: &str| -> Result<u64> {
        let line = format!("stat::{name}:");
        let found = said.lines().find_map(|l| l.strip_prefix(&line));
        let found = found.with_context(|| format!("{fuzzer} says no {name}"))?;
        Ok(found.trim().parse()?)
    };
    Ok(format!(
        "| {fuzzer} | {} | {} | {} | {} |",
        stat("number_of_executed_units")?,
        stat("new_units_added")?,
        stat("slowest_unit_time_sec")?,
        stat("peak_rss_mb")?,
    ))
}

fn report(minutes: u32, rows: &[String]) -> Result<()> {
    let text = format!(
        "# What the fuzzers did\n\n\
        Written by `cargo xtask deep fuzz`. Each looked for {minutes} minutes from what is kept in \
        `tests/fuzz/corpus` and `tests/hostile`, with inputs up to 64 kB; a panic, {HANG} s for one \
        input or more than {MEMORY} MB would have ended it.\n\n\
        | fuzzer | inputs tried | kept as new | slowest, s | memory at most, MB |\n\
        |---|---|---|---|---|\n{}\n",
        rows.join("\n")
    );
    fs::write(place::root().join("tests/reports/fuzz.md"), text)?;
    Ok(())
}

/// The name of the machine this runs on, as the compiler gives it.
fn host() -> Result<String> {
    let said = run::output(&mut run::command("rustc", &["-vV"]))?;
    let line = said.lines().find_map(|line| line.strip_prefix("host: "));
    Ok(line.context("rustc names no host")?.to_owned())
}
