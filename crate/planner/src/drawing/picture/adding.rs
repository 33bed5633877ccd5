//! What each exposure adds, told apart by line, hatching and number: its arms
//! and things in the exposure's own dashes and hatched its own way, its shadow
//! in dots without hatching.
use glam::DVec2;
use svg::node::element::Group;

use super::edge::{hatched_along, lined, looped};
use super::lettering::{UNDER, cased};
use super::marks::WORDS;
use crate::drawing::PENCIL;
use crate::drawing::path::{PathData, short};
use crate::figure::outline::middle;
use crate::readings::Mark;
use crate::shape::{area, rotation};

/// Dashes of the exposures' lines, in weights of the pen, and the slant of
/// their hatching, degrees: after the last it begins again, the number goes on.
const LINES: [([f64; 2], f64); 5] = [
    ([400.0, 0.1], -45.0),
    ([9.0, 4.0], 45.0),
    ([3.0, 3.5], 0.0),
    ([18.0, 4.0], 90.0),
    ([6.0, 8.0], -20.0),
];
/// Dots of a shadow's line, in the same.
const DOTS: [f64; 2] = [0.1, 5.0];
/// Between the lines of the hatching, in the same.
const STEP: f64 = 13.0;

/// What the exposures add, shadows lowest.
pub(super) fn added(mut group: Group, marks: &[Mark], unit: f64) -> Group {
    for shade in [true, false] {
        for own in 0..=u8::MAX {
            let mut rings: Vec<&[DVec2]> = Vec::new();
            let mut number = "";
            for mark in marks {
                if let Mark::Added {
                    outline,
                    exposure,
                    shadow,
                    label,
                } = mark
                    && (*exposure, *shadow) == (own, shade)
                {
                    rings.push(outline);
                    if !label.is_empty() {
                        number = label;
                    }
                }
            }
            if !rings.is_empty() {
                group = one(group, &rings, (own, shade), number, unit);
            }
        }
    }
    group
}

fn one(
    group: Group,
    rings: &[&[DVec2]],
    (own, shade): (u8, bool),
    number: &str,
    unit: f64,
) -> Group {
    let (dashes, slant) = LINES[usize::from(own) % LINES.len()];
    let mut edge = PathData::default();
    for ring in rings {
        edge.append(looped(ring));
    }
    let dash = if shade { DOTS } else { dashes }.map(|long| long * unit);
    let under = lined(edge.clone(), UNDER, unit * 3.0, None);
    let width = if shade { 1.8 } else { 1.3 };
    let mut group = group.add(under.set("stroke-opacity", short(0.5)));
    if !shade {
        let mut hatch = PathData::default();
        hatched_along(&mut hatch, rings, STEP * unit, rotation(slant));
        let hatch = lined(hatch, PENCIL, unit * 0.7, None);
        group = group.add(hatch.set("stroke-opacity", short(0.8)));
    }
    group = group.add(lined(edge, PENCIL, unit * width, Some(dash)));
    let largest = rings.iter().max_by(|a, b| area(a).total_cmp(&area(b)));
    match largest.filter(|_| !number.is_empty()) {
        Some(ring) => {
            let size = WORDS * 1.4 * unit;
            let at = middle(ring) + DVec2::Y * (size * 0.34);
            group.add(cased(number, at, size, PENCIL))
        }
        None => group,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ring(at: f64, exposure: u8, shadow: bool) -> Mark {
        let corners = [(0.0, 0.0), (90.0, 0.0), (90.0, 60.0), (0.0, 60.0)];
        Mark::Added {
            outline: corners.map(|(x, y)| DVec2::new(x + at, y)).to_vec(),
            exposure,
            shadow,
            label: if shadow { String::new() } else { "7".into() },
        }
    }

    fn drawn(marks: &[Mark]) -> String {
        added(Group::new(), marks, 1.0).to_string()
    }

    #[test]
    fn exposures_are_told_apart_without_colour() {
        let each: Vec<String> = (0..5).map(|n| drawn(&[ring(0.0, n, false)])).collect();
        for (n, one) in each.iter().enumerate() {
            assert!(one.contains('7'), "numbered: {one}");
            assert!(!each[..n].contains(one), "drawn otherwise than before");
        }
        let shadow = drawn(&[ring(0.0, 0, true)]);
        assert_ne!(shadow, each[0], "a shadow is told from an arm");
        assert!(shadow.len() < each[0].len(), "and not hatched");
        assert!(drawn(&[]).len() < 8, "nothing of nothing");
    }

    #[test]
    fn holes_are_not_hatched() {
        let outer = ring(0.0, 0, false);
        let solid = drawn(std::slice::from_ref(&outer));
        let hole = Mark::Added {
            outline: [(20.0, 10.0), (20.0, 50.0), (70.0, 50.0), (70.0, 10.0)]
                .map(|(x, y)| DVec2::new(x, y))
                .to_vec(),
            exposure: 0,
            shadow: false,
            label: String::new(),
        };
        let strokes = |text: &str| text.matches('M').count();
        let holed = drawn(&[outer, hole]);
        assert!(strokes(&holed) > strokes(&solid) + 2, "lines break at it");
    }
}
