//! Rig: does what holds the camera stand, reach, and leave room to walk?
//!
//! Tipping about every edge of the feet: see `crate::rig`. What is under the
//! target margin asks for another look because people work under the arm; no
//! published figure for stands is known. How far an arm sags and whether a
//! clamp slips is not worked out.
mod margin;
mod remedy;
mod room;
#[cfg(test)]
mod tests;
mod way;

use glam::DVec2;

use super::finding::Finding;
use super::study::Study;
use crate::layout::RigKind;
use crate::rig::Stand;
use crate::words::whole;

/// The findings about the rig; none before its mast has a place.
pub(super) fn read(study: &Study<'_>, settled: bool) -> Vec<Finding> {
    let Some(stand) = Stand::of(study.layout()) else {
        return Vec::new();
    };
    let mut out: Vec<Finding> = margin::read(study, &stand, settled).into_iter().collect();
    out.extend(room::reach(study, &stand, settled));
    out.extend(room::mast(study, &stand));
    out.extend(room::table(study, &stand));
    let among_legs = room::path(study, &stand, settled);
    // Who stands among the legs is told so once.
    if among_legs.is_none() {
        out.extend(way::read(study, settled));
    }
    out.extend(among_legs);
    out
}

/// Why there is nothing to say about the rig, when there is not.
pub(super) fn waits(study: &Study<'_>) -> Option<&'static str> {
    let rig = &study.layout().rig;
    if rig.kind == RigKind::Ceiling {
        return Some("waits-rig-ceiling");
    }
    match Stand::of(study.layout()) {
        None => Some("waits-rig"),
        Some(stand) => stand.tipping().is_none().then_some("waits-rig-masses"),
    }
}

/// A way on the table as an hour of the picture's clock.
fn hour(study: &Study<'_>, way: DVec2) -> String {
    let picture = study.picture();
    let seen = picture.of_table(picture.at + way) - picture.of_table(picture.at);
    let degrees = libm::atan2(seen.x, -seen.y).to_degrees();
    let hour = (degrees / 30.0).round().rem_euclid(12.0);
    whole(if hour == 0.0 { 12.0 } else { hour })
}
