//! Tipping about each edge of the feet.
//!
//! A body stands while its centre of mass is over the polygon of its feet
//! (Jones and Childers, *Contemporary College Physics*, ch. 9). About an edge
//! whose outward normal is `n`, a mass at `p` has the lever `e = (q − p)·n`,
//! `q` being on the edge: what has `e > 0` holds, what has `e < 0` tips. The
//! margin is Σ m·e of the first over Σ m·(−e) of the second; *g* cancels. It
//! tips on a floor that slopes by atan(e/z), with `e` and `z` of the centre of
//! mass.
use glam::{DVec2, DVec3};

use crate::shape::hull;

/// Margins are not told apart beyond this: what nothing tips has it too.
pub const MOST: f64 = 100.0;

/// A mass of the rig.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Mass {
    /// Grams.
    pub grams: f64,
    /// Its centre: over the table plane's axes, and above the floor, mm.
    pub at: DVec3,
}

/// An edge of the polygon of the feet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Edge {
    /// One foot.
    pub from: DVec2,
    /// The next.
    pub to: DVec2,
    /// The way it tips over this edge, of length 1.
    pub outward: DVec2,
    /// Σ m·e of what holds, g·mm.
    pub holding: f64,
    /// Σ m·(−e) of what tips, g·mm.
    pub tipping: f64,
    /// From the centre of mass to the edge, mm; negative outside.
    pub lever: f64,
}

impl Edge {
    /// Lever of a place about this edge, mm; negative outside.
    #[must_use]
    pub fn lever_of(&self, p: DVec2) -> f64 {
        (self.from - p).dot(self.outward)
    }

    /// What holds over what tips, at most [`MOST`].
    #[must_use]
    pub fn margin(&self) -> f64 {
        if self.tipping > 0.0 {
            (self.holding / self.tipping).min(MOST)
        } else if self.holding > 0.0 {
            MOST
        } else {
            // All of it stands on the edge itself.
            1.0
        }
    }
}

/// How a rig stands.
#[derive(Clone, Debug, PartialEq)]
pub struct Tipping {
    /// Every edge of the feet.
    pub edges: Vec<Edge>,
    /// The combined centre of mass, mm, as [`Mass::at`].
    pub centre: DVec3,
}

impl Tipping {
    /// The edge it tips over first.
    #[must_use]
    pub fn weakest(&self) -> &Edge {
        let key = |e: &Edge| (e.margin(), e.lever);
        let worse =
            |a: (f64, f64), b: (f64, f64)| a.0.total_cmp(&b.0).then(a.1.total_cmp(&b.1)).is_lt();
        let mut found = &self.edges[0];
        for edge in &self.edges[1..] {
            if worse(key(edge), key(found)) {
                found = edge;
            }
        }
        found
    }

    /// The least margin about any edge.
    #[must_use]
    pub fn margin(&self) -> f64 {
        self.weakest().margin()
    }

    /// Slope of the floor on which it tips, degrees; negative when it tips on
    /// a level one.
    #[must_use]
    pub fn tilt(&self) -> f64 {
        let least = self.edges.iter().map(|e| e.lever);
        let least = least.fold(f64::INFINITY, f64::min);
        libm::atan2(least, self.centre.z.max(1e-9)).to_degrees()
    }
}

/// How masses stand on feet. `None` when the feet span no area or nothing
/// weighs anything: then there is nothing to say.
#[must_use]
pub fn tipping(feet: &[DVec2], masses: &[Mass]) -> Option<Tipping> {
    let total: f64 = masses.iter().map(|m| m.grams).sum();
    let ring = hull(feet);
    if ring.len() < 3 || total <= 0.0 || !total.is_finite() {
        return None;
    }
    let middle = ring.iter().sum::<DVec2>() / ring.len() as f64;
    let centre = masses.iter().map(|m| m.at * m.grams).sum::<DVec3>() / total;
    let edges = (0..ring.len()).map(|n| {
        let (from, to) = (ring[n], ring[(n + 1) % ring.len()]);
        let aside = (to - from).perp().normalize_or_zero();
        let outward = if (from - middle).dot(aside) < 0.0 {
            -aside
        } else {
            aside
        };
        let mut edge = Edge {
            from,
            to,
            outward,
            holding: 0.0,
            tipping: 0.0,
            lever: 0.0,
        };
        edge.lever = edge.lever_of(centre.truncate());
        for mass in masses {
            let moment = mass.grams * edge.lever_of(mass.at.truncate());
            if moment > 0.0 {
                edge.holding += moment;
            } else {
                edge.tipping -= moment;
            }
        }
        edge
    });
    Some(Tipping {
        edges: edges.collect(),
        centre,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::shape::contains;
    use glam::{dvec2, dvec3};
    use proptest::prelude::*;

    fn place() -> impl Strategy<Value = DVec2> {
        (-1000_i32..1000, -1000_i32..1000).prop_map(|(x, y)| dvec2(f64::from(x), f64::from(y)))
    }

    proptest! {
        #[test]
        fn a_margin_over_one_about_every_edge_is_a_centre_of_mass_inside_the_feet(
            feet in prop::collection::vec(place(), 3..7),
            loads in prop::collection::vec((place(), 0_i32..9_000), 1..6),
        ) {
            let masses: Vec<Mass> = loads
                .iter()
                .map(|(p, g)| Mass { grams: f64::from(*g), at: p.extend(500.0) })
                .collect();
            let Some(found) = tipping(&feet, &masses) else {
                return Ok(());
            };
            let least = found.edges.iter().map(|e| e.lever).fold(f64::INFINITY, f64::min);
            // On the very edge rounding decides.
            prop_assume!(least.abs() > 1e-6);
            let inside = contains(&hull(&feet), found.centre.truncate());
            let stands = found.edges.iter().all(|e| e.margin() > 1.0);
            prop_assert_eq!(inside, stands, "{:?}", found);
            prop_assert_eq!(found.margin() > 1.0, found.tilt() > 0.0, "tilt agrees");
        }
    }

    #[test]
    fn a_lone_mass_in_the_middle_stands_as_well_as_can_be_told() {
        let feet = [dvec2(0.0, 0.0), dvec2(300.0, 0.0), dvec2(150.0, 260.0)];
        let mass = |x, y, grams| Mass {
            grams,
            at: dvec3(x, y, 100.0),
        };
        let found = tipping(&feet, &[mass(150.0, 87.0, 1000.0)]).expect("it weighs");
        assert_eq!(found.margin(), MOST, "nothing tips it");
        let edge = tipping(&feet, &[mass(150.0, 0.0, 1000.0)]).expect("it weighs");
        assert_eq!(edge.margin(), 1.0, "on the edge it is level");
        assert!(tipping(&feet, &[mass(0.0, 0.0, 0.0)]).is_none(), "no mass");
        assert!(
            tipping(&feet[..2], &[mass(0.0, 0.0, 5.0)]).is_none(),
            "no area"
        );
        assert!(tipping(&feet, &[]).is_none(), "nothing at all");
    }
}
