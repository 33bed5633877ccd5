//! Things that come onto the table: from the catalogue, of one's own, hands.
use planner::catalogue;
use planner::layout::{
    Extra, Face, Finish, Id, Item, Linen, LinenState, Origin, Part, Parts, Point, Role, Size, Srgb,
    Tone, Turn,
};
use serde::Deserialize;
use wasm_bindgen::prelude::*;

use crate::{Planner, arms};

/// An own dish by size and colour.
#[derive(Deserialize)]
struct Own {
    name: String,
    across: i32,
    dish: String,
    food: String,
    at: [i32; 2],
}

#[wasm_bindgen]
impl Planner {
    /// Adds a thing of the catalogue at a place, mm.
    ///
    /// # Errors
    /// When nobody knows it, or the table is full.
    pub fn add(&mut self, prop: &str, x: i32, y: i32) -> Result<JsValue, JsError> {
        let mut after = self.now().clone();
        let id = Self::fresh(&mut after);
        let at = Point::new(x, y);
        let name = if let Some(linen) = catalogue::linens().iter().find(|l| l.name == prop) {
            after.linens.push(Linen {
                id,
                name: linen.name.into(),
                kind: linen.kind,
                state: LinenState::Flat,
                at,
                size: linen.size,
                turn: Turn::ZERO,
                colour: linen.colour,
                locked: false,
                extra: Extra::new(),
            });
            linen.name
        } else {
            let entry = catalogue::prop(prop);
            let entry = entry.ok_or_else(|| JsError::new("The catalogue has no such thing."))?;
            let number = Self::fresh_number(&mut after);
            let mut item = catalogue::item_from(entry, id, number, at);
            // Food put down where a dish is lies in the dish.
            if entry.kind.is_food() {
                let under = self
                    .hit(f64::from(x), f64::from(y))
                    .into_iter()
                    .find(|under| {
                        after.items.iter().any(|o| {
                            o.id == Id(*under)
                                && catalogue::prop(&o.prop).is_some_and(|e| e.kind.carries_food())
                        })
                    });
                item.on = under.map(Id);
            }
            after.items.push(item);
            entry.name
        };
        self.become_layout(&format!("{name} added"), &after)
    }

    /// Adds an own round dish by size and colour, with its food.
    ///
    /// # Errors
    /// When a figure is out of range or the table is full.
    pub fn add_own(&mut self, wish: JsValue) -> Result<JsValue, JsError> {
        let own: Own = serde_wasm_bindgen::from_value(wish)?;
        let colour = |text: &str| {
            Srgb::parse(text).ok_or_else(|| JsError::new("A colour is # and six hex digits."))
        };
        let part = |srgb: Srgb| Part {
            colours: vec![Tone {
                srgb,
                share: 100,
                origin: Origin::Guess,
            }],
        };
        let (dish, food) = (colour(&own.dish)?, colour(&own.food)?);
        let mut after = self.now().clone();
        let (id, number) = (Self::fresh(&mut after), Self::fresh_number(&mut after));
        let across = own.across.clamp(10, 2_000);
        let name = planner::layout::clean_text(&own.name);
        after.items.push(Item {
            id,
            number,
            name: name.clone(),
            prop: "round-dish".into(),
            at: Point::new(own.at[0], own.at[1]),
            turn: Turn::ZERO,
            size: Size::Disc {
                diameter: across,
                rim: across / 14,
            },
            height: 40,
            parts: Parts {
                rim: Some(part(dish)),
                well: Some(part(dish)),
                food: Some(part(food)),
            },
            finish: Finish::Satin,
            face: Face::Usual,
            role: Role::Filler,
            on: None,
            group: None,
            locked: false,
            extra: Extra::new(),
        });
        self.become_layout(&format!("{name} added"), &after)
    }

    /// Sets one hand or a pair to an action, in an exposure of its own.
    ///
    /// # Errors
    /// When the item is not there or there are too many hands.
    pub fn add_hands(&mut self, wish: JsValue) -> Result<JsValue, JsError> {
        let wish: arms::Wish = serde_wasm_bindgen::from_value(wish)?;
        let mut after = self.now().clone();
        let set = arms::set(&after, &wish, after.head.next_id);
        let set = set.ok_or_else(|| JsError::new("That dish is not on the table."))?;
        let added = 1 + set.hands.len() + usize::from(set.person.is_some());
        after.head.next_id += added as u16;
        after.people.extend(set.person);
        after.exposures.push(set.exposure);
        after.hands.extend(set.hands);
        self.become_layout("hands set", &after)
    }
}
