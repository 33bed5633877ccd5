//! Finding room: things as a few rounded boxes along the axes, put down, pushed
//! apart and kept inside the frame.
use glam::{DVec2, Vec2Swizzles};

use crate::layout::{Item, Size, Turn};
use crate::scene::silhouette;

/// A box along the axes with round corners: a core and what it grows by.
#[derive(Clone, Copy)]
struct Piece {
    off: DVec2,
    core: DVec2,
    radius: f64,
}

/// Something that is moved as one: a place setting or a dish.
#[derive(Clone)]
pub(super) struct Body {
    pieces: Vec<Piece>,
    /// How far it reaches left and up, and right and down, of its place.
    pub(super) reach: [DVec2; 2],
    /// Its place on the table.
    pub(super) at: DVec2,
    /// Quarter turns clockwise.
    pub(super) quarters: i32,
    /// Which way it may be pushed: 1 or 0 each way.
    pub(super) free: DVec2,
    /// Which of the dishes it is.
    pub(super) dish: usize,
}

/// How far an outline may stand out of its size before that counts, mm.
const STANDS_OUT: f64 = 0.5;

impl Body {
    /// Things by where they lie about their common place, all turned by so
    /// many quarters clockwise.
    pub(super) fn of(things: &[Item], offs: &[DVec2], quarters: i32) -> Self {
        let mut body = Self {
            pieces: Vec::new(),
            reach: [DVec2::ZERO; 2],
            at: DVec2::ZERO,
            quarters,
            free: DVec2::ONE,
            dish: 0,
        };
        for (item, off) in things.iter().zip(offs) {
            let mut item = item.clone();
            item.turn = quarter_turns(quarters);
            body.take_in(&item, turned(*off, quarters));
        }
        body
    }

    /// The outline of the thing's size, and what stands out of it: handles.
    fn take_in(&mut self, item: &Item, off: DVec2) {
        let extent = DVec2::from_array(item.size.extent().map(f64::from));
        let lying = item.turn.half_degrees() / 180 % 2 != 0;
        let half = if lying { extent.yx() } else { extent } * 0.5;
        let radius = match item.size {
            Size::Rect { corner, .. } => f64::from(corner).min(half.min_element()),
            Size::Outline { .. } => 0.0,
            Size::Disc { .. } | Size::Oval { .. } => half.min_element(),
        };
        let main = Piece {
            off,
            core: half - radius,
            radius,
        };
        self.push(main);
        let outline = silhouette(item);
        let at = |n: usize| outline[n % outline.len()] - item.at.vec();
        let mut handles: Option<(DVec2, DVec2)> = None;
        for n in 0..outline.len() {
            // A side that leaves the size counts whole.
            let side = [at(n), at(n + 1)];
            if side.iter().any(|p| main.beyond(*p + off) > STANDS_OUT) {
                let (low, high) = handles.unwrap_or((side[0], side[0]));
                handles = Some((
                    low.min(side[0]).min(side[1]),
                    high.max(side[0]).max(side[1]),
                ));
            }
        }
        if let Some((low, high)) = handles {
            self.push(Piece {
                off: off + (low + high) * 0.5,
                core: (high - low) * 0.5,
                radius: 0.0,
            });
        }
    }

    fn push(&mut self, piece: Piece) {
        let far = piece.core + piece.radius;
        self.reach[0] = self.reach[0].min(piece.off - far);
        self.reach[1] = self.reach[1].max(piece.off + far);
        self.pieces.push(piece);
    }

    /// Width and depth of the box round it, mm.
    pub(super) fn size(&self) -> DVec2 {
        self.reach[1] - self.reach[0]
    }

    /// The least gap to another and the way from this to that; a gap below 0
    /// is an overlap.
    fn gap(&self, other: &Self) -> (f64, DVec2) {
        let mut least = (f64::INFINITY, DVec2::X);
        for a in &self.pieces {
            for b in &other.pieces {
                let apart = other.at + b.off - self.at - a.off;
                let gap = a.gap(b, apart);
                if gap.0 < least.0 {
                    least = gap;
                }
            }
        }
        least
    }
}

impl Piece {
    /// How far a place lies outside; 0 or less inside.
    fn beyond(&self, p: DVec2) -> f64 {
        let off = (p - self.off).abs() - self.core;
        off.max(DVec2::ZERO).length() - self.radius
    }

    /// The gap to another that lies `apart` from this, and the way there.
    fn gap(&self, other: &Self, apart: DVec2) -> (f64, DVec2) {
        let between = apart.abs() - self.core - other.core;
        let round = self.radius + other.radius;
        let way = DVec2::new(1.0_f64.copysign(apart.x), 1.0_f64.copysign(apart.y));
        if between.max_element() > 0.0 {
            let clear = between.max(DVec2::ZERO);
            let far = clear.length();
            (far - round, clear / far * way)
        } else if between.x > between.y {
            (between.x - round, DVec2::new(way.x, 0.0))
        } else {
            (between.y - round, DVec2::new(0.0, way.y))
        }
    }
}

/// So many quarter turns clockwise.
pub(super) fn quarter_turns(quarters: i32) -> Turn {
    Turn::from_half_degrees(quarters * 180)
}

/// A place after so many quarter turns clockwise about the middle.
pub(super) fn turned(off: DVec2, quarters: i32) -> DVec2 {
    (0..quarters).fold(off, |p, _| DVec2::new(-p.y, p.x))
}

/// The frame's inside, in which everything has to stay.
#[derive(Clone, Copy)]
pub(super) struct Room {
    pub(super) low: DVec2,
    pub(super) high: DVec2,
}

impl Room {
    /// Where a body may stand so that `air` is left to the edges, as far as
    /// there is so much; its middle where there is none at all.
    pub(super) fn stand(&self, body: &Body, air: f64) -> Self {
        let [low, high] = body.reach;
        let spare = (self.high - self.low - body.size()) * 0.5;
        let air = spare.clamp(DVec2::ZERO, DVec2::splat(air));
        let (from, to) = (self.low - low + air, self.high - high - air);
        let middle = (from + to) * 0.5;
        Self {
            low: from.min(middle),
            high: to.max(middle).max(from.min(middle)),
        }
    }
}

/// The least gap between any two, mm.
pub(super) fn least_gap(bodies: &[Body]) -> f64 {
    let mut least = f64::INFINITY;
    for (n, body) in bodies.iter().enumerate() {
        least = least.min(gap_to(body, &bodies[..n]));
    }
    least
}

/// The least gap of a body to those that are there.
pub(super) fn gap_to(body: &Body, others: &[Body]) -> f64 {
    let gaps = others.iter().map(|other| body.gap(other).0);
    gaps.fold(f64::INFINITY, f64::min)
}

/// Pushes apart what is nearer than `air`, in small steps, and gives the least
/// gap of the best it came to, at which everything then stands.
pub(super) fn push_apart(bodies: &mut [Body], room: Room, air: f64) -> f64 {
    const STEPS: usize = 160;
    let mut best = least_gap(bodies);
    let mut stood: Vec<DVec2> = bodies.iter().map(|b| b.at).collect();
    for _ in 0..STEPS {
        if best >= air {
            break;
        }
        for n in 0..bodies.len() {
            for m in n + 1..bodies.len() {
                let (gap, way) = bodies[n].gap(&bodies[m]);
                let push = way * (air + 1.0 - gap).max(0.0) * 0.5;
                let (a, b) = (bodies[n].free, bodies[m].free);
                bodies[n].at -= push * a;
                bodies[m].at += push * b;
            }
        }
        for body in bodies.iter_mut() {
            let stand = room.stand(body, air);
            body.at = body.at.clamp(stand.low, stand.high);
        }
        let least = least_gap(bodies);
        if least > best {
            best = least;
            for (at, body) in stood.iter_mut().zip(&*bodies) {
                *at = body.at;
            }
        }
    }
    for (body, at) in bodies.iter_mut().zip(stood) {
        body.at = at;
    }
    best
}
