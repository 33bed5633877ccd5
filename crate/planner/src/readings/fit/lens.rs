//! Where the lens stands, and whether it can.
//!
//! Thin lens: the front principal point stands s = f·(1 + W/sensor width)
//! above the table (OpenStax, College Physics 25.6); the sensor is the image
//! distance behind it. Real lenses differ by about 5% (from memory).
use super::super::finding::{Finding, Remedy, State};
use super::super::rules::{FIT_CEILING, FIT_LENS};
use super::super::study::Study;
use super::hung;
use crate::layout::Layout;
use crate::optics::{Lens, at_hand};
use crate::scene::tallest;
use crate::words::{Arg, length, listed, say};

/// Room the camera body, head and cable take above the sensor, mm. Our choice.
const BODY: f64 = 100.0;
/// The heights of one layout, mm.
#[derive(Clone, Copy)]
pub(super) struct Stands {
    /// Lens above the table.
    pub(super) lens: f64,
    /// Left under the ceiling.
    pub(super) room: f64,
    /// What the camera needs above the floor.
    pub(super) needed: f64,
}

pub(super) fn stands(l: &Layout) -> Option<Stands> {
    let camera = Lens::of(&l.camera);
    let lens = camera.height_over(f64::from(l.frame.width), l.frame.height())?;
    let needed = f64::from(l.table.height) + camera.sensor_height(lens)? + BODY;
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
    if study.tells_all() {
        out.push(lenses(study, stands));
    }
    out.extend(in_the_way(study, stands, settled));
    out
}

/// How sure the room under the ceiling is.
pub(super) fn room_state(stands: Stands) -> State {
    if stands.room < FIT_CEILING.edges[1] {
        State::WontWork
    } else if stands.room < stands.lens * FIT_CEILING.edges[0] {
        State::LookAgain
    } else {
        State::Holds
    }
}

/// Whether the camera stands well under the ceiling and clear of everything
/// in the picture.
pub(in super::super) fn fits(l: &Layout) -> bool {
    stands(l).is_some_and(|then| room_state(then) == State::Holds && !blocked(l, then))
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
        f.remedy = hung::shorter(study, stands)
            .or_else(|| hung::lower_board(study, stands))
            .or_else(|| hung::narrower(study, stands));
    }
    f
}

/// Which lenses can show this frame in this room.
fn lenses(study: &Study<'_>, now: Stands) -> Finding {
    let l = study.layout();
    let mut all = at_hand(&l.camera);
    if l.camera.lenses.is_empty() {
        all.retain(|focal| !hung::stretches(&with_lens(l, *focal)));
    }
    let fit = |focal: &&i32| fits(&with_lens(l, **focal));
    let fitting: Vec<String> = all.iter().filter(fit).map(i32::to_string).collect();
    let state = (State::Holds, 3);
    let mut f = Finding::by(
        &FIT_CEILING,
        "fit:lenses".into(),
        state,
        now.room,
        Vec::new(),
    );
    f.sentence = study.sentence(|| {
        let own = !l.camera.lenses.is_empty();
        let id = match (fitting.is_empty(), own) {
            (true, true) => "fit-lenses-none-own",
            (true, false) => "fit-lenses-none",
            (false, true) => "fit-lenses-own",
            (false, false) => "fit-lenses",
        };
        say(id, &[("lenses", Arg::Text(listed(&fitting)))])
    });
    f.working = study.tell(|| {
        let each = all.iter().filter_map(|focal| {
            let then = stands(&with_lens(l, *focal))?;
            let text = |mm: f64| Arg::Text(length(mm, l.head.units));
            let args = [
                ("focal", Arg::Text(focal.to_string())),
                ("height", text(then.lens)),
                ("room", text(then.room)),
                ("over", text(-then.room)),
            ];
            let short = then.room < FIT_CEILING.edges[1];
            Some(say(
                if short {
                    "working-fit-over"
                } else {
                    "working-fit-under"
                },
                &args,
            ))
        });
        core::iter::once(say("working-fit", &[]))
            .chain(each)
            .collect()
    });
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
pub(in super::super) fn with_lens(l: &Layout, focal: i32) -> Layout {
    let mut after = l.clone();
    after.camera.focal = focal;
    after
}

pub(super) fn blocked(l: &Layout, stands: Stands) -> bool {
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
        f.remedy = longer(study, top);
    }
    Some(f)
}

/// The shortest lens at hand that stands clear of what reaches so high.
fn longer(study: &Study<'_>, top: f64) -> Option<Remedy> {
    let l = study.layout();
    at_hand(&l.camera).into_iter().find_map(|focal| {
        let after = with_lens(l, focal);
        if focal <= l.camera.focal || !fits(&after) {
            return None;
        }
        let then = stands(&after)?;
        hung::remedy(study, &after, hung::take_lens(focal), then.lens - top)
    })
}
