//! Two links from a shoulder to a wrist.
//!
//! The elbow lies where two spheres meet, on a circle about the line from
//! shoulder to wrist: by the law of cosines its distance along that line is
//! (u² − f² + d²) ÷ 2d, for links u and f and a distance d. Which place on
//! the circle is a matter of ease: the elbow hangs a little outwards of
//! straight below, and above the table where it is over it.
use glam::{DVec2, DVec3};

/// An elbow bends no farther than this from straight, degrees (from memory;
/// textbooks of anatomy give 140 to 150).
pub const MAX_FLEXION: f64 = 145.0;
/// How far outwards of straight below an elbow hangs when nothing is in its
/// way, degrees. Our choice.
const OUTWARDS: f64 = 20.0;
/// Steps in which the elbow is swung out and up until it clears the table.
const STEP: f64 = 5.0;

/// An arm that reaches.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bent {
    /// Where the elbow is, mm, z above the table top.
    pub elbow: DVec3,
    /// How far the elbow is bent from straight, degrees.
    pub flexion: f64,
}

/// Whether two links reach.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Reach {
    /// They do.
    Bent(Bent),
    /// They are too short by so many mm.
    TooFar(f64),
    /// The place is nearer than the elbow bends, by so many mm.
    TooNear(f64),
}

/// The arm from `shoulder` to `wrist` with an upper arm and forearm so long,
/// mm. `outward` is the way from the middle of the body to this shoulder;
/// where `over` says a place is over the table, the elbow's middle stays
/// `clear` above it.
#[must_use]
pub fn bend(
    shoulder: DVec3,
    wrist: DVec3,
    [upper, fore]: [f64; 2],
    outward: DVec2,
    over: &dyn Fn(DVec2) -> bool,
    clear: f64,
) -> Reach {
    let line = wrist - shoulder;
    let away = line.length();
    if away > upper + fore {
        return Reach::TooFar(away - upper - fore);
    }
    let nearest = third_side(upper, fore, MAX_FLEXION);
    if away < nearest {
        return Reach::TooNear(nearest - away);
    }
    let along = line / away;
    let foot = (upper * upper - fore * fore + away * away) / (2.0 * away);
    let radius = (upper * upper - foot * foot).max(0.0).sqrt();
    let middle = shoulder + along * foot;
    let down = square_to(-DVec3::Z, along, outward.extend(0.0));
    let out = square_to(outward.extend(0.0), along, DVec3::Z);
    let swung = |degrees: f64| {
        let (sin, cos) = libm::sincos(degrees.to_radians());
        let side = (out - down * out.dot(down)).normalize_or(along.cross(down));
        middle + (down * cos + side * sin) * radius
    };
    let free = |elbow: &DVec3| elbow.z >= clear || !over(elbow.truncate());
    let steps = ((180.0 - OUTWARDS) / STEP) as i32;
    let tries = (0..=steps).map(|n| swung(OUTWARDS + f64::from(n) * STEP));
    let elbow = tries.into_iter().find(free).unwrap_or_else(|| swung(180.0));
    let opened =
        ((upper * upper + fore * fore - away * away) / (2.0 * upper * fore)).clamp(-1.0, 1.0);
    Reach::Bent(Bent {
        elbow,
        flexion: 180.0 - libm::acos(opened).to_degrees(),
    })
}

/// The third side of a triangle of two links bent so far from straight.
fn third_side(upper: f64, fore: f64, flexion: f64) -> f64 {
    let cos = libm::cos((180.0 - flexion).to_radians());
    (upper * upper + fore * fore - 2.0 * upper * fore * cos).sqrt()
}

/// `v` made square to `along`, of length 1; `otherwise` where it lies along it.
fn square_to(v: DVec3, along: DVec3, otherwise: DVec3) -> DVec3 {
    let square = |v: DVec3| (v - along * v.dot(along)).try_normalize();
    square(v)
        .or_else(|| square(otherwise))
        .unwrap_or_else(|| along.any_orthonormal_vector())
}

#[cfg(test)]
mod tests {
    use super::*;

    const LINKS: [f64; 2] = [330.0, 265.0];

    fn nowhere(_: DVec2) -> bool {
        false
    }

    fn reach(wrist: DVec3) -> Reach {
        let shoulder = DVec3::new(0.0, 0.0, 280.0);
        bend(shoulder, wrist, LINKS, DVec2::X, &nowhere, 40.0)
    }

    #[test]
    fn both_links_keep_their_length() {
        let wrist = DVec3::new(80.0, -430.0, 90.0);
        let Reach::Bent(arm) = reach(wrist) else {
            panic!("{:?}", reach(wrist));
        };
        let upper = arm.elbow.distance(DVec3::new(0.0, 0.0, 280.0));
        assert!((upper - LINKS[0]).abs() < 1e-9, "{upper}");
        assert!((arm.elbow.distance(wrist) - LINKS[1]).abs() < 1e-9, "fore");
        assert!(arm.elbow.z < 280.0, "it hangs: {}", arm.elbow);
        assert!(arm.elbow.x > 0.0, "outwards: {}", arm.elbow);
    }

    #[test]
    fn too_far_and_too_near_are_told_by_how_much() {
        match reach(DVec3::new(0.0, -700.0, 280.0)) {
            Reach::TooFar(by) => assert!((by - 105.0).abs() < 1e-9, "{by}"),
            other => panic!("{other:?}"),
        }
        match reach(DVec3::new(0.0, -60.0, 280.0)) {
            Reach::TooNear(by) => assert!(by > 100.0, "{by}"),
            other => panic!("{other:?}"),
        }
    }

    #[test]
    fn over_the_table_the_elbow_stays_clear_of_it() {
        let shoulder = DVec3::new(0.0, 0.0, 150.0);
        let wrist = DVec3::new(0.0, -420.0, 60.0);
        let table = |p: DVec2| p.y < -50.0;
        let Reach::Bent(arm) = bend(shoulder, wrist, LINKS, DVec2::X, &table, 46.0) else {
            panic!("within reach");
        };
        assert!(arm.elbow.z >= 46.0, "{}", arm.elbow);
    }

    #[test]
    fn the_elbow_rises_no_further_than_it_must() {
        let shoulder = DVec3::new(0.0, 0.0, 150.0);
        let wrist = DVec3::new(0.0, -420.0, 60.0);
        for clear in [100.0, 150.0, 200.0, 250.0, 280.0] {
            let Reach::Bent(arm) = bend(shoulder, wrist, LINKS, DVec2::X, &|_| true, clear) else {
                panic!("within reach");
            };
            // One step swings it by less than its own arc.
            let arc = 203.0 * STEP.to_radians();
            let over = arm.elbow.z - clear;
            assert!((0.0..arc).contains(&over), "{clear}: {}", arm.elbow);
        }
        let Reach::Bent(arm) = bend(shoulder, wrist, LINKS, DVec2::X, &|_| true, 400.0) else {
            panic!("within reach");
        };
        assert!(arm.elbow.z > 290.0, "as high as it goes: {}", arm.elbow);
    }

    #[test]
    fn degenerate_arms_give_numbers() {
        let straight = reach(DVec3::new(0.0, -LINKS[0] - LINKS[1], 280.0));
        assert!(
            matches!(straight, Reach::Bent(b) if b.elbow.is_finite()),
            "{straight:?}"
        );
        let at = DVec3::new(0.0, 0.0, 280.0);
        assert!(matches!(reach(at), Reach::TooNear(_)), "on the shoulder");
        let below = DVec3::new(0.0, 0.0, -200.0);
        assert!(
            matches!(reach(below), Reach::Bent(b) if b.elbow.is_finite()),
            "straight down"
        );
    }
}
