//! Faults put into the formula files, one at a time: a fault that no test sees
//! is a hole in the tests.
//!
//! `cargo-mutants` makes them. The whole core takes minutes to compile for each,
//! so it works on a tree of the rooms the formulas stand in, which need none of
//! the others, with the outside checks that need no more than these.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result, ensure};
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
/// How each fault that was tried ended.
const TALLY: &str = "tests/reports/mutants.txt";

/// Tries the next [`A_RUN`] faults that were not tried, those first that were
/// missed and not explained, and writes how all of them ended to [`TALLY`] and
/// `tests/reports/mutants.md`.
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
    let listed: Vec<Value> = serde_json::from_str(&listed)?;
    let names: Vec<&str> = listed.iter().filter_map(|of| of["name"].as_str()).collect();
    let keys = keys(&names);
    let mut tally = Tally::read(&keys)?;
    let wanted = tally.next(&keys);
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
        let text = fs::read_to_string(home.join("mutants.out/outcomes.json"))?;
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
        if !letter.is_alphanumeric() && !" _/".contains(letter) {
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

/// How a fault ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum End {
    Seen,
    Hung,
    NotCompiled,
    Missed,
}

const ENDS: [(End, &str, &str); 4] = [
    (End::Seen, "seen", "CaughtMutant"),
    (End::Hung, "hung", "Timeout"),
    (End::NotCompiled, "not compiled", "Unviable"),
    (End::Missed, "missed", "MissedMutant"),
];

/// How each fault that was tried ended.
struct Tally {
    ends: BTreeMap<String, End>,
    explained: Vec<String>,
}

impl Tally {
    /// What is known of the faults that can still be made.
    fn read(keys: &[String]) -> Result<Self> {
        let root = place::root();
        let text = fs::read_to_string(root.join(TALLY)).unwrap_or_default();
        let rows = text.lines().filter_map(|line| line.split_once(": "));
        let ends = rows
            .filter(|(_, key)| keys.iter().any(|known| known == key))
            .filter_map(|(word, key)| {
                let end = ENDS.iter().find(|(_, name, _)| *name == word)?.0;
                Some((key.to_owned(), end))
            });
        let explained = fs::read_to_string(root.join(EXPLAINED))?;
        let explained = explained
            .lines()
            .filter_map(|line| line.split_once(" => "))
            .filter(|(_, why)| !why.trim().is_empty())
            .map(|(key, _)| key.to_owned());
        Ok(Self {
            ends: ends.collect(),
            explained: explained.collect(),
        })
    }

    fn open(&self, key: &str) -> bool {
        self.ends.get(key) == Some(&End::Missed) && !self.explained.iter().any(|e| e == key)
    }

    /// Which faults come next: what was missed, then some of every file.
    fn next(&self, keys: &[String]) -> Vec<usize> {
        let file = |at: usize| keys[at].split(':').next().unwrap_or_default();
        let mut fresh: Vec<usize> = (0..keys.len())
            .filter(|&at| !self.ends.contains_key(&keys[at]))
            .collect();
        let of_file = |at: usize| (0..keys.len()).filter(move |&n| file(n) == file(at));
        let share = |at: usize| {
            let before = of_file(at).filter(|&n| n < at).count();
            // Spread within the file by a step that meets each place once.
            (before * 37 % 101, at)
        };
        fresh.sort_by_key(|&at| share(at));
        let missed = (0..keys.len()).filter(|&at| self.open(&keys[at]));
        missed.chain(fresh).take(A_RUN).collect()
    }

    fn take(&mut self, outcomes: &Value, names: &[&str], keys: &[String]) -> Result<()> {
        for outcome in outcomes["outcomes"].as_array().context("outcomes")? {
            let Some(name) = outcome["scenario"]["Mutant"]["name"].as_str() else {
                continue;
            };
            let at = names.iter().position(|known| *known == name);
            let key = &keys[at.with_context(|| format!("{name} was not asked for"))?];
            let said = outcome["summary"].as_str().unwrap_or_default();
            let end = ENDS.iter().find(|(.., summary)| *summary == said);
            let end = end.with_context(|| format!("{name} ended as {said}"))?.0;
            self.ends.insert(key.clone(), end);
        }
        Ok(())
    }

    fn write(&self) -> Result<()> {
        let word = |end: &End| ENDS.iter().find(|(of, ..)| of == end).map_or("", |e| e.1);
        let rows = self
            .ends
            .iter()
            .map(|(key, end)| format!("{}: {key}\n", word(end)));
        Ok(fs::write(
            place::root().join(TALLY),
            rows.collect::<String>(),
        )?)
    }

    fn report(&self, count: usize) -> Result<()> {
        let mut files: BTreeMap<&str, [usize; 4]> = BTreeMap::new();
        for (key, end) in &self.ends {
            let row = files.entry(key.split(':').next().unwrap_or_default());
            row.or_default()[*end as usize] += 1;
        }
        let tried = self.ends.len();
        let explained = self.ends.keys().filter(|key| self.explained.contains(key));
        let mut text = format!(
            "# Faults put into the formulas\n\n\
            Written by `cargo xtask deep mutants`, which tries at most {A_RUN} faults in a run and goes \
            on where it stopped: {tried} of {count} are tried so far, how each ended stands in \
            `{TALLY}`. Seen: a test failed. Hung: no end within {HANG} s. Not compiled: such a fault \
            cannot be made. Of what was missed {} are explained, one by one, in `{EXPLAINED}`.\n\n\
            | file | seen | hung | not compiled | missed |\n|---|---|---|---|---|\n",
            explained.count()
        );
        let mut sums = [0; 4];
        for (file, row) in &files {
            text += &format!("| {file} | {} |\n", row.map(|n| n.to_string()).join(" | "));
            for (sum, n) in sums.iter_mut().zip(row) {
                *sum += n;
            }
        }
        text += &format!("| all | {} |\n", sums.map(|n| n.to_string()).join(" | "));
        let path = place::root().join("tests/reports/mutants.md");
        Ok(fs::write(path, text)?)
    }

    /// Fails when something missed has no explanation.
    fn judge(&self) -> Result<()> {
        let keys = self.ends.keys().filter(|key| self.open(key));
        let open: Vec<&str> = keys.map(String::as_str).collect();
        ensure!(
            open.is_empty(),
            "no test sees, and nobody explains:\n{}",
            open.join("\n")
        );
        Ok(())
    }
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
    fn what_was_missed_comes_first_until_it_is_explained() {
        let keys: Vec<String> = (0..4).map(|n| format!("a.rs: fault {n} #1")).collect();
        let mut tally = Tally {
            ends: BTreeMap::from([(keys[0].clone(), End::Seen), (keys[2].clone(), End::Missed)]),
            explained: Vec::new(),
        };
        assert_eq!(tally.next(&keys), [2, 1, 3]);
        assert!(tally.judge().is_err(), "it is open");
        tally.explained.push(keys[2].clone());
        assert_eq!(tally.next(&keys), [1, 3]);
        assert!(tally.judge().is_ok(), "it is explained");
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
