//! What keeps whites from clipping, as a photographer would go about it: fill
//! the hero from the far side with a white card, move the pale thing away from
//! the light, swap it for a duller one, the light itself last.
use glam::DVec2;

use super::super::finding::Remedy;
use super::super::remedies::{Try, stack_moved, stands_clear, way};
use super::super::study::Study;
use super::{remedy, stops, whites};
use crate::layout::{Id, Origin, Part, Role, Srgb};
use crate::scene::root;
use crate::shape::{CHORD_ERROR, contains, table_outline};
use crate::words::{Arg, length, say};

/// How far a pale thing is moved at most, mm, and in which steps.
const FARTHEST: i32 = 600;
const STEP: usize = 40;
/// Ways it is moved: straight away from the light, then aslant, in degrees.
const ASLANT: [f64; 5] = [0.0, 30.0, -30.0, 60.0, -60.0];
/// Unglazed clay, and linen the colour of oatmeal: half as light as white.
/// Our own estimates.
const DULLER: Srgb = Srgb::hex(0x00b9_ab97);
/// A change must leave no more than this of what is over. Our choice.
const WORTH: f64 = 0.5;

/// The first change after which nothing clips, or else the one that leaves
/// least, when that is no more than half of what is over. `left` is in stops.
pub(super) fn first(study: &Study<'_>, key: &str, whose: &[Id], left: f64) -> Option<Remedy> {
    let layout = study.layout();
    let heroes = layout.items.iter().filter(|i| i.role == Role::Hero);
    let hero = heroes.min_by_key(|i| i.id).map(|i| i.at.vec());
    let card = hero.and_then(|at| remedy::white_card(study, at));
    let mut tries: Vec<Try> = card.into_iter().collect();
    tries.extend(away(study, key, whose));
    tries.extend(duller(study, whose));
    tries.extend(remedy::moved(study));
    let mut best: Option<(f64, Try)> = None;
    for (n, attempt) in tries.into_iter().enumerate() {
        let led_to = study.figure(key, n, &|| whites::least(&study.changed(&attempt.after)));
        let Some(now) = led_to else {
            continue;
        };
        let better = best.as_ref().is_none_or(|b| now > b.0);
        if better && (now >= 0.0 || now >= left * WORTH) {
            best = Some((now, attempt));
        }
        if now >= 0.0 {
            break;
        }
    }
    let (now, attempt) = best?;
    let id = if now < 0.0 {
        "predicted-over"
    } else {
        "predicted-spared"
    };
    let told = (id, [-left, now.abs()].map(stops));
    Some(attempt.remedy(study, now, told))
}

/// One pale thing moved the least way farther from the light.
fn away(study: &Study<'_>, key: &str, whose: &[Id]) -> Option<Try> {
    let layout = study.layout();
    let [first] = whose else {
        return None;
    };
    let stack = root(layout, *first);
    let item = study.item(stack).filter(|i| !i.locked)?;
    let table = table_outline(&layout.table, CHORD_ERROR);
    let out = -layout.light.clock.direction();
    let half = item.size.extent().map(|x| f64::from(x) * 0.5);
    let half = DVec2::splat(half[0].max(half[1]));
    let frame = &study.scene().frame;
    let inside = |at: DVec2| {
        let corners = [half, -half, half.perp(), -half.perp()];
        let all = corners.iter().map(|c| at + *c);
        all.clone().all(|p| contains(&table, p)) && all.clone().all(|p| frame.contains(p))
    };
    let far = (STEP as i32..=FARTHEST).step_by(STEP);
    let moves = far.flat_map(|far| {
        ASLANT.map(|degrees| {
            let (sin, cos) = libm::sincos(degrees.to_radians());
            DVec2::new(cos, sin).rotate(out) * f64::from(far)
        })
    });
    let key = format!("{key}:away");
    let (by, _) = study.first_that(&key, moves, &|by| {
        if !inside(item.at.vec() + *by) || !stands_clear(study, stack, *by) {
            return None;
        }
        let after = stack_moved(layout, stack, *by);
        whites::least(&study.changed(&after)).filter(|left| *left >= 0.0)
    })?;
    let args = [
        ("thing", Arg::Name(study.name(stack))),
        ("by", Arg::Text(length(by.length(), layout.head.units))),
    ];
    let act = say(way(study, by), &args);
    let after = stack_moved(layout, stack, by);
    Some(Try { act, after })
}

/// The pale things in a duller colour: vessels in clay, cloth in oatmeal.
fn duller(study: &Study<'_>, whose: &[Id]) -> Option<Try> {
    let mut after = study.layout().clone();
    let mut swapped: Vec<Id> = Vec::new();
    for item in after
        .items
        .iter_mut()
        .filter(|i| whose.contains(&i.id) && !i.locked)
    {
        if item.parts.well.is_some() {
            let parts = [&mut item.parts.rim, &mut item.parts.well];
            for part in parts.into_iter().flatten() {
                *part = Part::plain(DULLER);
            }
            swapped.push(item.id);
        }
    }
    for linen in after
        .linens
        .iter_mut()
        .filter(|l| whose.contains(&l.id) && !l.locked)
    {
        (linen.colour, linen.origin) = (DULLER, Origin::Guess);
        swapped.push(linen.id);
    }
    let first = swapped.first()?;
    let args = [
        ("thing", Arg::Name(study.name(*first))),
        ("count", Arg::Text(swapped.len().to_string())),
    ];
    let id = if swapped.len() == 1 {
        "act-duller"
    } else {
        "act-duller-all"
    };
    let act = say(id, &args);
    Some(Try { act, after })
}
