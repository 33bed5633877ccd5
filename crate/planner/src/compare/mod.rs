//! What changed from one layout to another, told by printed number.
//!
//! What moves as one is one change: a dish with what lies on it, a place
//! setting, things that share a number and a motion. Identity, version and the
//! next free numbers are no change, nor is a lock. The order of a list counts
//! only where it means something: cloths and things that overlap lie over one
//! another, exposures are numbered and people lettered.
mod cloth;
mod hands;
mod motion;
mod picture;
mod set;
#[cfg(test)]
mod tests;
mod things;

pub use hands::doing;

use serde::Serialize;

use crate::edit::{Edit, Object};
use crate::layout::{Id, Item, Layout, Point, Units};
use crate::order;
use crate::words::{Arg, length, rounded, say, way};

/// What a change is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Topic {
    /// Things on the table and their groups.
    Thing,
    /// Cloth.
    Linen,
    /// What a hand does, and where.
    Hand,
    /// Exposures, and how things are in them.
    Exposure,
    /// Crops and copy space.
    Crop,
    /// The light and its cards.
    Light,
    /// Frame and camera.
    Camera,
    /// The table, its surface and the floor.
    Table,
    /// Title, note, look.
    Head,
    /// Places at the table and who sits there.
    People,
    /// What holds the camera, and the room.
    Rig,
    /// Dates, units, what is meant to be so.
    Plan,
}

impl Topic {
    /// Whether a client is shown it: not who works with what, and when.
    #[must_use]
    pub const fn is_shown_to_client(self) -> bool {
        !matches!(self, Self::People | Self::Rig | Self::Plan)
    }
}

/// One change.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Change {
    /// The printed number of the chief thing that changed.
    pub number: Option<u16>,
    /// What it is about.
    pub topic: Topic,
    /// All that it carries, the chief one first.
    pub objects: Vec<Id>,
    /// What changed, in words.
    pub sentence: String,
    /// Where the chief one was and is, when it moved.
    pub moved: Option<[Point; 2]>,
}

/// Everything that changed, by printed number, then the rest.
#[must_use]
pub fn changes(before: &Layout, after: &Layout) -> Vec<Change> {
    let mut sides = Sides {
        before,
        after,
        told: Vec::new(),
    };
    let edit = Edit::between(before, after);
    things::items(&mut sides, &edit);
    cloth::linens(&mut sides, &edit);
    for change in &edit.0 {
        let old = change.before.as_ref().map(|p| &p.object);
        let new = change.after.as_ref().map(|p| &p.object);
        if old != new {
            one(&mut sides, old, new);
        }
    }
    things::groups(&mut sides, &edit);
    hands::all(&mut sides, &edit);
    let people = |l: &Layout| l.people.iter().map(|o| o.id).collect();
    sides.tell_order(Topic::People, "compare-people", &people);
    let exposures = |l: &Layout| l.exposures.iter().map(|o| o.id).collect();
    sides.tell_order(Topic::Exposure, "compare-exposures", &exposures);
    if before.extra != after.extra {
        sides.tell(Topic::Plan, &[], "compare-newer", &[]);
    }
    sides.sorted()
}

/// Whether two layouts are versions of one: the same, one a copy of the other,
/// or with half of their things or more in common.
#[must_use]
pub fn are_versions(one: &Layout, other: &Layout) -> bool {
    let copied = one.based_on == Some(other.id) || other.based_on == Some(one.id);
    let common = one.items.iter().filter(|a| {
        let same = |b: &&Item| (b.id, b.number, &b.prop) == (a.id, a.number, &a.prop);
        other.items.iter().any(|b| same(&b))
    });
    let fewest = one.items.len().min(other.items.len());
    one.id == other.id || copied || (fewest > 0 && common.count() * 2 >= fewest)
}

/// Tells what changed in what is not clustered.
fn one(sides: &mut Sides<'_>, old: Option<&Object>, new: Option<&Object>) {
    match (old, new) {
        (Some(Object::Seat(_)), _) | (_, Some(Object::Seat(_))) => hands::seat(sides, old, new),
        (Some(Object::Person(_)), _) | (_, Some(Object::Person(_))) => {
            hands::person(sides, old, new);
        }
        (Some(Object::Exposure(_)), _) | (_, Some(Object::Exposure(_))) => {
            picture::exposure(sides, old, new);
        }
        (Some(Object::Crop(_)), _) | (_, Some(Object::Crop(_))) => picture::crop(sides, old, new),
        (Some(Object::Card(_)), _) | (_, Some(Object::Card(_))) => set::card(sides, old, new),
        (Some(old), Some(new)) => set::single(sides, old, new),
        _ => {}
    }
}

/// The two layouts and what has been told of them.
struct Sides<'a> {
    before: &'a Layout,
    after: &'a Layout,
    told: Vec<Change>,
}

/// What fills the places of a sentence.
type Args<'a> = &'a [(&'a str, Arg)];

/// A sentence that lacks only what it is about.
type Said<'a> = (&'a str, Vec<(&'a str, Arg)>);

/// A sentence of a value that is another than it was.
fn instead<'a>(id: &'a str, [before, after]: [Arg; 2]) -> Said<'a> {
    (id, vec![("before", before), ("after", after)])
}

/// A sentence with nothing to fill in.
const fn plain(id: &str) -> Said<'_> {
    (id, Vec::new())
}

impl Sides<'_> {
    /// Tells of what has no number.
    fn tell(&mut self, topic: Topic, objects: &[Id], id: &str, args: Args<'_>) {
        self.put(topic, objects, say(id, args), None);
    }

    /// The same in a sentence that is ready, of what moved if it did.
    fn put(&mut self, topic: Topic, objects: &[Id], told: String, path: Option<[Point; 2]>) {
        self.told.push(Change {
            number: None,
            topic,
            objects: objects.to_vec(),
            sentence: told,
            moved: path,
        });
    }

    /// Tells each of these of one object; where nothing was told of it since
    /// `start`, that something else changed.
    fn tell_all(
        &mut self,
        topic: Topic,
        objects: &[Id],
        start: usize,
        what: &Arg,
        told: Vec<Said<'_>>,
    ) {
        for (id, mut args) in told {
            args.push(("what", what.clone()));
            self.tell(topic, objects, id, &args);
        }
        if self.told.len() == start {
            self.tell(topic, objects, "compare-else", &[("what", what.clone())]);
        }
    }

    /// Tells of those in a list that do not follow each other as they did.
    fn tell_order(&mut self, topic: Topic, id: &str, ids: &dyn Fn(&Layout) -> Vec<Id>) {
        let (old, new) = (ids(self.before), ids(self.after));
        let kept = |list: &[Id], other: &[Id]| -> Vec<Id> {
            list.iter()
                .copied()
                .filter(|id| other.contains(id))
                .collect()
        };
        let (old, new) = (kept(&old, &new), kept(&new, &old));
        let apart = old.iter().zip(&new).filter(|(a, b)| a != b);
        let apart: Vec<Id> = apart.map(|(_, id)| *id).collect();
        if !apart.is_empty() {
            self.tell(topic, &apart, id, &[]);
        }
    }

    /// Tells how an object moved and by how many half degrees it turned, if it
    /// did.
    fn tell_motion(&mut self, topic: Topic, objects: &[Id], what: &Arg, at: [Point; 2], half: i32) {
        let path = (at[0] != at[1]).then_some(at);
        if let Some(told) = self.motion(what, path, half) {
            self.put(topic, objects, told, path);
        }
    }

    /// A length in the units of the later layout.
    fn length(&self, mm: i32) -> Arg {
        Arg::Text(length(f64::from(mm), self.after.head.units))
    }

    /// The layout's units.
    fn units(&self) -> Units {
        self.after.head.units
    }

    /// Two lengths, as they are said.
    fn lengths(&self, old: i32, new: i32) -> [Arg; 2] {
        [self.length(old), self.length(new)]
    }

    /// Width and depth as they are said.
    fn sides_of(&self, [width, depth]: [i32; 2]) -> Arg {
        let args = [("width", self.length(width)), ("depth", self.length(depth))];
        Arg::Text(say("compare-sides", &args))
    }

    /// How far, and which way as the picture shows it.
    fn path(&self, [from, to]: [Point; 2]) -> [(&'static str, Arg); 2] {
        let by = to.vec() - from.vec();
        let far = length(by.length(), self.units());
        let which = way(by, &self.after.frame);
        [("by", Arg::Text(far)), ("way", Arg::Text(which))]
    }

    /// The sentence that something moved, of these words.
    fn moved(&self, id: &str, what: &Arg, path: [Point; 2]) -> String {
        let [by, which] = self.path(path);
        say(id, &[("what", what.clone()), by, which])
    }

    /// The sentence that something moved and turned, of what it did.
    fn motion(&self, what: &Arg, path: Option<[Point; 2]>, half: i32) -> Option<String> {
        let half = (half + 360).rem_euclid(720) - 360;
        let id = match (path, half) {
            (None, 0) => return None,
            (Some(path), 0) => return Some(self.moved("compare-moved", what, path)),
            (None, 1..) => "compare-turned-clockwise",
            (None, _) => "compare-turned-anticlockwise",
            (Some(_), 1..) => "compare-moved-clockwise",
            (Some(_), _) => "compare-moved-anticlockwise",
        };
        let degrees = rounded(f64::from(half.abs()) * 0.5);
        let mut args = vec![("what", what.clone()), ("degrees", Arg::Text(degrees))];
        if let Some(path) = path {
            args.extend(self.path(path));
        }
        Some(say(id, &args))
    }

    /// By number, then topic, then id; what things of one number have in
    /// common is told once.
    fn sorted(self) -> Vec<Change> {
        let mut all: Vec<Change> = Vec::with_capacity(self.told.len());
        for change in self.told {
            let same = all.iter_mut().find(|c| {
                let shared = c.number.is_some() && c.moved.is_none() && change.moved.is_none();
                shared && c.number == change.number && c.sentence == change.sentence
            });
            match same {
                Some(same) => same.objects.extend(change.objects),
                None => all.push(change),
            }
        }
        let key = |c: &Change| {
            (
                c.number.unwrap_or(u16::MAX),
                c.topic,
                c.objects.first().copied(),
            )
        };
        order::sort(&mut all, |a, b| key(a).cmp(&key(b)));
        all
    }
}
