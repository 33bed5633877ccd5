//! What cloth lies over: a runner on the inner edge of a plate, a napkin on its
//! rim.
use std::collections::BTreeSet;

use super::{Act, Refused, called, name_of};
use crate::catalogue;
use crate::layout::{Id, Item, Layout, Linen};
use crate::scene::{linen_seen, root, silhouette};
use crate::shape::{Region, contains, gap_within};

/// The things a linen would be laid over: what its edge runs across, but for
/// what has its middle on it and so stands there.
#[must_use]
pub fn crossed(layout: &Layout, linen: Id) -> Vec<Id> {
    let linen = layout.linens.iter().find(|o| o.id == linen);
    linen.map_or_else(Vec::new, |linen| {
        let outline = linen_seen(&layout.table, linen);
        let Ok(cloth) = Region::from_polygon(&outline) else {
            return Vec::new();
        };
        let stands = |item: &Item| contains(&outline, item.at.vec());
        let on_table = layout.items.iter().filter(|i| lies_bare(i) && !stands(i));
        let met = on_table.filter(|item| meets(&cloth, item));
        met.map(|item| item.id).collect()
    })
}

/// The linen that lies over a thing, and whether it does; else the uppermost
/// that the thing stands on.
#[must_use]
pub fn cloth_at(layout: &Layout, id: Id) -> Option<(Id, bool)> {
    let id = root(layout, id);
    let item = layout.items.iter().find(|item| item.id == id)?;
    let over = layout.linens.iter().find(|linen| linen.over.contains(&id));
    if let Some(linen) = over {
        return Some((linen.id, true));
    }
    let under = |linen: &&Linen| {
        let outline = linen_seen(&layout.table, linen);
        Region::from_polygon(&outline).is_ok_and(|cloth| meets(&cloth, item))
    };
    let under = layout.linens.iter().rev().find(under)?;
    Some((under.id, false))
}

/// Lays a linen over things on the table, beside those that it lies over
/// already, and on all other cloth.
///
/// # Errors
/// When there is no such linen, or it is locked.
pub fn lay_over(layout: &Layout, linen: Id, ids: &[Id]) -> Result<Act, Refused> {
    let mut after = layout.clone();
    let place = layout.linens.iter().position(|o| o.id == linen);
    let place = place.ok_or_else(|| Refused::Unknown(linen.0.to_string()))?;
    let mut cloth = after.linens.remove(place);
    let meant: BTreeSet<Id> = ids.iter().map(|id| root(layout, *id)).collect();
    let known = layout.items.iter().map(|item| item.id);
    let new = known.filter(|id| meant.contains(id) && !cloth.over.contains(id));
    let new: Vec<Id> = new.collect();
    cloth.over.extend(new);
    after.linens.push(cloth);
    let name = called("done-laid-over", &name_of(layout, linen));
    Act::between(name, layout, &after)
}

/// Lays a linen under things again, or under all of them when none is named;
/// its place among the cloth stays.
///
/// # Errors
/// When there is no such linen, or it is locked.
pub fn lay_under(layout: &Layout, linen: Id, ids: &[Id]) -> Result<Act, Refused> {
    let mut after = layout.clone();
    let cloth = after.linens.iter_mut().find(|o| o.id == linen);
    let cloth = cloth.ok_or_else(|| Refused::Unknown(linen.0.to_string()))?;
    let roots: BTreeSet<Id> = ids.iter().map(|id| root(layout, *id)).collect();
    cloth
        .over
        .retain(|id| !ids.is_empty() && !roots.contains(id));
    let name = called("done-laid-under", &name_of(layout, linen));
    Act::between(name, layout, &after)
}

/// Whether it stands on the table or on cloth, and cloth can lie over it.
fn lies_bare(item: &Item) -> bool {
    item.on.is_none() && !catalogue::is_strewn(&item.prop)
}

fn meets(cloth: &Region, item: &Item) -> bool {
    let own = Region::from_polygon(&silhouette(item));
    own.is_ok_and(|own| gap_within(&own, cloth, 0.0).is_some())
}

#[cfg(test)]
mod tests {
    use super::super::tests::{done, laid};
    use super::super::{move_by, remove, repeat};
    use super::*;
    use crate::layout::Point;
    use crate::scene::{Layer, Scene, in_paint_order};

    /// Keys of the layers from the bottom to the top.
    fn order(layout: &Layout) -> Vec<u16> {
        let id = |layer: Layer<'_>| match layer {
            Layer::Linen(linen) => linen.id.0,
            Layer::Item(item) => item.id.0,
        };
        in_paint_order(layout).into_iter().map(id).collect()
    }

    /// The napkin pulled over the rim of the plate.
    fn thrown() -> Layout {
        let mut layout = laid();
        layout.linens[0].at = Point::new(300, 450);
        layout.linens[0].size = [200, 320];
        layout
    }

    #[test]
    fn a_napkin_goes_over_the_rim_it_crosses_and_under_again() {
        let before = thrown();
        assert_eq!(crossed(&before, Id(1)), [Id(5)], "the plate, not the fork");
        assert_eq!(cloth_at(&before, Id(5)), Some((Id(1), false)), "on it");
        assert_eq!(order(&before), [1, 2, 3, 4, 5, 7, 6], "cloth below all");
        let over = done(&before, lay_over(&before, Id(1), &crossed(&before, Id(1))));
        assert_eq!(order(&over), [5, 7, 1, 2, 3, 4, 6], "over plate and roll");
        assert_eq!(cloth_at(&over, Id(7)), Some((Id(1), true)), "by the roll");
        let under = done(&over, lay_under(&over, Id(1), &[]));
        assert_eq!(under, before, "as it was");
        let again = done(&over, lay_under(&over, Id(1), &[Id(7)]));
        assert_eq!(again, before, "by what lies on the plate");
        assert!(lay_over(&before, Id(99), &[]).is_err(), "no such cloth");
        assert!(lay_under(&before, Id(99), &[]).is_err(), "no such cloth");
    }

    #[test]
    fn what_stands_on_the_cloth_is_not_covered() {
        let mut before = thrown();
        (before.linens[0].at, before.linens[0].size) = (Point::new(300, 620), [230, 320]);
        assert_eq!(crossed(&before, Id(1)), [Id(6)], "the plate stands on it");
        before.items[4].prop = "crumbs".into();
        before.items[4].at = Point::new(150, 700);
        assert_eq!(crossed(&before, Id(1)), [], "strewn things are not");
    }

    #[test]
    fn a_finger_meets_the_cloth_first_and_little_is_seen_below() {
        let before = thrown();
        let over = done(&before, lay_over(&before, Id(1), &[Id(5)]));
        let rim = glam::DVec2::new(300.0, 606.0);
        let hit = |layout: &Layout| Scene::of(layout, None).hit(rim);
        assert_eq!(hit(&before), [Id(5), Id(1)], "the plate on the napkin");
        assert_eq!(hit(&over), [Id(1), Id(5)], "the napkin on the plate");
        let seen = |layout: &Layout, id: u16| -> f64 {
            let scene = Scene::of(layout, None);
            let own = |n: &usize| scene.pieces[*n].owner == Id(id);
            let own = (0..scene.pieces.len()).filter(own);
            own.map(|n| scene.seen(n).area()).sum()
        };
        let mut plain = before.clone();
        plain.items[3].parts.rim = Some(crate::layout::Part::plain(Default::default()));
        let mut covered = over;
        covered.items[3].parts.rim = plain.items[3].parts.rim.clone();
        let lost = seen(&plain, 5) - seen(&covered, 5);
        let gained = seen(&covered, 1) - seen(&plain, 1);
        assert!(lost > 100.0, "some of the rim: {lost}");
        assert!((lost - gained).abs() < 0.5, "all of it to the napkin");
    }

    #[test]
    fn what_it_lies_over_goes_with_things_that_go_and_come() {
        let before = thrown();
        let over = done(&before, lay_over(&before, Id(1), &[Id(5), Id(6)]));
        let gone = done(&over, remove(&over, &[Id(5)]));
        assert_eq!(gone.linens[0].over, [Id(6)], "not what is gone");
        let twice = done(&over, repeat(&over, Id(1), false));
        assert_eq!(twice.linens[1].over, [], "a copy lies on the table");
        let moved = done(&over, move_by(&over, Id(1), false, [50, 0]));
        assert_eq!(moved.linens[0].over, over.linens[0].over, "it stays so");
    }

    #[test]
    fn the_cloth_laid_last_lies_on_the_other() {
        let mut before = thrown();
        let mut runner = before.linens[0].clone();
        runner.id = Id(39);
        before.linens.push(runner);
        let over = done(&before, lay_over(&before, Id(1), &[Id(5)]));
        assert_eq!(order(&over)[..4], [39, 5, 7, 1], "above the runner");
        let both = done(&over, lay_over(&over, Id(39), &[Id(5)]));
        assert_eq!(order(&both)[..4], [5, 7, 1, 39], "above the napkin");
    }
}
