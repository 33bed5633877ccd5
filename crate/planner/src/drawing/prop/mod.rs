//! Vessels, glass, candle, boards and cutlery seen from above.

use glam::{DVec2, dvec2};
use svg::node::element::Group;

use super::coats::{Layer, paint};
use super::pen::Pen;
use super::sketch::{Rows, Sketch};
use super::tone::{GLINT, Tone, deeper, lighter, luma};
use crate::figure::blob::{round, ruled, sheet};
use crate::figure::dice::{Dice, EDGE};
use crate::figure::form::{Form, Frame};
use crate::figure::prop::{Prop, designed, parts};
use crate::figure::spot::Spot;

mod cups;
mod glass;
mod steel;
mod tall;
mod wood;

/// The colours and rim of a prop.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ware {
    /// Outside and rim.
    pub rim: Tone,
    /// Inside; the rim's own tone, deeper, where there is none.
    pub well: Option<Tone>,
    /// Width of the rim, mm.
    pub rim_width: f64,
    /// Whether its outline has corners rather than being round.
    pub square: bool,
}

/// A prop in mm about its own centre, already turned, to be placed with a
/// translation only.
#[must_use]
pub fn prop(kind: Prop, form: &Form, ware: &Ware, pen: &Pen) -> Group {
    let form = designed(kind, form);
    let mut s = Sketch::new(pen, Dice::new(form.seed, EDGE), Frame::turned(form.turn));
    let half = form.half;
    let shape = parts(kind, form.seed, half);
    match kind {
        Prop::Dish => dish(&mut s, half, ware, 1.4),
        Prop::Pot => pot(&mut s, half, ware, &shape[1..]),
        Prop::Pan => pan(&mut s, half, ware, &shape[1]),
        Prop::Mug => cups::mug(&mut s, half, ware, &shape),
        Prop::Cup => cups::cup(&mut s, half, ware),
        Prop::Jug => cups::jug(&mut s, half, ware, &shape),
        Prop::Glass => glass::glass(&mut s, half, ware),
        Prop::Carafe => glass::carafe(&mut s, half, ware),
        Prop::Candle => tall::candle(&mut s, half, ware),
        Prop::Mill => wood::mill(&mut s, half, ware),
        Prop::Board => wood::board(&mut s, half, ware),
        Prop::Slate => wood::slate(&mut s, half, ware, &shape[0]),
        Prop::Fork => steel::fork(&mut s, half, ware, &shape[0]),
        Prop::Knife => steel::knife(&mut s, half, ware, &shape),
        Prop::Spoon => steel::spoon(&mut s, half, ware, &shape),
        Prop::Chopsticks => steel::chopsticks(&mut s, half, ware, &shape),
        Prop::Made(_) => coated(&mut s, kind, half, ware, &shape),
    }
    s.done()
}

/// The flame of a candle by itself, about the middle of its wax.
#[must_use]
pub fn flame(form: &Form, pen: &Pen) -> Group {
    let form = designed(Prop::Candle, form);
    let mut s = Sketch::new(pen, Dice::new(form.seed, EDGE), Frame::turned(form.turn));
    tall::lit(&mut s, form.half);
    s.done()
}

/// A prop made of coats over its outline.
fn coated(s: &mut Sketch<'_>, kind: Prop, half: DVec2, ware: &Ware, shape: &Rows) {
    let own = [ware.rim, ware.well.unwrap_or_else(|| deeper(ware.rim))];
    let Some(recipe) = kind.recipe() else { return };
    let layer = Layer {
        spots: &[Spot::whole(half)],
        pieces: shape,
        own: &own,
        cut: recipe.cut,
    };
    for coat in recipe.coats {
        paint(s, coat, &layer);
    }
}

/// A thrown rim: round, or a rounded rectangle, 0.6% uneven.
fn rim(s: &mut Sketch<'_>, half: DVec2, square: bool) -> Vec<DVec2> {
    if square {
        let short = half.min_element();
        sheet(&mut s.dice, half, 8, short * 0.008, short * 0.12)
    } else {
        round(&mut s.dice, DVec2::ZERO, half, 0.0, 0.006, 40, 2.0)
    }
}

/// The tone of a rim where it looks at the window.
fn lit(tone: Tone) -> Tone {
    if luma(tone) > 0.7 {
        [255, 255, 255]
    } else {
        lighter(lighter(tone))
    }
}

fn dish(s: &mut Sketch<'_>, half: DVec2, ware: &Ware, ink: f64) {
    let edge = rim(s, half, ware.square);
    s.fill(&edge, ware.rim);
    let width = ware.rim_width.clamp(0.0, half.min_element() * 0.8);
    if width > 0.0 {
        let well = ware.well.unwrap_or_else(|| deeper(ware.rim));
        // The wall between rim and floor: shaded on the window's side, where
        // the rim stands before it.
        let inside = rim(s, half - width, ware.square);
        s.fills(&[inside], deeper(well), 0.6, 0.0);
        let floor = rim(s, (half - width) * 0.93, ware.square);
        let away = -s.lit * width * 0.35;
        let floor: Vec<DVec2> = floor.iter().map(|p| *p + away).collect();
        s.fill(&floor, well);
    }
    s.ink(&edge, ink);
    if ware.square {
        // The window runs along the two rims that look at it.
        let at = (half - width * 0.45) * dvec2(s.lit.x.signum(), s.lit.y.signum());
        let row = vec![
            at * dvec2(1.0, -0.2),
            at * dvec2(1.0, 0.9),
            at * dvec2(0.9, 1.0),
            at * dvec2(-0.5, 1.0),
        ];
        s.lines(&[row], lit(ware.rim), 1.2, 0.75);
    } else {
        s.rim_light(DVec2::ZERO, half - width * 0.45, lit(ware.rim), 1.4);
    }
}

fn pot(s: &mut Sketch<'_>, half: DVec2, ware: &Ware, ears: &[Vec<DVec2>]) {
    s.fills(ears, deeper(ware.rim), 0.0, 0.0);
    s.ink_all(ears, 1.2);
    let holes: Rows = ears
        .iter()
        .map(|ear| {
            let side = ear[0].x.signum();
            let at = dvec2(side * half.x * 1.1, 0.0);
            round(
                &mut s.dice,
                at,
                half * dvec2(0.06, 0.13),
                0.0,
                0.02,
                12,
                2.6,
            )
        })
        .collect();
    s.fills(&holes, super::tone::SHADE, 0.0, 0.65);
    dish(s, half, ware, 1.8);
    // Enamel is thick: a second rim, and the glint of the far wall.
    let width = ware.rim_width.max(2.0);
    let lip = s.facing(DVec2::ZERO, half - width * 0.9, 2.7, 3.6);
    s.lines(&[lip], lighter(lighter(ware.rim)), 0.9, 0.7);
}

fn pan(s: &mut Sketch<'_>, half: DVec2, ware: &Ware, grip: &[DVec2]) {
    s.fill(grip, ware.rim);
    s.ink(grip, 1.3);
    let spine = vec![half * dvec2(1.06, -0.03), half * dvec2(1.66, -0.03)];
    s.lines(&[spine], lighter(ware.rim), 1.2, 0.7);
    let hole = round(
        &mut s.dice,
        half * dvec2(1.79, 0.0),
        half * dvec2(0.05, 0.04),
        0.0,
        0.02,
        12,
        2.0,
    );
    s.fills(&[hole], super::tone::SHADE, 0.5, 0.0);
    dish(s, half, ware, 1.6);
    let ring = s.facing(DVec2::ZERO, half * 0.62, 2.6, 3.7);
    s.lines(&[ring], lighter(ware.well.unwrap_or(ware.rim)), 0.8, 0.5);
}

/// The window along the upper edge of something flat.
fn glint(s: &mut Sketch<'_>, half: DVec2) {
    let up = if s.lit.y > 0.0 { 1.0 } else { -1.0 };
    let row = ruled(
        &mut s.dice,
        dvec2(-half.x * 0.9, up * half.y * 0.93),
        dvec2(half.x * 0.5, up * half.y * 0.94),
        8,
        1.0,
    );
    s.lines(&[row], GLINT, 0.8, 0.5);
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_prop_draws_and_never_writes_a_bad_number() {
        let pen = Pen {
            weight: 2.4,
            fall: dvec2(0.866, 0.5),
            fine: true,
        };
        let ware = Ware {
            rim: [44, 50, 58],
            well: None,
            rim_width: 12.0,
            square: false,
        };
        for kind in Prop::all() {
            for half in [
                dvec2(120.0, 80.0),
                dvec2(12.0, 100.0),
                dvec2(1.0, 1.0),
                dvec2(f64::NAN, 10.0),
            ] {
                let form = Form::new(7, half, 0.4);
                let text = prop(kind, &form, &ware, &pen).to_string();
                assert!(text.contains("<path"), "{kind:?} draws something");
                assert!(
                    !text.contains("NaN") && !text.contains("inf"),
                    "{kind:?}: {text}"
                );
                assert_eq!(
                    text,
                    prop(kind, &form, &ware, &pen).to_string(),
                    "{kind:?} is seeded"
                );
            }
        }
    }
}
