//! Food as pieces: where each lies and the edge round them all.

use glam::DVec2;

use super::blob::round;
use super::dice::{Dice, EDGE};
use super::edges;
use super::form::{Face, Form, Frame};
use super::made::{self, Recipe};
use super::outline::{bounds, inset, middle, resampled, wrapped};
use super::spot::{self, Spot};

/// Points of every food's outline.
pub(crate) const EDGE_POINTS: usize = 48;

/// What a dish holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Food {
    /// Mussels open in their shells, in broth.
    Mussels,
    /// Lemon wedges, or one.
    LemonWedges,
    /// Halved lemons or other citrus; whole ones with the skin up.
    Citrus,
    /// A loaf crust up, a cut slice or a torn piece, by its face.
    Loaf,
    /// Olives.
    Olives,
    /// Seared aubergine halves, or whole ones with the skin up.
    Aubergine,
    /// A sprig of herbs.
    Herbs,
    /// Picked herb leaves, scattered.
    HerbScatter,
    /// Bread crumbs, scattered.
    Crumbs,
    /// Salt flakes, scattered.
    Salt,
    /// Tomato slices with basil and red onion.
    TomatoSalad,
    /// Mixed leaves.
    LeafSalad,
    /// Noodles in broth with an egg, filling their bowl.
    Noodles,
    /// Halved eggs, or one.
    Eggs,
    /// A mound of rice.
    Rice,
    /// A whole roast fish, or several.
    Fish,
    /// Mixed berries.
    Berries,
    /// A wedge of cheese.
    Cheese,
    /// Mixed nuts.
    Nuts,
    /// Soup, filling its bowl.
    Soup,
    /// Roast potatoes.
    Potatoes,
    /// Roast carrots, or one.
    Carrots,
    /// One of the foods made of like pieces, by its place among them.
    Made(u8),
}

/// Half length and breadth of one fish, mm.
const FISH: [f64; 2] = [155.0, 58.0];

/// True where one fish fills these extents and no more lie side by side.
pub(super) fn fish_is_one(half: DVec2) -> bool {
    spot::holds_one(half, DVec2::from_array(FISH))
}

impl Food {
    /// Every food with a drawing of its own; the rest are [`Food::Made`].
    const OWN: [Food; 22] = [
        Food::Mussels,
        Food::LemonWedges,
        Food::Citrus,
        Food::Loaf,
        Food::Olives,
        Food::Aubergine,
        Food::Herbs,
        Food::HerbScatter,
        Food::Crumbs,
        Food::Salt,
        Food::TomatoSalad,
        Food::LeafSalad,
        Food::Noodles,
        Food::Eggs,
        Food::Rice,
        Food::Fish,
        Food::Berries,
        Food::Cheese,
        Food::Nuts,
        Food::Soup,
        Food::Potatoes,
        Food::Carrots,
    ];

    /// Every food that can be drawn.
    pub fn all() -> impl Iterator<Item = Food> {
        let made = made::recipes().enumerate();
        Food::OWN
            .into_iter()
            .chain(made.map(|(i, _)| Food::Made(i as u8)))
    }

    /// How it is made, if it is made of like pieces.
    pub(crate) fn recipe(self) -> Option<&'static Recipe> {
        match self {
            Food::Made(place) => made::recipes().nth(usize::from(place)),
            _ => None,
        }
    }
}

/// The pieces of one food and the edge round them, in the designed frame.
pub(crate) struct Plan {
    pub(crate) spots: Vec<Spot>,
    /// Each piece's own loop, in the order of `spots`.
    pub(crate) pieces: Vec<Vec<DVec2>>,
    pub(crate) edge: Vec<DVec2>,
    pub(crate) frame: Frame,
    pub(crate) face: Face,
}

impl Plan {
    /// Every `of`th piece from the `layer`th: a heap is drawn in layers so
    /// that pieces overlap without a path for each.
    pub(crate) fn layer(&self, layer: usize, of: usize) -> Vec<Spot> {
        self.spots.iter().skip(layer).step_by(of).copied().collect()
    }

    /// The loops of [`Plan::layer`].
    pub(crate) fn loops(&self, layer: usize, of: usize) -> Vec<Vec<DVec2>> {
        self.pieces
            .iter()
            .skip(layer)
            .step_by(of)
            .cloned()
            .collect()
    }
}

/// Places the pieces and wraps the edge round them.
pub(crate) fn plan(kind: Food, form: &Form) -> Plan {
    let form = form.sound();
    let dice = &mut Dice::new(form.seed, EDGE);
    let half = form.half;
    let ranks = |dice: &mut Dice, x, y| spot::ranks(dice, half, DVec2::new(x, y));
    let heap =
        |dice: &mut Dice, x, y, cover, most| spot::heap(dice, half, DVec2::new(x, y), cover, most);
    let recipe = kind.recipe();
    let mut spots = match kind {
        Food::Made(_) => recipe.map_or_else(Vec::new, |r| made::spots(r, dice, half)),
        Food::LemonWedges => heap(dice, 34.0, 16.0, 0.62, 18),
        Food::Citrus => heap(dice, 36.0, 36.0, 0.7, 12),
        Food::Aubergine => ranks(dice, 98.0, 42.0),
        Food::Olives => heap(dice, 12.5, 10.5, 0.86, 44),
        Food::TomatoSalad => heap(dice, 31.0, 29.0, 1.25, 16),
        Food::LeafSalad => heap(dice, 40.0, 25.0, 1.6, 28),
        Food::Eggs => ranks(dice, 30.0, 22.0),
        Food::Fish => ranks(dice, FISH[0], FISH[1]),
        Food::Berries => heap(dice, 11.0, 10.0, 0.88, 42),
        Food::Nuts => heap(dice, 13.0, 8.0, 0.8, 46),
        Food::Potatoes => heap(dice, 27.0, 21.0, 0.98, 26),
        Food::Carrots => ranks(dice, 82.0, 13.0),
        _ => vec![Spot::whole(half)],
    };
    let mut pieces: Vec<Vec<DVec2>> = spots
        .iter()
        .enumerate()
        .map(|(i, spot)| match kind {
            Food::LemonWedges => edges::wedge_edge(spot),
            Food::Citrus => edges::half_edge(dice, spot),
            Food::Loaf => edges::loaf_edge(dice, spot, form.face),
            Food::Aubergine => edges::aubergine_edge(spot),
            Food::Olives => edges::olive_edge(dice, spot),
            Food::Herbs => edges::sprig_edge(spot),
            Food::HerbScatter | Food::Crumbs | Food::Salt => {
                round(dice, spot.at, spot.half, spot.turn, 0.1, EDGE_POINTS, 2.0)
            }
            Food::TomatoSalad => edges::slice_edge(dice, spot),
            Food::LeafSalad => edges::leaf_edge(dice, spot),
            Food::Eggs => edges::egg_edge(spot),
            Food::Fish => edges::fish_edge(spot),
            Food::Berries => edges::berry_edge(dice, spot, i),
            Food::Nuts => edges::nut_edge(dice, spot, i),
            Food::Cheese => edges::cheese_edge(spot),
            Food::Potatoes => edges::potato_edge(dice, spot),
            Food::Carrots => edges::carrot_edge(spot),
            Food::Made(_) => recipe.map_or_else(Vec::new, |r| made::piece(r.cut, dice, spot)),
            Food::Mussels | Food::Noodles | Food::Soup | Food::Rice => {
                let jitter = if kind == Food::Rice { 0.03 } else { 0.012 };
                round(
                    dice,
                    spot.at,
                    spot.half,
                    spot.turn,
                    jitter,
                    EDGE_POINTS,
                    2.0,
                )
            }
        })
        .collect();
    spread(&mut spots, &mut pieces, half);
    let edge = match pieces.as_slice() {
        [one] => resampled(one, EDGE_POINTS, true),
        many => wrapped(many, EDGE_POINTS, 0.86),
    };
    Plan {
        frame: Frame::fitted(&edge, &form),
        face: form.face,
        spots,
        pieces,
        edge,
    }
}

/// Moves pieces apart or together until they reach the extents, so that the
/// fitting frame does not have to squash them.
fn spread(spots: &mut [Spot], pieces: &mut [Vec<DVec2>], half: DVec2) {
    if spots.len() < 2 {
        return;
    }
    let (low, high) = bounds(&pieces.concat());
    let far = spots
        .iter()
        .fold(DVec2::ONE, |far, spot| far.max(spot.at.abs()));
    let room = (half - (high - low) / 2.0) / far;
    let more = room.clamp(DVec2::splat(-0.4), DVec2::splat(0.6));
    for (spot, piece) in spots.iter_mut().zip(pieces) {
        let step = spot.at * more;
        spot.at += step;
        for p in piece {
            *p += step;
        }
    }
}

/// The silhouette that a food's drawing fills: a simple closed loop of 48 points in
/// mm about the food's centre, already turned.
pub fn food_outline(kind: Food, form: &Form) -> Vec<DVec2> {
    let plan = plan(kind, form);
    plan.edge.iter().map(|&p| plan.frame.apply(p)).collect()
}

/// What throws a shadow where a food lies on the table itself, in mm about
/// its centre, already turned: its few pieces, or the edge of a heap.
pub fn food_pieces(kind: Food, form: &Form) -> Vec<Vec<DVec2>> {
    let plan = plan(kind, form);
    let parts = match (kind, plan.pieces.len()) {
        (Food::Fish, _) => plan.spots.iter().flat_map(edges::fish_parts).collect(),
        (_, ..=10) => plan.pieces,
        _ => {
            // Drawn in a little, so that no shade shows on the lit side.
            let mid = middle(&plan.edge);
            vec![inset(&plan.edge, mid, DVec2::splat(0.9), DVec2::ZERO)]
        }
    };
    let turned = |part: Vec<DVec2>| part.iter().map(|&p| plan.frame.apply(p)).collect();
    parts.into_iter().map(turned).collect()
}
