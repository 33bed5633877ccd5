//! Vessels, glass, candle, boards and cutlery seen from above.

use glam::{DVec2, dvec2};
use svg::node::element::Group;

use super::pen::Pen;
use super::sketch::Sketch;
use super::tone::{GLINT, Tone, deeper, lighter, luma};
use crate::figure::blob::{round, sheet};
use crate::figure::dice::{Dice, EDGE};
use crate::figure::form::{Form, Frame};

mod glass;
mod steel;
mod tall;

/// What a thing is, as far as its drawing goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Prop {
    /// A plate, bowl, platter or pan with a rim and a well.
    Dish,
    /// A dish with two handles at its sides.
    Pot,
    /// A cup with one handle.
    Cup,
    /// A glass with something in it.
    Glass,
    /// A bottle or carafe with its mouth in the middle.
    Carafe,
    /// A taper candle in its holder.
    Candle,
    /// A wooden board.
    Board,
    /// A fork.
    Fork,
    /// A knife.
    Knife,
    /// A spoon.
    Spoon,
    /// Two chopsticks.
    Chopsticks,
}

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
    let form = form.sound();
    let mut s = Sketch::new(pen, Dice::new(form.seed, EDGE), Frame::turned(form.turn));
    let half = form.half;
    match kind {
        Prop::Dish => dish(&mut s, half, ware, 1.4),
        Prop::Pot => pot(&mut s, half, ware),
        Prop::Cup => cup(&mut s, half, ware),
        Prop::Glass => glass::glass(&mut s, half, ware),
        Prop::Carafe => glass::carafe(&mut s, half, ware),
        Prop::Candle => tall::candle(&mut s, half, ware),
        Prop::Board => board(&mut s, half, ware),
        Prop::Fork => steel::fork(&mut s, half, ware),
        Prop::Knife => steel::knife(&mut s, half, ware),
        Prop::Spoon => steel::spoon(&mut s, half, ware),
        Prop::Chopsticks => steel::chopsticks(&mut s, half, ware),
    }
    s.done()
}

/// A thrown rim: round, or a rounded rectangle, 0.6% uneven.
fn rim(s: &mut Sketch<'_>, half: DVec2, square: bool) -> Vec<DVec2> {
    if square {
        sheet(
            &mut s.dice,
            half,
            8,
            half.min_element() * 0.012,
            half.min_element() * 0.12,
        )
    } else {
        round(&mut s.dice, DVec2::ZERO, half, 0.0, 0.006, 40, 2.0)
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
    if !ware.square {
        let mid = half - width * 0.45;
        let tone = if luma(ware.rim) > 0.7 {
            [255, 255, 255]
        } else {
            lighter(lighter(ware.rim))
        };
        s.rim_light(DVec2::ZERO, mid, tone, 1.4);
    }
}

fn pot(s: &mut Sketch<'_>, half: DVec2, ware: &Ware) {
    let grip = dvec2(half.x * 0.17, half.y * 0.2);
    let ears: Vec<Vec<DVec2>> = [-1.0, 1.0]
        .into_iter()
        .map(|side| {
            let at = dvec2(side * half.x * 1.04, 0.0);
            round(&mut s.dice, at, grip, 0.0, 0.02, 16, 2.6)
        })
        .collect();
    s.fills(&ears, deeper(ware.rim), 0.9, 0.0);
    dish(s, half, ware, 1.8);
}

fn cup(s: &mut Sketch<'_>, half: DVec2, ware: &Ware) {
    let at = dvec2(half.x * 1.08, 0.0);
    let ear = round(&mut s.dice, at, half * dvec2(0.34, 0.2), 0.0, 0.02, 14, 2.4);
    s.fills(&[ear], ware.rim, 0.9, 0.0);
    dish(s, half, ware, 1.2);
}

fn board(s: &mut Sketch<'_>, half: DVec2, ware: &Ware) {
    let edge = round(&mut s.dice, DVec2::ZERO, half, 0.0, 0.006, 40, 5.0);
    s.fill(&edge, ware.rim);
    let count = s.some(9);
    let rows: Vec<Vec<DVec2>> = (0..count)
        .map(|i| {
            let y = half.y * (1.8 * (i as f64 + 0.5) / count as f64 - 0.9);
            crate::figure::blob::ruled(
                &mut s.dice,
                dvec2(-half.x * 0.92, y),
                dvec2(half.x * 0.92, y),
                8,
                half.y * 0.03,
            )
        })
        .collect();
    let (dark, pale): (Vec<_>, Vec<_>) =
        rows.into_iter().enumerate().partition(|(i, _)| i % 2 == 0);
    let plain = |rows: Vec<(usize, Vec<DVec2>)>| rows.into_iter().map(|r| r.1).collect::<Vec<_>>();
    s.lines(&plain(dark), deeper(ware.rim), 0.8, 0.7);
    s.lines(&plain(pale), lighter(ware.rim), 0.8, 0.8);
    let hole = round(
        &mut s.dice,
        dvec2(half.x * 0.86, 0.0),
        DVec2::splat(half.y * 0.08),
        0.0,
        0.02,
        12,
        2.0,
    );
    s.fills(&[hole], deeper(deeper(ware.rim)), 0.6, 0.0);
    s.ink(&edge, 1.4);
    let glint = crate::figure::blob::ruled(
        &mut s.dice,
        dvec2(-half.x * 0.9, -half.y * 0.93),
        dvec2(half.x * 0.5, -half.y * 0.94),
        8,
        1.0,
    );
    s.lines(&[glint], GLINT, 0.8, 0.5);
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
        let kinds = [
            Prop::Dish,
            Prop::Pot,
            Prop::Cup,
            Prop::Glass,
            Prop::Carafe,
            Prop::Candle,
            Prop::Board,
            Prop::Fork,
            Prop::Knife,
            Prop::Spoon,
            Prop::Chopsticks,
        ];
        for kind in kinds {
            for half in [dvec2(120.0, 80.0), dvec2(1.0, 1.0), dvec2(f64::NAN, 10.0)] {
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
