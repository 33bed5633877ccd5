//! Cards as they stand: their edge from above, at least as broad as can be
//! seen, with a tick on the side they face; through the lens their side as well.
use glam::DVec2;
use svg::node::element::Group;

use super::edge::{filled, inked, looped, row};
use super::frame::on_paper;
use super::ring::on_line;
use super::view::View;
use crate::drawing::Pen;
use crate::drawing::path::PathData;
use crate::drawing::tone::{Tone, WHITE, rgb};
use crate::layout::{Card, CardKind, Layout};
use crate::optics;
use crate::scene::{card_foot, card_seen};
use crate::shape::{Region, frame_outline, intersection};
use crate::words::say;

/// Least breadth of a card's edge, in weights of the pen.
const BROAD: f64 = 5.0;
/// What a black card is drawn in.
const BLACK: Tone = rgb(0x100e0d);

/// Whether any of a card is in the picture.
pub(super) fn is_shot(layout: &Layout, card: &Card, eye: optics::View) -> bool {
    let (frame, seen) = (frame_outline(&layout.frame), card_seen(card, eye));
    let area = |loop_: &[DVec2]| Region::from_polygon(loop_);
    let both = area(&frame).and_then(|frame| intersection(&frame, &area(&seen)?));
    both.is_ok_and(|both| !both.is_empty())
}

/// One card, about the table.
pub(super) fn card(layout: &Layout, card: &Card, view: &View, pen: &Pen) -> Group {
    let tone = match card.kind {
        CardKind::White => WHITE,
        CardKind::Black => BLACK,
    };
    if view.eye != optics::View::Above {
        let side = card_seen(card, view.eye);
        return Group::new().add(filled(&side, tone)).add(inked(&side, pen));
    }
    let unit = pen.weight;
    let [from, to] = card_foot(card);
    let face = card.turn.direction();
    let half = face * (unit * BROAD * 0.5);
    let edge = [from - half, from + half, to + half, to - half];
    let at = card.at.vec();
    let mut tick = PathData::default();
    let tip = at + face * (unit * 15.0);
    let (back, wing) = (tip - face * (unit * 4.5), face.perp() * (unit * 3.0));
    row(&mut tick, &[at + half * 1.6, tip]);
    row(&mut tick, &[back - wing, tip, back + wing]);
    let id = match card.kind {
        CardKind::White => "drawing-white-card",
        CardKind::Black => "drawing-black-card",
    };
    // Its name stands past the end that is farther from the picture.
    let middle = layout.frame.at.vec();
    let end = if from.distance(middle) > to.distance(middle) {
        from
    } else {
        to
    };
    let past = end + (end - at).normalize_or_zero() * (unit * 15.0);
    let outline = on_paper(looped(&edge), view, unit * 1.1).set("stroke-linejoin", "round");
    Group::new()
        .add(filled(&edge, tone))
        .add(outline)
        .add(on_paper(tick, view, unit * 1.1))
        .add(on_line(&say(id, &[]), past, view, unit))
}

#[cfg(test)]
mod tests {
    use super::super::tests::{keys, laid};
    use super::*;
    use crate::layout::{Extra, Id, Turn};

    #[test]
    fn cards_in_the_picture_are_seen_and_those_beside_it_shown_with_the_stand() {
        let mut layout = laid();
        let at = layout.frame.at;
        let card = |id, at| Card {
            id: Id(id),
            kind: CardKind::White,
            at,
            turn: Turn::ZERO,
            width: 500,
            height: 300,
            extra: Extra::new(),
        };
        let beside = at.moved(0, 5_000);
        layout.cards = vec![card(901, at), card(902, beside)];
        let lens = optics::View::of(&layout);
        for (rig, eye, both) in [
            (false, optics::View::Above, false),
            (true, optics::View::Above, true),
            (true, lens, false),
        ] {
            let view = View {
                rig,
                eye,
                ..View::default()
            };
            let all = keys(&layout, &view);
            assert!(all.contains(&"card-901".to_owned()), "{rig} {eye:?}");
            assert_eq!(all.contains(&"card-902".to_owned()), both, "{rig} {eye:?}");
        }
    }
}
