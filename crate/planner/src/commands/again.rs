//! Things laid again: beside themselves, along a line, round a middle.
use std::collections::BTreeSet;

use glam::DVec2;

use super::stack::{along, moving_all};
use super::{Act, Refused, called, fresh_id, name_of};
use crate::layout::{Extra, Group, Id, Layout, Linen, Point, Role, Turn};
use crate::scene::{linen_span, silhouette};
use crate::shape::{Bounds, contains, frame_outline};

/// Air between a thing and its repeat, mm (our choice).
const BESIDE: i32 = 40;
/// Most copies at a time.
const MOST: usize = 60;

/// Lays a linen or an item again beside itself, with its group unless it is
/// taken `alone`, and with what stands on them; changes nothing when it is neither.
///
/// # Errors
/// None so far as nothing there changes.
pub fn repeat(layout: &Layout, id: Id, alone: bool) -> Result<Act, Refused> {
    let mut after = layout.clone();
    let name = called("done-repeated", &name_of(layout, id));
    let along = along(layout, id, alone);
    let item = layout.items.iter().find(|o| o.id == id);
    let across = item.map_or(0, |o| o.size.extent()[0] + BESIDE);
    let beside = |at: Point| at.moved(across, 0);
    let below = |linen: &Linen| linen.at.moved(0, linen.size[1] / 2 + BESIDE);
    copy(layout, &mut after, &along, alone, &|place| match place {
        Place::Item(at, turn) => (beside(at), turn),
        Place::Linen(linen) => (below(linen), linen.turn),
    });
    Act::between(name, layout, &after)
}

/// The layout with things laid again, as they lie to each other: beside
/// themselves where that is within the frame, on one side or another, else to
/// the right.
pub(super) fn repeat_beside(layout: &Layout, ids: &[Id]) -> Layout {
    let all = chosen(layout, ids);
    let mut after = layout.clone();
    let Some(own) = bounds(layout, &all) else {
        return after;
    };
    let [right, down] = (own.size() + DVec2::splat(f64::from(BESIDE))).to_array();
    let ways = [
        DVec2::new(right, 0.0),
        DVec2::new(0.0, down),
        DVec2::new(-right, 0.0),
        DVec2::new(0.0, -down),
    ];
    let frame = frame_outline(&layout.frame);
    let within = |way: &&DVec2| {
        let mut corners = own.corners().into_iter();
        corners.all(|corner| contains(&frame, corner + **way))
    };
    let by = *ways.iter().find(within).unwrap_or(&ways[0]);
    copy(layout, &mut after, &all, false, &|place| {
        let (at, turn) = place.now();
        (Point::nearest(at.vec() + by), turn)
    });
    after
}

/// The box round things.
pub(super) fn bounds(layout: &Layout, all: &BTreeSet<Id>) -> Option<Bounds> {
    let items = layout.items.iter().filter(|o| all.contains(&o.id));
    let linens = layout.linens.iter().filter(|o| all.contains(&o.id));
    let outlines = items.map(silhouette).chain(linens.map(linen_span));
    let boxes = outlines.filter_map(|outline| Bounds::around(&outline));
    boxes.reduce(Bounds::joined)
}

/// Lays things again along a line: `count` copies, each `gap` mm on from the
/// one before, towards a clock direction.
///
/// # Errors
/// None so far as nothing there changes.
pub fn repeat_along(
    layout: &Layout,
    ids: &[Id],
    count: usize,
    gap: i32,
    towards: Turn,
) -> Result<Act, Refused> {
    let all = chosen(layout, ids);
    let way = towards.direction();
    let items = layout.items.iter().filter(|o| all.contains(&o.id));
    let linens = layout.linens.iter().filter(|o| all.contains(&o.id));
    let outlines = items.map(silhouette).chain(linens.map(linen_span));
    let (mut low, mut high) = (f64::INFINITY, f64::NEG_INFINITY);
    for p in outlines.flatten() {
        low = low.min(p.dot(way));
        high = high.max(p.dot(way));
    }
    let step = (high - low).max(0.0) + f64::from(gap);
    let mut after = layout.clone();
    for n in 1..=count.min(MOST) {
        let by = way * (step * n as f64);
        copy(layout, &mut after, &all, false, &|place| {
            let (at, turn) = place.now();
            (Point::nearest(at.vec() + by), turn)
        });
    }
    let name = ids.first().map(|id| name_of(layout, *id));
    Act::between(
        called("done-repeated", &name.unwrap_or_default()),
        layout,
        &after,
    )
}

/// Lays things again round a middle, each copy turned with it: `count` in all,
/// evenly over a sweep in half degrees; over a full one the last stands as far
/// from the first as from its neighbour.
///
/// # Errors
/// None so far as nothing there changes.
pub fn repeat_round(
    layout: &Layout,
    ids: &[Id],
    middle: Point,
    count: usize,
    sweep: i32,
) -> Result<Act, Refused> {
    let all = chosen(layout, ids);
    let count = count.min(MOST);
    let steps = if sweep.abs() >= FULL {
        count
    } else {
        count.saturating_sub(1)
    };
    let sweep = f64::from(sweep.clamp(-FULL, FULL));
    let mut after = layout.clone();
    for n in 1..count {
        let half = libm::round(sweep * n as f64 / steps.max(1) as f64) as i32;
        let (sin, cos) = libm::sincos(f64::from(half).to_radians() * 0.5);
        copy(layout, &mut after, &all, false, &|place| {
            let (at, turn) = place.now();
            let off = DVec2::new(cos, sin).rotate(at.vec() - middle.vec());
            (Point::nearest(middle.vec() + off), turn.plus(half))
        });
    }
    let name = ids.first().map(|id| name_of(layout, *id));
    Act::between(
        called("done-repeated", &name.unwrap_or_default()),
        layout,
        &after,
    )
}

/// A full circle, half degrees.
const FULL: i32 = 720;

/// Things with their groups and all that lies on them.
fn chosen(layout: &Layout, ids: &[Id]) -> BTreeSet<Id> {
    moving_all(layout, ids)
}

/// Where a thing is that is copied.
enum Place<'a> {
    Item(Point, Turn),
    Linen(&'a Linen),
}

impl Place<'_> {
    const fn now(&self) -> (Point, Turn) {
        match self {
            Self::Item(at, turn) => (*at, *turn),
            Self::Linen(linen) => (linen.at, linen.turn),
        }
    }
}

/// Copies things under new ids, groups too unless they are taken `alone`,
/// each to where `to` puts it.
fn copy(
    layout: &Layout,
    after: &mut Layout,
    all: &BTreeSet<Id>,
    alone: bool,
    to: &dyn Fn(Place<'_>) -> (Point, Turn),
) {
    let mut ids: Vec<(Id, Id)> = Vec::new();
    let known = |ids: &[(Id, Id)], old: Id| {
        let found = ids.iter().find(|(from, _)| *from == old);
        found.map(|(_, to)| *to)
    };
    let from = after.linens.len();
    for linen in layout.linens.iter().filter(|o| all.contains(&o.id)) {
        let mut copy = linen.clone();
        copy.id = fresh_id(after);
        (copy.at, copy.turn) = to(Place::Linen(linen));
        copy.locked = false;
        after.linens.push(copy);
    }
    let items = || layout.items.iter().filter(|o| all.contains(&o.id));
    for item in items() {
        ids.push((item.id, fresh_id(after)));
        if let Some(group) = item.group.filter(|g| !alone && known(&ids, *g).is_none()) {
            let copy = fresh_id(after);
            ids.push((group, copy));
            after.groups.push(Group {
                id: copy,
                name: String::new(),
                extra: Extra::new(),
            });
        }
    }
    // A copy lies over the copies of what its own lies over.
    for linen in &mut after.linens[from..] {
        linen.over = linen
            .over
            .iter()
            .filter_map(|id| known(&ids, *id))
            .collect();
    }
    for item in items() {
        let mut copy = item.clone();
        copy.id = known(&ids, item.id).unwrap_or_default();
        copy.on = copy.on.map(|on| known(&ids, on).unwrap_or(on));
        copy.group = copy.group.and_then(|group| known(&ids, group));
        (copy.at, copy.turn) = to(Place::Item(item.at, item.turn));
        copy.locked = false;
        // The picture has one hero; a second of it is a main dish.
        if copy.role == Role::Hero {
            copy.role = Role::Support;
        }
        after.items.push(copy);
    }
}

#[cfg(test)]
mod tests {
    use super::super::tests::{done, item, laid};
    use super::*;

    #[test]
    fn copies_stand_along_a_line_a_gap_apart() {
        let before = laid();
        let right = Turn::from_degrees(90.0);
        let after = done(&before, repeat_along(&before, &[Id(3)], 3, 25, right));
        let new: Vec<_> = after.items[before.items.len()..].iter().collect();
        assert_eq!(new.len(), 6, "three bowls with their soup");
        let first = item(&before, 3).at;
        for (n, bowl) in new.iter().step_by(2).enumerate() {
            let off = bowl.at.x - first.x - 215 * (n as i32 + 1);
            assert!(off.abs() <= 2 && bowl.at.y == first.y, "{n}: {:?}", bowl.at);
        }
    }

    #[test]
    fn copies_stand_round_a_middle_and_turn_with_it() {
        let before = laid();
        let middle = Point::new(900, 600);
        let after = done(&before, repeat_round(&before, &[Id(5)], middle, 4, FULL));
        assert_eq!(
            after.groups.len(),
            before.groups.len() + 3,
            "groups of their own"
        );
        let plates: Vec<_> = after.items.iter().filter(|o| o.name == "plate").collect();
        assert_eq!(plates.len(), 4, "four in all");
        for plate in &plates {
            let far = plate.at.vec().distance(middle.vec());
            let was = plates[0].at.vec().distance(middle.vec());
            assert!((far - was).abs() < 1.5, "on the circle: {far}");
        }
        assert_eq!(plates[1].turn, plates[0].turn.plus(180), "a quarter on");
        let half = done(
            &before,
            repeat_round(&before, &[Id(5)], middle, 3, FULL / 2),
        );
        let last = half
            .items
            .iter()
            .rfind(|o| o.name == "plate")
            .expect("there");
        assert_eq!(last.turn, plates[0].turn.plus(360), "from end to end");
    }
}
