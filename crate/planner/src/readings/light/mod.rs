//! Light: how far does it fall across the main dishes, what lies in shadow,
//! which whites are near clipping?
//!
//! Illuminance on a level surface at the top of each dish: the area source by
//! Lambert's polygon formula, times the share of it that is seen past all other
//! things (`light::seen_share`), and a first bounce off white cards. What lies
//! in a vessel is lit through its mouth. Stops are base-2 logarithms of ratios. More than a stop between main dishes, and the
//! shares in shadow, are our choice.
#[cfg(test)]
mod cropped_tests;
mod falls;
mod keyed;
#[cfg(test)]
mod keyed_tests;
mod lines;
mod remedy;
mod shadow;
mod spared;
#[cfg(test)]
mod tests;
mod whites;

use glam::{DVec2, DVec3};

use super::finding::Finding;
use super::study::Study;
use crate::layout::{Id, Item, Role};
use crate::scene::{Lit, effective_role, rise, vessel_of};
use crate::shape::{Region, frame_outline};
use crate::words;

pub(super) use lines::stop_lines;
pub(super) use remedy::changes;

/// Where on its face a dish's light is taken, in half widths from its middle.
const SPOTS: [[f64; 2]; 5] = [[0.0, 0.0], [0.5, 0.0], [-0.5, 0.0], [0.0, 0.5], [0.0, -0.5]];

/// The findings about the light; without a main dish in the picture, how it
/// falls across that.
pub(super) fn read(study: &Study<'_>, settled: bool) -> Vec<Finding> {
    let dishes = dishes(study);
    if dishes.is_empty() {
        return falls::across(study, &dishes).into_iter().collect();
    }
    let dark: Vec<&Dish> = dishes.iter().filter(|d| d.light <= DARK).collect();
    if !dark.is_empty() {
        return vec![falls::dark(study, &dark, settled)];
    }
    let apart = falls::read(study, &dishes, settled);
    let apart = apart.or_else(|| falls::across(study, &dishes));
    let mut out: Vec<Finding> = apart.into_iter().collect();
    out.extend(shadow::read(study, settled));
    out.extend(keyed::read(study, &dishes, settled));
    out.extend(whites::read(study, &dishes, settled));
    out
}

/// Light so weak beside that of an even sky that none to speak of arrives:
/// twelve stops under it. Our choice.
const DARK: f64 = 7.7e-4;

/// A main dish and the light on it.
struct Dish {
    id: Id,
    at: DVec2,
    hero: bool,
    light: f64,
}

/// Main dishes in the picture, the lowest of each stack, in id order.
fn dishes(study: &Study<'_>) -> Vec<Dish> {
    within(study, &study.scene().frame)
}

/// Likewise in a part of the table.
fn within(study: &Study<'_>, shown: &Region) -> Vec<Dish> {
    let (layout, lit) = (study.layout(), study.lit());
    let chief = |role: Role| matches!(role, Role::Hero | Role::Support);
    let borne_by_one = |item: &Item| {
        let below = layout.items.iter().find(|i| Some(i.id) == item.on);
        below.is_some_and(|below| chief(effective_role(layout, below)))
    };
    let main =
        |item: &&Item| chief(item.role) && !borne_by_one(item) && shown.contains(item.at.vec());
    let mut found: Vec<Dish> = layout
        .items
        .iter()
        .filter(main)
        .map(|item| Dish {
            id: item.id,
            at: item.at.vec(),
            hero: bears_hero(study, study.root(item.id)),
            light: on_top(study, lit, served(study, item)),
        })
        .collect();
    crate::order::sort(&mut found, |a, b| a.id.cmp(&b.id));
    found
}

/// Whether the hero is this stack or lies in it.
fn bears_hero(study: &Study<'_>, stack: Id) -> bool {
    let layout = study.layout();
    let heroes = layout.items.iter().filter(|i| i.role == Role::Hero);
    let hero = heroes.min_by_key(|i| i.id);
    hero.is_some_and(|hero| study.root(hero.id) == stack)
}

/// What a dish shows the lens: the widest thing that lies in it, and in that;
/// itself when nothing does.
fn served<'a>(study: &Study<'a>, dish: &'a Item) -> &'a Item {
    let layout = study.layout();
    let mut shown = dish;
    // A layout's `on` is acyclic; the count ends it all the same.
    for _ in 0..layout.items.len() {
        let lies = |i: &&Item| vessel_of(layout, i).is_some_and(|v| v.id == shown.id);
        let wide = |i: &Item| i.size.extent().into_iter().product::<i32>();
        let within = layout.items.iter().filter(lies);
        match within.max_by(|a, b| wide(a).cmp(&wide(b)).then(b.id.cmp(&a.id))) {
            Some(next) => shown = next,
            None => break,
        }
    }
    shown
}

/// Mean light on the top of a thing, past all that does not stand with it.
fn on_top(study: &Study<'_>, lit: &Lit, item: &Item) -> f64 {
    let stack = study.root(item.id);
    let sum: f64 = spots(study, item).map(|at| lit.on(at, stack)).sum();
    sum / SPOTS.len() as f64
}

fn spots(study: &Study<'_>, item: &Item) -> impl Iterator<Item = DVec3> {
    let top = rise(study.layout(), item).top;
    let half = DVec2::from_array(item.size.extent().map(|x| f64::from(x) * 0.5));
    let (sin, cos) = libm::sincos(item.turn.radians());
    let at = item.at.vec();
    SPOTS.map(DVec2::from_array).into_iter().map(move |spot| {
        let place = at + DVec2::new(cos, sin).rotate(spot * half);
        place.extend(top)
    })
}

/// What is exposed right: the hero, or the mean of the main dishes without one.
/// A crop is cut from the whole picture, and exposed as that is.
fn reference(study: &Study<'_>, found: &[Dish]) -> f64 {
    if study.crop().is_none() || found.iter().any(|d| d.hero) {
        return right(found);
    }
    let frame = Region::from_polygon(&frame_outline(&study.layout().frame));
    let whole = within(study, &frame.unwrap_or_default());
    right(if whole.is_empty() { found } else { &whole })
}

fn right(dishes: &[Dish]) -> f64 {
    let hero = dishes.iter().find(|d| d.hero).map(|d| d.light);
    hero.unwrap_or_else(|| {
        let sum: f64 = dishes.iter().map(|d| d.light).sum();
        sum / dishes.len().max(1) as f64
    })
}

/// What stop lines count from: the hero, or the middle of the picture without
/// one.
fn counted_from(study: &Study<'_>, dishes: &[Dish]) -> (f64, Option<Id>) {
    match dishes.iter().find(|d| d.hero) {
        Some(hero) => (hero.light, Some(hero.id)),
        None => (study.lit().open(study.picture().at.extend(0.0)), None),
    }
}

/// The light that is exposed for; none when the main dishes are dark.
pub(super) fn exposed_for(study: &Study<'_>) -> Option<f64> {
    let found = dishes(study);
    let light = reference(study, &found);
    (light > DARK).then_some(light)
}

/// Stops in words' figure: one decimal.
fn stops(figure: f64) -> String {
    words::fixed(figure, 1)
}
