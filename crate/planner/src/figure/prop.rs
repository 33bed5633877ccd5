//! Silhouettes of props that are more than the outline of their size: handles,
//! spouts, cutlery.

use glam::{DVec2, dvec2};

use super::blob::round;
use super::dice::{Dice, EDGE};
use super::form::Form;
use super::made::{self, Recipe};
use super::outline::{ellipse, mirrored, placed, table};
use super::spot::Spot;
use crate::catalogue::Kind;
use crate::shape::{Region, area, union};

/// What a thing is, as far as its shape and its drawing go.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Prop {
    /// A plate, bowl, platter or tin with a rim and a well.
    Dish,
    /// A dish with two handles at its sides.
    Pot,
    /// A pan with one long handle past its rim.
    Pan,
    /// A mug: its size holds the handle too.
    Mug,
    /// A cup on its saucer.
    Cup,
    /// A jug with spout and handle within its size.
    Jug,
    /// A glass with something in it.
    Glass,
    /// A bottle or carafe with its mouth in the middle.
    Carafe,
    /// A taper candle in its holder.
    Candle,
    /// A mill of turned wood.
    Mill,
    /// A wooden board.
    Board,
    /// A board of slate.
    Slate,
    /// A fork.
    Fork,
    /// A knife.
    Knife,
    /// A spoon.
    Spoon,
    /// Two chopsticks.
    Chopsticks,
    /// One of the props made of coats, by its place among them.
    Made(u8),
}

impl Prop {
    /// Every prop with a drawing of its own; the rest are [`Prop::Made`].
    const OWN: [Prop; 16] = [
        Prop::Dish,
        Prop::Pot,
        Prop::Pan,
        Prop::Mug,
        Prop::Cup,
        Prop::Jug,
        Prop::Glass,
        Prop::Carafe,
        Prop::Candle,
        Prop::Mill,
        Prop::Board,
        Prop::Slate,
        Prop::Fork,
        Prop::Knife,
        Prop::Spoon,
        Prop::Chopsticks,
    ];

    /// Every prop that can be drawn.
    pub fn all() -> impl Iterator<Item = Prop> {
        let made = made::wares().enumerate();
        Prop::OWN
            .into_iter()
            .chain(made.map(|(i, _)| Prop::Made(i as u8)))
    }

    /// How it is made, if it is made of coats.
    pub(crate) fn recipe(self) -> Option<&'static Recipe> {
        match self {
            Prop::Made(place) => made::wares().nth(usize::from(place)),
            _ => None,
        }
    }

    /// Whether it is longer than wide and designed lying to the right.
    #[must_use]
    pub fn is_long(self) -> bool {
        match self {
            Self::Fork | Self::Knife | Self::Spoon | Self::Chopsticks => true,
            Self::Made(place) => usize::from(place) < made::TOOLS,
            _ => false,
        }
    }
}

/// Which prop a catalogue id is; the rest are outlines of their size.
#[must_use]
pub fn prop_of(id: &str, kind: Kind) -> Option<Prop> {
    if let Some(place) = made::wares().position(|recipe| recipe.id == id) {
        return Some(Prop::Made(place as u8));
    }
    Some(match (id, kind) {
        (
            "enamel-pot" | "pale-lined-pot" | "iron-casserole" | "clay-pot" | "copper-pot"
            | "soup-tureen" | "gratin-dish" | "oval-casserole",
            _,
        ) => Prop::Pot,
        ("frying-pan" | "iron-skillet" | "saucepan" | "wok" | "milk-pan", _) => Prop::Pan,
        ("mug", _) => Prop::Mug,
        ("coffee-cup" | "teacup" | "espresso-cup", _) => Prop::Cup,
        ("jug" | "glass-pitcher" | "milk-jug", _) => Prop::Jug,
        ("oil-carafe" | "bottle" | "decanter" | "vinegar-bottle" | "milk-bottle", _) => {
            Prop::Carafe
        }
        ("pepper-mill", _) => Prop::Mill,
        ("fork" | "dessert-fork" | "place-fork" | "fish-fork" | "serving-fork", _) => Prop::Fork,
        ("knife" | "dessert-knife" | "place-knife" | "fish-knife", _) => Prop::Knife,
        (
            "spoon" | "serving-spoon" | "dessert-spoon" | "teaspoon" | "soup-spoon"
            | "coffee-spoon" | "rice-spoon",
            _,
        ) => Prop::Spoon,
        ("chopsticks", _) => Prop::Chopsticks,
        ("wooden-board", _) => Prop::Board,
        ("slate-board" | "slate-coaster", _) => Prop::Slate,
        (_, Kind::Candle) => Prop::Candle,
        (_, Kind::Glass) => Prop::Glass,
        (_, Kind::Vessel | Kind::Board) => Prop::Dish,
        _ => return None,
    })
}

/// Whether a catalogue id is a prop made of coats.
#[must_use]
pub fn is_coated(id: &str) -> bool {
    made::wares().any(|recipe| recipe.id == id)
}

/// Handle and neck shared by fork and spoon, in hundredths of the half size.
pub(crate) const SHAFT: [[i8; 2]; 5] = [[-100, -40], [-50, -34], [10, -24], [34, -26], [40, -30]];
/// Upper side of a fork without the gaps between its tines.
const FORK: [[i8; 2]; 8] = [
    [-100, -40],
    [-50, -34],
    [10, -24],
    [34, -26],
    [46, -70],
    [60, -100],
    [100, -92],
    [100, -20],
];
/// A table knife: blade and handle.
pub(crate) const BLADE: [[i8; 2]; 6] = [
    [2, -50],
    [50, -92],
    [90, -84],
    [100, -20],
    [93, 50],
    [2, 60],
];
/// See [`BLADE`].
pub(crate) const HANDLE: [[i8; 2]; 6] = [
    [-100, -60],
    [-50, -70],
    [3, -55],
    [3, 58],
    [-50, 64],
    [-100, 60],
];

/// The form a prop is designed in: long things lie along x.
pub(crate) fn designed(prop: Prop, form: &Form) -> Form {
    let form = form.sound();
    if prop.is_long() && form.half.y > form.half.x {
        // The tip points to the top before the turn.
        return Form {
            half: dvec2(form.half.y, form.half.x),
            turn: form.turn - core::f64::consts::FRAC_PI_2,
            ..form
        };
    }
    form
}

/// The parts that make the silhouette of a prop, in its designed frame, the
/// body first; none where the outline of its size is all there is.
pub(crate) fn parts(prop: Prop, seed: u32, half: DVec2) -> Vec<Vec<DVec2>> {
    let dice = &mut Dice::new(seed, EDGE);
    let ring = |half: DVec2| ellipse(DVec2::ZERO, half, 64);
    match prop {
        Prop::Pot => {
            let ear = |dice: &mut Dice, side: f64| {
                let grip = half * dvec2(0.17, 0.24);
                round(
                    dice,
                    dvec2(side * half.x * 1.05, 0.0),
                    grip,
                    0.0,
                    0.02,
                    18,
                    2.8,
                )
            };
            vec![ring(half), ear(dice, -1.0), ear(dice, 1.0)]
        }
        Prop::Pan => {
            let grip = [
                [90, -13],
                [150, -10],
                [178, -12],
                [190, 0],
                [178, 12],
                [150, 10],
                [90, 13],
            ];
            let grip: Vec<DVec2> = grip
                .iter()
                .map(|&[x, y]| dvec2(f64::from(x), f64::from(y)) * (half / 100.0))
                .collect();
            vec![ring(half), grip]
        }
        Prop::Mug => {
            let r = half.min_element();
            let at = -dvec2(half.x - r, 0.0);
            let reach = (half.x - at.x - r).max(r * 0.2);
            let ear = round(
                dice,
                dvec2(half.x - reach * 0.72, 0.0),
                dvec2(reach * 0.72, r * 0.3),
                0.0,
                0.02,
                16,
                2.6,
            );
            vec![ellipse(at, DVec2::splat(r), 48), ear]
        }
        Prop::Jug => {
            let body = round(dice, DVec2::ZERO, half * 0.8, 0.0, 0.006, 40, 2.0);
            let ear = half * dvec2(0.2, 0.17);
            let ear = round(dice, half * dvec2(0.8, 0.0), ear, 0.0, 0.02, 16, 2.6);
            let spout = [[-60, -40], [-88, -20], [-100, 0], [-88, 20], [-60, 40]];
            vec![body, ear, table(&spout, half)]
        }
        Prop::Slate => {
            let mut edge = super::blob::sheet(dice, half * 0.99, 14, 1.0, 3.0);
            for p in &mut edge {
                *p += dice.disc() * 1.6;
            }
            vec![edge]
        }
        Prop::Fork => vec![mirrored_end(&FORK, half)],
        Prop::Knife => vec![table(&BLADE, half), table(&HANDLE, half)],
        Prop::Spoon => {
            let shaft = mirrored_end(&SHAFT, half * dvec2(1.0, 0.55));
            // It begins within the shaft: what only touches is not joined.
            let bowl = ellipse(half * dvec2(0.68, 0.0), half * dvec2(0.32, 1.0), 24);
            vec![shaft, bowl]
        }
        Prop::Chopsticks => [-0.6, 0.6]
            .iter()
            .map(|&y| {
                vec![
                    half * dvec2(-1.0, y * 0.6 - 0.14),
                    half * dvec2(1.0, y - 0.24),
                    half * dvec2(1.0, y + 0.24),
                    half * dvec2(-1.0, y * 0.6 + 0.14),
                ]
            })
            .collect(),
        Prop::Made(_) => {
            let spot = Spot::whole(half);
            let recipe = prop.recipe();
            recipe.map_or_else(Vec::new, |r| vec![made::piece(r.cut, dice, &spot)])
        }
        Prop::Dish
        | Prop::Cup
        | Prop::Glass
        | Prop::Carafe
        | Prop::Candle
        | Prop::Mill
        | Prop::Board => Vec::new(),
    }
}

/// A row and its mirror image whose ends do not lie on the axis.
fn mirrored_end(row: &[[i8; 2]], half: DVec2) -> Vec<DVec2> {
    let mut points = mirrored(row, half);
    let [x, y] = row[0];
    points.push(dvec2(f64::from(x), -f64::from(y)) / 100.0 * half);
    let [x, y] = row[row.len() - 1];
    let end = dvec2(f64::from(x), -f64::from(y)) / 100.0 * half;
    points.insert(row.len(), end);
    points
}

/// The silhouette of a prop about its centre, turned; nothing where the
/// outline of its size is all there is.
#[must_use]
pub fn prop_outline(prop: Prop, form: &Form) -> Option<Vec<DVec2>> {
    let form = designed(prop, form);
    let parts = parts(prop, form.seed, form.half);
    // Two things side by side have no one outline; their size stands for them.
    (!parts.is_empty() && prop != Prop::Chopsticks)
        .then(|| placed(&merged(&parts), DVec2::ZERO, form.turn, DVec2::ONE))
}

/// The outer edge of overlapping loops.
#[must_use]
pub fn merged(parts: &[Vec<DVec2>]) -> Vec<DVec2> {
    let regions: Vec<Region> = parts
        .iter()
        .filter_map(|part| Region::from_polygon(part).ok())
        .collect();
    let refs: Vec<&Region> = regions.iter().collect();
    let whole = union(&refs).unwrap_or_default();
    let rings = whole.rings().iter();
    let outer = rings.max_by(|a, b| area(a).total_cmp(&area(b)));
    outer.cloned().unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::figure::outline::bounds;

    #[test]
    fn handles_stand_out_and_everything_else_keeps_to_its_size() {
        for prop in Prop::all() {
            let half = if prop.is_long() {
                dvec2(12.0, 100.0)
            } else {
                dvec2(140.0, 100.0)
            };
            let Some(edge) = prop_outline(prop, &Form::new(5, half, 0.0)) else {
                continue;
            };
            let (low, high) = bounds(&edge);
            let most = match prop {
                Prop::Pot => dvec2(1.25, 1.0),
                Prop::Pan => dvec2(1.95, 1.0),
                _ => DVec2::ONE,
            };
            let reach = high.abs().max(low.abs());
            assert!(
                (reach - half * most).max_element() < 3.0,
                "{prop:?} reaches {reach}"
            );
            assert!(reach.y > half.y * 0.7, "{prop:?} fills its size: {reach}");
            let long = (high.x - low.x) / half.x;
            assert!(long > 1.4, "{prop:?} is in one piece: {long} of 2");
        }
    }
}
