//! All outlines in paint order, and what the camera sees of each from above.
use std::cell::OnceCell;
use std::rc::Rc;

use glam::DVec2;

use super::laid::Laid;
use super::nearer::Met;
use crate::colour::{Shade, shades};
use crate::layout::{Id, Layout, Origin};
use crate::optics::View;
use crate::shape::{Bounds, Region, frame_outline, seen_under};

/// Which part of a thing a piece is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum PartKind {
    /// The table or board.
    Table,
    /// Cloth.
    Linen,
    /// Outside and rim of a vessel, or a whole plain thing.
    Rim,
    /// Inside of a vessel.
    Well,
    /// Food.
    Food,
    /// A hand with the bare part of its forearm.
    Hand,
    /// A sleeve.
    Sleeve,
}

/// One outline of one colour mix.
#[derive(Clone, Debug, PartialEq)]
pub struct Piece {
    /// Whose it is; `Id(0)` for the table.
    pub owner: Id,
    /// Which part of it.
    pub part: PartKind,
    /// Its outline on the table plane, mm.
    pub outline: Vec<DVec2>,
    /// The same as an area.
    pub region: Region,
    /// Its colours.
    pub shades: Vec<Shade>,
    /// Whether any of its colours is a catalogue guess.
    pub guessed: bool,
}

/// What lies at a place: a piece, or the floor.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Ground {
    /// Nothing but the floor.
    Floor,
    /// The piece with this index.
    Piece(usize),
}

/// A layout in space as a view shows it.
#[derive(Clone, Debug)]
pub struct Scene {
    /// Where it is seen from.
    pub view: View,
    /// Pieces from the bottom to the top.
    pub pieces: Vec<Rc<Piece>>,
    /// What the picture or crop shows of the table.
    pub frame: Region,
    /// The floor's colour.
    pub floor: Vec<Shade>,
    /// Outlines a finger can take, scatter included, bottom to top.
    pub touchable: Vec<(Id, Vec<DVec2>)>,
    /// Worked out when asked for, as only some are.
    seen: Vec<OnceCell<Rc<Region>>>,
    near: OnceCell<Vec<Vec<usize>>>,
    /// For each piece, the piece of the scene before it that is the very same.
    kept: Vec<Option<usize>>,
    /// Which of things that meet is nearer.
    met: Met,
}

/// How far outside its outline a piece may ask what lies there, mm.
pub const REACH: f64 = 1.0;
/// Pieces at least this wide are few, mm. Our choice.
const WIDE: f64 = 400.0;

impl Scene {
    /// The scene of a layout from straight above. `exposure` picks the hands of
    /// one exposure; `None` shows all hands together.
    #[must_use]
    pub fn of(layout: &Layout, exposure: Option<Id>) -> Self {
        Self::within(
            layout,
            exposure,
            View::Above,
            &frame_outline(&layout.frame),
            None,
        )
    }

    /// The scene of a layout from a view, as far as `shown` shows it. Pieces of the scene of
    /// the layout before are taken over where nothing they are made of
    /// changed; the answer is the same either way.
    #[must_use]
    pub fn within(
        layout: &Layout,
        exposure: Option<Id>,
        view: View,
        shown: &[DVec2],
        before: Option<(&Layout, &Self)>,
    ) -> Self {
        let laid = Laid::of(layout, exposure, view, before);
        let count = laid.pieces.len();
        Self {
            view,
            pieces: laid.pieces,
            frame: Region::from_polygon(shown).unwrap_or_default(),
            floor: shades(&super::laid::plain(layout.floor.colour, Origin::Measured).colours),
            touchable: laid.touchable,
            seen: vec![OnceCell::new(); count],
            near: OnceCell::new(),
            kept: laid.kept,
            met: laid.met,
        }
    }

    pub(super) const fn met(&self) -> &Met {
        &self.met
    }

    /// What is seen of a piece within the frame.
    #[must_use]
    pub fn seen(&self, n: usize) -> &Region {
        self.seen[n].get_or_init(|| {
            let above = self.near(n).iter().filter(|j| **j > n);
            let above = above.map(|j| &self.pieces[*j].region);
            let seen = seen_under(&self.pieces[n].region, above, &self.frame);
            Rc::new(seen.unwrap_or_default())
        })
    }

    /// The pieces that come within [`REACH`] of a piece's box, bottom to top.
    #[must_use]
    pub fn near(&self, n: usize) -> &[usize] {
        let all = self.near.get_or_init(|| {
            let boxes: Vec<_> = self.pieces.iter().map(|p| p.region.bounds()).collect();
            all_near(&boxes)
        });
        &all[n]
    }

    /// Where a piece lay in the scene before, when neither it nor anything
    /// near it has changed, nor what is shown of the table: all that follows
    /// from these is then the same as before.
    #[must_use]
    pub fn unchanged(&self, n: usize, before: &Self) -> Option<usize> {
        let was = self.kept[n]?;
        let (now, then) = (self.near(n), before.near(was));
        let below = |near: &[usize], own: usize| near.partition_point(|j| *j < own);
        let same = now.len() == then.len()
            && below(now, n) == below(then, was)
            && now.iter().zip(then).all(|(j, k)| self.kept[*j] == Some(*k))
            && self.frame == before.frame
            && self.floor == before.floor;
        same.then_some(was)
    }

    /// Takes over what the scene before had already seen of a piece.
    pub fn recall(&self, n: usize, before: &Self, was: usize) {
        if let Some(seen) = before.seen[was].get() {
            // What is there already is the same.
            let _ = self.seen[n].set(Rc::clone(seen));
        }
    }

    /// The colours of a ground.
    #[must_use]
    pub fn shades_of(&self, ground: Ground) -> &[Shade] {
        match ground {
            Ground::Floor => &self.floor,
            Ground::Piece(n) => &self.pieces[n].shades,
        }
    }

    /// The things under a finger, topmost first.
    #[must_use]
    pub fn hit(&self, p: DVec2) -> Vec<Id> {
        let mut under: Vec<Id> = Vec::new();
        for (id, outline) in self.touchable.iter().rev() {
            if !under.contains(id) && crate::shape::contains(outline, p) {
                under.push(*id);
            }
        }
        under
    }
}

/// For each box those that come within [`REACH`] of it, in their order.
fn all_near(boxes: &[Option<Bounds>]) -> Vec<Vec<usize>> {
    // Along the table from left to right; what is wide is looked at always.
    let (mut wide, mut narrow): (Vec<usize>, Vec<(f64, usize)>) = (Vec::new(), Vec::new());
    for (n, own) in boxes.iter().enumerate() {
        match own {
            Some(b) if b.size().x < WIDE => narrow.push((b.min.x, n)),
            Some(_) => wide.push(n),
            None => {}
        }
    }
    crate::order::sort(&mut narrow, |a, b| a.0.total_cmp(&b.0));
    let mut near = vec![Vec::new(); boxes.len()];
    for (other, b) in boxes.iter().enumerate() {
        let Some(b) = b else { continue };
        let (from, to) = (b.min.x - WIDE - 2.0 * REACH, b.max.x + 2.0 * REACH);
        let first = narrow.partition_point(|own| own.0 < from);
        let beside = narrow[first..].iter().take_while(|own| own.0 <= to);
        for own in beside.map(|own| own.1).chain(wide.iter().copied()) {
            let reached = boxes[own].is_some_and(|own| own.grown(REACH).meets(*b));
            if reached && own != other {
                near[own].push(other);
            }
        }
    }
    near
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    proptest! {
        #[test]
        fn what_is_near_is_found_however_it_is_looked_for(
            boxes in prop::collection::vec((-900..900_i32, -900..900_i32, 0..700_i32, 0..300_i32), 0..40)
        ) {
            let bounds = |(x, y, w, d): (i32, i32, i32, i32)| {
                let [x, y, w, d] = [x, y, w, d].map(f64::from);
                let min = DVec2::new(x, y);
                (w > 20.0).then_some(Bounds { min, max: min + DVec2::new(w, d) })
            };
            let boxes: Vec<_> = boxes.into_iter().map(bounds).collect();
            let meets = |a: usize, b: usize| {
                let grown = boxes[a].map(|b| b.grown(REACH));
                a != b && grown.zip(boxes[b]).is_some_and(|(a, b)| a.meets(b))
            };
            let all = 0..boxes.len();
            let slowly: Vec<Vec<usize>> = all
                .clone()
                .map(|a| all.clone().filter(|b| meets(a, *b)).collect())
                .collect();
            prop_assert_eq!(all_near(&boxes), slowly);
        }
    }
}
