//! What steadies a rig, in the order a grip would try it.
use super::super::finding::Remedy;
use super::super::study::Study;
use super::margin::said;
use super::room;
use crate::edit::Edit;
use crate::layout::{Bag, Counterweight, Hung, Layout, Point, RigKind};
use crate::rig::{Stand, TARGET, bag_for, counterweight_for};
use crate::words::{Arg, length, mass, say};

/// Bags as they are sold: 15, 25 and 35 lb (a film school's list; the last
/// from memory), grams.
const BAGS: [i32; 3] = [6_800, 11_300, 15_900];
/// Where a counterweight is clamped, behind the mast, mm. Our choice.
const BEHIND: f64 = 300.0;
/// Least of the arm behind the mast that a clamp holds on to, mm. Our choice.
const LEAST_BEHIND: f64 = 80.0;
/// Heaviest counterweight that is proposed, grams. Our choice.
const HEAVIEST: f64 = 15_000.0;
/// From here on a stand at each end is proposed, mm: common practice, no
/// source.
const LONG: f64 = 1_000.0;

/// A change and what it is called.
type Try = (Layout, String);

/// The first change that gives the target, or the one that gives the most.
pub(super) fn found(study: &Study<'_>, now: f64) -> Option<Remedy> {
    let l = study.layout();
    let stand = Stand::of(l)?;
    let tries = [
        lead_turned(l),
        bag_hung(l),
        weighed(l, &stand),
        nearer(l, &stand),
        paired(l, &stand),
    ];
    let mut best: Option<(f64, Try)> = None;
    for (after, act) in tries.into_iter().flatten() {
        let Some(then) = margin_of(&after) else {
            continue;
        };
        let known = best.as_ref().map_or(now, |b| b.0);
        if known < TARGET && then > known + 0.05 {
            best = Some((then, (after, act)));
        }
    }
    let (then, (after, act)) = best?;
    let figures = [
        ("before", Arg::Text(said(now))),
        ("after", Arg::Text(said(then))),
    ];
    Some(Remedy {
        act,
        predicted: say("rig-then", &figures),
        after: then,
        edit: Edit::between(l, &after),
    })
}

fn margin_of(layout: &Layout) -> Option<f64> {
    Some(Stand::of(layout)?.tipping()?.margin())
}

/// The lead leg under the load.
fn lead_turned(l: &Layout) -> Option<Try> {
    l.rig.leg_bearing?;
    let mut after = l.clone();
    after.rig.leg_bearing = None;
    Some((after, say("act-rig-leg", &[])))
}

/// The lightest bag that is sold, at the hub, that gives the target.
fn bag_hung(l: &Layout) -> Option<Try> {
    let mut after = l.clone();
    after.rig.bag = None;
    let needed = bag_for(&Stand::of(&after)?, Hung::Hub)?;
    let mass_ = BAGS.into_iter().find(|g| f64::from(*g) >= needed)?;
    after.rig.bag = Some(Bag {
        mass: mass_,
        hung: Hung::Hub,
    });
    let text = mass(f64::from(mass_), l.head.units);
    let id = if l.rig.kind == RigKind::TwoStands {
        "act-rig-bags"
    } else {
        "act-rig-bag"
    };
    Some((after, say(id, &[("mass", Arg::Text(text))])))
}

/// Where on this arm a counterweight goes, mm behind the mast.
pub(super) fn behind(l: &Layout, stand: &Stand) -> Option<f64> {
    if stand.masts.len() > 1 {
        return None;
    }
    let rear = f64::from(l.rig.arm_length) - stand.reach;
    (rear >= LEAST_BEHIND).then_some(BEHIND.min(rear).floor())
}

/// A counterweight on the arm's rear end.
fn weighed(l: &Layout, stand: &Stand) -> Option<Try> {
    let behind = behind(l, stand)?;
    let mut after = l.clone();
    after.rig.counterweight = None;
    let needed = counterweight_for(&Stand::of(&after)?, behind)?;
    // In steps of half a kilogram.
    let grams = (needed / 500.0).ceil() * 500.0;
    if grams > HEAVIEST {
        return None;
    }
    after.rig.counterweight = Some(Counterweight {
        mass: grams as i32,
        behind: behind as i32,
    });
    let bare = Stand::of(&after)?.without_camera()?;
    let args = [
        ("mass", Arg::Text(mass(grams, l.head.units))),
        ("behind", Arg::Text(length(behind, l.head.units))),
    ];
    (bare.margin() > 1.0).then(|| (after, say("act-rig-weight", &args)))
}

/// The mast nearer to the lens, clear of the table.
fn nearer(l: &Layout, stand: &Stand) -> Option<Try> {
    let steps = (stand.reach / 50.0) as i32;
    (1..steps).find_map(|n| {
        let by = f64::from(n) * 50.0;
        let mut after = l.clone();
        after.rig.at = Some(Point::nearest(stand.masts[0] + stand.along * by));
        let then = Stand::of(&after)?;
        let stands = margin_of(&after)? >= TARGET && !room::through(&after, &then);
        let text = length(by, l.head.units);
        stands.then(|| (after, say("act-rig-nearer", &[("by", Arg::Text(text))])))
    })
}

/// A stand at each end of a bar.
fn paired(l: &Layout, stand: &Stand) -> Option<Try> {
    if stand.masts.len() > 1 || stand.reach < LONG {
        return None;
    }
    let mut after = l.clone();
    after.rig.kind = RigKind::TwoStands;
    (after.rig.leg_bearing, after.rig.counterweight) = (None, None);
    let then = Stand::of(&after)?;
    after.rig.arm_length = after.rig.arm_length.max(then.needs().ceil() as i32);
    let clear = !room::through(&after, &then);
    let text = length(then.needs(), l.head.units);
    clear.then(|| (after, say("act-rig-two", &[("bar", Arg::Text(text))])))
}

/// A bag at the hub where custom asks for one.
pub(super) fn bag_by_custom(l: &Layout, now: f64) -> Option<Remedy> {
    let (after, act) = bag_hung(l)?;
    let figures = [
        ("before", Arg::Text(said(now))),
        ("after", Arg::Text(said(margin_of(&after)?))),
    ];
    Some(Remedy {
        act,
        predicted: say("rig-then", &figures),
        // What custom asks for is there, however far out the arm stays.
        after: 0.0,
        edit: Edit::between(l, &after),
    })
}
