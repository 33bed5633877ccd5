//! A table laid in one go: a board, a frame, place settings and shared dishes.
mod dishes;
mod places;

use crate::catalogue;
use crate::layout::{Item, Layout, LayoutId, Point, Ratio, Role, TableShape, references};
use crate::optics::{Sensor, distance_for_width};
use crate::words::say;
use glam::DVec2;
use serde::{Deserialize, Serialize};

use super::onto::lay_food;
use super::room::{Body, Room, quarter_turns, turned};
use super::settings::put;
use super::{Refused, fresh_item as thing, fresh_number};
use crate::seats::{Closeness, Laid, SETTINGS};
use dishes::{DISHES, Dish};
use places::places;

/// One dish as the page offers it.
#[derive(Serialize)]
pub struct Offer {
    /// By this key it is wished for.
    pub dish: &'static str,
    /// What it is called.
    pub name: &'static str,
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
    /// Outline of the board; a round one is as wide as `width`.
    pub shape: TableShape,
    /// Catalogue id of the surface.
    pub board: String,
    /// Frame, width to height.
    pub ratio: [u16; 2],
    /// Place settings, as many along the long edges as there is room for.
    pub people: usize,
    /// Dishes by key, the hero first.
    pub dishes: Vec<String>,
}

/// Share of a board with four corners the frame takes, each way at most, and
/// of a round one its diagonal. Our choice.
const FRAME_SHARE: f64 = 0.86;
const ROUND_SHARE: f64 = 0.96;

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
    let [width, depth] = [wish.width, wish.depth].map(|s| s.clamp(100, crate::layout::MAX_SIZE));
    let is_round = wish.shape == TableShape::Round;
    layout.table.shape = wish.shape;
    layout.table.width = width;
    layout.table.depth = if is_round { width } else { depth };
    let [width, depth] = [width, layout.table.depth].map(f64::from);
    let [wide, high] = wish.ratio.map(|side| side.max(1));
    layout.frame.ratio = Ratio {
        width: wide,
        height: high,
    };
    let [wide, high] = [wide, high].map(f64::from);
    let across = if is_round {
        ROUND_SHARE * width * wide / DVec2::new(wide, high).length()
    } else {
        FRAME_SHARE * width.min(depth * wide / high)
    };
    layout.frame.width = across.floor() as i32;
    layout.frame.at = layout.table.centre();
    layout.camera.focal = lens_for(&layout);
    layout.head.title = say("title-laid", &[]);

    lay_things(&mut layout, wish)?;
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

/// Adds the settings and dishes wished for, each in its place.
fn lay_things(layout: &mut Layout, wish: &Wish) -> Result<(), Refused> {
    let people = wish.people.min(12);
    let picked = wish.dishes.iter().map(|key| {
        let dish = DISHES.iter().find(|d| d.key == key);
        dish.ok_or_else(|| Refused::Unknown(key.clone()))
    });
    let picked = picked.collect::<Result<Vec<_>, _>>()?;
    let mut sample = layout.clone();
    // The usual one for the camera comes first.
    let ways = [Closeness::Usual, Closeness::Close].map(|c| SETTINGS[0].laid(c));
    let mut setting = Vec::new();
    for piece in &ways[0] {
        setting.push(thing(&mut sample, piece.prop)?);
    }
    let mut lowest = Vec::new();
    for dish in &picked {
        lowest.push(thing(&mut sample, dish.props[0])?);
    }
    let half = DVec2::new(f64::from(layout.frame.width), layout.frame.height()) * 0.5;
    let centre = layout.frame.at.vec();
    let room = Room {
        low: (centre - half).ceil(),
        high: (centre + half).floor(),
    };
    let offs = ways.each_ref().map(|laid| {
        let off = |piece: &Laid| piece.at - laid[0].at;
        laid.iter().map(off).collect::<Vec<_>>()
    });
    let (bodies, close) = places((&setting, &offs), people, &lowest, room);
    let (settings, dishes) = bodies.split_at(people);
    let laid = &ways[usize::from(close)];
    let number = fresh_number(layout);
    for body in settings {
        let edge = body.at - turned(laid[0].at, body.quarters);
        put(layout, laid, edge, quarter_turns(body.quarters), number)?;
    }
    for (n, dish) in picked.into_iter().enumerate() {
        for body in dishes.iter().filter(|body| body.dish == n) {
            put_dish(layout, dish, body)?;
        }
    }
    Ok(())
}

/// Puts a dish and what lies on it in its place; the first is the hero.
fn put_dish(layout: &mut Layout, dish: &Dish, body: &Body) -> Result<(), Refused> {
    let mut below: Option<Item> = None;
    for prop in dish.props {
        let mut item = thing(layout, prop)?;
        item.at = Point::nearest(body.at);
        item.turn = quarter_turns(body.quarters);
        if let Some(below) = &below {
            lay_food(&mut item, below);
            item.number = below.number;
            layout.head.next_number -= 1;
        } else {
            below = Some(item.clone());
            item.name = dish.name.into();
            item.role = match body.dish {
                0 => Role::Hero,
                1 | 2 => Role::Support,
                _ => Role::Filler,
            };
        }
        layout.items.push(item);
    }
    Ok(())
}

#[cfg(test)]
mod tests;
