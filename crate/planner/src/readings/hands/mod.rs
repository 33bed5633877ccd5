//! Hands: can this arm come from that seat, and does it look like theirs?
//!
//! An arm is two links from a shoulder behind the table's edge (`arms`); who
//! leans as far as anybody would and still falls short cannot do it. How arms
//! lie to each other, to the body and to the frame is craft: common practice
//! without a source, each threshold said to be so.
mod body;
mod frame;
mod people;
mod remedy;
#[cfg(test)]
mod tests;
mod two;

use glam::DVec2;

use super::finding::{Finding, Mark, State};
use super::rules::HANDS_REACH;
use super::study::Study;
use crate::layout::{Hand, Id, Layout, Side};
use crate::scene::{self, Arm, Joints, arm, joints, seat_of};
use crate::words::{Arg, listed, say};

pub(super) use remedy::{moved_aside, no_worse};

/// A hand with its arm, and its joints when it has a place at the table.
struct Limb<'a> {
    hand: &'a Hand,
    arm: Arm,
    joints: Option<Joints>,
}

impl Limb<'_> {
    /// Wrist, elbow and, where it is known, shoulder on the table.
    fn line(&self) -> Vec<DVec2> {
        let shoulder = self.joints.map(|j| j.shoulder.truncate());
        let own = [self.arm.tip, self.arm.wrist, self.arm.elbow];
        own.into_iter().chain(shoulder).collect()
    }

    /// The line of the arm from the shoulder to the fingertips.
    fn marks(&self) -> Vec<Mark> {
        let line = self.line();
        let back = line.windows(2).rev();
        back.map(|pair| Mark::Arrow {
            from: pair[1],
            to: pair[0],
        })
        .collect()
    }
}

/// Every arm, in the order of the hands' ids.
fn limbs(layout: &Layout) -> Vec<Limb<'_>> {
    let each = layout.hands.iter().map(|hand| Limb {
        hand,
        arm: arm(layout, hand),
        joints: joints(layout, hand),
    });
    let mut out: Vec<Limb<'_>> = each.collect();
    crate::order::sort(&mut out, |a, b| a.hand.id.cmp(&b.hand.id));
    out
}

/// The findings about hands; none without any.
pub(super) fn read(study: &Study<'_>, settled: bool) -> Vec<Finding> {
    let limbs = limbs(study.layout());
    if limbs.is_empty() {
        return Vec::new();
    }
    let mut out = Vec::new();
    for limb in &limbs {
        out.extend(body::read(study, limb, settled));
        out.extend(frame::along_an_edge(study, limb, settled));
    }
    out.extend(two::read(study, &limbs, settled));
    out.extend(people::read(study, settled));
    if study.tells_all() {
        out.extend(entries(study, &limbs));
    }
    out
}

/// Why not all can be said: a hand has no place at the table.
pub(super) fn waits(study: &Study<'_>) -> Option<&'static str> {
    let layout = study.layout();
    let placeless = |hand: &Hand| seat_of(layout, hand).is_none();
    layout.hands.iter().any(placeless).then_some("waits-seats")
}

/// How a hand is called: its side and its flag.
fn called(study: &Study<'_>, hand: &Hand) -> String {
    let id = match hand.side {
        Side::Left => "hand-left",
        Side::Right => "hand-right",
    };
    say(id, &[("flag", Arg::Text(study.name(hand.id)))])
}

/// The letter of a person.
fn letter(layout: &Layout, person: Id) -> String {
    scene::letter(layout, person).to_string()
}

/// Where the arms come in, as hours of the picture's clock: an observation.
fn entries(study: &Study<'_>, limbs: &[Limb<'_>]) -> Option<Finding> {
    let about: Vec<Id> = limbs.iter().map(|l| l.hand.id).collect();
    let key = "hands".into();
    let figure = limbs.len() as f64;
    let mut f = Finding::by(&HANDS_REACH, key, (State::Holds, 3), figure, about);
    f.marks = limbs.iter().flat_map(Limb::marks).collect();
    f.sentence = study.sentence(|| {
        let mut told: Vec<String> = Vec::new();
        for limb in limbs {
            let args = [
                ("flag", Arg::Text(study.name(limb.hand.id))),
                ("clock", Arg::Text(study.picture().hour_of(limb.arm.entry))),
            ];
            let line = say("hands-entry", &args);
            if !told.contains(&line) {
                told.push(line);
            }
        }
        say("hands-entries", &[("entries", Arg::Text(listed(&told)))])
    });
    f.working = study.tell(|| {
        let each = limbs.iter().filter_map(|l| body::line(study, l));
        let formula = [say("working-hands", &[]), say("working-hands-look", &[])];
        formula.into_iter().chain(each).collect()
    });
    Some(f)
}
