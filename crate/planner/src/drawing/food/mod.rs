//! Food seen from above: two or three flat tones, one ink, one small light.

use svg::node::element::Group;

use super::pen::Pen;
use super::sketch::Sketch;
use super::tone::{Tone, rgb, shifted};
use crate::catalogue;
use crate::figure::dice::{Dice, INSIDE};
use crate::figure::form::{Face, Form};
use crate::figure::{Food, Plan, plan, spot};

mod aubergine;
mod bowls;
mod bread;
mod cheese;
mod citrus;
mod eggs;
mod fish;
mod herbs;
mod made;
mod mussels;
mod olives;
mod roots;
mod salads;
mod small;
#[cfg(test)]
mod tests;

/// The flat tones of a food, with the user's own in place of the usual ones.
struct Tones<'a> {
    given: &'a [Tone],
    usual: Vec<Tone>,
    /// Which of the usual tones a single given colour stands for.
    chief: usize,
}

impl Tones<'static> {
    /// The usual tones, for a garnish on another dish.
    fn plain(kind: Food) -> Self {
        let (usual, chief) = usual_tones(kind, Face::Usual);
        let usual = usual.to_vec();
        Tones {
            given: &[],
            usual,
            chief,
        }
    }
}

impl Tones<'_> {
    /// All tones as they are.
    fn all(&self) -> Vec<Tone> {
        let usual = self.usual.iter().enumerate();
        usual
            .map(|(i, &tone)| match self.given {
                [one] if i == self.chief => *one,
                [_] => tone,
                many => many.get(i).copied().unwrap_or(tone),
            })
            .collect()
    }

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
        Food::Made(_) => (&[], 0),
    }
}

/// The tones a food is sold with, and the one with the largest share.
fn sold_tones(id: &str) -> (Vec<Tone>, usize) {
    let sold = catalogue::prop(id).map_or(&[][..], |entry| entry.food);
    let chief = (0..sold.len()).max_by_key(|&i| sold[i].share);
    let tones = sold.iter().map(|tone| tone.srgb.0).collect();
    (tones, chief.unwrap_or_default())
}

/// A food in mm about its own centre, already turned, to be placed with a
/// translation only.
///
/// `tones`, deepest first, recolour it: one colour stands for the food's chief
/// tone, several for its tones in order, and what is not given keeps its usual
/// tone.
pub fn food(kind: Food, form: &Form, tones: &[Tone], pen: &Pen) -> Group {
    let plan = plan(kind, form);
    let (usual, chief) = match kind.recipe() {
        Some(recipe) => sold_tones(recipe.id),
        None => {
            let (usual, chief) = usual_tones(kind, plan.face);
            (usual.to_vec(), chief)
        }
    };
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
        Food::Made(_) => {
            if let Some(recipe) = kind.recipe() {
                made::draw(&mut s, &plan, recipe, &tones.all());
            }
        }
    }
    s.done()
}
