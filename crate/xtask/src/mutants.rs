//! Faults put into the formula files, one at a time: a fault that no test sees
//! is a hole in the tests.
//!
//! `cargo-mutants` makes them. The whole core takes minutes to compile for each,
//! so it works on a tree of the rooms the formulas stand in, which need none of
//! the others, with the outside checks that need no more than these.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result, bail, ensure};
use serde_json::Value;

use crate::{place, run};

/// The tool, as published by its makers.
const TOOL: &str = "27.1.0";
/// Rooms of the core that hold formulas, and those they need.
const ROOMS: [&str; 10] = [
    "arms", "colour", "layout", "light", "measures", "optics", "order", "rig", "shape", "words",
];
/// Outside checks that need no other room.
const CHECKS: [&str; 8] = [
    "colour",
    "composition",
    "geometry",
    "homography",
    "light",
    "photo",
    "rig",
    "space",
];
/// The files that faults are put into, below the core's sources.
const FORMULAS: [&str; 27] = [
    "arms/body.rs",
    "arms/link.rs",
    "arms/percentile.rs",
    "arms/stance.rs",
    "colour/contrast.rs",
    "colour/lab.rs",
    "colour/photo/inks.rs",
    "colour/photo/light.rs",
    "colour/separation.rs",
    "colour/skin.rs",
    "light/illuminance.rs",
    "light/mirror.rs",
    "light/rim.rs",
    "light/source.rs",
    "measures/balance.rs",
    "measures/mass.rs",
    "measures/separation_score.rs",
    "measures/spacing.rs",
    "measures/triangle.rs",
    "optics/depth.rs",
    "optics/hand.rs",
    "optics/lens.rs",
    "optics/sensor.rs",
    "optics/view.rs",
    "rig/hold.rs",
    "rig/stand.rs",
    "rig/tipping.rs",
];
/// Faults tried in one run.
const A_RUN: usize = 400;
/// A fault that keeps the tests busy for longer, in seconds, is seen by that.
const HANG: &str = "120";
/// Faults that nothing can see, or need not, each with its reason.
const EXPLAINED: &str = "tests/reference/mutants_explained.txt";

/// Tries the next [`A_RUN`] faults that were not tried at this state of the
/// sources, and writes the tally of all of them to `tests/reports/mutants.md`.
///
/// # Errors
/// When one of them is seen by no test and explained by nobody.
pub(crate) fn try_some() -> Result<()> {
    let home = place::target().join("mutants");
    let tree = home.join("tree");
    fs::create_dir_all(&home)?;
    write_tree(&tree)?;
    let program = tool()?;
    let asked = |words: &[&str]| {
        let mut command = run::command(&program, &["mutants", "--no-shuffle", "--dir"]);
        command.arg(&tree).args(["--package", "planner"]);
        for file in FORMULAS {
            command
                .arg("--file")
                .arg(format!("crate/planner/src/{file}"));
        }
        command.args(words);
        command
    };
    let listed = run::output(&mut asked(&["--list", "--json"]))?;
    let count = serde_json::from_str::<Vec<Value>>(&listed)?.len();
    let runs = count.div_ceil(A_RUN);
    let state = digest(&tree)?;
    let mut done = Vec::new();
    let mut tried = false;
    for number in 0..runs {
        let out = home.join(format!("run-{number}-of-{runs}"));
        let stamp = out.join("state");
        if !fs::read_to_string(&stamp).is_ok_and(|old| old == state) {
            if tried {
                continue;
            }
            tried = true;
            println!("run {} of {runs}, {count} faults in all", number + 1);
            // In turn, so that each run has some of every file.
            let mut command = asked(&["--sharding", "round-robin", "--shard"]);
            command.arg(format!("{number}/{runs}"));
            command.args(["--test-workspace=true", "--timeout", HANG]);
            command.args(["--baseline", "skip", "--colors", "never", "--output"]);
            // It says by its code that some were missed, which is asked of the
            // outcomes below.
            let code = command.arg(&out).status()?.code();
            ensure!(
                matches!(code, Some(0 | 2 | 3)),
                "cargo-mutants ended with {code:?}"
            );
            fs::write(stamp, &state)?;
        }
        done.push(out);
    }
    let tally = Tally::of(&done)?;
    tally.report(count, runs, done.len())?;
    tally.judge()
}

/// `cargo-mutants`, installed beside what is compiled.
fn tool() -> Result<PathBuf> {
    let root = place::target().join("tools");
    let program = root.join("bin/cargo-mutants");
    if !program.exists() {
        let mut install = run::cargo(&["install", "cargo-mutants", "--locked", "--root"]);
        run::succeed(install.arg(&root).args(["--version", TOOL]))?;
    }
    Ok(program)
}

/// Writes the tree of a workspace with [`ROOMS`] and [`CHECKS`] alone.
fn write_tree(tree: &Path) -> Result<()> {
    let root = place::root();
    if tree.exists() {
        fs::remove_dir_all(tree)?;
    }
    for folder in ["crate/planner/src", "tests/tests"] {
        fs::create_dir_all(tree.join(folder))?;
    }
    for name in ROOMS {
        let room = format!("crate/planner/src/{name}");
        let file = format!("{room}.rs");
        if root.join(&file).exists() {
            copy(&root.join(&file), &tree.join(&file))?;
        } else {
            copy(&root.join(&room), &tree.join(&room))?;
        }
    }
    for name in CHECKS {
        let file = format!("tests/tests/{name}.rs");
        copy(&root.join(&file), &tree.join(&file))?;
    }
    for path in [
        "crate/key-sort",
        "tests/src",
        "tests/reference",
        "Cargo.lock",
        "rust-toolchain.toml",
    ] {
        copy(&root.join(path), &tree.join(path))?;
    }
    let kept = |path: &str, keep: &dyn Fn(&str) -> bool| -> Result<()> {
        let text = fs::read_to_string(root.join(path))?;
        let lines: Vec<&str> = text.lines().filter(|line| keep(line)).collect();
        Ok(fs::write(tree.join(path), lines.join("\n"))?)
    };
    kept("crate/planner/Cargo.toml", &|_| true)?;
    kept("crate/planner/src/lib.rs", &|line| {
        let room = line
            .strip_prefix("pub mod ")
            .and_then(|l| l.strip_suffix(';'));
        room.is_none_or(|room| ROOMS.contains(&room))
    })?;
    // Reading what hostile input leads to takes every room.
    kept("tests/src/lib.rs", &|line| !line.contains("mod probe"))?;
    fs::remove_file(tree.join("tests/src/probe.rs"))?;
    kept("tests/Cargo.toml", &|line| !line.starts_with("outputs"))?;
    kept("Cargo.toml", &|line| {
        !line.starts_with("default-members") && !line.starts_with("outputs")
    })?;
    let file = tree.join("Cargo.toml");
    let text = fs::read_to_string(&file)?;
    let members = text.lines().find(|line| line.starts_with("members"));
    let members = members.context("Cargo.toml names its members")?;
    let fewer = r#"members = ["crate/key-sort", "crate/planner", "tests"]"#;
    // Compiled more often than run.
    let text = text
        .replace(members, fewer)
        .replace("opt-level = 1", "opt-level = 0");
    Ok(fs::write(file, text)?)
}

fn copy(from: &Path, to: &Path) -> Result<()> {
    if from.is_file() {
        fs::copy(from, to)?;
        return Ok(());
    }
    fs::create_dir_all(to)?;
    for entry in fs::read_dir(from).with_context(|| format!("{}", from.display()))? {
        let entry = entry?;
        copy(&entry.path(), &to.join(entry.file_name()))?;
    }
    Ok(())
}

/// What the tree holds, in short.
fn digest(tree: &Path) -> Result<String> {
    use sha2::{Digest, Sha256};
    let mut all = Sha256::new();
    let mut open = vec![tree.join("crate"), tree.join("tests")];
    while let Some(path) = open.pop() {
        if path.is_dir() {
            let entries = fs::read_dir(&path)?.map(|entry| entry.map(|entry| entry.path()));
            let mut inner: Vec<PathBuf> = entries.collect::<Result<_, _>>()?;
            inner.sort();
            open.extend(inner);
        } else {
            all.update(fs::read(&path)?);
        }
    }
    Ok(format!("{:x}", all.finalize()))
}

/// How each file's faults ended, and which were seen by nothing.
#[derive(Default)]
struct Tally {
    /// Of each file: seen, hung, not compiled, missed.
    files: BTreeMap<String, [usize; 4]>,
    missed: Vec<String>,
}

impl Tally {
    fn of(done: &[PathBuf]) -> Result<Self> {
        let mut tally = Self::default();
        for out in done {
            let text = fs::read_to_string(out.join("mutants.out/outcomes.json"))?;
            let outcomes: Value = serde_json::from_str(&text)?;
            let outcomes = outcomes["outcomes"].as_array().context("outcomes")?;
            for outcome in outcomes {
                let mutant = &outcome["scenario"]["Mutant"];
                let (Some(file), Some(name)) = (mutant["file"].as_str(), mutant["name"].as_str())
                else {
                    continue;
                };
                let file = file.trim_start_matches("crate/planner/src/");
                let at = match outcome["summary"].as_str() {
                    Some("CaughtMutant") => 0,
                    Some("Timeout") => 1,
                    Some("Unviable") => 2,
                    Some("MissedMutant") => 3,
                    other => bail!("{name} ended as {other:?}"),
                };
                tally.files.entry(file.to_owned()).or_default()[at] += 1;
                if at == 3 {
                    tally.missed.push(without_lines(name));
                }
            }
        }
        tally.missed.sort();
        Ok(tally)
    }

    fn report(&self, count: usize, runs: usize, done: usize) -> Result<()> {
        let mut text = format!(
            "# Faults put into the formulas\n\n\
            Written by `cargo xtask deep mutants`, which tries at most {A_RUN} faults in a run and \
            goes on where it stopped: {done} of {runs} runs are done, of {count} faults in all. Seen: \
            a test failed. Hung: no end within {HANG} s. Not compiled: such a fault cannot be made. \
            What was missed is explained, line by line, in `{EXPLAINED}`.\n\n\
            | file | seen | hung | not compiled | missed |\n|---|---|---|---|---|\n"
        );
        let mut sums = [0; 4];
        for (file, row) in &self.files {
            text += &format!("| {file} | {} |\n", row.map(|n| n.to_string()).join(" | "));
            for (sum, n) in sums.iter_mut().zip(row) {
                *sum += n;
            }
        }
        text += &format!("| all | {} |\n", sums.map(|n| n.to_string()).join(" | "));
        Ok(fs::write(
            place::root().join("tests/reports/mutants.md"),
            text,
        )?)
    }

    /// Fails when something missed has no explanation.
    fn judge(&self) -> Result<()> {
        let explained = fs::read_to_string(place::root().join(EXPLAINED))?;
        let mut reasons: Vec<&str> = explained
            .lines()
            .filter_map(|line| line.split_once(" => "))
            .filter(|(_, why)| !why.trim().is_empty())
            .map(|(mutant, _)| mutant)
            .collect();
        // One line explains one fault, also where two are named alike.
        let mut open = Vec::new();
        for name in &self.missed {
            match reasons.iter().position(|reason| reason == name) {
                Some(at) => drop(reasons.swap_remove(at)),
                None => open.push(name.as_str()),
            }
        }
        ensure!(
            open.is_empty(),
            "no test sees, and nobody explains:\n{}",
            open.join("\n")
        );
        Ok(())
    }
}

/// A fault by file and what it does; its line and column change with every edit.
fn without_lines(name: &str) -> String {
    let (place, does) = name.split_once(": ").unwrap_or((name, ""));
    let file = place.split(':').next().unwrap_or(place);
    format!("{}: {does}", file.trim_start_matches("crate/planner/src/"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_fault_keeps_its_name_when_lines_are_added_above_it() {
        let name = "crate/planner/src/optics/lens.rs:12:9: replace + with - in coverage";
        assert_eq!(
            without_lines(name),
            "optics/lens.rs: replace + with - in coverage"
        );
    }

    #[test]
    fn every_formula_file_stands_in_a_room_that_is_taken_along() {
        for file in FORMULAS {
            assert!(
                place::root().join("crate/planner/src").join(file).is_file(),
                "{file}"
            );
            let room = file.split('/').next().unwrap_or_default();
            assert!(ROOMS.contains(&room), "{file}");
        }
    }
}
