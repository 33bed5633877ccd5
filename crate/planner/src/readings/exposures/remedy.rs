//! What makes exposures agree.
use super::super::finding::Remedy;
use super::super::study::Study;
use super::states::{called, standing, uncovered};
use crate::edit::Edit;
use crate::layout::{As, Exposure, ExposureKind, Extra, Id, Layout, MAX_EXPOSURES, MAX_ID, State};
use crate::words::{Arg, listed, say};

fn remedy(study: &Study<'_>, act: String, then: &str, figure: f64, after: &Layout) -> Remedy {
    Remedy {
        act,
        predicted: say(then, &[]),
        after: figure,
        edit: Edit::between(study.layout(), after),
    }
}

/// Forgets what is told of things that are gone.
pub(super) fn forget(study: &Study<'_>, exposure: Id) -> Remedy {
    let mut after = study.layout().clone();
    let items: Vec<Id> = after.items.iter().map(|i| i.id).collect();
    for own in after.exposures.iter_mut().filter(|e| e.id == exposure) {
        own.states.retain(|s| items.contains(&s.item));
    }
    let act = say("act-forget-gone", &[]);
    remedy(study, act, "predicted-forgotten", 0.0, &after)
}

/// Takes what is held out of its place.
pub(super) fn taken_up(study: &Study<'_>, exposure: Id, items: &[Id]) -> Remedy {
    let mut after = study.layout().clone();
    let mut left = 0;
    for own in after.exposures.iter_mut().filter(|e| e.id == exposure) {
        own.states.retain(|s| !items.contains(&s.item));
        own.states.extend(items.iter().map(|item| State {
            item: *item,
            is: As::Absent,
            at: None,
            turn: None,
            parts: None,
            extra: Extra::new(),
        }));
    }
    if let Some(own) = after.exposures.iter().find(|e| e.id == exposure) {
        left = standing(&after, own).len();
    }
    let names: Vec<String> = items.iter().map(|id| study.name(*id)).collect();
    let own = study.layout().exposures.iter().find(|e| e.id == exposure);
    let args = [
        ("things", Arg::Text(listed(&names))),
        (
            "exposure",
            Arg::Text(own.map_or_else(String::new, |e| called(study.layout(), e))),
        ),
    ];
    let act = say("act-take-up", &args);
    remedy(study, act, "predicted-one-place", left as f64, &after)
}

/// The exposure taken out.
pub(super) fn removed(study: &Study<'_>, exposure: Id) -> Remedy {
    let mut after = study.layout().clone();
    after.exposures.retain(|e| e.id != exposure);
    let act = say("act-exposure-away", &[]);
    remedy(study, act, "predicted-forgotten", 0.0, &after)
}

/// A clean exposure for each state of the food that has none.
pub(super) fn with_clean(study: &Study<'_>, shows: &[Id]) -> Option<Remedy> {
    let mut after = study.layout().clone();
    for id in shows {
        if after.exposures.len() >= MAX_EXPOSURES || after.head.next_id > MAX_ID {
            return None;
        }
        let of = study.layout().exposures.iter().find(|e| e.id == *id)?;
        let changed = of.states.iter().filter(|s| s.is == As::Changed);
        let mut clean = Exposure::new(Id(after.head.next_id), ExposureKind::Clean);
        clean.states = changed.cloned().collect();
        after.head.next_id += 1;
        // Before the food changes it is shot first; each later state after the
        // exposure that brings it.
        let place = after.exposures.iter().position(|e| e.id == *id)?;
        let place = if clean.states.is_empty() {
            0
        } else {
            place + 1
        };
        after.exposures.insert(place, clean);
    }
    let left = uncovered(&after).len() as f64;
    let act = say("act-add-clean", &[]);
    Some(remedy(study, act, "predicted-clean", left, &after))
}
