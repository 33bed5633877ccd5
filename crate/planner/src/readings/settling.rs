//! A settled report made in slices, so that whoever makes it can see to other
//! things in between, or drop it.
use super::finding::Finding;
use super::made::{Kept, Unfinished};
use super::pace::{Found, Pace};
use super::report::{READINGS, Report, whole};
use super::separation_light::see_in_light;
use super::study::Study;
use crate::layout::{Id, Layout};

/// A settled report in the making. It owns all it works on.
pub struct Settling {
    layout: Layout,
    view: Option<Id>,
    made: Unfinished,
    /// The reading in hand, by its place, and what is known of its searches.
    at: usize,
    /// Whether remedies are looked for.
    remedies: bool,
    found: Found,
    findings: Vec<Finding>,
}

impl Settling {
    /// Begins the report of a layout with this crop in view, 0 for none, going
    /// on from what was kept of the layout before an edit.
    #[must_use]
    pub fn begin(layout: &Layout, before: Option<&Kept>, crop: Id) -> Self {
        let study = before.map_or_else(|| Study::new(layout), |kept| Study::after(layout, kept));
        let study = study.viewing(crop);
        // What is taken over from before has to be made while it is at hand.
        study.lit();
        study.viewed().walks();
        Self {
            layout: layout.clone(),
            view: study.view(),
            made: study.leave_off(),
            at: 0,
            remedies: true,
            found: Found::default(),
            findings: Vec::new(),
        }
    }

    /// The same without remedies: states, figures and sentences.
    #[must_use]
    pub fn without_remedies(self) -> Self {
        Self {
            remedies: false,
            ..self
        }
    }

    /// Makes some more of it, however little, and then for as long as `go_on`
    /// says. The report once it is whole, the same to the last bit as one made
    /// in one go; nothing more comes after it.
    pub fn step(&mut self, go_on: &dyn Fn() -> bool) -> Option<Report> {
        let pace = Pace::new(go_on, std::mem::take(&mut self.found));
        let made = std::mem::take(&mut self.made);
        let study = Study::again(&self.layout, self.view, made, &pace);
        see_in_light(&study, &pace);
        see_in_light(study.viewed(), &pace);
        while let Some(reading) = READINGS.get(self.at) {
            if !pace.goes_on() {
                break;
            }
            let found = reading(&study, self.remedies);
            if pace.stopped() {
                break;
            }
            pace.next();
            self.at += 1;
            self.findings.extend(found);
        }
        let report = (!pace.stopped()).then(|| {
            let findings = std::mem::take(&mut self.findings);
            whole(&study, findings, true)
        });
        self.made = study.leave_off();
        self.found = pace.leave_off();
        report
    }

    /// What the report leaves behind for the study of the layout after an edit.
    #[must_use]
    pub fn keep(self) -> Kept {
        Kept::of(self.layout, self.made)
    }
}
