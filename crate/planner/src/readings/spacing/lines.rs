//! Slivers and near misses at the lines of crops, and arms cut at a joint.
use glam::DVec2;

use super::super::finding::{Finding, Mark, Remedy, State};
use super::super::rules::{SPACING_CROP, SPACING_JOINT};
use super::super::study::Study;
use super::TOUCH;
use super::thing::Thing;
use crate::edit::Edit;
use crate::layout::{Crop, Id, Layout, Point};
use crate::order::sort;
use crate::scene::{HAND_LENGTH, arm, crop_outline};
use crate::shape::{Bounds, contains};
use crate::words::{Arg, length, listed, say};

/// How far a crop is slid to get its lines clear, mm, and in what steps. Our
/// choice.
const SLIDE: i32 = 60;
const STEP: i32 = 5;

/// How a crop's line meets a thing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Sort {
    /// It takes a sliver off.
    Shaves,
    /// It leaves only a sliver in.
    Leaves,
    /// The thing stops just short of it.
    Short,
    /// The thing stops just short of the gutter.
    Gutter,
}

/// One thing at one line, in the picture's own directions.
struct Brush {
    id: Id,
    sort: Sort,
    /// Width of the sliver or gap, mm.
    width: f64,
    from: DVec2,
    to: DVec2,
}

pub(super) fn read(study: &Study<'_>, things: &[Thing], settled: bool) -> Vec<Finding> {
    let layout = study.layout();
    let boxes: Vec<(&Thing, Bounds)> = things
        .iter()
        .filter(|t| !t.arm)
        .filter_map(|t| {
            let upright: Vec<DVec2> = t.areas[0]
                .outline
                .iter()
                .map(|p| turned(layout, *p, -1.0))
                .collect();
            Some((t, Bounds::around(&upright)?))
        })
        .collect();
    let mut out = Vec::new();
    for crop in &layout.crops {
        let brushes = brushes(layout, crop, &boxes);
        if !brushes.is_empty() {
            let mut f = brushed(study, crop, &brushes);
            if settled {
                f.remedy = study.remedy(&f.key, &|| slid(study, crop, &boxes));
            }
            out.push(f);
        }
    }
    out.extend(joints(study));
    out
}

/// Between the table and the picture's own directions.
fn turned(layout: &Layout, p: DVec2, sign: f64) -> DVec2 {
    let (sin, cos) = libm::sincos(sign * layout.frame.turn.radians());
    DVec2::new(cos, sin).rotate(p)
}

/// Everything that only just reaches over or to a line of this crop.
fn brushes(layout: &Layout, crop: &Crop, boxes: &[(&Thing, Bounds)]) -> Vec<Brush> {
    let size = DVec2::from_array(crop.extent());
    let at = turned(layout, crop.at.vec(), -1.0);
    let trim = Bounds {
        min: at - size * 0.5,
        max: at + size * 0.5,
    };
    let near = SPACING_CROP.edges[1] * size.length();
    let mut out = Vec::new();
    for (thing, b) in boxes {
        let kept = thing.is_hero() || crop.must_show.contains(&thing.id);
        for axis in 0..2 {
            let other = 1 - axis;
            let middle = b.centre()[other];
            // At a corner of the crop the other line decides.
            if middle < trim.min[other] || middle > trim.max[other] {
                continue;
            }
            let whole = b.size()[axis];
            for (low, line) in [(true, trim.min[axis]), (false, trim.max[axis])] {
                // How far the thing lies past this line, and within it.
                let (past, within) = if low {
                    (line - b.min[axis], b.max[axis] - line)
                } else {
                    (b.max[axis] - line, line - b.min[axis])
                };
                let sliver = SPACING_CROP.edges[0] * whole;
                let (sort, width, end) = if past <= -near || within < TOUCH {
                    continue;
                } else if past < TOUCH {
                    (
                        Sort::Short,
                        (-past).max(0.0),
                        line + if low { -past } else { past },
                    )
                } else if past < sliver && !kept {
                    (Sort::Shaves, past, line + if low { -past } else { past })
                } else if within < sliver && !kept {
                    (
                        Sort::Leaves,
                        within,
                        line + if low { within } else { -within },
                    )
                } else {
                    continue;
                };
                let place = |x: f64| {
                    let mut p = DVec2::splat(middle);
                    p[axis] = x;
                    p
                };
                out.push(Brush {
                    id: thing.id,
                    sort,
                    width,
                    from: place(line),
                    to: place(end),
                });
            }
        }
    }
    out.extend(at_gutter(crop, trim, near, boxes));
    sort(&mut out, |a, b| {
        (a.id, a.sort as u8).cmp(&(b.id, b.sort as u8))
    });
    out.dedup_by_key(|b| b.id);
    out
}

/// Main dishes that stop just short of the gutter.
fn at_gutter(crop: &Crop, trim: Bounds, near: f64, boxes: &[(&Thing, Bounds)]) -> Vec<Brush> {
    let Some(scale) = crop.print_scale().filter(|_| crop.gutter > 0) else {
        return Vec::new();
    };
    let (half, fold) = (f64::from(crop.gutter) * scale * 0.5, trim.centre().x);
    let main = boxes.iter().filter(|(t, b)| t.is_main() && b.meets(trim));
    main.filter_map(|(thing, b)| {
        let (gap, line, end) = if b.centre().x < fold {
            (fold - half - b.max.x, fold - half, b.max.x)
        } else {
            (b.min.x - fold - half, fold + half, b.min.x)
        };
        let y = b.centre().y;
        ((0.0..near).contains(&gap)).then(|| Brush {
            id: thing.id,
            sort: Sort::Gutter,
            width: gap,
            from: DVec2::new(line, y),
            to: DVec2::new(end, y),
        })
    })
    .collect()
}

fn brushed(study: &Study<'_>, crop: &Crop, brushes: &[Brush]) -> Finding {
    let layout = study.layout();
    let units = layout.head.units;
    let mut about: Vec<Id> = brushes.iter().map(|b| b.id).collect();
    about.push(crop.id);
    let key = format!("spacing:crop:{}", crop.id.0);
    let count = brushes.len() as f64;
    let mut f = Finding::by(&SPACING_CROP, key, (State::LookAgain, 3), count, about);
    for b in brushes {
        f.marks.push(Mark::Gap {
            from: turned(layout, b.from, 1.0),
            to: turned(layout, b.to, 1.0),
            label: study.tell(|| length(b.width, units)),
        });
    }
    f.sentence = study.sentence(|| {
        let ids: Vec<Id> = brushes.iter().map(|b| b.id).collect();
        let args = [
            ("crop", Arg::Name(crop.name.clone())),
            ("thing", Arg::Name(study.name(ids[0]))),
            ("things", Arg::Text(listed(&study.names(&ids)))),
            ("count", Arg::Text(ids.len().to_string())),
            ("gap", Arg::Text(length(brushes[0].width, units))),
        ];
        let id = match (brushes.len(), brushes[0].sort) {
            (1, Sort::Shaves) => "spacing-shaves",
            (1, Sort::Leaves) => "spacing-leaves",
            (1, Sort::Short) if brushes[0].width < TOUCH => "spacing-on-line",
            (1, Sort::Short) => "spacing-short",
            (1, Sort::Gutter) => "spacing-gutter",
            _ => "spacing-lines",
        };
        say(id, &args)
    });
    f.working = study.tell(|| {
        let mut lines = vec![say("working-spacing-crop", &[])];
        lines.extend(brushes.iter().map(|b| {
            let args = [
                ("thing", Arg::Name(study.name(b.id))),
                ("figure", Arg::Text(length(b.width, units))),
            ];
            let id = match b.sort {
                Sort::Shaves => "working-shaves",
                Sort::Leaves => "working-leaves",
                Sort::Short => "working-short",
                Sort::Gutter => "working-gutter",
            };
            say(id, &args)
        }));
        lines
    });
    f
}

/// The crop slid the shortest way that gets all its lines clear.
fn slid(study: &Study<'_>, crop: &Crop, boxes: &[(&Thing, Bounds)]) -> Option<Remedy> {
    let layout = study.layout();
    let mut ways: Vec<DVec2> = Vec::new();
    for x in (-SLIDE..=SLIDE).step_by(STEP as usize) {
        for y in (-SLIDE..=SLIDE).step_by(STEP as usize) {
            ways.push(DVec2::new(f64::from(x), f64::from(y)));
        }
    }
    sort(&mut ways, |a, b| {
        a.length_squared()
            .total_cmp(&b.length_squared())
            .then(a.x.total_cmp(&b.x))
            .then(a.y.total_cmp(&b.y))
    });
    ways.into_iter().find_map(|by| {
        let slid = Crop {
            at: Point::nearest(crop.at.vec() + turned(layout, by, 1.0)),
            ..crop.clone()
        };
        if !brushes(layout, &slid, boxes).is_empty() {
            return None;
        }
        let mut after = layout.clone();
        let place = after.crops.iter().position(|c| c.id == crop.id)?;
        after.crops[place] = slid;
        if super::super::crops::spoils(study, &after) {
            return None;
        }
        let by = Arg::Text(length(by.length(), layout.head.units));
        Some(Remedy {
            act: say(
                "act-slide-crop-by",
                &[("crop", Arg::Name(crop.name.clone())), ("by", by)],
            ),
            predicted: say("clear", &[]),
            after: 0.0,
            edit: Edit::between(layout, &after),
        })
    })
}

/// Arms that crops cut at the wrist or the elbow: one sentence for all.
fn joints(study: &Study<'_>) -> Option<Finding> {
    let layout = study.layout();
    let trims: Vec<(Id, Vec<DVec2>)> = layout
        .crops
        .iter()
        .map(|c| (c.id, crop_outline(layout, c)))
        .collect();
    let mut nearest = f64::INFINITY;
    let (mut hands, mut crops, mut marks) = (Vec::new(), Vec::new(), Vec::new());
    for hand in &layout.hands {
        let arm = arm(layout, hand);
        for joint in [arm.wrist, arm.elbow] {
            // The line crosses the limb within reach of the joint.
            let reach = arm.along * SPACING_JOINT.edges[0];
            let cut =
                |trim: &[DVec2]| contains(trim, joint - reach) != contains(trim, joint + reach);
            for (crop, trim) in trims.iter().filter(|(_, trim)| cut(trim)) {
                nearest = nearest.min(crossing(trim, joint, arm.along));
                hands.push(hand.id);
                crops.push(*crop);
                marks.push(Mark::Ring {
                    at: joint,
                    radius: HAND_LENGTH * 0.3,
                });
            }
        }
    }
    sort(&mut crops, Ord::cmp);
    crops.dedup();
    hands.dedup();
    let named = |ids: &[Id]| {
        let mut names = study.names(ids);
        sort(&mut names, Ord::cmp);
        Arg::Text(listed(&names))
    };
    let sentence = study.sentence(|| {
        let args = [("crops", named(&crops)), ("flags", named(&hands))];
        say("spacing-joint", &args)
    });
    if hands.is_empty() {
        return None;
    }
    hands.extend(crops);
    let key = "spacing:joints".into();
    let mut f = Finding::by(&SPACING_JOINT, key, (State::LookAgain, 3), nearest, hands);
    f.marks = marks;
    f.sentence = sentence;
    f.working = study.tell(|| vec![say("working-spacing-joint", &[])]);
    Some(f)
}

/// How far from `joint` along the limb the outline is crossed, mm.
fn crossing(trim: &[DVec2], joint: DVec2, along: DVec2) -> f64 {
    let mut best = f64::INFINITY;
    for n in 0..trim.len() {
        let (a, side) = (trim[n], trim[(n + 1) % trim.len()] - trim[n]);
        let cross = along.perp_dot(side);
        if cross != 0.0 {
            best = best.min(((a - joint).perp_dot(side) / cross).abs());
        }
    }
    best
}
