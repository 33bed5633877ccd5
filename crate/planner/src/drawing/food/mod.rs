//! Food seen from above: two or three flat tones, one ink, one small light.

use glam::DVec2;
use svg::node::element::Group;

use super::blob::round;
use super::dice::{Dice, EDGE, INSIDE};
use super::form::{Face, Form, Frame};
use super::outline::{bounds, inset, middle, resampled, wrapped};
use super::pen::Pen;
use super::sketch::Sketch;
use super::tone::{Tone, rgb, shifted};
use spot::Spot;

mod aubergine;
mod bowls;
mod bread;
mod cheese;
mod citrus;
mod eggs;
mod fish;
mod herbs;
mod mussels;
mod olives;
mod roots;
mod salads;
mod small;
mod spot;
#[cfg(test)]
mod tests;

/// Points of every food's outline.
const EDGE_POINTS: usize = 48;

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
}

impl Food {
    /// Every food that can be drawn.
    pub const ALL: [Food; 22] = [
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
}

/// The pieces of one food and the edge round them, in the designed frame.
struct Plan {
    spots: Vec<Spot>,
    /// Each piece's own loop, in the order of `spots`.
    pieces: Vec<Vec<DVec2>>,
    edge: Vec<DVec2>,
    frame: Frame,
    face: Face,
}

impl Plan {
    /// Every `of`th piece from the `layer`th: a heap is drawn in layers so
    /// that pieces overlap without a path for each.
    fn layer(&self, layer: usize, of: usize) -> Vec<Spot> {
        self.spots.iter().skip(layer).step_by(of).copied().collect()
    }

    /// The loops of [`Plan::layer`].
    fn loops(&self, layer: usize, of: usize) -> Vec<Vec<DVec2>> {
        self.pieces
            .iter()
            .skip(layer)
            .step_by(of)
            .cloned()
            .collect()
    }
}

/// The flat tones of a food, with the user's own in place of the usual ones.
struct Tones<'a> {
    given: &'a [Tone],
    usual: &'static [Tone],
    /// Which of the usual tones a single given colour stands for.
    chief: usize,
}

impl Tones<'static> {
    /// The usual tones, for a garnish on another dish.
    fn plain(kind: Food) -> Self {
        let (usual, chief) = usual_tones(kind, Face::Usual);
        Tones {
            given: &[],
            usual,
            chief,
        }
    }
}

impl Tones<'_> {
    /// `tone`, which belongs to the `i`th usual tone, moved along with it.
    fn of(&self, i: usize, tone: u32) -> Tone {
        let given = match self.given {
            [one] => (i == self.chief).then_some(one),
            many => many.get(i),
        };
        given.map_or(rgb(tone), |&to| shifted(rgb(tone), self.usual[i], to))
    }
}

/// The usual tones, deepest first, and the one that a single colour replaces.
fn usual_tones(kind: Food, face: Face) -> (&'static [Tone], usize) {
    const fn three(a: u32, b: u32, c: u32) -> [Tone; 3] {
        [rgb(a), rgb(b), rgb(c)]
    }
    const MUSSELS: [Tone; 3] = three(0x202b44, 0xe57d28, 0xb7bfd0);
    const LEMON: [Tone; 3] = three(0xe9b21f, 0xf6cf45, 0xfbf2d2);
    const LOAF: [Tone; 3] = three(0x341b0d, 0x5a3218, 0x7b4722);
    const CRUMB: [Tone; 3] = three(0x7b4722, 0xd9b685, 0xecd7ae);
    const OLIVES: [Tone; 2] = [rgb(0x2f2430), rgb(0x4b3a4c)];
    const AUBERGINE: [Tone; 3] = three(0x3d2145, 0xb67a36, 0xdcb069);
    const HERBS: [Tone; 2] = [rgb(0x3f6b2c), rgb(0x7ea24a)];
    const CRUMBS: [Tone; 1] = [rgb(0xe2c693)];
    const SALT: [Tone; 1] = [rgb(0xfffaf0)];
    const TOMATO: [Tone; 3] = three(0x8e2a1e, 0xb03a2a, 0x7ea24a);
    const LEAVES: [Tone; 3] = three(0x3c5a2a, 0x5f8a3a, 0x9dbb62);
    const NOODLES: [Tone; 3] = three(0xb9915c, 0xe0c48a, 0xefdcb0);
    const EGGS: [Tone; 3] = three(0xbc641a, 0xd9902b, 0xf3ede0);
    const RICE: [Tone; 2] = [rgb(0xcfc6b2), rgb(0xece6d8)];
    const FISH: [Tone; 3] = three(0x5f5348, 0x9a8a72, 0xc9b794);
    const BERRIES: [Tone; 3] = three(0x2e2547, 0x7a1f38, 0xb82f3f);
    const CHEESE: [Tone; 2] = [rgb(0xc9a45e), rgb(0xeedcab)];
    const NUTS: [Tone; 3] = three(0x6a4526, 0xa07442, 0xd2b184);
    const SOUP: [Tone; 3] = three(0xa84f1c, 0xd9752a, 0xf0dfc0);
    const POTATOES: [Tone; 3] = three(0x8a5524, 0xc08a3e, 0xe4c47c);
    const CARROTS: [Tone; 3] = three(0x8a4416, 0xd9752a, 0xf0a04e);
    match kind {
        Food::Mussels => (&MUSSELS, 0),
        Food::LemonWedges | Food::Citrus => (&LEMON, 0),
        Food::Loaf if matches!(face, Face::Cut | Face::Torn) => (&CRUMB, 2),
        Food::Loaf => (&LOAF, 1),
        Food::Olives => (&OLIVES, 0),
        Food::Aubergine => (&AUBERGINE, 2),
        Food::Herbs | Food::HerbScatter => (&HERBS, 0),
        Food::Crumbs => (&CRUMBS, 0),
        Food::Salt => (&SALT, 0),
        Food::TomatoSalad => (&TOMATO, 1),
        Food::LeafSalad => (&LEAVES, 1),
        Food::Noodles => (&NOODLES, 1),
        Food::Eggs => (&EGGS, 2),
        Food::Rice => (&RICE, 1),
        Food::Fish => (&FISH, 1),
        Food::Berries => (&BERRIES, 1),
        Food::Cheese => (&CHEESE, 1),
        Food::Nuts => (&NUTS, 1),
        Food::Soup => (&SOUP, 1),
        Food::Potatoes => (&POTATOES, 1),
        Food::Carrots => (&CARROTS, 1),
    }
}

/// Places the pieces and wraps the edge round them.
fn plan(kind: Food, form: &Form) -> Plan {
    let form = form.sound();
    let dice = &mut Dice::new(form.seed, EDGE);
    let half = form.half;
    let ranks = |dice: &mut Dice, x, y| spot::ranks(dice, half, DVec2::new(x, y));
    let heap =
        |dice: &mut Dice, x, y, cover, most| spot::heap(dice, half, DVec2::new(x, y), cover, most);
    let mut spots = match kind {
        Food::LemonWedges => heap(dice, 34.0, 16.0, 0.62, 18),
        Food::Citrus => heap(dice, 36.0, 36.0, 0.7, 12),
        Food::Aubergine => ranks(dice, 98.0, 42.0),
        Food::Olives => heap(dice, 12.5, 10.5, 0.86, 44),
        Food::TomatoSalad => heap(dice, 31.0, 29.0, 1.25, 16),
        Food::LeafSalad => heap(dice, 40.0, 25.0, 1.6, 28),
        Food::Eggs => ranks(dice, 30.0, 22.0),
        Food::Fish => ranks(dice, 155.0, 58.0),
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
            Food::LemonWedges => citrus::wedge_edge(spot),
            Food::Citrus => citrus::half_edge(dice, spot),
            Food::Loaf => bread::edge(dice, spot, form.face),
            Food::Aubergine => aubergine::edge(spot),
            Food::Olives => olives::edge(dice, spot),
            Food::Herbs => herbs::edge(spot),
            Food::HerbScatter | Food::Crumbs | Food::Salt => {
                round(dice, spot.at, spot.half, spot.turn, 0.1, EDGE_POINTS, 2.0)
            }
            Food::TomatoSalad => salads::slice_edge(dice, spot),
            Food::LeafSalad => salads::leaf_edge(dice, spot),
            Food::Eggs => eggs::edge(spot),
            Food::Fish => fish::edge(spot),
            Food::Berries => small::berry_edge(dice, spot, i),
            Food::Nuts => small::nut_edge(dice, spot, i),
            Food::Cheese => cheese::edge(spot),
            Food::Potatoes => roots::potato_edge(dice, spot),
            Food::Carrots => roots::carrot_edge(spot),
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

/// The silhouette that [`food`] fills: a simple closed loop of 48 points in
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
        (Food::Fish, _) => plan.spots.iter().flat_map(fish::parts).collect(),
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

/// A food in mm about its own centre, already turned, to be placed with a
/// translation only.
///
/// `tones`, deepest first, recolour it: one colour stands for the food's chief
/// tone, several for its tones in order, and what is not given keeps its usual
/// tone.
pub fn food(kind: Food, form: &Form, tones: &[Tone], pen: &Pen) -> Group {
    let plan = plan(kind, form);
    let (usual, chief) = usual_tones(kind, plan.face);
    let tones = Tones {
        given: tones,
        usual,
        chief,
    };
    let mut s = Sketch::new(pen, Dice::new(form.seed, INSIDE), plan.frame);
    match kind {
        Food::Mussels => mussels::draw(&mut s, &plan, &tones),
        Food::LemonWedges => {
            for layer in 0..3 {
                citrus::wedges(&mut s, &plan.layer(layer, 3), &tones);
            }
        }
        Food::Citrus => citrus::halves(&mut s, &plan, &tones),
        Food::Loaf => bread::draw(&mut s, &plan, &tones),
        Food::Olives => olives::draw(&mut s, &plan, &tones),
        Food::Aubergine => aubergine::draw(&mut s, &plan, &tones),
        Food::Herbs => herbs::sprig(&mut s, &plan.spots[0], &tones),
        Food::HerbScatter => herbs::scatter(&mut s, &plan.spots[0], &tones),
        Food::Crumbs => bread::crumbs(&mut s, &plan.spots[0], &tones),
        Food::Salt => herbs::salt(&mut s, &plan.spots[0], &tones),
        Food::TomatoSalad => salads::tomato(&mut s, &plan, &tones),
        Food::LeafSalad => salads::leaf(&mut s, &plan, &tones),
        Food::Noodles => bowls::noodles(&mut s, &plan, &tones),
        Food::Eggs => eggs::halves(&mut s, &plan.spots, &plan.pieces, &tones),
        Food::Rice => bowls::rice(&mut s, &plan, &tones),
        Food::Fish => fish::draw(&mut s, &plan, &tones),
        Food::Berries => small::berries(&mut s, &plan, &tones),
        Food::Cheese => cheese::draw(&mut s, &plan, &tones),
        Food::Nuts => small::nuts(&mut s, &plan, &tones),
        Food::Soup => bowls::soup(&mut s, &plan, &tones),
        Food::Potatoes => roots::potatoes(&mut s, &plan, &tones),
        Food::Carrots => roots::carrots(&mut s, &plan, &tones),
    }
    s.done()
}
