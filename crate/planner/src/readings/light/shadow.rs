//! How much of the hero's face lies in shadow, and whose.
use glam::{DVec2, DVec3};

use super::super::finding::{Finding, Mark, Remedy, State};
use super::super::rules::LIGHT_SHADOW;
use super::super::study::Study;
use super::{remedy, served};
use crate::layout::{Id, Item, Role};
use crate::order;
use crate::scene::{exposure_number, rise, silhouette};
use crate::shape::{Bounds, contains};
use crate::words::{Arg, listed, percent, say};

/// A place is in shadow when it sees less of the light than this. Our choice.
const HALF: f64 = 0.5;
/// Places across the hero's box in each direction.
const GRID: usize = 7;
/// Who alone shades this share of the face is named.
const NAMED: f64 = 0.05;

/// Shadows on the hero: of things, then of the arms of each exposure.
pub(super) fn read(study: &Study<'_>, settled: bool) -> Vec<Finding> {
    let layout = study.layout();
    let heroes = layout.items.iter().filter(|i| i.role == Role::Hero);
    let Some(hero) = heroes.min_by_key(|i| i.id) else {
        return Vec::new();
    };
    let Some(stack) = study.item(study.root(hero.id)) else {
        return Vec::new();
    };
    let face = face(study, served(study, stack));
    if face.is_empty() {
        return Vec::new();
    }
    let mut out: Vec<Finding> = things(study, hero, stack, &face, settled)
        .into_iter()
        .collect();
    for exposure in &layout.exposures {
        let lit = study.lit();
        let share = shaded(&face, &|p| lit.share_past_arms(p, exposure.id));
        out.extend(arms(study, hero, exposure.id, share));
    }
    out
}

/// Places spread over the top of what a dish shows.
fn face(study: &Study<'_>, shown: &Item) -> Vec<DVec3> {
    let outline = silhouette(shown);
    let top = rise(study.layout(), shown).top;
    let Some(around) = Bounds::around(&outline) else {
        return Vec::new();
    };
    let step = around.size() / GRID as f64;
    let all = (0..GRID * GRID).map(|n| {
        let cell = DVec2::new((n % GRID) as f64 + 0.5, (n / GRID) as f64 + 0.5);
        around.min + step * cell
    });
    all.filter(|p| contains(&outline, *p))
        .map(|p| p.extend(top))
        .collect()
}

/// Share of these places in shadow.
fn shaded(face: &[DVec3], share: &dyn Fn(DVec3) -> f64) -> f64 {
    let dark = face.iter().filter(|p| share(**p) < HALF).count();
    dark as f64 / face.len().max(1) as f64
}

fn by_things(study: &Study<'_>, stack: Id, face: &[DVec3]) -> f64 {
    let lit = study.lit();
    shaded(face, &|p| lit.share(p, stack))
}

const fn state(share: f64) -> (State, u8) {
    if share >= LIGHT_SHADOW.edges[1] {
        (State::LookAgain, 2)
    } else {
        (State::Holds, 3)
    }
}

fn things(
    study: &Study<'_>,
    hero: &Item,
    stack: &Item,
    face: &[DVec3],
    settled: bool,
) -> Option<Finding> {
    let share = by_things(study, stack.id, face);
    if share < LIGHT_SHADOW.edges[0] {
        return None;
    }
    let lit = study.lit();
    let mut whose: Vec<(Id, f64)> = Vec::new();
    for owner in lit.owners() {
        let own = shaded(face, &|p| lit.share_past(p, owner));
        if owner != stack.id && own >= NAMED {
            whose.push((owner, own));
        }
    }
    let walls = shaded(face, &|p| lit.share_of_mouth(p, stack.id)) >= NAMED;
    order::sort(&mut whose, |a, b| b.1.total_cmp(&a.1).then(a.0.cmp(&b.0)));
    let mut about = vec![hero.id];
    about.extend(whose.iter().map(|w| w.0));
    let key = "light:shadow".into();
    let mut f = Finding::by(&LIGHT_SHADOW, key, state(share), share * 100.0, about);
    f.marks = whose.iter().filter_map(|w| tip(study, w.0)).collect();
    f.sentence = study.sentence(|| {
        let mut names: Vec<String> = whose.iter().map(|w| called(study, w.0)).collect();
        names.dedup();
        let args = [
            ("thing", Arg::Name(study.name(hero.id))),
            ("share", Arg::Text(percent(share))),
            ("things", Arg::Text(listed(&names))),
        ];
        let id = match (names.is_empty(), walls) {
            (true, false) => "light-shadow-any",
            (true, true) => "light-shadow-walls",
            (false, false) => "light-shadow",
            (false, true) => "light-shadow-both",
        };
        say(id, &args)
    });
    f.working = study.tell(|| vec![say("working-light-shadow", &[])]);
    if settled && f.state == State::LookAgain {
        f.remedy = study.remedy(&f.key, &|| out_of_shadow(study, &f.key, stack, face, share));
    }
    Some(f)
}

/// What a card or a stack is called.
fn called(study: &Study<'_>, id: Id) -> String {
    if study.layout().cards.iter().any(|c| c.id == id) {
        return say("name-card", &[]);
    }
    study.name(id)
}

/// From the foot of what throws a shadow to the tip of it, by the middle of
/// the light: `Ds·h/(Hs − h)` past the thing.
fn tip(study: &Study<'_>, id: Id) -> Option<Mark> {
    let layout = study.layout();
    let card = layout.cards.iter().find(|card| card.id == id);
    let (at, top) = match (study.item(id), card) {
        (Some(item), _) => (item.at, rise(layout, item).top),
        (None, Some(card)) => (card.at, f64::from(card.height)),
        (None, None) => return None,
    };
    let light = &layout.light;
    let above = f64::from(light.height_above_table) - top;
    if above <= 1.0 {
        return None;
    }
    let source = study.lit().source.centre.truncate();
    let from = at.vec();
    let reach = (from - source) * (top / above);
    // A light barely above the thing throws its shadow off the table.
    let most = study.picture().diagonal();
    let to = from + reach.clamp_length_max(most);
    Some(Mark::Tip { from, to })
}

/// The light higher, then round by an hour or two.
fn out_of_shadow(
    study: &Study<'_>,
    key: &str,
    stack: &Item,
    face: &[DVec3],
    before: f64,
) -> Option<Remedy> {
    let tries = remedy::raised(study)
        .into_iter()
        .chain(remedy::turned(study));
    let (attempt, after) = study.first_that(key, tries, &|attempt| {
        let then = study.changed(&attempt.after);
        let after = by_things(&then, stack.id, face);
        (after < LIGHT_SHADOW.edges[0]).then_some(after)
    })?;
    let told = ("predicted", [before, after].map(percent));
    Some(attempt.remedy(study, after * 100.0, told))
}

/// The shadow of the arms of one exposure.
fn arms(study: &Study<'_>, hero: &Item, exposure: Id, share: f64) -> Option<Finding> {
    if share < LIGHT_SHADOW.edges[0] {
        return None;
    }
    let layout = study.layout();
    let mut about = vec![hero.id];
    let own = layout.hands.iter().filter(|h| h.exposure == exposure);
    about.extend(own.map(|h| h.id));
    let key = format!("light:arms:{}", exposure.0);
    let mut f = Finding::by(&LIGHT_SHADOW, key, state(share), share * 100.0, about);
    f.sentence = study.sentence(|| {
        let number = exposure_number(layout, exposure).unwrap_or_default();
        let args = [
            ("thing", Arg::Name(study.name(hero.id))),
            ("share", Arg::Text(percent(share))),
            ("exposure", Arg::Text(number.to_string())),
        ];
        say("light-arms", &args)
    });
    f.working = study.tell(|| vec![say("working-light-shadow", &[])]);
    Some(f)
}
