//! Clearing a near miss, or making it a real overlap.
use glam::DVec2;

use super::super::crops;
use super::super::finding::Remedy;
use super::super::remedies::{stack_moved, way};
use super::super::study::Study;
use super::pairs::{Flag, Meets};
use super::tally;
use super::thing::Thing;
use crate::edit::Edit;
use crate::layout::{Id, Layout};
use crate::words::{Arg, length, say};

/// A little more than is asked for, so that whole millimetres stay clear, mm.
const MARGIN: f64 = 2.0;
/// What is no higher than this can lie under another thing's edge, mm. Our
/// choice.
const FLAT: i32 = 30;

/// The first of clearing and overlapping that ends all these flags and starts
/// no other.
pub(super) fn found(
    study: &Study<'_>,
    things: &[Thing],
    all: &[Flag],
    own: &[&Flag],
) -> Option<Remedy> {
    let tall = |id: Id| things.iter().any(|t| t.id == id && t.height > FLAT);
    let may_lap = own
        .iter()
        .all(|f| f.meets == Meets::Edge && f.chief != Id(0) || !(tall(f.chief) && tall(f.other)));
    let was = tally(things, all);
    [false, true].into_iter().find_map(|lap| {
        if lap && !may_lap {
            return None;
        }
        let (after, moved) = moved(study, things, own, lap)?;
        let then = study.changed(&after);
        let laid = super::thing::things(&then);
        let is = tally(&laid, &super::pairs::flags(&then, &laid));
        let new = |now: &[(Id, Id)], old: &[(Id, Id)]| now.iter().any(|pair| !old.contains(pair));
        let ended = !own.iter().any(|f| is.flagged.contains(&(f.chief, f.other)));
        let started = new(&is.flagged, &was.flagged);
        let ran_into = !lap && new(&is.overlapping, &was.overlapping);
        if !ended || started || ran_into || crops::spoils(study, &after) {
            return None;
        }
        let units = study.layout().head.units;
        let text = |mm: f64| Arg::Text(length(mm, units));
        let act = match moved.as_slice() {
            [(id, by)] => {
                let args = [
                    ("thing", Arg::Name(study.name(*id))),
                    ("by", text(by.length())),
                ];
                say(way(study, *by), &args)
            }
            _ => say(
                "act-move-several",
                &[("count", Arg::Text(moved.len().to_string()))],
            ),
        };
        let first = own.first()?;
        let then = first.figure + first.missing + MARGIN;
        let predicted = match (lap, first.overlaps) {
            (false, false) => say(
                "predicted",
                &[("before", text(first.figure)), ("after", text(then))],
            ),
            (false, true) => say("clear", &[]),
            (true, _) => say("overlaps", &[]),
        };
        Some(Remedy {
            act,
            predicted,
            after: 0.0,
            edit: Edit::between(study.layout(), &after),
        })
    })
}

/// The layout with the other side of every flag moved, or the chief side where
/// the other is none to move.
fn moved(
    study: &Study<'_>,
    things: &[Thing],
    own: &[&Flag],
    lap: bool,
) -> Option<(Layout, Vec<(Id, DVec2)>)> {
    let mut after = study.layout().clone();
    let mut moves: Vec<(Id, DVec2)> = Vec::new();
    let loose = |id: Id| study.item(id).is_some_and(|i| !i.locked);
    for flag in own {
        let by = if lap { flag.lap } else { flag.clear };
        let by = by + by.normalize_or_zero() * MARGIN;
        let main = things.iter().any(|t| t.id == flag.chief && t.arm);
        let (id, by) = if loose(flag.other) {
            (flag.other, by)
        } else if loose(flag.chief) && !main {
            (flag.chief, -by)
        } else {
            return None;
        };
        if moves.iter().any(|m| m.0 == id) {
            return None;
        }
        after = stack_moved(&after, id, by);
        moves.push((id, by));
    }
    Some((after, moves))
}
