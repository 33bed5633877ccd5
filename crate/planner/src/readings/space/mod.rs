//! Negative space: how much of the picture is free, and does the type have the
//! room it was promised?
//!
//! Free share = 1 − area that things and arms cover ÷ area of the picture;
//! cloth and table are ground, and so is what is strewn. The largest empty
//! rectangle lies along the picture's edges, the largest empty circle
//! anywhere. No share is known to please (composition research gives no
//! optimum), so this is silent until asked; copy space is a promise, so what
//! lies in it is said.
mod copy;
mod remedy;
#[cfg(test)]
mod tests;

use glam::DVec2;

use super::finding::{Finding, Mark, State};
use super::picture::Picture;
use super::rules::SPACE_FREE;
use super::study::Study;
use crate::layout::Id;
use crate::scene::PartKind;
use crate::shape::{Bounds, Region, largest_circle, largest_rectangle};
use crate::words::{Arg, length, percent, say};

pub use copy::copy_space;
pub(super) use copy::{area_of as copy_area, read, takes as takes_copy};

/// What stands, lies or reaches in a picture: whose it is, and its area in the
/// picture's own directions.
fn things(study: &Study<'_>, picture: &Picture) -> Vec<(Id, Region)> {
    let scene = study.scene();
    let whole = whole(picture);
    let mut out = Vec::new();
    for piece in &scene.pieces {
        if !matches!(
            piece.part,
            PartKind::Rim | PartKind::Food | PartKind::Hand | PartKind::Sleeve
        ) {
            continue;
        }
        let own = piece.region.carried(|p| picture.of_table(p));
        if own.bounds().is_some_and(|b| b.meets(whole)) {
            out.push((study.root(piece.owner), own));
        }
    }
    out
}

/// A picture in its own directions.
pub(super) fn whole(picture: &Picture) -> Bounds {
    Bounds {
        min: DVec2::ZERO,
        max: picture.size,
    }
}

/// How much of the picture is free, and where most of it lies.
pub(super) fn free(study: &Study<'_>) -> Option<Finding> {
    if !study.has_three_dishes() {
        return None;
    }
    let picture = study.picture();
    let whole = whole(&picture);
    let all = picture.size.x * picture.size.y;
    let scene = study.scene();
    let covered: f64 = (0..scene.pieces.len())
        .filter(|n| !matches!(scene.pieces[*n].part, PartKind::Table | PartKind::Linen))
        .map(|n| scene.seen(n).area())
        .sum();
    let free = 1.0 - covered / all;
    let things: Vec<Region> = things(study, &picture).into_iter().map(|t| t.1).collect();
    let rectangle = largest_rectangle(whole, &things, DVec2::ZERO)?;
    let (at, radius) = largest_circle(whole, &things)?;
    let state = (State::Holds, 3);
    let mut f = Finding::by(&SPACE_FREE, "space".into(), state, free * 100.0, Vec::new());
    let units = study.layout().head.units;
    let size = rectangle.size();
    let outline = rectangle.corners();
    f.marks = vec![
        Mark::Area {
            outline: outline.iter().map(|p| picture.on_table(*p)).collect(),
            label: study.tell(|| percent(size.x * size.y / all)),
        },
        Mark::Ring {
            at: picture.on_table(at),
            radius,
        },
    ];
    f.sentence = study.sentence(|| {
        let args = [
            ("free", Arg::Text(percent(free))),
            ("across", Arg::Text(length(size.x, units))),
            ("down", Arg::Text(length(size.y, units))),
            ("share", Arg::Text(percent(size.x * size.y / all))),
            ("wide", Arg::Text(length(radius * 2.0, units))),
        ];
        say("space-free", &args)
    });
    f.working = study.tell(|| vec![say("working-space", &[])]);
    Some(f)
}
