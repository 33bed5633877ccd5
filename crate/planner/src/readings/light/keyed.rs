//! The arm in the key: how much light the arms and bodies of one exposure take
//! from each dish.
use glam::DVec3;

use super::super::finding::{Finding, Remedy, State};
use super::super::hands::{moved_aside, no_worse};
use super::super::rules::LIGHT_KEY;
use super::super::study::Study;
use super::{Dish, dishes, remedy, served, spots, stops};
use crate::catalogue::{Kind, kind_of};
use crate::layout::{Exposure, Hand, Id, Item};
use crate::scene::exposure_name;
use crate::words::{Arg, listed, say};

/// No more stops than this are counted: a place that sees none of the light.
const MOST: f64 = 6.0;
/// A food that loses less than this is not listed, stops. Our choice.
const LISTED: f64 = 0.05;

/// What each exposure's people take from the main dish they take most from.
pub(super) fn read(study: &Study<'_>, found: &[Dish], settled: bool) -> Vec<Finding> {
    let exposures = study.layout().exposures.iter();
    exposures
        .filter_map(|e| one(study, e, found, settled))
        .collect()
}

/// The main dish that loses most, and how much, in stops.
fn worst(study: &Study<'_>, exposure: Id, found: &[Dish]) -> Option<(Id, f64)> {
    let each = found.iter().filter_map(|dish| {
        let shown = served(study, study.item(dish.id)?);
        Some((dish.id, taken(study, exposure, shown)))
    });
    each.max_by(|a, b| a.1.total_cmp(&b.1).then(b.0.cmp(&a.0)))
}

/// How many stops darker a thing is with the people of an exposure about.
fn taken(study: &Study<'_>, exposure: Id, item: &Item) -> f64 {
    let lit = study.lit();
    let places: Vec<DVec3> = spots(study, item).collect();
    let left: f64 = places
        .iter()
        .map(|p| lit.share_past_people(*p, exposure))
        .sum();
    let left = left / places.len().max(1) as f64;
    (-libm::log2(left.max(libm::exp2(-MOST)))).max(0.0)
}

fn one(study: &Study<'_>, exposure: &Exposure, found: &[Dish], settled: bool) -> Option<Finding> {
    let layout = study.layout();
    let hands: Vec<&Hand> = layout
        .hands
        .iter()
        .filter(|h| h.exposure == exposure.id)
        .collect();
    hands.first()?;
    let (dish, most) = worst(study, exposure.id, found)?;
    if most < LIGHT_KEY.edges[0] {
        return None;
    }
    let state = if most >= LIGHT_KEY.edges[1] {
        (State::LookAgain, 3)
    } else {
        (State::Holds, 3)
    };
    let mut about = vec![dish];
    about.extend(hands.iter().map(|h| h.id));
    let key = format!("light:key:{}", exposure.id.0);
    let mut f = Finding::by(&LIGHT_KEY, key, state, most, about);
    f.sentence = study.sentence(|| {
        let args = [
            ("exposure", Arg::Text(exposure_name(layout, exposure.id))),
            ("thing", Arg::Name(study.name(dish))),
            ("stops", Arg::Text(stops(most))),
        ];
        say("light-key", &args)
    });
    f.working = study.tell(|| {
        let mut lines = vec![say("working-light-key", &[])];
        lines.extend(foods(study, exposure.id));
        lines
    });
    if settled && f.state == State::LookAgain {
        f.remedy = study.remedy(&f.key, &|| {
            out_of_the_key(study, &f.key, exposure.id, &hands, most)
        });
    }
    Some(f)
}

/// Every food that loses light worth a line, in the order of the list.
fn foods(study: &Study<'_>, exposure: Id) -> Option<String> {
    let items = study.layout().items.iter();
    let food = items.filter(|i| matches!(kind_of(&i.prop), Kind::Food));
    let each = food.filter_map(|item| {
        let lost = taken(study, exposure, item);
        let args = [
            ("thing", Arg::Name(study.name(item.id))),
            ("stops", Arg::Text(stops(lost))),
        ];
        (lost >= LISTED).then(|| say("light-key-food", &args))
    });
    let each: Vec<String> = each.collect();
    (!each.is_empty()).then(|| say("light-key-foods", &[("foods", Arg::Text(listed(&each)))]))
}

/// Their place moved along its edge, then the light turned: the first that
/// leaves less than is said.
fn out_of_the_key(
    study: &Study<'_>,
    key: &str,
    exposure: Id,
    hands: &[&Hand],
    before: f64,
) -> Option<Remedy> {
    let layout = study.layout();
    let aside = hands.iter().flat_map(|hand| moved_aside(study, hand));
    let tries = aside.chain(remedy::turned(study));
    let (attempt, after) = study.first_that(key, tries, &|attempt| {
        if !no_worse(layout, &attempt.after) {
            return None;
        }
        let then = study.changed(&attempt.after);
        let after = worst(&then, exposure, &dishes(&then)).map_or(0.0, |w| w.1);
        (after < LIGHT_KEY.edges[1]).then_some(after)
    })?;
    let told = ("predicted-stops", [before, after].map(stops));
    Some(attempt.remedy(study, after, told))
}
