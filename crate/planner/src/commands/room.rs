//! Finding room: things as a few rounded boxes along the axes, put down, pushed
//! apart and kept inside the frame, as they stand or as a lens sees them.
use glam::{DVec2, Vec2Swizzles};

use crate::layout::{Item, Size, Turn};
use crate::optics::View;
use crate::scene::silhouette;
use crate::shape::Bounds;

/// A box along the axes with round corners: a core and what it grows by.
#[derive(Clone, Copy)]
struct Piece {
    off: DVec2,
    core: DVec2,
    radius: f64,
    /// How much farther from right under the lens it is seen than it stands,
    /// as a share: 0 of what lies flat or is looked at from straight above.
    lean: f64,
}

/// Something that is moved as one: a place setting or a dish.
#[derive(Clone)]
pub(crate) struct Body {
    pieces: Vec<Piece>,
    /// How far it reaches left and up, and right and down, of its place.
    pub(crate) reach: [DVec2; 2],
    /// Its place on the table.
    pub(crate) at: DVec2,
    /// Quarter turns clockwise.
    pub(crate) quarters: i32,
    /// The place right under the lens.
    under: DVec2,
    /// The most that any of it leans.
    lean: f64,
    /// Which way it may be pushed: 1 or 0 each way.
    pub(crate) free: DVec2,
    /// Which of the dishes it is.
    pub(crate) dish: usize,
    /// A room of its own it has to stay in, narrower than that of all.
    pub(crate) within: Option<Room>,
}

/// How far an outline may stand out of its size before that counts, mm.
const STANDS_OUT: f64 = 0.5;

impl Body {
    /// Nothing yet, about a place.
    fn about(at: DVec2) -> Self {
        Self {
            pieces: Vec::new(),
            reach: [DVec2::ZERO; 2],
            at,
            quarters: 0,
            under: DVec2::ZERO,
            lean: 0.0,
            free: DVec2::ONE,
            dish: 0,
            within: None,
        }
    }

    /// Things by where they lie about their common place, all turned by so
    /// many quarters clockwise.
    pub(crate) fn of(things: &[Item], offs: &[DVec2], quarters: i32) -> Self {
        let mut body = Self::about(DVec2::ZERO);
        body.quarters = quarters;
        for (item, off) in things.iter().zip(offs) {
            let mut item = item.clone();
            item.turn = quarter_turns(quarters);
            body.take_in(&item, turned(*off, quarters));
        }
        body
    }

    /// Things where they lie, each to a height of so many mm, as `view` sees
    /// them.
    pub(crate) fn seen(things: &[(&Item, f64)], view: View) -> Self {
        let at = things
            .first()
            .map_or(DVec2::ZERO, |(item, _)| item.at.vec());
        let mut body = Self::about(at);
        if let View::Lens { under, .. } = view {
            body.under = under;
        }
        for (item, height) in things {
            let flat = body.pieces.len();
            body.take_in(item, item.at.vec() - at);
            let lean = view.scale(*height) - 1.0;
            if lean > 0.0 {
                body.lean = body.lean.max(lean);
                for n in flat..body.pieces.len() {
                    let piece = body.pieces[n];
                    body.pieces.push(Piece {
                        core: piece.core * (1.0 + lean),
                        radius: piece.radius * (1.0 + lean),
                        lean,
                        ..piece
                    });
                }
            }
        }
        body
    }

    /// An area nothing may stand in.
    pub(crate) fn kept_free(area: Bounds) -> Self {
        let mut body = Self::about(area.centre());
        body.free = DVec2::ZERO;
        body.push(Piece {
            off: DVec2::ZERO,
            core: area.size() * 0.5,
            radius: 0.0,
            lean: 0.0,
        });
        body
    }

    /// The box round it as it is seen.
    pub(crate) fn bounds(&self) -> Bounds {
        let mut all: Option<Bounds> = None;
        for piece in &self.pieces {
            let (at, far) = (self.seen_at(piece), piece.core + piece.radius);
            let own = Bounds {
                min: at - far,
                max: at + far,
            };
            all = Some(all.map_or(own, |all| all.joined(own)));
        }
        all.unwrap_or(Bounds {
            min: self.at,
            max: self.at,
        })
    }

    /// Whether it may be nearer to another than `air`, told by boxes that hold
    /// all of either as it is seen.
    fn may_meet(&self, other: &Self, air: f64) -> bool {
        let box_of = |b: &Self| {
            let [low, high] = b.reach.map(|r| r * (1.0 + b.lean));
            let leans = (b.at - b.under) * b.lean;
            let (low, high) = (low.min(low + leans), high.max(high + leans));
            [b.at + low, b.at + high]
        };
        let ([a, b], [c, d]) = (box_of(self), box_of(other));
        (a - d).max(c - b).max_element() < air
    }

    /// Where a piece of it is seen.
    fn seen_at(&self, piece: &Piece) -> DVec2 {
        let at = self.at + piece.off;
        at + (at - self.under) * piece.lean
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
        let outline = silhouette(item);
        let mut main = Piece {
            off,
            core: half - radius,
            radius,
            lean: 0.0,
        };
        // What lies askew is its box, unless it is round.
        let is_round = matches!(item.size, Size::Disc { .. });
        if item.turn.half_degrees() % 180 != 0
            && !is_round
            && let Some(all) = Bounds::around(&outline)
        {
            main.off = off + all.centre() - item.at.vec();
            (main.core, main.radius) = (all.size() * 0.5, 0.0);
        }
        self.push(main);
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
                lean: 0.0,
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
    pub(crate) fn size(&self) -> DVec2 {
        self.reach[1] - self.reach[0]
    }

    /// The least gap to another and the way from this to that; a gap below 0
    /// is an overlap.
    fn gap(&self, other: &Self) -> (f64, DVec2) {
        let mut least = (f64::INFINITY, DVec2::X);
        for a in &self.pieces {
            let from = self.seen_at(a);
            for b in &other.pieces {
                let apart = other.seen_at(b) - from;
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
pub(crate) fn quarter_turns(quarters: i32) -> Turn {
    Turn::from_half_degrees(quarters * 180)
}

/// A place after so many quarter turns clockwise about the middle.
pub(crate) fn turned(off: DVec2, quarters: i32) -> DVec2 {
    (0..quarters).fold(off, |p, _| DVec2::new(-p.y, p.x))
}

/// The frame's inside, in which everything has to stay.
#[derive(Clone, Copy)]
pub(crate) struct Room {
    pub(crate) low: DVec2,
    pub(crate) high: DVec2,
}

impl Room {
    /// Where a body may stand so that `air` is left to the edges, as far as
    /// there is so much; its middle where there is none at all.
    pub(crate) fn stand(&self, body: &Body, air: f64) -> Self {
        let (mut from, mut to) = (DVec2::NEG_INFINITY, DVec2::INFINITY);
        for piece in &body.pieces {
            let far = piece.core + piece.radius;
            let place =
                |edge: DVec2| (edge + body.under * piece.lean) / (1.0 + piece.lean) - piece.off;
            from = from.max(place(self.low + far));
            to = to.min(place(self.high - far));
        }
        let air = ((to - from) * 0.5).clamp(DVec2::ZERO, DVec2::splat(air));
        let (from, to) = (from + air, to - air);
        let middle = (from + to) * 0.5;
        Self {
            low: from.min(middle),
            high: to.max(middle).max(from.min(middle)),
        }
    }
}

/// The least gap between any two, mm, where it is under `air`.
fn least_gap(bodies: &[Body], air: f64) -> f64 {
    let mut least = f64::INFINITY;
    for (n, body) in bodies.iter().enumerate() {
        for other in &bodies[..n] {
            if body.may_meet(other, air) {
                least = least.min(body.gap(other).0);
            }
        }
    }
    least
}

/// The least gap of a body to those that are there.
pub(crate) fn gap_to(body: &Body, others: &[Body]) -> f64 {
    let gaps = others.iter().map(|other| body.gap(other).0);
    gaps.fold(f64::INFINITY, f64::min)
}

/// How much of a push each of two takes: all of it where the other stays.
fn shares(a: DVec2, b: DVec2) -> (DVec2, DVec2) {
    if a == DVec2::ZERO {
        (a, b * 2.0)
    } else if b == DVec2::ZERO {
        (a * 2.0, b)
    } else {
        (a, b)
    }
}

/// Pushes apart what is nearer than `air`, in small steps, and gives the least
/// gap of the best it came to, at which everything then stands; infinite when
/// all of them are `air` and more.
pub(crate) fn push_apart(bodies: &mut [Body], room: Room, air: f64) -> f64 {
    const STEPS: usize = 160;
    /// Steps without anything gained after which nothing will be.
    const STALE: usize = 40;
    let mut best = least_gap(bodies, air);
    let mut stood: Vec<DVec2> = bodies.iter().map(|b| b.at).collect();
    let mut stale = 0;
    for _ in 0..STEPS {
        if best >= air || stale == STALE {
            break;
        }
        stale += 1;
        for n in 0..bodies.len() {
            for m in n + 1..bodies.len() {
                if !bodies[n].may_meet(&bodies[m], air + 1.0) {
                    continue;
                }
                let (gap, way) = bodies[n].gap(&bodies[m]);
                let push = way * (air + 1.0 - gap).max(0.0) * 0.5;
                let (a, b) = shares(bodies[n].free, bodies[m].free);
                bodies[n].at -= push * a;
                bodies[m].at += push * b;
            }
        }
        for body in bodies.iter_mut().filter(|b| b.free != DVec2::ZERO) {
            let stand = body.within.unwrap_or(room).stand(body, air);
            body.at = body.at.clamp(stand.low, stand.high);
        }
        let least = least_gap(bodies, air);
        if least > best {
            (best, stale) = (least, 0);
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
