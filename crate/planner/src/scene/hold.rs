//! Where what a hand holds is while it is held.
use glam::DVec2;

use super::hands::Arm;
use crate::layout::{Action, Hand, Item, Layout};

/// A dish is held by its rim, so far in from it as a share of its half breadth
/// (our choice).
const RIM: f64 = 0.9;

/// The thing a hand holds and where its middle is then: a vessel that pours at
/// the fingertips, a dish between the two hands that hold it, or with its rim
/// at the fingertips of the one that does.
#[must_use]
pub fn held_at<'a>(layout: &'a Layout, hand: &Hand, arm: &Arm) -> Option<(&'a Item, DVec2)> {
    let item = layout.items.iter().find(|i| Some(i.id) == hand.holds)?;
    let both = |h: &&Hand| Some(h.id) == hand.pair && h.holds == hand.holds;
    let at = match layout.hands.iter().find(both) {
        _ if hand.action == Action::Pour => arm.tip,
        Some(other) => (hand.target.vec() + other.target.vec()) * 0.5,
        None => {
            let [wide, deep] = item.size.extent().map(f64::from);
            arm.tip + arm.fingers * (wide.min(deep) * 0.5 * RIM)
        }
    };
    Some((item, at))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::layout::open;
    use crate::scene::arm;

    fn at(hands: &str) -> DVec2 {
        let text = format!(
            r#"{{"format":"overspread-layout","version":0,"id":"0000000000000001","next_id":40,
            "table":{{"width":1600,"depth":900}},"frame":{{"at":[800,450],"width":1300}},
            "items":[{{"id":1,"prop":"platter","at":[300,300],"size":{{"shape":"disc","diameter":300}}}}],
            "people":[{{"id":4}}],"exposures":[{{"id":6}}],"hands":[{hands}]}}"#
        );
        let layout = open(&text).expect("a sound layout");
        let hand = &layout.hands[0];
        let (item, at) = held_at(&layout, hand, &arm(&layout, hand)).expect("held");
        assert_eq!(item.id.0, 1);
        at
    }

    #[test]
    fn a_dish_lies_between_two_hands_and_before_one() {
        let two = at(
            r#"{"id":8,"person":4,"exposure":6,"entry":[700,880],"target":[700,500],"holds":1,"pair":9,"action":"lift"},
               {"id":9,"person":4,"exposure":6,"entry":[900,880],"target":[960,520],"holds":1,"pair":8,"action":"lift"}"#,
        );
        assert_eq!(two, DVec2::new(830.0, 510.0), "between them");
        let one = at(
            r#"{"id":8,"person":4,"exposure":6,"entry":[700,900],"target":[700,500],"holds":1,"action":"pass"}"#,
        );
        let off = one - DVec2::new(700.0, 500.0);
        assert!((off.length() - 135.0).abs() < 1.0, "by its rim: {off}");
        assert!(off.y < -120.0, "ahead of the hand: {off}");
        let poured = at(
            r#"{"id":8,"person":4,"exposure":6,"entry":[700,900],"target":[700,500],"holds":1,"action":"pour"}"#,
        );
        assert!(poured.distance(DVec2::new(700.0, 500.0)) < 1.0, "{poured}");
    }
}
