//! What was drawn last, so that after an edit only what it reached is drawn anew:
//! the drawings of things and their shadows take most of the time.
use glam::DVec2;
use svg::node::element::Group;

use super::Keyed;
use crate::drawing::Pen;
use crate::layout::{Item, Light, Table};

/// A group of the drawing after an edit.
pub struct Again {
    /// As in [`Keyed`].
    pub key: String,
    /// Its nodes; nothing where they are as they were drawn last.
    pub group: Option<Group>,
    /// As in [`Keyed`].
    pub at: Option<DVec2>,
}

impl From<Keyed> for Again {
    fn from(Keyed { key, group, at }: Keyed) -> Self {
        Self {
            key,
            group: Some(group),
            at,
        }
    }
}

/// The things as they were drawn last, from above.
#[derive(Default)]
pub struct Drawn {
    /// What the shadow of each hangs on besides.
    around: Option<(Light, Table, Pen)>,
    /// Each thing, and whether it throws a shadow.
    things: Vec<(Item, bool)>,
}

/// How much of a thing is as it was drawn last.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Same {
    /// Nothing of it.
    Nothing,
    /// It stands elsewhere.
    Shape,
    /// All of it, its shadow too where it throws one.
    All { shadow: bool },
}

impl Drawn {
    /// Begins a drawing; returns what the last one had that may still hold.
    pub(super) fn begin(&mut self, light: &Light, table: &Table, pen: &Pen) -> Self {
        let mut last = std::mem::take(self);
        let as_then = last
            .around
            .as_ref()
            .is_some_and(|(l, t, p)| l == light && t == table && p == pen);
        if !as_then {
            last.things.clear();
        }
        self.around = Some((light.clone(), table.clone(), *pen));
        last
    }

    pub(super) fn same(&self, item: &Item) -> Same {
        match self.things.iter().find(|(last, _)| last.id == item.id) {
            Some((last, shadow)) if last == item => Same::All { shadow: *shadow },
            Some((last, _)) => {
                let moved = Item {
                    at: item.at,
                    ..last.clone()
                };
                if moved == *item {
                    Same::Shape
                } else {
                    Same::Nothing
                }
            }
            None => Same::Nothing,
        }
    }

    pub(super) fn keep(&mut self, item: &Item, shadow: bool) {
        self.things.push((item.clone(), shadow));
    }
}

/// The groups of a drawing in the making.
#[derive(Default)]
pub(super) struct All(pub(super) Vec<Again>);

impl All {
    pub(super) fn push(&mut self, key: String, group: impl Into<Option<Group>>, at: Option<DVec2>) {
        let group = group.into();
        self.0.push(Again { key, group, at });
    }
}
