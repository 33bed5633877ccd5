//! What stands in the ways beside a table: legs, what hangs on them, and who
//! reaches in.
use glam::DVec2;

use super::seated::seat_of;
use super::way::stepped;
use crate::layout::{Id, Layout};
use crate::rig::Stand;
use crate::seats::stand_at;
use crate::shape::{contains, on_side};
use crate::words::say;

/// Half a shoulder's breadth, and how far behind the table's edge a sitter's
/// shoulder is, mm (the latter derived from body sizes).
const SITTER: [f64; 2] = [230.0, 200.0];
/// Half the breadth of a bag, and of a weight on an arm, mm. Our choice.
const HANGS: [f64; 2] = [120.0, 50.0];
/// What hangs lower than this is in the way of a head, mm. Our choice.
const HEAD: f64 = 2_000.0;
/// A sitter's edge of the table is looked for no farther than this, mm.
const FAR: f64 = 5_000.0;

/// A sitter's edge is looked for in steps of this, mm.
const STEP: f64 = 10.0;

/// What stands in a way.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum InTheWay {
    /// A leg.
    Leg,
    /// A bag that hangs on the stand.
    Bag,
    /// A mass on the arm.
    Weight,
    /// Somebody who reaches in.
    Sitter(Id),
}

impl InTheWay {
    /// What it is called.
    #[must_use]
    pub fn name(self) -> String {
        let id = match self {
            Self::Leg => "way-leg",
            Self::Bag => "way-bag",
            Self::Weight => "way-weight",
            Self::Sitter(_) => "way-sitter",
        };
        say(id, &[])
    }
}

/// Something that takes up room: from end to end, so far about.
pub(super) struct Thing {
    pub(super) what: InTheWay,
    pub(super) ends: [DVec2; 2],
    pub(super) about: f64,
    /// The mast it belongs to.
    pub(super) mast: Option<usize>,
}

impl Thing {
    /// How far a line keeps off it, where on it that is and where on the line.
    pub(super) fn off(&self, line: &[DVec2]) -> (f64, [DVec2; 2]) {
        let mut least = (f64::INFINITY, [DVec2::ZERO; 2]);
        for at in stepped(line) {
            let foot = on_side(at, self.ends[0], self.ends[1]);
            let far = foot.distance(at);
            if (far - self.about).max(0.0) < least.0 {
                let skin = foot + (at - foot).normalize_or_zero() * self.about.min(far);
                least = ((far - self.about).max(0.0), [skin, at]);
            }
        }
        least
    }
}

/// All that may stand in a way.
pub(super) fn things(layout: &Layout, table: &[DVec2], stand: Option<&Stand>) -> Vec<Thing> {
    let mut out = Vec::new();
    if let Some(stand) = stand {
        for (n, (mast, feet)) in stand.masts.iter().zip(&stand.feet).enumerate() {
            out.extend(feet.iter().map(|foot| Thing {
                what: InTheWay::Leg,
                ends: [*mast, *foot],
                about: 0.0,
                mast: Some(n),
            }));
        }
        let bags = layout.rig.bag.map(|bag| stand.bag_places(bag.hung));
        for at in bags.unwrap_or_default() {
            let away = |n: &usize| stand.masts[*n].distance(at);
            out.push(Thing {
                what: InTheWay::Bag,
                ends: [at; 2],
                about: HANGS[0],
                mast: (0..stand.masts.len()).min_by(|a, b| away(a).total_cmp(&away(b))),
            });
        }
        if let (Some(weight), [mast]) = (layout.rig.counterweight, &stand.masts[..])
            && stand.arm_height < HEAD
        {
            let at = *mast - stand.along * f64::from(weight.behind);
            out.push(Thing {
                what: InTheWay::Weight,
                ends: [at; 2],
                about: HANGS[1],
                mast: None,
            });
        }
    }
    // One person alone is taken to be the photographer.
    if layout.people.len() > 1 {
        for hand in &layout.hands {
            let (target, entry) = (hand.target.vec(), hand.entry.vec());
            let way = (entry - target).normalize_or_zero();
            let steps = (FAR / STEP) as usize;
            let place = |n: usize| target + way * (n as f64 * STEP);
            let out_at = || (0..steps).map(place).find(|p| !contains(table, *p));
            let told = seat_of(layout, hand).map(|seat| {
                let stand = stand_at(&layout.table, seat.at.vec());
                stand.at - stand.inward * SITTER[1]
            });
            let at = told.or_else(|| out_at().map(|edge| edge + way * SITTER[1]));
            out.extend(at.map(|at| Thing {
                what: InTheWay::Sitter(hand.id),
                ends: [at; 2],
                about: SITTER[0],
                mast: None,
            }));
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::layout::open;

    #[test]
    fn whoever_has_a_seat_is_in_the_way_there() {
        let laid = |seat: &str| {
            let text = format!(
                r#"{{"format":"overspread-layout","version":0,"id":"0000000000000001","next_id":9,
                "table":{{"width":1600,"depth":900}},"frame":{{"at":[800,450],"width":1300}},
                "seats":[{{"id":1,"at":[500,0]}}],"people":[{{"id":2{seat}}},{{"id":3}}],
                "exposures":[{{"id":4}}],"hands":[{{"id":5,"person":2,"exposure":4,
                "entry":[150,450],"target":[500,450]}}]}}"#
            );
            let layout = open(&text).expect("a sound layout");
            let table = crate::shape::table_outline(&layout.table, crate::shape::CHORD_ERROR);
            things(&layout, &table, None)[0].ends[0]
        };
        let behind = SITTER[1];
        assert_eq!(laid(r#","seat":1"#), DVec2::new(500.0, -behind), "at it");
        let else_where = laid("");
        assert!(
            else_where.x < -behind && else_where.y == 450.0,
            "{else_where}"
        );
    }
}
