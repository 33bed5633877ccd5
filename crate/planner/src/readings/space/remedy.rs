//! Freeing the copy space: what stands in it moves out the shortest way, or
//! the copy space moves to the largest empty place of its crop that holds it.
use glam::DVec2;

use super::super::crops;
use super::super::finding::Remedy;
use super::super::remedies::{stack_moved, stands_clear, way};
use super::super::rules::SPACE_COPY;
use super::super::study::{Study, Words};
use super::copy::{Under, area_of, named, read, under};
use crate::edit::Edit;
use crate::layout::{Crop, Id, Layout};
use crate::scene::silhouette;
use crate::shape::{Bounds, Region, clearing_move, largest_rectangle};
use crate::words::{Arg, length, percent, say};

/// A little more than is asked for, so that whole millimetres stay clear, mm.
const MARGIN: f64 = 2.0;
/// More things than this are not moved at once. Our choice.
const MOST: usize = 3;

/// The first of moving the things out and moving the type that frees it.
pub(super) fn found(study: &Study<'_>, crop: &Crop, under: &Under) -> Option<Remedy> {
    moved_out(study, crop, under).or_else(|| elsewhere(study, crop, under))
}

/// The remedy that leads to `after`, when the copy space is free then and
/// nothing else is spoiled.
fn freed(
    study: &Study<'_>,
    crop: &Crop,
    was: &Under,
    after: &Layout,
    act: impl FnOnce() -> String,
) -> Option<Remedy> {
    let then = study.changed(after);
    let now = after.crops.iter().find(|c| c.id == crop.id)?;
    let left = under(&then, &area_of(&then, now)?).taken();
    let pressed = |study: &Study<'_>| {
        let said = read(study, false).into_iter();
        said.filter(|f| f.is_pressing()).count()
    };
    then.say_only(Words::None);
    if left >= SPACE_COPY.edges[0] || pressed(&then) >= pressed(study) {
        return None;
    }
    if crops::spoils(study, after) {
        return None;
    }
    let args = [
        ("before", Arg::Text(percent(was.taken()))),
        ("after", Arg::Text(percent(left))),
    ];
    Some(Remedy {
        act: act(),
        predicted: say("predicted", &args),
        after: left * 100.0,
        edit: Edit::between(study.layout(), after),
    })
}

/// Every thing in the copy space moved out the shortest way that is free.
fn moved_out(study: &Study<'_>, crop: &Crop, was: &Under) -> Option<Remedy> {
    if was.things.len() > MOST {
        return None;
    }
    let mut after = study.layout().clone();
    let mut moves: Vec<(Id, DVec2)> = Vec::new();
    for (id, ..) in &was.things {
        let by = way_out(&study.changed(&after), crop, *id)?;
        after = stack_moved(&after, *id, by);
        moves.push((*id, by));
    }
    freed(study, crop, was, &after, || match moves.as_slice() {
        [(id, by)] => {
            let units = study.layout().head.units;
            let args = [
                ("thing", Arg::Name(study.name(*id))),
                ("by", Arg::Text(length(by.length(), units))),
            ];
            say(way(study, *by), &args)
        }
        _ => {
            let args = [named(crop), ("count", Arg::Text(moves.len().to_string()))];
            say("act-clear-copy", &args)
        }
    })
}

/// The shortest way out of the copy space for a loose thing, among the
/// shortest of all and those along the picture's edges, that ends clear of
/// everything else and within the picture.
fn way_out(study: &Study<'_>, crop: &Crop, id: Id) -> Option<DVec2> {
    let item = study.item(id).filter(|i| !i.locked)?;
    let outline = silhouette(item);
    let copy = area_of(study, crop)?;
    let picture = study.picture();
    let flat = |line: &[DVec2]| {
        let own: Vec<DVec2> = line.iter().map(|p| picture.of_table(*p)).collect();
        Bounds::around(&own)
    };
    let (own, space) = (flat(&outline)?, flat(&copy)?);
    let shortest = clearing_move(&outline, &copy).ok()?;
    let mut ways = vec![shortest + shortest.normalize_or_zero() * MARGIN];
    for along in [
        DVec2::new(space.min.x - own.max.x - MARGIN, 0.0),
        DVec2::new(space.max.x - own.min.x + MARGIN, 0.0),
        DVec2::new(0.0, space.min.y - own.max.y - MARGIN),
        DVec2::new(0.0, space.max.y - own.min.y + MARGIN),
    ] {
        ways.push(picture.on_table(along) - picture.on_table(DVec2::ZERO));
    }
    crate::order::sort(&mut ways, |a, b| {
        a.length_squared().total_cmp(&b.length_squared())
    });
    let fits = |by: DVec2| {
        let by = picture.of_table(picture.at + by) - picture.size * 0.5;
        let inside =
            |min: DVec2, max: DVec2| min.cmpge(DVec2::ZERO).all() && max.cmple(picture.size).all();
        inside(own.min + by, own.max + by) || !inside(own.min, own.max)
    };
    ways.into_iter()
        .find(|by| fits(*by) && stands_clear(study, id, *by))
}

/// The copy space moved to the largest empty place of the crop, within its
/// safe margin and off its gutter, as near to where it is as that allows.
fn elsewhere(study: &Study<'_>, crop: &Crop, was: &Under) -> Option<Remedy> {
    let area = crop.copy.as_ref()?.area;
    let picture = study.picture_of(Some(crop));
    let scale = crop.print_scale().unwrap_or(0.0);
    let within = super::whole(&picture).grown(-f64::from(crop.safe) * scale);
    let things = super::things(study, &picture).into_iter();
    let mut things: Vec<Region> = things.map(|t| t.1).collect();
    if crop.gutter > 0 {
        let half = f64::from(crop.gutter) * scale * 0.5;
        let fold = picture.size * 0.5;
        let strip = Bounds {
            min: DVec2::new(fold.x - half, 0.0),
            max: DVec2::new(fold.x + half, picture.size.y),
        };
        things.extend(Region::from_polygon(&strip.corners()));
    }
    let size = DVec2::new(f64::from(area.width), f64::from(area.depth));
    let place = largest_rectangle(within, &things, size)?;
    let room = (place.size() - size) * 0.5;
    let now = picture.size * 0.5 + DVec2::new(f64::from(area.dx), f64::from(area.dy));
    let to = now.clamp(place.centre() - room, place.centre() + room) - picture.size * 0.5;
    let mut after = study.layout().clone();
    let own = after.crops.iter_mut().find(|c| c.id == crop.id)?;
    let copy = own.copy.as_mut()?;
    (copy.area.dx, copy.area.dy) = (to.x.round() as i32, to.y.round() as i32);
    freed(study, crop, was, &after, || {
        say("act-copy-elsewhere", &[named(crop)])
    })
}
