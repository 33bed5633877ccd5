//! Who comes from where: the places along the table's edge with the letters of
//! those who sit or stand there, and where there is room for one more.
use glam::DVec2;
use svg::node::element::{Circle, Group};

use super::lettering::centred;
use super::view::{Keyed, View};
use crate::commands::{BEHIND, Spot, spots};
use crate::drawing::path::{short, tenth};
use crate::layout::{Id, Layout};
use crate::scene::{letter, seat_of};

/// Half the breadth of a place and the height of its letters, pixels.
const HALF: f64 = 13.0;
const LETTERS: f64 = 14.0;

/// The places as groups of their own, so that one can be dragged.
pub(super) fn places(layout: &Layout, view: &View) -> Vec<Keyed> {
    let spots = spots(layout);
    let each = spots.iter().enumerate().map(|(n, spot)| Keyed {
        key: match spot.seat {
            Some(seat) => super::named("place", seat.0),
            None => super::named("room", n as u16),
        },
        group: place(layout, spot, view),
        at: Some(spot.at - spot.inward * BEHIND),
    });
    each.collect()
}

fn place(layout: &Layout, spot: &Spot, view: &View) -> Group {
    let px = view.per_pixel;
    let round = Circle::new()
        .set("r", tenth(HALF * px))
        .set("fill", view.paper)
        .set("stroke", view.ink)
        .set("stroke-width", short(1.2 * px));
    let (round, words) = match spot.seat {
        Some(seat) => (round, sitters(layout, seat)),
        None => {
            let dashes = [4.0, 3.0].map(|mark| short(mark * px)).join(" ");
            (round.set("stroke-dasharray", dashes), "+".into())
        }
    };
    let at = DVec2::Y * (LETTERS * 0.34 * px);
    let written = centred(&words, at, LETTERS * px).set("fill", view.ink);
    Group::new().add(round).add(written)
}

/// The letters of all whose hands come from a place or who sit there.
fn sitters(layout: &Layout, seat: Id) -> String {
    let comes = |person: Id| {
        let mut hands = layout.hands.iter().filter(|h| h.person == person);
        hands.any(|h| seat_of(layout, h).is_some_and(|s| s.id == seat))
    };
    let here = |p: &&crate::layout::Person| p.seat == Some(seat) || comes(p.id);
    let people = layout.people.iter().filter(here);
    people.map(|p| letter(layout, p.id)).collect()
}
