//! Fit: does the picture stay on the table, and the camera under the ceiling?
//!
//! Frame and crops against the table's outline, and against a cloth laid as
//! the ground of the picture: plane geometry. Lens height: see `lens`.
mod hung;
mod lens;
mod room;
#[cfg(test)]
mod tests;

use glam::DVec2;

pub(super) use hung::take_lens;
pub(super) use lens::{fits, with_lens};

use super::finding::{Finding, Mark, State};
use super::rules::{FIT_BOARD, FIT_MARGIN};
use super::study::Study;
use crate::layout::{Id, LinenKind, LinenState, TableShape};
use crate::scene::{crop_outline, linen_span};
use crate::shape::{
    CHORD_ERROR, Region, contains, difference, frame_outline, intersection, table_outline, to_edge,
};
use crate::words::{Arg, length, listed, say};

/// A cloth is the ground of the picture when it covers this much of it. Our
/// choice.
const GROUND_FROM: f64 = 0.6;

/// The findings about frame, table and ceiling.
pub(super) fn read(study: &Study<'_>, settled: bool) -> Vec<Finding> {
    let mut out = lens::read(study, settled);
    out.extend(board(study, settled));
    out.extend(cloth(study));
    out
}

/// Whether the frame stays on the table, with room to spare.
fn board(study: &Study<'_>, settled: bool) -> Option<Finding> {
    let l = study.layout();
    let table = table_outline(&l.table, CHORD_ERROR);
    let frame = frame_outline(&l.frame);
    let over = past(&frame, &table);
    if over < FIT_BOARD.edges[0] {
        return margin(study, &frame, &table);
    }
    // Crops that keep off the floor make it a matter of the frame alone.
    let shown = crops_past(study, &table);
    let spared = shown.is_empty() && !l.crops.is_empty();
    let rank = if spared { 3 } else { 1 };
    let state = (State::LookAgain, rank);
    let mut f = Finding::by(&FIT_BOARD, "fit:board".into(), state, over, shown.clone());
    let label = study.tell(|| length(over, l.head.units));
    f.marks = overrun(&frame, &table, &label);
    f.sentence = study.sentence(|| {
        let id = match (l.table.shape, spared, shown.is_empty()) {
            (_, true, _) => "fit-board-spared",
            (TableShape::Round, ..) => "fit-round",
            (_, _, true) => "fit-board",
            _ => "fit-board-crops",
        };
        let names: Vec<String> = shown.iter().map(|id| study.name(*id)).collect();
        let args = [
            ("over", Arg::Text(length(over, l.head.units))),
            ("ground", Arg::Name(study.name(Id(0)))),
            ("crops", Arg::Text(listed(&names))),
        ];
        say(id, &args)
    });
    f.working = study.tell(|| vec![say("working-fit-board", &[])]);
    if settled {
        f.remedy = room::found(study, &table);
    }
    Some(f)
}

/// The crops that show what lies past an outline.
fn crops_past(study: &Study<'_>, ground: &[DVec2]) -> Vec<Id> {
    let l = study.layout();
    let shows = |id: &Id| {
        let crop = l.crops.iter().find(|c| c.id == *id);
        crop.is_some_and(|c| past(&crop_outline(l, c), ground) >= FIT_BOARD.edges[0])
    };
    l.crops.iter().map(|c| c.id).filter(shows).collect()
}

/// Less spare table than usual all round, as a note.
fn margin(study: &Study<'_>, frame: &[DVec2], table: &[DVec2]) -> Option<Finding> {
    let l = study.layout();
    // Inside a convex table the least room is at a corner.
    let away = |p: &DVec2| to_edge(table, *p);
    let spare = frame.iter().map(away).fold(f64::INFINITY, f64::min);
    if spare >= f64::from(l.frame.width) * FIT_MARGIN.edges[0] {
        return None;
    }
    let state = (State::LookAgain, 3);
    let mut f = Finding::by(&FIT_MARGIN, "fit:margin".into(), state, spare, Vec::new());
    f.sentence = study.sentence(|| {
        let args = [
            ("over", Arg::Text(length(spare, l.head.units))),
            ("ground", Arg::Name(study.name(Id(0)))),
        ];
        say("fit-margin", &args)
    });
    f.working = study.tell(|| vec![say("working-fit-margin", &[])]);
    Some(f)
}

/// A cloth laid as the picture's ground that ends inside the frame. Runners,
/// mats and napkins end where they please.
fn cloth(study: &Study<'_>) -> Vec<Finding> {
    let l = study.layout();
    let frame = frame_outline(&l.frame);
    let Ok(picture) = Region::from_polygon(&frame) else {
        return Vec::new();
    };
    let grounds = l
        .linens
        .iter()
        .filter(|c| c.kind == LinenKind::Cloth && c.state == LinenState::Flat);
    grounds
        .filter_map(|c| {
            let outline = linen_span(c);
            let lies = Region::from_polygon(&outline).ok()?;
            let covered = intersection(&picture, &lies).ok()?.area();
            let over = past(&frame, &outline);
            if covered < GROUND_FROM * picture.area() || over < FIT_BOARD.edges[0] {
                return None;
            }
            let key = format!("fit:cloth:{}", c.id.0);
            let mut f = Finding::by(&FIT_BOARD, key, (State::LookAgain, 3), over, vec![c.id]);
            let label = study.tell(|| length(over, l.head.units));
            f.marks = overrun(&frame, &outline, &label);
            f.sentence = study.sentence(|| {
                let args = [
                    ("over", Arg::Text(length(over, l.head.units))),
                    ("linen", Arg::Name(c.name.clone())),
                    ("ground", Arg::Name(study.name(Id(0)))),
                ];
                say("fit-cloth", &args)
            });
            f.working = study.tell(|| vec![say("working-fit-board", &[])]);
            Some(f)
        })
        .collect()
}

/// How far a polygon reaches past a convex outline, mm: its farthest place
/// from one is a corner.
fn past(polygon: &[DVec2], ground: &[DVec2]) -> f64 {
    let off = polygon.iter().filter(|p| !contains(ground, **p));
    off.map(|p| to_edge(ground, *p)).fold(0.0, f64::max)
}

/// What of the frame lies off the ground.
fn overrun(frame: &[DVec2], ground: &[DVec2], label: &str) -> Vec<Mark> {
    let areas = Region::from_polygon(frame).and_then(|f| {
        let ground = Region::from_polygon(ground)?;
        difference(&f, &[&ground])
    });
    let mark = |ring: &Vec<DVec2>| Mark::Overrun {
        outline: ring.clone(),
        label: label.into(),
    };
    areas.map_or_else(|_| Vec::new(), |r| r.rings().iter().map(mark).collect())
}
