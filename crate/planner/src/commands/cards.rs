//! Cards that bounce or block the light.
use glam::DVec2;

use super::{Act, Refused, fresh_id};
use crate::layout::{Card, CardKind, Extra, Layout, MAX_CARDS, Point};
use crate::shape::frame_outline;
use crate::words::say;

/// Width and height of a usual card, mm (A1 board; common practice, no
/// source), and its least distance from the picture.
const CARD: [i32; 2] = [840, 600];
const BESIDE: f64 = 40.0;

/// Stands a card beside the picture: a white one on the side away from the
/// light, a black one on the side towards it.
///
/// # Errors
/// When there are too many cards.
pub fn add_card(layout: &Layout, kind: CardKind) -> Result<Act, Refused> {
    let mut after = layout.clone();
    stand_card(&mut after, kind, layout.frame.at.vec())?;
    let id = match kind {
        CardKind::White => "done-white-card",
        CardKind::Black => "done-black-card",
    };
    Act::between(say(id, &[]), layout, &after)
}

/// Stands a card beside the picture, level with a place in it.
///
/// # Errors
/// When there are too many cards.
pub(crate) fn stand_card(layout: &mut Layout, kind: CardKind, near: DVec2) -> Result<(), Refused> {
    if layout.cards.len() >= MAX_CARDS {
        return Err(Refused::Limit("cards".into()));
    }
    let light = layout.light.clock.direction();
    let way = match kind {
        CardKind::White => -light,
        CardKind::Black => light,
    };
    // Past the farthest corner of the frame that way, so that all of the card
    // is out of the picture.
    let corners = frame_outline(&layout.frame);
    let past = corners.iter().map(|c| (*c - near).dot(way));
    let at = near + way * (past.fold(0.0, f64::max) + BESIDE);
    let id = fresh_id(layout);
    layout.cards.push(Card {
        id,
        kind,
        at: Point::nearest(at),
        turn: layout.light.clock,
        width: CARD[0],
        height: CARD[1],
        extra: Extra::new(),
    });
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::layout::{LayoutId, Turn};
    use crate::shape::contains;

    #[test]
    fn cards_stand_out_of_the_picture_on_their_own_sides() {
        let mut layout = Layout::empty(LayoutId(1));
        let middle = layout.frame.at.vec();
        for degrees in [0.0, 30.0, 135.0, 270.0] {
            layout.light.clock = Turn::from_degrees(degrees);
            for (kind, side) in [(CardKind::White, -1.0), (CardKind::Black, 1.0)] {
                let mut after = layout.clone();
                let act = add_card(&layout, kind).expect("there is room");
                act.edit.apply_checked(&mut after).expect("fits");
                let card = &after.cards[0];
                let out = layout.light.clock.direction();
                assert!((card.at.vec() - middle).dot(out) * side > 0.0, "{degrees}");
                let half = out.perp() * (f64::from(card.width) * 0.5);
                let frame = frame_outline(&layout.frame);
                for end in [card.at.vec() - half, card.at.vec() + half] {
                    assert!(!contains(&frame, end), "{degrees}: in the picture");
                }
            }
        }
    }

    #[test]
    fn there_are_only_so_many_cards() {
        let mut layout = Layout::empty(LayoutId(1));
        for _ in 0..MAX_CARDS {
            let act = add_card(&layout, CardKind::Black).expect("room");
            act.edit.apply_checked(&mut layout).expect("fits");
        }
        assert!(add_card(&layout, CardKind::White).is_err(), "full");
    }
}
