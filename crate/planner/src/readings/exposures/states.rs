//! States that contradict each other.
use super::super::finding::{Finding, Mark, State};
use super::super::rules::{
    EXPOSURE_CLEAN, EXPOSURE_GONE, EXPOSURE_HELD, EXPOSURE_IDLE, EXPOSURE_TWICE,
};
use super::super::study::Study;
use super::remedy;
use crate::exposures::{changes, food_states, held_in, state_of};
use crate::layout::{As, Exposure, ExposureKind, Id, Layout};
use crate::scene::exposure_name;
use crate::words::{Arg, listed, say};

/// An exposure as it is called.
pub(super) fn called(layout: &Layout, exposure: &Exposure) -> String {
    exposure_name(layout, exposure.id)
}

/// What an exposure tells of things that are gone from the table.
pub(super) fn lost(layout: &Layout, exposure: &Exposure) -> Vec<Id> {
    let there = |id: Id| layout.items.iter().any(|i| i.id == id);
    let told = exposure.states.iter().map(|s| s.item);
    told.filter(|id| !there(*id)).collect()
}

pub(super) fn gone(study: &Study<'_>, exposure: &Exposure, settled: bool) -> Option<Finding> {
    let count = lost(study.layout(), exposure).len();
    if count == 0 {
        return None;
    }
    let key = format!("exposures:{}:gone", exposure.id.0);
    let state = (State::LookAgain, 3);
    let about = vec![exposure.id];
    let mut f = Finding::by(&EXPOSURE_GONE, key, state, count as f64, about);
    f.sentence = study.sentence(|| {
        let args = [
            ("exposure", Arg::Text(called(study.layout(), exposure))),
            ("count", Arg::Text(count.to_string())),
        ];
        let id = if count == 1 {
            "exposure-gone-one"
        } else {
            "exposure-gone"
        };
        say(id, &args)
    });
    f.working = study.tell(|| vec![say("working-exposure-gone", &[])]);
    if settled {
        f.remedy = Some(remedy::forget(study, exposure.id));
    }
    Some(f)
}

/// What hands hold in an exposure while it stands in its place.
pub(super) fn standing(layout: &Layout, exposure: &Exposure) -> Vec<Id> {
    let both = |id: &Id| {
        let held = held_in(layout, exposure.id, *id).next().is_some();
        held && state_of(exposure, *id) == As::Set
    };
    let ids = layout.items.iter().map(|i| i.id);
    ids.filter(both).collect()
}

pub(super) fn in_two_places(
    study: &Study<'_>,
    exposure: &Exposure,
    settled: bool,
) -> Option<Finding> {
    let ids = standing(study.layout(), exposure);
    ids.first()?;
    let key = format!("exposures:{}:twice", exposure.id.0);
    let figure = ids.len() as f64;
    let state = (State::WontWork, 1);
    let mut f = Finding::by(&EXPOSURE_TWICE, key, state, figure, ids.clone());
    let there = ids.iter().filter_map(|id| study.item(*id));
    f.marks = there
        .map(|item| {
            let [wide, deep] = item.size.extent().map(f64::from);
            Mark::Ring {
                at: item.at.vec(),
                radius: wide.max(deep) * 0.6,
            }
        })
        .collect();
    f.sentence = study.sentence(|| {
        let names: Vec<String> = ids.iter().map(|id| study.name(*id)).collect();
        let args = [
            ("exposure", Arg::Text(called(study.layout(), exposure))),
            ("things", Arg::Text(listed(&names))),
        ];
        let id = if names.len() == 1 {
            "exposure-twice"
        } else {
            "exposure-twice-several"
        };
        say(id, &args)
    });
    f.working = study.tell(|| vec![say("working-exposure-twice", &[])]);
    if settled {
        f.remedy = Some(remedy::taken_up(study, exposure.id, &ids));
    }
    Some(f)
}

/// A thing that two people hold, or one person holds in no pair.
pub(super) fn held_by_two(study: &Study<'_>, exposure: &Exposure) -> Option<Finding> {
    let layout = study.layout();
    let torn = |id: &Id| {
        let hands: Vec<_> = held_in(layout, exposure.id, *id).collect();
        let pair = |n: usize| hands[0].pair == Some(hands[n].id);
        (1..hands.len()).any(|n| !pair(n))
    };
    let ids: Vec<Id> = layout.items.iter().map(|i| i.id).filter(torn).collect();
    ids.first()?;
    let key = format!("exposures:{}:held", exposure.id.0);
    let figure = ids.len() as f64;
    let state = (State::LookAgain, 2);
    let mut f = Finding::by(&EXPOSURE_HELD, key, state, figure, ids.clone());
    f.sentence = study.sentence(|| {
        let names: Vec<String> = ids.iter().map(|id| study.name(*id)).collect();
        let args = [
            ("exposure", Arg::Text(called(layout, exposure))),
            ("things", Arg::Text(listed(&names))),
        ];
        say("exposure-held", &args)
    });
    f.working = study.tell(|| vec![say("working-exposure-held", &[])]);
    Some(f)
}

/// An exposure for hands that has none.
pub(super) fn without_hands(
    study: &Study<'_>,
    exposure: &Exposure,
    settled: bool,
) -> Option<Finding> {
    let layout = study.layout();
    // Before anyone reaches in there is nothing to miss.
    let idle = !layout.hands.is_empty()
        && exposure.kind == ExposureKind::Hands
        && !layout.hands.iter().any(|h| h.exposure == exposure.id);
    if !idle {
        return None;
    }
    let key = format!("exposures:{}:idle", exposure.id.0);
    let about = vec![exposure.id];
    let mut f = Finding::by(&EXPOSURE_IDLE, key, (State::LookAgain, 3), 1.0, about);
    f.sentence = study.sentence(|| {
        say(
            "exposure-idle",
            &[("exposure", Arg::Text(called(layout, exposure)))],
        )
    });
    f.working = study.tell(|| vec![say("working-exposure-idle", &[])]);
    if settled {
        f.remedy = Some(remedy::removed(study, exposure.id));
    }
    Some(f)
}

/// The states of the food that no clean exposure shows, as the first exposure
/// that shows each.
pub(super) fn uncovered(layout: &Layout) -> Vec<Id> {
    if layout.hands.is_empty() {
        return Vec::new();
    }
    let clean = |e: &&Exposure| e.kind == ExposureKind::Clean;
    let covered: Vec<_> = layout.exposures.iter().filter(clean).map(changes).collect();
    let missing = food_states(layout).into_iter();
    let missing = missing.filter(|state| !covered.contains(state));
    let shows = |state: &Vec<_>| {
        let first = layout.exposures.iter().find(|e| changes(e) == *state);
        first.map(|e| e.id)
    };
    missing.filter_map(|state| shows(&state)).collect()
}

pub(super) fn no_clean(study: &Study<'_>, settled: bool) -> Option<Finding> {
    let layout = study.layout();
    let ids = uncovered(layout);
    ids.first()?;
    let key = "exposures:clean".into();
    let state = (State::LookAgain, 2);
    let mut f = Finding::by(&EXPOSURE_CLEAN, key, state, ids.len() as f64, ids.clone());
    f.sentence = study.sentence(|| {
        let named = layout.exposures.iter().filter(|e| ids.contains(&e.id));
        let names: Vec<String> = named.map(|e| called(layout, e)).collect();
        say(
            "exposure-no-clean",
            &[("exposures", Arg::Text(listed(&names)))],
        )
    });
    f.working = study.tell(|| vec![say("working-exposure-clean", &[])]);
    if settled {
        f.remedy = remedy::with_clean(study, &ids);
    }
    Some(f)
}
