//! Two exposures that want the same place of the picture.
use super::super::finding::{Finding, Mark, Remedy, State};
use super::super::hands::{moved_aside, no_worse};
use super::super::rules::EXPOSURE_CLASH;
use super::super::study::Study;
use super::states::called;
use crate::exposures::{Clash, Meeting, changes, clashes, soft_edge};
use crate::layout::{Hand, Id, Item, Layout};
use crate::light::Source;
use crate::optics::View;
use crate::scene::{rise, seen_outline, vessel_of};
use crate::shape::{Region, intersection};
use crate::words::{Arg, fixed, length, listed, say};

/// Square millimetres to a square centimetre.
const CM2: f64 = 100.0;

pub(super) fn all(study: &Study<'_>) -> Vec<Clash> {
    let layout = study.layout();
    if layout.exposures.len() < 2 || layout.hands.len() < 2 {
        return Vec::new();
    }
    clashes(layout, study.lit(), study.added())
}

pub(super) fn read(study: &Study<'_>, settled: bool) -> Vec<Finding> {
    let found = all(study);
    let said = |clash: &&Clash| clash.area() / CM2 >= EXPOSURE_CLASH.edges[0];
    let each = found.iter().filter(said);
    each.map(|clash| one(study, clash, settled)).collect()
}

fn key(first: Id, second: Id) -> String {
    format!("exposures:{}:{}:clash", first.0, second.0)
}

fn one(study: &Study<'_>, clash: &Clash, settled: bool) -> Finding {
    let layout = study.layout();
    let figure = clash.area() / CM2;
    let hands = |exposure: Id| layout.hands.iter().filter(move |h| h.exposure == exposure);
    let both = hands(clash.first).chain(hands(clash.second));
    let about: Vec<Id> = both.map(|h| h.id).collect();
    let state = (State::LookAgain, 2);
    let key = key(clash.first, clash.second);
    let mut f = Finding::by(&EXPOSURE_CLASH, key, state, figure, about);
    let area = study.tell(|| say("area-cm2", &[("area", Arg::Text(fixed(figure, 0)))]));
    f.marks = clash
        .region
        .rings()
        .iter()
        .map(|ring| Mark::Overrun {
            outline: ring.clone(),
            label: area.clone(),
        })
        .collect();
    f.sentence = study.sentence(|| sentence(study, clash, figure));
    f.working = study.tell(|| working(layout, clash));
    if settled {
        f.remedy = study.remedy(&f.key, &|| parted(study, &f.key, clash, figure));
    }
    f
}

/// How it is worked out, and how soft the edge of the first arm's shadow is.
fn working(layout: &Layout, clash: &Clash) -> Vec<String> {
    let mut lines = vec![say("working-exposure-clash", &[])];
    let own = |h: &&Hand| [clash.first, clash.second].contains(&h.exposure);
    if let Some(hand) = layout.hands.iter().find(own) {
        let (at, height) = (hand.target.vec(), f64::from(hand.height));
        let edge = soft_edge(&Source::of(layout), &layout.frame, at, height);
        let told = |mm| Arg::Text(length(mm, layout.head.units));
        let args = [
            ("height", told(height)),
            ("along", told(edge.x)),
            ("across", told(edge.y)),
        ];
        lines.push(say("working-soft-edge", &args));
    }
    lines
}

fn sentence(study: &Study<'_>, clash: &Clash, figure: f64) -> String {
    let layout = study.layout();
    let of = |id: Id| layout.exposures.iter().find(|e| e.id == id);
    let name = |id: Id| of(id).map_or_else(String::new, |e| called(layout, e));
    let area = ("area", Arg::Text(fixed(figure, 0)));
    let (from, onto) = match clash.by {
        Meeting::ShadowOfFirst => (clash.first, clash.second),
        Meeting::ShadowOfSecond => (clash.second, clash.first),
        Meeting::Outlines | Meeting::BothShadows => {
            let names = [clash.first, clash.second].map(name);
            let id = if clash.by == Meeting::Outlines {
                "exposure-clash"
            } else {
                "exposure-clash-shadows"
            };
            return say(id, &[("exposures", Arg::Text(listed(&names))), area]);
        }
    };
    let changed = of(onto).into_iter().flat_map(changes).map(|(id, _)| id);
    let shaded = changed.filter(|id| study.item(*id).is_some_and(|i| lies_in(layout, i, clash)));
    let names: Vec<String> = shaded.map(|id| study.name(id)).collect();
    let args = [
        ("exposure", Arg::Text(name(from))),
        ("other", Arg::Text(name(onto))),
        ("things", Arg::Text(listed(&names))),
        area,
    ];
    if names.is_empty() {
        say("exposure-clash-shadow", &args)
    } else {
        say("exposure-clash-shadow-on", &args)
    }
}

/// Whether a thing, as the lens sees it, lies where two exposures clash.
fn lies_in(layout: &Layout, item: &Item, clash: &Clash) -> bool {
    let inside = vessel_of(layout, item).is_some();
    let outline = seen_outline(item, rise(layout, item), inside, View::of(layout));
    let seen = Region::from_polygon(&outline).unwrap_or_default();
    intersection(&seen, &clash.region).is_ok_and(|both| both.area() > 0.0)
}

/// How much of this clash there is, cm², and how many clashes.
fn left(study: &Study<'_>, clash: &Clash) -> (f64, usize) {
    let found = all(study);
    let same = |c: &&Clash| c.first == clash.first && c.second == clash.second;
    let area = found.iter().find(same).map_or(0.0, Clash::area);
    let said = found
        .iter()
        .filter(|c| c.area() / CM2 >= EXPOSURE_CLASH.edges[0]);
    (area / CM2, said.count())
}

/// The smallest move of someone's place that parts them and makes no new clash.
fn parted(study: &Study<'_>, key: &str, clash: &Clash, before: f64) -> Option<Remedy> {
    let layout = study.layout();
    let of = |exposure: Id| layout.hands.iter().find(move |h| h.exposure == exposure);
    let now = left(study, clash).1;
    let mut hands = [clash.first, clash.second].into_iter().filter_map(of);
    let first = hands.next().map(|hand| moved_aside(study, hand));
    let second = hands.next().map(|hand| moved_aside(study, hand));
    // One step of each in turn.
    let tries = by_turns(first.into_iter().flatten(), second.into_iter().flatten());
    let (attempt, area) = study.first_that(key, tries, &|attempt| {
        if !no_worse(layout, &attempt.after) {
            return None;
        }
        let (area, count) = left(&study.changed(&attempt.after), clash);
        (area < EXPOSURE_CLASH.edges[0] && count < now).then_some(area)
    })?;
    let told = |cm2: f64| say("area-cm2", &[("area", Arg::Text(fixed(cm2, 0)))]);
    Some(attempt.remedy(study, area, ("predicted", [before, area].map(told))))
}

/// All of two lists, one of each in turn as long as both last.
fn by_turns<T>(
    mut first: impl Iterator<Item = T>,
    mut second: impl Iterator<Item = T>,
) -> impl Iterator<Item = T> {
    std::iter::from_fn(move || {
        let both = [first.next(), second.next()];
        both.iter().any(Option::is_some).then_some(both)
    })
    .flat_map(|both| both.into_iter().flatten())
}
