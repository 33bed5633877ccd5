//! Where a crop leaves the frame, and what the printer asks for: bleed round
//! the trim and a safe margin within it.
use glam::DVec2;

use super::super::finding::{Finding, Mark, Remedy, State};
use super::super::rules::{CROP_BLEED, CROP_OUTSIDE, CROP_SAFE};
use super::super::study::Study;
use super::slide::{safe, slid};
use super::{Placed, cured, item_box, moved, on_table, overruns};
use crate::layout::{Crop, Id};
use crate::scene::crop_outline;
use crate::shape::{Region, difference, frame_outline};
use crate::words::{Arg, length, say};

/// Smallest part of its width a crop is tightened to. Our choice.
const TIGHTEST: f64 = 0.75;

pub(super) fn read(study: &Study<'_>, placed: &Placed<'_>, settled: bool) -> Vec<Finding> {
    let mut out = Vec::new();
    // A crop that leaves the frame has no bleed there either: one cause.
    match outside(study, placed, settled) {
        Some(found) => out.push(found),
        None => out.extend(bleed(study, placed, settled)),
    }
    out.extend(copy(study, placed, settled));
    out.extend(things(study, placed, settled));
    out
}

/// Room between trim and frame at the tightest edge, mm.
fn room(placed: &Placed<'_>) -> f64 {
    (placed.trim.min - placed.frame.min)
        .min(placed.frame.max - placed.trim.max)
        .min_element()
}

fn outside(study: &Study<'_>, placed: &Placed<'_>, settled: bool) -> Option<Finding> {
    let over = -room(placed);
    if over < CROP_OUTSIDE.edges[0] {
        return None;
    }
    let layout = placed.layout;
    let mut f = placed.finding(&CROP_OUTSIDE, "outside", (State::WontWork, 1), over, &[]);
    let text = Arg::Text(length(over, layout.head.units));
    let label = study.tell(|| length(over, layout.head.units));
    let past = Region::from_polygon(&crop_outline(layout, placed.crop)).and_then(|crop| {
        let frame = Region::from_polygon(&frame_outline(&layout.frame))?;
        difference(&crop, &[&frame])
    });
    f.marks = overruns(&past.unwrap_or_default(), &label);
    f.sentence = study.sentence(|| {
        let crop = Arg::Name(placed.crop.name.clone());
        say("crop-outside", &[("crop", crop), ("over", text)])
    });
    f.working = study.tell(|| vec![say("working-crop-outside", &[])]);
    if settled {
        f.remedy = study.remedy(&f.key, &|| {
            into_frame(study, placed, &f).or_else(|| tightened(study, placed, &f, 0.0))
        });
    }
    Some(f)
}

/// The crop slid the shortest way into the frame.
fn into_frame(study: &Study<'_>, placed: &Placed<'_>, finding: &Finding) -> Option<Remedy> {
    let room = (placed.frame.size() - placed.trim.size()) * 0.5;
    if room.min_element() < 0.0 {
        return None;
    }
    let middle = placed.frame.centre();
    let now = placed.trim.centre();
    let to = now.clamp(middle - room, middle + room);
    let layout = placed.layout;
    let after = moved(layout, placed.crop, to);
    cured(study, finding, after, |_| {
        let crop = Arg::Name(placed.crop.name.clone());
        let by = Arg::Text(length(to.distance(now), layout.head.units));
        (
            say("act-slide-into-frame", &[("crop", crop)]),
            say("slide-by", &[("by", by)]),
        )
    })
}

/// Bleed the frame does not give.
fn bleed(study: &Study<'_>, placed: &Placed<'_>, settled: bool) -> Option<Finding> {
    let scale = placed
        .crop
        .print_scale()
        .filter(|_| placed.crop.bleed > 0)?;
    let needed = f64::from(placed.crop.bleed) * scale;
    let room = room(placed);
    let missing = needed - room;
    if missing <= CROP_BLEED.edges[0] {
        return None;
    }
    let mut f = placed.finding(&CROP_BLEED, "bleed", (State::LookAgain, 3), missing, &[]);
    f.sentence = study.sentence(|| {
        let units = placed.layout.head.units;
        let args = [
            ("crop", Arg::Name(placed.crop.name.clone())),
            ("room", Arg::Text(length(room.max(0.0), units))),
            ("needed", Arg::Text(length(needed, units))),
        ];
        say(
            if room < 0.5 {
                "crop-bleed-none"
            } else {
                "crop-no-bleed"
            },
            &args,
        )
    });
    f.working = study.tell(|| vec![say("working-crop-bleed", &[])]);
    if settled {
        let bleed = f64::from(placed.crop.bleed);
        f.remedy = study.remedy(&f.key, &|| tightened(study, placed, &f, bleed));
    }
    Some(f)
}

/// The widest width at which a bleed of so many mm of the print fits all
/// round, about the same centre or else that of the frame.
fn tightened(
    study: &Study<'_>,
    placed: &Placed<'_>,
    finding: &Finding,
    bleed: f64,
) -> Option<Remedy> {
    let (layout, crop) = (placed.layout, placed.crop);
    let least = (f64::from(crop.width) * TIGHTEST) as i32;
    let centred = moved(layout, crop, placed.frame.centre());
    [crop, &centred].into_iter().find_map(|from| {
        let fitting = (least..crop.width).rev().find_map(|width| {
            let tight = Crop {
                width,
                ..from.clone()
            };
            let needed = bleed * tight.print_scale().unwrap_or(0.0);
            (room(&Placed::of(layout, &tight)) + CROP_BLEED.edges[0] >= needed).then_some(tight)
        })?;
        let depth = |c: &Crop| Arg::Text(length(c.extent()[1], layout.head.units));
        cured(study, finding, fitting, |after| {
            let name = Arg::Name(crop.name.clone());
            let sizes = [("before", depth(crop)), ("after", depth(after.crop))];
            (
                say("act-tighten", &[("crop", name)]),
                say("predicted", &sizes),
            )
        })
    })
}

/// How far a box reaches past the safe line, mm.
fn past_safe(placed: &Placed<'_>, b: crate::shape::Bounds) -> f64 {
    let inner = placed.trim.grown(-safe(placed));
    (inner.min - b.min).max(b.max - inner.max).max_element()
}

/// The headline past the safe line.
fn copy(study: &Study<'_>, placed: &Placed<'_>, settled: bool) -> Option<Finding> {
    let area = placed.copy()?;
    let over = past_safe(placed, area);
    if over < CROP_SAFE.edges[0] {
        return None;
    }
    let layout = placed.layout;
    let mut f = placed.finding(&CROP_SAFE, "safe:copy", (State::LookAgain, 2), over, &[]);
    f.marks = vec![Mark::Overrun {
        outline: on_table(layout, area),
        label: study.tell(|| length(over, layout.head.units)),
    }];
    let trimmed = over > safe(placed);
    f.sentence = study.sentence(|| {
        let id = if trimmed {
            "crop-copy-cut"
        } else {
            "crop-copy-safe"
        };
        let past = if trimmed { over - safe(placed) } else { over };
        let args = [
            ("crop", Arg::Name(placed.crop.name.clone())),
            ("over", Arg::Text(length(past, layout.head.units))),
        ];
        say(id, &args)
    });
    f.working = study.tell(|| vec![say("working-crop-safe", &[])]);
    if settled {
        f.remedy = study.remedy(&f.key, &|| copy_moved(study, placed, &f));
    }
    Some(f)
}

/// The headline moved within the safe line.
fn copy_moved(study: &Study<'_>, placed: &Placed<'_>, finding: &Finding) -> Option<Remedy> {
    let area = placed.copy()?;
    let inner = placed.trim.grown(-safe(placed));
    let room = (inner.size() - area.size()) * 0.5;
    if room.min_element() < 0.0 {
        return None;
    }
    let centre = inner.centre();
    let to = area.centre().clamp(centre - room, centre + room) - placed.trim.centre();
    let mut after = placed.crop.clone();
    let copy = after.copy.as_mut()?;
    // Whole millimetres towards the middle, so that rounding stays inside.
    let DVec2 { x, y } = to.trunc();
    (copy.area.dx, copy.area.dy) = (x as i32, y as i32);
    let by = to.distance(area.centre() - placed.trim.centre());
    cured(study, finding, after, |_| {
        let crop = Arg::Name(placed.crop.name.clone());
        let by = Arg::Text(length(by, placed.layout.head.units));
        (
            say("act-move-copy", &[("crop", crop)]),
            say("slide-by", &[("by", by)]),
        )
    })
}

/// Must-show things that are whole but reach into the safe margin.
fn things(study: &Study<'_>, placed: &Placed<'_>, settled: bool) -> Vec<Finding> {
    let layout = placed.layout;
    let margin = safe(placed);
    if margin <= 0.0 {
        return Vec::new();
    }
    let mut out = Vec::new();
    let kept: Vec<Id> = placed.kept();
    for id in kept
        .into_iter()
        .filter(|id| placed.crop.must_show.contains(id))
    {
        let Some(thing) = item_box(study, id) else {
            continue;
        };
        let over = past_safe(placed, thing);
        // What is cut has been said already.
        if over < CROP_SAFE.edges[0] || over >= margin + super::super::rules::CROP_CUT.edges[0] {
            continue;
        }
        let sort = format!("safe:{}", id.0);
        let mut f = placed.finding(&CROP_SAFE, &sort, (State::LookAgain, 3), over, &[id]);
        f.sentence = study.sentence(|| {
            let text = |mm: f64| Arg::Text(length(mm, layout.head.units));
            let args = [
                ("thing", Arg::Name(study.name(id))),
                ("crop", Arg::Name(placed.crop.name.clone())),
                ("room", text((margin - over).max(0.0))),
                ("needed", text(margin)),
            ];
            say("crop-thing-safe", &args)
        });
        f.working = study.tell(|| vec![say("working-crop-safe", &[])]);
        if settled {
            f.remedy = study.remedy(&f.key, &|| slid(study, placed, &f));
        }
        out.push(f);
    }
    out
}
