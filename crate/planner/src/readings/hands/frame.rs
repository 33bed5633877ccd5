//! An arm that runs along the edge of the picture looks cut off.
use glam::DVec2;

use super::super::finding::{Finding, State};
use super::super::picture::Picture;
use super::super::rules::HANDS_EDGE;
use super::super::study::Study;
use super::{Limb, called, remedy};
use crate::layout::{Id, Layout};
use crate::scene::arm;
use crate::words::{Arg, fixed, say};

/// At what angle an arm crosses the picture's edge, degrees from along it;
/// none for an arm that lies wholly within or without.
pub(super) fn angle(picture: &Picture, line: &[DVec2]) -> Option<f64> {
    let line: Vec<DVec2> = line.iter().map(|p| picture.of_table(*p)).collect();
    let size = picture.size;
    let inside = |p: DVec2| p.cmpge(DVec2::ZERO).all() && p.cmple(size).all();
    let pair = line.windows(2).find(|p| inside(p[0]) && !inside(p[1]))?;
    let (from, way) = (pair[0], pair[1] - pair[0]);
    // The side it leaves at is that whose line it meets first.
    let far = |room: f64, speed: f64| {
        if speed > 0.0 {
            room / speed
        } else {
            f64::INFINITY
        }
    };
    let upright = far(size.x - from.x, way.x).min(far(from.x, -way.x));
    let level = far(size.y - from.y, way.y).min(far(from.y, -way.y));
    let (through, beside) = if upright < level {
        (way.x.abs(), way.y.abs())
    } else {
        (way.y.abs(), way.x.abs())
    };
    Some(libm::atan2(through, beside).to_degrees())
}

/// The finding about an arm that enters too nearly along an edge.
pub(super) fn along_an_edge(study: &Study<'_>, limb: &Limb<'_>, settled: bool) -> Option<Finding> {
    let figure = angle(&study.picture(), &limb.line())?;
    if figure >= HANDS_EDGE.edges[0] {
        return None;
    }
    let key = format!("hands:{}:edge", limb.hand.id.0);
    let about = vec![limb.hand.id];
    let mut f = Finding::by(&HANDS_EDGE, key, (State::LookAgain, 3), figure, about);
    f.marks = limb.marks();
    f.sentence = study.sentence(|| {
        let args = [
            ("hand", Arg::Text(called(study, limb.hand))),
            ("figure", Arg::Text(fixed(figure, 0))),
        ];
        say("hands-edge", &args)
    });
    f.working = study.tell(|| vec![say("working-hands-edge", &[])]);
    if settled {
        f.remedy = remedy::elsewhere(study, limb.hand, figure, &HANDS_EDGE, &|then, id| {
            entering(then, id)
        });
    }
    Some(f)
}

fn entering(then: &Study<'_>, id: Id) -> Option<f64> {
    let layout: &Layout = then.layout();
    let hand = layout.hands.iter().find(|h| h.id == id)?;
    let limb = Limb {
        hand,
        arm: arm(layout, hand),
        joints: crate::scene::joints(layout, hand),
    };
    angle(&then.picture(), &limb.line())
}
