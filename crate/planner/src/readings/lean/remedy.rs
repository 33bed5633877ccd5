//! Keeping what leans off what matters: a lower vessel, a place nearer to the
//! middle, a longer lens from higher up.
use glam::DVec2;

use super::super::crops;
use super::super::finding::{Finding, Remedy};
use super::super::fit;
use super::super::remedies::{stack_moved, stands_clear, way};
use super::super::study::{Study, Words};
use super::hidden;
use crate::commands::swap;
use crate::edit::Edit;
use crate::layout::{Id, Layout};
use crate::optics::{View, at_hand};
use crate::words::{Arg, length, percent, say};

/// What can stand in for a tall thing, the likest first. Our choice.
const LOWER: [(&[&str], &[&str]); 4] = [
    (
        &[
            "oil-carafe",
            "vinegar-bottle",
            "bottle",
            "milk-bottle",
            "decanter",
            "glass-pitcher",
            "jug",
            "coffee-pot",
        ],
        &["jug", "milk-jug", "creamer"],
    ),
    (
        &[
            "wine-glass",
            "red-wine-glass",
            "goblet",
            "white-wine-glass",
            "tasting-glass",
        ],
        &["wine-tumbler"],
    ),
    (
        &["highball", "beer-glass", "flute", "coupe"],
        &["water-glass"],
    ),
    (
        &["taper-candle", "lantern", "pillar-candle"],
        &["pillar-candle", "tea-light"],
    ),
];
/// A thing is moved by these steps, and no farther than so many, mm. Our
/// choice.
const STEP: i32 = 20;
const STEPS: i32 = 15;

/// A change and what it is called.
pub(super) type Try = (String, Layout);

/// The first change after which the stack hides no main dish by leaning.
pub(super) fn uncovered(study: &Study<'_>, finding: &Finding) -> Option<Remedy> {
    let id = *finding.about.first()?;
    let mut tries = lower(study, id);
    tries.extend(nearer(study, id));
    tries.extend(longer(study));
    let ((act, after), share) = study.first_that(&finding.key, tries, &|(_, after)| {
        let changed = study.changed(after);
        changed.say_only(Words::None);
        let then = super::read(&changed, false);
        let still = |f: &Finding| f.is_pressing() && f.key.starts_with("lean:") && !was(study, f);
        if then.iter().any(|f| f.key == finding.key || still(f)) || crops::spoils(study, after) {
            return None;
        }
        Some(hidden(&changed, id).first().map_or(0.0, |o| o.1.max(0.0)))
    })?;
    let args = [
        ("before", Arg::Text(percent(finding.figure / 100.0))),
        ("after", Arg::Text(percent(share))),
    ];
    Some(Remedy {
        act,
        predicted: say("predicted", &args),
        after: share * 100.0,
        edit: Edit::between(study.layout(), &after),
    })
}

/// Whether a finding about leans was there before, as bad.
fn was(study: &Study<'_>, now: &Finding) -> bool {
    let then = super::read(study, false);
    let known = then.iter().find(|f| f.key == now.key);
    known.is_some_and(|f| now.figure <= f.figure + now.rule.same)
}

/// Lower things in its place.
pub(super) fn lower(study: &Study<'_>, id: Id) -> Vec<Try> {
    let layout = study.layout();
    let Some(item) = study.item(id) else {
        return Vec::new();
    };
    let known = LOWER
        .iter()
        .find(|(tall, _)| tall.contains(&item.prop.as_str()));
    let instead = known.map_or(&[][..], |(_, lower)| lower);
    let swapped = |prop: &&str| {
        let act = swap(layout, &[id], prop, false).ok()?;
        let mut after = layout.clone();
        act.edit.apply_checked(&mut after).ok()?;
        let lower = after.items.iter().find(|i| i.id == id)?;
        let name = crate::catalogue::prop(prop)?.name;
        let args = [
            ("thing", Arg::Name(study.name(item.id))),
            ("lower", Arg::Name(name.into())),
        ];
        (lower.height < item.height).then(|| (say("act-swap-lower", &args), after.clone()))
    };
    instead.iter().filter_map(swapped).collect()
}

/// The stack nearer to the place under the lens, where it leans less.
fn nearer(study: &Study<'_>, id: Id) -> Vec<Try> {
    let View::Lens { under, .. } = study.scene().view else {
        return Vec::new();
    };
    let Some(item) = study.item(id) else {
        return Vec::new();
    };
    let off = under - item.at.vec();
    let towards = off.normalize_or_zero();
    let steps = (1..=STEPS).map(|n| f64::from(n * STEP));
    let within = steps.take_while(|by| *by < off.length());
    within
        .filter_map(|by| moved(study, id, towards * by))
        .collect()
}

/// The stack moved, when it is loose and stands clear there.
pub(super) fn moved(study: &Study<'_>, id: Id, by: DVec2) -> Option<Try> {
    let item = study.item(id).filter(|i| !i.locked)?;
    if !stands_clear(study, id, by) {
        return None;
    }
    let args = [
        ("thing", Arg::Name(study.name(item.id))),
        (
            "by",
            Arg::Text(length(by.length(), study.layout().head.units)),
        ),
    ];
    Some((
        say(way(study, by), &args),
        stack_moved(study.layout(), id, by),
    ))
}

/// Longer lenses at hand, which stand higher, as far as the ceiling lets them.
pub(super) fn longer(study: &Study<'_>) -> Vec<Try> {
    let layout = study.layout();
    let all = at_hand(&layout.camera).into_iter();
    all.filter(|focal| *focal > layout.camera.focal)
        .map(|focal| (fit::take_lens(focal), fit::with_lens(layout, focal)))
        .filter(|(_, after)| fit::fits(after))
        .collect()
}
