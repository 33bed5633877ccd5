//! What someone does who is photographer and hand model alone: where to sit or
//! stand, which hand holds the release, and which way round the table to walk
//! so that the stand is never brushed.
use glam::DVec2;

use crate::layout::{ExposureKind, Id, Layout, Seat, Side};
use crate::scene::{InTheWay, seat_of, way_between};
use crate::seats::stand_at;

/// Nearer than this to a leg or a bag it is worth a word, mm. Our choice.
const WORTH_A_WORD: f64 = 1_000.0;

/// How someone gets from one place at the table to the next.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Walk {
    /// Whether it leads clockwise round the table, seen from above.
    pub clockwise: bool,
    /// How long it is, mm.
    pub long: f64,
    /// What they pass close by, and how far from the middle of the way that
    /// is, mm.
    pub past: Option<(InTheWay, f64)>,
    /// Whether there is room to pass it without brushing it.
    pub clear: bool,
}

/// What to do for one exposure with hands.
#[derive(Clone, Debug, PartialEq)]
pub struct Solo {
    /// Which exposure.
    pub exposure: Id,
    /// The place at the table.
    pub seat: Id,
    /// Where that is.
    pub at: DVec2,
    /// Whether they stand there.
    pub standing: bool,
    /// The hand that is free for the release; none when both are busy.
    pub free: Option<Side>,
    /// The way there; none when they are there, or came from nobody knows
    /// where.
    pub walk: Option<Walk>,
    /// Whether they have been at this place already.
    pub stays: bool,
}

/// The steps of one who is alone, exposure by exposure; none for several
/// people and for hands that come from no place at the table.
#[must_use]
pub fn solo(layout: &Layout) -> Vec<Solo> {
    let mut out = Vec::new();
    if layout.people.len() != 1 {
        return out;
    }
    let mut was: Option<(Option<Id>, DVec2)> = layout.rig.photographer.map(|at| (None, at.vec()));
    let with_hands = layout.exposures.iter();
    for exposure in with_hands.filter(|e| e.kind == ExposureKind::Hands) {
        let hands = || layout.hands.iter().filter(|h| h.exposure == exposure.id);
        let Some(seat) = hands().find_map(|hand| seat_of(layout, hand)) else {
            continue;
        };
        let busy = |side: Side| hands().any(|hand| hand.side == side);
        let free = [Side::Left, Side::Right].into_iter().find(|s| !busy(*s));
        let at = place_of(layout, seat);
        let stays = was.is_some_and(|(seat_before, _)| seat_before == Some(seat.id));
        let from = was.filter(|_| !stays).map(|(_, from)| from);
        out.push(Solo {
            exposure: exposure.id,
            seat: seat.id,
            at,
            standing: seat.standing,
            free,
            walk: from.map(|from| walked(layout, from, at)),
            stays,
        });
        was = Some((Some(seat.id), at));
    }
    out
}

fn place_of(layout: &Layout, seat: &Seat) -> DVec2 {
    stand_at(&layout.table, seat.at.vec()).at
}

fn walked(layout: &Layout, from: DVec2, to: DVec2) -> Walk {
    let way = way_between(layout, from, to);
    let middle = layout.table.centre().vec();
    let turns = way.line.windows(2).map(|pair| {
        let [a, b] = [pair[0] - middle, pair[1] - middle];
        libm::atan2(a.perp_dot(b), a.dot(b))
    });
    let near = way.nearest.map(|(what, _)| (what, way.gap));
    Walk {
        // y runs down, so turning on is turning clockwise.
        clockwise: turns.sum::<f64>() >= 0.0,
        long: way.line.windows(2).map(|p| p[0].distance(p[1])).sum(),
        past: near.filter(|(_, gap)| *gap < WORTH_A_WORD),
        clear: way.is_clear(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::layout::open;

    /// A stand behind the top edge; a seat left, top right and below.
    fn laid(more: &str) -> Layout {
        let text = format!(
            r#"{{"format":"overspread-layout","version":0,"id":"0000000000000001","next_id":90,
            "table":{{"width":1600,"depth":900}},"frame":{{"at":[800,450],"width":1300}},
            "seats":[{{"id":30,"at":[0,450]}},{{"id":31,"at":[1600,450]}},{{"id":32,"at":[800,900],"standing":true}}],
            "exposures":[{{"id":40,"kind":"clean"}},{{"id":41}},{{"id":42}},{{"id":43}},{{"id":44}}],
            "hands":[
              {{"id":50,"person":9,"seat":30,"exposure":41,"pair":51,"side":"left","entry":[150,400],"target":[400,380]}},
              {{"id":51,"person":9,"seat":30,"exposure":41,"pair":50,"entry":[150,400],"target":[400,480]}},
              {{"id":52,"person":9,"seat":30,"exposure":42,"entry":[150,400],"target":[400,480]}},
              {{"id":53,"person":9,"seat":31,"exposure":43,"side":"left","entry":[150,400],"target":[1200,480]}},
              {{"id":54,"person":9,"seat":32,"exposure":44,"entry":[800,700],"target":[800,600]}}]{more}}}"#
        );
        open(&text).expect("a sound layout")
    }

    const ALONE: &str = r#","people":[{"id":9}]"#;

    #[test]
    fn the_other_hand_holds_the_release_and_a_pair_needs_the_timer() {
        let steps = solo(&laid(ALONE));
        let free: Vec<Option<Side>> = steps.iter().map(|s| s.free).collect();
        let wanted = [None, Some(Side::Left), Some(Side::Right), Some(Side::Left)];
        assert_eq!(free, wanted);
        let stays: Vec<bool> = steps.iter().map(|s| s.stays).collect();
        assert_eq!(stays, [false, true, false, false]);
        assert!(steps[0].walk.is_none(), "from nobody knows where");
        assert!(steps[3].standing && !steps[0].standing);
        let two = laid(r#","people":[{"id":9},{"id":10}]"#);
        assert!(solo(&two).is_empty(), "somebody else has the release");
    }

    #[test]
    fn one_walks_round_the_side_where_no_stand_is() {
        let stand = |y: i32| {
            let rig = format!(r#"{ALONE},"rig":{{"at":[800,{y}],"foot_radius":480}}"#);
            solo(&laid(&rig))[2].walk.expect("to the other end")
        };
        // From the left to the right end: over the top is clockwise.
        assert!(!stand(-400).clockwise, "it stands at the top");
        assert!(stand(1_300).clockwise, "it stands below");
        for y in [-400, 1_300] {
            let walk = stand(y);
            assert!(walk.clear, "{walk:?}");
            assert!(walk.long > 1_600.0 && walk.long < 5_000.0, "{walk:?}");
        }
    }
}
