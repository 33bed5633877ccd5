//! Hero: is the picture's main dish the heaviest thing in it, and is it seen?
//!
//! Visual weight is visible area times contrast, ranked; what hides it is the
//! share of its outline's area under arms and under things that do not lie on
//! it, all exposures together.
use glam::DVec2;

use super::crops::{Standing, standing};
use super::finding::{Finding, Mark, State};
use super::lean;
use super::rules::{HERO_HIDDEN, HERO_RANK};
use super::study::Study;
use super::triangle::ranked;
use crate::layout::{Id, Item, Role};
use crate::order;
use crate::scene::PartKind;
use crate::shape::{Region, difference, gap_within};
use crate::words::{Arg, length, listed, percent, say};

/// Dishes told in the ranking.
const TOLD: usize = 5;

/// The findings about the hero; none without one, as a picture may have none.
pub(super) fn read(study: &Study<'_>) -> Vec<Finding> {
    let items = &study.layout().items;
    let heroes = items.iter().filter(|i| i.role == Role::Hero);
    let Some(hero) = heroes.min_by_key(|i| i.id) else {
        return Vec::new();
    };
    let mut out: Vec<Finding> = rank(study, hero).into_iter().collect();
    for by_hands in [true, false] {
        out.extend(hidden(study, hero, by_hands));
    }
    out
}

/// Its place in visual weight, once there are dishes to compare.
fn rank(study: &Study<'_>, hero: &Item) -> Option<Finding> {
    if !study.has_three_dishes() {
        return None;
    }
    let ranked = ranked(study);
    // Food that is the hero weighs with the dish it lies on.
    let stack = study.root(hero.id);
    let place = ranked.iter().position(|r| r.0 == stack)?;
    let (id, _, at) = ranked[place];
    let [w, d] = study.item(id)?.size.extent();
    let figure = (place + 1) as f64;
    let state = if figure >= HERO_RANK.edges[0] {
        (State::LookAgain, 2)
    } else {
        (State::Holds, 3)
    };
    let mut f = Finding::by(
        &HERO_RANK,
        format!("hero:{}", id.0),
        state,
        figure,
        vec![id],
    );
    f.marks = vec![Mark::Ring {
        at: study.picture().on_table(at),
        radius: f64::from(w.max(d)) * 0.55,
    }];
    f.sentence = study.sentence(|| {
        let args = [
            ("thing", Arg::Name(study.name(hero.id))),
            ("rank", Arg::Text((place + 1).to_string())),
            ("first", Arg::Name(study.name(ranked[0].0))),
        ];
        say(if place > 0 { "hero-rank" } else { "hero-first" }, &args)
    });
    f.working = study.tell(|| {
        let names: Vec<String> = ranked.iter().take(TOLD).map(|r| study.name(r.0)).collect();
        let args = [("things", Arg::Text(listed(&names)))];
        let mut lines = vec![say("working-hero", &args)];
        lines.extend(study.layout().crops.iter().filter_map(|crop| {
            let units = study.layout().head.units;
            let (id, over) = match standing(study, crop, stack)? {
                Standing::Whole => ("working-hero-whole", 0.0),
                Standing::Cut(past) => ("working-hero-cut", past),
                Standing::Gutter(over) => ("working-hero-gutter", over),
                Standing::Out(_) => ("working-hero-out", 0.0),
            };
            let args = [
                ("crop", Arg::Name(crop.name.clone())),
                ("over", Arg::Text(length(over, units))),
            ];
            Some(say(id, &args))
        }));
        lines
    });
    Some(f)
}

/// How much of the hero lies under hands, or under other things.
fn hidden(study: &Study<'_>, hero: &Item, by_hands: bool) -> Option<Finding> {
    let scene = study.scene();
    let stack = study.root(hero.id);
    let n = scene.pieces.iter().position(|p| p.owner == stack)?;
    let whole = &scene.pieces[n].region;
    // One cause is one sentence: what leans over it is said there.
    let leaning = if by_hands {
        Vec::new()
    } else {
        lean::over(study, stack)
    };
    let over = scene.near(n).iter().copied().filter(|m| {
        let piece = &scene.pieces[*m];
        if leaning.contains(&study.root(piece.owner)) {
            return false;
        }
        let limb = matches!(piece.part, PartKind::Hand | PartKind::Sleeve);
        *m > n && limb == by_hands && study.root(piece.owner) != stack
    });
    let over: Vec<usize> = over.collect();
    // Boxes of arms meet many that the arms themselves do not.
    let meets = |r: &&Region| gap_within(whole, r, 0.0).is_some();
    let regions = over.iter().map(|m| &scene.pieces[*m].region);
    let regions: Vec<&Region> = regions.filter(meets).collect();
    let left = difference(whole, &regions)
        .ok()
        .filter(|_| !regions.is_empty())?;
    let share = 1.0 - left.area() / whole.area().max(f64::MIN_POSITIVE);
    if share < HERO_HIDDEN.edges[0] {
        return None;
    }
    let state = if share >= HERO_HIDDEN.edges[1] {
        (State::LookAgain, 2)
    } else {
        (State::Holds, 3)
    };
    let sort = if by_hands { "hands" } else { "things" };
    let mut about: Vec<Id> = vec![hero.id];
    for m in over {
        let owner = scene.pieces[m].owner;
        if !about.contains(&owner) {
            about.push(owner);
        }
    }
    order::sort(&mut about[1..], Id::cmp);
    let mut names: Vec<String> = study.sentence(|| study.names(&about[1..]));
    let key = format!("hero:{}:{sort}", hero.id.0);
    let mut f = Finding::by(&HERO_HIDDEN, key, state, share * 100.0, about);
    let radius = whole
        .bounds()
        .map_or(0.0, |b| b.size().max_element() * 0.55);
    f.marks = vec![Mark::Ring {
        at: whole.centroid().unwrap_or(DVec2::ZERO),
        radius,
    }];
    f.sentence = study.sentence(|| {
        order::sort(&mut names, Ord::cmp);
        let args = [
            ("thing", Arg::Name(study.name(hero.id))),
            ("share", Arg::Text(percent(share))),
            ("things", Arg::Text(listed(&names))),
        ];
        say(
            if by_hands {
                "hero-hands"
            } else {
                "hero-things"
            },
            &args,
        )
    });
    f.working = study.tell(|| vec![say("working-hero-hidden", &[])]);
    Some(f)
}
