//! A stage that is run beside others: linking and shrinking the page's modules
//! keeps one core busy for minutes while compilers of tests leave one idle, and
//! so do many tests while others are compiled.

use std::fs::{self, File};
use std::process::Child;

use anyhow::{Context, Result};

use super::tally::{Tally, closing};
use super::{Stage, name};
use crate::{place, run};

/// A stage under way in a process of its own, its words kept for later.
pub(super) struct Beside {
    stage: Stage,
    child: Child,
}

impl Beside {
    /// Begins a stage.
    ///
    /// # Errors
    /// When this program cannot be started again.
    pub(super) fn begin(stage: Stage) -> Result<Self> {
        let log = log(stage);
        fs::create_dir_all(place::target())?;
        let words = File::create(&log).with_context(|| log.display().to_string())?;
        let mut command = run::command(place::program()?, &["test", &name(stage)]);
        let command = command.stdout(words.try_clone()?).stderr(words);
        let child = command.spawn().context("cannot start this program again")?;
        Ok(Self { stage, child })
    }

    pub(super) fn stage(&self) -> Stage {
        self.stage
    }

    /// Waits for its end, says what it said, and counts what it counted.
    ///
    /// # Errors
    /// When it cannot be waited for.
    pub(super) fn end(mut self) -> Result<Tally> {
        let succeeded = self.child.wait()?.success();
        let words = fs::read_to_string(log(self.stage))?;
        print!("{words}");
        let told = closing(&words).filter(|tally| succeeded == (tally.failed == 0));
        Ok(told.unwrap_or_else(Tally::one_failed))
    }
}

/// Where a stage's words are kept.
fn log(stage: Stage) -> std::path::PathBuf {
    place::target().join(format!("{}.log", name(stage)))
}
