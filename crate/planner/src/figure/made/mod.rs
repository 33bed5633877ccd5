//! Food made of like pieces and props made of coats, as data: how they lie, how one is cut and what is
//! painted on it, layer over layer. What needs more has a file of its own in
//! `drawing/food`.

use glam::{DVec2, dvec2};

use super::blob::{round, sheet};
use super::dice::Dice;
use super::outline::{mirrored, placed, polar, resampled, table};
use super::spot::{self, Spot};

#[rustfmt::skip]
mod bakes;
#[rustfmt::skip]
mod cutlery;
#[rustfmt::skip]
mod cuts;
#[rustfmt::skip]
mod fruit;
#[rustfmt::skip]
mod greens;
#[rustfmt::skip]
mod savoury;
#[rustfmt::skip]
mod scatters;
#[rustfmt::skip]
mod wares;

/// How the pieces lie; half lengths in mm.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Lie {
    /// One piece that fills the size.
    Whole,
    /// Heaped: half length and breadth of a piece, the percentage of the size
    /// they would cover side by side, and at most how many are drawn.
    Heap([f32; 2], f32, u8),
    /// Side by side.
    Ranks([f32; 2]),
    /// Strewn over the size, each piece this long; at most how many.
    Strewn([f32; 2], u8),
}

/// The silhouette of one piece; tables in hundredths of its half size.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Cut {
    /// Round, this uneven in percent.
    Round(u8),
    /// A rounded box, this uneven in percent.
    Box(u8),
    /// A sheet with corners, ruled by hand.
    Sheet,
    /// Round with this many lobes, at most ten.
    Lobed(u8),
    /// The upper side of a mirrored shape, from end to end of its axis.
    Sides(&'static [[i8; 2]]),
    /// A whole loop.
    Loop(&'static [[i8; 2]]),
}

/// A colour of a recipe.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Hue {
    /// A tone of the food by its place, moved this many steps to the light.
    Own(u8, i8),
    /// A colour that stays when the food is recoloured: `0xrrggbb`.
    Set(u32),
}

/// One thing painted on every piece of a layer. Widths are in base weights of
/// the pen, places and sizes in percent of the piece's half size.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Coat {
    /// The whole piece, with an ink outline of this width.
    Body(Hue, f32),
    /// The piece's own outline drawn in to a percentage and moved to the light.
    Inset(f32, Hue, f32),
    /// A round at a place, of a size, with an outline.
    Core([f32; 2], [f32; 2], Hue, f32),
    /// Dots on a ring between two radii.
    Seeds(u8, [f32; 2], Hue, f32),
    /// Lines from one radius to another, spread about the middle.
    Spokes(u8, [f32; 2], Hue, f32),
    /// Lines across the piece.
    Bars(u8, Hue, f32),
    /// Lines along the piece.
    Along(u8, Hue, f32),
    /// Small rounds anywhere on the piece: size and opacity in percent.
    Patches(u8, f32, Hue, f32),
    /// Rings at these percentages of the outline.
    Rings(&'static [f32], Hue, f32),
    /// The window caught on the piece, this far out.
    Light(f32, Hue, f32),
    /// A line of the table.
    Row(&'static [[i8; 2]], Hue, f32),
    /// A smooth loop of the table, with an outline.
    Part(&'static [[i8; 2]], Hue, f32),
    /// A nest of strands, a dark line under a light one.
    Strands(u8, Hue, Hue),
    /// Rounds in rings about the middle, as fruit on a tart: size, colour.
    Studs(u8, f32, Hue, f32),
}

/// What lies on the whole when its pieces are done.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Top {
    /// Picked herb leaves.
    Herbs(u8),
    /// Broad leaves.
    Leaves(u8),
    /// Dots: salt, seeds, sugar.
    Dots(u8, u32, f32),
    /// A thread of sauce, this many turns.
    Drizzle(u8, u32, f32),
}

/// How one food is made.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Recipe {
    /// Its id in the catalogue, which holds its tones.
    pub(crate) id: &'static str,
    pub(crate) lie: Lie,
    pub(crate) cut: Cut,
    pub(crate) coats: &'static [Coat],
    pub(crate) tops: &'static [Top],
}

const TABLES: [&[Recipe]; 5] = [
    savoury::RECIPES,
    greens::RECIPES,
    fruit::RECIPES,
    bakes::RECIPES,
    scatters::RECIPES,
];

/// How many of [`wares`], the first, are tools that lie lengthwise.
pub(crate) const TOOLS: usize = cutlery::RECIPES.len();

/// Every prop that is made of coats.
pub(crate) fn wares() -> impl Iterator<Item = &'static Recipe> {
    cutlery::RECIPES.iter().chain(wares::RECIPES)
}

/// Every food made of like pieces.
pub(crate) fn recipes() -> impl Iterator<Item = &'static Recipe> {
    TABLES.into_iter().flatten()
}

/// A pair of a recipe as a vector.
pub(crate) fn pair([x, y]: [f32; 2]) -> DVec2 {
    dvec2(f64::from(x), f64::from(y))
}

/// Where the pieces of a recipe lie.
pub(super) fn spots(recipe: &Recipe, dice: &mut Dice, half: DVec2) -> Vec<Spot> {
    match recipe.lie {
        Lie::Whole => vec![Spot::whole(half)],
        Lie::Heap(piece, cover, most) => {
            let cover = f64::from(cover) / 100.0;
            spot::heap(dice, half, pair(piece), cover, usize::from(most))
        }
        Lie::Ranks(piece) => spot::ranks(dice, half, pair(piece)),
        Lie::Strewn(piece, most) => spot::strewn(dice, half, pair(piece), usize::from(most)),
    }
}

/// The outline of one piece.
pub(super) fn piece(cut: Cut, dice: &mut Dice, spot: &Spot) -> Vec<DVec2> {
    let whole = |percent: u8, power| (f64::from(percent) / 100.0, power);
    let (jitter, power) = match cut {
        Cut::Round(percent) => whole(percent, 2.0),
        Cut::Box(percent) => whole(percent, 4.5),
        Cut::Sheet => {
            let short = spot.half.min_element();
            let edge = sheet(dice, spot.half, 6, short * 0.008, short * 0.04);
            return placed(&edge, spot.at, spot.turn, DVec2::ONE);
        }
        Cut::Lobed(lobes) => {
            let turn = dice.angle();
            let ring: Vec<DVec2> = (0..40)
                .map(|i| {
                    let t = core::f64::consts::TAU * f64::from(i) / 40.0;
                    let wave = libm::sin(f64::from(lobes) * t * 0.5 + turn).abs();
                    polar(t) * (0.84 + 0.16 * wave)
                })
                .collect();
            return spot.put(&ring);
        }
        Cut::Sides(row) => return resampled(&spot.put(&mirrored(row, DVec2::ONE)), 30, true),
        Cut::Loop(row) => return resampled(&spot.put(&table(row, DVec2::ONE)), 30, true),
    };
    let points = if spot.half.max_element() > 60.0 {
        40
    } else {
        14
    };
    round(dice, spot.at, spot.half, spot.turn, jitter, points, power)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalogue;

    #[test]
    fn every_recipe_is_of_one_food_and_paints_with_its_tones() {
        let mut seen = std::collections::BTreeSet::new();
        for recipe in recipes() {
            assert!(seen.insert(recipe.id), "{} twice", recipe.id);
            let entry = catalogue::prop(recipe.id);
            let entry = entry.unwrap_or_else(|| panic!("{} is not sold", recipe.id));
            assert!(entry.kind.is_food(), "{} is food", recipe.id);
            let most = hues(recipe).filter_map(|hue| match hue {
                Hue::Own(i, _) => Some(i),
                Hue::Set(_) => None,
            });
            for i in most {
                assert!(
                    usize::from(i) < entry.food.len(),
                    "{} has no tone {i}",
                    recipe.id
                );
            }
        }
    }

    fn hues(recipe: &Recipe) -> impl Iterator<Item = Hue> + '_ {
        recipe.coats.iter().flat_map(|coat| match *coat {
            Coat::Strands(_, a, b) => vec![a, b],
            Coat::Body(a, _)
            | Coat::Inset(_, a, _)
            | Coat::Core(_, _, a, _)
            | Coat::Seeds(_, _, a, _)
            | Coat::Spokes(_, _, a, _)
            | Coat::Bars(_, a, _)
            | Coat::Along(_, a, _)
            | Coat::Patches(_, _, a, _)
            | Coat::Rings(_, a, _)
            | Coat::Light(_, a, _)
            | Coat::Row(_, a, _)
            | Coat::Part(_, a, _)
            | Coat::Studs(_, _, a, _) => vec![a],
        })
    }
}
