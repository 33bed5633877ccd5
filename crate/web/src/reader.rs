//! What the worker asks of its own instance: findings of the layout as it is,
//! and what a drag in hand would change of them.
use planner::commands::{move_by, turn_by};
use planner::layout::{Id, Layout};
use planner::readings::{Finding, Mark, Report, Scores, State, Study, report};
use serde::Serialize;
use wasm_bindgen::prelude::*;

use crate::objects::object;
use crate::{Planner, marks};

/// Findings whose marks are drawn when none is asked for.
const PRESSING: usize = 3;
/// A figure that moved by less says the same.
const SAME_FIGURE: f64 = 1.0;

/// One thing a drag makes better or worse.
#[derive(Serialize)]
struct Change<'a> {
    key: &'a str,
    sentence: &'a str,
    better: bool,
}

/// What a drag in hand changes.
#[derive(Serialize)]
struct Live<'a> {
    scores: Option<Scores>,
    changes: Vec<Change<'a>>,
}

/// A layout without its hands: the table before anyone reaches in.
fn bare(layout: &Layout) -> Layout {
    let mut table = layout.clone();
    table.hands.clear();
    table
}

/// What `after` says otherwise than `before`, the dearest first.
fn changes<'a>(before: &'a Report, after: &'a Report) -> Vec<Change<'a>> {
    let pressing = |f: &Finding| matches!(f.state, State::WontWork | State::LookAgain);
    let mut all = Vec::new();
    for now in after.findings.iter().filter(|f| !f.taste) {
        let then = before.findings.iter().find(|f| f.key == now.key);
        let better = match then {
            Some(then) if then.state != now.state => now.state > then.state,
            Some(then) if pressing(now) && (now.figure - then.figure).abs() >= SAME_FIGURE => {
                now.figure < then.figure
            }
            None if pressing(now) => false,
            _ => continue,
        };
        all.push(Change {
            key: &now.key,
            sentence: &now.sentence,
            better,
        });
    }
    all
}

/// Marks of the finding of this key, or of the pressing ones for none.
fn marks_of(report: &Report, key: &str) -> Vec<Mark> {
    let asked = |f: &&Finding| key.is_empty() || f.key == key;
    let shown = report.findings.iter().filter(asked).take(PRESSING);
    shown.flat_map(|f| f.marks.iter().cloned()).collect()
}

#[wasm_bindgen]
impl Planner {
    /// Reads the layout; `no_hands` reads the table before anyone reaches in.
    ///
    /// # Errors
    /// When the browser refuses to make the object.
    pub fn read(&mut self, no_hands: bool) -> Result<JsValue, JsError> {
        let read = if no_hands {
            report(&Study::new(&bare(self.now())), true)
        } else {
            report(&Study::new(self.now()), true)
        };
        object(self.report.insert(read))
    }

    /// The edit the remedy of a finding makes, as [`Planner::make_record`]
    /// takes it; empty when there is none.
    #[must_use]
    pub fn remedy_record(&self, key: &str) -> String {
        let findings = self.report.iter().flat_map(|report| &report.findings);
        let found = findings.into_iter().find(|finding| finding.key == key);
        let remedy = found.and_then(|finding| finding.remedy.as_ref());
        remedy.map_or_else(String::new, |remedy| remedy.edit.to_json())
    }

    /// Picks the marks of the finding of this key, or of the pressing ones for
    /// none, for [`Planner::marks_numbers`].
    pub fn pick_marks(&mut self, key: &str) {
        let report = self.report.as_ref();
        self.view.marks = report.map_or_else(Vec::new, |report| marks_of(report, key));
    }

    /// The marks picked last, as [`Planner::show_marks`] takes them.
    #[must_use]
    pub fn marks_numbers(&self) -> Vec<f64> {
        marks::numbers(&self.view.marks)
    }

    /// The labels that go with [`Planner::marks_numbers`].
    #[must_use]
    pub fn marks_words(&self) -> String {
        marks::words(&self.view.marks)
    }

    /// What moving and turning a thing by this much would change of what was
    /// last read, mm and half degrees; picks the marks of what changes.
    ///
    /// # Errors
    /// When the browser refuses to make the object.
    pub fn live(
        &mut self,
        no_hands: bool,
        id: u16,
        dx: i32,
        dy: i32,
        half_degrees: i32,
    ) -> Result<JsValue, JsError> {
        let Some(before) = &self.report else {
            return Ok(JsValue::UNDEFINED);
        };
        let act = if half_degrees == 0 {
            move_by(self.now(), Id(id), [dx, dy])?
        } else {
            turn_by(self.now(), Id(id), half_degrees)?
        };
        let mut after = self.now().clone();
        act.edit.apply(&mut after)?;
        if no_hands {
            after.hands.clear();
        }
        let now = report(&Study::new(&after), false);
        let changes = changes(before, &now);
        let changed = |f: &&Finding| changes.iter().any(|change| change.key == f.key);
        let shown = now.findings.iter().filter(changed);
        self.view.marks = shown.flat_map(|f| f.marks.iter().cloned()).collect();
        object(&Live {
            scores: now.scores,
            changes,
        })
    }
}
