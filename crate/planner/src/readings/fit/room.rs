//! Getting the floor out of the picture.
use glam::DVec2;

use super::super::crops;
use super::super::finding::Remedy;
use super::super::study::Study;
use super::{FIT_BOARD, past};
use crate::edit::Edit;
use crate::layout::{Layout, MAX_SIZE, Point, TableShape};
use crate::shape::{Bounds, CHORD_ERROR, frame_outline, table_outline};
use crate::words::{Arg, length, say};

/// Narrowest part of its width a frame is taken in to. Our choice.
const NARROWEST: f64 = 0.75;

/// Sliding the frame, taking it in, and, the surface last, a bigger board:
/// the first that leaves no floor and spoils no crop.
pub(super) fn found(study: &Study<'_>, table: &[DVec2]) -> Option<Remedy> {
    let l = study.layout();
    let tries = [
        (slid(l, table), "act-slide-frame"),
        (narrowed(l, table), "act-narrow-frame"),
        (bigger(l), "act-bigger-board"),
    ];
    tries.into_iter().find_map(|(after, act)| {
        let after = after?;
        let ground = table_outline(&after.table, CHORD_ERROR);
        if past(&frame_outline(&after.frame), &ground) >= FIT_BOARD.edges[0]
            || crops::spoils(study, &after)
        {
            return None;
        }
        let text = |mm: i32| Arg::Text(length(f64::from(mm), l.head.units));
        let args = [
            ("width", text(after.frame.width)),
            ("across", text(after.table.width)),
            ("down", text(after.table.depth)),
            ("ground", Arg::Name(study.name(crate::layout::Id(0)))),
        ];
        Some(Remedy {
            act: say(act, &args),
            predicted: say("no-floor", &[]),
            after: 0.0,
            edit: Edit::between(l, &after),
        })
    })
}

/// The frame moved the shortest way to lie on a rectangular table, its crops
/// with it; in the middle of a round one.
fn slid(l: &Layout, table: &[DVec2]) -> Option<Layout> {
    let (ground, frame) = (
        Bounds::around(table)?,
        Bounds::around(&frame_outline(&l.frame))?,
    );
    let room = (ground.size() - frame.size()) * 0.5;
    if room.min_element() < 0.0 {
        return None;
    }
    let to = match l.table.shape {
        TableShape::Rect => {
            let centre = ground.centre();
            frame.centre().clamp(centre - room, centre + room)
        }
        TableShape::Round => ground.centre(),
    };
    let mut after = l.clone();
    after.frame.at = Point::nearest(l.frame.at.vec() + to - frame.centre());
    Some(after)
}

/// The frame taken in about its centre until it lies on the table.
fn narrowed(l: &Layout, table: &[DVec2]) -> Option<Layout> {
    let least = (f64::from(l.frame.width) * NARROWEST) as i32;
    (least..l.frame.width).rev().step_by(5).find_map(|width| {
        let mut after = l.clone();
        after.frame.width = width;
        (past(&frame_outline(&after.frame), table) < FIT_BOARD.edges[0]).then_some(after)
    })
}

/// A table grown about its centre until the frame lies on it with the usual
/// room; everything keeps its place in the picture.
fn bigger(l: &Layout) -> Option<Layout> {
    let mut after = l.clone();
    let centre = l.table.centre().vec();
    let corners = frame_outline(&l.frame);
    let spare = f64::from(l.frame.width) * super::FIT_MARGIN.edges[0];
    let (w, d) = match l.table.shape {
        TableShape::Round => {
            let far = corners
                .iter()
                .map(|p| p.distance(centre))
                .fold(0.0, f64::max);
            let across = (far + spare) * 2.0;
            (across, across)
        }
        TableShape::Rect => {
            let reach = corners
                .iter()
                .map(|p| (*p - centre).abs())
                .fold(DVec2::ZERO, DVec2::max);
            let need = (reach + spare) * 2.0;
            (
                need.x.max(f64::from(l.table.width)),
                need.y.max(f64::from(l.table.depth)),
            )
        }
    };
    // Boards come in steps of 5 cm, and a grown half stays a whole number.
    let stepped = |mm: f64| ((mm / 100.0).ceil() * 100.0) as i32;
    let grown = |now: i32, need: f64| now + stepped(need - f64::from(now)).max(0);
    let (width, depth) = (grown(l.table.width, w), grown(l.table.depth, d));
    if width > MAX_SIZE || depth > MAX_SIZE {
        return None;
    }
    let (dx, dy) = ((width - l.table.width) / 2, (depth - l.table.depth) / 2);
    (after.table.width, after.table.depth) = (width, depth);
    after.frame.at = after.frame.at.moved(dx, dy);
    for item in &mut after.items {
        item.at = item.at.moved(dx, dy);
    }
    for linen in &mut after.linens {
        linen.at = linen.at.moved(dx, dy);
    }
    for crop in &mut after.crops {
        crop.at = crop.at.moved(dx, dy);
    }
    for hand in &mut after.hands {
        hand.entry = hand.entry.moved(dx, dy);
        hand.target = hand.target.moved(dx, dy);
    }
    Some(after)
}
