//! In which order the exposures are shot.
use super::super::finding::{Finding, Remedy, State};
use super::super::rules::{EXPOSURE_FOOD, EXPOSURE_ORDER};
use super::super::study::Study;
use super::states::called;
use crate::edit::Edit;
use crate::exposures::{Change, NoOrder, Taken, in_order, shooting_order};
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

/// How many exposures stand elsewhere in the best order; none where the order
/// they are told in takes no more.
fn figure(layout: &Layout, told: Option<Taken>, order: &[Id], best: &Taken) -> f64 {
    if told.is_some_and(|told| told.weight() <= best.weight()) {
        return 0.0;
    }
    let pairs = layout.exposures.iter().zip(order);
    pairs.filter(|(told, id)| told.id != **id).count() as f64
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
    let told = in_order(layout);
    // That food stands too long is said where food is.
    if told.is_some_and(|told| told.over > best.over) {
        return None;
    }
    let count = figure(layout, told, &order, &best);
    let state = if count >= EXPOSURE_ORDER.edges[0] {
        State::LookAgain
    } else {
        State::Holds
    };
    if state == State::Holds && !study.tells_all() {
        return None;
    }
    let Change { moves, walks } = best.change;
    let key = "exposures:order".into();
    let mut f = Finding::by(&EXPOSURE_ORDER, key, (state, 3), count, order.clone());
    f.sentence = study.sentence(|| {
        let id = match state {
            State::Holds => "exposure-order-holds",
            _ if told.is_none() => "exposure-order-wrong",
            _ if told.is_some_and(|told| told.early > best.early) => "exposure-order-early",
            _ => "exposure-order-costs",
        };
        let args = [
            ("exposures", Arg::Text(named(layout, &order))),
            ("moves", Arg::Text(moves.to_string())),
            ("walks", Arg::Text(walks.to_string())),
        ];
        say(id, &args)
    });
    f.working = study.tell(|| {
        let args = [
            ("moves", Arg::Text(moves.to_string())),
            ("walks", Arg::Text(walks.to_string())),
        ];
        vec![
            say("working-exposure-order", &[]),
            say("working-exposure-order-sum", &args),
        ]
    });
    if settled && state == State::LookAgain {
        f.remedy = reordered(study, &order, &best);
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

/// The layout with its exposures in this order.
pub(in super::super) fn in_this_order(layout: &Layout, order: &[Id]) -> Layout {
    let mut after = layout.clone();
    after.exposures = order
        .iter()
        .filter_map(|id| of(layout, *id).cloned())
        .collect();
    after
}

fn reordered(study: &Study<'_>, order: &[Id], best: &Taken) -> Option<Remedy> {
    let layout = study.layout();
    let after = in_this_order(layout, order);
    let left = figure(&after, in_order(&after), order, best);
    let args = [
        ("moves", Arg::Text(best.change.moves.to_string())),
        ("walks", Arg::Text(best.change.walks.to_string())),
    ];
    (left == 0.0).then(|| Remedy {
        act: say("act-exposure-order", &[]),
        predicted: say("predicted-order", &args),
        after: left,
        edit: Edit::between(layout, &after),
    })
}
