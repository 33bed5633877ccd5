//! All readings together, ranked by what they cost if found on the day.
use serde::Serialize;

use super::cautions::{Caution, cautions};
use super::finding::{Finding, State};
use super::separation::separation_score_of;
use super::study::Study;
use super::triangle_asked::{Corners, asked_triangle};
use super::{
    balance, colour, crops, direction, exposures, fit, glare, hands, hero, lean, light, rig,
    separation_findings, settings, space, spacing, timing, triangle,
};
use crate::layout::{Id, Role};
use crate::order;
use crate::scene::effective_role;
use crate::words::say;

/// Sentences at a time; the rest are notes.
const AT_A_TIME: usize = 3;

/// The three quiet scores, each 0 to 100; absent when it cannot be said.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Scores {
    /// Balance.
    pub balance: Option<f64>,
    /// Triangle.
    pub triangle: Option<f64>,
    /// Separation.
    pub separation: Option<f64>,
}

/// A reading that cannot be made yet, and why.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Waiting {
    /// Which reading.
    pub reading: &'static str,
    /// What it waits for.
    pub reason: String,
}

/// What there is to say about a layout.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Report {
    /// Findings, the dearest first; what holds comes last.
    pub findings: Vec<Finding>,
    /// The scores, once there are a frame and three dishes.
    pub scores: Option<Scores>,
    /// The crop in view, of which the scores are; the whole frame without one.
    pub crop: Option<Id>,
    /// Readings that do not apply, with the reason.
    pub waiting: Vec<Waiting>,
    /// What to take care of; once the report is settled.
    pub cautions: Vec<Caution>,
}

impl Report {
    /// What is said unasked: at most three, never a matter of taste.
    pub fn pressing(&self) -> impl Iterator<Item = &Finding> {
        let presses = |f: &&Finding| f.is_pressing();
        self.findings.iter().filter(presses).take(AT_A_TIME)
    }
}

/// Every reading, as a function of the study and whether remedies are wanted.
pub(super) const READINGS: [fn(&Study<'_>, bool) -> Vec<Finding>; 21] = [
    separation_findings::read,
    fit::read,
    crops::read,
    rig::read,
    lean::read,
    spacing::read,
    |study, _| balance::read(study.viewed()).into_iter().collect(),
    |study, _| triangle::read(study.viewed()).into_iter().collect(),
    |study, _| hero::read(study),
    hands::read,
    exposures::read,
    timing::read,
    |study, settled| light::read(study.viewed(), settled),
    |study, _| settings::read(study),
    |study, settled| glare::read(study.viewed(), settled),
    space::read,
    direction::into_copy,
    // What is silent until asked is left out of a drag.
    |study, _| {
        let free = || space::free(study.viewed()).into_iter().collect();
        when_all(study, free)
    },
    |study, settled| when_all(study, || direction::read(study, settled)),
    |study, settled| when_all(study, || colour::read(study, settled)),
    |study, _| {
        let of = [Corners::Fingertips, Corners::Accents];
        let asked = || of.into_iter().filter_map(|of| asked_triangle(study, of));
        when_all(study, || asked().collect())
    },
];

fn when_all(study: &Study<'_>, read: impl FnOnce() -> Vec<Finding>) -> Vec<Finding> {
    if study.tells_all() {
        read()
    } else {
        Vec::new()
    }
}

/// Reads a layout. `settled` adds remedies with the figures they lead to;
/// without it only states, figures and marks are worked out.
#[must_use]
pub fn report(study: &Study<'_>, settled: bool) -> Report {
    let findings = READINGS.iter().flat_map(|read| read(study, settled));
    whole(study, findings.collect(), settled)
}

/// The report of these findings.
pub(super) fn whole(study: &Study<'_>, findings: Vec<Finding>, settled: bool) -> Report {
    Report {
        findings: ranked(study, findings),
        scores: scores(study),
        crop: study.view(),
        waiting: waiting(study),
        cautions: if settled {
            cautions(study.layout())
        } else {
            Vec::new()
        },
    }
}

/// The three scores of the frame or the crop in view; `None` before there are
/// three dishes.
#[must_use]
pub fn scores(study: &Study<'_>) -> Option<Scores> {
    let study = study.viewed();
    study.has_three_dishes().then(|| Scores {
        balance: balance::score(study),
        triangle: triangle::score(study),
        separation: separation_score_of(study),
    })
}

/// All findings in their order.
pub(super) fn findings(study: &Study<'_>, settled: bool) -> Vec<Finding> {
    let findings = READINGS.iter().flat_map(|read| read(study, settled));
    ranked(study, findings.collect())
}

/// Findings in their order, those that are meant so among them.
fn ranked(study: &Study<'_>, mut findings: Vec<Finding>) -> Vec<Finding> {
    for finding in &mut findings {
        let key = &finding.key;
        let accepted = study.layout().intended.iter().any(|a| {
            a.finding == *key && (f64::from(a.figure) - finding.figure).abs() <= finding.rule.same
        });
        if accepted && finding.state == State::LookAgain {
            finding.state = State::Intended;
            finding.remedy = None;
        }
    }
    let quiet = |f: &Finding| u8::from(matches!(f.state, State::Holds | State::Intended));
    order::sort(&mut findings, |a, b| {
        (quiet(a), a.taste, a.rank)
            .cmp(&(quiet(b), b.taste, b.rank))
            .then(is_hero(study, b).cmp(&is_hero(study, a)))
            .then(b.figure.total_cmp(&a.figure))
            .then(a.key.cmp(&b.key))
    });
    findings
}

fn waiting(study: &Study<'_>) -> Vec<Waiting> {
    let mut out = Vec::new();
    let mut wait = |reading, reason: &str| {
        out.push(Waiting {
            reading,
            reason: say(reason, &[]),
        });
    };
    if !study.has_three_dishes() {
        for reading in ["balance", "triangle", "space", "direction", "colour"] {
            wait(reading, "waits-dishes");
        }
    }
    if study.layout().items.iter().all(|i| i.role != Role::Hero) {
        wait("hero", "waits-hero");
    }
    if study.layout().crops.is_empty() {
        wait("crops", "waits-crops");
    }
    if let Some(reason) = hands::waits(study) {
        wait("hands", reason);
    }
    if let Some(reason) = rig::waits(study) {
        wait("rig", reason);
    }
    out
}

fn is_hero(study: &Study<'_>, finding: &Finding) -> bool {
    let chief = finding.about.first().and_then(|id| study.item(*id));
    chief.is_some_and(|item| effective_role(study.layout(), item) == Role::Hero)
}
