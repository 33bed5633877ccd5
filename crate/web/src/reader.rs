//! What the worker asks of its own instance: findings of the layout as it is,
//! and what a drag in hand would change of them.
use planner::commands::{move_by, turn_by};
use planner::layout::{Id, Layout};
use planner::readings::{
    Finding, Kept, Live as Figures, Mark, Report, Scores, Study, live, report, shifts,
};
use serde::Serialize;
use wasm_bindgen::prelude::*;

use crate::objects::object;
use crate::{Planner, marks};

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

/// Marks of the finding of this key, or of the pressing ones for none.
fn marks_of(report: &Report, key: &str) -> Vec<Mark> {
    let marks = |f: &Finding| f.marks.clone();
    if key.is_empty() {
        report.pressing().flat_map(marks).collect()
    } else {
        let asked = report.findings.iter().filter(|f| f.key == key);
        asked.flat_map(marks).collect()
    }
}

/// What lies between the layout as it is read and what was made of the last.
fn studied<'a>(layout: &'a Layout, kept: Option<&'a Kept>) -> Study<'a> {
    kept.map_or_else(|| Study::new(layout), |kept| Study::after(layout, kept))
}

#[wasm_bindgen]
impl Planner {
    /// Reads the layout; `no_hands` reads the table before anyone reaches in.
    ///
    /// # Errors
    /// When the browser refuses to make the object.
    pub fn read(&mut self, no_hands: bool) -> Result<JsValue, JsError> {
        let table = no_hands.then(|| bare(self.now()));
        let layout = table.as_ref().unwrap_or_else(|| self.now());
        let study = studied(layout, self.kept.as_ref());
        let read = report(&study, true);
        self.kept = Some(study.keep());
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
        let study = studied(&after, self.kept.as_ref());
        let now = live(&study);
        let moved = shifts(&Figures::of(before), &now).findings;
        let changed = |key: &str| moved.iter().any(|shift| shift.key == key);
        let shown = now.findings.iter().filter(|f| changed(&f.key));
        self.view.marks = shown.flat_map(|f| f.marks.iter().cloned()).collect();
        // Words are made for what changes alone; what is over keeps its last.
        let told = if moved.is_empty() {
            Vec::new()
        } else {
            report(&study, false).findings
        };
        let said = |key: &str| {
            let found = told.iter().chain(&before.findings).find(|f| f.key == key);
            found.map_or("", |f| f.sentence.as_str())
        };
        let changes = moved.iter().map(|shift| Change {
            key: &shift.key,
            sentence: said(&shift.key),
            better: shift.better,
        });
        let changes = changes.collect();
        object(&Live {
            scores: now.scores,
            changes,
        })
    }
}
