//! What lies in the copy space of each crop, and in which type it reads.
use glam::DVec2;

use super::super::finding::{Finding, Mark, State};
use super::super::picture::Picture;
use super::super::rules::{SPACE_COPY, SPACE_TYPE};
use super::super::study::Study;
use super::remedy;
use crate::colour::{CONTRAST_LARGE, CONTRAST_TEXT, Shade, contrast_of, luminance_of};
use crate::layout::{Crop, Frame, Id, Point};
use crate::order;
use crate::scene::PartKind;
use crate::shape::{Bounds, Region, difference, intersection};
use crate::words::{Arg, fixed, listed, percent, say, whole};

/// Tones over less of the copy space than this are specks. Our choice.
const SPECK: f64 = 0.01;
/// L* of white type, and of type as near to black as is printed. Our choice.
const TYPE: [f64; 2] = [100.0, 10.0];

/// The copy space of a crop, on the table.
pub(in super::super) fn area_of(study: &Study<'_>, crop: &Crop) -> Option<Vec<DVec2>> {
    copy_space(&study.layout().frame, crop)
}

/// The outline of a crop's copy space on the table, mm; none without one.
#[must_use]
pub fn copy_space(frame: &Frame, crop: &Crop) -> Option<Vec<DVec2>> {
    let area = crop.copy.as_ref()?.area;
    let picture = Picture::of(frame, Some(crop));
    let half = DVec2::new(f64::from(area.width), f64::from(area.depth)) * 0.5;
    let at = picture.size * 0.5 + Point::new(area.dx, area.dy).vec();
    let own = Bounds {
        min: at - half,
        max: at + half,
    };
    Some(own.corners().iter().map(|p| picture.on_table(*p)).collect())
}

/// What is seen within the copy space.
#[derive(Default)]
pub(super) struct Under {
    /// Whatever stands, lies or reaches in it: whose, share, and where.
    pub(super) things: Vec<(Id, f64, Vec<Region>)>,
    /// L* of every tone of the ground, and its share.
    ground: Vec<[f64; 2]>,
    /// Likewise with the things.
    tones: Vec<[f64; 2]>,
}

impl Under {
    /// Share of the copy space that is taken.
    pub(super) fn taken(&self) -> f64 {
        self.things.iter().map(|t| t.1).sum()
    }
}

/// Looks at the copy space from above, peeling off layer by layer.
pub(super) fn under(study: &Study<'_>, outline: &[DVec2]) -> Under {
    let scene = study.scene();
    let mut out = Under::default();
    let mut left = Region::from_polygon(outline).unwrap_or_default();
    let all = left.area().max(f64::MIN_POSITIVE);
    let tones = |shades: &[Shade], share: f64| -> Vec<[f64; 2]> {
        let total: f64 = shades.iter().map(|s| s.share).sum();
        shades
            .iter()
            .map(|s| [s.lab.l, share * s.share / total])
            .collect()
    };
    for piece in scene.pieces.iter().rev() {
        let near = piece.region.bounds().zip(left.bounds());
        if !near.is_some_and(|(a, b)| a.meets(b)) {
            continue;
        }
        let (Ok(part), Ok(rest)) = (
            intersection(&left, &piece.region),
            difference(&left, &[&piece.region]),
        ) else {
            continue;
        };
        left = rest;
        let share = part.area() / all;
        let seen = tones(&piece.shades, share);
        if matches!(piece.part, PartKind::Table | PartKind::Linen) {
            out.ground.extend(&seen);
        } else if share > 0.0 {
            let owner = study.root(piece.owner);
            match out.things.iter_mut().find(|t| t.0 == owner) {
                Some(thing) => {
                    thing.1 += share;
                    thing.2.push(part);
                }
                None => out.things.push((owner, share, vec![part])),
            }
        }
        out.tones.extend(seen);
    }
    let floor = tones(&scene.floor, left.area() / all);
    out.ground.extend(&floor);
    out.tones.extend(floor);
    order::sort(&mut out.things, |a, b| {
        b.1.total_cmp(&a.1).then(a.0.cmp(&b.0))
    });
    out
}

/// Whether this thing is said to take some of a copy space.
pub(in super::super) fn takes(study: &Study<'_>, outline: &[DVec2], id: Id) -> bool {
    let under = under(study, outline);
    let id = study.root(id);
    under.taken() >= SPACE_COPY.edges[0] && under.things.iter().any(|t| t.0 == id)
}

/// Mean, darkest and lightest L* of tones, specks aside.
fn range(tones: &[[f64; 2]]) -> Option<[f64; 3]> {
    let seen = || tones.iter().filter(|t| t[1] >= SPECK);
    let all: f64 = seen().map(|t| t[1]).sum();
    let mean = seen().map(|t| t[0] * t[1]).sum::<f64>() / all;
    let low = seen().map(|t| t[0]).min_by(f64::total_cmp)?;
    let high = seen().map(|t| t[0]).max_by(f64::total_cmp)?;
    Some([mean, low, high])
}

/// Worst contrast of white and of near-black type over a range of L*.
fn reads([_, low, high]: [f64; 3]) -> [f64; 2] {
    let on = |type_in: f64| {
        let against = |l: f64| contrast_of(luminance_of(type_in), luminance_of(l));
        against(low).min(against(high))
    };
    TYPE.map(on)
}

/// The findings about the copy space of every crop that has one.
pub(in super::super) fn read(study: &Study<'_>, settled: bool) -> Vec<Finding> {
    let mut out = Vec::new();
    for crop in &study.layout().crops {
        let Some(outline) = area_of(study, crop) else {
            continue;
        };
        let under = under(study, &outline);
        let mut taken = taken(study, crop, &outline, &under);
        if let Some(f) = taken.as_mut().filter(|_| settled) {
            f.remedy = study.remedy(&f.key, &|| remedy::found(study, crop, &under));
        }
        out.extend(taken);
        out.extend(type_in(study, crop, outline, &under));
    }
    out
}

pub(super) fn named(crop: &Crop) -> (&'static str, Arg) {
    ("crop", Arg::Name(crop.name.clone()))
}

/// What takes some of the copy space.
fn taken(study: &Study<'_>, crop: &Crop, outline: &[DVec2], under: &Under) -> Option<Finding> {
    let share = under.taken();
    let first = under.things.first()?.0;
    if share < SPACE_COPY.edges[0] {
        return None;
    }
    let mut about: Vec<Id> = under.things.iter().map(|t| t.0).collect();
    about.push(crop.id);
    let key = format!("space:{}:copy", crop.id.0);
    let state = (State::LookAgain, 2);
    let mut f = Finding::by(&SPACE_COPY, key, state, share * 100.0, about);
    f.marks = vec![Mark::Area {
        outline: outline.to_vec(),
        label: String::new(),
    }];
    for (_, own, parts) in &under.things {
        for ring in parts.iter().flat_map(|part| part.rings()) {
            f.marks.push(Mark::Overrun {
                outline: ring.clone(),
                label: study.tell(|| percent(*own)),
            });
        }
    }
    f.sentence = study.sentence(|| {
        let ids: Vec<Id> = under.things.iter().map(|t| t.0).collect();
        let names = study.names(&ids);
        let id = match ids.len() {
            1 if study.item(first).is_none() => "space-copy-hand",
            1 => "space-copy-thing",
            _ => "space-copy-several",
        };
        let args = [
            named(crop),
            ("share", Arg::Text(percent(share))),
            ("things", Arg::Text(listed(&names))),
            ("count", Arg::Text(names.len().to_string())),
        ];
        say(id, &args)
    });
    f.working = study.tell(|| {
        let each = under.things.iter().map(|(id, own, _)| {
            let figure = ("figure", Arg::Text(percent(*own)));
            say(
                "working-line",
                &[("thing", Arg::Name(study.name(*id))), figure],
            )
        });
        let mut lines: Vec<String> = std::iter::once(say("working-space-copy", &[]))
            .chain(each)
            .collect();
        lines.extend(range(&under.tones).map(worked));
        lines
    });
    Some(f)
}

/// Tones under the type, and how white and near-black type read on them.
fn worked(tones: [f64; 3]) -> String {
    let [mean, low, high] = tones.map(|l| Arg::Text(whole(l)));
    let [white, black] = reads(tones).map(|c| Arg::Text(fixed(c, 1)));
    let args = [
        ("mean", mean),
        ("low", low),
        ("high", high),
        ("white", white),
        ("black", black),
    ];
    say("working-space-type", &args)
}

/// Whether white or near-black type reads on the ground of the copy space:
/// what stands in it is said for itself.
fn type_in(study: &Study<'_>, crop: &Crop, outline: Vec<DVec2>, under: &Under) -> Option<Finding> {
    let tones = range(&under.ground)?;
    let [white, black] = reads(tones);
    let best = white.max(black);
    let state = if best < SPACE_TYPE.edges[1] {
        (State::LookAgain, 2)
    } else {
        (State::Holds, 3)
    };
    let key = format!("space:{}:type", crop.id.0);
    let mut f = Finding::by(&SPACE_TYPE, key, state, best, vec![crop.id]);
    f.marks = vec![Mark::Area {
        outline,
        label: String::new(),
    }];
    f.sentence = study.sentence(|| {
        let id = match (best, white > black) {
            (c, _) if c < CONTRAST_LARGE => "space-type-none",
            (c, true) if c < CONTRAST_TEXT => "space-type-white-large",
            (c, false) if c < CONTRAST_TEXT => "space-type-black-large",
            (_, true) => "space-type-white",
            (_, false) => "space-type-black",
        };
        say(id, &[named(crop), ("best", Arg::Text(fixed(best, 1)))])
    });
    f.working = study.tell(|| vec![say("working-space-copy", &[]), worked(tones)]);
    Some(f)
}
