//! Whether the arm reaches, the mast is high enough, the stand clears the
//! table, and the photographer does not walk into it.
use glam::DVec2;

use super::super::finding::{Finding, Mark, Remedy, State};
use super::super::rules::{RIG_ARM, RIG_EXTENDED, RIG_MAST, RIG_PATH, RIG_TABLE, Rule};
use super::super::study::Study;
use super::margin::{said, state_of};
use super::{remedy, way};
use crate::edit::Edit;
use crate::layout::{Layout, MAX_SIZE};
use crate::rig::{Stand, leg_height};
use crate::shape::{CHORD_ERROR, contains, on_side, table_outline, to_edge};
use crate::words::{Arg, length, percent, say};

/// An arm is made this much longer than it has to be, in steps of, mm.
const ARM_STEP: f64 = 50.0;

fn finding(
    study: &Study<'_>,
    rule: &'static Rule,
    key: &str,
    state: (State, u8),
    figure: f64,
    tell: (&str, &[(&str, f64)]),
) -> Finding {
    let units = study.layout().head.units;
    let mut f = Finding::by(rule, key.into(), state, figure, Vec::new());
    f.sentence = study.sentence(|| {
        let args: Vec<(&str, Arg)> = tell
            .1
            .iter()
            .map(|(name, mm)| (*name, Arg::Text(length(*mm, units))))
            .collect();
        say(tell.0, &args)
    });
    f.working = study.tell(|| vec![say(rule.working, &[]), say("working-rig-not", &[])]);
    f
}

/// An arm that is too short, or all but drawn out without a bag on the stand.
pub(super) fn reach(study: &Study<'_>, stand: &Stand, settled: bool) -> Option<Finding> {
    let rig = &study.layout().rig;
    let length_ = f64::from(rig.arm_length);
    let short = stand.needs() - length_;
    if short >= RIG_ARM.edges[0] {
        let state = (State::WontWork, 1);
        let figures = [("short", short), ("needs", stand.needs())];
        let id = if stand.masts.len() > 1 {
            "rig-bar"
        } else {
            "rig-arm"
        };
        let mut f = finding(study, &RIG_ARM, "rig:arm", state, short, (id, &figures));
        f.marks = vec![Mark::Gap {
            from: stand.masts[0],
            to: stand.masts[0] + stand.along * stand.reach,
            label: study.tell(|| length(stand.reach, study.layout().head.units)),
        }];
        if settled {
            f.remedy = longer(study.layout(), stand);
        }
        return Some(f);
    }
    drawn_out(study, stand, settled)
}

/// An arm as long as it has to be.
fn longer(l: &Layout, stand: &Stand) -> Option<Remedy> {
    let needs = (stand.needs() / ARM_STEP).ceil() * ARM_STEP;
    if needs > f64::from(MAX_SIZE) {
        return None;
    }
    let mut after = l.clone();
    after.rig.arm_length = needs as i32;
    let text = [("arm", Arg::Text(length(needs, l.head.units)))];
    let margin = Stand::of(&after)?.tipping()?.margin();
    let figures = [("margin", Arg::Text(said(margin)))];
    // Reaching is no help when it then tips.
    (state_of(margin) != State::WontWork).then(|| Remedy {
        act: say("act-rig-arm", &text),
        predicted: say("rig-reaches", &figures),
        after: 0.0,
        edit: Edit::between(l, &after),
    })
}

/// A bag becomes necessary where an arm is fully drawn out: common practice,
/// no source. Silent where the margin speaks already.
fn drawn_out(study: &Study<'_>, stand: &Stand, settled: bool) -> Option<Finding> {
    let rig = &study.layout().rig;
    let bagged = rig.bag.is_some_and(|b| b.mass > 0);
    let share = stand.reach / f64::from(rig.arm_length).max(1.0);
    let margin = stand.tipping()?.margin();
    let single = stand.masts.len() == 1 && rig.arm_length > 0;
    if !single || bagged || share < RIG_EXTENDED.edges[0] || state_of(margin) != State::Holds {
        return None;
    }
    let rule = &RIG_EXTENDED;
    let state = (State::LookAgain, 2);
    let key = "rig:extended".into();
    let mut f = Finding::by(rule, key, state, share * 100.0, Vec::new());
    f.sentence = study.sentence(|| {
        let args = [("share", Arg::Text(percent(share)))];
        say("rig-extended", &args)
    });
    f.working = study.tell(|| vec![say(rule.working, &[]), say("working-rig-bag", &[])]);
    if settled {
        f.remedy = remedy::bag_by_custom(study.layout(), margin);
    }
    Some(f)
}

/// A mast that does not reach up to the arm.
pub(super) fn mast(study: &Study<'_>, stand: &Stand) -> Option<Finding> {
    let mast = f64::from(study.layout().rig.mast_height);
    let low = stand.arm_height - mast;
    (low >= RIG_MAST.edges[0]).then(|| {
        let figures = [("low", low), ("needs", stand.arm_height)];
        let state = (State::WontWork, 1);
        let tell = ("rig-mast", &figures[..]);
        finding(study, &RIG_MAST, "rig:mast", state, low, tell)
    })
}

/// Where a mast or a leg would go through the table, or a leg under it: how far
/// in from its edge, and where.
fn worst(l: &Layout, stand: &Stand, through: bool) -> Option<(f64, DVec2)> {
    let table = table_outline(&l.table, CHORD_ERROR);
    let top = f64::from(l.table.height);
    let radius = f64::from(l.rig.foot_radius);
    let mut worst: Option<(f64, DVec2)> = None;
    for (mast, feet) in stand.masts.iter().zip(&stand.feet) {
        for foot in feet {
            // From the mast outwards: what is above the table's top is through
            // it, and the mast is so all the way up.
            for n in 0..=20 {
                let at = mast.lerp(*foot, f64::from(n) / 20.0);
                let high = if n == 0 {
                    f64::INFINITY
                } else {
                    leg_height(radius * f64::from(n) / 20.0, radius)
                };
                if (high > top) == through && contains(&table, at) {
                    let deep = to_edge(&table, at);
                    if worst.is_none_or(|w| deep > w.0) {
                        worst = Some((deep, at));
                    }
                }
            }
        }
    }
    worst.filter(|w| w.0 >= RIG_TABLE.edges[0])
}

/// Whether a mast or a leg would go through the table.
pub(super) fn through(l: &Layout, stand: &Stand) -> bool {
    worst(l, stand, true).is_some()
}

/// A stand that goes through the table.
pub(super) fn table(study: &Study<'_>, stand: &Stand) -> Option<Finding> {
    let Some((deep, at)) = worst(study.layout(), stand, true) else {
        return under(study, stand);
    };
    let on_mast = stand.masts.iter().any(|m| m.distance(at) < 1.0);
    let id = if on_mast {
        "rig-through"
    } else {
        "rig-leg-through"
    };
    let state = (State::WontWork, 1);
    let figures = [("deep", deep)];
    let mut f = finding(study, &RIG_TABLE, "rig:table", state, deep, (id, &figures));
    f.marks = vec![Mark::Ring { at, radius: 60.0 }];
    Some(f)
}

/// A leg that merely stands under the table, as a note.
fn under(study: &Study<'_>, stand: &Stand) -> Option<Finding> {
    let told = study.tells_all().then_some(study.layout())?;
    let (deep, at) = worst(told, stand, false)?;
    let state = (State::Holds, 3);
    let tell = ("rig-leg-under", &[("deep", deep)][..]);
    let mut f = finding(study, &RIG_TABLE, "rig:under", state, deep, tell);
    f.marks = vec![Mark::Ring { at, radius: 60.0 }];
    Some(f)
}

/// How near the next leg or mast is to where the photographer stands, and
/// where it is.
pub(super) fn nearest_leg(layout: &Layout, stand: &Stand) -> Option<(f64, DVec2)> {
    let stands = layout.rig.photographer?.vec();
    let mut nearest = (f64::INFINITY, stands);
    for (mast, feet) in stand.masts.iter().zip(&stand.feet) {
        for foot in feet {
            let at = on_side(stands, *mast, *foot);
            if at.distance(stands) < nearest.0 {
                nearest = (at.distance(stands), at);
            }
        }
    }
    Some(nearest)
}

/// A leg or mast where the photographer stands.
pub(super) fn path(study: &Study<'_>, stand: &Stand, settled: bool) -> Option<Finding> {
    let layout = study.layout();
    let stands = layout.rig.photographer?.vec();
    let (gap, at) = nearest_leg(layout, stand)?;
    if gap >= RIG_PATH.edges[0] {
        return None;
    }
    let state = (State::LookAgain, 3);
    let figures = [("gap", gap), ("least", RIG_PATH.edges[0])];
    let tell = ("rig-path", &figures[..]);
    let mut f = finding(study, &RIG_PATH, "rig:path", state, gap, tell);
    f.marks = vec![Mark::Gap {
        from: at,
        to: stands,
        label: study.tell(|| length(gap, layout.head.units)),
    }];
    if settled && gap > 0.0 {
        f.remedy = way::stands_elsewhere(layout);
    }
    Some(f)
}
