//! Several things put in order: equal gaps along a line, in line with each
//! other or with the runner, one vessel in the place of others.
use std::collections::BTreeSet;

use glam::DVec2;

use super::again::bounds;
use super::onto::lay_food;
use super::place::each;
use super::stack::moving;
use super::{Act, Refused, called};
use crate::catalogue::{self, Entry, Kind};
use crate::layout::{Id, Layout, Linen, LinenKind};
use crate::order;
use crate::shape::Bounds;
use crate::words::{Arg, say};

/// What things are brought in line with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum InLine {
    /// Each other, side by side across the picture.
    Level,
    /// Each other, one above the other.
    Upright,
    /// The long middle line of the nearest runner.
    Runner,
}

impl InLine {
    /// The line of this word: `level`, `upright` or `runner`.
    #[must_use]
    pub fn parse(word: &str) -> Option<Self> {
        match word {
            "level" => Some(Self::Level),
            "upright" => Some(Self::Upright),
            "runner" => Some(Self::Runner),
            _ => None,
        }
    }
}

/// What moves as one: a thing with its group and all that lies on them.
struct Unit {
    ids: BTreeSet<Id>,
    bounds: Bounds,
}

/// The chosen things as they move.
fn units(layout: &Layout, ids: &[Id]) -> Vec<Unit> {
    let mut out: Vec<Unit> = Vec::new();
    for id in ids {
        if out.iter().any(|unit| unit.ids.contains(id)) {
            continue;
        }
        let along = moving(layout, *id);
        if let Some(bounds) = bounds(layout, &along) {
            // A bowl chosen before the board under it goes by the board.
            out.retain(|unit| !unit.ids.is_subset(&along));
            out.push(Unit { ids: along, bounds });
        }
    }
    out
}

/// Moves units, each by its own way, as one act.
fn moved(
    layout: &Layout,
    name: &str,
    units: &[Unit],
    by: impl Fn(usize) -> DVec2,
) -> Result<Act, Refused> {
    let all = units.iter().flat_map(|unit| &unit.ids).copied().collect();
    let after = each(layout, &all, &mut |lying| {
        // What would go along with two of them goes with the first.
        let own = units.iter().position(|unit| unit.ids.contains(&lying.id));
        let by = own.map_or(DVec2::ZERO, |n| by(n).round());
        *lying.at = lying.at.moved(by.x as i32, by.y as i32);
    });
    let count = ("count", Arg::Text(units.len().to_string()));
    Act::between(say(name, &[count]), layout, &after)
}

/// Leaves equal gaps between three things or more, along the way they spread
/// most; the two at the ends stay.
///
/// # Errors
/// When there are fewer than three, or one is locked.
pub fn equal_gaps(layout: &Layout, ids: &[Id]) -> Result<Act, Refused> {
    let mut units = units(layout, ids);
    if units.len() < 3 {
        return Err(Refused::TooFew(3));
    }
    let all = units.iter().map(|unit| unit.bounds.centre());
    let spread = Bounds::around(&all.collect::<Vec<_>>()).map_or(DVec2::X, Bounds::size);
    let axis = if spread.x >= spread.y {
        DVec2::X
    } else {
        DVec2::Y
    };
    order::sort(&mut units, |a, b| {
        let along = |unit: &Unit| unit.bounds.centre().dot(axis);
        along(a).total_cmp(&along(b)).then(a.ids.cmp(&b.ids))
    });
    let (low, high) = (units[0].bounds.min, units[units.len() - 1].bounds.max);
    let taken: f64 = units.iter().map(|unit| unit.bounds.size().dot(axis)).sum();
    let gap = ((high - low).dot(axis) - taken) / (units.len() - 1) as f64;
    let mut next = low.dot(axis);
    let mut by = Vec::with_capacity(units.len());
    for unit in &units {
        by.push(axis * (next - unit.bounds.min.dot(axis)));
        next += unit.bounds.size().dot(axis) + gap;
    }
    moved(layout, "done-gaps", &units, |n| by[n])
}

/// Brings the middles of things onto one line.
///
/// # Errors
/// When there are too few for it, there is no runner, or one is locked.
pub fn align(layout: &Layout, ids: &[Id], with: InLine) -> Result<Act, Refused> {
    let mut units = units(layout, ids);
    let runner = nearest_runner(layout, &units);
    let along = match with {
        InLine::Level => DVec2::X,
        InLine::Upright => DVec2::Y,
        InLine::Runner => {
            let runner = runner.ok_or(Refused::NoRunner)?;
            units.retain(|unit| !unit.ids.contains(&runner.id));
            let [wide, deep] = runner.size;
            let up = runner.turn.direction();
            if deep >= wide { up } else { up.perp() }
        }
    };
    let least = if with == InLine::Runner { 1 } else { 2 };
    if units.len() < least {
        return Err(Refused::TooFew(least));
    }
    let middle = match (with, runner) {
        (InLine::Runner, Some(runner)) => runner.at.vec(),
        _ => mean(&units),
    };
    let across = along.perp();
    moved(layout, "done-in-line", &units, |n| {
        across * (middle - units[n].bounds.centre()).dot(across)
    })
}

fn mean(units: &[Unit]) -> DVec2 {
    let sum: DVec2 = units.iter().map(|unit| unit.bounds.centre()).sum();
    sum / units.len().max(1) as f64
}

fn nearest_runner<'a>(layout: &'a Layout, units: &[Unit]) -> Option<&'a Linen> {
    let from = mean(units);
    let runners = layout.linens.iter().filter(|o| o.kind == LinenKind::Runner);
    let far = |linen: &Linen| linen.at.vec().distance(from);
    runners.min_by(|a, b| far(a).total_cmp(&far(b)).then(a.id.cmp(&b.id)))
}

/// Takes another thing of the catalogue in the place of some, or of `all` that
/// are like them: where each stands, its turn, part and group stay, and what
/// lies in it; size, colours and finish are the new one's. Food sizes itself
/// to the new dish.
///
/// # Errors
/// When nobody knows the new one, it is of another kind, or one is locked.
pub fn swap(layout: &Layout, ids: &[Id], prop: &str, all: bool) -> Result<Act, Refused> {
    let unknown = || Refused::Unknown(prop.into());
    let entry = catalogue::prop(prop).ok_or_else(unknown)?;
    let chosen = layout.items.iter().filter(|o| ids.contains(&o.id));
    let props: BTreeSet<&str> = chosen.map(|o| o.prop.as_str()).collect();
    let mut after = layout.clone();
    let mut count = 0;
    for n in 0..after.items.len() {
        let item = &mut after.items[n];
        let meant = ids.contains(&item.id) || (all && props.contains(item.prop.as_str()));
        if !meant {
            continue;
        }
        let old = catalogue::prop(&item.prop);
        if !alike(catalogue::kind_of(&item.prop), entry.kind) {
            return Err(unknown());
        }
        let new = catalogue::item_from(entry, item.id, item.number, item.at);
        // A name of the user's own stays.
        if old.is_some_and(|old| item.name == old.name) {
            item.name = new.name;
        }
        item.prop = new.prop;
        item.size = new.size;
        item.height = new.height;
        item.parts = new.parts;
        item.finish = new.finish;
        item.face = new.face;
        count += 1;
        let dish = item.clone();
        let held = |kind: Kind| kind == Kind::Food && entry.kind == Kind::Vessel;
        for food in after.items.iter_mut().filter(|o| o.on == Some(dish.id)) {
            if catalogue::prop(&food.prop).is_some_and(|food| held(food.kind)) {
                lay_food(food, &dish);
            }
        }
    }
    let name = match count {
        0 | 1 => called("done-swapped", entry.name),
        _ => say(
            "done-swapped-several",
            &[
                ("count", Arg::Text(count.to_string())),
                ("thing", Arg::Name(entry.name.into())),
            ],
        ),
    };
    Act::between(name, layout, &after)
}

/// Everything of the catalogue that can take a thing's place.
#[must_use]
pub fn swaps(layout: &Layout, id: Id) -> Vec<&'static Entry> {
    let Some(item) = layout.items.iter().find(|o| o.id == id) else {
        return Vec::new();
    };
    let old = catalogue::kind_of(&item.prop);
    let all = catalogue::props().iter().chain(catalogue::foods());
    all.filter(|new| new.id != item.prop && alike(old, new.kind))
        .collect()
}

/// Whether one thing can take another's place.
fn alike(old: Kind, new: Kind) -> bool {
    old == new || (old.carries_food() && new.carries_food())
}

#[cfg(test)]
mod tests {
    use super::super::add;
    use super::super::tests::{bare, done, item, laid};
    use super::*;
    use crate::layout::{Layout, Point};
    use crate::scene::Scene;

    /// Plates in a crooked row, and a runner.
    fn row() -> Layout {
        let mut layout = bare();
        for (prop, x, y) in [
            ("small-plate", 200, 400),
            ("ramekin", 900, 430),
            ("dinner-plate", 520, 380),
            ("small-bowl", 1_300, 420),
            ("runner", 700, 600),
        ] {
            let scene = Scene::of(&layout, None);
            layout = done(&layout, add(&layout, &scene, prop, Point::new(x, y), None));
        }
        layout
    }

    fn ids(layout: &Layout) -> Vec<Id> {
        layout.items.iter().map(|o| o.id).collect()
    }

    #[test]
    fn gaps_become_equal_and_the_ends_stay() {
        let before = row();
        let after = done(&before, equal_gaps(&before, &ids(&before)));
        let mut sides: Vec<(i32, i32)> = after
            .items
            .iter()
            .map(|o| {
                (
                    o.at.x - o.size.extent()[0] / 2,
                    o.at.x + o.size.extent()[0] / 2,
                )
            })
            .collect();
        sides.sort_unstable();
        let gaps: Vec<i32> = sides.windows(2).map(|w| w[1].0 - w[0].1).collect();
        let (low, high) = (gaps.iter().min(), gaps.iter().max());
        let apart = high.expect("some") - low.expect("some");
        assert!(apart <= 2, "equal to the millimetre: {gaps:?}");
        assert_eq!(after.items[0], before.items[0], "the first stays");
        assert_eq!(after.items[3], before.items[3], "and the last");
        let few = equal_gaps(&before, &ids(&before)[..2]);
        assert_eq!(few, Err(Refused::TooFew(3)), "two have one gap");
    }

    #[test]
    fn things_come_in_line_with_each_other_and_with_the_runner() {
        let before = row();
        let level = done(&before, align(&before, &ids(&before), InLine::Level));
        let ys: BTreeSet<i32> = level.items.iter().map(|o| o.at.y).collect();
        assert!(
            ys.last().expect("some") - ys.first().expect("some") <= 1,
            "{ys:?}"
        );
        let xs = |l: &Layout| l.items.iter().map(|o| o.at.x).collect::<Vec<_>>();
        assert_eq!(xs(&level), xs(&before), "only across the line");
        let runner = done(&before, align(&before, &ids(&before), InLine::Runner));
        let off = runner.items.iter().map(|o| (o.at.x - 700).abs()).max();
        assert!(off <= Some(1), "on its long middle line: {off:?}");
        let mut bare = before.clone();
        bare.linens.clear();
        let none = align(&bare, &ids(&bare), InLine::Runner);
        assert_eq!(none, Err(Refused::NoRunner), "no runner");
        let alone = align(&before, &ids(&before)[..1], InLine::Upright);
        assert_eq!(alone, Err(Refused::TooFew(2)), "one is in line");
    }

    #[test]
    fn what_is_locked_is_not_put_in_order() {
        let mut before = row();
        before.items[1].locked = true;
        let refused = Err(Refused::Locked("ramekin".into()));
        assert_eq!(equal_gaps(&before, &ids(&before)), refused, "gaps");
        assert_eq!(
            align(&before, &ids(&before), InLine::Level),
            refused,
            "in line"
        );
        assert_eq!(
            swap(&before, &ids(&before), "saucer", true),
            refused,
            "swapped"
        );
    }

    #[test]
    fn a_swap_keeps_place_part_and_food() {
        let before = laid();
        let after = done(&before, swap(&before, &[Id(3)], "dinner-plate", false));
        let (old, new) = (item(&before, 3), item(&after, 3));
        assert_eq!(new.prop, "dinner-plate", "swapped");
        assert_eq!(
            (new.at, new.role, new.on),
            (old.at, old.role, old.on),
            "as it stood"
        );
        assert_eq!(new.name, "bowl", "the user's own name");
        assert_eq!(new.size.extent(), [270, 270], "the new one's size");
        assert_eq!(item(&after, 4).on, Some(Id(3)), "the soup in it");
        assert_eq!(item(&after, 4).size.extent(), [168, 168], "sized to it");
        assert!(swap(&before, &[Id(3)], "fork", false).is_err(), "no dish");
        assert!(swap(&before, &[Id(3)], "anvil", false).is_err(), "unknown");
    }

    #[test]
    fn all_of_a_kind_are_swapped_at_once() {
        let mut before = row();
        before.items[2].prop = "small-plate".into();
        let first = before.items[0].id;
        let offered = swaps(&before, first);
        let known = |prop: &str| offered.iter().any(|entry| entry.id == prop);
        assert!(known("bread-plate") && !known("small-plate") && !known("fork"));
        let after = done(&before, swap(&before, &[first], "bread-plate", true));
        let count = after
            .items
            .iter()
            .filter(|o| o.prop == "bread-plate")
            .count();
        assert_eq!(count, 2, "both");
        assert_eq!(after.items[0].name, "bread plate", "by its new name");
    }
}
