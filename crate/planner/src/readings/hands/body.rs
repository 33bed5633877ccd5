//! One arm and the body it belongs to: how far it reaches, how far it bends,
//! and across what it comes.
use super::super::finding::{Finding, State};
use super::super::rules::{HANDS_ACROSS, HANDS_NEAR, HANDS_REACH, Rule};
use super::super::study::Study;
use super::{Limb, called, letter, remedy};
use crate::layout::{Layout, Side};
use crate::scene::{Joints, joints};
use crate::words::{Arg, fixed, length, say};

/// What of an arm is judged by one of the rules, in its unit.
pub(super) type Judge = fn(&Joints, Side) -> f64;

pub(super) fn short(joints: &Joints, _: Side) -> f64 {
    joints.short
}

pub(super) fn close(joints: &Joints, _: Side) -> f64 {
    joints.close
}

/// How far from straight ahead the arm comes across the body, degrees.
pub(super) fn across(joints: &Joints, side: Side) -> f64 {
    let way = (joints.wrist - joints.shoulder).truncate();
    let right = joints.inward.perp();
    let aside = match side {
        Side::Right => -way.dot(right),
        Side::Left => way.dot(right),
    };
    libm::atan2(aside, way.dot(joints.inward)).to_degrees()
}

/// What is judged, from the dearest on.
const JUDGES: [(&Rule, Judge, &str); 3] = [
    (&HANDS_REACH, short, "hands-short"),
    (&HANDS_NEAR, close, "hands-near"),
    (&HANDS_ACROSS, across, "hands-across"),
];

/// The dearest finding about one arm; none without a place at the table.
pub(super) fn read(study: &Study<'_>, limb: &Limb<'_>, settled: bool) -> Option<Finding> {
    let found = limb.joints?;
    let hand = limb.hand;
    let at_fault =
        |(rule, judge, _): &&(&Rule, Judge, &str)| judge(&found, hand.side) >= rule.edges[0];
    let (rule, judge, words) = *JUDGES.iter().find(at_fault)?;
    let figure = judge(&found, hand.side);
    let wont = figure >= rule.edges[1];
    let state = if wont {
        (State::WontWork, 1)
    } else {
        (State::LookAgain, 3)
    };
    let key = format!("hands:{}:{}", hand.id.0, rule.name.replace(' ', "-"));
    let mut f = Finding::by(rule, key, state, figure, vec![hand.id]);
    f.marks = limb.marks();
    let units = study.layout().head.units;
    f.sentence = study.sentence(|| {
        let told = match rule.unit {
            super::super::rules::Unit::Mm => length(figure, units),
            _ => fixed(figure, 0),
        };
        let args = [
            ("hand", Arg::Text(called(study, hand))),
            ("person", Arg::Text(letter(study.layout(), hand.person))),
            ("figure", Arg::Text(told)),
        ];
        say(words, &args)
    });
    f.working = study.tell(|| {
        let formula = vec![say(rule.working, &[])];
        formula.into_iter().chain(line(study, limb)).collect()
    });
    if settled {
        f.remedy = remedy::of_body(study, hand, rule, judge);
    }
    Some(f)
}

/// The figure a layout gives for a hand; none when it no longer has a place.
pub(super) fn figure(layout: &Layout, id: crate::layout::Id, judge: Judge) -> Option<f64> {
    let hand = layout.hands.iter().find(|h| h.id == id)?;
    Some(judge(&joints(layout, hand)?, hand.side))
}

/// Whether nothing at all is wrong with how a hand reaches.
pub(super) fn sound(layout: &Layout, id: crate::layout::Id) -> bool {
    JUDGES.iter().all(|(rule, judge, _)| {
        figure(layout, id, *judge).is_some_and(|figure| figure < rule.edges[0])
    })
}

/// An arm in figures.
pub(super) fn line(study: &Study<'_>, limb: &Limb<'_>) -> Option<String> {
    let joints = limb.joints?;
    let units = study.layout().head.units;
    let away = joints.shoulder.distance(joints.wrist) + joints.body.hand;
    let args = [
        ("hand", Arg::Text(called(study, limb.hand))),
        ("arm", Arg::Text(length(joints.body.arm(), units))),
        ("away", Arg::Text(length(away, units))),
        ("lean", Arg::Text(fixed(joints.lean, 0))),
        ("flexion", Arg::Text(fixed(joints.flexion, 0))),
    ];
    Some(say("working-hands-arm", &args))
}
