//! What the seam round each exposure runs over: how hard it is to hide there.
//!
//! The seam is taken where a mask guide ends its quiet margin. On plain ground
//! it cannot be seen; folds of cloth, food, rims and glass show every
//! millimetre that two frames do not match by (common practice, no source).
use glam::DVec2;

use super::super::finding::{Finding, Mark, State};
use super::super::rules::EXPOSURE_SEAM;
use super::super::study::Study;
use super::states::called;
use crate::catalogue::{Kind, kind_of};
use crate::exposures::{QUIET, held_in, state_of};
use crate::layout::{As, Exposure, Finish, Item, Layout, LinenState};
use crate::optics::View;
use crate::scene::{linen_outline, rise, seen_outline, vessel_of};
use crate::shape::{Region, contains, frame_outline, to_edge};
use crate::words::{Arg, length, listed, say};

/// The seam is looked at in such steps, mm.
const STEP: f64 = 10.0;
/// So near to the edge of a vessel it runs over its rim, mm. Our choice.
const RIM: f64 = 15.0;
/// What a centimetre of it costs over folds, food, rims and glass, plain
/// ground costing nothing. Our choice.
const COSTS: [f64; 4] = [1.0, 2.0, 3.0, 4.0];
const WORDS: [&str; 4] = ["seam-folds", "seam-food", "seam-rims", "seam-glass"];
/// Less than this over one kind is not named, mm.
const NAMED: f64 = 20.0;

/// One thing of the table the seam may run over.
struct Under {
    outline: Vec<DVec2>,
    top: f64,
    glass: bool,
    food: bool,
}

/// How far the seam runs over each kind, mm, and where it is not plain.
struct Seam {
    over: [f64; 4],
    places: Vec<DVec2>,
}

/// The seams that cost something; told when all is.
pub(super) fn read(study: &Study<'_>) -> Vec<Finding> {
    let layout = study.layout();
    if !study.tells_all() || layout.hands.is_empty() {
        return Vec::new();
    }
    let each = study.added().iter().filter_map(|own| {
        let exposure = layout.exposures.iter().find(|e| e.id == own.exposure)?;
        one(study, exposure, &seam(layout, exposure, &own.solid))
    });
    each.collect()
}

/// Where the quiet margin round a region ends, and what lies there.
fn seam(layout: &Layout, exposure: &Exposure, solid: &Region) -> Seam {
    let frame = frame_outline(&layout.frame);
    let things = under(layout, exposure);
    let folds: Vec<Vec<DVec2>> = layout
        .linens
        .iter()
        .filter(|l| l.state != LinenState::Flat)
        .map(linen_outline)
        .collect();
    let mut out = Seam {
        over: [0.0; 4],
        places: Vec::new(),
    };
    for p in margin(solid).into_iter().filter(|p| contains(&frame, *p)) {
        let top = things.iter().filter(|t| contains(&t.outline, p));
        let top = top.max_by(|a, b| a.top.total_cmp(&b.top));
        let kind = match top {
            Some(t) if t.glass => 3,
            Some(t) if t.food => 1,
            Some(t) if to_edge(&t.outline, p) < RIM => 2,
            Some(_) => continue,
            None if folds.iter().any(|f| contains(f, p)) => 0,
            None => continue,
        };
        out.over[kind] += STEP;
        out.places.push(p);
    }
    out
}

/// Places a step apart at the margin's end, outside the region by just that.
fn margin(solid: &Region) -> Vec<DVec2> {
    let mut out = Vec::new();
    let rings = solid.rings();
    let away = |p: DVec2| {
        let each = rings.iter().map(|ring| to_edge(ring, p));
        each.fold(f64::INFINITY, f64::min)
    };
    for ring in rings {
        let mut left = 0.0;
        for (n, a) in ring.iter().enumerate() {
            let side = ring[(n + 1) % ring.len()] - *a;
            let long = side.length();
            let along = side.normalize_or_zero();
            while left < long {
                let at = *a + along * left;
                for out_of in [along.perp(), -along.perp()] {
                    let p = at + out_of * QUIET;
                    // Inside, and where another side is nearer, it is no end.
                    if !solid.contains(p) && away(p) > QUIET - 1.0 {
                        out.push(p);
                    }
                }
                left += STEP;
            }
            left -= long;
        }
    }
    out
}

/// What stands as set in an exposure, but for what is in its hands.
fn under(layout: &Layout, exposure: &Exposure) -> Vec<Under> {
    let view = View::of(layout);
    let own = |item: &Item| {
        state_of(exposure, item.id) != As::Set
            || held_in(layout, exposure.id, item.id).next().is_some()
    };
    let standing = layout.items.iter().filter(|i| !own(i));
    let each = standing.map(|item| {
        let rise = rise(layout, item);
        let inside = vessel_of(layout, item).is_some();
        Under {
            outline: seen_outline(item, rise, inside, view),
            top: rise.top,
            glass: matches!(item.finish, Finish::Clear | Finish::Liquid),
            food: matches!(kind_of(&item.prop), Kind::Food),
        }
    });
    each.collect()
}

fn one(study: &Study<'_>, exposure: &Exposure, seam: &Seam) -> Option<Finding> {
    let layout = study.layout();
    let costs = seam.over.iter().zip(COSTS);
    let figure: f64 = costs.map(|(mm, cost)| mm / 10.0 * cost).sum();
    if figure < EXPOSURE_SEAM.edges[0] {
        return None;
    }
    let key = format!("exposures:{}:seam", exposure.id.0);
    let own = layout.hands.iter().filter(|h| h.exposure == exposure.id);
    let about = own.map(|h| h.id).collect();
    let mut f = Finding::by(&EXPOSURE_SEAM, key, (State::Holds, 3), figure, about);
    f.marks = seam
        .places
        .iter()
        .map(|at| Mark::Ring {
            at: *at,
            radius: STEP * 0.5,
        })
        .collect();
    f.sentence = study.sentence(|| {
        let kinds = seam.over.iter().zip(WORDS).filter(|k| *k.0 >= NAMED);
        let kinds: Vec<String> = kinds
            .map(|(mm, word)| {
                let long = length(*mm, layout.head.units);
                say(word, &[("length", Arg::Text(long))])
            })
            .collect();
        let args = [
            ("exposure", Arg::Text(called(layout, exposure))),
            ("over", Arg::Text(listed(&kinds))),
        ];
        say("exposure-seam", &args)
    });
    f.working = study.tell(|| vec![say("working-exposure-seam", &[])]);
    Some(f)
}
