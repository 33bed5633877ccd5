//! A table laid in one go: a board, a frame, place settings and shared dishes.
use crate::catalogue;
use crate::layout::{
    Group, Id, Item, Layout, LayoutId, Point, Ratio, Role, Size, Turn, references,
};
use crate::optics::{Sensor, distance_for_width};
use crate::words::{Arg, say};
use glam::DVec2;
use serde::{Deserialize, Serialize};

use super::{Refused, fresh_id, fresh_number};

/// A dish that can be picked: what it is called and the things it is made of,
/// the lowest first.
struct Dish {
    key: &'static str,
    name: &'static str,
    /// Catalogue ids; each later one lies on the first.
    props: &'static [&'static str],
}

const DISHES: [Dish; 12] = [
    dish("mussels", "pot of mussels", &["enamel-pot", "mussels"]),
    dish(
        "aubergine",
        "seared aubergine",
        &["oval-platter", "aubergine"],
    ),
    dish("loaf", "dark-crusted loaf", &["loaf"]),
    dish(
        "tomato-salad",
        "tomato salad",
        &["serving-bowl", "tomato-salad"],
    ),
    dish("leaf-salad", "leaf salad", &["serving-bowl", "leaf-salad"]),
    dish("fish", "roast fish", &["roasting-tin", "roast-fish"]),
    dish(
        "potatoes",
        "roast potatoes",
        &["frying-pan", "roast-potatoes"],
    ),
    dish("soup", "bowl of soup", &["soup-bowl", "soup"]),
    dish("noodles", "noodles", &["soup-bowl", "noodles"]),
    dish("rice", "rice", &["serving-bowl", "rice"]),
    dish("olives", "black olives", &["small-bowl", "olives"]),
    dish(
        "cheese",
        "cheese on a board",
        &["wooden-board", "cheese-wedge"],
    ),
];

const fn dish(key: &'static str, name: &'static str, props: &'static [&'static str]) -> Dish {
    Dish { key, name, props }
}

/// One dish as the page offers it.
#[derive(Serialize)]
pub struct Offer {
    dish: &'static str,
    name: &'static str,
}

/// Every dish that can be picked.
#[must_use]
pub fn offers() -> Vec<Offer> {
    let offer = |d: &Dish| Offer {
        dish: d.key,
        name: d.name,
    };
    DISHES.iter().map(offer).collect()
}

/// What the person wants laid.
#[derive(Deserialize)]
pub struct Wish {
    /// Identity of the new layout, 16 hex digits.
    pub id: String,
    /// Width of the board, mm.
    pub width: i32,
    /// Depth of the board, mm.
    pub depth: i32,
    /// Catalogue id of the surface.
    pub board: String,
    /// Frame, width to height.
    pub ratio: [u16; 2],
    /// Place settings along the long edges.
    pub people: usize,
    /// Dishes by key, the hero first.
    pub dishes: Vec<String>,
}

/// Air kept between things and to the frame's edge, mm.
const AIR: f64 = 22.0;
/// Share of the board the frame takes, each way at most.
const FRAME_SHARE: f64 = 0.86;

/// Lenses a new table may start with, mm, the longest that fits first: common
/// ones (from memory).
const LENSES: [i32; 5] = [50, 40, 35, 28, 24];
/// Height kept above the lens for the camera, its head and some air, mm (our
/// choice; Fit reads what there is).
const ABOVE_LENS: f64 = 400.0;

/// The longest of the usual lenses that sees the frame from under the ceiling.
fn lens_for(layout: &Layout) -> i32 {
    let sensor = Sensor::of(layout.camera.format).width;
    let long = f64::from(layout.frame.width).max(layout.frame.height());
    let room = f64::from(layout.rig.ceiling - layout.table.height) - ABOVE_LENS;
    let fits = |focal: &i32| {
        distance_for_width(sensor, f64::from(*focal), long).is_some_and(|far| far <= room)
    };
    LENSES.into_iter().find(fits).unwrap_or(layout.camera.focal)
}

/// Lays the table.
///
/// # Errors
/// When a dish, the board or the identity is not known, or a limit is broken.
pub fn lay(wish: &Wish) -> Result<Layout, Refused> {
    let id = u64::from_str_radix(&wish.id, 16);
    let id = id.map_err(|_| Refused::Unknown(wish.id.clone()))?;
    let mut layout = Layout::empty(LayoutId(id));
    let board = catalogue::surface(&wish.board);
    let board = board.ok_or_else(|| Refused::Unknown(wish.board.clone()))?;
    layout.table.surface = catalogue::surface_from(board);
    layout.table.width = wish.width.clamp(100, crate::layout::MAX_SIZE);
    layout.table.depth = wish.depth.clamp(100, crate::layout::MAX_SIZE);
    let [width, depth] = [layout.table.width, layout.table.depth].map(f64::from);
    let [wide, high] = wish.ratio.map(|side| side.max(1));
    layout.frame.ratio = Ratio {
        width: wide,
        height: high,
    };
    let by_depth = depth * f64::from(wide) / f64::from(high);
    layout.frame.width = (FRAME_SHARE * width.min(by_depth)).round() as i32;
    layout.frame.at = layout.table.centre();
    layout.camera.focal = lens_for(&layout);
    layout.head.title = say("title-laid", &[]);

    let mut taken = Vec::new();
    settings(&mut layout, wish.people.min(12), &mut taken)?;
    for (place, key) in wish.dishes.iter().enumerate() {
        let dish = DISHES.iter().find(|d| d.key == key);
        let dish = dish.ok_or_else(|| Refused::Unknown(key.clone()))?;
        put_dish(&mut layout, dish, place, &mut taken)?;
    }
    number(&mut layout);
    match references(&layout).into_iter().next() {
        None => Ok(layout),
        Some(problem) => Err(Refused::Limit(problem.path)),
    }
}

/// Numbers the dishes from 1, as everyone will speak of them, then the settings.
fn number(layout: &mut Layout) {
    let (settings, dishes): (Vec<&Item>, Vec<&Item>) =
        layout.items.iter().partition(|item| item.group.is_some());
    let mut order: Vec<u16> = Vec::new();
    for item in dishes.into_iter().chain(settings) {
        if !order.contains(&item.number) {
            order.push(item.number);
        }
    }
    for item in &mut layout.items {
        let place = order.iter().position(|number| *number == item.number);
        item.number = place.map_or(item.number, |place| place as u16 + 1);
    }
    layout.head.next_number = order.len() as u16 + 1;
}

/// A round place on the table that is taken: centre and radius, mm.
type Taken = (DVec2, f64);

/// A thing of the catalogue at a place, with its own number.
fn thing(layout: &mut Layout, prop: &str, at: DVec2) -> Result<Item, Refused> {
    let entry = catalogue::prop(prop).ok_or_else(|| Refused::Unknown(prop.into()))?;
    let (id, number) = (fresh_id(layout), fresh_number(layout));
    Ok(catalogue::item_from(entry, id, number, Point::nearest(at)))
}

/// Plate, fork, knife and glass for each person, half of them along the near
/// edge of the board, half along the far one.
fn settings(layout: &mut Layout, people: usize, taken: &mut Vec<Taken>) -> Result<(), Refused> {
    let near = people.div_ceil(2);
    let [width, depth] = [layout.table.width, layout.table.depth].map(f64::from);
    let number = fresh_number(layout);
    for person in 0..people {
        let (place, row, far) = if person < near {
            (person, near, false)
        } else {
            (person - near, people - near, true)
        };
        let x = width * (place as f64 + 0.5) / row as f64;
        let up = if far { -1.0 } else { 1.0 };
        let edge = if far { 0.0 } else { depth };
        let turn = if far {
            Turn::from_degrees(180.0)
        } else {
            Turn::ZERO
        };
        let group = fresh_id(layout);
        let place = Arg::Text((person + 1).to_string());
        let setting = say("group-setting", &[("place", place)]);
        layout.groups.push(Group {
            id: group,
            name: setting,
            extra: crate::layout::Extra::new(),
        });
        // A thumb's breadth of the edge stays free; the fork lies left of the
        // plate and the knife right, as the sitter sees them (common practice).
        for (prop, dx, dy) in [
            ("small-plate", 0.0, -132.0),
            ("fork", -135.0, -130.0),
            ("knife", 135.0, -130.0),
            ("water-glass", 120.0, -300.0),
        ] {
            let at = DVec2::new(x + dx * up, edge + dy * up);
            let mut item = thing(layout, prop, at)?;
            item.number = number;
            item.group = Some(group);
            item.turn = turn;
            taken.push((at, radius(&item.size)));
            layout.items.push(item);
        }
    }
    Ok(())
}

/// Half the longer side of a thing, mm.
fn radius(size: &Size) -> f64 {
    let [w, d] = size.extent();
    f64::from(w.max(d)) * 0.5
}

/// Puts a dish where there is most room: the hero off the middle at a third of
/// the frame, the next towards the opposite third, the rest wherever is widest.
fn put_dish(
    layout: &mut Layout,
    dish: &Dish,
    place: usize,
    taken: &mut Vec<Taken>,
) -> Result<(), Refused> {
    let mut below: Option<Id> = None;
    let mut at = DVec2::ZERO;
    for prop in dish.props {
        let mut item = thing(layout, prop, DVec2::ZERO)?;
        if let Some(below) = below {
            item.on = Some(below);
            item.number = layout.items.last().map_or(item.number, |i| i.number);
            layout.head.next_number -= 1;
        } else {
            let own = radius(&item.size);
            at = free_place(layout, own, place, taken);
            taken.push((at, own));
            below = Some(item.id);
            item.name = dish.name.into();
            item.role = match place {
                0 => Role::Hero,
                1 | 2 => Role::Support,
                _ => Role::Filler,
            };
        }
        item.at = Point::nearest(at);
        layout.items.push(item);
    }
    Ok(())
}

/// The place in the frame that suits the dish number `place` of radius `own`.
fn free_place(layout: &Layout, own: f64, place: usize, taken: &[Taken]) -> DVec2 {
    const STEPS: i32 = 28;
    let frame = DVec2::new(f64::from(layout.frame.width), layout.frame.height());
    let room = (frame * 0.5 - DVec2::splat(own + AIR)).max(DVec2::ZERO);
    let centre = layout.frame.at.vec();
    let thirds = [
        DVec2::new(0.17, -0.08),
        DVec2::new(-0.2, 0.14),
        DVec2::new(-0.16, -0.16),
    ];
    let wanted = thirds.get(place).map(|third| centre + *third * frame);
    let mut best = (f64::NEG_INFINITY, centre);
    for row in -STEPS..=STEPS {
        for column in -STEPS..=STEPS {
            let step = DVec2::new(f64::from(column), f64::from(row)) / f64::from(STEPS);
            let at = centre + step * room;
            let gap = |(other, radius): &Taken| at.distance(*other) - radius - own;
            let gap = taken.iter().map(gap).fold(f64::INFINITY, f64::min);
            // Up to the wanted air more room counts most; after that, where.
            let worth = gap.min(AIR) * 10.0
                - wanted.map_or(-gap.min(frame.x), |wanted| at.distance(wanted));
            if worth > best.0 {
                best = (worth, at);
            }
        }
    }
    best.1
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::layout::open;

    fn wish(dishes: &[&str], people: usize) -> Wish {
        Wish {
            id: "00000000000000aa".into(),
            width: 1600,
            depth: 950,
            board: "charcoal-planks".into(),
            ratio: [3, 2],
            people,
            dishes: dishes.iter().map(|d| (*d).to_string()).collect(),
        }
    }

    #[test]
    fn every_dish_is_made_of_the_catalogue() {
        for dish in &DISHES {
            for prop in dish.props {
                assert!(catalogue::prop(prop).is_some(), "{}: {prop}", dish.key);
            }
        }
    }

    #[test]
    fn a_laid_table_is_a_layout_that_opens() {
        let layout = lay(&wish(&["mussels", "loaf", "olives"], 4)).expect("laid");
        let again = open(&layout.to_json()).expect("its file opens");
        assert_eq!(again, layout, "nothing is lost");
        let heroes = layout.items.iter().filter(|i| i.role == Role::Hero).count();
        assert_eq!(heroes, 1, "the first dish is the hero");
    }

    #[test]
    fn the_hero_is_number_one_and_the_settings_come_last() {
        let layout = lay(&wish(&["mussels", "loaf", "olives"], 4)).expect("laid");
        let of = |role: Role| {
            layout
                .items
                .iter()
                .find(|i| i.role == role && i.on.is_none())
        };
        assert_eq!(of(Role::Hero).map(|i| i.number), Some(1), "the hero");
        assert_eq!(
            of(Role::Support).map(|i| i.number),
            Some(2),
            "the next dish"
        );
        let plate = layout.items.iter().find(|i| i.prop == "small-plate");
        assert_eq!(plate.map(|i| i.number), Some(4), "after three dishes");
        assert_eq!(layout.head.next_number, 5, "and none is left out");
    }

    #[test]
    fn five_dishes_without_settings_stay_clear_of_each_other() {
        let dishes = ["mussels", "aubergine", "loaf", "tomato-salad", "olives"];
        let layout = lay(&wish(&dishes, 0)).expect("laid");
        let lowest: Vec<&Item> = layout.items.iter().filter(|i| i.on.is_none()).collect();
        for (n, a) in lowest.iter().enumerate() {
            for b in &lowest[n + 1..] {
                let gap = a.at.vec().distance(b.at.vec()) - radius(&a.size) - radius(&b.size);
                assert!(gap > 0.0, "{} and {} overlap by {gap}", a.name, b.name);
            }
        }
    }

    #[test]
    fn the_lens_stands_under_the_ceiling() {
        let layout = lay(&wish(&["mussels"], 0)).expect("laid");
        let sensor = Sensor::of(layout.camera.format).width;
        let width = f64::from(layout.frame.width);
        let far = distance_for_width(sensor, f64::from(layout.camera.focal), width);
        let top = far.expect("a lens") + f64::from(layout.table.height);
        assert!(top < f64::from(layout.rig.ceiling), "{top} mm");
    }

    #[test]
    fn what_nobody_knows_is_refused() {
        assert!(lay(&wish(&["stone soup"], 0)).is_err(), "no such dish");
        let mut odd = wish(&[], 0);
        odd.board = "ice".into();
        assert!(lay(&odd).is_err(), "no such board");
        odd.id = "not hex".into();
        assert!(lay(&odd).is_err(), "no such identity");
    }
}
