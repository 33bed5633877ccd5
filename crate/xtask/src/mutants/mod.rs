//! Faults put into the formula files, one at a time: a fault that no test sees
//! is a hole in the tests.
//!
//! `cargo-mutants` makes them. The whole core takes minutes to compile for each,
//! so it works on a tree of the rooms the formulas stand in, which need none of
//! the others, with the outside checks that need no more than these.

mod tally;
mod tree;

use std::fs;
use std::path::PathBuf;

use anyhow::{Result, ensure};
use serde_json::Value;

use crate::{place, run};
use tally::Tally;

/// The tool, as published by its makers.
const TOOL: &str = "27.1.0";
/// The files that faults are put into, below the core's sources.
const FORMULAS: [&str; 26] = [
    "arms/body.rs",
    "arms/link.rs",
    "arms/percentile.rs",
    "arms/stance.rs",
    "colour/contrast.rs",
    "colour/lab.rs",
    "colour/photo/inks.rs",
    "colour/photo/light.rs",
    "colour/separation.rs",
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
/// A fault may have a loop take memory without end: no more than so much for each
/// process, kB, so that it is seen by that and the machine goes on.
const MEMORY: &str = "8000000";
/// A fault that keeps the tests busy for longer, in seconds, is seen by that.
const HANG: &str = "120";

/// Tries the next faults that were not tried, `most` but no more than [`A_RUN`], those first that were
/// missed and not explained, and writes how all of them ended to
/// `tests/reports/mutants.txt` and `.md`.
///
/// # Errors
/// When one of them is seen by no test and explained by nobody.
pub(crate) fn try_some(most: usize) -> Result<()> {
    let home = place::target().join("mutants");
    let tree = home.join("tree");
    fs::create_dir_all(&home)?;
    tree::write(&tree)?;
    let program = tool()?;
    let asked = |words: &[&str]| {
        let limited = "ulimit -v \"$0\" && exec \"$@\"";
        let mut command = run::command("sh", &["-c", limited, MEMORY]);
        command.arg(&program).args(["mutants", "--no-shuffle"]);
        command
            .arg("--dir")
            .arg(&tree)
            .args(["--package", "planner"]);
        for file in FORMULAS {
            command
                .arg("--file")
                .arg(format!("crate/planner/src/{file}"));
        }
        command.args(words);
        command
    };
    let listed = run::output(&mut asked(&["--list", "--json"]))?;
    let listed: Vec<Value> = serde_json::from_str(&listed)?;
    let names: Vec<&str> = listed.iter().filter_map(|of| of["name"].as_str()).collect();
    let keys = keys(&names);
    let mut tally = Tally::read(&keys)?;
    let outcomes = home.join("mutants.out/outcomes.json");
    // What a run that was broken off has found.
    if let Ok(text) = fs::read_to_string(&outcomes) {
        tally.take(&serde_json::from_str(&text)?, &names, &keys)?;
    }
    let wanted = tally.next(&keys, most.min(A_RUN));
    println!("{} of {} faults are tried", wanted.len(), keys.len());
    if !wanted.is_empty() {
        let exactly: Vec<String> = wanted.iter().map(|&at| escaped(names[at])).collect();
        let mut command = asked(&["--test-workspace=true", "--timeout", HANG, "--baseline"]);
        command.args(["skip", "--colors", "never", "--jobs", "2", "--re"]);
        command.arg(format!("^({})$", exactly.join("|")));
        // It says by its code that some were missed, which is asked of the
        // outcomes below.
        let code = command.arg("--output").arg(&home).status()?.code();
        ensure!(
            matches!(code, Some(0 | 2 | 3)),
            "cargo-mutants ended with {code:?}"
        );
        let text = fs::read_to_string(&outcomes)?;
        tally.take(&serde_json::from_str(&text)?, &names, &keys)?;
    }
    tally.write()?;
    tally.report(keys.len())?;
    tally.judge()
}

/// A fault by its file and what it does, and which of those alike it is: its
/// line and column change with every edit.
fn keys(names: &[&str]) -> Vec<String> {
    let plain: Vec<String> = names.iter().map(|name| without_lines(name)).collect();
    let number = |at: usize| {
        let alike = plain[..at].iter().filter(|other| **other == plain[at]);
        alike.count() + 1
    };
    (0..plain.len())
        .map(|at| format!("{} #{}", plain[at], number(at)))
        .collect()
}

/// A text as a regular expression that it alone fits.
fn escaped(text: &str) -> String {
    let mut out = String::new();
    for letter in text.chars() {
        // Others mean something of their own when they are escaped.
        if "\\.+*?()|[]{}^$#&-~".contains(letter) {
            out.push('\\');
        }
        out.push(letter);
    }
    out
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

/// A fault by its file below the core's sources and what it does.
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
    fn faults_named_alike_are_counted() {
        let names = ["b.rs:1:1: x in f", "b.rs:9:2: x in f", "b.rs:9:2: y in f"];
        let wanted = ["b.rs: x in f #1", "b.rs: x in f #2", "b.rs: y in f #1"];
        assert_eq!(keys(&names), wanted);
    }

    #[test]
    fn every_formula_file_stands_in_a_room_that_is_taken_along() {
        for file in FORMULAS {
            assert!(
                place::root().join("crate/planner/src").join(file).is_file(),
                "{file}"
            );
            let room = file.split('/').next().unwrap_or_default();
            assert!(tree::ROOMS.contains(&room), "{file}");
        }
    }
}
