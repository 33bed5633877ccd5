//! The rig of a layout in space: mast, feet, arm and masses. Lengths in mm;
//! heights are above the floor.
use glam::DVec2;

use super::tipping::{Mass, Tipping, tipping};
use crate::layout::{Hung, Layout, RigKind};
use crate::optics::{Lens, View};
use crate::shape::rotation;

/// The arm runs so far above the sensor: head and clamp. Our choice.
pub const ABOVE_CAMERA: f64 = 100.0;
/// Where the legs meet. Our choice for a lamp stand.
pub const HUB_HEIGHT: f64 = 300.0;
/// Where on a leg a bag hangs, from the mast. Our choice.
pub const BAG_ALONG: f64 = 300.0;
/// Height of a stand's own centre of mass as a share of the mast in use: its
/// legs are the heavy part. Our choice.
const LOW: f64 = 1.0 / 3.0;

/// A stand or a pair of them, with what hangs on it.
#[derive(Clone, Debug, PartialEq)]
pub struct Stand {
    /// Each mast.
    pub masts: Vec<DVec2>,
    /// Ends of the legs of each mast, the lead leg's first.
    pub feet: Vec<[DVec2; 3]>,
    /// The way from the first mast to the lens, of length 1; upwards in the
    /// table's picture when the mast is right under it.
    pub along: DVec2,
    /// Level distance from the mast to the lens.
    pub reach: f64,
    /// The arm's two ends, that at the camera first.
    pub arm: [DVec2; 2],
    /// The arm above the floor.
    pub arm_height: f64,
    /// The sensor above the floor.
    pub camera_height: f64,
    /// Everything that weighs.
    pub masses: Vec<Mass>,
}

impl Stand {
    /// The rig of a layout; `None` when it hangs from the ceiling, nobody said
    /// where the mast stands, or the lens cannot show the frame.
    #[must_use]
    pub fn of(layout: &Layout) -> Option<Self> {
        let rig = &layout.rig;
        let first = rig.at?.vec();
        let View::Lens { under, height } = View::of(layout) else {
            return None;
        };
        if rig.kind == RigKind::Ceiling {
            return None;
        }
        let sensor = Lens::of(&layout.camera).sensor_height(height)?;
        let camera_height = f64::from(layout.table.height) + sensor;
        let arm_height = camera_height + ABOVE_CAMERA;
        let reach = first.distance(under);
        let along = (under - first).try_normalize().unwrap_or(DVec2::NEG_Y);
        let lead = rig.leg_bearing.map_or(along, |turn| turn.direction());
        let radius = f64::from(rig.foot_radius);
        let two = rig.kind == RigKind::TwoStands;
        let masts = if two {
            vec![first, under * 2.0 - first]
        } else {
            vec![first]
        };
        // The second stand is the first turned half about the lens.
        let leads = [lead, -lead];
        let legs = |n: usize| [0.0, 120.0, 240.0].map(|turn| rotation(turn).rotate(leads[n]));
        let feet = (0..masts.len())
            .map(|n| legs(n).map(|leg| masts[n] + leg * radius))
            .collect();
        let length = f64::from(rig.arm_length);
        let arm = if two {
            [under + along * length * 0.5, under - along * length * 0.5]
        } else {
            [under, under - along * length]
        };
        let mut stand = Self {
            masts,
            feet,
            along,
            reach,
            arm,
            arm_height,
            camera_height,
            masses: Vec::new(),
        };
        stand.weigh(layout, under, &legs);
        Some(stand)
    }

    /// Puts every mass where it is.
    fn weigh(&mut self, layout: &Layout, under: DVec2, legs: &dyn Fn(usize) -> [DVec2; 3]) {
        let rig = &layout.rig;
        let (arm_height, masts) = (self.arm_height, self.masts.clone());
        let masses = &mut self.masses;
        let mut put = |grams: f64, at: DVec2, high: f64| {
            masses.push(Mass {
                grams,
                at: at.extend(high),
            });
        };
        put(f64::from(rig.load_mass), under, self.camera_height);
        let middle = (self.arm[0] + self.arm[1]) * 0.5;
        put(f64::from(rig.arm_mass), middle, arm_height);
        for mast in &masts {
            put(f64::from(rig.stand_mass), *mast, arm_height * LOW);
        }
        // A bar between two stands has no rear end to weigh down.
        if let (Some(weight), 1) = (rig.counterweight, masts.len()) {
            let behind = masts[0] - self.along * f64::from(weight.behind);
            put(f64::from(weight.mass), behind, arm_height);
        }
        let Some(bag) = rig.bag else { return };
        // Two stands have a bag each.
        for (n, mast) in masts.iter().enumerate() {
            let places = bag_places(*mast, &legs(n), f64::from(rig.foot_radius), bag.hung);
            let each = f64::from(bag.mass) / places.len() as f64;
            for place in places {
                put(each, place, HUB_HEIGHT);
            }
        }
    }

    /// Ends of all legs.
    #[must_use]
    pub fn all_feet(&self) -> Vec<DVec2> {
        self.feet.concat()
    }

    /// How it stands; `None` when nothing weighs anything.
    #[must_use]
    pub fn tipping(&self) -> Option<Tipping> {
        tipping(&self.all_feet(), &self.masses)
    }

    /// How it stands with the camera taken off.
    #[must_use]
    pub fn without_camera(&self) -> Option<Tipping> {
        tipping(&self.all_feet(), &self.masses[1..])
    }

    /// How long the arm has to be: to the lens, or from stand to stand.
    #[must_use]
    pub fn needs(&self) -> f64 {
        self.reach * self.masts.len() as f64
    }

    /// Where bags would hang, on each stand.
    #[must_use]
    pub fn bag_places(&self, hung: Hung) -> Vec<DVec2> {
        let mut out = Vec::new();
        for (mast, feet) in self.masts.iter().zip(&self.feet) {
            let radius = feet[0].distance(*mast);
            let legs = feet.map(|foot| (foot - *mast).normalize_or_zero());
            out.extend(bag_places(*mast, &legs, radius, hung));
        }
        out
    }
}

/// Where a bag hangs on a stand.
fn bag_places(mast: DVec2, legs: &[DVec2; 3], radius: f64, hung: Hung) -> Vec<DVec2> {
    let out = BAG_ALONG.min(radius);
    match hung {
        Hung::Hub => vec![mast],
        Hung::LeadLeg => vec![mast + legs[0] * out],
        Hung::RearLegs => vec![mast + legs[1] * out, mast + legs[2] * out],
    }
}

/// How high a leg is at this level distance from its mast, mm: straight from
/// the hub down to its end.
#[must_use]
pub fn leg_height(away: f64, radius: f64) -> f64 {
    HUB_HEIGHT * (1.0 - away / radius.max(1.0)).clamp(0.0, 1.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::layout::{Bag, Counterweight, LayoutId, Point};

    fn standing(x: i32, y: i32) -> Layout {
        let mut layout = Layout::empty(LayoutId(1));
        layout.rig.at = Some(Point::new(x, y));
        layout
    }

    #[test]
    fn the_lead_leg_points_under_the_load_and_the_arm_ends_over_the_frame() {
        let layout = standing(600, 1450);
        let stand = Stand::of(&layout).expect("told");
        // The empty board's frame is centred on 600, 450.
        assert!((stand.reach - 1000.0).abs() < 1e-9, "{}", stand.reach);
        let lead = stand.feet[0][0] - stand.masts[0];
        assert!(lead.distance(DVec2::new(0.0, -480.0)) < 1e-9, "{lead}");
        assert!(
            stand.arm[0].distance(DVec2::new(600.0, 450.0)) < 1e-9,
            "tip"
        );
        assert!((stand.arm[1].y - 1466.0).abs() < 1e-9, "its rear end");
    }

    #[test]
    fn two_stands_mirror_each_other_about_the_lens() {
        let mut layout = standing(-400, 450);
        layout.rig.kind = RigKind::TwoStands;
        let stand = Stand::of(&layout).expect("told");
        assert_eq!(stand.masts.len(), 2, "a pair");
        assert!(stand.masts[1].distance(DVec2::new(1600.0, 450.0)) < 1e-9);
        let found = stand.tipping().expect("weighs");
        assert!(
            found.centre.truncate().distance(DVec2::new(600.0, 450.0)) < 1e-6,
            "balanced about the lens: {}",
            found.centre
        );
    }

    #[test]
    fn whatever_is_entered_stays_finite() {
        let mut layouts = vec![standing(600, 450), standing(600, 1450)];
        for kind in [RigKind::Arm, RigKind::TwoStands, RigKind::Tripod] {
            let mut l = standing(600, 450);
            l.rig.kind = kind;
            (l.rig.arm_length, l.rig.foot_radius) = (0, 50);
            l.rig.counterweight = Some(Counterweight { mass: 0, behind: 0 });
            l.rig.bag = Some(Bag {
                mass: 0,
                hung: Hung::RearLegs,
            });
            layouts.push(l.clone());
            (l.rig.stand_mass, l.rig.arm_mass, l.rig.load_mass) = (0, 0, 0);
            assert!(Stand::of(&l).expect("told").tipping().is_none(), "no mass");
            layouts.push(l);
        }
        for layout in &layouts {
            let stand = Stand::of(layout).expect("told");
            assert!(stand.masses.iter().all(|m| m.at.is_finite()), "{stand:?}");
            if let Some(found) = stand.tipping() {
                assert!(found.centre.is_finite() && found.tilt().is_finite());
                assert!(found.margin().is_finite(), "{found:?}");
            }
        }
    }

    #[test]
    fn no_stand_is_made_up() {
        let mut layout = standing(600, 1450);
        layout.rig.kind = RigKind::Ceiling;
        assert!(Stand::of(&layout).is_none(), "hangs");
        assert!(Stand::of(&Layout::empty(LayoutId(1))).is_none(), "not told");
    }
}
