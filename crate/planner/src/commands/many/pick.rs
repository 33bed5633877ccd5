//! Which things are picked, when several are at once.
//!
//! What moves as one is picked as one: a thing with its group and all that lies
//! on them. A list of picked things names only those that lie in no other of
//! them; what lies on a board is named beside it, as a board is a support and
//! no dish. Locked things are picked like any other.
use std::collections::BTreeSet;

use glam::DVec2;

use super::super::stack::{is_board, moving, moving_all};
use crate::layout::{Id, Item, Layout};
use crate::scene::Scene;
use crate::shape::{Bounds, perimeter, walk};

/// Points of a loop that are looked at; of a longer one every so many.
const MOST: usize = 1024;
/// Pieces an outline is cut into at least to see how much of it lies inside.
const PIECES: f64 = 48.0;

/// What is picked when these are: all that moves along with them.
#[must_use]
pub fn picked(layout: &Layout, ids: &[Id]) -> Vec<Id> {
    let all = moving_all(layout, ids);
    let boards = boards(layout);
    let lies = |o: &Item| {
        let dish = o.on.filter(|on| !boards.contains(on));
        dish.is_some_and(|on| all.contains(&on))
    };
    let linens = layout.linens.iter().map(|o| o.id);
    let items = layout.items.iter().filter(|o| !lies(o)).map(|o| o.id);
    linens.chain(items).filter(|id| all.contains(id)).collect()
}

/// Everything there is to pick.
#[must_use]
pub fn pick_all(layout: &Layout) -> Vec<Id> {
    let items = layout.items.iter().map(|o| o.id);
    let linens = layout.linens.iter().map(|o| o.id);
    picked(layout, &linens.chain(items).collect::<Vec<_>>())
}

/// Picks a thing along with those picked, by the dish it lies in; or no longer,
/// when it is picked, with all that would take it along.
#[must_use]
pub fn toggle(layout: &Layout, before: &[Id], id: Id) -> Vec<Id> {
    if moving_all(layout, before).contains(&id) {
        let stay = before.iter().copied();
        let stay = stay.filter(|other| !moving(layout, *other).contains(&id));
        return picked(layout, &stay.collect::<Vec<_>>());
    }
    let mut ids = before.to_vec();
    ids.push(dish(layout, id));
    picked(layout, &ids)
}

/// Picks what lies in a loop drawn on the table, mm, along with those picked:
/// each thing of whose outline more than half lies inside. Its middle alone does
/// not do: it would take the runner along with the bowl in the middle of it.
/// Where the loop crosses itself or goes round twice, all it goes round is inside.
#[must_use]
pub fn pick_within(layout: &Layout, scene: &Scene, path: &[DVec2], before: &[Id]) -> Vec<Id> {
    let every = path.len().div_ceil(MOST).max(1);
    let path: Vec<DVec2> = path.iter().step_by(every).copied().collect();
    let boards = boards(layout);
    let lies = |o: &&Item| o.on.is_some_and(|on| !boards.contains(&on));
    // What lies in a dish goes by the dish, and hands and crops are no things.
    let linens = layout.linens.iter().map(|o| o.id);
    let items = layout.items.iter().filter(|o| !lies(o)).map(|o| o.id);
    let judged: BTreeSet<Id> = linens.chain(items).collect();
    let mut ids = before.to_vec();
    if let Some(bounds) = Bounds::around(&path) {
        let judged = scene.touchable.iter().filter(|(id, _)| judged.contains(id));
        let inside = judged.filter(|(_, outline)| mostly_within(&path, bounds, outline));
        ids.extend(inside.map(|(id, _)| *id));
    }
    picked(layout, &ids)
}

/// The dish a thing lies in, and that in turn; itself when it lies in none.
fn dish(layout: &Layout, id: Id) -> Id {
    let boards = boards(layout);
    let mut at = id;
    // A layout's `on` is acyclic, and no stack is taller than its items.
    for _ in 0..layout.items.len() {
        let item = layout.items.iter().find(|o| o.id == at);
        match item.and_then(|o| o.on).filter(|on| !boards.contains(on)) {
            Some(below) => at = below,
            None => break,
        }
    }
    at
}

fn boards(layout: &Layout) -> BTreeSet<Id> {
    let boards = layout.items.iter().filter(|o| is_board(o));
    boards.map(|o| o.id).collect()
}

/// Whether more than half of an outline lies inside a loop.
fn mostly_within(path: &[DVec2], bounds: Bounds, outline: &[DVec2]) -> bool {
    if !Bounds::around(outline).is_some_and(|own| own.meets(bounds)) {
        return false;
    }
    let all = perimeter(outline);
    let steps = walk(outline, all / PIECES);
    let inside = steps.iter().filter(|step| goes_round(path, step.mid));
    let length: f64 = inside.map(|step| step.length).sum();
    length * 2.0 > all
}

/// Whether a closed line goes round a point, however often.
fn goes_round(path: &[DVec2], p: DVec2) -> bool {
    let mut turns = 0;
    let Some(mut a) = path.last() else {
        return false;
    };
    for b in path {
        let side = (*b - *a).perp_dot(p - *a);
        if a.y <= p.y && b.y > p.y && side > 0.0 {
            turns += 1;
        } else if a.y > p.y && b.y <= p.y && side < 0.0 {
            turns -= 1;
        }
        a = b;
    }
    turns != 0
}
