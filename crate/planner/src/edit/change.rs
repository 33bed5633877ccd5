//! What changed between two layouts, as a value that can be applied,
//! reverted, kept in a journal and sent to another instance.
use std::collections::{BTreeMap, BTreeSet};

use serde::Serialize;
use serde::ser::{SerializeStruct, Serializer};
use thiserror::Error;

use super::object::{Key, Object, Placed};
use crate::layout::{Id, Layout};
use crate::order;

/// One object before and after; absent where it was not there.
#[derive(Clone, Debug, PartialEq)]
pub struct Change {
    /// Which object.
    pub key: Key,
    /// As it was.
    pub before: Option<Placed>,
    /// As it is now.
    pub after: Option<Placed>,
}

impl Serialize for Change {
    fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
        let mut out = s.serialize_struct("Change", 4)?;
        out.serialize_field("kind", self.key.kind())?;
        out.serialize_field("id", &self.key.id())?;
        out.serialize_field("before", &self.before)?;
        out.serialize_field("after", &self.after)?;
        out.end()
    }
}

/// An edit: each changed object once.
///
/// An object whose place in its array shifted only because others came or
/// went is not part of it. Taking out every changed object and putting the
/// other side back at its places, lowest first, gives exactly the other
/// layout, because what stays keeps its order.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
#[serde(transparent)]
pub struct Edit(pub Vec<Change>);

/// Why an edit does not fit a layout.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Error)]
pub enum EditError {
    /// The object is not as the edit found it.
    #[error("{} {:?} is not as this edit found it", .0.kind(), .0.id())]
    Stale(Key),
    /// Its place in its array does not exist.
    #[error("{} {:?} has no such place", .0.kind(), .0.id())]
    Place(Key),
    /// The layout would have doubled ids or references that lead nowhere.
    #[error("the layout would have {0} references that lead nowhere")]
    References(usize),
    /// The object would break a limit, so that the saved file would not open.
    #[error("{} {:?} would break a limit of the layout", .0.kind(), .0.id())]
    Limits(Key),
}

impl Edit {
    /// Everything that differs between two layouts, order included. Their
    /// identities are not compared.
    #[must_use]
    pub fn between(before: &Layout, after: &Layout) -> Self {
        let mut out = Vec::new();
        let singles = [
            Key::Head,
            Key::Table,
            Key::Floor,
            Key::Frame,
            Key::Camera,
            Key::Rig,
            Key::Light,
            Key::Dates,
            Key::Intended,
        ];
        for key in singles {
            let (old, new) = (Placed::find(before, key), Placed::find(after, key));
            if old != new {
                out.push(Change {
                    key,
                    before: old,
                    after: new,
                });
            }
        }
        list(&mut out, &before.groups, &after.groups, Object::Group);
        list(&mut out, &before.linens, &after.linens, Object::Linen);
        list(&mut out, &before.items, &after.items, Object::Item);
        list(&mut out, &before.seats, &after.seats, Object::Seat);
        list(&mut out, &before.people, &after.people, Object::Person);
        list(&mut out, &before.hands, &after.hands, Object::Hand);
        list(
            &mut out,
            &before.exposures,
            &after.exposures,
            Object::Exposure,
        );
        list(&mut out, &before.crops, &after.crops, Object::Crop);
        list(&mut out, &before.cards, &after.cards, Object::Card);
        Self(out)
    }

    /// Makes the change. On an error the layout is as it was.
    ///
    /// # Errors
    /// An object is not as the edit found it, or a place does not exist.
    pub fn apply(&self, layout: &mut Layout) -> Result<(), EditError> {
        for change in &self.0 {
            if Placed::find(layout, change.key) != change.before {
                return Err(EditError::Stale(change.key));
            }
        }
        let mut next = layout.clone();
        for change in self.0.iter().filter(|c| c.before.is_some()) {
            take(&mut next, change.key);
        }
        let mut coming: Vec<(&Placed, Key)> = self
            .0
            .iter()
            .filter_map(|c| Some((c.after.as_ref()?, c.key)))
            .collect();
        order::sort(&mut coming, |a, b| a.0.place.cmp(&b.0.place));
        for (placed, key) in coming {
            if placed.object.key() != key || !put(&mut next, placed) {
                return Err(EditError::Place(key));
            }
        }
        *layout = next;
        Ok(())
    }

    /// The edit that takes this one back.
    #[must_use]
    pub fn reverted(&self) -> Self {
        let swap = |c: &Change| Change {
            key: c.key,
            before: c.after.clone(),
            after: c.before.clone(),
        };
        Self(self.0.iter().map(swap).collect())
    }

    /// Whether nothing changes.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// The objects that change, come or go, each once.
    pub fn keys(&self) -> impl Iterator<Item = Key> {
        self.0.iter().map(|c| c.key)
    }

    /// The ids of every object that changes, comes or goes.
    #[must_use]
    pub fn touched(&self) -> BTreeSet<Id> {
        let mut ids = BTreeSet::new();
        ids.extend(self.0.iter().filter_map(|c| c.key.id()));
        ids
    }

    /// The ids of the objects that come, in the order of their arrays.
    #[must_use]
    pub fn added(&self) -> Vec<Id> {
        let new = self.0.iter().filter(|c| c.before.is_none());
        new.filter_map(|c| c.key.id()).collect()
    }
}

/// The differences of one array.
fn list<T: Clone + PartialEq>(
    out: &mut Vec<Change>,
    before: &[T],
    after: &[T],
    wrap: fn(T) -> Object,
) {
    if before != after {
        let objects = |list: &[T]| list.iter().cloned().map(wrap).collect();
        differences(out, objects(before), objects(after));
    }
}

fn placed(objects: Vec<Object>) -> BTreeMap<Key, Placed> {
    let each = |(place, object): (usize, Object)| (object.key(), Placed { place, object });
    let mut all = BTreeMap::new();
    all.extend(objects.into_iter().enumerate().map(each));
    all
}

fn differences(out: &mut Vec<Change>, before: Vec<Object>, after: Vec<Object>) {
    let (mut old, new) = (placed(before), placed(after));
    // What is the same on both sides, in its old order, by its new place.
    let mut same: Vec<(usize, usize, Key)> = new
        .iter()
        .filter_map(|(key, b)| {
            let a = old.get(key).filter(|a| a.object == b.object)?;
            Some((a.place, b.place, *key))
        })
        .collect();
    order::sort(&mut same, Ord::cmp);
    let places: Vec<usize> = same.iter().map(|(_, place, _)| *place).collect();
    let mut stays = vec![false; new.len()];
    for i in longest_rising(&places) {
        stays[same[i].1] = true;
    }
    for (key, after) in new {
        let before = old.remove(&key);
        if !stays[after.place] {
            out.push(Change {
                key,
                before,
                after: Some(after),
            });
        }
    }
    for (key, gone) in old {
        out.push(Change {
            key,
            before: Some(gone),
            after: None,
        });
    }
}

/// Indices of a longest rising run of `values` (patience sorting): these can
/// stay where they are while the others move.
fn longest_rising(values: &[usize]) -> Vec<usize> {
    let mut tails: Vec<usize> = Vec::new();
    let mut before = vec![usize::MAX; values.len()];
    for (i, value) in values.iter().enumerate() {
        let pile = tails.partition_point(|&t| values[t] < *value);
        if pile > 0 {
            before[i] = tails[pile - 1];
        }
        if pile == tails.len() {
            tails.push(i);
        } else {
            tails[pile] = i;
        }
    }
    let mut out = Vec::new();
    let mut at = tails.last().copied().unwrap_or(usize::MAX);
    while at != usize::MAX {
        out.push(at);
        at = before[at];
    }
    out.reverse();
    out
}

/// Takes an object out of its array; what there is one of stays to be
/// overwritten.
fn take(layout: &mut Layout, key: Key) {
    match key {
        Key::Group(id) => layout.groups.retain(|o| o.id != id),
        Key::Linen(id) => layout.linens.retain(|o| o.id != id),
        Key::Item(id) => layout.items.retain(|o| o.id != id),
        Key::Seat(id) => layout.seats.retain(|o| o.id != id),
        Key::Person(id) => layout.people.retain(|o| o.id != id),
        Key::Hand(id) => layout.hands.retain(|o| o.id != id),
        Key::Exposure(id) => layout.exposures.retain(|o| o.id != id),
        Key::Crop(id) => layout.crops.retain(|o| o.id != id),
        Key::Card(id) => layout.cards.retain(|o| o.id != id),
        _ => {}
    }
}

/// Puts an object at its place; false when there is no such place.
fn put(layout: &mut Layout, placed: &Placed) -> bool {
    fn insert<T: Clone>(list: &mut Vec<T>, place: usize, object: &T) -> bool {
        let fits = place <= list.len();
        if fits {
            list.insert(place, object.clone());
        }
        fits
    }
    let place = placed.place;
    match &placed.object {
        Object::Head(o) => layout.head = o.clone(),
        Object::Table(o) => layout.table = o.clone(),
        Object::Floor(o) => layout.floor = o.clone(),
        Object::Frame(o) => layout.frame = o.clone(),
        Object::Camera(o) => layout.camera = o.clone(),
        Object::Rig(o) => layout.rig = o.clone(),
        Object::Light(o) => layout.light = o.clone(),
        Object::Dates(o) => layout.dates = o.clone(),
        Object::Intended(o) => layout.intended.clone_from(o),
        Object::Group(o) => return insert(&mut layout.groups, place, o),
        Object::Linen(o) => return insert(&mut layout.linens, place, o),
        Object::Item(o) => return insert(&mut layout.items, place, o),
        Object::Seat(o) => return insert(&mut layout.seats, place, o),
        Object::Person(o) => return insert(&mut layout.people, place, o),
        Object::Hand(o) => return insert(&mut layout.hands, place, o),
        Object::Exposure(o) => return insert(&mut layout.exposures, place, o),
        Object::Crop(o) => return insert(&mut layout.crops, place, o),
        Object::Card(o) => return insert(&mut layout.cards, place, o),
    }
    true
}
