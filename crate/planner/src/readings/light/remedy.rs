//! What evens the light out, in a stylist's order: a white card on the far
//! side, the light farther back, the light higher.
use glam::DVec2;

use super::super::finding::Remedy;
use super::super::remedies::Try;
use super::super::study::Study;
use super::{DARK, dishes, stops};
use crate::commands::stand_card;
use crate::edit::Edit;
use crate::layout::{CardKind, Layout, Light, MAX_ID, MAX_PLACE};
use crate::words::{Arg, length, say};

/// A change that leaves more than this of what is too much is not worth
/// making, unless it cures it. Our choice.
const WORTH: f64 = 0.75;
/// How far the light is moved, mm.
const BACK: [i32; 4] = [400, 800, 1200, 1600];
const UP: [i32; 3] = [300, 600, 900];

/// The first change that cures it, else the first worth making. `figure` is
/// that of the layout after; `far` where a card would help.
pub(super) fn first_worth(
    study: &Study<'_>,
    key: &str,
    far: Option<DVec2>,
    before: f64,
    most: f64,
    figure: &dyn Fn(&Study<'_>) -> Option<f64>,
) -> Option<Remedy> {
    let card = far.and_then(|far| white_card(study, far));
    let tries: Vec<Try> = card.into_iter().chain(moved(study)).collect();
    let mut worth = None;
    for (n, attempt) in tries.into_iter().enumerate() {
        let led_to = study.figure(key, n, &|| figure(&study.changed(&attempt.after)));
        let Some(after) = led_to else {
            continue;
        };
        let cures = after <= most;
        if cures || (worth.is_none() && after - most <= (before - most) * WORTH) {
            let found = remedy(study, attempt, before, after);
            if cures {
                return Some(found);
            }
            worth = Some(found);
        }
    }
    worth
}

/// All that a photographer would change of the light first: a white card on
/// the side away from it, then the light itself.
pub(in super::super) fn changes(study: &Study<'_>, far: DVec2) -> Vec<Try> {
    let card = white_card(study, far).into_iter();
    card.chain(moved(study)).chain(turned(study)).collect()
}

fn remedy(study: &Study<'_>, attempt: Try, before: f64, after: f64) -> Remedy {
    attempt.remedy(
        study,
        after,
        ("predicted-stops", [before, after].map(stops)),
    )
}

/// A white card beside the picture, on the side away from the light.
pub(super) fn white_card(study: &Study<'_>, far: DVec2) -> Option<Try> {
    let mut after = study.layout().clone();
    let room = after.head.next_id <= MAX_ID;
    let stood = room.then(|| stand_card(&mut after, CardKind::White, far));
    stood?.ok()?;
    let act = say("act-white-card", &[]);
    Some(Try { act, after })
}

fn with(study: &Study<'_>, light: Light, id: &str, by: i32) -> Try {
    let mut after = study.layout().clone();
    after.light = light;
    let by = length(f64::from(by), after.head.units);
    Try {
        act: say(id, &[("by", Arg::Text(by))]),
        after,
    }
}

/// The light farther back, then higher, as far as the ceiling lets it.
pub(super) fn moved(study: &Study<'_>) -> Vec<Try> {
    let light = &study.layout().light;
    let mut tries = Vec::new();
    for by in BACK {
        let mut back = light.clone();
        back.distance += by;
        if back.distance <= MAX_PLACE {
            tries.push(with(study, back, "act-light-back", by));
        }
    }
    tries.extend(raised(study));
    tries
}

/// The light higher.
pub(super) fn raised(study: &Study<'_>) -> Vec<Try> {
    let light = &study.layout().light;
    let each = UP.iter().filter(|by| fits(study.layout(), light, **by));
    each.map(|by| {
        let mut up = light.clone();
        up.height_above_table += by;
        with(study, up, "act-light-up", *by)
    })
    .collect()
}

/// Whether the top of the raised light stays under the ceiling.
fn fits(layout: &Layout, light: &Light, by: i32) -> bool {
    let top = layout.table.height + light.height_above_table + by + light.height / 2;
    top <= layout.rig.ceiling
}

/// The light turned by an hour or two either way.
pub(super) fn turned(study: &Study<'_>) -> Vec<Try> {
    let light = &study.layout().light;
    let each = [60, -60, 120, -120].into_iter();
    each.map(|half| {
        let mut round = light.clone();
        round.clock = light.clock.plus(half);
        let mut after = study.layout().clone();
        after.light = round;
        let id = if half > 0 {
            "act-light-on"
        } else {
            "act-light-round"
        };
        let hours = Arg::Text((half.abs() / 60).to_string());
        Try {
            act: say(id, &[("hours", hours)]),
            after,
        }
    })
    .collect()
}

/// The light farther out and as high as it must be to reach every main dish.
pub(super) fn into_light(study: &Study<'_>) -> Option<Remedy> {
    let usual = Light::default();
    let mut light = study.layout().light.clone();
    light.distance = light.distance.max(usual.distance);
    light.height_above_table = light.height_above_table.max(usual.height_above_table);
    light.height = light.height.max(usual.height / 2);
    light.width = light.width.max(usual.width / 2);
    let mut after = study.layout().clone();
    after.light = light;
    let then = study.changed(&after);
    let dark = dishes(&then).iter().filter(|d| d.light <= DARK).count();
    (dark == 0).then(|| Remedy {
        act: say("act-light-out", &[]),
        predicted: say("light-reaches", &[]),
        after: 0.0,
        edit: Edit::between(study.layout(), &after),
    })
}
