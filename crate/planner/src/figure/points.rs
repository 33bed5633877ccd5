//! What of a thing points somewhere, and where to.

use glam::{DVec2, dvec2};

use super::food::Food;
use super::form::Form;
use super::prop::{Prop, designed, prop_of};
use super::spot::Spot;
use super::thing::{food_of, form_of};
use crate::catalogue;
use crate::layout::Item;

/// What points.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Pointer {
    /// The tip of cutlery or of chopsticks.
    Tip,
    /// The handle of a pan or mug.
    Handle,
    /// The spout of a jug or pot.
    Spout,
    /// The nose of a fish.
    Nose,
    /// The tip of a sprig.
    Sprig,
}

/// A line along a thing, from its far end to what points, mm about its centre.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pointing {
    /// What points.
    pub what: Pointer,
    /// Where the line begins.
    pub from: DVec2,
    /// Its point.
    pub to: DVec2,
}

/// Where a thing points; `None` for what points nowhere or both ways.
#[must_use]
pub fn pointing(item: &Item) -> Option<Pointing> {
    let form = form_of(item);
    if let Some(food) = food_of(&item.prop) {
        return food_points(food, &form);
    }
    let kind = catalogue::kind_of(&item.prop);
    let prop = prop_of(&item.prop, kind)?;
    // In hundredths of the half width: where the line begins and its point.
    let (what, from, to) = match (prop, item.prop.as_str()) {
        // The narrow ends are the tips.
        (Prop::Chopsticks, _) => (Pointer::Tip, 100.0, -100.0),
        (Prop::Pan, _) => (Pointer::Handle, -100.0, 190.0),
        (Prop::Mug, _) => (Pointer::Handle, -100.0, 100.0),
        (Prop::Jug, _) | (_, "teapot" | "creamer") => (Pointer::Spout, 100.0, -100.0),
        (_, "rolling-pin") => return None,
        (prop, _) if prop.is_long() => (Pointer::Tip, -100.0, 100.0),
        _ => return None,
    };
    let form = designed(prop, &form);
    let turned = |x: f64| placed(x / 100.0 * form.half.x, form.turn);
    Some(Pointing {
        what,
        from: turned(from),
        to: turned(to),
    })
}

fn placed(x: f64, turn: f64) -> DVec2 {
    let (sin, cos) = libm::sincos(turn);
    dvec2(cos, sin) * x
}

fn food_points(food: Food, form: &Form) -> Option<Pointing> {
    let (what, from, to) = match food {
        Food::Fish if super::food::fish_is_one(form.half) => (Pointer::Nose, 1.0, -1.0),
        Food::Herbs => (Pointer::Sprig, -1.0, 1.0),
        _ => return None,
    };
    let spot = Spot::whole(form.half);
    let turned = |x: f64| placed(x * spot.half.x, spot.turn + form.turn);
    Some(Pointing {
        what,
        from: turned(from),
        to: turned(to),
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::figure::thing_outline;
    use crate::layout::{Id, Point, Turn};

    fn laid(prop: &str) -> Item {
        let entry = catalogue::prop(prop).or_else(|| {
            let mut foods = catalogue::foods().iter();
            foods.find(|e| e.id == prop)
        });
        let entry = entry.unwrap_or_else(|| panic!("no {prop}"));
        catalogue::item_from(entry, Id(1), 1, Point::new(0, 0))
    }

    #[test]
    fn a_point_lies_on_the_edge_of_what_is_drawn() {
        for prop in [
            "fork",
            "dessert-spoon",
            "frying-pan",
            "mug",
            "jug",
            "teapot",
            "roast-fish",
        ] {
            let mut item = laid(prop);
            for half_degrees in [0, 95, 400] {
                item.turn = Turn::from_half_degrees(half_degrees);
                let points = pointing(&item).unwrap_or_else(|| panic!("{prop} points"));
                let edge = thing_outline(&item);
                let near = edge.iter().map(|p| p.distance(points.to));
                let near = near.fold(f64::INFINITY, f64::min);
                assert!(near < 18.0, "{prop}: {near} mm from the drawn edge");
            }
        }
    }

    #[test]
    fn cutlery_points_up_and_chopsticks_down_before_they_are_turned() {
        let up = |prop: &str| {
            let points = pointing(&laid(prop)).expect("it points");
            (points.to - points.from).normalize_or_zero().y
        };
        assert!(up("fork") < -0.99, "the tines are at the top");
        assert!(up("chopsticks") > 0.99, "the narrow ends are at the bottom");
    }

    #[test]
    fn round_things_and_pins_point_nowhere() {
        for prop in ["noodle-bowl", "enamel-pot", "rolling-pin", "mussels"] {
            assert_eq!(pointing(&laid(prop)), None, "{prop}");
        }
    }
}
