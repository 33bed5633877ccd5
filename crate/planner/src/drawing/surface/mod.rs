//! Tables and boards: each reads as what it is made of from a few strokes.

use core::f64::consts::TAU;

use glam::{DVec2, dvec2};
use svg::node::element::Group;

use super::pen::Pen;
use super::sketch::{Rows, Sketch};
use super::tone::{PENCIL, Tone, deeper, lighter, luma, mixed, rgb};
use crate::catalogue::Grain;
use crate::figure::blob::{pebble, round, ruled, sunflower};
use crate::figure::dice::{Dice, INSIDE};
use crate::figure::form::Frame;
use crate::figure::outline::{arc, bounds};
use crate::shape::{Region, intersection};

mod stone;

/// Breadth of a plank, mm.
const PLANK: f64 = 238.0;
/// Side of a tile, mm.
const TILE: f64 = 200.0;

/// A top being drawn.
struct Top<'a> {
    s: Sketch<'a>,
    /// Its outline as drawn and as an area.
    edge: &'a [DVec2],
    whole: Region,
    low: DVec2,
    size: DVec2,
    tone: Tone,
}

/// A table or board in table coordinates.
#[must_use]
pub fn surface(grain: Grain, edge: &[DVec2], tone: Tone, pen: &Pen) -> Group {
    let (low, high) = bounds(edge);
    let mut top = Top {
        s: Sketch::new(pen, Dice::new(0, INSIDE), Frame::turned(0.0)),
        edge,
        whole: Region::from_polygon(edge).unwrap_or_default(),
        low,
        size: (high - low).max(DVec2::ONE),
        tone,
    };
    top.s.polygons(&[edge.to_vec()], tone, 0.0, 0.0);
    match grain {
        Grain::Planks => top.planks(true),
        Grain::Painted => top.painted(),
        Grain::Board => top.board(),
        Grain::Veined => top.veined(),
        Grain::Riven => top.riven(),
        Grain::Woven => top.woven(),
        Grain::Brushed => top.brushed(),
        Grain::Tiled => top.tiled(),
        Grain::Flecked => top.flecked(),
        Grain::Plain => {}
    }
    let mut outline = edge.to_vec();
    outline.extend(edge.first());
    top.s.straight(&[outline], super::tone::INK, 1.3);
    top.s.done()
}

impl Top<'_> {
    /// Where the top begins and ends at height `y`.
    fn span(&self, y: f64) -> (f64, f64) {
        let (mut from, mut to) = (f64::INFINITY, f64::NEG_INFINITY);
        let mut a = self.edge.last().copied().unwrap_or_default();
        for &b in self.edge {
            if (a.y <= y) != (b.y <= y) {
                let x = a.x + (b.x - a.x) * (y - a.y) / (b.y - a.y);
                (from, to) = (from.min(x), to.max(x));
            }
            a = b;
        }
        (from, to)
    }

    /// A box in shares of the extents, cut to the top.
    fn piece(&self, from: DVec2, to: DVec2) -> Rows {
        let box_ = [from, dvec2(to.x, from.y), to, dvec2(from.x, to.y)];
        let cut = Region::from_polygon(&box_).and_then(|b| intersection(&self.whole, &b));
        cut.map_or_else(|_| Rows::new(), |r| r.rings().to_vec())
    }

    /// Broken lines along the grain: rows of strokes `long` mm, `bow` uneven.
    fn strokes(&mut self, rows: usize, long: [f64; 2], gap: [f64; 2], bow: f64) -> [Rows; 2] {
        let mut piles = [Rows::new(), Rows::new()];
        let rows = self.s.some(rows);
        for i in 0..rows {
            let share = (i as f64 + self.s.dice.unit()) / rows as f64;
            let y = self.low.y + self.size.y * share;
            let (from, to) = self.span(y);
            let mut x = from + self.s.dice.between(0.0, gap[1]);
            while x < to - 20.0 {
                let end = (x + self.s.dice.between(long[0], long[1])).min(to - 4.0);
                let slip = self.s.dice.about(bow * 1.4);
                let a = dvec2(x, y.clamp(self.low.y + 3.0, self.low.y + self.size.y - 3.0));
                let b = dvec2(end, (a.y + slip).min(self.low.y + self.size.y - 3.0));
                let lift = self.s.dice.about(bow);
                let mid = (a + b) / 2.0 + dvec2(0.0, lift);
                let pile = usize::from(self.s.dice.chance(0.4));
                piles[pile].push(vec![a, mid, b]);
                x = end + self.s.dice.between(gap[0], gap[1]);
            }
        }
        piles
    }

    /// Rounds one inside the other where a branch was.
    fn knots(&mut self, count: usize) {
        let mut rings = Rows::new();
        for _ in 0..count {
            let y = self.low.y + self.size.y * self.s.dice.between(0.06, 0.94);
            let (from, to) = self.span(y);
            let at = dvec2(self.s.dice.between(from + 40.0, to - 40.0), y);
            let turn = self.s.dice.about(0.12);
            for k in [1.0, 0.62, 0.3] {
                rings.push(round(
                    &mut self.s.dice,
                    at,
                    dvec2(26.0, 10.0) * k,
                    turn,
                    0.06,
                    12,
                    2.0,
                ));
            }
            for ring in &mut rings {
                if ring.first() != ring.last() {
                    ring.push(ring[0]);
                }
            }
        }
        self.s.lines(&rings, deeper(deeper(self.tone)), 0.8, 0.7);
    }

    /// Planks side by side, each of a tone of its own, and the joints between.
    fn planks(&mut self, grain: bool) {
        let count = (self.size.y / PLANK).round().max(1.0);
        let step = self.size.y / count;
        let end = self.low + self.size;
        for i in 0..count as usize {
            let y = self.low.y + step * i as f64;
            let pieces = self.piece(dvec2(self.low.x, y), dvec2(end.x, y + step));
            let by = [0.08, -0.06, 0.1, 0.0][i % 4];
            let tone = if by < 0.0 {
                mixed(self.tone, rgb(0x120c0a), -by)
            } else {
                mixed(self.tone, rgb(0xfff4de), by * 0.6)
            };
            self.s.polygons(&pieces, tone, 0.0, 0.0);
        }
        if grain {
            let [dark, pale] = self.strokes(34, [160.0, 620.0], [60.0, 500.0], 3.0);
            self.s.lines(&dark, deeper(deeper(self.tone)), 0.75, 0.6);
            self.s.lines(&pale, lighter(self.tone), 0.6, 0.6);
            self.knots(4);
        }
        let (mut joints, mut lips) = (Rows::new(), Rows::new());
        for i in 1..count as usize {
            let y = self.low.y + step * i as f64;
            let (from, to) = self.span(y);
            let line = ruled(&mut self.s.dice, dvec2(from, y), dvec2(to, y), 16, 1.2);
            lips.push(line.iter().map(|p| *p + dvec2(0.0, 3.4)).collect());
            joints.push(line);
        }
        let deep = mixed(self.tone, rgb(0x0c0806), 0.62);
        self.s.lines(&joints, deep, 1.4, 0.9);
        self.s.lines(&lips, lighter(self.tone), 0.5, 0.6);
    }

    /// Paint over planks: few brush marks, worn through along the joints.
    fn painted(&mut self) {
        self.planks(false);
        let [dark, pale] = self.strokes(20, [120.0, 380.0], [160.0, 620.0], 1.2);
        self.s.lines(&dark, deeper(self.tone), 0.5, 0.4);
        self.s.lines(&pale, lighter(self.tone), 1.6, 0.4);
        let count = (self.size.y / PLANK).round().max(1.0);
        let mut worn = Rows::new();
        for _ in 0..self.s.some(26) {
            let joint = (self.s.dice.unit() * count).floor();
            let y = self.low.y + self.size.y * joint / count + 5.0;
            let (from, to) = self.span(y);
            if to - from > 200.0 {
                let at = dvec2(self.s.dice.between(from + 60.0, to - 60.0), y);
                let half = dvec2(self.s.dice.between(10.0, 46.0), 3.4);
                worn.push(pebble(&mut self.s.dice, at, half, 0.0));
            }
        }
        self.s.fills(&worn, rgb(0xb8_9468), 0.0, 0.8);
    }

    /// One plain board: quiet grain, no joints.
    fn board(&mut self) {
        let [dark, pale] = self.strokes(22, [200.0, 700.0], [120.0, 600.0], 4.0);
        self.s.lines(&dark, deeper(self.tone), 0.7, 0.7);
        self.s.lines(&pale, lighter(self.tone), 0.7, 0.7);
        self.knots(1);
    }

    /// `count` places spread over the top, none past `share` of the way to its
    /// edge.
    fn places(&mut self, count: usize, share: f64) -> Vec<DVec2> {
        let mid = self.low + self.size / 2.0;
        let count = self.s.some(count);
        let spread = sunflower(&mut self.s.dice, self.size / 2.0 * share, count, 0.5);
        spread.iter().map(|p| mid + *p).collect()
    }

    /// A cloth over the table: threads both ways and the pressed squares.
    fn woven(&mut self) {
        let [dark, pale] = self.strokes(40, [16.0, 80.0], [60.0, 260.0], 1.0);
        let across = |rows: &[Vec<DVec2>]| -> Rows {
            rows.iter()
                .step_by(2)
                .map(|r| r[0] + dvec2(37.0, 11.0))
                .map(|at| vec![at, at + dvec2(0.8, 24.0)])
                .filter(|r| r[1].y < self.low.y + self.size.y - 4.0)
                .collect()
        };
        let (down, up) = (across(&dark), across(&pale));
        let deep = mixed(deeper(self.tone), rgb(0x8e_7a52), 0.25);
        self.s.lines(&dark, deep, 0.45, 0.7);
        self.s.lines(&down, deep, 0.45, 0.7);
        self.s.lines(&pale, lighter(self.tone), 0.7, 0.9);
        self.s.lines(&up, lighter(self.tone), 0.7, 0.9);
        let (mut folds, mut lit) = (Rows::new(), Rows::new());
        let end = self.low + self.size;
        for share in [0.25, 0.5, 0.75] {
            let x = self.low.x + self.size.x * share;
            let y = self.low.y + self.size.y * share;
            let (from, to) = self.span(y);
            folds.push(ruled(
                &mut self.s.dice,
                dvec2(from, y),
                dvec2(to, y),
                10,
                1.6,
            ));
            if (share - 0.5).abs() < 0.1 {
                let (a, b) = (dvec2(x, self.low.y), dvec2(x, end.y));
                folds.push(ruled(&mut self.s.dice, a, b, 10, 1.6));
            }
        }
        for fold in &folds {
            lit.push(fold.iter().map(|p| *p - dvec2(4.0, 4.0)).collect());
        }
        self.s.lines(&folds, deep, 1.0, 0.8);
        self.s.lines(&lit, lighter(lighter(self.tone)), 1.0, 0.9);
    }

    /// Brushed metal: long fine lines, a broad sheen towards the window.
    fn brushed(&mut self) {
        let [dark, pale] = self.strokes(56, [300.0, 900.0], [20.0, 200.0], 0.4);
        self.s.lines(&dark, deeper(self.tone), 0.4, 0.5);
        self.s.lines(&pale, lighter(self.tone), 0.5, 0.6);
        let mid = self.low + self.size / 2.0;
        for (at, wide, opacity) in [(0.26, 0.1, 0.2), (0.3, 0.03, 0.3), (-0.34, 0.07, 0.12)] {
            let y = mid.y + self.s.lit.y.signum() * self.size.y * at;
            let half = self.size.y * wide;
            let band = self.piece(
                dvec2(self.low.x, y - half),
                dvec2(self.low.x + self.size.x, y + half),
            );
            self.s
                .polygons(&band, lighter(lighter(self.tone)), 0.0, opacity);
        }
        let mut rings = Rows::new();
        for at in self.places(2, 0.7) {
            let half = DVec2::splat(self.s.dice.between(34.0, 52.0));
            let from = self.s.dice.angle();
            rings.push(arc(at, half, from, from + TAU * 0.8, 16));
        }
        self.s.lines(&rings, deeper(self.tone), 0.5, 0.4);
    }

    /// Tiles of two or three tones, a pale joint between them.
    fn tiled(&mut self) {
        let columns = (self.size.x / TILE).round().max(1.0);
        let rows = (self.size.y / TILE).round().max(1.0);
        let step = self.size / dvec2(columns, rows);
        let mut piles = [Rows::new(), Rows::new(), Rows::new()];
        for row in 0..rows as usize {
            for column in 0..columns as usize {
                let from = self.low + step * dvec2(column as f64, row as f64);
                let pile = (self.s.dice.unit() * 2.99) as usize;
                piles[pile].extend(self.piece(from + 3.0, from + step - 3.0));
            }
        }
        let grout = if luma(self.tone) > 0.5 {
            deeper(self.tone)
        } else {
            mixed(self.tone, PENCIL, 0.45)
        };
        self.s.polygons(&[self.edge.to_vec()], grout, 0.0, 0.0);
        let tones = [
            self.tone,
            deeper(self.tone),
            mixed(self.tone, rgb(0xffd9b0), 0.16),
        ];
        for (pile, tone) in piles
            .iter()
            .zip([tones[0], mixed(tones[0], tones[1], 0.4), tones[2]])
        {
            self.s.polygons(pile, tone, 0.35, 0.0);
        }
        let specks = self.places(90, 0.97);
        self.s.dots(&specks, deeper(deeper(self.tone)), 0.8, 0.4);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalogue::surfaces;
    use crate::shape::{CHORD_ERROR, disc};

    #[test]
    fn every_surface_draws_on_a_board_and_on_a_round_table_and_stays_on_it() {
        let pen = Pen {
            weight: 2.4,
            fall: dvec2(0.866, 0.5),
            fine: true,
        };
        let board = [(0.0, 0.0), (2000.0, 0.0), (2000.0, 950.0), (0.0, 950.0)];
        let board = board.map(DVec2::from).to_vec();
        let round = disc(DVec2::splat(600.0), 600.0, CHORD_ERROR);
        let mut seen = std::collections::BTreeSet::new();
        for entry in surfaces() {
            for edge in [&board, &round] {
                let group = surface(entry.grain, edge, entry.colour.0, &pen);
                let text = group.to_string();
                assert!(!text.contains("NaN"), "{}", entry.id);
                assert!(group.get_children().len() <= 20, "{} is light", entry.id);
                seen.insert(text);
            }
        }
        assert!(seen.len() > surfaces().len(), "surfaces differ");
    }
}
