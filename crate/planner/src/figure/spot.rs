//! Where the pieces of a food lie inside its extents.

use core::f64::consts::{FRAC_PI_2, PI};

use glam::{DVec2, dvec2};

use super::blob::sunflower;
use super::dice::Dice;
use super::outline::{placed, polar};

/// One piece: a place, a turn and half its true length and breadth, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Spot {
    pub(crate) at: DVec2,
    pub(crate) turn: f64,
    pub(crate) half: DVec2,
}

impl Spot {
    /// A piece that fills `half`, its length along the longer side.
    pub(crate) fn whole(half: DVec2) -> Spot {
        let upright = half.y > half.x;
        Spot {
            at: DVec2::ZERO,
            turn: if upright { FRAC_PI_2 } else { 0.0 },
            half: if upright { dvec2(half.y, half.x) } else { half },
        }
    }

    /// A shape designed in the square from -1 to 1, at this piece's place.
    pub(crate) fn put(&self, unit: &[DVec2]) -> Vec<DVec2> {
        placed(unit, self.at, self.turn, self.half)
    }

    /// One point of the unit square, at this piece's place.
    pub(crate) fn point(&self, x: f64, y: f64) -> DVec2 {
        self.at + polar(self.turn).rotate(dvec2(x, y) * self.half)
    }

    /// A row of points of the unit square, at this piece's place.
    pub(crate) fn row(&self, points: &[[f64; 2]]) -> Vec<DVec2> {
        points.iter().map(|&[x, y]| self.point(x, y)).collect()
    }

    /// A direction on the page in this piece's own frame.
    pub(crate) fn own(&self, v: DVec2) -> DVec2 {
        polar(-self.turn).rotate(v)
    }
}

/// True where the extents hold one piece of about `piece` and no more.
pub(crate) fn holds_one(half: DVec2, piece: DVec2) -> bool {
    let (long, short) = (half.max_element(), half.min_element());
    long <= piece.x * 1.5 && short <= piece.y * 1.6
}

/// Pieces side by side across the longer way of the extents, in as many ranks
/// as their length asks for, shorter towards the ends of an oval.
pub(crate) fn ranks(dice: &mut Dice, half: DVec2, piece: DVec2) -> Vec<Spot> {
    if holds_one(half, piece) {
        return vec![Spot::whole(half)];
    }
    let upright = half.y > half.x;
    let (long, short) = (half.max_element(), half.min_element());
    let ranks = (short / (piece.x * 1.25)).round().max(1.0);
    // Where a rank is deeper than a piece is long, the piece grows whole.
    let grow = (short / ranks * 0.96 / piece.x).max(0.5);
    let files = (long / (piece.y * grow * 1.12)).round().clamp(1.0, 12.0);
    let cell = dvec2(long / files, short / ranks);
    let mut spots = Vec::new();
    for rank in 0..ranks as i32 {
        for file in 0..files as i32 {
            let x = -long + cell.x * (2.0 * f64::from(file) + 1.0);
            let y = -short + cell.y * (2.0 * f64::from(rank) + 1.0);
            let r = (x * x / (long * long) + y * y / (short * short)).min(1.0);
            // Pieces near the end of an oval are shorter, and nearer its axis.
            let fit = (1.0 - 0.42 * r * r) * dice.between(0.93, 1.0);
            let flip = if (file + rank) % 2 == 0 { 0.0 } else { PI };
            let at = dvec2(x, y) * (1.0 - 0.12 * r);
            spots.push(Spot {
                at: if upright { dvec2(at.y, at.x) } else { at },
                turn: flip + if upright { 0.0 } else { FRAC_PI_2 } + dice.about(0.13),
                half: dvec2(cell.y * 0.96, (cell.x * 0.84).min(piece.y * grow * 1.15)) * fit,
            });
        }
    }
    spots
}

/// Pieces strewn over an oval, thick in the middle, as many as the size asks
/// for and at most `most`.
pub(crate) fn strewn(dice: &mut Dice, half: DVec2, piece: DVec2, most: usize) -> Vec<Spot> {
    let room = (half - piece.max_element()).max(half * 0.2);
    let wanted = half.x * half.y / (piece.x * piece.y * 9.0);
    let count = (wanted.round() as usize).clamp(5, most);
    (0..count)
        .map(|_| Spot {
            at: dice.cloud() / 2.0 * room,
            turn: dice.angle(),
            half: piece.min(half) * dice.between(0.75, 1.15),
        })
        .collect()
}

/// Pieces heaped in an oval, overlapping a little. `cover` is the share of
/// the extents they would cover laid side by side; past `most` pieces they
/// are drawn larger instead.
pub(crate) fn heap(
    dice: &mut Dice,
    half: DVec2,
    piece: DVec2,
    cover: f64,
    most: usize,
) -> Vec<Spot> {
    if holds_one(half, piece) {
        return vec![Spot::whole(half)];
    }
    let wanted = half.x * half.y * cover / (piece.x * piece.y);
    let count = (wanted.round() as usize).clamp(3, most.max(3));
    let grow = (wanted / count as f64).sqrt();
    let size = (piece * grow).min(DVec2::splat(half.min_element() * 0.62));
    let room = (half - size.min_element() * 0.95).max(half * 0.2);
    sunflower(dice, room, count, 0.34)
        .into_iter()
        .map(|at| Spot {
            at,
            turn: dice.angle(),
            half: size * dice.between(0.88, 1.08),
        })
        .collect()
}
