//! Colour: what the picture comes down to in tones and families, its accents,
//! and what shines at its edge.
//!
//! Visible area by tone, tones within HyAB 10 merged, the six largest told;
//! families by CIELAB hue angle. No combination is known to please (nothing
//! found for whole tables), so this tells and never scores. White near an
//! edge draws the eye out (common practice, no source). Whites that clip need
//! light.
use glam::DVec2;

use super::crops;
use super::finding::{Finding, Mark, Remedy, State};
use super::remedies::{stack_moved, stands_clear};
use super::rules::{COLOUR_ACCENT, COLOUR_CHROMA, COLOUR_EDGE, COLOUR_HOT, COLOUR_PALETTE};
use super::study::Study;
use crate::colour::{Family, Lab, STRONG_FROM, Shade, Swatch, chroma, family, hyab, palette, srgb};
use crate::edit::Edit;
use crate::layout::Id;
use crate::order;
use crate::scene::PartKind;
use crate::shape::Bounds;
use crate::words::{Arg, listed, percent, say, whole};

/// Swatches told at most.
const TOLD: usize = 6;
/// A little more than is asked for, so that whole millimetres stay clear, mm.
const MARGIN: f64 = 2.0;

/// One tone of one piece: the area it is seen over, and whose it is; nobody's
/// for the floor.
struct Seen {
    lab: Lab,
    area: f64,
    owner: Option<Id>,
}

/// All that is seen, tone by tone.
fn seen(study: &Study<'_>) -> Vec<Seen> {
    let scene = study.scene();
    let size = study.picture().size;
    let mut left = size.x * size.y;
    let mut out = Vec::new();
    let mut add = |shades: &[Shade], area: f64, owner: Option<Id>| {
        let all: f64 = shades.iter().map(|s| s.share).sum();
        out.extend(shades.iter().map(|s| Seen {
            lab: s.lab,
            area: area * s.share / all,
            owner,
        }));
    };
    // By number, so that sums do not hang on the order things are listed in.
    let mut turns: Vec<usize> = (0..scene.pieces.len()).collect();
    let owner = |n: usize| scene.pieces[n].owner;
    order::sort(&mut turns, |a, b| owner(*a).cmp(&owner(*b)).then(a.cmp(b)));
    for n in turns {
        let piece = &scene.pieces[n];
        let area = scene.seen(n).area();
        left -= area;
        add(&piece.shades, area, Some(piece.owner));
    }
    add(&scene.floor, left.max(0.0), None);
    out
}

/// What the colours are, and what shines at the edge.
pub(super) fn read(study: &Study<'_>, settled: bool) -> Vec<Finding> {
    if !study.has_three_dishes() {
        return Vec::new();
    }
    let mut out = vec![tones(study.viewed())];
    out.extend(hot(study, settled));
    out
}

fn tones(study: &Study<'_>) -> Finding {
    let seen = seen(study);
    let all: f64 = seen.iter().map(|s| s.area).sum();
    let areas: Vec<(Lab, f64)> = seen.iter().map(|s| (s.lab, s.area)).collect();
    let swatches = palette(&areas);
    let of = |is: Family| {
        let own = seen.iter().filter(|s| family(s.lab) == is);
        own.map(|s| s.area).sum::<f64>() / all
    };
    let accents = accents(study, &seen, &swatches, all);
    let state = (State::Holds, 3);
    let warm = of(Family::Warm);
    let key = "colour".into();
    let mut f = Finding::by(&COLOUR_PALETTE, key, state, warm * 100.0, accents);
    f.marks = row(study, &swatches);
    f.sentence = study.sentence(|| {
        let mut names: Vec<String> = Vec::new();
        for id in &f.about {
            let name = study.name(*id);
            if !names.contains(&name) {
                names.push(name);
            }
        }
        let args = [
            ("warm", Arg::Text(percent(warm))),
            ("green", Arg::Text(percent(of(Family::Green)))),
            ("cool", Arg::Text(percent(of(Family::Cool)))),
            ("neutral", Arg::Text(percent(of(Family::Neutral)))),
            ("things", Arg::Text(listed(&names))),
        ];
        let id = if names.is_empty() {
            "colour-families"
        } else {
            "colour-accents"
        };
        say(id, &args)
    });
    f.working = study.tell(|| {
        let told = swatches.iter().take(TOLD).enumerate().map(|(n, s)| {
            let args = [
                ("number", Arg::Text((n + 1).to_string())),
                ("tone", Arg::Text(srgb(s.lab).to_string())),
                ("share", Arg::Text(percent(s.area / all))),
                ("light", Arg::Text(whole(s.lab.l))),
            ];
            say("working-swatch", &args)
        });
        std::iter::once(say("working-colour", &[]))
            .chain(told)
            .collect()
    });
    f
}

/// The items that are accents by their colour.
pub(super) fn accents_of(study: &Study<'_>) -> Vec<Id> {
    let seen = seen(study);
    let all: f64 = seen.iter().map(|s| s.area).sum();
    let areas: Vec<(Lab, f64)> = seen.iter().map(|s| (s.lab, s.area)).collect();
    accents(study, &seen, &palette(&areas), all)
}

/// Swatches in a row below the picture, numbered: on it they would hide some
/// of it, or be hidden.
fn row(study: &Study<'_>, swatches: &[Swatch]) -> Vec<Mark> {
    let picture = study.picture();
    let side = picture.size.min_element() * 0.06;
    let told = swatches.iter().take(TOLD).enumerate();
    told.map(|(n, s)| {
        let at = DVec2::new(side * (1.0 + 1.3 * n as f64), picture.size.y + side * 1.25);
        Mark::Swatch {
            at: picture.on_table(at),
            side,
            tone: srgb(s.lab),
            label: study.tell(|| (n + 1).to_string()),
        }
    })
    .collect()
}

/// Things of which a small, strong colour is unlike all that covers much.
fn accents(study: &Study<'_>, seen: &[Seen], swatches: &[Swatch], all: f64) -> Vec<Id> {
    let large = |s: &&Swatch| s.area >= COLOUR_ACCENT.edges[0] * all;
    let mut out: Vec<Id> = Vec::new();
    for swatch in swatches.iter().filter(|s| !large(s)) {
        let unlike = |s: &Swatch| hyab(s.lab, swatch.lab) >= STRONG_FROM;
        let strong = chroma(swatch.lab) >= COLOUR_CHROMA.edges[0];
        if !strong || !swatches.iter().filter(large).all(unlike) {
            continue;
        }
        for n in &swatch.tones {
            let own = seen[*n].owner.filter(|id| study.item(*id).is_some());
            if let Some(id) = own.filter(|id| !out.contains(id)) {
                out.push(id);
            }
        }
    }
    out
}

/// Pale things near the edge of the picture.
fn hot(study: &Study<'_>, settled: bool) -> Option<Finding> {
    let things = shining(study);
    if things.is_empty() {
        return None;
    }
    let about: Vec<Id> = things.iter().map(|t| t.0).collect();
    let count = about.len() as f64;
    let state = (State::LookAgain, 3);
    let mut f = Finding::by(&COLOUR_EDGE, "colour:edge".into(), state, count, about);
    let picture = study.picture();
    let ring = |(_, b): &(Id, Bounds)| Mark::Ring {
        at: picture.on_table(b.centre()),
        radius: b.size().max_element() * 0.55,
    };
    f.marks = things.iter().map(ring).collect();
    f.sentence = study.sentence(|| {
        let ids: Vec<Id> = things.iter().map(|t| t.0).collect();
        let names = study.names(&ids);
        say("colour-edge", &[("things", Arg::Text(listed(&names)))])
    });
    f.working = study.tell(|| vec![say("working-colour-edge", &[])]);
    if settled {
        f.remedy = study.remedy(&f.key, &|| moved_in(study, &things));
    }
    Some(f)
}

/// Things whose mean L* is over the threshold where they come near an edge of
/// the picture, and the box round what is seen of them there.
fn shining(study: &Study<'_>) -> Vec<(Id, Bounds)> {
    let (scene, picture) = (study.scene(), study.picture());
    let near = COLOUR_EDGE.edges[0] * picture.diagonal();
    let inner = super::space::whole(&picture).grown(-near);
    let mut out: Vec<(Id, Bounds)> = Vec::new();
    for walk in study.walks_by_number() {
        let piece = &scene.pieces[walk.piece];
        let all: f64 = piece.shades.iter().map(|s| s.share).sum();
        let light = piece.shades.iter().map(|s| s.lab.l * s.share).sum::<f64>() / all;
        let arm = matches!(piece.part, PartKind::Hand | PartKind::Sleeve);
        if arm || light <= COLOUR_HOT.edges[0] {
            continue;
        }
        let seen = scene.seen(walk.piece).carried(|p| picture.of_table(p));
        let owner = study.root(piece.owner);
        let Some(b) = seen.bounds() else { continue };
        let reaches = b.min.cmplt(inner.min).any() || b.max.cmpgt(inner.max).any();
        if reaches && out.iter().all(|t| t.0 != owner) {
            out.push((owner, b));
        }
    }
    out
}

/// Every one of them moved in as far as it takes, where there is room.
fn moved_in(study: &Study<'_>, things: &[(Id, Bounds)]) -> Option<Remedy> {
    let picture = study.picture();
    let near = COLOUR_EDGE.edges[0] * picture.diagonal() + MARGIN;
    let inner = super::space::whole(&picture).grown(-near);
    let mut after = study.layout().clone();
    let mut moved: Vec<Id> = Vec::new();
    for (id, b) in things {
        let loose = study.item(*id).is_some_and(|i| !i.locked);
        let by = (inner.min - b.min).max(DVec2::ZERO) + (inner.max - b.max).min(DVec2::ZERO);
        let by = picture.on_table(by) - picture.on_table(DVec2::ZERO);
        if loose && stands_clear(&study.changed(&after), *id, by) {
            after = stack_moved(&after, *id, by);
            moved.push(*id);
        }
    }
    let first = *moved.first()?;
    let left = shining(&study.changed(&after)).len();
    if left >= things.len() || crops::spoils(study, &after) {
        return None;
    }
    let args = [
        ("thing", Arg::Name(study.name(first))),
        ("count", Arg::Text(moved.len().to_string())),
        ("before", Arg::Text(things.len().to_string())),
        ("after", Arg::Text(left.to_string())),
    ];
    let id = if moved.len() == 1 {
        "act-move-in"
    } else {
        "act-move-in-several"
    };
    Some(Remedy {
        act: say(id, &args),
        predicted: say("predicted", &args),
        after: left as f64,
        edit: Edit::between(study.layout(), &after),
    })
}
