//! What keeps food within its time: another order, something that stands in
//! for it, a shorter exposure.
use super::super::exposures::in_this_order;
use super::super::finding::Remedy;
use super::super::study::Study;
use super::holds::over;
use crate::edit::Edit;
use crate::exposures::{running, shooting_order};
use crate::layout::{Exposure, ExposureKind, Id, Layout};
use crate::scene::exposure_name;
use crate::words::{Arg, listed, say};

/// No exposure with hands is asked to be shorter than this, minutes. Our
/// choice: one take that works.
const SHORTEST: i32 = 3;

/// The layout with its exposures in the order that takes least.
fn best_order(layout: &Layout) -> Layout {
    shooting_order(layout).map_or_else(
        |_| layout.clone(),
        |(order, _)| in_this_order(layout, &order),
    )
}

/// The first of them that keeps all food within its time, or else what leaves
/// least over.
pub(super) fn in_time(study: &Study<'_>, late: &[Id], before: f64) -> Option<Remedy> {
    let layout = study.layout();
    let tries = [
        (say("act-timing-order", &[]), Some(best_order(layout))),
        stood_in(study, late),
        shorter(study, late),
    ];
    let mut found: Option<(String, Layout, f64)> = None;
    for (act, after) in tries {
        let Some(after) = after else {
            continue;
        };
        let left = over(&after);
        let least = found.as_ref().map_or(before, |(_, _, least)| *least);
        if left < least {
            found = Some((act, after, left));
        }
    }
    let (act, after, left) = found?;
    let told = |minutes: f64| {
        let args = [("minutes", Arg::Text(crate::words::whole(minutes)))];
        Arg::Text(say("timing-over", &args))
    };
    Some(Remedy {
        act,
        predicted: say(
            "predicted",
            &[("before", told(before)), ("after", told(left))],
        ),
        after: left,
        edit: Edit::between(layout, &after),
    })
}

/// Something lies in its place until the real food must be there.
fn stood_in(study: &Study<'_>, late: &[Id]) -> (String, Option<Layout>) {
    let mut after = study.layout().clone();
    let mut named = Vec::new();
    for item in &mut after.items {
        if late.contains(&item.id) && item.stand_in.is_empty() {
            item.stand_in = say("stand-in-usual", &[]);
            named.push(item.id);
        }
    }
    let things = Arg::Text(listed(&study.names(&named)));
    let act = say("act-timing-stand-in", &[("things", things)]);
    (act, (!named.is_empty()).then(|| best_order(&after)))
}

/// The longest exposure with hands within the time of the worst food is kept
/// as much shorter as it must be.
fn shorter(study: &Study<'_>, late: &[Id]) -> (String, Option<Layout>) {
    let mut after = best_order(study.layout());
    let run = running(&after);
    let food = run
        .foods
        .iter()
        .find(|food| late.first() == Some(&food.item));
    let within = |id: Id| {
        let shot = run.shots.iter().find(|shot| shot.exposure == id);
        shot.zip(food)
            .is_some_and(|(shot, food)| shot.from >= food.from && shot.to <= food.last)
    };
    let over = food.map_or(0, |food| food.over());
    let hands = after.exposures.iter_mut();
    let hands = hands.filter(|e| e.kind == ExposureKind::Hands && within(e.id));
    let mut longest = None;
    for exposure in hands {
        let so_far = longest
            .as_ref()
            .map_or(0, |known: &&mut Exposure| known.takes());
        if exposure.takes() > so_far {
            longest = Some(exposure);
        }
    }
    let Some(exposure) = longest.filter(|e| over > 0 && e.takes() - over >= SHORTEST) else {
        return (String::new(), None);
    };
    let minutes = exposure.takes() - over;
    exposure.minutes = Some(minutes);
    let id = exposure.id;
    let named = exposure_name(&after, id);
    let args = [
        ("exposure", Arg::Text(named)),
        ("minutes", Arg::Text(minutes.to_string())),
    ];
    (say("act-timing-shorter", &args), Some(after))
}
