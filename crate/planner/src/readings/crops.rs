//! Crops: what does each placement cut, and by how many centimetres?
use glam::DVec2;

use super::finding::{Finding, Grade, Remedy, State};
use super::study::Study;
use crate::edit::Edit;
use crate::layout::{Crop, Id, Layout, Point, Role};
use crate::scene::silhouette;
use crate::words::{Arg, length, say};

/// Room a slid crop leaves round what it keeps, mm. Our choice.
const KEEP_CLEAR: f64 = 10.0;

/// The findings of all crops.
pub(super) fn read(study: &Study<'_>, settled: bool) -> Vec<Finding> {
    let layout = study.layout();
    layout
        .crops
        .iter()
        .flat_map(|crop| one(study, crop, settled))
        .collect()
}

/// A thing's extent in the picture's own directions: least and most.
fn extent(layout: &Layout, id: Id) -> Option<[DVec2; 2]> {
    let item = layout.items.iter().find(|i| i.id == id)?;
    let (sin, cos) = libm::sincos(-layout.frame.turn.radians());
    let seen = silhouette(item)
        .into_iter()
        .map(|p| DVec2::new(cos, sin).rotate(p));
    Some(
        seen.fold([DVec2::INFINITY, DVec2::NEG_INFINITY], |[low, high], p| {
            [low.min(p), high.max(p)]
        }),
    )
}

fn crop_extent(layout: &Layout, crop: &Crop) -> [DVec2; 2] {
    let (sin, cos) = libm::sincos(-layout.frame.turn.radians());
    let at = DVec2::new(cos, sin).rotate(crop.at.vec());
    let half = DVec2::from_array(crop.extent()) * 0.5;
    [at - half, at + half]
}

/// How a thing lies in a crop: how far it reaches past an edge, mm, and whether
/// any of it is left.
fn cut(layout: &Layout, crop: &Crop, id: Id) -> Option<(f64, bool)> {
    let [low, high] = extent(layout, id)?;
    let [from, to] = crop_extent(layout, crop);
    let past = (from - low).max(high - to).max(DVec2::ZERO);
    let out = low.cmpgt(to).any() || high.cmplt(from).any();
    Some((past.max_element(), out))
}

fn finding(crop: &Crop, sort: &str, rank: u8, figure: f64, sentence: String) -> Finding {
    Finding {
        key: format!("crops:{}:{sort}", crop.id.0),
        reading: "crops",
        state: State::LookAgain,
        rank,
        figure,
        about: vec![crop.id],
        sentence,
        working: vec![say("working-crop", &[])],
        grade: Grade::Physics,
        taste: false,
        marks: Vec::new(),
        remedy: None,
    }
}

fn one(study: &Study<'_>, crop: &Crop, settled: bool) -> Vec<Finding> {
    let layout = study.layout();
    let units = layout.head.units;
    let text = |mm: f64| Arg::Text(length(mm, units));
    let mut out = Vec::new();
    let kept: Vec<Id> = layout
        .items
        .iter()
        .filter(|i| crop.must_show.contains(&i.id) || i.role == Role::Hero)
        .map(|i| i.id)
        .collect();
    for id in &kept {
        let Some((past, gone)) = cut(layout, crop, *id) else {
            continue;
        };
        if past < 1.0 {
            continue;
        }
        let must = crop.must_show.contains(id);
        let sentence = if gone {
            "crop-misses"
        } else {
            "crop-cuts-must"
        };
        let args = [
            ("crop", Arg::Name(crop.name.clone())),
            ("thing", Arg::Name(study.name(*id))),
            ("over", text(past)),
        ];
        let rank = if must { 1 } else { 2 };
        let mut f = finding(
            crop,
            &format!("cut:{}", id.0),
            rank,
            past,
            say(sentence, &args),
        );
        f.about.insert(0, *id);
        f.state = if must {
            State::WontWork
        } else {
            State::LookAgain
        };
        if settled {
            f.remedy = slide(study, crop, &kept);
        }
        out.push(f);
    }
    out.extend(gutter(study, crop));
    out.extend(bleed(study, crop));
    out
}

/// The nearest place of the crop within the frame that keeps all of `kept`.
fn slide(study: &Study<'_>, crop: &Crop, kept: &[Id]) -> Option<Remedy> {
    let layout = study.layout();
    let size = DVec2::from_array(crop.extent());
    let spans: Vec<[DVec2; 2]> = kept.iter().filter_map(|id| extent(layout, *id)).collect();
    let low = spans.iter().fold(DVec2::INFINITY, |m, s| m.min(s[0])) - KEEP_CLEAR;
    let high = spans.iter().fold(DVec2::NEG_INFINITY, |m, s| m.max(s[1])) + KEEP_CLEAR;
    let frame = &layout.frame;
    let turn = |angle: f64, p: DVec2| {
        let (sin, cos) = libm::sincos(angle);
        DVec2::new(cos, sin).rotate(p)
    };
    let middle = turn(-frame.turn.radians(), frame.at.vec());
    let room = (DVec2::new(f64::from(frame.width), frame.height()) - size) * 0.5;
    if room.min_element() < -0.5 {
        return None;
    }
    let least = (high - size * 0.5).max(middle - room.max(DVec2::ZERO));
    let most = (low + size * 0.5).min(middle + room.max(DVec2::ZERO));
    if least.cmpgt(most + 0.5).any() {
        return None;
    }
    let now = turn(-frame.turn.radians(), crop.at.vec());
    let to = now.clamp(least.min(most), most);
    let mut after = layout.clone();
    let moved = after.crops.iter_mut().find(|c| c.id == crop.id)?;
    moved.at = Point::nearest(turn(frame.turn.radians(), to));
    let still: f64 = kept
        .iter()
        .filter_map(|id| cut(&after, after.crops.iter().find(|c| c.id == crop.id)?, *id))
        .map(|c| c.0)
        .fold(0.0, f64::max);
    let args = [("crop", Arg::Name(crop.name.clone()))];
    (still < 1.0).then(|| Remedy {
        act: say("act-slide-crop", &args),
        predicted: say(
            "clear-by",
            &[("room", Arg::Text(length(KEEP_CLEAR, layout.head.units)))],
        ),
        after: still,
        edit: Edit::between(layout, &after),
    })
}

/// The hero or a main dish in the fold.
fn gutter(study: &Study<'_>, crop: &Crop) -> Vec<Finding> {
    let layout = study.layout();
    let Some(scale) = crop.print_scale().filter(|_| crop.gutter > 0) else {
        return Vec::new();
    };
    let [from, to] = crop_extent(layout, crop);
    let fold = (from.x + to.x) * 0.5;
    let half = f64::from(crop.gutter) * scale * 0.5;
    let main = |role: Role| matches!(role, Role::Hero | Role::Support);
    let dishes = layout.items.iter().filter(|i| main(i.role));
    dishes
        .filter(|i| {
            extent(layout, i.id)
                .is_some_and(|[low, high]| low.x < fold + half && high.x > fold - half)
        })
        .map(|i| {
            let rank = if i.role == Role::Hero { 2 } else { 3 };
            let args = [
                ("crop", Arg::Name(crop.name.clone())),
                ("thing", Arg::Name(i.name.clone())),
            ];
            let mut f = finding(
                crop,
                &format!("gutter:{}", i.id.0),
                rank,
                0.0,
                say("crop-gutter", &args),
            );
            f.about.insert(0, i.id);
            f
        })
        .collect()
}

/// Room between crop and frame at the tightest edge, and what the bleed needs,
/// mm on the table; `None` for a crop without bleed.
fn bleed_room(layout: &Layout, crop: &Crop) -> Option<(f64, f64)> {
    let scale = crop.print_scale().filter(|_| crop.bleed > 0)?;
    let [from, to] = crop_extent(layout, crop);
    let (sin, cos) = libm::sincos(-layout.frame.turn.radians());
    let middle = DVec2::new(cos, sin).rotate(layout.frame.at.vec());
    let half = DVec2::new(f64::from(layout.frame.width), layout.frame.height()) * 0.5;
    let room = (from - (middle - half))
        .min(middle + half - to)
        .min_element();
    Some((room, f64::from(crop.bleed) * scale))
}

/// Bleed the frame does not give.
fn bleed(study: &Study<'_>, crop: &Crop) -> Option<Finding> {
    let layout = study.layout();
    let (room, needed) = bleed_room(layout, crop)?;
    let units = layout.head.units;
    let args = [
        ("crop", Arg::Name(crop.name.clone())),
        ("room", Arg::Text(length(room.max(0.0), units))),
        ("needed", Arg::Text(length(needed, units))),
    ];
    (room + 0.5 < needed).then(|| {
        let mut f = finding(crop, "bleed", 3, needed - room, say("crop-no-bleed", &args));
        f.remedy = tighten(layout, crop);
        f
    })
}

/// The widest width at which the bleed fits all round, about the same centre.
fn tighten(layout: &Layout, crop: &Crop) -> Option<Remedy> {
    let fitting = (crop.width * 3 / 4..crop.width).rev().find_map(|width| {
        let tight = Crop {
            width,
            ..crop.clone()
        };
        let (room, needed) = bleed_room(layout, &tight)?;
        (room + 0.5 >= needed).then_some(tight)
    })?;
    let mut after = layout.clone();
    let place = after.crops.iter().position(|c| c.id == crop.id)?;
    after.crops[place] = fitting.clone();
    let depth = |c: &Crop| Arg::Text(length(c.extent()[1], layout.head.units));
    Some(Remedy {
        act: say("act-tighten", &[("crop", Arg::Name(crop.name.clone()))]),
        predicted: say(
            "predicted",
            &[("before", depth(crop)), ("after", depth(&fitting))],
        ),
        after: 0.0,
        edit: Edit::between(layout, &after),
    })
}
