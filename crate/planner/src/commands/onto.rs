//! What lies on what: a thing laid on a dish or a board, or taken off it, and
//! food sized to the dish it lies in.
use std::collections::BTreeSet;

use glam::DVec2;

use super::stack::above;
use super::{Act, Refused, called, name_of};
use crate::catalogue::{self, Entry, Kind};
use crate::layout::{Finish, Id, Item, Layout, Size, Turn};
use crate::scene::Scene;

/// Shares of a well that food takes, each way: a liquid runs to the wall, a
/// heap in a deep dish nearly so, on a flat one air is left all round. Our
/// choice.
const LIQUID: f64 = 0.97;
const DEEP: f64 = 0.9;
const FLAT: f64 = 0.8;
/// A dish this high holds a heap up to its wall, mm (our choice).
const DEEP_FROM: i32 = 45;
/// What lies on a board, or is strewn, keeps its size up to this share of it.
const AT_MOST: f64 = 0.95;
/// Air between a dish and what is taken off it, mm (our choice).
const BESIDE: i32 = 40;
/// How far along its length from its middle a tool's head lies.
const HEAD: f64 = 0.35;

fn entry_of(item: &Item) -> Option<&'static Entry> {
    catalogue::prop(&item.prop)
}

/// Whether food, and what else is laid on dishes, can lie on it.
pub(super) fn carries(item: &Item) -> bool {
    entry_of(item).is_some_and(|entry| entry.kind.carries_food())
}

/// Lays an item on another, or on the table; with what lies on it. Food fits
/// itself to the dish and lies in its middle; a tool whose head lies over it, and
/// anything whose middle does, stays where it is; the rest comes to its middle.
/// What is laid on a thing is drawn above all that lies there already.
///
/// # Errors
/// When one of them is not there, it would lie on itself, or it is locked.
pub fn put_on(layout: &Layout, scene: &Scene, id: Id, on: Option<Id>) -> Result<Act, Refused> {
    let find = |id: Id| {
        let found = layout.items.iter().position(|item| item.id == id);
        found.ok_or_else(|| Refused::Unknown(id.0.to_string()))
    };
    let mut after = layout.clone();
    let stack = above(layout, &BTreeSet::from([id]));
    let from = find(id)?;
    let mut item = after.items.remove(from);
    let was = item.at;
    match on {
        None => take_off(layout, &mut item),
        Some(below) => {
            if stack.contains(&below) {
                return Err(Refused::OnItself(name_of(layout, id)));
            }
            let below = &layout.items[find(below)?];
            let lies = entry_of(&item).is_some_and(|entry| entry.kind.is_food());
            if lies {
                lay_food(&mut item, below);
            } else {
                item.on = Some(below.id);
                if !scene.hit(bearing(&item)).contains(&below.id) {
                    item.at = below.at;
                }
            }
        }
    }
    let by = [item.at.x - was.x, item.at.y - was.y];
    for other in after.items.iter_mut().filter(|o| stack.contains(&o.id)) {
        other.at = other.at.moved(by[0], by[1]);
    }
    after.items.push(item);
    let id = if on.is_some() {
        "done-laid-on"
    } else {
        "done-taken-off"
    };
    let name = name_of(layout, layout.items[from].id);
    Act::between(called(id, &name), layout, &after)
}

/// Beside what it lay on, towards the middle of the picture.
fn take_off(layout: &Layout, item: &mut Item) {
    let below = layout.items.iter().find(|o| Some(o.id) == item.on);
    item.on = None;
    if let Some(below) = below {
        let [own, under] = [&*item, below].map(|o| o.size.extent().into_iter().max().unwrap_or(0));
        let side = if below.at.x > layout.frame.at.x {
            -1
        } else {
            1
        };
        item.at = below.at.moved(side * ((own + under) / 2 + BESIDE), 0);
    }
}

/// Where a thing rests on another: a tool by its head, the rest by its middle.
fn bearing(item: &Item) -> DVec2 {
    let tool = entry_of(item).is_some_and(|entry| entry.kind == Kind::Cutlery);
    if !tool {
        return item.at.vec();
    }
    let [wide, deep] = item.size.extent().map(f64::from);
    // The head points away from the sitter before the turn; one that lies
    // across points right.
    let (turn, long) = if deep >= wide {
        (item.turn, deep)
    } else {
        (item.turn.plus(180), wide)
    };
    item.at.vec() + turn.direction() * (long * HEAD)
}

/// The dish or board that lies under a thing, or under a tool's head, without
/// the thing lying on it.
#[must_use]
pub fn lies_over(layout: &Layout, scene: &Scene, id: Id) -> Option<Id> {
    let item = layout.items.iter().find(|item| item.id == id)?;
    let own = above(layout, &BTreeSet::from([id]));
    let fits = |id: &Id| {
        let below = layout.items.iter().find(|o| o.id == *id);
        !own.contains(id) && below.is_some_and(carries)
    };
    let below = scene.hit(bearing(item)).into_iter().find(fits)?;
    (item.on != Some(below)).then_some(below)
}

/// Lays food on a dish or board, sized to it: in a dish in the middle, its
/// long side along the dish's.
pub(super) fn lay_food(item: &mut Item, below: &Item) {
    item.on = Some(below.id);
    let Some((food, under)) = entry_of(item).zip(entry_of(below)) else {
        return;
    };
    if under.kind == Kind::Vessel {
        item.at = below.at;
    }
    if under.kind == Kind::Vessel && food.kind == Kind::Food {
        item.turn = along(&item.size, below);
    }
    item.size = size_on(item, food, below, under);
}

/// The turn that brings the long side of food along that of its dish.
fn along(size: &Size, below: &Item) -> Turn {
    let tall = |size: &Size| {
        let [wide, deep] = size.extent();
        deep > wide
    };
    below.turn.plus(if tall(size) == tall(&below.size) {
        0
    } else {
        180
    })
}

/// The size food takes on what it lies on, within what the catalogue has it
/// come in.
fn size_on(item: &Item, food: &Entry, below: &Item, under: &Entry) -> Size {
    let rim = f64::from(2 * below.size.rim());
    let well = DVec2::from_array(below.size.extent().map(f64::from)) - rim;
    let own = DVec2::from_array(item.size.extent().map(f64::from)).max(DVec2::ONE);
    if well.min_element() < 1.0 {
        return item.size.clone();
    }
    let kept = under.kind == Kind::Board || food.kind == Kind::Scatter;
    let liquid = item.finish == Finish::Liquid && !kept;
    let share = if kept {
        AT_MOST
    } else if liquid {
        LIQUID
    } else if below.height >= DEEP_FROM {
        DEEP
    } else {
        FLAT
    };
    // Side by side with the well, as it lies in it.
    let lying = (own.y > own.x) == (well.y > well.x) || kept;
    let room = if lying {
        well
    } else {
        DVec2::new(well.y, well.x)
    };
    let part = own / room;
    let square = matches!(item.size, Size::Rect { .. });
    let round = !matches!(below.size, Size::Rect { .. });
    // Corners reach farther into a round well than sides do.
    let taken = if square && round {
        part.length()
    } else {
        part.max_element()
    };
    let grow = share / taken.max(f64::MIN_POSITIVE);
    let grow = if kept { grow.min(1.0) } else { grow };
    // A liquid takes the outline of its dish.
    let wanted = if liquid { room * share } else { own * grow };
    let [least, most] = food.range.map(f64::from);
    let ranged = if kept {
        1.0
    } else {
        wanted.x.clamp(least, most) / wanted.x.max(1.0)
    };
    let [wide, deep] = (wanted * ranged).floor().to_array().map(|mm| mm as i32);
    match &item.size {
        Size::Disc { .. } if liquid && wide != deep => Size::Oval {
            width: wide.max(1),
            depth: deep.max(1),
            rim: 0,
        },
        size => size.resized(wide, deep),
    }
}

#[cfg(test)]
mod tests {
    use super::super::tests::{bare, done, item, laid};
    use super::super::{add, remove};
    use super::*;
    use crate::layout::Point;

    fn scene(layout: &Layout) -> Scene {
        Scene::of(layout, None)
    }

    /// The last item after food was added where a dish of this prop stands.
    fn served(dish: &str, food: &str) -> (Item, Item) {
        let layout = bare();
        let added = |layout: &Layout, prop: &str, at: Point, on: Option<Id>| {
            done(layout, add(layout, &scene(layout), prop, at, on))
        };
        let layout = added(&layout, dish, Point::new(400, 400), None);
        let id = layout.items[0].id;
        let layout = added(&layout, food, Point::new(900, 700), Some(id));
        (layout.items[0].clone(), layout.items[1].clone())
    }

    #[test]
    fn food_fits_the_dish_it_is_put_in() {
        for (dish, food, share) in [
            ("soup-bowl", "soup", LIQUID),
            ("noodle-bowl", "rice", DEEP),
            ("dinner-plate", "rice", FLAT),
        ] {
            let (below, lies) = served(dish, food);
            assert_eq!(lies.on, Some(below.id), "{food} in {dish}");
            assert_eq!(lies.at, below.at, "{food} in the middle of {dish}");
            let well = f64::from(below.size.extent()[0] - 2 * below.size.rim());
            let range = catalogue::prop(food).expect("known").range.map(f64::from);
            let wanted = (well * share).clamp(range[0], range[1]);
            let across = f64::from(lies.size.extent()[0]);
            assert!((across - wanted).abs() < 1.5, "{food} in {dish}: {across}");
        }
    }

    #[test]
    fn food_keeps_its_proportions_and_turns_with_its_dish() {
        let (below, lies) = served("oval-platter", "roast-fish");
        let own = catalogue::prop("roast-fish").expect("known").size.extent();
        let ratio = |[w, d]: [i32; 2]| f64::from(w) / f64::from(d);
        assert!(
            (ratio(own) - ratio(lies.size.extent())).abs() < 0.05,
            "its shape"
        );
        assert_eq!(lies.turn, below.turn, "along the platter");
        let (_, soup) = served("oval-platter", "soup");
        assert!(
            matches!(soup.size, Size::Oval { .. }),
            "a liquid takes the outline"
        );
        let (board, cheese) = served("wooden-board", "cheese-wedge");
        assert_eq!(
            cheese.size,
            catalogue::prop("cheese-wedge").expect("known").size
        );
        assert_eq!(cheese.on, Some(board.id), "a board leaves its size alone");
    }

    #[test]
    fn nothing_is_larger_than_it_comes() {
        for food in catalogue::foods() {
            for dish in [
                "salt-bowl",
                "dinner-plate",
                "wok",
                "roasting-tin",
                "wooden-board",
            ] {
                let (_, lies) = served(dish, food.id);
                let [wide, deep] = lies.size.extent();
                assert!(wide <= food.range[1], "{} in {dish}: {wide}", food.id);
                assert!(wide >= 1 && deep >= 1, "{} in {dish}", food.id);
            }
        }
    }

    #[test]
    fn a_thing_is_laid_on_another_and_taken_off_again() {
        let before = laid();
        let after = done(
            &before,
            put_on(&before, &scene(&before), Id(6), Some(Id(3))),
        );
        assert_eq!(item(&after, 6).on, Some(Id(3)), "the fork on the bowl");
        assert_eq!(
            item(&after, 6).at,
            item(&after, 3).at,
            "from afar to its middle"
        );
        assert_eq!(
            after.items.last().map(|o| o.id),
            Some(Id(6)),
            "above the soup"
        );
        let off = done(&after, put_on(&after, &scene(&after), Id(6), None));
        assert_eq!(item(&off, 6).on, None, "on the table");
        let apart = item(&off, 6).at.vec().distance(item(&off, 3).at.vec());
        assert!(apart > 190.0 * 0.5 + 190.0 * 0.5, "clear of it: {apart}");
        let taken = done(&after, remove(&after, &[Id(3)]));
        assert!(
            taken.items.iter().all(|o| o.id != Id(6)),
            "it goes with the bowl"
        );
    }

    #[test]
    fn a_tool_rests_by_its_head() {
        let mut before = laid();
        let bowl = item(&before, 3).at;
        let fork = before
            .items
            .iter_mut()
            .find(|o| o.id == Id(6))
            .expect("there");
        // Below the bowl, its head over the rim.
        fork.at = bowl.moved(0, 150);
        let was = fork.at;
        assert_eq!(
            lies_over(&before, &scene(&before), Id(6)),
            Some(Id(3)),
            "over the bowl"
        );
        let after = done(
            &before,
            put_on(&before, &scene(&before), Id(6), Some(Id(3))),
        );
        assert_eq!(item(&after, 6).at, was, "it stays where it is");
        assert_eq!(
            lies_over(&after, &scene(&after), Id(6)),
            None,
            "it lies there"
        );
        assert_eq!(
            lies_over(&before, &scene(&before), Id(5)),
            None,
            "over the table"
        );
    }

    #[test]
    fn nothing_lies_on_itself() {
        let before = laid();
        let round = put_on(&before, &scene(&before), Id(2), Some(Id(4)));
        assert_eq!(
            round,
            Err(Refused::OnItself("board".into())),
            "it carries that"
        );
        let gone = put_on(&before, &scene(&before), Id(2), Some(Id(99)));
        assert_eq!(gone, Err(Refused::Unknown("99".into())), "not there");
    }
}
