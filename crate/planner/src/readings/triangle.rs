//! Triangle: do the three heaviest dishes make one?
//!
//! Score S4 = 100·√(min(1, q/0.75)·min(1, A/(0.11·W·H))) with
//! q = 4√3·A/(a²+b²+c²). Craft convention: no preference for it was found
//! (McManus & Kitson 1995), so it is silent until asked.
use glam::DVec2;

use super::finding::{Finding, Grade, Mark, State};
use super::mass::{dishes, on_table, picture_size};
use super::study::Study;
use crate::layout::Id;
use crate::measures::{CLEAR_DOMINANCE, dominance, triangle_score};
use crate::words::say;

/// The dishes by falling mass, with their centres in the picture.
pub(super) fn ranked(study: &Study<'_>) -> Vec<(Id, f64, DVec2)> {
    let mut out: Vec<(Id, f64, DVec2)> = dishes(study)
        .iter()
        .filter(|d| study.item(d.id).is_some())
        .filter_map(|d| d.point().map(|p| (d.id, p.mass, p.at)))
        .collect();
    out.sort_by(|a, b| b.1.total_cmp(&a.1).then(a.0.cmp(&b.0)));
    out
}

fn corners(ranked: &[(Id, f64, DVec2)]) -> Option<[DVec2; 3]> {
    match ranked {
        [a, b, c, ..] => Some([a.2, b.2, c.2]),
        _ => None,
    }
}

/// S4 of the three heaviest dishes; `None` with fewer than three.
pub(super) fn score(study: &Study<'_>) -> Option<f64> {
    triangle_score(picture_size(study), corners(&ranked(study))?)
}

/// An observation when no three dishes stand out.
pub(super) fn read(study: &Study<'_>) -> Option<Finding> {
    let ranked = ranked(study);
    let masses: Vec<f64> = ranked.iter().map(|r| r.1).collect();
    let clear = dominance(&masses).unwrap_or(f64::INFINITY);
    let corners = corners(&ranked)?;
    (study.has_three_dishes() && clear < CLEAR_DOMINANCE).then(|| Finding {
        key: "triangle".into(),
        reading: "triangle",
        state: State::LookAgain,
        rank: 3,
        figure: clear,
        about: ranked.iter().take(3).map(|r| r.0).collect(),
        sentence: say("triangle-none", &[]),
        working: vec![say("working-triangle", &[])],
        grade: Grade::TradePractice,
        taste: true,
        marks: vec![Mark::Triangle {
            corners: corners.iter().map(|c| on_table(study, *c)).collect(),
        }],
        remedy: None,
    })
}
