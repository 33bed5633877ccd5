//! What takes a mirrored spot away, in a stylist's order: a black card where it
//! stands in the mirror, the thing moved a little, the light turned, something
//! matt instead.
use std::cell::Cell;

use glam::DVec2;

use super::super::finding::Remedy;
use super::super::remedies::{Try, stack_moved, stands_clear, way};
use super::super::rules::GLARE;
use super::super::study::{Study, Words};
use super::surfaces::{Glare, glares, table_glare};
use super::{pooled, read};
use crate::layout::{
    Card, CardKind, Extra, Finish, Id, Item, Layout, MAX_CARDS, MAX_ID, MAX_SIZE, Point, Turn,
};
use crate::light::{MIRRORED, Mirrored, Source};
use crate::order::sort;
use crate::shape::{CHORD_ERROR, Region, contains, frame_outline, intersection, table_outline};
use crate::words::{Arg, clock, length, percent, say};

/// A card reaches past the rays it stops by this much, mm. Our choice.
const SPARE: f64 = 40.0;
/// How far beyond the frame a card is tried, mm, and in which steps.
const FARTHEST: f64 = 1_500.0;
const APART: f64 = 50.0;
/// A small move: up to this far, mm, in these steps and so many directions.
const SMALL: i32 = 200;
const STEP: usize = 20;
const WAYS: i32 = 16;
/// Share of what is said that a moved thing may still mirror. Our choice.
const SPECK: f64 = 0.5;
/// Things so alike in width and depth, mm, may change places.
const ALIKE: i32 = 10;
/// Steps the light is turned by, in half degrees: half an hour of the clock.
const HALF_HOUR: i32 = 30;

/// The first change after which nothing is worth another look here, and nothing
/// else begins to be.
pub(super) fn found(study: &Study<'_>, key: &str, glares: &[Glare]) -> Option<Remedy> {
    let ids: Vec<Id> = glares.iter().map(|g| g.id).collect();
    let before = pooled(glares);
    let pressing = |study: &Study<'_>| -> (bool, usize) {
        study.say_only(Words::None);
        let found: Vec<_> = read(study, false);
        let pressing = found.iter().filter(|f| f.is_pressing());
        let about = pressing
            .clone()
            .any(|f| f.about.iter().any(|id| ids.contains(id)));
        (about, pressing.map(|f| f.about.len()).sum())
    };
    let words = study.words();
    let now = pressing(study).1;
    study.say_only(words);
    // What helps a crop may not harm the picture it is cut from.
    let whole = |layout: &Layout| {
        let cut = study.crop().is_some();
        cut.then(|| pressing(&Study::new(layout)).1)
    };
    let before_whole = whole(study.layout());
    let tried = Cell::new(0);
    let good = |made: Try| {
        let n = tried.replace(tried.get() + 1);
        let after = study.figure(key, n, &|| {
            let then = study.changed(&made.after);
            let (still, count) = pressing(&then);
            (!still && count < now && whole(&made.after) <= before_whole)
                .then(|| left(&then, &ids, glares))
        })?;
        let told = ("predicted", [before, after].map(percent));
        Some(made.remedy(study, after * 100.0, told))
    };
    let light = glares.iter().any(|g| g.causes().contains(&Mirrored::Light));
    let turns = (1..=12).flat_map(|n| [HALF_HOUR * n, -HALF_HOUR * n]);
    light
        .then(|| carded(study, glares))
        .flatten()
        .and_then(good)
        .or_else(|| moved(study, glares).and_then(good))
        .or_else(|| exchanged(study, glares).find_map(good))
        .or_else(|| {
            let mut turned = turns.filter(|_| light).map(|by| turned(study, by));
            turned.find_map(good)
        })
        .or_else(|| matt(study, glares).and_then(good))
}

/// How much of the same surfaces mirrors something in another layout.
fn left(study: &Study<'_>, ids: &[Id], before: &[Glare]) -> f64 {
    let whole: f64 = before.iter().map(|g| g.whole).sum();
    let mut area: f64 = glares(study)
        .iter()
        .filter(|g| ids.contains(&g.id))
        .fold(0.0, |sum, g| sum + g.patch.area());
    if ids == [Id(0)] {
        let of = if before[0].causes() == [Mirrored::Light] {
            &MIRRORED[..1]
        } else {
            &MIRRORED[1..]
        };
        area = table_glare(study, of).map_or(0.0, |g| g.patch.area());
    }
    area / whole.max(f64::MIN_POSITIVE)
}

/// A black card beyond the frame that stops every ray from the light to what
/// mirrors it.
fn carded(study: &Study<'_>, glares: &[Glare]) -> Option<Try> {
    let layout = study.layout();
    let next = layout.head.next_id;
    if next > MAX_ID || layout.cards.len() >= MAX_CARDS {
        return None;
    }
    let under = glares.first()?.mirror.under;
    let source = Source::of(layout);
    let out = (source.centre.truncate() - under).normalize_or_zero();
    if out == DVec2::ZERO {
        return None;
    }
    let beyond = {
        let seen = glares.iter().flat_map(Glare::points);
        seen.map(|p| (p - under).dot(out)).fold(0.0, f64::max)
    };
    // Beyond the whole picture, of which a crop in view is only a part.
    let frame = Region::from_polygon(&frame_outline(&layout.frame)).ok()?;
    let card = (1..=(FARTHEST / APART) as i32).find_map(|n| {
        let plane = beyond + APART * f64::from(n);
        let card = stopping(glares, under, out, plane)?;
        let [a, b] = ends(&card);
        let clear = !(0..=8).any(|n| frame.contains(a.lerp(b, f64::from(n) / 8.0)));
        let before = (card.at.vec().extend(0.0) - source.centre).dot(source.facing) > 0.0;
        (clear && before).then_some(card)
    })?;
    let mut after = layout.clone();
    after.head.next_id += 1;
    let units = layout.head.units;
    let args = [
        ("width", Arg::Text(length(f64::from(card.width), units))),
        ("height", Arg::Text(length(f64::from(card.height), units))),
    ];
    let card = Card {
        id: Id(next),
        ..card
    };
    after.cards.push(card);
    Some(Try {
        act: say("act-black-card", &args),
        after,
    })
}

/// A card across this direction, so far out from under the lens, that stops
/// what the lens sees mirrored there.
fn stopping(glares: &[Glare], under: DVec2, out: DVec2, plane: f64) -> Option<Card> {
    let side = out.perp();
    let (mut low, mut high, mut top) = (f64::INFINITY, f64::NEG_INFINITY, 0.0_f64);
    for glare in glares {
        for seen in glare.points() {
            let way = glare.on_surface(seen) - under;
            let far = way.dot(out);
            // What is mirrored on the other side of the lens no card here stops.
            if far <= 1.0 || far >= plane {
                return None;
            }
            // The ray climbs from the surface as steeply as it fell from the lens.
            let grown = plane / far;
            low = low.min(way.dot(side) * grown);
            high = high.max(way.dot(side) * grown);
            top = top.max(glare.mirror.level + glare.mirror.above * (grown - 1.0));
        }
    }
    let width = high - low + 2.0 * SPARE;
    let height = top + SPARE;
    let fits = width.max(height) <= f64::from(MAX_SIZE);
    // In whole centimetres, as a card is cut.
    let cm = |mm: f64| (mm / 10.0).ceil() as i32 * 10;
    fits.then(|| Card {
        id: Id(0),
        kind: CardKind::Black,
        at: Point::nearest(under + out * plane + side * ((low + high) * 0.5)),
        turn: facing(-out),
        width: cm(width),
        height: cm(height),
        extra: Extra::new(),
    })
}

/// The clock position of a direction.
fn facing(way: DVec2) -> Turn {
    Turn::from_degrees(libm::atan2(way.x, -way.y).to_degrees())
}

fn ends(card: &Card) -> [DVec2; 2] {
    let half = card.turn.direction().perp() * (f64::from(card.width) * 0.5);
    [card.at.vec() - half, card.at.vec() + half]
}

/// One thing moved the shortest way to where it mirrors nothing to speak of.
fn moved(study: &Study<'_>, glares: &[Glare]) -> Option<Try> {
    let [glare] = glares else {
        return None;
    };
    let layout = study.layout();
    let stack = study.root(glare.id);
    let item = study.item(stack).filter(|i| !i.locked)?;
    let scene = study.scene();
    let own = scene.touchable.iter().rev().find(|t| t.0 == glare.id)?;
    let own = Region::from_polygon(&own.1).ok()?;
    // What is mirrored does not move with the thing: all of it, seen or not.
    let standing = study.lit().standing(stack);
    let all: Vec<Region> = MIRRORED
        .iter()
        .map(|of| {
            let seen = |p| scene.view.project(p, glare.mirror.level);
            let mirrored = of.region(layout, &glare.mirror, &standing, &|_| true);
            mirrored.carried(seen)
        })
        .collect();
    let ground = table_outline(&layout.table, CHORD_ERROR);
    let room = own.area() * GLARE.edges[1] * SPECK;
    (STEP as i32..=SMALL).step_by(STEP).find_map(|far| {
        (0..WAYS).find_map(|n| {
            let (sin, cos) = libm::sincos(core::f64::consts::TAU * f64::from(n) / f64::from(WAYS));
            let by = DVec2::new(cos, sin) * f64::from(far);
            let there = own.moved(by);
            let inside = |p: DVec2| scene.frame.contains(p) && contains(&ground, p);
            let kept = there.rings().iter().flatten().all(|p| inside(*p));
            let taken = |r: &Region| {
                let meet = r
                    .bounds()
                    .zip(there.bounds())
                    .is_some_and(|(a, b)| a.meets(b));
                let both = meet.then(|| intersection(r, &there).ok()).flatten();
                both.map_or(0.0, |both| both.area())
            };
            let mirrored: f64 = all.iter().map(taken).sum();
            if !kept || mirrored > room || !stands_clear(study, stack, by) {
                return None;
            }
            let args = [
                ("thing", Arg::Name(study.name(item.id))),
                ("by", Arg::Text(length(by.length(), layout.head.units))),
            ];
            Some(Try {
                act: say(way(study, by), &args),
                after: stack_moved(layout, stack, by),
            })
        })
    })
}

/// One thing in the place of another of its size, the nearest first.
fn exchanged<'a>(study: &'a Study<'_>, glares: &[Glare]) -> impl Iterator<Item = Try> + 'a {
    let layout = study.layout();
    let one = match glares {
        [glare] => study.item(study.root(glare.id)).filter(|i| !i.locked),
        _ => None,
    };
    let mut others: Vec<&Item> = Vec::new();
    if let Some(own) = one {
        let [w, d] = own.size.extent();
        others = layout
            .items
            .iter()
            .filter(|i| {
                let [x, y] = i.size.extent();
                let alike = (w - x).abs().max((d - y).abs()) <= ALIKE;
                alike && i.on.is_none() && !i.locked && i.id != own.id
            })
            .collect();
        let away = |i: &Item| i.at.vec().distance(own.at.vec());
        sort(&mut others, |a, b| {
            away(a).total_cmp(&away(b)).then(a.id.cmp(&b.id))
        });
    }
    others.into_iter().filter_map(move |other| {
        let own = one?;
        let by = other.at.vec() - own.at.vec();
        let there = stack_moved(layout, own.id, by);
        let args = [
            ("thing", Arg::Name(study.name(own.id))),
            ("other", Arg::Name(study.name(other.id))),
        ];
        Some(Try {
            act: say("act-change-places", &args),
            after: stack_moved(&there, other.id, -by),
        })
    })
}

/// The light turned about the table.
fn turned(study: &Study<'_>, by: i32) -> Try {
    let mut after = study.layout().clone();
    after.light.clock = after.light.clock.plus(by);
    let to = after.light.clock.degrees() - after.frame.turn.degrees();
    let args = [("clock", Arg::Text(clock(to)))];
    Try {
        act: say("act-turn-light", &args),
        after,
    }
}

/// Something matt instead: there is none of a liquid.
fn matt(study: &Study<'_>, glares: &[Glare]) -> Option<Try> {
    let [glare] = glares else {
        return None;
    };
    let mut after = study.layout().clone();
    let act = if glare.id == Id(0) {
        after.table.surface.finish = Finish::Matt;
        "act-matt-table"
    } else {
        let own = after.items.iter_mut().find(|i| i.id == glare.id);
        let own = own.filter(|i| !i.locked && i.finish == Finish::Gloss)?;
        own.finish = Finish::Matt;
        "act-matt"
    };
    let args = [("thing", Arg::Name(study.name(glare.id)))];
    Some(Try {
        act: say(act, &args),
        after,
    })
}
