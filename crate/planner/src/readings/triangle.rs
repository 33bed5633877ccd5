//! Triangle: do the three heaviest dishes make one?
//!
//! Score S4 = 100·√(min(1, q/0.75)·min(1, A/(0.11·W·H))) with
//! q = 4√3·A/(a²+b²+c²). Craft convention: no preference for it was found
//! (McManus & Kitson 1995), so it is silent until asked.
use glam::DVec2;

use super::finding::{Finding, Mark, State};
use super::rules::{TRIANGLE, TRIANGLE_SCORE};
use super::study::Study;
use crate::layout::Id;
use crate::measures::{dominance, triangle_score};
use crate::order;
use crate::words::{Arg, fixed, listed, say, whole};

/// The dishes by falling mass, with their centres in the picture.
pub(super) fn ranked(study: &Study<'_>) -> Vec<(Id, f64, DVec2)> {
    let mut out: Vec<(Id, f64, DVec2)> = study
        .dishes()
        .iter()
        .filter(|d| study.item(d.id).is_some())
        .filter_map(|d| d.point().map(|p| (d.id, p.mass, p.at)))
        .collect();
    order::sort(&mut out, |a, b| b.1.total_cmp(&a.1).then(a.0.cmp(&b.0)));
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
    triangle_score(study.picture().size, corners(&ranked(study))?)
}

/// What the three heaviest dishes make.
pub(super) fn read(study: &Study<'_>) -> Option<Finding> {
    if !study.has_three_dishes() {
        return None;
    }
    let ranked = ranked(study);
    let masses: Vec<f64> = ranked.iter().map(|r| r.1).collect();
    let clear = dominance(&masses).unwrap_or(f64::INFINITY);
    let corners = corners(&ranked)?;
    let score = score(study).unwrap_or(0.0);
    let picture = study.picture();
    let (rule, id, figure) = if clear < TRIANGLE.edges[0] {
        (&TRIANGLE, "triangle-none", clear)
    } else if score < TRIANGLE_SCORE.edges[0] {
        (&TRIANGLE_SCORE, "triangle-flat", score)
    } else {
        (&TRIANGLE_SCORE, "triangle-holds", score)
    };
    let state = if id == "triangle-holds" {
        State::Holds
    } else {
        State::LookAgain
    };
    let three: Vec<Id> = ranked.iter().take(3).map(|r| r.0).collect();
    let mut f = Finding::by(rule, "triangle".into(), (state, 3), figure, three.clone());
    f.marks = vec![Mark::Triangle {
        corners: corners.iter().map(|c| picture.on_table(*c)).collect(),
    }];
    for (id, at) in three.iter().zip(corners) {
        f.marks.push(Mark::Label {
            at: picture.on_table(at),
            text: study.tell(|| study.name(*id)),
        });
    }
    f.sentence = study.sentence(|| {
        let names: Vec<String> = three.iter().map(|id| study.name(*id)).collect();
        say(id, &[("things", Arg::Text(listed(&names)))])
    });
    f.working = study.tell(|| {
        let stands = if clear.is_finite() {
            fixed(clear, 2)
        } else {
            "–".into()
        };
        let args = [
            ("score", Arg::Text(whole(score))),
            ("clear", Arg::Text(stands)),
        ];
        vec![say("working-triangle", &args)]
    });
    Some(f)
}
