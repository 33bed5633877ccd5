//! What was done to a layout, step by step, so that it can be taken back, also
//! after the page was closed.
//!
//! Steps are numbered from 0 in the order they were made. A step made after
//! others were taken back puts them out of reach for good, and takes the
//! number of the first of them.
use std::collections::VecDeque;

use serde::Serialize;

use super::change::{Edit, EditError};
use super::step::{self, Step};
use crate::layout::Layout;
use crate::words::{Arg, say};

/// Bytes of steps kept for taking back, counted as they are written; the
/// oldest go when a new one would not fit. Moving a place setting takes about
/// 4 kB, so there is room for a thousand of them.
pub const MAX_HISTORY_BYTES: usize = 4 << 20;
/// Nudges this close together are one step, ms.
pub const NUDGES_WITHIN: f64 = 1_000.0;

/// What an act is one of a run of; acts of one run are one step.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub enum Run {
    /// A step of its own.
    #[default]
    Alone,
    /// A nudge at a time, ms on the page's clock.
    Nudge(f64),
    /// Changes in a field, up to leaving it: the number of this visit to it.
    Field(u32),
}

impl Run {
    fn goes_on(self, last: Self) -> bool {
        match (last, self) {
            (Self::Nudge(last), Self::Nudge(now)) => (0.0..=NUDGES_WITHIN).contains(&(now - last)),
            (Self::Field(last), Self::Field(now)) => last == now,
            _ => false,
        }
    }
}

/// What came of an act, for whoever says and keeps it: only steps from `first`
/// and below `end` are still held, and of the layout those below `at` are done.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Done {
    /// What was done, in words.
    pub name: String,
    /// Number of the oldest step held.
    pub first: u32,
    /// How many steps were made up to this state.
    pub at: u32,
    /// Number after the newest step held.
    pub end: u32,
    /// The edit just made, as text, for another instance to follow.
    pub edit: String,
    /// The step before `at` as text, when it is new or another than before.
    pub record: Option<String>,
}

/// A step that was kept and cannot be used any more.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Lost {
    /// Its number.
    pub number: u32,
    /// Why.
    pub why: String,
}

/// A layout with the steps that led to it and those taken back.
pub struct History {
    layout: Layout,
    steps: VecDeque<Step>,
    /// Number of the first of them.
    first: u32,
    /// How many of them are done.
    done: usize,
    bytes: usize,
}

impl History {
    /// A layout to which nothing has been done.
    #[must_use]
    pub fn new(layout: Layout) -> Self {
        Self {
            layout,
            steps: VecDeque::new(),
            first: 0,
            done: 0,
            bytes: 0,
        }
    }

    /// The history as it was kept: `layout` as it was after `upto` steps, the
    /// steps as written under their numbers in rising order, and how many of
    /// them are done. Comes as near to `at` as the steps allow.
    #[must_use]
    pub fn restored(
        layout: Layout,
        upto: u32,
        at: u32,
        written: &[(u32, String)],
    ) -> (Self, Option<Lost>) {
        let mut lost = None;
        let mut read: Vec<(u32, Step)> = Vec::with_capacity(written.len());
        for (number, text) in written {
            match step::read(text) {
                Ok(step) => read.push((*number, step)),
                Err(why) => lost = Some((*number, why)),
            }
        }
        let find = |number: u32| read.iter().position(|(n, _)| *n == number);
        let mut layout = layout;
        let mut here = upto;
        while here != at {
            let onward = here < at;
            let number = if onward { here } else { here - 1 };
            let moved = match find(number).map(|place| &read[place].1.edit) {
                None => Err(say("step-missing", &[])),
                Some(edit) if onward => edit.apply_checked(&mut layout).map_err(|e| e.to_string()),
                Some(edit) => {
                    let back = edit.reverted();
                    back.apply_checked(&mut layout).map_err(|e| e.to_string())
                }
            };
            if let Err(why) = moved {
                lost = Some((number, why));
                break;
            }
            here = if onward { here + 1 } else { here - 1 };
        }
        let mut first = here;
        while first > 0 && find(first - 1).is_some() {
            first -= 1;
        }
        let mut end = here;
        while here == at && find(end).is_some() {
            end += 1;
        }
        read.retain(|(number, _)| (first..end).contains(number));
        let bytes = read.iter().map(|(_, step)| step.bytes).sum();
        let history = Self {
            layout,
            steps: read.into_iter().map(|(_, step)| step).collect(),
            first,
            done: (here - first) as usize,
            bytes,
        };
        (history, lost.map(|(number, why)| Lost { number, why }))
    }

    /// The layout as it is now.
    #[must_use]
    pub const fn layout(&self) -> &Layout {
        &self.layout
    }

    /// Whether there is a step to take back.
    #[must_use]
    pub const fn can_undo(&self) -> bool {
        self.done > 0
    }

    /// Whether there is a step to make again.
    #[must_use]
    pub fn can_redo(&self) -> bool {
        self.done < self.steps.len()
    }

    /// Makes `edit`, called `name`; nothing comes of an empty one.
    ///
    /// # Errors
    /// When it does not fit; layout and steps are as they were.
    pub fn make(&mut self, name: &str, edit: Edit, run: Run) -> Result<Option<Done>, EditError> {
        if edit.is_empty() {
            return Ok(None);
        }
        let mut after = self.layout.clone();
        edit.apply_checked(&mut after)?;
        let made = edit.to_json();
        let whole = self.joined(name, &edit, run, &after);
        let joins = whole.is_some();
        let whole = whole.unwrap_or(edit);
        for step in self.steps.drain(self.done - usize::from(joins)..) {
            self.bytes -= step.bytes;
        }
        self.layout = after;
        let mut record = None;
        // A run that comes back to where it began leaves nothing to take back.
        if !whole.is_empty() {
            let text = step::written(name, &whole);
            self.bytes += text.len();
            self.steps.push_back(Step {
                name: name.into(),
                edit: whole,
                bytes: text.len(),
                run,
            });
            record = Some(text);
        }
        self.done = self.steps.len();
        while self.bytes > MAX_HISTORY_BYTES && self.steps.len() > 1 {
            let oldest = self.steps.pop_front();
            self.bytes -= oldest.map_or(0, |step| step.bytes);
            self.first += 1;
            self.done -= 1;
        }
        Ok(Some(self.told(name.into(), made, record)))
    }

    /// The last step and `edit` as one, when they are of one run.
    fn joined(&self, name: &str, edit: &Edit, run: Run, after: &Layout) -> Option<Edit> {
        if self.can_redo() {
            return None;
        }
        let last = self.steps.back()?;
        let same = last.name == name && last.edit.keys().eq(edit.keys());
        if !same || !run.goes_on(last.run) {
            return None;
        }
        let mut before = self.layout.clone();
        last.edit.reverted().apply(&mut before).ok()?;
        Some(Edit::between(&before, after))
    }

    /// Takes the last step back; nothing when there is none.
    ///
    /// # Errors
    /// When it does not fit any more; layout and steps are as they were.
    pub fn undo(&mut self) -> Result<Option<Done>, EditError> {
        let Some(place) = self.done.checked_sub(1) else {
            return Ok(None);
        };
        let step = &mut self.steps[place];
        let back = step.edit.reverted();
        back.apply_checked(&mut self.layout)?;
        step.run = Run::Alone;
        let name = Arg::Text(step.name.clone());
        self.done = place;
        let said = say("step-undone", &[("step", name)]);
        Ok(Some(self.told(said, back.to_json(), None)))
    }

    /// Makes the step last taken back again; nothing when there is none.
    ///
    /// # Errors
    /// When it does not fit any more; layout and steps are as they were.
    pub fn redo(&mut self) -> Result<Option<Done>, EditError> {
        let Some(step) = self.steps.get(self.done) else {
            return Ok(None);
        };
        step.edit.apply_checked(&mut self.layout)?;
        let (name, again) = (Arg::Text(step.name.clone()), step.edit.to_json());
        self.done += 1;
        let said = say("step-redone", &[("step", name)]);
        Ok(Some(self.told(said, again, None)))
    }

    fn told(&self, name: String, edit: String, record: Option<String>) -> Done {
        Done {
            name,
            first: self.first,
            edit,
            at: self.first + self.done as u32,
            end: self.first + self.steps.len() as u32,
            record,
        }
    }
}

#[cfg(test)]
mod tests;
