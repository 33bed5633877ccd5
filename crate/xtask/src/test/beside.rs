//! A stage that is run beside others: linking and shrinking the page's modules
//! keeps one core busy for minutes while compilers of tests leave one idle.

use std::fs::{self, File};
use std::process::Child;

use anyhow::{Context, Result};

use super::tally::Tally;
use crate::{place, run};

/// A stage under way in a process of its own, its words kept for later.
pub(super) struct Beside {
    stage: String,
    child: Child,
}

impl Beside {
    /// Begins a stage.
    ///
    /// # Errors
    /// When this program cannot be started again.
    pub(super) fn begin(stage: String) -> Result<Self> {
        let log = log(&stage);
        fs::create_dir_all(place::target())?;
        let words = File::create(&log).with_context(|| log.display().to_string())?;
        let mut command = run::command(place::program()?, &["test", &stage]);
        let command = command.stdout(words.try_clone()?).stderr(words);
        let child = command.spawn().context("cannot start this program again")?;
        Ok(Self { stage, child })
    }

    /// Waits for its end, says what it said, and counts it as one check.
    ///
    /// # Errors
    /// When it cannot be waited for.
    pub(super) fn end(mut self) -> Result<Tally> {
        let status = self.child.wait()?;
        print!("{}", fs::read_to_string(log(&self.stage))?);
        Ok(Tally::one(status.success()))
    }
}

/// Where a stage's words are kept.
fn log(stage: &str) -> std::path::PathBuf {
    place::target().join(format!("{stage}.log"))
}
