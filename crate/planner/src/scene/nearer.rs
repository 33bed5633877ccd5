//! Which of two things hides the other from a lens.
//!
//! A ray from the lens runs outward as it falls, so where a line parts two
//! things, the one on the side of the place under the lens is met first. Things
//! that lie over one another keep the order they were laid in.
use glam::DVec2;

use super::alike::Alike;
use super::seen_as::lifted;
use super::{Layer, in_paint_order, rise, silhouette};
use crate::layout::{Id, Item, Layout};
use crate::optics::View;
use crate::shape::{Bounds, Region, gap, hull};

/// Things lower than this hide nothing but what they lie on, mm. Our choice.
const LOW: f64 = 4.0;

/// What was found out of stacks.
#[derive(Clone, Debug, Default)]
pub(super) struct Met(Vec<Stack>);

#[derive(Clone, Debug)]
struct Stack {
    id: Id,
    /// The box it is seen in.
    shown: Option<Bounds>,
    /// Those laid before it whose boxes meet its own, and whether they are met
    /// first.
    others: Vec<(Id, bool)>,
}

impl Met {
    fn of(&self, id: Id) -> Option<&Stack> {
        self.0.iter().find(|stack| stack.id == id)
    }
}

/// Linens and items from the bottom to the top. Of the things no cloth lies
/// over, what is farther from a lens comes first.
#[must_use]
pub fn in_view_order(layout: &Layout, view: View) -> Vec<Layer<'_>> {
    in_view_order_after(layout, view, None).0
}

/// The same, and what was found out on the way; of what was `known` of the
/// layout before in this view, what still holds is taken over.
pub(super) fn in_view_order_after<'a>(
    layout: &'a Layout,
    view: View,
    known: Option<(&Alike<'_>, &Met)>,
) -> (Vec<Layer<'a>>, Met) {
    let mut order = in_paint_order(layout);
    let mut met = Met::default();
    let View::Lens { under, .. } = view else {
        return (order, met);
    };
    let cloth = |layer: &Layer<'_>| matches!(layer, Layer::Linen(_));
    let free = order.iter().rposition(cloth).map_or(0, |n| n + 1);
    let mut stacks: Vec<Vec<&Item>> = Vec::new();
    for layer in order.drain(free..) {
        let Layer::Item(item) = layer else {
            continue;
        };
        match stacks.last_mut() {
            Some(stack) if item.on.is_some() => stack.push(item),
            _ => stacks.push(vec![item]),
        }
    }
    for n in far_to_near(layout, &stacks, (view, under), known, &mut met) {
        order.extend(stacks[n].iter().map(|i| Layer::Item(i)));
    }
    (order, met)
}

/// The order of stacks, farthest from the lens first, each by its place.
fn far_to_near(
    layout: &Layout,
    stacks: &[Vec<&Item>],
    (view, under): (View, DVec2),
    known: Option<(&Alike<'_>, &Met)>,
    met: &mut Met,
) -> Vec<usize> {
    let roots: Vec<&Item> = stacks.iter().map(|stack| stack[0]).collect();
    // What stands on the table is seen alike when it looks alike.
    let was = |i: &&Item| -> Option<&Stack> {
        let (_, met) = known.filter(|k| i.on.is_none() && k.0.looks(i.id))?;
        met.of(i.id)
    };
    let was: Vec<Option<&Stack>> = roots.iter().map(was).collect();
    let shown: Vec<Option<Bounds>> = roots
        .iter()
        .zip(&was)
        .map(|(i, was)| match was {
            Some(was) => was.shown,
            None => {
                let (outline, rise) = (silhouette(i), rise(layout, i));
                let ends = [rise.base, rise.top].map(|z| lifted(&outline, view, z));
                Bounds::around(&ends.concat())
            }
        })
        .collect();
    let mut feet: Vec<Option<Option<Region>>> = vec![None; roots.len()];
    let mut waits: Vec<Vec<usize>> = vec![Vec::new(); roots.len()];
    for b in 0..roots.len() {
        let mut others = Vec::new();
        for a in 0..b {
            let meet = shown[a].zip(shown[b]).is_some_and(|(x, y)| x.meets(y));
            if !meet {
                continue;
            }
            let low = f64::from(roots[a].height.max(roots[b].height)) < LOW;
            let first_is_nearer = !low && {
                let own = roots[a].id;
                let same = was[a].and(was[b]);
                let known = same.and_then(|b| b.others.iter().find(|other| other.0 == own));
                let is = known.map_or_else(
                    || {
                        for n in [a, b] {
                            feet[n].get_or_insert_with(|| foot(roots[n]));
                        }
                        nearer(feet[a].as_ref(), feet[b].as_ref(), under)
                    },
                    |known| known.1,
                );
                others.push((own, is));
                is
            };
            let (behind, front) = if first_is_nearer { (b, a) } else { (a, b) };
            waits[front].push(behind);
        }
        met.0.push(Stack {
            id: roots[b].id,
            shown: shown[b],
            others,
        });
    }
    let mut done = vec![false; roots.len()];
    let mut order = Vec::with_capacity(roots.len());
    while order.len() < roots.len() {
        let free = |n: &usize| !done[*n] && waits[*n].iter().all(|m| done[*m]);
        let left = |n: &usize| !done[*n];
        // Three things may each hide the next; the one laid first then gives way.
        let next = (0..roots.len())
            .find(free)
            .or_else(|| (0..roots.len()).find(left))
            .unwrap_or_default();
        done[next] = true;
        order.push(next);
    }
    order
}

fn foot(item: &Item) -> Option<Region> {
    Region::from_polygon(&hull(&silhouette(item))).ok()
}

/// Whether the first of two things is met first; not when they overlap.
fn nearer(a: Option<&Option<Region>>, b: Option<&Option<Region>>, under: DVec2) -> bool {
    let (Some(Some(a)), Some(Some(b))) = (a, b) else {
        return false;
    };
    gap(a, b).is_some_and(|g| {
        let way = g.to - g.from;
        g.distance > 0.0 && (under - (g.from + g.to) * 0.5).dot(way) < 0.0
    })
}
