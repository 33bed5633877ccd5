//! Where the lens stands, and whether it can.
//!
//! Thin lens: the front principal point stands s = f·(1 + W/sensor width)
//! above the table (OpenStax, College Physics 25.6); the sensor is the image
//! distance behind it. Real lenses differ by about 5% (from memory).
use super::super::finding::{Finding, Remedy, State};
use super::super::rules::{FIT_CEILING, FIT_LENS};
use super::super::study::Study;
use crate::edit::Edit;
use crate::layout::{Id, Layout};
use crate::optics::{Sensor, distance_for_width, image_distance};
use crate::shape::{Region, frame_outline};
use crate::words::{Arg, length, say};

/// Room the camera body, head and cable take above the sensor, mm. Our choice.
const BODY: f64 = 100.0;
/// Focal lengths lenses are commonly made in, mm (from memory).
const LENSES: [i32; 14] = [12, 14, 16, 18, 20, 24, 28, 35, 40, 50, 60, 85, 100, 135];
/// Narrowest sensor over focal length a remedy takes: wider than this a table
/// looks stretched at its corners (24 mm on 36 mm; common practice, no source).
const WIDEST: f64 = 1.5;
/// Narrowest part of its width a frame is taken in to. Our choice.
const NARROWEST: f64 = 0.75;

/// The heights of one layout, mm.
#[derive(Clone, Copy)]
struct Stands {
    /// Lens above the table.
    lens: f64,
    /// Left under the ceiling.
    room: f64,
    /// What the camera needs above the floor.
    needed: f64,
}

fn stands(l: &Layout) -> Option<Stands> {
    let sensor = Sensor::of(l.camera.format);
    let focal = f64::from(l.camera.focal);
    // The sensor's long side lies along the frame's long side.
    let long = f64::from(l.frame.width).max(l.frame.height());
    let lens = distance_for_width(sensor.width, focal, long)?;
    let needed = f64::from(l.table.height) + lens + image_distance(focal, lens)? + BODY;
    Some(Stands {
        lens,
        room: f64::from(l.rig.ceiling) - needed,
        needed,
    })
}

pub(super) fn read(study: &Study<'_>, settled: bool) -> Vec<Finding> {
    let Some(stands) = stands(study.layout()) else {
        return Vec::new();
    };
    let mut out = vec![ceiling(study, stands, settled)];
    out.extend(in_the_way(study, stands, settled));
    out
}

/// How sure the room under the ceiling is.
fn room_state(stands: Stands) -> State {
    if stands.room < FIT_CEILING.edges[1] {
        State::WontWork
    } else if stands.room < stands.lens * FIT_CEILING.edges[0] {
        State::LookAgain
    } else {
        State::Holds
    }
}

fn ceiling(study: &Study<'_>, stands: Stands, settled: bool) -> Finding {
    let units = study.layout().head.units;
    let state = room_state(stands);
    let rank = if state == State::Holds { 3 } else { 1 };
    let key = "fit:ceiling".into();
    let mut f = Finding::by(&FIT_CEILING, key, (state, rank), stands.room, Vec::new());
    f.sentence = study.sentence(|| {
        let text = |mm: f64| Arg::Text(length(mm, units));
        let args = [
            ("needed", text(stands.needed)),
            ("over", text(-stands.room)),
            ("height", text(stands.lens)),
            ("room", text(stands.room)),
        ];
        say(
            match state {
                State::WontWork => "fit-ceiling",
                State::LookAgain => "fit-ceiling-doubt",
                State::Holds | State::Intended => "fit-holds",
            },
            &args,
        )
    });
    f.working = study.tell(|| working(study.layout(), stands));
    if settled && state != State::Holds {
        f.remedy = shorter(study, stands).or_else(|| narrower(study, stands));
    }
    f
}

/// How the heights add up.
fn working(l: &Layout, stands: Stands) -> Vec<String> {
    let text = |mm: f64| Arg::Text(length(mm, l.head.units));
    let sums = [
        ("table", text(f64::from(l.table.height))),
        ("lens", text(stands.lens)),
        (
            "body",
            text(stands.needed - stands.lens - f64::from(l.table.height)),
        ),
        ("ceiling", text(f64::from(l.rig.ceiling))),
    ];
    vec![say("working-fit", &[]), say("working-fit-sum", &sums)]
}

/// The layout with another focal length.
fn with_lens(l: &Layout, focal: i32) -> Layout {
    let mut after = l.clone();
    after.camera.focal = focal;
    after
}

/// The remedy of a changed layout, with the heights it leads to.
fn remedy(study: &Study<'_>, after: &Layout, act: String, figure: f64) -> Option<Remedy> {
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

/// The longest common lens short enough, not so wide that it stretches.
fn shorter(study: &Study<'_>, now: Stands) -> Option<Remedy> {
    let l = study.layout();
    let sensor = Sensor::of(l.camera.format).width;
    LENSES.iter().rev().find_map(|focal| {
        if *focal >= l.camera.focal || f64::from(*focal) * WIDEST < sensor {
            return None;
        }
        let after = with_lens(l, *focal);
        let then = stands(&after)?;
        if room_state(then) != State::Holds || then.room <= now.room || blocked(&after, then) {
            return None;
        }
        let act = say("act-lens", &[("focal", Arg::Text(focal.to_string()))]);
        remedy(study, &after, act, then.room)
    })
}

/// The frame taken in about its centre until the camera fits, when every crop
/// still lies inside.
fn narrower(study: &Study<'_>, now: Stands) -> Option<Remedy> {
    let l = study.layout();
    let least = (f64::from(l.frame.width) * NARROWEST) as i32;
    let after = (least..l.frame.width).rev().step_by(5).find_map(|width| {
        let mut after = l.clone();
        after.frame.width = width;
        let then = stands(&after)?;
        (room_state(then) == State::Holds && then.room > now.room).then_some(after)
    })?;
    let then = stands(&after)?;
    if super::super::crops::spoils(study, &after) || blocked(&after, then) {
        return None;
    }
    let width = Arg::Text(length(f64::from(after.frame.width), l.head.units));
    let act = say("act-narrow-frame", &[("width", width)]);
    remedy(study, &after, act, then.room)
}

/// The tallest thing in the frame and how high it reaches above the table.
fn tallest(l: &Layout) -> Option<(Id, f64)> {
    let frame = Region::from_polygon(&frame_outline(&l.frame)).ok()?;
    let inside = l.items.iter().filter(|i| frame.contains(i.at.vec()));
    let reach = |i: &crate::layout::Item| {
        let mut top = i.height;
        let mut at = i.on;
        for _ in 0..l.items.len() {
            let Some(below) = at.and_then(|id| l.items.iter().find(|o| o.id == id)) else {
                break;
            };
            top += below.height;
            at = below.on;
        }
        (i.id, f64::from(top))
    };
    inside
        .map(reach)
        .max_by(|a, b| a.1.total_cmp(&b.1).then(b.0.cmp(&a.0)))
}

fn blocked(l: &Layout, stands: Stands) -> bool {
    tallest(l).is_some_and(|(_, top)| stands.lens - top < FIT_LENS.edges[0])
}

/// A thing that reaches up to the lens.
fn in_the_way(study: &Study<'_>, now: Stands, settled: bool) -> Option<Finding> {
    let l = study.layout();
    let (id, top) = tallest(l)?;
    let clear = now.lens - top;
    if clear >= FIT_LENS.edges[0] {
        return None;
    }
    let state = if clear < FIT_LENS.edges[1] {
        State::WontWork
    } else {
        State::LookAgain
    };
    let mut f = Finding::by(&FIT_LENS, "fit:lens".into(), (state, 1), clear, vec![id]);
    f.sentence = study.sentence(|| {
        let text = |mm: f64| Arg::Text(length(mm, l.head.units));
        let args = [
            ("thing", Arg::Name(study.name(id))),
            ("top", text(top)),
            ("height", text(now.lens)),
        ];
        say("fit-lens", &args)
    });
    f.working = study.tell(|| working(l, now));
    if settled {
        f.remedy = LENSES.iter().find_map(|focal| {
            let after = with_lens(l, *focal);
            let then = stands(&after).filter(|_| *focal > l.camera.focal)?;
            if blocked(&after, then) || room_state(then) != State::Holds {
                return None;
            }
            let act = say("act-lens", &[("focal", Arg::Text(focal.to_string()))]);
            remedy(study, &after, act, then.lens - top)
        });
    }
    Some(f)
}
