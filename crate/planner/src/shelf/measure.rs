//! How large a thing is in a photo, from something of known size that lies
//! beside it.
//!
//! The corners of a card or a sheet say how its plane is seen
//! ([`crate::shape::Homography`]), whichever way the camera leans; far from a
//! small card that is unsure. A photo from straight above needs only the scale,
//! which is surer; its sides as seen say whether it was. A coin is too small to
//! tell a lean by: its photo is taken to be from straight above.
//!
//! A tap may be off by 2 px each way, anything in between alike: its standard
//! uncertainty is 2/√3 px. Those of all taps are carried to the length by its
//! slope in each and added in squares; twice the root is told, which covers
//! about 95 in 100 (JCGM 100:2008, GUM, 4.3.7, 5.1.2 and 6.2, from memory).
//!
//! What stands `h` above the plane is seen by a lens `H` above it as if it lay
//! in the plane and were `H / (H − h)` as large about the point under the lens,
//! so that lengths at one height are too long by that, however the camera leans.
use glam::DVec2;
use serde::Serialize;

use crate::layout::Units;
use crate::shape::{Homography, MarksFault};
use crate::words::{Arg, fixed, percent, rounded, say};

/// How far a tap may be off, px.
const TAP: f64 = 2.0;
/// Two sides, or two diameters of a coin, that are seen at scales further apart
/// than this and than taps explain: it was not from straight above. Our choice.
const LEAN: f64 = 0.03;
/// What a rim is told of where nobody says how high it is and from how far it is
/// seen, mm. Our choice: a dinner plate and an arm's length.
const USUAL_RIM: f64 = 25.0;
const USUAL_FAR: f64 = 700.0;

/// What lies beside the thing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Gauge {
    /// A bank card, ISO/IEC 7810 ID-1: 85.60 by 53.98 mm.
    Card,
    /// A sheet of A4, ISO 216: 297 by 210 mm.
    A4,
    /// A sheet of US Letter: 11 by 8.5 inches.
    Letter,
    /// A coin of this diameter, mm.
    Coin(f64),
}

impl Gauge {
    /// The one of this word; a coin has a diameter, mm.
    #[must_use]
    pub fn of(word: &str, diameter: f64) -> Option<Self> {
        match word {
            "card" => Some(Self::Card),
            "a4" => Some(Self::A4),
            "letter" => Some(Self::Letter),
            "coin" if (5.0..=200.0).contains(&diameter) => Some(Self::Coin(diameter)),
            _ => None,
        }
    }

    /// The long side and the short one, mm; the diameter twice.
    #[must_use]
    pub const fn sides(self) -> [f64; 2] {
        match self {
            Self::Card => [85.60, 53.98],
            Self::A4 => [297.0, 210.0],
            Self::Letter => [279.4, 215.9],
            Self::Coin(diameter) => [diameter, diameter],
        }
    }
}

/// How high the rim of a thing is above the plane of what lies beside it, and
/// how high the lens was, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rise {
    /// The rim.
    pub rim: f64,
    /// The lens.
    pub lens: f64,
}

impl Rise {
    /// How much larger the rim is seen than it is.
    fn larger(self) -> f64 {
        self.lens / (self.lens - self.rim)
    }
}

/// A length and how far it may be off, mm.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Measured {
    /// The length.
    pub mm: f64,
    /// Twice its standard uncertainty.
    pub off: f64,
}

/// What a photo says of a thing's size.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Sized {
    /// Its width and, where that was tapped, its depth.
    pub sides: Vec<Measured>,
    /// The same in words.
    pub told: String,
    /// What it rests on, in words.
    pub cautions: Vec<String>,
}

/// What is tapped, and how it was seen.
#[derive(Clone, Copy, Debug)]
pub struct Beside {
    /// What lies beside the thing.
    pub gauge: Gauge,
    /// Four taps on it, one after another around it: the corners of a card or a
    /// sheet, a coin's edge at quarter turns.
    pub marks: [DVec2; 4],
    /// Whether the camera looked straight down.
    pub straight: bool,
}

impl Beside {
    /// Its sides as they are seen, px, the longer first.
    fn seen(&self) -> [f64; 2] {
        let [a, b, c, d] = self.marks;
        let [one, other] = match self.gauge {
            Gauge::Coin(_) => [a.distance(c), b.distance(d)],
            _ => [
                (a.distance(b) + c.distance(d)) * 0.5,
                (b.distance(c) + d.distance(a)) * 0.5,
            ],
        };
        [one.max(other), one.min(other)]
    }

    fn is_straight(&self) -> bool {
        self.straight || matches!(self.gauge, Gauge::Coin(_))
    }

    /// How far apart the scales of its two sides are.
    fn lean(&self) -> f64 {
        let ([one, other], [long, short]) = (self.seen(), self.gauge.sides());
        let apart = (one / long * short / other - 1.0).abs();
        // Each side is seen between two taps or more.
        let explained = 2.0 * TAP / one.min(other);
        if apart > explained { apart } else { 0.0 }
    }
}

/// How the plane lies in the photo: where a place of it is, mm.
fn onto(beside: &Beside) -> Result<Homography, MarksFault> {
    let [long, short] = beside.gauge.sides();
    let marks = &beside.marks;
    let [a, b, c, d] = *marks;
    // The side that is seen longer is the long one.
    let first = a.distance(b) + c.distance(d) >= b.distance(c) + d.distance(a);
    let [w, h] = if first { [long, short] } else { [short, long] };
    let corners = [[0.0, 0.0], [w, 0.0], [w, h], [0.0, h]].map(DVec2::from_array);
    let pairs = [0, 1, 2, 3].map(|n| [marks[n], corners[n]]);
    let plane = Homography::fitted(&pairs)?;
    if !beside.is_straight() {
        return Ok(plane);
    }
    let [one, other] = beside.seen();
    let there = DVec2::new(long + short, 0.0);
    let pair = [[DVec2::ZERO; 2], [DVec2::new(one + other, 0.0), there]];
    Homography::fitted(&pair)
}

/// How far apart two places of the photo are, mm.
fn length(beside: &Beside, ends: [DVec2; 2]) -> Result<f64, MarksFault> {
    let plane = onto(beside)?;
    let [a, b] = ends.map(|end| plane.at(end));
    a.zip(b)
        .map(|(a, b)| a.distance(b))
        .ok_or(MarksFault::Order)
}

/// The length between two taps and how far it may be off.
fn side(beside: &Beside, ends: [DVec2; 2]) -> Result<Measured, MarksFault> {
    let mm = length(beside, ends)?;
    let mut square = 0.0;
    for n in 0..6 {
        for way in [DVec2::X, DVec2::Y] {
            let moved = |by: f64| {
                let (mut beside, mut ends) = (*beside, ends);
                if n < 4 {
                    beside.marks[n] += way * by;
                } else {
                    ends[n - 4] += way * by;
                }
                length(&beside, ends)
            };
            // Half a pixel either way: the slope, and no more of the bend.
            let slope = moved(0.5)? - moved(-0.5)?;
            square += slope * slope;
        }
    }
    let off = 2.0 * (TAP / 3.0_f64.sqrt()) * square.sqrt();
    Ok(Measured { mm, off })
}

/// How large a thing is from what lies beside it. `taps` are the ends of its
/// width and then, where it is to be told, of its depth.
///
/// # Errors
/// When the taps say nothing, in words.
pub fn measure(
    beside: &Beside,
    taps: &[DVec2],
    rise: Option<Rise>,
    units: Units,
) -> Result<Sized, String> {
    let known = rise.filter(|r| r.rim >= 0.0 && r.lens > r.rim * 1.5 && r.lens.is_finite());
    let larger = known.map_or(1.0, Rise::larger);
    let mut sides = Vec::new();
    for ends in taps.chunks_exact(2) {
        let found = side(beside, [ends[0], ends[1]]).map_err(said)?;
        sides.push(Measured {
            mm: found.mm / larger,
            off: found.off / larger,
        });
    }
    let each = sides.iter().map(|s| {
        let (mm, places, id) = match units {
            Units::Cm => (10.0, 1, "measured-cm"),
            Units::In => (25.4, 2, "measured-in"),
        };
        let figure = |of: f64| Arg::Text(fixed(of / mm, places));
        say(id, &[("size", figure(s.mm)), ("off", figure(s.off))])
    });
    let each: Vec<String> = each.collect();
    let told = match each.as_slice() {
        [] => say("measured-plane", &[]),
        [width] => say("measured-width", &[("width", Arg::Text(width.clone()))]),
        [width, depth, ..] => {
            let args = [("width", width), ("depth", depth)];
            say(
                "measured-both",
                &args.map(|(n, t)| (n, Arg::Text(t.clone()))),
            )
        }
    };
    Ok(Sized {
        sides,
        told,
        cautions: cautions(beside, rise, known),
    })
}

/// What a size rests on.
fn cautions(beside: &Beside, asked: Option<Rise>, known: Option<Rise>) -> Vec<String> {
    let usual = Rise {
        rim: USUAL_RIM,
        lens: USUAL_FAR,
    };
    let of = known.unwrap_or(usual);
    let args = [
        ("rim", Arg::Text(rounded(of.rim / 10.0))),
        ("lens", Arg::Text(rounded(of.lens / 10.0))),
        ("larger", Arg::Text(percent(of.larger() - 1.0))),
    ];
    let id = match (asked, known) {
        (_, Some(_)) => "measured-risen",
        (Some(_), None) => "measured-not-risen",
        (None, None) => "measured-flat",
    };
    let mut all = vec![say(id, &args)];
    if matches!(beside.gauge, Gauge::Coin(_)) {
        all.push(say("measured-coin", &[]));
    }
    if beside.is_straight() && beside.lean() > LEAN {
        let by = ("by", Arg::Text(percent(beside.lean())));
        all.push(say("measured-lean", &[by]));
    }
    all
}

/// What is wrong with taps.
fn said(fault: MarksFault) -> String {
    let id = match fault {
        MarksFault::Count | MarksFault::Line => "measured-line",
        MarksFault::Order => "measured-order",
    };
    say(id, &[])
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A lens straight above, 4 px to the mm.
    fn seen(x: f64, y: f64) -> DVec2 {
        DVec2::new(300.0 + 4.0 * x, 200.0 + 4.0 * y)
    }

    fn card() -> Beside {
        let [w, h] = Gauge::Card.sides();
        Beside {
            gauge: Gauge::Card,
            marks: [seen(0.0, 0.0), seen(w, 0.0), seen(w, h), seen(0.0, h)],
            straight: false,
        }
    }

    #[test]
    fn a_plate_beside_a_card_has_its_size_from_any_corner_on() {
        let taps = [seen(120.0, 80.0), seen(387.0, 80.0)];
        let mut offs = Vec::new();
        for straight in [false, true] {
            for (first, back) in [(0, false), (1, false), (2, true), (3, true)] {
                let mut beside = Beside { straight, ..card() };
                beside.marks.rotate_left(first);
                if back {
                    beside.marks.reverse();
                }
                let found = measure(&beside, &taps, None, Units::Cm).expect("a card");
                let side = found.sides[0];
                assert!((side.mm - 267.0).abs() < 1e-6, "{side:?}");
                assert_eq!(found.cautions.len(), 1, "{:?}", found.cautions);
                offs.push(side.off);
            }
        }
        assert!(offs[7] * 3.0 < offs[0], "straight down is surer: {offs:?}");
    }

    #[test]
    fn a_rim_that_stands_up_is_brought_down() {
        let rise = Rise {
            rim: 50.0,
            lens: 1_000.0,
        };
        let taps = [seen(0.0, 0.0), seen(200.0, 0.0)];
        let found = measure(&card(), &taps, Some(rise), Units::Cm).expect("a card");
        assert!((found.sides[0].mm - 190.0).abs() < 1e-6, "{found:?}");
        assert!(found.cautions[0].contains('5'), "{:?}", found.cautions);
        let odd = Rise { rim: 900.0, ..rise };
        let found = measure(&card(), &taps, Some(odd), Units::Cm).expect("a card");
        assert!((found.sides[0].mm - 200.0).abs() < 1e-6, "left as it was");
    }

    #[test]
    fn a_coin_is_taken_from_straight_above_and_says_when_it_was_not() {
        let gauge = Gauge::of("coin", 24.0).expect("a coin");
        let round = |squash: f64| Beside {
            gauge,
            marks: [[12.0, 0.0], [0.0, 12.0], [-12.0, 0.0], [0.0, -12.0]]
                .map(|[x, y]| seen(x, y * squash)),
            straight: false,
        };
        let taps = [[30.0, 0.0], [130.0, 0.0], [80.0, -20.0], [80.0, 20.0]];
        let taps = taps.map(|[x, y]| seen(x, y));
        let found = measure(&round(1.0), &taps, None, Units::In).expect("a coin");
        assert!((found.sides[0].mm - 100.0).abs() < 1e-6, "{found:?}");
        assert!((found.sides[1].mm - 40.0).abs() < 1e-6, "{found:?}");
        assert_eq!(found.cautions.len(), 2);
        let leaning = measure(&round(0.8), &taps, None, Units::Cm).expect("a coin");
        assert_eq!(leaning.cautions.len(), 3, "{:?}", leaning.cautions);
        assert_eq!(Gauge::of("coin", 0.0), None);
        assert_eq!(Gauge::of("plate", 24.0), None);
    }

    #[test]
    fn taps_that_say_nothing_are_told() {
        let line = [0.0, 1.0, 2.0, 3.0].map(|x| seen(x * 30.0, 0.0));
        let mut crossed = card().marks;
        crossed.swap(1, 2);
        for marks in [line, crossed, [seen(0.0, 0.0); 4]] {
            let taps = [seen(0.0, 0.0), seen(50.0, 0.0)];
            let beside = Beside { marks, ..card() };
            assert!(measure(&beside, &taps, None, Units::Cm).is_err());
        }
    }
}
