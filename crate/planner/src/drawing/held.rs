//! What a hand works with: under the fingers, at true size.

use glam::DVec2;
use svg::node::element::Group;

use super::food::food;
use super::pen::Pen;
use super::prop::{Ware, prop};
use super::sketch::Sketch;
use super::tone::{PENCIL, rgb};
use crate::catalogue;
use crate::figure::dice::{Dice, INSIDE};
use crate::figure::form::{Face, Form, Frame};
use crate::figure::outline::{arc, bearing};
use crate::figure::{Food, Prop, prop_of};
use crate::layout::Action;
use crate::scene::{Arm, BREAD, KNIFE, LEMON, SPOON, SPOON_AHEAD, STREWN, knife_at};
use crate::shape::{Bounds, hull};

/// The thing in a hand; `vessel` is what it holds of the table, about the
/// place where it holds it.
#[must_use]
pub fn held(arm: &Arm, action: Action, seed: u32, vessel: Option<&[DVec2]>, pen: &Pen) -> Group {
    let group = Group::new();
    let along = bearing(arm.fingers);
    let morsel = |kind, half, face, turn| {
        let mut form = Form::new(seed, half, turn);
        form.face = face;
        food(kind, &form, &[], pen)
    };
    let at = |drawn: Group, p: DVec2| drawn.set("transform", super::translation(p));
    match action {
        Action::Tear => {
            let bread = morsel(Food::Loaf, BREAD, Face::Torn, along + 0.9);
            group.add(at(bread, arm.tip))
        }
        Action::Squeeze => {
            let lemon = morsel(Food::Citrus, DVec2::splat(LEMON), Face::Cut, along);
            group.add(at(lemon, arm.tip))
        }
        Action::Spoon => {
            let ware = Ware {
                rim: rgb(0xc9_c7be),
                well: None,
                rim_width: 0.0,
                square: false,
            };
            let form = Form::new(seed, SPOON, along);
            let spoon = prop(Prop::Spoon, &form, &ware, pen);
            group.add(at(spoon, arm.tip + arm.fingers * (SPOON_AHEAD)))
        }
        Action::Sprinkle => {
            let mut s = Sketch::new(pen, Dice::new(seed, INSIDE), Frame::turned(0.0));
            let grains: Vec<DVec2> = (0..s.some(40))
                .map(|_| arm.tip + s.dice.cloud() * (STREWN * 0.5))
                .collect();
            s.dots(&grains, rgb(0xff_faf0), 1.0, 0.95);
            group.add(s.done())
        }
        Action::Cut => {
            let (middle, way) = knife_at(arm);
            let form = Form::new(seed, KNIFE, bearing(way));
            let kind = catalogue::kind_of("cook-knife");
            let steel = Ware {
                rim: rgb(0xc9_c7be),
                well: None,
                rim_width: 0.0,
                square: false,
            };
            let knife = prop_of("cook-knife", kind).map(|knife| prop(knife, &form, &steel, pen));
            let knife = knife.map(|knife| at(knife, middle));
            group.add(knife.unwrap_or_default())
        }
        Action::Pour => {
            let wide = vessel
                .and_then(Bounds::around)
                .map(|b| b.size().max_element());
            group.add(poured(arm, wide.unwrap_or(80.0), pen))
        }
        Action::Hold | Action::Lift | Action::Pass | Action::Place => match vessel {
            Some(edge) => group.add(moved(edge, pen)),
            None => group,
        },
        Action::Reach | Action::Rest => group,
    }
}

/// A dish out of its place: its outline dashed, and a wash of paper within.
fn moved(edge: &[DVec2], pen: &Pen) -> Group {
    let mut s = Sketch::new(pen, Dice::new(0, INSIDE), Frame::turned(0.0));
    let row: Vec<DVec2> = edge.iter().chain(edge.first()).copied().collect();
    s.wash(edge, rgb(0xf6_ecd8), 0.22);
    let rows = [row];
    s.lines(&rows, rgb(0x1a_1613), 2.6, 0.45);
    s.dashes(&rows, PENCIL, 1.0, 0.95, Some([3.2, 2.2]));
    s.done()
}

/// A vessel tipped: its outline dashed, as of a thing moved, and the drops.
fn poured(arm: &Arm, wide: f64, pen: &Pen) -> Group {
    let mut s = Sketch::new(pen, Dice::new(0, INSIDE), Frame::turned(0.0));
    let r = wide * 0.5;
    let ring = |x: f64, r: f64| {
        let at = arm.tip + arm.fingers * x;
        arc(at, DVec2::splat(r), 0.0, core::f64::consts::TAU, 20)
    };
    let shape = |from: Vec<DVec2>, to: Vec<DVec2>| {
        let mut loop_ = hull(&[from, to].concat());
        loop_.extend(loop_.first().copied());
        loop_
    };
    let body = shape(ring(-r * 1.1, r), ring(r * 0.5, r * 0.88));
    let neck = shape(ring(r * 1.1, r * 0.44), ring(r * 2.5, r * 0.34));
    s.wash(&body, rgb(0xe9_d9a0), 0.22);
    let rows = [body, neck];
    s.lines(&rows, rgb(0x1a_1613), 2.6, 0.45);
    s.dashes(&rows, PENCIL, 1.0, 0.95, Some([3.2, 2.2]));
    let mouth = arm.tip + arm.fingers * (r * 2.9);
    let drops: Vec<DVec2> = [(0.0, 0.0), (9.0, 5.0), (15.0, -3.0)]
        .iter()
        .map(|&(x, y)| mouth + arm.fingers * x + arm.thumb * y)
        .collect();
    s.dots(&drops, rgb(0xe8_b93a), 3.0, 0.0);
    s.done()
}
