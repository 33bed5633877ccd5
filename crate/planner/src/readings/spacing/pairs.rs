//! Which pairs come too near.
use glam::DVec2;

use super::super::study::Study;
use super::edges::lies;
use super::thing::{Area, Thing};
use crate::layout::{Id, LinenKind, LinenState};
use crate::measures::{KISSING_OVERLAP, NEAR_TANGENT, is_kissing, is_near_tangent};
use crate::order::sort;
use crate::scene::linen_span;
use crate::shape::{CHORD_ERROR, Region, clearing_move, gap_within, table_outline, thinned};

/// A hand works at what lies within this of its fingertips, mm. Our choice.
const AT_WORK: f64 = 60.0;
/// How far an outline may be off where the depth of an overlap is told, mm;
/// figures on screen step by 1 mm.
const THIN: f64 = 0.3;

/// What the other side of a pair is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Meets {
    /// Two dishes.
    Dish,
    /// An arm is the chief side.
    Arm,
    /// An arm is the other side, at a main dish.
    ByArm,
    /// A linen or the board is the chief side.
    Edge,
}

/// A pair that only just touches, overlaps or misses.
#[derive(Clone, Debug)]
pub(super) struct Flag {
    /// Hero before main dish before arm before edge.
    pub(super) chief: Id,
    pub(super) other: Id,
    pub(super) meets: Meets,
    /// Whether they overlap.
    pub(super) overlaps: bool,
    /// Gap or depth of the overlap, mm.
    pub(super) figure: f64,
    /// What is missing to a clear gap or a real overlap, mm.
    pub(super) missing: f64,
    /// The gap, from the chief side.
    pub(super) from: DVec2,
    pub(super) to: DVec2,
    /// Moving the other side this way and this far clears it.
    pub(super) clear: DVec2,
    /// Moving it this far makes a real overlap.
    pub(super) lap: DVec2,
}

/// Everything flagged in the picture, by chief side and then by other.
pub(super) fn flags(study: &Study<'_>, things: &[Thing]) -> Vec<Flag> {
    let limit = NEAR_TANGENT * study.picture().diagonal();
    let mut out = Vec::new();
    for (n, a) in things.iter().enumerate() {
        for b in &things[n + 1..] {
            if !is_exempt(study, a, b) {
                let (chief, other) = if weight(a) <= weight(b) {
                    (a, b)
                } else {
                    (b, a)
                };
                out.extend(between(chief, other, limit));
            }
        }
    }
    for (id, edge, every) in edges(study) {
        let Ok(ground) = Region::from_polygon(&edge) else {
            continue;
        };
        for thing in things.iter().filter(|t| !t.arm && (every || t.is_main())) {
            out.extend(at_edge(id, &edge, &ground, thing, limit));
        }
    }
    let shown = |f: &Flag| study.scene().frame.contains((f.from + f.to) * 0.5);
    out.retain(shown);
    sort(&mut out, |a, b| (a.chief, a.other).cmp(&(b.chief, b.other)));
    out
}

fn weight(thing: &Thing) -> u8 {
    match (thing.is_hero(), thing.is_main(), thing.arm) {
        (true, ..) => 0,
        (_, true, _) => 1,
        (.., true) => 2,
        _ => 3,
    }
}

/// Whether a pair is none of Spacing's business.
fn is_exempt(study: &Study<'_>, a: &Thing, b: &Thing) -> bool {
    if weight(a).min(weight(b)) > 2 {
        return true;
    }
    let hands = &study.layout().hands;
    let hand = |t: &Thing| hands.iter().find(|h| h.id == t.id);
    match (hand(a), hand(b)) {
        // The two hands of one exposure belong together.
        (Some(x), Some(y)) => (x.person, x.exposure) == (y.person, y.exposure),
        (Some(hand), None) => works_at(hand, b),
        (None, Some(hand)) => works_at(hand, a),
        (None, None) => {
            let grouped = a.group.is_some() && a.group == b.group;
            grouped && !a.is_hero() && !b.is_hero()
        }
    }
}

/// Whether a hand holds a dish or has its fingers at it.
fn works_at(hand: &crate::layout::Hand, dish: &Thing) -> bool {
    let tip = hand.target.vec();
    let dot = [tip, tip + DVec2::X, tip + DVec2::Y];
    let near = |area: &Area| {
        let dot = Region::from_polygon(&dot).unwrap_or_default();
        gap_within(&area.region, &dot, AT_WORK).is_some()
    };
    hand.holds == Some(dish.id) || dish.areas.iter().any(near)
}

/// The nearest two outlines of a pair, when they come too near.
fn between(chief: &Thing, other: &Thing, limit: f64) -> Option<Flag> {
    let mut best: Option<(f64, &Area, &Area, DVec2, DVec2)> = None;
    for x in &chief.areas {
        for y in &other.areas {
            if let Some(g) = gap_within(&x.region, &y.region, limit)
                && best.as_ref().is_none_or(|b| g.distance < b.0)
            {
                best = Some((g.distance, x, y, g.from, g.to));
            }
        }
    }
    let (distance, x, y, from, to) = best?;
    let flag = |overlaps, figure, missing, from, to, clear, lap| Flag {
        chief: chief.id,
        other: other.id,
        meets: match (chief.arm, other.arm) {
            (true, _) => Meets::Arm,
            (_, true) => Meets::ByArm,
            _ => Meets::Dish,
        },
        overlaps,
        figure,
        missing,
        from,
        to,
        clear,
        lap,
    };
    let need = KISSING_OVERLAP * x.short.min(y.short);
    if distance > 0.0 {
        let way = (to - from).normalize_or_zero();
        let missing = limit - distance;
        let (clear, lap) = (way * missing, way * -(distance + need));
        return is_near_tangent(distance, limit / NEAR_TANGENT)
            .then(|| flag(false, distance, missing, from, to, clear, lap));
    }
    let thin = |area: &Area| thinned(&area.outline, THIN);
    let away = clearing_move(&thin(y), &thin(x)).ok()?;
    let depth = away.length();
    if !is_kissing(depth, x.short.min(y.short)) {
        return None;
    }
    let way = away / depth;
    let (clear, lap) = (way * (depth + limit), way * (depth - need));
    // The overlap is drawn where it is deepest: across, at the outlines.
    let at = deepest(&y.outline, -way);
    Some(flag(true, depth, need - depth, at + away, at, clear, lap))
}

/// The corner that lies farthest along `way`.
fn deepest(outline: &[DVec2], way: DVec2) -> DVec2 {
    let far = outline
        .iter()
        .max_by(|a, b| a.dot(way).total_cmp(&b.dot(way)));
    far.copied().unwrap_or_default()
}

/// The edges that count: the board's and of linens that lie in order. Napkins
/// and mats belong to their place setting, so only main dishes mind them.
fn edges(study: &Study<'_>) -> Vec<(Id, Vec<DVec2>, bool)> {
    let layout = study.layout();
    let mut out = vec![(Id(0), table_outline(&layout.table, CHORD_ERROR), true)];
    let orderly = layout
        .linens
        .iter()
        .filter(|l| matches!(l.state, LinenState::Flat | LinenState::Folded));
    out.extend(orderly.map(|l| {
        let every = matches!(l.kind, LinenKind::Runner | LinenKind::Cloth);
        (l.id, linen_span(l), every)
    }));
    out
}

/// A dish against the edge of the board or of a linen.
fn at_edge(
    edge_id: Id,
    edge: &[DVec2],
    ground: &Region,
    thing: &Thing,
    limit: f64,
) -> Option<Flag> {
    let area = thing.areas.first()?;
    // Most things lie well inside, which their box tells cheaply.
    let corners = area.region.bounds()?.corners();
    if lies(&corners, edge)?.least >= limit {
        return None;
    }
    let flag = |overlaps, figure, missing, [from, to]: [DVec2; 2], clear, lap| Flag {
        chief: edge_id,
        other: thing.id,
        meets: Meets::Edge,
        overlaps,
        figure,
        missing,
        from: to,
        to: from,
        clear,
        lap,
    };
    let found = lies(&area.outline, edge)?;
    let need = KISSING_OVERLAP * area.short;
    if found.most <= 0.0 {
        let g = gap_within(ground, &area.region, limit).filter(|g| g.distance > 0.0)?;
        let way = (g.to - g.from).normalize_or_zero();
        let missing = limit - g.distance;
        let (clear, lap) = (way * missing, way * -(g.distance + need));
        return is_near_tangent(g.distance, limit / NEAR_TANGENT)
            .then(|| flag(false, g.distance, missing, [g.to, g.from], clear, lap));
    }
    if found.least >= 0.0 {
        let [place, foot] = found.outermost;
        let inward = (place - foot).normalize_or_zero();
        let missing = limit - found.least;
        let (clear, lap) = (inward * missing, inward * -(found.least + need));
        return is_near_tangent(found.least, limit / NEAR_TANGENT)
            .then(|| flag(false, found.least, missing, found.outermost, clear, lap));
    }
    // It lies across the edge: a sliver on one side of it is a kiss.
    let (over, within) = (-found.least, found.most);
    let (depth, place) = if over <= within {
        (over, found.outermost)
    } else {
        (within, found.innermost)
    };
    // Away from the sliver's side, so that nothing is left of it.
    let way = (place[1] - place[0]).normalize_or_zero();
    let (clear, lap) = (way * (depth + limit), way * (depth - need));
    is_kissing(depth, area.short).then(|| flag(true, depth, need - depth, place, clear, lap))
}

/// All pairs of dishes that overlap.
pub(super) fn overlapping(things: &[Thing]) -> Vec<(Id, Id)> {
    let dishes: Vec<&Thing> = things.iter().filter(|t| !t.arm).collect();
    let mut out = Vec::new();
    for (n, a) in dishes.iter().enumerate() {
        for b in &dishes[n + 1..] {
            let meet = a.areas.iter().zip(&b.areas);
            if meet
                .into_iter()
                .any(|(x, y)| gap_within(&x.region, &y.region, 0.0).is_some())
            {
                out.push((a.id, b.id));
            }
        }
    }
    out
}
