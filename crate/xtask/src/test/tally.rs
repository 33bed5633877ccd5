//! Counting passed and failed checks out of what test programs print.

use std::fmt;
use std::ops::Add;
use std::process::Command;

use anyhow::Result;

use crate::run;

/// How many checks passed and failed.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) struct Tally {
    /// Checks that held.
    pub(super) passed: u64,
    /// Checks that did not.
    pub(super) failed: u64,
}

impl Tally {
    /// What a stage counts that could not even run.
    pub(super) fn one_failed() -> Self {
        Self {
            passed: 0,
            failed: 1,
        }
    }

    /// One check.
    pub(super) fn one(held: bool) -> Self {
        Self {
            passed: u64::from(held),
            failed: u64::from(!held),
        }
    }
}

impl Add for Tally {
    type Output = Self;

    fn add(self, other: Self) -> Self {
        Self {
            passed: self.passed + other.passed,
            failed: self.failed + other.failed,
        }
    }
}

impl fmt::Display for Tally {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(formatter, "{} passed, {} failed", self.passed, self.failed)
    }
}

/// Runs a command that is itself one check.
///
/// # Errors
/// When it cannot be started.
pub(super) fn one_check(command: &mut Command) -> Result<Tally> {
    println!("$ {}", run::written(command));
    Ok(Tally::one(run::watch(command, |_| ())?))
}

/// Runs a test program and counts what it reports. A program that fails
/// without reporting a failure (it did not compile, or broke off) counts as
/// one, and so does one that succeeds without having run anything.
///
/// # Errors
/// When it cannot be started.
pub(super) fn counted(command: &mut Command) -> Result<Tally> {
    println!("$ {}", run::written(command));
    let mut tally = Tally::default();
    let succeeded = run::watch(command, |line| tally = tally + reported(line))?;
    if tally.failed == 0 && (!succeeded || tally.passed == 0) {
        tally = tally + Tally::one_failed();
    }
    Ok(tally)
}

/// The counts of the last line, as a [`Tally`] is written there.
pub(super) fn closing(words: &str) -> Option<Tally> {
    let (passed, failed) = words.lines().last()?.split_once(" passed, ")?;
    Some(Tally {
        passed: passed.parse().ok()?,
        failed: failed.strip_suffix(" failed")?.parse().ok()?,
    })
}

/// What one line of output adds: the result line of Rust's test harness, or
/// the two summary lines of Node's.
fn reported(line: &str) -> Tally {
    let line = line.trim();
    if let Some(result) = line.strip_prefix("test result: ") {
        let mut tally = Tally::default();
        let parts = result.split(['.', ';']).map(str::trim);
        for part in parts {
            match part.split_once(' ') {
                Some((count, "passed")) => tally.passed += count.parse().unwrap_or(0),
                Some((count, "failed")) => tally.failed += count.parse().unwrap_or(0),
                _ => {}
            }
        }
        return tally;
    }
    let mut words = line.split(' ');
    let mark = words.next();
    if !matches!(mark, Some("#" | "\u{2139}")) {
        return Tally::default();
    }
    match (words.next(), words.next().map(str::parse), words.next()) {
        (Some("pass"), Some(Ok(passed)), None) => Tally { passed, failed: 0 },
        (Some("fail" | "cancelled"), Some(Ok(failed)), None) => Tally { passed: 0, failed },
        _ => Tally::default(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rust_results_are_read() {
        let line = "test result: FAILED. 12 passed; 3 failed; 1 ignored; 0 measured; 0 filtered \
                    out; finished in 0.02s";
        let expected = Tally {
            passed: 12,
            failed: 3,
        };
        assert_eq!(reported(line), expected, "both counts of the result line");
    }

    #[test]
    fn a_tally_is_read_as_it_was_written() {
        let tally = Tally {
            passed: 31,
            failed: 2,
        };
        let words = format!("wasm 1.0 s  33 passed, 0 failed\n{tally}\n");
        assert_eq!(closing(&words), Some(tally), "the last line");
        assert_eq!(closing("it broke off"), None, "no tally");
    }

    #[test]
    fn node_results_are_read() {
        let lines = [
            "\u{2139} tests 7",
            "\u{2139} pass 5",
            "\u{2139} fail 1",
            "# cancelled 1",
        ];
        let sum = lines
            .iter()
            .fold(Tally::default(), |sum, line| sum + reported(line));
        assert_eq!(
            sum,
            Tally {
                passed: 5,
                failed: 2
            },
            "a cancelled test did not pass"
        );
    }

    #[test]
    fn talk_about_results_is_not_counted() {
        for line in ["# pass 5 of the mountains", "5 passed", "ok 1 - pass 3"] {
            assert_eq!(reported(line), Tally::default(), "`{line}` is no summary");
        }
    }

    #[cfg(unix)]
    #[test]
    fn breaking_off_counts_as_a_failure() {
        let mut broken = Command::new("sh");
        broken.args(["-c", "echo 'test result: ok. 2 passed; 0 failed'; exit 3"]);
        let expected = Tally {
            passed: 2,
            failed: 1,
        };
        assert_eq!(
            counted(&mut broken).expect("ran"),
            expected,
            "exit code counts"
        );
    }

    #[cfg(unix)]
    #[test]
    fn running_nothing_counts_as_a_failure() {
        let mut idle = Command::new("true");
        assert_eq!(
            counted(&mut idle).expect("ran"),
            Tally::one_failed(),
            "no test ran"
        );
    }
}
