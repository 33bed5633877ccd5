//! Things that come onto the table: from the catalogue and of one's own.
use super::free::nearest_free;
use super::onto::{carries, lay_food};
use super::{Act, Refused, called, fresh_id, fresh_number};
use crate::catalogue;
use crate::layout::{
    Extra, Face, Finish, Id, Item, Layout, Linen, LinenState, Origin, Part, Parts, Point, Role,
    Size, Srgb, Turn, clean_text,
};
use crate::scene::Scene;

/// How high an own dish is taken to be, mm, and how broad its rim, as a share
/// of it (our choice).
const OWN_HEIGHT: i32 = 40;
const OWN_RIM: i32 = 14;
/// The widest own dish, mm.
const MAX_OWN: i32 = 2_000;

/// Adds a thing of the catalogue at a place, or as near to it as nothing is in
/// the way. Food comes into the dish `onto`, or the one it lies in, where
/// either can hold food; else it lies in the dish that is at the place. It
/// sizes itself to its dish.
///
/// # Errors
/// When the catalogue has no such thing.
pub fn add(
    layout: &Layout,
    scene: &Scene,
    prop: &str,
    at: Point,
    onto: Option<Id>,
) -> Result<Act, Refused> {
    let mut after = layout.clone();
    let id = fresh_id(&mut after);
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
            origin: Origin::Guess,
            over: Vec::new(),
            locked: false,
            extra: Extra::new(),
        });
        linen.name
    } else {
        let entry = catalogue::prop(prop).ok_or_else(|| Refused::Unknown(prop.into()))?;
        let number = fresh_number(&mut after);
        let mut item = catalogue::item_from(entry, id, number, at);
        if entry.kind.is_food() {
            let dish = onto.and_then(|id| dish_of(layout, id));
            item.at = dish.map_or(at, |dish| dish.at);
            if let Some(dish) = dish.or_else(|| dish_at(layout, scene, at)) {
                lay_food(&mut item, dish);
            }
        }
        if item.on.is_none() {
            item.at = nearest_free(layout, &item);
        }
        after.items.push(item);
        entry.name
    };
    Act::between(called("done-added", name), layout, &after)
}

/// The topmost thing at a place that food can lie in.
fn dish_at<'a>(layout: &'a Layout, scene: &Scene, at: Point) -> Option<&'a Item> {
    let found = |id: Id| layout.items.iter().find(|o| o.id == id && carries(o));
    scene.hit(at.vec()).into_iter().find_map(found)
}

/// The thing itself, or what it stands on, where food can lie in it.
fn dish_of(layout: &Layout, id: Id) -> Option<&Item> {
    let item = |id: Id| layout.items.iter().find(|o| o.id == id);
    let chosen = item(id)?;
    let below = || chosen.on.and_then(item);
    Some(chosen)
        .filter(|o| carries(o))
        .or_else(below)
        .filter(|o| carries(o))
}

/// The outline of a dish of one's own.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OwnShape {
    /// A circle.
    Round,
    /// An ellipse.
    Oval,
    /// Four corners, a little rounded.
    Rect,
}

impl OwnShape {
    /// The shape of this word: `round`, `oval` or `rect`.
    #[must_use]
    pub fn parse(word: &str) -> Option<Self> {
        match word {
            "round" => Some(Self::Round),
            "oval" => Some(Self::Oval),
            "rect" => Some(Self::Rect),
            _ => None,
        }
    }

    /// The catalogue's dish of this outline, and the size of one so wide and
    /// so deep, mm.
    fn sized(self, width: i32, depth: i32) -> (&'static str, Size) {
        let rim = width.min(depth) / OWN_RIM;
        match self {
            Self::Round => (
                "round-dish",
                Size::Disc {
                    diameter: width,
                    rim: width / OWN_RIM,
                },
            ),
            Self::Oval => ("oval-dish", Size::Oval { width, depth, rim }),
            Self::Rect => (
                "rect-dish",
                Size::Rect {
                    width,
                    depth,
                    corner: rim,
                    rim,
                },
            ),
        }
    }
}

/// A dish of one's own.
pub struct Own<'a> {
    /// What it is called.
    pub name: &'a str,
    /// Its outline.
    pub shape: OwnShape,
    /// How wide it is, mm.
    pub across: i32,
    /// How deep it is, mm; what is round is as deep as wide.
    pub down: i32,
    /// The dish's colour.
    pub dish: Srgb,
    /// The colour of the food in it.
    pub food: Srgb,
    /// Where it stands.
    pub at: Point,
}

/// Adds a dish of one's own by outline, size and colour, with its food.
///
/// # Errors
/// None so far as nothing there changes.
pub fn add_own(layout: &Layout, own: &Own<'_>) -> Result<Act, Refused> {
    let mut after = layout.clone();
    let (id, number) = (fresh_id(&mut after), fresh_number(&mut after));
    let [across, down] = [own.across, own.down].map(|side| side.clamp(10, MAX_OWN));
    let (prop, size) = own.shape.sized(across, down);
    let name = clean_text(own.name);
    after.items.push(Item {
        id,
        number,
        name: name.clone(),
        prop: prop.into(),
        at: own.at,
        turn: Turn::ZERO,
        size,
        height: OWN_HEIGHT,
        parts: Parts {
            rim: Some(Part::plain(own.dish)),
            well: Some(Part::plain(own.dish)),
            food: Some(Part::plain(own.food)),
        },
        finish: Finish::Satin,
        face: Face::Usual,
        role: Role::Filler,
        on: None,
        group: None,
        locked: false,
        extra: Extra::new(),
    });
    Act::between(called("done-added", &name), layout, &after)
}

#[cfg(test)]
mod tests {
    use super::super::tests::{done, laid};
    use super::*;

    #[test]
    fn an_own_dish_takes_the_outline_asked_for() {
        let before = laid();
        let white = Srgb::parse("#ffffff").expect("a colour");
        for (word, prop, wide) in [
            ("round", "round-dish", [260, 260]),
            ("oval", "oval-dish", [260, 180]),
            ("rect", "rect-dish", [260, 180]),
        ] {
            let own = Own {
                name: "mine",
                shape: OwnShape::parse(word).expect("a shape"),
                across: 260,
                down: 180,
                dish: white,
                food: white,
                at: Point::new(500, 500),
            };
            let after = done(&before, add_own(&before, &own));
            let dish = after.items.last().expect("added");
            assert_eq!(dish.prop, prop, "{word}");
            assert_eq!(dish.size.extent(), wide, "{word}");
        }
        assert_eq!(OwnShape::parse("star"), None, "no such shape");
    }
}
