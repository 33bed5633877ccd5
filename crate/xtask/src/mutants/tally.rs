//! How faults ended, kept from one run to the next.

use std::collections::BTreeMap;
use std::fs;

use anyhow::{Context, Result, ensure};
use serde_json::Value;

use super::{A_RUN, HANG};
use crate::place;

/// Faults that nothing can see, or need not, each with its reason.
const EXPLAINED: &str = "tests/reference/mutants_explained.txt";
/// How each fault that was tried ended.
const TALLY: &str = "tests/reports/mutants.txt";

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
pub(super) struct Tally {
    ends: BTreeMap<String, End>,
    explained: Vec<String>,
}

impl Tally {
    /// What is known of the faults that can still be made.
    pub(super) fn read(keys: &[String]) -> Result<Self> {
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
    pub(super) fn next(&self, keys: &[String], most: usize) -> Vec<usize> {
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
        missed.chain(fresh).take(most).collect()
    }

    pub(super) fn take(&mut self, outcomes: &Value, names: &[&str], keys: &[String]) -> Result<()> {
        for outcome in outcomes["outcomes"].as_array().context("outcomes")? {
            let Some(name) = outcome["scenario"]["Mutant"]["name"].as_str() else {
                continue;
            };
            // The sources may have changed since.
            let Some(at) = names.iter().position(|known| *known == name) else {
                continue;
            };
            let key = &keys[at];
            let said = outcome["summary"].as_str().unwrap_or_default();
            let end = ENDS.iter().find(|(.., summary)| *summary == said);
            let end = end.with_context(|| format!("{name} ended as {said}"))?.0;
            self.ends.insert(key.clone(), end);
        }
        Ok(())
    }

    pub(super) fn write(&self) -> Result<()> {
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

    pub(super) fn report(&self, count: usize) -> Result<()> {
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
    pub(super) fn judge(&self) -> Result<()> {
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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_was_missed_comes_first_until_it_is_explained() {
        let keys: Vec<String> = (0..4).map(|n| format!("a.rs: fault {n} #1")).collect();
        let mut tally = Tally {
            ends: BTreeMap::from([(keys[0].clone(), End::Seen), (keys[2].clone(), End::Missed)]),
            explained: Vec::new(),
        };
        assert_eq!(tally.next(&keys, 9), [2, 3, 1]);
        assert!(tally.judge().is_err(), "it is open");
        tally.explained.push(keys[2].clone());
        assert_eq!(tally.next(&keys, 9), [3, 1]);
        assert_eq!(tally.next(&keys, 1), [3], "no more than asked for");
        assert!(tally.judge().is_ok(), "it is explained");
    }
}
