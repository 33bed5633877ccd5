//! The ways a photographer walks: to the stand and round to the table's far
//! side, with what stands in them.
//!
//! A way keeps half its own width off the table, straight or round either end,
//! and goes round what it meets there; of two ways the shorter one that is
//! clear counts, else the clearer.
use glam::DVec2;

use super::in_way::{InTheWay, Thing, things};
use crate::layout::Layout;
use crate::rig::Stand;
use crate::shape::{
    CHORD_ERROR, contains, convex_sum, disc, hull, on_side, perimeter, table_outline,
};

/// Half of a way 2 ft wide, mm: what a film school asks for clear of every way
/// through a set.
pub const HALF_WAY: f64 = 305.0;
/// How near one comes to a mast to work on it, mm: an arm's length. Our choice.
const AT_HAND: f64 = 500.0;
/// A way is measured so often, mm.
const STEP: f64 = 10.0;
/// Less than this is the rounding of corners, mm.
const EVEN: f64 = 3.0;
/// Where a way leads.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Goal {
    /// To this mast.
    Mast(usize),
    /// To the side of the table that lies opposite.
    FarSide,
    /// To a place at the table.
    Place,
}

/// One way, and what comes nearest to it.
#[derive(Clone, Debug, PartialEq)]
pub struct Way {
    /// Where it leads.
    pub goal: Goal,
    /// Its middle line, from where the photographer stands.
    pub line: Vec<DVec2>,
    /// How much longer it is than were nothing but the table there, mm.
    pub extra: f64,
    /// The first thing it goes round.
    pub round: Option<InTheWay>,
    /// The least from its middle to what stands there, mm; infinite when
    /// nothing does.
    pub gap: f64,
    /// What that is, where it is, and where on the way.
    pub nearest: Option<(InTheWay, [DVec2; 2])>,
}

impl Way {
    /// Whether nothing that stands there is touched.
    #[must_use]
    pub fn is_clear(&self) -> bool {
        self.gap >= HALF_WAY - EVEN
    }
}

/// What one keeps off on the way.
struct Ground {
    /// The table and half a way round it.
    kept: Vec<DVec2>,
    things: Vec<Thing>,
}

impl Ground {
    fn of(layout: &Layout, stand: Option<&Stand>) -> Self {
        let table = table_outline(&layout.table, CHORD_ERROR * 4.0);
        Self {
            kept: convex_sum(&table, &disc(DVec2::ZERO, HALF_WAY, CHORD_ERROR * 4.0)),
            things: things(layout, &table, stand),
        }
    }

    /// The better of the ways round either end of the table: the shorter of
    /// those that are clear, else the clearer.
    fn best(&self, from: DVec2, to: DVec2, goal: Goal) -> Option<Way> {
        let bare = lines(&self.kept, from, to);
        let (mut least, mut best) = (f64::INFINITY, None::<(f64, Way)>);
        for (side, line) in bare.iter().enumerate() {
            least = least.min(length(&trimmed(line, goal, to)));
            let way = walked(&self.kept, [from, to], side, goal, &self.things);
            let long = length(&way.line);
            let better = best.as_ref().is_none_or(|(other, known)| {
                if way.is_clear() && known.is_clear() {
                    long < *other
                } else {
                    way.gap > known.gap
                }
            });
            if better {
                best = Some((long, way));
            }
        }
        let (long, mut way) = best?;
        way.extra = (long - least).max(0.0);
        Some(way)
    }
}

/// The way from one place at the table to another.
#[must_use]
pub fn way_between(layout: &Layout, from: DVec2, to: DVec2) -> Way {
    let stand = Stand::of(layout);
    let ground = Ground::of(layout, stand.as_ref());
    ground.best(from, to, Goal::Place).unwrap_or(Way {
        goal: Goal::Place,
        line: vec![from, to],
        extra: 0.0,
        round: None,
        gap: f64::INFINITY,
        nearest: None,
    })
}

/// The photographer's ways; none before it is said where they stand.
#[must_use]
pub fn ways(layout: &Layout) -> Vec<Way> {
    let Some(from) = layout.rig.photographer.map(|at| at.vec()) else {
        return Vec::new();
    };
    let stand = Stand::of(layout);
    let ground = Ground::of(layout, stand.as_ref());
    let middle = layout.table.centre().vec();
    let far = perimeter(&table_outline(&layout.table, CHORD_ERROR * 4.0));
    let over = middle + (middle - from).normalize_or(DVec2::NEG_Y) * far;
    let mut goals = vec![(Goal::FarSide, nearest_on(&ground.kept, over).0)];
    let masts = stand.iter().flat_map(|stand| &stand.masts).enumerate();
    goals.extend(masts.map(|(n, mast)| (Goal::Mast(n), *mast)));
    let each = goals.into_iter();
    each.filter_map(|(goal, to)| ground.best(from, to, goal))
        .collect()
}

/// The way past one end of the table, round whatever stands there as well.
fn walked(
    kept: &[DVec2],
    [from, to]: [DVec2; 2],
    side: usize,
    goal: Goal,
    things: &[Thing],
) -> Way {
    let own = |thing: &&Thing| thing.mast.is_none_or(|n| goal != Goal::Mast(n));
    let mut left: Vec<&Thing> = things.iter().filter(own).collect();
    let (mut loop_, mut round) = (kept.to_vec(), None);
    loop {
        let mut all = lines(&loop_, from, to);
        let line = all.swap_remove(side.min(all.len() - 1));
        let line = trimmed(&line, goal, to);
        let meets = |thing: &&Thing| thing.off(&line).0 < HALF_WAY - EVEN;
        let (met, rest): (Vec<&Thing>, Vec<&Thing>) = left.into_iter().partition(meets);
        left = rest;
        if met.is_empty() {
            let mut way = measured(goal, line, things.iter().filter(own));
            way.round = round;
            return way;
        }
        round = round.or(Some(met[0].what));
        for thing in met {
            let about = disc(DVec2::ZERO, HALF_WAY + thing.about, CHORD_ERROR * 4.0);
            let ends = thing.ends.iter();
            loop_.extend(ends.flat_map(|end| about.iter().map(move |p| *end + *p)));
        }
        loop_ = hull(&loop_);
    }
}

/// A way with what comes nearest to it. Who works on a stand stands among its
/// legs, so those do not count on the way there.
fn measured<'a>(goal: Goal, line: Vec<DVec2>, things: impl Iterator<Item = &'a Thing>) -> Way {
    let (mut gap, mut nearest) = (f64::INFINITY, None);
    for thing in things {
        let (off, places) = thing.off(&line);
        if off < gap {
            (gap, nearest) = (off, Some((thing.what, places)));
        }
    }
    Way {
        goal,
        line,
        extra: 0.0,
        round: None,
        gap,
        nearest,
    }
}

fn length(line: &[DVec2]) -> f64 {
    line.windows(2).map(|pair| pair[0].distance(pair[1])).sum()
}

/// Places along a line, both ends among them.
pub(super) fn stepped(line: &[DVec2]) -> Vec<DVec2> {
    let mut out: Vec<DVec2> = line.iter().copied().take(1).collect();
    for pair in line.windows(2) {
        let pieces = (pair[0].distance(pair[1]) / STEP)
            .ceil()
            .clamp(1.0, 4_000.0);
        for n in 1..=pieces as usize {
            out.push(pair[0].lerp(pair[1], n as f64 / pieces));
        }
    }
    out
}

/// A way to a mast ends where that is at hand.
fn trimmed(line: &[DVec2], goal: Goal, to: DVec2) -> Vec<DVec2> {
    if !matches!(goal, Goal::Mast(_)) {
        return line.to_vec();
    }
    let mut out = vec![line[0]];
    for pair in line.windows(2) {
        let near = stepped(pair)
            .into_iter()
            .find(|p| p.distance(to) <= AT_HAND);
        out.push(near.unwrap_or(pair[1]));
        if near.is_some() {
            break;
        }
    }
    out
}

/// The place on a loop nearest to a point, and the way out of the loop there.
fn nearest_on(loop_: &[DVec2], p: DVec2) -> (DVec2, DVec2) {
    let sides = (0..loop_.len()).map(|n| (loop_[n], loop_[(n + 1) % loop_.len()]));
    let found = sides.map(|(a, b)| (on_side(p, a, b), -(b - a).perp().normalize_or_zero()));
    let near = found.min_by(|a, b| a.0.distance(p).total_cmp(&b.0.distance(p)));
    near.unwrap_or((p, DVec2::ZERO))
}

/// Middle lines from place to place outside a convex loop: the straight one,
/// or both round it. Ends inside the loop come out of it the nearest way.
fn lines(kept: &[DVec2], from: DVec2, to: DVec2) -> Vec<Vec<DVec2>> {
    // A millimetre out, so that it is a corner of the hull.
    let outside = |p: DVec2| {
        let (on, out) = nearest_on(kept, p);
        if contains(kept, p) || on.distance(p) < 1.0 {
            on + out
        } else {
            p
        }
    };
    let (a, b) = (outside(from), outside(to));
    let whole = |middle: &mut dyn Iterator<Item = DVec2>| {
        let mut line = vec![from];
        line.extend(middle);
        line.dedup();
        line
    };
    if !crosses(kept, a, b) {
        return vec![whole(&mut [a, b].into_iter())];
    }
    let round = hull(&[kept, &[a, b]].concat());
    let place = |p: DVec2| round.iter().position(|q| *q == p);
    let (Some(i), Some(j)) = (place(a), place(b)) else {
        return vec![whole(&mut [a, b].into_iter())];
    };
    let count = round.len();
    let steps = (j + count - i) % count;
    vec![
        whole(&mut (0..=steps).map(|n| round[(i + n) % count])),
        whole(&mut (0..=count - steps).map(|n| round[(i + count - n) % count])),
    ]
}

/// Whether a straight line goes through a convex loop (Cyrus and Beck 1978).
fn crosses(loop_: &[DVec2], a: DVec2, b: DVec2) -> bool {
    let (mut first, mut last) = (0.0_f64, 1.0_f64);
    for n in 0..loop_.len() {
        let (p, q) = (loop_[n], loop_[(n + 1) % loop_.len()]);
        let [at_a, at_b] = [a, b].map(|r| (q - p).perp_dot(r - p));
        if at_a <= 0.0 && at_b <= 0.0 {
            return false;
        }
        let share = at_a / (at_a - at_b);
        if at_a < 0.0 {
            first = first.max(share);
        } else if at_b < 0.0 {
            last = last.min(share);
        }
    }
    last - first > 1e-9
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::layout::{LayoutId, Point, Turn};

    fn table() -> Vec<DVec2> {
        [(0.0, 0.0), (1_200.0, 0.0), (1_200.0, 900.0), (0.0, 900.0)]
            .map(DVec2::from)
            .to_vec()
    }

    #[test]
    fn a_way_is_straight_where_it_can_be_and_else_goes_round_either_end() {
        let at = DVec2::new;
        let beside = lines(&table(), at(-300.0, 1_000.0), at(1_500.0, 1_000.0));
        assert_eq!(beside.len(), 1, "along a side");
        let over = lines(&table(), at(600.0, 1_100.0), at(600.0, -200.0));
        assert_eq!(over.len(), 2, "either end");
        // Three sides of it, by hand: down to up past two corners.
        let by_hand = 2.0 * libm::hypot(600.0, 200.0) + 900.0;
        for line in &over {
            assert!((length(line) - by_hand).abs() < 1e-9, "{line:?}");
            let inside = stepped(line).into_iter().filter(|p| contains(&table(), *p));
            assert!(inside.count() <= 92, "along the edge at most");
        }
        let inside = lines(&table(), at(600.0, 850.0), at(600.0, 1_500.0));
        assert!(inside[0][1].distance(at(600.0, 901.0)) < 1e-9, "out of it");
    }

    #[test]
    fn every_way_stays_off_the_table_whoever_walks() {
        let mut layout = Layout::empty(LayoutId(1));
        layout.rig.at = Some(Point::new(600, 1_150));
        let table = table_outline(&layout.table, CHORD_ERROR);
        for n in 0..24 {
            let out = Turn::from_half_degrees(n * 30).direction() * 1_900.0;
            layout.rig.photographer = Some(Point::nearest(DVec2::new(600.0, 450.0) + out));
            let all = ways(&layout);
            assert_eq!(all.len(), 2, "far side, mast");
            for way in all {
                assert!(way.line.len() >= 2, "{way:?}");
                for p in stepped(&way.line) {
                    let off = nearest_on(&table, p).0.distance(p);
                    assert!(off > HALF_WAY - 2.0, "{off} from the edge: {way:?}");
                }
            }
        }
        layout.rig.photographer = None;
        assert!(ways(&layout).is_empty(), "nobody walks");
    }

    #[test]
    fn what_stands_at_an_end_is_gone_round_and_boxed_in_one_touches_it() {
        let sitter = |x: f64, y: f64| Thing {
            what: InTheWay::Bag,
            ends: [DVec2::new(x, y); 2],
            about: 200.0,
            mast: None,
        };
        let kept = convex_sum(&table(), &disc(DVec2::ZERO, HALF_WAY, CHORD_ERROR));
        let ends = [DVec2::new(-900.0, 450.0), DVec2::new(1_505.0, 450.0)];
        let bare = walked(&kept, ends, 0, Goal::FarSide, &[]);
        for y in [-250.0, 1_150.0] {
            let things = [sitter(600.0, y)];
            let both = [0, 1].map(|side| walked(&kept, ends, side, Goal::FarSide, &things));
            let lengths = both.each_ref().map(|way| length(&way.line));
            let longer = lengths[0].max(lengths[1]);
            assert!(longer > length(&bare.line) + 50.0, "round it: {lengths:?}");
            assert!(
                both.iter().all(|way| way.gap >= HALF_WAY - EVEN),
                "{both:?}"
            );
        }
        // Between four of them nobody gets out without touching one.
        let ring = [(0.0, 300.0), (300.0, 0.0), (0.0, -300.0), (-300.0, 0.0)];
        let boxed = ring.map(|(x, y)| sitter(-900.0 + x, 450.0 + y));
        let way = walked(&kept, ends, 0, Goal::FarSide, &boxed);
        assert!(
            way.gap < HALF_WAY - EVEN && way.nearest.is_some(),
            "{way:?}"
        );
    }
}
