//! All readings together, ranked by what they cost if found on the day.
use serde::Serialize;

use super::finding::{Finding, State};
use super::separation::separation_score_of;
use super::study::Study;
use super::{balance, crops, fit, hero, separation_findings, triangle};
use crate::layout::Role;
use crate::scene::effective_role;

/// A figure may drift this far before an accepted finding speaks again.
const SAME_FIGURE: f64 = 2.0;

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

/// What there is to say about a layout.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Report {
    /// Findings, the dearest first; what holds comes last.
    pub findings: Vec<Finding>,
    /// The scores, once there are a frame and three dishes.
    pub scores: Option<Scores>,
}

/// Reads a layout. `settled` adds remedies with the figures they lead to;
/// without it only states, figures and marks are worked out.
#[must_use]
pub fn report(study: &Study<'_>, settled: bool) -> Report {
    let mut findings = separation_findings::read(study, settled);
    findings.extend(fit::read(study));
    findings.extend(crops::read(study, settled));
    findings.extend(balance::read(study));
    findings.extend(triangle::read(study));
    findings.extend(hero::read(study));
    for finding in &mut findings {
        let key = &finding.key;
        let accepted = study.layout().intended.iter().any(|a| {
            a.finding == *key && (f64::from(a.figure) - finding.figure).abs() <= SAME_FIGURE
        });
        if accepted && finding.state == State::LookAgain {
            finding.state = State::Intended;
            finding.remedy = None;
        }
    }
    let quiet = |f: &Finding| u8::from(matches!(f.state, State::Holds | State::Intended));
    findings.sort_by(|a, b| {
        (quiet(a), a.taste, a.rank)
            .cmp(&(quiet(b), b.taste, b.rank))
            .then(is_hero(study, b).cmp(&is_hero(study, a)))
            .then(b.figure.total_cmp(&a.figure))
            .then(a.key.cmp(&b.key))
    });
    let scores = study.has_three_dishes().then(|| Scores {
        balance: balance::score(study),
        triangle: triangle::score(study),
        separation: separation_score_of(study),
    });
    Report { findings, scores }
}

fn is_hero(study: &Study<'_>, finding: &Finding) -> bool {
    let chief = finding.about.first().and_then(|id| study.item(*id));
    chief.is_some_and(|item| effective_role(study.layout(), item) == Role::Hero)
}
