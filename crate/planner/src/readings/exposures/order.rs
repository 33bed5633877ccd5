//! In which order the exposures are shot.
use super::super::finding::{Finding, Remedy, State};
use super::super::rules::{EXPOSURE_FOOD, EXPOSURE_ORDER};
use super::super::study::Study;
use super::states::called;
use crate::edit::Edit;
use crate::exposures::{Change, NoOrder, in_order, shooting_order};
use crate::layout::{Exposure, Id, Layout};
use crate::words::{Arg, listed, say};

fn of(layout: &Layout, id: Id) -> Option<&Exposure> {
    layout.exposures.iter().find(|e| e.id == id)
}

fn named(layout: &Layout, ids: &[Id]) -> String {
    let names: Vec<String> = ids
        .iter()
        .filter_map(|id| of(layout, *id))
        .map(|e| called(layout, e))
        .collect();
    listed(&names)
}

/// What an order costs more than the best, things carried and ways walked
/// together; infinite for one that cannot be shot.
fn figure(layout: &Layout, best: Change) -> f64 {
    in_order(layout).map_or(f64::INFINITY, |told| {
        f64::from(told.moves + told.walks) - f64::from(best.moves + best.walks)
    })
}

/// The order, or why there is none; nothing under three exposures.
pub(super) fn read(study: &Study<'_>, settled: bool) -> Option<Finding> {
    let layout = study.layout();
    if layout.exposures.len() < 3 {
        return None;
    }
    let (order, best) = match shooting_order(layout) {
        Ok(found) => found,
        Err(NoOrder::Many) => return None,
        Err(NoOrder::FoodTwice(a, b)) => return Some(twice(study, a, b)),
    };
    let more = figure(layout, best);
    let state = if more >= EXPOSURE_ORDER.edges[0] {
        State::LookAgain
    } else {
        State::Holds
    };
    // An order that cannot be shot counts as all exposures out of place.
    let count = if more.is_finite() {
        more
    } else {
        layout.exposures.len() as f64
    };
    if state == State::Holds && !study.tells_all() {
        return None;
    }
    let key = "exposures:order".into();
    let mut f = Finding::by(&EXPOSURE_ORDER, key, (state, 3), count, order.clone());
    f.sentence = study.sentence(|| {
        let id = match state {
            State::Holds => "exposure-order-holds",
            _ if more.is_finite() => "exposure-order-costs",
            _ => "exposure-order-wrong",
        };
        let args = [
            ("exposures", Arg::Text(named(layout, &order))),
            ("moves", Arg::Text(best.moves.to_string())),
            ("walks", Arg::Text(best.walks.to_string())),
        ];
        say(id, &args)
    });
    f.working = study.tell(|| {
        let args = [
            ("moves", Arg::Text(best.moves.to_string())),
            ("walks", Arg::Text(best.walks.to_string())),
        ];
        vec![
            say("working-exposure-order", &[]),
            say("working-exposure-order-sum", &args),
        ]
    });
    if settled && state == State::LookAgain {
        f.remedy = reordered(study, &order, best);
    }
    Some(f)
}

fn twice(study: &Study<'_>, a: Id, b: Id) -> Finding {
    let layout = study.layout();
    let key = "exposures:food".into();
    let mut f = Finding::by(&EXPOSURE_FOOD, key, (State::LookAgain, 2), 1.0, vec![a, b]);
    f.sentence = study.sentence(|| {
        let args = [("exposures", Arg::Text(named(layout, &[a, b])))];
        say("exposure-food-twice", &args)
    });
    f.working = study.tell(|| vec![say("working-exposure-food", &[])]);
    f
}

fn reordered(study: &Study<'_>, order: &[Id], best: Change) -> Option<Remedy> {
    let layout = study.layout();
    let mut after = layout.clone();
    after.exposures = order
        .iter()
        .filter_map(|id| of(layout, *id).cloned())
        .collect();
    let left = figure(&after, best);
    let args = [
        ("moves", Arg::Text(best.moves.to_string())),
        ("walks", Arg::Text(best.walks.to_string())),
    ];
    (left == 0.0).then(|| Remedy {
        act: say("act-exposure-order", &[]),
        predicted: say("predicted-order", &args),
        after: left,
        edit: Edit::between(layout, &after),
    })
}
