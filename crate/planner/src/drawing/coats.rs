//! Paints what `figure::made` describes: a coat on every piece of a layer.

use core::f64::consts::TAU;

use glam::{DVec2, dvec2};

use super::sketch::{Rows, Sketch};
use super::tone::{INK, Tone, deeper, lighter, rgb};
use crate::figure::blob::{pebble, round, sunflower};
use crate::figure::made::{Coat, Cut, Hue, pair};
use crate::figure::outline::{arc, bearing, inset, placed, polar, table};
use crate::figure::spot::Spot;

fn tone(own: &[Tone], hue: Hue) -> Tone {
    let (mut tone, steps) = match hue {
        Hue::Own(i, steps) => (own.get(usize::from(i)).copied().unwrap_or(INK), steps),
        Hue::Set(code) => (rgb(code), 0),
    };
    for _ in 0..steps.unsigned_abs() {
        tone = if steps > 0 {
            lighter(tone)
        } else {
            deeper(tone)
        };
    }
    tone
}

/// What a coat is painted on.
pub(super) struct Layer<'a> {
    pub(super) spots: &'a [Spot],
    /// The outline of each piece.
    pub(super) pieces: &'a Rows,
    /// The tones of the thing.
    pub(super) own: &'a [Tone],
    /// How a piece is cut: lines reach the sides of what has corners.
    pub(super) cut: Cut,
}

/// Paints one coat on every piece of a layer.
pub(super) fn paint(s: &mut Sketch, coat: &Coat, layer: &Layer<'_>) {
    let Layer {
        spots,
        pieces,
        own,
        cut,
    } = *layer;
    let reach = |off: f64| match cut {
        Cut::Sheet => 0.94,
        _ => reach(off),
    };
    let mut rows = Rows::new();
    match *coat {
        Coat::Body(hue, ink) => s.fills(pieces, tone(own, hue), f64::from(ink), 0.0),
        Coat::Inset(share, hue, up) => {
            for (spot, piece) in spots.iter().zip(pieces) {
                let lift = s.lit * spot.half.min_element() * f64::from(up) / 100.0;
                rows.push(inset(
                    piece,
                    spot.at,
                    DVec2::splat(f64::from(share) / 100.0),
                    lift,
                ));
            }
            s.fills(&rows, tone(own, hue), 0.0, 0.0);
        }
        Coat::Core(at, half, hue, ink) => {
            let (at, half) = (pair(at) / 100.0, pair(half) / 100.0);
            for spot in spots {
                let at = spot.point(at.x, at.y);
                let half = spot.half * half;
                rows.push(round(&mut s.dice, at, half, spot.turn, 0.04, 14, 2.0));
            }
            s.fills(&rows, tone(own, hue), f64::from(ink), 0.0);
        }
        Coat::Seeds(count, ring, hue, k) => {
            let ring = pair(ring);
            let mut dots = Vec::new();
            for spot in spots {
                for _ in 0..s.some(usize::from(count)) {
                    let p = polar(s.dice.angle()) * s.dice.between(ring.x, ring.y) / 100.0;
                    dots.push(spot.point(p.x, p.y));
                }
            }
            s.dots(&dots, tone(own, hue), f64::from(k), 0.0);
        }
        Coat::Spokes(count, ring, hue, k) => {
            for spot in spots {
                let start = s.dice.angle();
                for i in 0..count {
                    let ray = polar(start + TAU * f64::from(i) / f64::from(count)) / 100.0;
                    let [a, b] = ring.map(|r| ray * f64::from(r));
                    rows.push(vec![spot.point(a.x, a.y), spot.point(b.x, b.y)]);
                }
            }
            s.lines(&rows, tone(own, hue), f64::from(k), 0.0);
        }
        Coat::Bars(count, hue, k) => {
            for spot in spots {
                for x in steps(count) {
                    let h = reach(x);
                    let straight = matches!(cut, Cut::Sheet);
                    let bow = if straight {
                        0.0
                    } else {
                        0.06 + s.dice.about(0.03)
                    };
                    rows.push(spot.row(&[[x - bow, -h], [x + bow, 0.0], [x - bow, h]]));
                }
            }
            s.lines(&rows, tone(own, hue), f64::from(k), 0.0);
        }
        Coat::Along(count, hue, k) => {
            for spot in spots {
                for y in steps(count) {
                    let w = reach(y);
                    let bow = s.dice.about(0.05);
                    rows.push(spot.row(&[[-w, y], [0.0, y + bow], [w, y]]));
                }
            }
            s.lines(&rows, tone(own, hue), f64::from(k), 0.0);
        }
        Coat::Patches(count, size, hue, opacity) => {
            let size = f64::from(size) / 100.0;
            for spot in spots {
                for _ in 0..count {
                    let p = s.dice.disc() * (0.86 - size);
                    let r = spot.half.min_element() * size;
                    let half = dvec2(r * s.dice.between(0.9, 1.5), r * s.dice.between(0.6, 1.0));
                    let turn = s.dice.angle();
                    rows.push(pebble(&mut s.dice, spot.point(p.x, p.y), half, turn));
                }
            }
            s.fills(&rows, tone(own, hue), 0.0, f64::from(opacity) / 100.0);
        }
        Coat::Rings(shares, hue, k) => {
            for (spot, piece) in spots.iter().zip(pieces) {
                for share in shares {
                    let ring = inset(
                        piece,
                        spot.at,
                        DVec2::splat(f64::from(*share) / 100.0),
                        DVec2::ZERO,
                    );
                    rows.push([&ring[..], &ring[..1]].concat());
                }
            }
            s.lines(&rows, tone(own, hue), f64::from(k), 0.0);
        }
        Coat::Light(out, hue, k) => {
            for spot in spots {
                // An arc towards the window, on the piece's own ellipse.
                let mid = bearing(spot.own(s.lit));
                let row = arc(
                    DVec2::ZERO,
                    spot.half * f64::from(out) / 100.0,
                    mid - 0.45,
                    mid + 0.35,
                    6,
                );
                rows.push(placed(&row, spot.at, spot.turn, DVec2::ONE));
            }
            s.lines(&rows, tone(own, hue), f64::from(k), 0.9);
        }
        Coat::Row(points, hue, k) => {
            for spot in spots {
                rows.push(spot.put(&hundredths(points)));
            }
            s.lines(&rows, tone(own, hue), f64::from(k), 0.0);
        }
        Coat::Part(points, hue, ink) => {
            for spot in spots {
                rows.push(spot.put(&hundredths(points)));
            }
            s.fills(&rows, tone(own, hue), f64::from(ink), 0.0);
        }
        Coat::Strands(count, dark, light) => {
            for spot in spots {
                for _ in 0..count {
                    let at = s.dice.disc() * 0.5;
                    let r = dvec2(s.dice.between(0.14, 0.5), s.dice.between(0.1, 0.4));
                    let from = s.dice.angle();
                    let row = arc(at, r, from, from + s.dice.between(1.6, 3.4), 9);
                    rows.push(spot.put(&row));
                }
            }
            s.strands(&rows, (tone(own, dark), 2.4), (tone(own, light), 1.5));
        }
        Coat::Studs(count, size, hue, ink) => {
            for spot in spots {
                let r = spot.half.min_element() * f64::from(size) / 100.0;
                let room = spot.half - r * 2.1;
                for at in sunflower(&mut s.dice, room, usize::from(count), 0.12) {
                    let at = spot.at + polar(spot.turn).rotate(at);
                    rows.push(pebble(&mut s.dice, at, DVec2::splat(r), spot.turn));
                }
            }
            s.fills(&rows, tone(own, hue), f64::from(ink), 0.0);
        }
    }
}

/// `count` places from one end of a piece to the other, clear of both.
fn steps(count: u8) -> impl Iterator<Item = f64> {
    (0..count).map(move |i| (2.0 * f64::from(i) + 1.0) / f64::from(count) * 0.94 - 0.94)
}

/// How far a line `off` from the middle reaches inside a round piece.
fn reach(off: f64) -> f64 {
    (1.0 - off * off).max(0.0).sqrt() * 0.82
}

fn hundredths(points: &[[i8; 2]]) -> Vec<DVec2> {
    table(points, DVec2::ONE)
}
