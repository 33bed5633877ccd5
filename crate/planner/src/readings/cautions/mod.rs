//! What to take care of on the set, one line each, where it applies. Every
//! line ends by deferring: local rules and qualified or licensed people come
//! first. Nothing here is ever called safe.
mod food;
mod set;
#[cfg(test)]
mod tests;

pub(super) use food::is_broth;

use serde::Serialize;

use super::study::Study;
use crate::layout::Layout;

/// What part of the work a caution concerns.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Concern {
    /// Camera, rig and light.
    Camera,
    /// Table and what stands on it.
    Table,
    /// People at the table.
    Hands,
    /// Food and who eats it.
    Food,
}

/// One caution.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Caution {
    /// Which it is.
    pub id: &'static str,
    /// What it concerns.
    pub concern: Concern,
    /// The line.
    pub line: String,
}

impl Caution {
    /// Whether its line has at most so many letters, as the foot of a picture
    /// takes.
    #[must_use]
    pub fn is_short(&self, most: usize) -> bool {
        self.line.chars().count() <= most
    }
}

/// The cautions that apply to a layout, in a fixed order.
#[must_use]
pub fn cautions(layout: &Layout) -> Vec<Caution> {
    let study = Study::new(layout);
    let mut out = Vec::new();
    set::add(&study, &mut out);
    food::add(&study, &mut out);
    out
}

/// Adds a caution.
fn put(out: &mut Vec<Caution>, id: &'static str, concern: Concern, line: String) {
    out.push(Caution { id, concern, line });
}

/// Names of the things that are so, each once, in the order of their numbers.
fn named(study: &Study<'_>, so: impl Fn(&crate::layout::Item) -> bool) -> Vec<String> {
    let mut names = Vec::new();
    let mut items: Vec<_> = study.layout().items.iter().filter(|i| so(i)).collect();
    crate::order::sort(&mut items, |a, b| a.id.cmp(&b.id));
    for item in items {
        let name = study.name(item.id);
        if !names.contains(&name) {
            names.push(name);
        }
    }
    names
}
