//! The middle line of an arm and the limb about it.
use glam::DVec2;

/// Most places along a bent limb; a straight one needs few.
const STATIONS: [i32; 2] = [5, 18];
/// An elbow is rounded within this of its middle, mm. Our choice.
const ROUND: f64 = 60.0;

/// The middle line of an arm on the table, from the wrist back.
pub(super) struct Spine {
    points: Vec<DVec2>,
    /// How wide the limb is at the wrist and at its widest, mm.
    pub(super) wide: [f64; 2],
    /// From the wrist to the elbow, mm on the table.
    pub(super) reach: f64,
}

impl Spine {
    /// Straight back from the wrist, so far.
    pub(super) fn straight(
        wrist: DVec2,
        along: DVec2,
        far: f64,
        wide: [f64; 2],
        reach: f64,
    ) -> Self {
        Self {
            points: vec![wrist, wrist - along * far],
            wide,
            reach,
        }
    }

    /// By the elbow to the shoulder.
    pub(super) fn bent(wrist: DVec2, elbow: DVec2, shoulder: DVec2, wide: [f64; 2]) -> Self {
        let near = |to: DVec2| {
            let way = to - elbow;
            elbow + way.clamp_length_max(ROUND.min(way.length() * 0.5))
        };
        let (from, to) = (near(wrist), near(shoulder));
        let mut points = vec![wrist];
        points.extend((0..=6).map(|n| {
            let t = f64::from(n) / 6.0;
            from.lerp(elbow, t).lerp(elbow.lerp(to, t), t)
        }));
        points.push(shoulder);
        Self {
            points,
            wide,
            reach: wrist.distance(elbow),
        }
    }

    /// How long it is.
    pub(super) fn length(&self) -> f64 {
        self.points.windows(2).map(|p| p[0].distance(p[1])).sum()
    }

    /// Where it is so far above the wrist, and the way across it there.
    pub(super) fn at(&self, above: f64) -> (DVec2, DVec2) {
        let mut left = above;
        let last = self.points.len() - 2;
        for (n, pair) in self.points.windows(2).enumerate() {
            let long = pair[0].distance(pair[1]);
            if left <= long || n == last {
                let way = (pair[0] - pair[1]).normalize_or(DVec2::Y);
                return (pair[0] - way * left, way.perp());
            }
            left -= long;
        }
        (self.points[0], DVec2::X)
    }

    /// Half the breadth of the bare limb so far above the wrist.
    pub(super) fn half(&self, above: f64) -> f64 {
        let [narrow, wide] = self.wide;
        let grown = (above / self.reach.max(1.0)).clamp(0.0, 1.0);
        0.5 * (narrow + (wide - narrow) * grown)
    }

    /// The limb between two distances above the wrist, so much wider than bare
    /// at its end and above: one side from the end up, the other back, and two
    /// places round the end.
    pub(super) fn limb(&self, from: f64, to: f64, ease: [f64; 2]) -> Vec<DVec2> {
        let steps = STATIONS[usize::from(self.points.len() > 2)];
        let row = |sign: f64| {
            (0..=steps).map(move |i| {
                let above = from + (to - from) * f64::from(i) / f64::from(steps);
                let slack = if i == 0 { ease[0] } else { ease[1] };
                let (at, across) = self.at(above);
                at + across * (sign * (self.half(above) + slack))
            })
        };
        let mut points: Vec<DVec2> = row(1.0).collect();
        let mut other: Vec<DVec2> = row(-1.0).collect();
        other.reverse();
        points.append(&mut other);
        // The end lies round the arm, towards the hand.
        let (end, across) = self.at(from - 0.22 * self.half(from));
        points.push(end - across * (self.half(from) * 0.5));
        points.push(end + across * (self.half(from) * 0.5));
        points
    }
}
