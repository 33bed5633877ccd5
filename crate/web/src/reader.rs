//! What the worker asks of its own instance: findings of the layout as it is,
//! and what a drag in hand would change of them.
use planner::commands::{move_by, move_picked, turn_by, turn_picked};
use planner::drawing::Trims;
use planner::layout::{Id, Layout};
use planner::optics::View;
use planner::readings::{
    Finding, Kept, Live as Figures, Mark, Report, Scores, Settling, Study, flat_marks, live,
    region_marks, shifts,
};
use serde::Serialize;
use wasm_bindgen::prelude::*;

use crate::arrange::these;
use crate::objects::object;
use crate::pages::trims;
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

/// What asks for what each exposure adds, all of them or the one whose id
/// follows, with where they clash.
const REGIONS: &str = "show:exposures";

impl Planner {
    /// What the exposures asked for add to a layout, as it lies in the picture.
    fn added(&self, layout: &Layout) -> Vec<Mark> {
        let view = if self.through {
            View::of(layout)
        } else {
            View::Above
        };
        self.regions
            .map_or_else(Vec::new, |only| region_marks(layout, view, only))
    }
}

/// A layout without its hands: the table before anyone reaches in.
fn bare(layout: &Layout) -> Layout {
    let mut table = layout.clone();
    table.hands.clear();
    table
}

/// Marks of the finding of this key, of a whole reading for `show:` and its
/// name, or of the pressing ones for none. What a crop cuts means something only
/// beside its line; without it, it is marked when it is asked for.
fn marks_of(
    report: &Report,
    key: &str,
    crops: Trims,
    marks: impl Fn(&Finding) -> Vec<Mark>,
) -> Vec<Mark> {
    if key.starts_with(REGIONS) {
        let clash = report.findings.iter().filter(|f| f.key.ends_with(":clash"));
        clash.flat_map(&marks).collect()
    } else if let Some(reading) = key.strip_prefix("show:") {
        let asked = report.findings.iter().filter(|f| f.reading == reading);
        asked.flat_map(&marks).collect()
    } else if key.is_empty() {
        let shown = |f: &&Finding| beside(&f.key, crops);
        report.pressing().filter(shown).flat_map(&marks).collect()
    } else {
        let asked = report.findings.iter().filter(|f| f.key == key);
        asked.flat_map(marks).collect()
    }
}

/// The marks of a finding as they lie in the picture, through the lens or from
/// above.
fn drawn(layout: &Layout, about: &[Id], marks: &[Mark], through: bool) -> Vec<Mark> {
    if through {
        marks.to_vec()
    } else {
        flat_marks(layout, about, marks)
    }
}

/// What lies between the layout as it is read and what was made of the last,
/// with a crop in view or 0.
fn studied<'a>(layout: &'a Layout, kept: Option<&'a Kept>, crop: u16) -> Study<'a> {
    let study = kept.map_or_else(|| Study::new(layout), |kept| Study::after(layout, kept));
    study.viewing(Id(crop))
}

/// Whether a finding's marks go with the lines of these crops.
fn beside(key: &str, crops: Trims) -> bool {
    let crop = key
        .strip_prefix("crops:")
        .and_then(|rest| rest.split(':').next());
    crop.is_none_or(|crop| match crops {
        Trims::All => true,
        Trims::None => false,
        Trims::One(id) => crop == id.0.to_string(),
    })
}

#[wasm_bindgen]
impl Planner {
    /// Begins to read the layout, in slices; `no_hands` reads the table before
    /// anyone reaches in. Scores are of the crop in view, of the whole frame for
    /// 0. What was begun before is dropped.
    pub fn begin_reading(&mut self, no_hands: bool, crop: u16) {
        let table = no_hands.then(|| bare(self.now()));
        let layout = table.as_ref().unwrap_or_else(|| self.now());
        let begun = Settling::begin(layout, self.kept.as_ref(), Id(crop));
        self.settling = Some(begun);
    }

    /// Reads on for as long as `go_on` says yes, one small piece at least; what
    /// there is to say once all is read, nothing before.
    ///
    /// # Errors
    /// When the browser refuses to make the object.
    pub fn read_on(&mut self, go_on: &js_sys::Function) -> Result<JsValue, JsError> {
        let says = || {
            let said = go_on.call0(&JsValue::NULL);
            said.is_ok_and(|yes| yes.is_truthy())
        };
        let Some(report) = self.settling.as_mut().and_then(|s| s.step(&says)) else {
            return Ok(JsValue::UNDEFINED);
        };
        self.kept = self.settling.take().map(Settling::keep);
        object(self.report.insert(report))
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

    /// Picks the marks of the finding of this key, of a whole reading for `show:`
    /// and its name, or of the pressing ones for none, for [`Planner::marks_numbers`]; crops as [`Planner::view`] takes them.
    pub fn pick_marks(&mut self, key: &str, crops: i32) {
        self.view.crops = trims(crops);
        self.regions = key.strip_prefix(REGIONS).map(|of| of.parse().ok().map(Id));
        let report = self.report.as_ref();
        let marks = |f: &Finding| drawn(self.now(), &f.about, &f.marks, self.through);
        let picked = report.map(|report| marks_of(report, key, self.view.crops, marks));
        let mut picked = picked.unwrap_or_default();
        picked.extend(self.added(self.now()));
        self.view.marks = picked;
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

    /// What moving and turning a thing, with its group or `alone`, or several
    /// picked ones by this much would change of what was last read, mm and half
    /// degrees; picks the marks of what changes, beside the crops of
    /// [`Planner::pick_marks`].
    ///
    /// # Errors
    /// When the browser refuses to make the object.
    pub fn live(
        &mut self,
        no_hands: bool,
        ids: &[u16],
        alone: bool,
        dx: i32,
        dy: i32,
        half_degrees: i32,
    ) -> Result<JsValue, JsError> {
        let Some(before) = &self.report else {
            return Ok(JsValue::UNDEFINED);
        };
        let act = match (these(ids).as_slice(), half_degrees) {
            ([id], 0) => move_by(self.now(), *id, alone, [dx, dy])?,
            ([id], turn) => turn_by(self.now(), *id, turn)?,
            (ids, 0) => move_picked(self.now(), ids, [dx, dy])?,
            (ids, turn) => turn_picked(self.now(), ids, turn)?,
        };
        let mut after = self.now().clone();
        act.edit.apply(&mut after)?;
        if no_hands {
            after.hands.clear();
        }
        let crop = before.crop.map_or(0, |crop| crop.0);
        let study = studied(&after, self.kept.as_ref(), crop);
        let now = live(&study);
        let moved = shifts(&Figures::of(before), &now).findings;
        let crops = self.view.crops;
        let changed = |key: &str| moved.iter().any(|shift| shift.key == key);
        let shown = now
            .findings
            .iter()
            .filter(|f| changed(&f.key) && beside(&f.key, crops));
        let marks = shown.flat_map(|f| drawn(&after, &f.about, &f.marks, self.through));
        let mut marks: Vec<Mark> = marks.collect();
        marks.extend(self.added(&after));
        self.view.marks = marks;
        // What is over keeps its last sentence.
        let said = |key: &str| {
            let told = now.findings.iter().find(|f| f.key == key);
            let last = || before.findings.iter().find(|f| f.key == key);
            told.map(|f| f.sentence.as_str())
                .or_else(|| last().map(|f| f.sentence.as_str()))
                .unwrap_or_default()
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
