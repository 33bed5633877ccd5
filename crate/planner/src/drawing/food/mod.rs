//! Food seen from above: two or three flat tones, one ink, one small light.

use glam::DVec2;
use svg::node::element::Group;

use super::blob::round;
use super::dice::{Dice, EDGE, INSIDE};
use super::form::{Face, Form, Frame};
use super::outline::{resampled, wrapped};
use super::pen::Pen;
use super::sketch::Sketch;
use super::tone::{Tone, rgb, shifted};
use spot::Spot;

mod aubergine;
mod bread;
mod citrus;
mod herbs;
mod mussels;
mod olives;
mod spot;

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
fn usual_tones(kind: Food) -> (&'static [Tone], usize) {
    const MUSSELS: [Tone; 3] = [rgb(0x202b44), rgb(0xf29a3c), rgb(0xb7bfd0)];
    const LEMON: [Tone; 3] = [rgb(0xe9b21f), rgb(0xf6cf45), rgb(0xfbf2d2)];
    const LOAF: [Tone; 3] = [rgb(0x5a3218), rgb(0x7b4722), rgb(0xd9b685)];
    const OLIVES: [Tone; 2] = [rgb(0x2f2430), rgb(0x4b3a4c)];
    const AUBERGINE: [Tone; 3] = [rgb(0x3d2145), rgb(0xb67a36), rgb(0xdcb069)];
    const HERBS: [Tone; 2] = [rgb(0x3f6b2c), rgb(0x7ea24a)];
    const CRUMBS: [Tone; 1] = [rgb(0xe2c693)];
    const SALT: [Tone; 1] = [rgb(0xfffaf0)];
    match kind {
        Food::Mussels => (&MUSSELS, 0),
        Food::LemonWedges | Food::Citrus => (&LEMON, 0),
        Food::Loaf => (&LOAF, 1),
        Food::Olives => (&OLIVES, 0),
        Food::Aubergine => (&AUBERGINE, 2),
        Food::Herbs | Food::HerbScatter => (&HERBS, 0),
        Food::Crumbs => (&CRUMBS, 0),
        Food::Salt => (&SALT, 0),
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
    let spots = match kind {
        Food::LemonWedges => ranks(dice, 33.0, 16.0),
        Food::Citrus => ranks(dice, 36.0, 36.0),
        Food::Aubergine => ranks(dice, 98.0, 42.0),
        Food::Olives => heap(dice, 12.5, 10.5, 0.86, 44),
        _ => vec![Spot::whole(half)],
    };
    let pieces: Vec<Vec<DVec2>> = spots
        .iter()
        .map(|spot| match kind {
            Food::LemonWedges => citrus::wedge_edge(spot),
            Food::Citrus => citrus::half_edge(dice, spot),
            Food::Loaf => bread::edge(dice, spot, form.face),
            Food::Aubergine => aubergine::edge(spot),
            Food::Olives => olives::edge(dice, spot),
            Food::Herbs => herbs::edge(spot),
            Food::HerbScatter | Food::Crumbs | Food::Salt => {
                round(dice, spot.at, spot.half, spot.turn, 0.1, EDGE_POINTS, 2.0)
            }
            Food::Mussels => round(dice, spot.at, spot.half, spot.turn, 0.012, EDGE_POINTS, 2.0),
        })
        .collect();
    let edge = match pieces.as_slice() {
        [one] => resampled(one, EDGE_POINTS, true),
        many => wrapped(many, EDGE_POINTS),
    };
    Plan {
        frame: Frame::fitted(&edge, &form),
        face: form.face,
        spots,
        pieces,
        edge,
    }
}

/// The silhouette that [`food`] fills: a simple closed loop of 48 points in
/// mm about the food's centre, already turned.
pub fn food_outline(kind: Food, form: &Form) -> Vec<DVec2> {
    let plan = plan(kind, form);
    plan.edge.iter().map(|&p| plan.frame.apply(p)).collect()
}

/// A food in mm about its own centre, already turned, to be placed with a
/// translation only.
///
/// `tones`, deepest first, recolour it: one colour stands for the food's chief
/// tone, several for its tones in order, and what is not given keeps its usual
/// tone.
pub fn food(kind: Food, form: &Form, tones: &[Tone], pen: &Pen) -> Group {
    let plan = plan(kind, form);
    let (usual, chief) = usual_tones(kind);
    let tones = Tones {
        given: tones,
        usual,
        chief,
    };
    let mut s = Sketch::new(pen, Dice::new(form.seed, INSIDE), plan.frame);
    match kind {
        Food::Mussels => mussels::draw(&mut s, &plan, &tones),
        Food::LemonWedges => citrus::wedges(&mut s, &plan.spots, &tones),
        Food::Citrus => citrus::halves(&mut s, &plan, &tones),
        Food::Loaf => bread::draw(&mut s, &plan, &tones),
        Food::Olives => olives::draw(&mut s, &plan, &tones),
        Food::Aubergine => aubergine::draw(&mut s, &plan, &tones),
        Food::Herbs => herbs::sprig(&mut s, &plan.spots[0], &tones),
        Food::HerbScatter => herbs::scatter(&mut s, &plan.spots[0], &tones),
        Food::Crumbs => bread::crumbs(&mut s, &plan.spots[0], &tones),
        Food::Salt => herbs::salt(&mut s, &plan.spots[0], &tones),
    }
    s.done()
}
