//! Small objects for the panels, made when something is opened or selected.
use planner::catalogue;
use planner::compare::doing;
use planner::layout::{Hand, Id, Item, Layout, Linen, LinenState, Part, Role, Side, Size, to_line};
use planner::order;
use planner::scene::{effective_role, flag, linen_drop};
use planner::words::{Arg, length, place, say};
use serde::Serialize;
use serde::de::DeserializeOwned;
use wasm_bindgen::prelude::*;

use crate::Planner;

/// As plain objects and arrays. They cross as text: a serialiser that makes
/// objects would be compiled anew for every type.
pub(crate) fn object(value: &impl Serialize) -> Result<JsValue, JsError> {
    js_sys::JSON::parse(&to_line(value)).map_err(|_| JsError::new("no JSON"))
}

/// What the page asks for.
pub(crate) fn asked<T: DeserializeOwned>(wish: JsValue) -> Result<T, JsError> {
    Ok(serde_wasm_bindgen::from_value(wish)?)
}

/// One line of the picture told in words.
#[derive(Serialize)]
struct Thing {
    id: Id,
    /// Number or flag on its tag; empty for what has none.
    number: String,
    name: String,
    #[serde(rename = "where")]
    place: String,
    role: String,
    locked: bool,
}

fn role_word(role: Role) -> String {
    match role {
        Role::Hero => say("thing-hero", &[]),
        Role::Support => say("thing-main", &[]),
        Role::Accent => say("thing-accent", &[]),
        Role::Filler => String::new(),
    }
}

fn things(layout: &Layout) -> Vec<Thing> {
    let at = |item: &Item| place(item.at, &layout.frame);
    let named = |name: &str, prop: &str| {
        let known = || catalogue::prop(prop).map_or(prop, |entry| entry.name);
        if name.is_empty() {
            known().to_string()
        } else {
            name.to_string()
        }
    };
    let mut items: Vec<&Item> = layout.items.iter().collect();
    let rank = |item: &Item| match effective_role(layout, item) {
        Role::Hero => (0, item.number),
        Role::Support => (1, item.number),
        Role::Accent => (2, item.number),
        Role::Filler => (3, item.number),
    };
    order::sort(&mut items, |a, b| rank(a).cmp(&rank(b)));
    let item = |item: &Item| Thing {
        id: item.id,
        // What lies in a dish goes by the dish's number.
        number: if item.on.is_none() {
            item.number.to_string()
        } else {
            String::new()
        },
        name: named(&item.name, &item.prop),
        place: at(item),
        role: role_word(item.role),
        locked: item.locked,
    };
    let mut all: Vec<Thing> = items.into_iter().map(item).collect();
    all.extend(layout.hands.iter().map(|hand| Thing {
        id: hand.id,
        number: flag(layout, hand),
        name: handed(hand),
        place: place(hand.target, &layout.frame),
        role: String::new(),
        locked: false,
    }));
    all.extend(layout.linens.iter().map(|linen| Thing {
        id: linen.id,
        number: String::new(),
        name: lying(layout, linen, named(&linen.name, "")),
        place: place(linen.at, &layout.frame),
        role: String::new(),
        locked: linen.locked,
    }));
    all
}

/// A linen by name and how it lies, with how far it hangs over the edge.
fn lying(layout: &Layout, linen: &Linen, name: String) -> String {
    let text = |mm: f64| Arg::Text(length(mm, layout.head.units));
    let [first, last] = linen_drop(&layout.table, linen);
    let state = match linen.state {
        LinenState::Flat => "thing-flat",
        LinenState::Folded => "thing-folded",
        LinenState::Bunched => "thing-bunched",
        LinenState::Thrown => "thing-thrown",
    };
    let args = [
        ("name", Arg::Name(name)),
        ("state", Arg::Text(say(state, &[]))),
        ("first", text(first)),
        ("last", text(last)),
    ];
    let hangs = first.max(last) >= 1.0;
    say(if hangs { "thing-hangs" } else { "thing-lies" }, &args)
}

/// A hand by its side and what it does.
fn handed(hand: &Hand) -> String {
    let id = match hand.side {
        Side::Left => "thing-hand-left",
        Side::Right => "thing-hand-right",
    };
    say(id, &[("action", Arg::Text(say(doing(hand.action), &[])))])
}

#[wasm_bindgen]
impl Planner {
    /// The open layout as an object.
    ///
    /// # Errors
    /// When the browser refuses to make it.
    pub fn layout(&self) -> Result<JsValue, JsError> {
        object(self.now())
    }

    /// Everything on the table in words, the dearest first.
    ///
    /// # Errors
    /// When the browser refuses to make it.
    pub fn things(&self) -> Result<JsValue, JsError> {
        object(&things(self.now()))
    }

    /// Whether there is such an object.
    #[must_use]
    pub fn has(&self, id: u16) -> bool {
        let layout = self.now();
        let id = Id(id);
        layout.items.iter().any(|o| o.id == id)
            || layout.linens.iter().any(|o| o.id == id)
            || layout.hands.iter().any(|o| o.id == id)
            || layout.crops.iter().any(|o| o.id == id)
            || layout.cards.iter().any(|o| o.id == id)
    }

    /// Whether it is a linen.
    #[must_use]
    pub fn is_linen(&self, id: u16) -> bool {
        self.now().linens.iter().any(|linen| linen.id == Id(id))
    }

    /// Whether it turns by its handle: items, linens and cards do.
    #[must_use]
    pub fn can_turn(&self, id: u16) -> bool {
        self.is_linen(id)
            || self.is_card(id)
            || self.now().items.iter().any(|item| item.id == Id(id))
    }

    /// First tone of a part (`rim`, `well` or `food`) as written or as the
    /// catalogue has it; empty when the thing has no such part.
    #[must_use]
    pub fn colour_of(&self, id: u16, part: &str) -> String {
        let item = self.now().items.iter().find(|item| item.id == Id(id));
        let Some(item) = item else {
            return String::new();
        };
        let shown = catalogue::shown_parts(item);
        let traced = matches!(item.size, Size::Outline { .. });
        let found = match part {
            "rim" => shown.rim,
            // A traced line has no inside of its own.
            "well" => shown.well.filter(|_| !traced),
            _ => shown.food,
        };
        let first = |part: Part| part.colours.first().map(|tone| tone.srgb.to_string());
        found.and_then(first).unwrap_or_default()
    }
}
