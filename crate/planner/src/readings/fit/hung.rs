//! Getting the camera under the ceiling.
use super::super::crops;
use super::super::finding::{Remedy, State};
use super::super::rules::FIT_CEILING;
use super::super::study::Study;
use super::lens::{Stands, blocked, room_state, stands, with_lens};
use crate::edit::Edit;
use crate::layout::Layout;
use crate::optics::{Lens, at_hand};
use crate::words::{Arg, length, say};

/// Narrowest sensor over focal length a remedy takes: wider than this a table
/// looks stretched at its corners (24 mm on 36 mm; common practice, no source).
const WIDEST: f64 = 1.5;
/// Narrowest part of its width a frame is taken in to. Our choice.
const NARROWEST: f64 = 0.75;
/// Lowest board on trestles, and the height of one laid on the floor upon
/// battens, mm; boards are lowered by steps of 1 cm. Our choice.
const TRESTLES: i32 = 300;
const BATTENS: i32 = 50;
const STEP: i32 = 10;

/// The remedy of a changed layout, with the heights it leads to.
pub(super) fn remedy(
    study: &Study<'_>,
    after: &Layout,
    act: String,
    figure: f64,
) -> Option<Remedy> {
    let then = stands(after)?;
    let text = |mm: f64| Arg::Text(length(mm, after.head.units));
    let args = [("height", text(then.lens)), ("room", text(then.room))];
    Some(Remedy {
        act,
        predicted: say("lens-then", &args),
        after: figure,
        edit: Edit::between(study.layout(), after),
    })
}

/// What to do to have another focal length.
pub(in super::super) fn take_lens(focal: i32) -> String {
    say("act-lens", &[("focal", Arg::Text(focal.to_string()))])
}

/// Whether the lens is so wide that the table looks stretched.
pub(super) fn stretches(l: &Layout) -> bool {
    let lens = Lens::of(&l.camera);
    lens.focal * WIDEST < lens.sensor.x
}

/// The longest lens at hand short enough, not so wide that it stretches.
pub(super) fn shorter(study: &Study<'_>, now: Stands) -> Option<Remedy> {
    let l = study.layout();
    at_hand(&l.camera).into_iter().rev().find_map(|focal| {
        if focal >= l.camera.focal {
            return None;
        }
        let after = with_lens(l, focal);
        let then = stands(&after)?;
        if stretches(&after) || room_state(then) != State::Holds || then.room <= now.room {
            return None;
        }
        if blocked(&after, then) {
            return None;
        }
        remedy(study, &after, take_lens(focal), then.room)
    })
}

/// The board on lower trestles, or else on the floor.
pub(super) fn lower_board(study: &Study<'_>, now: Stands) -> Option<Remedy> {
    let l = study.layout();
    let missing = now.lens * FIT_CEILING.edges[0] - now.room;
    let needed = (f64::from(l.table.height) - missing).max(-1.0).floor() as i32;
    let height = match needed / STEP * STEP {
        high if high >= TRESTLES => high,
        _ if needed >= BATTENS => BATTENS,
        _ => return None,
    };
    let mut after = l.clone();
    after.table.height = height;
    let then = stands(&after)?;
    if room_state(then) != State::Holds || then.room <= now.room {
        return None;
    }
    let args = [
        ("ground", Arg::Name(study.name(crate::layout::Id(0)))),
        ("height", Arg::Text(length(f64::from(height), l.head.units))),
    ];
    let act = if height == BATTENS {
        "act-board-floor"
    } else {
        "act-board-lower"
    };
    remedy(study, &after, say(act, &args), then.room)
}

/// The frame taken in about its centre until the camera fits, when every crop
/// still lies inside.
pub(super) fn narrower(study: &Study<'_>, now: Stands) -> Option<Remedy> {
    let l = study.layout();
    let least = (f64::from(l.frame.width) * NARROWEST) as i32;
    let after = (least..l.frame.width).rev().step_by(5).find_map(|width| {
        let mut after = l.clone();
        after.frame.width = width;
        let then = stands(&after)?;
        (room_state(then) == State::Holds && then.room > now.room).then_some(after)
    })?;
    let then = stands(&after)?;
    if blocked(&after, then) || crops::spoils(study, &after) {
        return None;
    }
    let width = Arg::Text(length(f64::from(after.frame.width), l.head.units));
    let act = say("act-narrow-frame", &[("width", width)]);
    remedy(study, &after, act, then.room)
}
