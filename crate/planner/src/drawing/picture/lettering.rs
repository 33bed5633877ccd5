//! Words on the drawing: bare on paper, cased over the picture, on tape.
use glam::{DVec2, dvec2};
use svg::node::element::{Group, Text};

use super::edge::filled;
use crate::drawing::INK;
use crate::drawing::path::{short, tenth};
use crate::drawing::tone::{Tone, hex, rgb};
use crate::figure::outline::polar;

/// What light lines and words are lined with below, so that they show on any
/// ground.
pub(super) const UNDER: Tone = rgb(0x1a1613);
/// Masking tape.
const TAPE: Tone = rgb(0xf0e2b6);
/// Breadth of a letter of the serif in shares of its size, rounded up so that
/// no name touches the end of its tape.
const LETTER: f64 = 0.52;

/// `text` from `at` on, `size` mm high, in the serif the reader has.
pub(super) fn lettering(text: &str, at: DVec2, size: f64) -> Text {
    Text::new(text)
        .set("x", tenth(at.x))
        .set("y", tenth(at.y))
        .set("font-size", tenth(size))
        .set(
            "font-family",
            "Palatino, 'Palatino Linotype', P052, 'Noto Serif', Georgia, serif",
        )
}

/// As [`lettering`], with its middle at `at`.
pub(super) fn centred(text: &str, at: DVec2, size: f64) -> Text {
    lettering(text, at, size).set("text-anchor", "middle")
}

/// As [`centred`], light on a dark casing.
pub(super) fn cased(text: &str, at: DVec2, size: f64, tone: Tone) -> Text {
    centred(text, at, size)
        .set("fill", hex(tone))
        .set("stroke", hex(UNDER))
        .set("stroke-width", short(size * 0.24))
        .set("stroke-linejoin", "round")
        .set("paint-order", "stroke")
}

/// Half the extents of the tape that holds `text`, mm.
pub(super) fn tape_half(text: &str, size: f64) -> DVec2 {
    let letters = text.chars().count() as f64;
    dvec2(letters * LETTER * 0.5 + 0.85, 0.8) * size
}

/// A strip of tape torn at both ends, laid by hand, with `text` on it;
/// `nth` of those on the drawing.
pub(super) fn tape(text: &str, at: DVec2, size: f64, nth: usize) -> Group {
    let half = tape_half(text, size);
    // Tears and tilt repeat after five strips; neighbours differ.
    let tear = |i: usize| [0.1, -0.14, 0.06, -0.1, 0.16][(i * 2 + nth) % 5] * size;
    let mut edge = Vec::with_capacity(12);
    for side in [1.0, -1.0] {
        for i in 0..6 {
            let y = half.y * (0.4 * i as f64 - 1.0);
            let torn = if i % 5 == 0 { 0.0 } else { tear(i) };
            edge.push(dvec2(half.x + torn, y) * side);
        }
    }
    let degrees = [-1.2, 0.9, -0.6, 1.3, 0.4][nth % 5];
    let turn = polar(f64::to_radians(degrees));
    let edge: Vec<DVec2> = edge.iter().map(|&p| at + turn.rotate(p)).collect();
    let name = centred(text, at + dvec2(0.0, size * 0.34), size).set("fill", hex(INK));
    let mut rotate = String::from("rotate(");
    for (i, n) in [degrees, at.x, at.y].into_iter().enumerate() {
        rotate.push_str(if i > 0 { " " } else { "" });
        rotate.push_str(&tenth(n));
    }
    rotate.push(')');
    Group::new()
        .add(filled(&edge, TAPE).set("fill-opacity", short(0.96)))
        .add(name.set("transform", rotate))
}
