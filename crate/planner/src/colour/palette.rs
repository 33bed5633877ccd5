//! What a picture's colours come down to: few tones by area, and families.
use super::{Lab, WEAK_FROM, hyab};
use crate::order;

/// Tones nearer than this merge: where two edges merge, too.
pub const MERGED_WITHIN: f64 = WEAK_FROM;
/// Below this chroma a colour has no family. Our choice.
pub const NEUTRAL_BELOW: f64 = 10.0;

/// Which part of the circle of hues a colour lies in. The borders, 110°, 200°
/// and 330° of the CIELAB hue angle, are our choice.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Family {
    /// Reds, oranges, browns and yellows.
    Warm,
    /// Greens.
    Green,
    /// Blues and violets.
    Cool,
    /// Greys, and all that is nearly so.
    Neutral,
}

/// The family of a colour.
#[must_use]
pub fn family(lab: Lab) -> Family {
    if chroma(lab) < NEUTRAL_BELOW {
        return Family::Neutral;
    }
    let hue = libm::atan2(lab.b, lab.a).to_degrees().rem_euclid(360.0);
    if (110.0..200.0).contains(&hue) {
        Family::Green
    } else if (200.0..330.0).contains(&hue) {
        Family::Cool
    } else {
        Family::Warm
    }
}

/// Chroma C*ab.
#[must_use]
pub fn chroma(lab: Lab) -> f64 {
    (lab.a * lab.a + lab.b * lab.b).sqrt()
}

/// Tones that count as one.
#[derive(Clone, Debug, PartialEq)]
pub struct Swatch {
    /// The tone that covers most among them.
    pub lab: Lab,
    /// Their area together.
    pub area: f64,
    /// Which tones, by their places.
    pub tones: Vec<usize>,
}

/// Tones merged, the largest swatch first. Every tone in turn, the one that
/// covers most first, joins the nearest swatch whose first tone is within
/// [`MERGED_WITHIN`], or opens one: the answer does not hang on their order.
#[must_use]
pub fn palette(tones: &[(Lab, f64)]) -> Vec<Swatch> {
    let mut turns: Vec<usize> = (0..tones.len()).filter(|n| tones[*n].1 > 0.0).collect();
    order::sort(&mut turns, |a, b| {
        let ((x, one), (y, other)) = (tones[*a], tones[*b]);
        let parts = x.l.total_cmp(&y.l).then(x.a.total_cmp(&y.a));
        other.total_cmp(&one).then(parts).then(x.b.total_cmp(&y.b))
    });
    let mut out: Vec<Swatch> = Vec::new();
    for n in turns {
        let (lab, area) = tones[n];
        let off = |s: &Swatch| hyab(s.lab, lab);
        let nearest = out.iter_mut().min_by(|a, b| off(a).total_cmp(&off(b)));
        match nearest.filter(|s| off(s) < MERGED_WITHIN) {
            Some(swatch) => {
                swatch.area += area;
                swatch.tones.push(n);
            }
            None => out.push(Swatch {
                lab,
                area,
                tones: vec![n],
            }),
        }
    }
    order::sort(&mut out, |a, b| b.area.total_cmp(&a.area));
    out
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::colour::lab;
    use crate::layout::Srgb;

    fn grey(l: f64) -> Lab {
        Lab { l, a: 0.0, b: 0.0 }
    }

    #[test]
    fn tones_nearer_than_ten_are_one_swatch() {
        let one = palette(&[(grey(50.0), 3.0), (grey(59.9), 2.0)]);
        assert_eq!((one.len(), one[0].area), (1, 5.0), "9.9 apart");
        assert_eq!(one[0].lab, grey(50.0), "the one that covers most");
        let two = palette(&[(grey(50.0), 3.0), (grey(60.1), 2.0)]);
        assert_eq!(two.len(), 2, "10.1 apart");
    }

    #[test]
    fn the_order_of_tones_does_not_show() {
        let mut tones =
            [(50.0, 3.0), (58.0, 2.0), (66.0, 2.5), (20.0, 2.0)].map(|(l, a)| (grey(l), a));
        let told = |s: Vec<Swatch>| s.iter().map(|s| (s.lab.l, s.area)).collect::<Vec<_>>();
        let one = told(palette(&tones));
        tones.reverse();
        assert_eq!(one, told(palette(&tones)), "either way");
    }

    #[test]
    fn common_colours_fall_into_their_families() {
        for (hex, is) in [
            (0xc0_392b, Family::Warm),
            (0xe6_c800, Family::Warm),
            (0x8b_5a2b, Family::Warm),
            (0x4a_7035, Family::Green),
            (0x2e_4057, Family::Cool),
            (0x6a_3a8a, Family::Cool),
            (0x80_8080, Family::Neutral),
        ] {
            assert_eq!(family(lab(Srgb::hex(hex))), is, "{hex:06x}");
        }
    }
}
