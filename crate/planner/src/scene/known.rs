//! Light at places, worked out once and taken over after an edit.
use std::cell::RefCell;
use std::collections::BTreeMap;
use std::rc::Rc;

use glam::DVec3;

use crate::layout::Id;

/// What may be asked of a place.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Asked {
    /// The light on this stack there.
    Light(Id),
    /// The share of the source that is seen from it past all other stacks.
    Share(Id),
    /// The light on this stack past all but these.
    Upon(Id, Vec<Id>),
    /// The share of the source past the arms of this exposure.
    PastArms(Id),
    /// The same past its arms and the bodies they are of.
    PastPeople(Id),
}

/// Figures by the bits of the place, with what was asked of it.
type Figures = BTreeMap<[u64; 3], Vec<(Asked, f64)>>;

/// Figures by place. Clones share them.
#[derive(Clone, Debug, Default)]
pub(super) struct Known(Rc<RefCell<Figures>>);

impl Known {
    pub(super) fn get(&self, place: DVec3, asked: &Asked) -> Option<f64> {
        let all = self.0.borrow();
        let known = all.get(&bits(place))?.iter().find(|k| k.0 == *asked);
        known.map(|k| k.1)
    }

    pub(super) fn put(&self, place: DVec3, asked: Asked, figure: f64) {
        let mut all = self.0.borrow_mut();
        all.entry(bits(place)).or_default().push((asked, figure));
    }
}

fn bits(place: DVec3) -> [u64; 3] {
    place.to_array().map(f64::to_bits)
}
