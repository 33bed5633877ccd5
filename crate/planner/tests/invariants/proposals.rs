//! What is proposed moves nothing that is locked and breaks no limit, told by
//! other means than the search's own: points sampled on a grid instead of
//! polygons cut, and plain arithmetic.
use std::collections::BTreeSet;

use glam::DVec2;
use planner::layout::{Id, Item, Layout};
use planner::propose::{May, Search, Wish};
use planner::readings::{Study, Weighing, copy_space, report};
use planner::scene::{crop_outline, joints, silhouette};
use planner::shape::{frame_outline, table_outline};
use proptest::prelude::*;
use proptest::test_runner::Config;

use crate::random::tables;

/// Distance of the sampled points, mm, and how much area may come by rounding,
/// mm²: some points at the edge of what touches.
const GRID: f64 = 4.0;
const ROUNDING: f64 = 420.0;
/// Corners may pass a line by rounding to whole mm and half degrees, mm.
const CORNER: f64 = 3.0;

/// Runs: a few at an ordinary test, half of the cases asked for in a long one.
fn runs() -> Config {
    let mut config = Config::default();
    config.cases = if config.cases > 256 {
        config.cases / 2
    } else {
        12
    };
    config
}

fn inside(polygon: &[DVec2], p: DVec2) -> bool {
    let mut odd = false;
    for (n, a) in polygon.iter().enumerate() {
        let b = polygon[(n + 1) % polygon.len()];
        if (a.y > p.y) != (b.y > p.y) && p.x < a.x + (b.x - a.x) * (p.y - a.y) / (b.y - a.y) {
            odd = !odd;
        }
    }
    odd
}

/// Area of both, by counting points; 0 without counting when their boxes part.
fn shared(a: &[DVec2], b: &[DVec2]) -> f64 {
    let low = |p: &[DVec2]| p.iter().fold(DVec2::INFINITY, |m, q| m.min(*q));
    let high = |p: &[DVec2]| p.iter().fold(DVec2::NEG_INFINITY, |m, q| m.max(*q));
    let (from, to) = (low(a).max(low(b)), high(a).min(high(b)));
    if from.cmpgt(to).any() {
        return 0.0;
    }
    let steps = ((to - from) / GRID).ceil();
    let mut count = 0.0;
    for x in 0..=steps.x as u32 {
        for y in 0..=steps.y as u32 {
            let p = from + DVec2::new(f64::from(x), f64::from(y)) * GRID;
            if inside(a, p) && inside(b, p) {
                count += 1.0;
            }
        }
    }
    count * GRID * GRID
}

/// How far the farthest corner lies outside a polygon, mm.
fn sticks_out(outline: &[DVec2], room: &[DVec2]) -> f64 {
    let to_side = |p: DVec2, n: usize| {
        let (a, b) = (room[n], room[(n + 1) % room.len()]);
        let t = ((p - a).dot(b - a) / (b - a).length_squared()).clamp(0.0, 1.0);
        p.distance(a + (b - a) * t)
    };
    let out = outline.iter().filter(|p| !inside(room, **p));
    let far = out.map(|p| {
        let sides = (0..room.len()).map(|n| to_side(*p, n));
        sides.fold(f64::INFINITY, f64::min)
    });
    far.fold(0.0, f64::max)
}

fn root(layout: &Layout, item: &Item) -> Id {
    let mut at = item;
    while let Some(below) = at
        .on
        .and_then(|on| layout.items.iter().find(|i| i.id == on))
    {
        at = below;
    }
    at.id
}

/// Whether two things move as one.
fn together(layout: &Layout, a: &Item, b: &Item) -> bool {
    let group = |i: &Item| {
        let root = root(layout, i);
        let root = layout.items.iter().find(|o| o.id == root);
        root.and_then(|r| r.group)
    };
    root(layout, a) == root(layout, b) || (group(a).is_some() && group(a) == group(b))
}

fn strewn(item: &Item) -> bool {
    planner::catalogue::kind_of(&item.prop) == planner::catalogue::Kind::Scatter
}

fn sound(before: &Layout, after: &Layout) -> Result<(), TestCaseError> {
    let ids = |l: &Layout| l.items.iter().map(|i| i.id).collect::<Vec<Id>>();
    prop_assert_eq!(ids(before), ids(after), "nothing comes or goes");
    let moved: BTreeSet<Id> = before
        .items
        .iter()
        .zip(&after.items)
        .filter(|(a, b)| (a.at, a.turn) != (b.at, b.turn))
        .map(|(a, _)| a.id)
        .collect();
    for (a, b) in before.items.iter().zip(&after.items) {
        prop_assert!(!a.locked || a == b, "{:?} is locked", a.id);
        let mut same = a.clone();
        (same.at, same.turn) = (b.at, b.turn);
        prop_assert_eq!(&same, b, "only place and turn change");
    }
    for (a, b) in before.linens.iter().zip(&after.linens) {
        prop_assert!(!a.locked || a == b, "{:?} is locked", a.id);
    }
    let outlines = |l: &Layout| l.items.iter().map(silhouette).collect::<Vec<_>>();
    let (was, is) = (outlines(before), outlines(after));
    let (table, frame) = (
        table_outline(&before.table, 0.5),
        frame_outline(&before.frame),
    );
    for (n, a) in before.items.iter().enumerate() {
        if moved.contains(&a.id) {
            for (room, name) in [(&table, "table"), (&frame, "frame")] {
                let grown = sticks_out(&is[n], room) - sticks_out(&was[n], room);
                prop_assert!(grown < CORNER, "{:?} leaves the {name} by {grown}", a.id);
            }
        }
        for (m, b) in before.items.iter().enumerate().skip(n + 1) {
            let asked = moved.contains(&a.id) || moved.contains(&b.id);
            if together(before, a, b) {
                let apart = |l: &Layout| l.items[n].at.vec().distance(l.items[m].at.vec());
                let pulled = (apart(after) - apart(before)).abs();
                prop_assert!(pulled < 4.0, "{:?} from {:?} by {pulled}", a.id, b.id);
            } else if asked && !strewn(a) && !strewn(b) {
                let grown = shared(&is[n], &is[m]) - shared(&was[n], &was[m]);
                prop_assert!(grown < ROUNDING, "{:?} over {:?}: {grown} mm²", a.id, b.id);
            }
        }
    }
    for (old, new) in before.crops.iter().zip(&after.crops) {
        let (from, to) = (crop_outline(before, old), crop_outline(after, new));
        let grown = sticks_out(&to, &frame) - sticks_out(&from, &frame);
        prop_assert!(grown < CORNER, "{} leaves the frame by {grown}", old.name);
        let copy = |l: &Layout, c, outlines: &[Vec<DVec2>]| -> f64 {
            let area = copy_space(&l.frame, c).unwrap_or_default();
            let solid = l.items.iter().zip(outlines).filter(|(i, _)| !strewn(i));
            solid
                .map(|(_, o)| {
                    if area.is_empty() {
                        0.0
                    } else {
                        shared(o, &area)
                    }
                })
                .sum()
        };
        let grown = copy(after, new, &is) - copy(before, old, &was);
        prop_assert!(grown < ROUNDING, "{}: copy space by {grown} mm²", old.name);
        for (n, item) in before.items.iter().enumerate() {
            if old.must_show.contains(&item.id) {
                let cut = sticks_out(&is[n], &to) - sticks_out(&was[n], &from);
                prop_assert!(cut < CORNER, "{} cuts {:?} by {cut}", old.name, item.id);
            }
        }
    }
    for hand in &before.hands {
        let short = |l: &Layout| {
            let own = l.hands.iter().find(|h| h.id == hand.id)?;
            Some(joints(l, own)?.short)
        };
        if let (Some(a), Some(b)) = (short(before), short(after)) {
            prop_assert!(
                b.max(0.0) <= a.max(0.0) + 1.0,
                "{:?} is short of {b}",
                hand.id
            );
        }
    }
    Ok(())
}

proptest! {
    #![proptest_config(runs())]

    #[test]
    fn nothing_locked_moves_and_no_limit_breaks(
        layout in tables(),
        locks in any::<u32>(),
        seed in any::<u32>(),
        evaluations in 4_u32..18,
        some in prop::array::uniform5(any::<bool>()),
    ) {
        let mut layout = layout;
        for item in layout.items.iter_mut() {
            item.locked = locks >> (item.id.0 % 32) & 3 == 3;
        }
        let [dishes, linens, hands, crops, light] = some;
        let wish = Wish {
            may: May { dishes: dishes || !crops, linens, hands, crops, light },
            weighing: Weighing::default(),
            seed,
            evaluations,
            several: true,
            crop: Id(0),
        };
        let told = report(&Study::new(&layout), seed % 4 == 0);
        let mut search = Search::begin(&layout, &told, None, wish);
        while !search.step(&|| true) {}
        for proposal in search.found() {
            sound(&layout, &proposal.layout)?;
            let mut after = layout.clone();
            prop_assert!(proposal.edit.apply(&mut after).is_ok(), "it fits");
            prop_assert!(proposal.prices[1] < proposal.prices[0], "it is worth it");
        }
    }
}
