//! Things that come onto the table: from the catalogue and of one's own.
use super::free::nearest_free;
use super::onto::{carries, lay_food};
use super::{Act, Refused, called, fresh_id, fresh_number};
use crate::catalogue;
use crate::layout::{
    Extra, Face, Finish, Id, Item, Layout, MAX_OUTLINE, Part, Parts, Point, Role, Size, Srgb,
    Stock, Turn, clean_text,
};
use crate::scene::Scene;
use crate::shape::is_simple;

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
        after.linens.push(catalogue::linen_from(linen, id, at));
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

/// The outline of a thing of one's own.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum OwnShape {
    /// A round dish.
    Round,
    /// An oval one.
    Oval,
    /// One with four corners, a little rounded.
    Rect,
    /// A dish of a traced outline.
    Dish(Vec<Point>),
    /// A board of a traced outline.
    Board(Vec<Point>),
    /// Anything else of a traced outline.
    Other(Vec<Point>),
}

impl OwnShape {
    /// The shape of this word: `round`, `oval` or `rect`, or with the `points`
    /// of an outline `dish`, `board` or `other`.
    #[must_use]
    pub fn of(word: &str, points: Vec<Point>) -> Option<Self> {
        match word {
            "round" => Some(Self::Round),
            "oval" => Some(Self::Oval),
            "rect" => Some(Self::Rect),
            _ if points.len() > MAX_OUTLINE || !is_simple(&points) => None,
            "dish" => Some(Self::Dish(points)),
            "board" => Some(Self::Board(points)),
            "other" => Some(Self::Other(points)),
            _ => None,
        }
    }

    /// The catalogue's thing that behaves as it does, and the size of one so
    /// wide and so deep, mm; nothing in the catalogue is of no kind.
    fn sized(&self, width: i32, depth: i32) -> (&'static str, Size) {
        let rim = width.min(depth) / OWN_RIM;
        let traced = |points: &Vec<Point>| Size::Outline {
            points: points.clone(),
        };
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
            Self::Dish(points) => ("oval-dish", traced(points)),
            Self::Board(points) => ("wooden-board", traced(points)),
            Self::Other(points) => ("", traced(points)),
        }
    }
}

/// A thing of one's own.
pub struct Own<'a> {
    /// What it is called.
    pub name: &'a str,
    /// Its outline.
    pub shape: OwnShape,
    /// How wide it is, mm; what is traced has its own size.
    pub across: i32,
    /// How deep it is, mm; what is round is as deep as wide.
    pub down: i32,
    /// The thing's colour.
    pub dish: Srgb,
    /// The colour of the food in it.
    pub food: Option<Srgb>,
    /// Where it stands.
    pub at: Point,
}

/// Adds a thing of one's own by outline, size and colours, with its food.
///
/// # Errors
/// None so far as nothing there changes.
pub fn add_own(layout: &Layout, own: &Own<'_>) -> Result<Act, Refused> {
    let mut after = layout.clone();
    let (id, number) = (fresh_id(&mut after), fresh_number(&mut after));
    let [across, down] = [own.across, own.down].map(|side| side.clamp(10, MAX_OWN));
    let (prop, size) = own.shape.sized(across, down);
    let name = clean_text(own.name);
    let mut item = Item {
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
            food: own.food.map(Part::plain),
        },
        finish: Finish::Satin,
        face: Face::Usual,
        role: Role::Filler,
        on: None,
        group: None,
        locked: false,
        hold_minutes: None,
        stand_in: String::new(),
        stock: Stock::default(),
        extra: Extra::new(),
    };
    if matches!(item.size, Size::Outline { .. }) {
        // A traced line has no rim, and what is one's own may stand anywhere.
        item.parts.well = None;
        item.at = nearest_free(layout, &item);
    }
    after.items.push(item);
    Act::between(called("done-added", &name), layout, &after)
}

#[cfg(test)]
mod tests {
    use super::super::tests::{bare, done, laid};
    use super::super::{resize, swap, swaps};
    use super::*;
    use crate::catalogue::Kind;
    use crate::layout::open;
    use crate::shape::area;

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
                shape: OwnShape::of(word, Vec::new()).expect("a shape"),
                across: 260,
                down: 180,
                dish: white,
                food: Some(white),
                at: Point::new(500, 500),
            };
            let after = done(&before, add_own(&before, &own));
            let dish = after.items.last().expect("added");
            assert_eq!(dish.prop, prop, "{word}");
            assert_eq!(dish.size.extent(), wide, "{word}");
        }
        assert_eq!(OwnShape::of("star", Vec::new()), None, "no such shape");
    }

    /// A boat, 200 mm wide and 120 deep.
    fn boat() -> Vec<Point> {
        [
            (-100, 0),
            (-30, -60),
            (60, -50),
            (100, 0),
            (60, 50),
            (-30, 60),
        ]
        .map(|(x, y)| Point::new(x, y))
        .to_vec()
    }

    #[test]
    fn a_traced_thing_is_drawn_and_read_by_its_outline_and_travels() {
        let before = bare();
        for (word, kind) in [
            ("dish", Kind::Vessel),
            ("board", Kind::Board),
            ("other", Kind::Object),
        ] {
            let own = Own {
                name: "boat",
                shape: OwnShape::of(word, boat()).expect("sound"),
                across: 0,
                down: 0,
                dish: Srgb::hex(0x33_5577),
                food: None,
                at: Point::new(500, 400),
            };
            let after = done(&before, add_own(&before, &own));
            let boat = after.items.last().expect("added");
            assert_eq!(catalogue::kind_of(&boat.prop), kind, "{word}");
            assert_eq!(boat.size.extent(), [200, 120], "{word}");
            let scene = Scene::of(&after, None);
            let pieces: Vec<_> = scene.pieces.iter().filter(|p| p.owner == boat.id).collect();
            assert_eq!(pieces.len(), 1, "{word}: one piece");
            let true_area = area(&self::boat().iter().map(|p| p.vec()).collect::<Vec<_>>());
            assert_eq!(pieces[0].region.area(), true_area, "{word}: its outline");
            let file = open(&after.to_json()).expect("opens");
            assert_eq!(file, after, "{word}: in a file");
            let link = crate::link::link(&after);
            let back = crate::link::unlink(&link.fragment).expect("reads");
            assert_eq!(
                back.layout.items.last().map(|o| (&o.size, &o.prop)),
                Some((&boat.size, &boat.prop)),
                "{word}: in a link"
            );
        }
    }

    #[test]
    fn an_outline_that_is_none_is_not_taken() {
        let tie = [(0, 0), (90, 80), (90, 0), (0, 80)].map(|(x, y)| Point::new(x, y));
        for points in [tie.to_vec(), Vec::new(), vec![Point::new(3, 3); 300]] {
            assert_eq!(OwnShape::of("dish", points), None, "no outline");
        }
    }

    #[test]
    fn a_traced_thing_keeps_its_shape_when_it_is_resized_and_can_be_swapped() {
        let before = bare();
        let own = Own {
            name: "boat",
            shape: OwnShape::of("other", boat()).expect("sound"),
            across: 0,
            down: 0,
            dish: Srgb::hex(0x33_5577),
            food: None,
            at: Point::new(500, 400),
        };
        let laid = done(&before, add_own(&before, &own));
        let id = laid.items[0].id;
        let wider = done(&laid, resize(&laid, id, [300, 120]));
        assert_eq!(wider.items[0].size.extent(), [300, 180], "in proportion");
        let deeper = done(&laid, resize(&laid, id, [200, 60]));
        assert_eq!(deeper.items[0].size.extent(), [100, 60], "by its depth");
        assert!(
            resize(&laid, id, [200, 4]).is_err(),
            "too small to be a thing"
        );
        assert!(resize(&laid, id, [9000, 120]).is_err(), "too large");
        let swapped = done(&laid, swap(&laid, &[id], "pepper-mill", false));
        assert_eq!(swapped.items[0].prop, "pepper-mill", "for another object");
        assert!(!swaps(&laid, id).is_empty(), "and some are offered");
    }
}
