//! What brings the margin back: a bag on the stand or a mass behind it.
//!
//! About each edge `holding + m·e ≥ k·tipping` (and, where the mass itself
//! tips, `holding ≥ k·(tipping + m·|e|)`), which is linear in the mass `m`.
use glam::DVec2;

use super::stand::Stand;
use super::tipping::Tipping;
use crate::layout::Hung;

/// The margin that is aimed at. Structures are commonly given 1.5 against
/// overturning (from memory); people work under this arm. Our choice.
pub const TARGET: f64 = 2.0;

/// The least grams of a bag hung there, on each stand, that give the margin
/// [`TARGET`] about every edge, beyond what hangs there already; `None` when
/// no bag there can.
#[must_use]
pub fn bag_for(stand: &Stand, hung: Hung) -> Option<f64> {
    // Each stand gets the whole of it.
    let places = stand.bag_places(hung);
    let each = stand.masts.len() as f64 / places.len() as f64;
    least(&stand.tipping()?, &places, each)
}

/// The least grams so far behind the mast that give the margin [`TARGET`]
/// about every edge and keep the stand up with the camera taken off; `None`
/// when none do.
#[must_use]
pub fn counterweight_for(stand: &Stand, behind: f64) -> Option<f64> {
    let [mast] = stand.masts[..] else { return None };
    let place = mast - stand.along * behind;
    let grams = least(&stand.tipping()?, &[place], 1.0)?;
    let bare = stand.without_camera()?;
    let alone = |edge: &super::Edge| edge.lever_of(place) * grams + edge.holding > edge.tipping;
    bare.edges.iter().all(alone).then_some(grams)
}

/// The least mass, `each` of it at every place, that gives the target.
fn least(now: &Tipping, places: &[DVec2], each: f64) -> Option<f64> {
    let (mut from, mut to) = (0.0_f64, f64::INFINITY);
    for edge in &now.edges {
        let levers = places.iter().map(|p| edge.lever_of(*p) * each);
        let (mut held, mut tipped) = (0.0, 0.0);
        for lever in levers {
            if lever > 0.0 {
                held += lever;
            } else {
                tipped -= lever;
            }
        }
        // holding + m·held ≥ k·(tipping + m·tipped)
        let missing = TARGET * edge.tipping - edge.holding;
        let helps = held - TARGET * tipped;
        if helps > 0.0 {
            from = from.max(missing / helps);
        } else if missing > 0.0 {
            return None;
        } else if helps < 0.0 {
            to = to.min(missing / helps);
        }
    }
    (from <= to).then_some(from)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::layout::{Bag, Counterweight, Layout, LayoutId, Point, RigKind};

    fn standing(y: i32) -> Layout {
        let mut layout = Layout::empty(LayoutId(1));
        layout.rig.at = Some(Point::new(600, y));
        layout.rig.load_mass = 5_000;
        layout
    }

    fn margin(layout: &Layout) -> f64 {
        let stand = Stand::of(layout).expect("told");
        stand.tipping().expect("weighs").margin()
    }

    #[test]
    fn the_bag_that_is_asked_for_gives_the_target_and_a_lighter_one_does_not() {
        for kind in [RigKind::Arm, RigKind::TwoStands] {
            for hung in [Hung::Hub, Hung::LeadLeg, Hung::RearLegs] {
                let mut layout = standing(1350);
                layout.rig.kind = kind;
                // Two stands hold by themselves until the camera is heavy.
                if kind == RigKind::TwoStands {
                    layout.rig.load_mass = 90_000;
                }
                let stand = Stand::of(&layout).expect("told");
                let Some(grams) = bag_for(&stand, hung) else {
                    continue;
                };
                let with = |mass: f64| {
                    let mut l = layout.clone();
                    let mass = mass.ceil() as i32;
                    l.rig.bag = Some(Bag { mass, hung });
                    margin(&l)
                };
                assert!(with(grams) >= TARGET - 1e-9, "{kind:?} {hung:?} {grams}");
                if grams > 100.0 {
                    assert!(with(grams - 100.0) < TARGET, "{kind:?} {hung:?} {grams}");
                }
            }
        }
    }

    #[test]
    fn the_hub_asks_for_less_than_the_leg_under_the_load() {
        let stand = Stand::of(&standing(1350)).expect("told");
        let hub = bag_for(&stand, Hung::Hub).expect("it helps");
        let lead = bag_for(&stand, Hung::LeadLeg).expect("it helps a little");
        assert!(hub < lead, "{hub} against {lead}");
    }

    #[test]
    fn a_counterweight_gives_the_target_without_tipping_the_bare_stand() {
        let layout = standing(1350);
        let stand = Stand::of(&layout).expect("told");
        let grams = counterweight_for(&stand, 300.0).expect("it can");
        let mut with = layout.clone();
        with.rig.counterweight = Some(Counterweight {
            mass: grams.ceil() as i32,
            behind: 300,
        });
        assert!(margin(&with) >= TARGET - 1e-9, "{grams}");
        let bare = Stand::of(&with).expect("told").without_camera();
        assert!(bare.expect("weighs").margin() > 1.0, "camera off");
        // Far behind, what balances a heavy camera tips the stand without it.
        let mut heavy = layout;
        heavy.rig.load_mass = 40_000;
        let stand = Stand::of(&heavy).expect("told");
        assert_eq!(counterweight_for(&stand, 1_000.0), None, "either way");
    }
}
