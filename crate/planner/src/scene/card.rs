//! Cards as they stand: foot and sides, from above and through the lens.
use glam::DVec2;

use crate::layout::{Card, Id, Layout};
use crate::optics::View;
use crate::shape::{contains, hull, to_edge};

/// A card's thickness, mm.
pub(super) const CARD: f64 = 5.0;

/// The foot of a card, from end to end.
#[must_use]
pub fn card_foot(card: &Card) -> [DVec2; 2] {
    let side = card.turn.direction().perp() * (f64::from(card.width) * 0.5);
    [card.at.vec() - side, card.at.vec() + side]
}

/// What a card covers of the table from above, at its own thickness.
#[must_use]
pub fn card_outline(card: &Card) -> Vec<DVec2> {
    let [from, to] = card_foot(card);
    let half = card.turn.direction() * (CARD * 0.5);
    vec![from - half, from + half, to + half, to - half]
}

/// What a view shows of a card: from above its top edge, through the lens the
/// side it turns to it as well.
#[must_use]
pub fn card_seen(card: &Card, eye: View) -> Vec<DVec2> {
    let outline = card_outline(card);
    let at = |z: f64| outline.iter().map(move |p| eye.project(*p, z));
    hull(
        &at(0.0)
            .chain(at(f64::from(card.height)))
            .collect::<Vec<_>>(),
    )
}

/// The card a finger takes that reaches so far, mm: the nearest.
#[must_use]
pub fn card_at(layout: &Layout, place: DVec2, reach: f64) -> Option<Id> {
    let away = |card: &Card| {
        let outline = card_outline(card);
        if contains(&outline, place) {
            0.0
        } else {
            to_edge(&outline, place)
        }
    };
    let near = layout.cards.iter().map(|card| (away(card), card.id));
    let near = near.filter(|(far, _)| *far <= reach);
    near.min_by(|a, b| a.0.total_cmp(&b.0)).map(|(_, id)| id)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::layout::{CardKind, Extra, LayoutId, Point, Turn};
    use crate::shape::Bounds;

    fn card(id: u16, x: i32) -> Card {
        Card {
            id: Id(id),
            kind: CardKind::White,
            at: Point::new(x, 300),
            turn: Turn::from_degrees(90.0),
            width: 600,
            height: 400,
            extra: Extra::new(),
        }
    }

    #[test]
    fn a_card_is_as_wide_as_it_is_and_leans_outwards_through_the_lens() {
        let one = card(1, 900);
        let above = Bounds::around(&card_seen(&one, View::Above)).expect("an outline");
        assert!((above.size() - DVec2::new(CARD, 600.0)).length() < 1e-9);
        // 400 mm high under a lens 2 m up: its top is seen a quarter farther
        // out than its foot.
        let lens = View::Lens {
            under: DVec2::new(500.0, 300.0),
            height: 2_000.0,
        };
        let seen = Bounds::around(&card_seen(&one, lens)).expect("an outline");
        assert!((seen.min.x - (900.0 - CARD * 0.5)).abs() < 1e-9, "its foot");
        let top = 500.0 + (400.0 + CARD * 0.5) * 1.25;
        assert!((seen.max.x - top).abs() < 1e-9, "its top: {seen:?}");
    }

    #[test]
    fn the_nearest_card_in_reach_is_taken() {
        let mut layout = Layout::empty(LayoutId(1));
        layout.cards = vec![card(1, 900), card(2, 940)];
        let take = |x: f64, reach| card_at(&layout, DVec2::new(x, 500.0), reach);
        assert_eq!(take(910.0, 22.0), Some(Id(1)));
        assert_eq!(take(935.0, 22.0), Some(Id(2)));
        assert_eq!(take(1_000.0, 22.0), None, "out of reach");
        let past = card_at(&layout, DVec2::new(900.0, 640.0), 22.0);
        assert_eq!(past, None, "past its end");
    }
}
