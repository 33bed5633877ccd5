//! One thing of the table as nodes about its own centre.
use glam::DVec2;
use svg::node::element::Group;

use super::edge::{filled, inked};
use crate::catalogue;
use crate::drawing::{Food, INK, Pen, Tone, Ware, food, prop};
use crate::figure::{food_of, form_of, prop_of};
use crate::layout::{Item, Part, Parts, Size};
use crate::shape::{CHORD_ERROR, outline};

fn tones(part: Option<&Part>) -> Vec<Tone> {
    part.map_or_else(Vec::new, |part| {
        part.colours.iter().map(|tone| tone.srgb.0).collect()
    })
}

/// The thing at true size about the origin, turned.
pub(super) fn thing(item: &Item, pen: &Pen) -> Group {
    let parts = catalogue::shown_parts(item);
    // What is traced has the outline it was given and no other.
    let traced = matches!(item.size, Size::Outline { .. });
    match food_of(&item.prop).filter(|_| !traced) {
        Some(kind) => morsel(kind, item, &parts, pen),
        None => vessel(item, &parts, pen),
    }
}

fn morsel(kind: Food, item: &Item, parts: &Parts, pen: &Pen) -> Group {
    let given = tones(parts.food.as_ref());
    food(kind, &form_of(item), &given, pen)
}

fn vessel(item: &Item, parts: &Parts, pen: &Pen) -> Group {
    let traced = matches!(item.size, Size::Outline { .. });
    let known = prop_of(&item.prop, catalogue::kind_of(&item.prop));
    let rim = tones(parts.rim.as_ref()).first().copied().unwrap_or(INK);
    let well = tones(parts.well.as_ref()).first().copied();
    let mut group = Group::new();
    match known.filter(|_| !traced) {
        Some(kind) => {
            let ware = Ware {
                rim,
                well,
                rim_width: f64::from(item.size.rim()),
                square: matches!(item.size, Size::Rect { .. }),
            };
            group = group.add(prop(kind, &form_of(item), &ware, pen));
        }
        None => {
            let edge = outline(&item.size, DVec2::ZERO, item.turn.degrees(), CHORD_ERROR);
            group = group.add(filled(&edge, rim)).add(inked(&edge, pen));
        }
    }
    if let Some(part) = parts.food.as_ref() {
        // Food of one's own without a shape in the catalogue: its chief tone
        // over the very outline the readings walk.
        let edge = outline(&item.size, DVec2::ZERO, item.turn.degrees(), CHORD_ERROR);
        let tone = tones(Some(part)).first().copied().unwrap_or(rim);
        group = group.add(filled(&edge, tone)).add(inked(&edge, pen));
    }
    group
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_food_of_the_catalogue_has_a_drawing_of_its_own() {
        for entry in catalogue::foods() {
            assert!(food_of(entry.id).is_some(), "{} is drawn", entry.id);
        }
    }
}
