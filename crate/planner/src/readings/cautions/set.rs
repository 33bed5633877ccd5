//! Cautions about what hangs, stands, burns and cuts.
use glam::DVec2;

use super::super::study::Study;
use super::{Caution, Concern, named, put};
use crate::catalogue::{Kind, is_strewn, kind_of};
use crate::layout::{Item, Layout, LightShape, RigKind, SleeveLength, TableShape};
use crate::optics::{Lens, View};
use crate::scene::{arm, linen_span};
use crate::shape::{CHORD_ERROR, contains, outline, to_edge};
use crate::words::{Arg, length, listed, mass, say};

/// What a person reaches from the floor, mm. Our choice.
const OVERHEAD: f64 = 2_000.0;
/// A surface as heavy as this takes two, grams. Our choice.
const FOR_TWO: f64 = 20_000.0;
/// Surfaces that come as slabs: density in kg/m³ and thickness in mm. Usual
/// figures of handbooks, from memory; thicknesses as slabs are commonly sold.
const SLABS: [(&str, f64, f64); 8] = [
    ("pale-marble", 2_700.0, 20.0),
    ("black-marble", 2_700.0, 20.0),
    ("travertine", 2_500.0, 20.0),
    ("granite", 2_700.0, 20.0),
    ("slate", 2_800.0, 20.0),
    ("terrazzo", 2_400.0, 20.0),
    ("concrete", 2_400.0, 20.0),
    ("terracotta", 2_000.0, 20.0),
];

pub(super) fn add(study: &Study<'_>, out: &mut Vec<Caution>) {
    let l = study.layout();
    overhead(l, out);
    slab(study, out);
    power(study, out);
    candles(study, out);
    let glasses = named(study, |i| kind_of(&i.prop) == Kind::Glass);
    if !glasses.is_empty() {
        put(out, "glass", Concern::Table, say("caution-glass", &[]));
    }
    let knives = named(study, |i| i.prop.ends_with("knife"));
    if !knives.is_empty() {
        put(out, "knives", Concern::Hands, say("caution-knives", &[]));
    }
    let oil = named(study, |i| i.prop == "oil-carafe");
    if !oil.is_empty() {
        let args = [("things", Arg::Text(listed(&oil)))];
        put(out, "oil", Concern::Table, say("caution-oil", &args));
    }
}

/// What hangs over table and people.
fn overhead(l: &Layout, out: &mut Vec<Caution>) {
    let View::Lens { height, .. } = View::of(l) else {
        return;
    };
    let id = match l.rig.kind {
        RigKind::Ceiling => "caution-ceiling",
        RigKind::Arm | RigKind::TwoStands | RigKind::Tripod => "caution-tether",
    };
    put(out, "tether", Concern::Camera, say(id, &[]));
    let sensor = Lens::of(&l.camera).sensor_height(height).unwrap_or(height);
    let up = f64::from(l.table.height) + sensor;
    if up >= OVERHEAD {
        let args = [("height", Arg::Text(length(up, l.head.units)))];
        put(out, "height", Concern::Camera, say("caution-height", &args));
    }
}

/// A surface that takes two to carry.
fn slab(study: &Study<'_>, out: &mut Vec<Caution>) {
    let table = &study.layout().table;
    let known = SLABS.iter().find(|s| s.0 == table.surface.prop);
    let Some((_, density, thick)) = known else {
        return;
    };
    let (wide, deep) = (f64::from(table.width), f64::from(table.depth));
    let share = match table.shape {
        TableShape::Rect => 1.0,
        TableShape::Round => core::f64::consts::FRAC_PI_4,
    };
    // mm³ × kg/m³ is a millionth of a gram.
    let grams = wide * deep * share * thick * density * 1e-6;
    if grams < FOR_TWO {
        return;
    }
    let units = study.layout().head.units;
    let args = [
        ("ground", Arg::Name(study.name(crate::layout::Id(0)))),
        ("mass", Arg::Text(mass(grams, units))),
        ("thick", Arg::Text(length(*thick, units))),
        ("density", Arg::Text(crate::words::whole(*density))),
    ];
    put(out, "slab", Concern::Table, say("caution-slab", &args));
}

/// Whether there is something to spill from it.
fn holds_liquid(item: &Item) -> bool {
    kind_of(&item.prop) == Kind::Glass || super::food::is_broth(item)
}

/// Cables of a lamp.
fn power(study: &Study<'_>, out: &mut Vec<Caution>) {
    if study.layout().light.shape != LightShape::Disc {
        return;
    }
    let wet = named(study, holds_liquid);
    let line = if wet.is_empty() {
        say("caution-cables", &[])
    } else {
        say("caution-mains", &[("things", Arg::Text(listed(&wet)))])
    };
    put(out, "mains", Concern::Camera, line);
}

/// Something that may catch fire, and how far it is from a flame, mm.
type Near = (f64, String);

/// Each flame and what burns nearest to it.
fn candles(study: &Study<'_>, out: &mut Vec<Caution>) {
    let l = study.layout();
    let mut nearest: Option<(Near, String)> = None;
    let mut flames = 0;
    for item in l.items.iter().filter(|i| kind_of(&i.prop) == Kind::Candle) {
        flames += 1;
        let found = burns_near(study, item);
        let closer = |f: &Near| nearest.as_ref().is_none_or(|(n, _)| f.0 < n.0);
        if let Some(found) = found.filter(closer) {
            nearest = Some((found, study.name(item.id)));
        }
    }
    let line = match nearest {
        _ if flames == 0 => return,
        None => say("caution-flame", &[]),
        Some(((gap, thing), candle)) => {
            let args = [
                ("candle", Arg::Name(candle)),
                ("gap", Arg::Text(length(gap, l.head.units))),
                ("thing", Arg::Name(thing)),
            ];
            let on = gap <= 0.0;
            say(
                if on {
                    "caution-candle-on"
                } else {
                    "caution-candle"
                },
                &args,
            )
        }
    };
    put(out, "candle", Concern::Table, line);
}

/// The linen, paper, herbs or sleeve nearest to the flame over the middle of
/// a candle.
fn burns_near(study: &Study<'_>, candle: &Item) -> Option<Near> {
    let l = study.layout();
    let flame = candle.at.vec();
    let mut all: Vec<Near> = Vec::new();
    for linen in &l.linens {
        all.push((gap(flame, &linen_span(linen)), linen.name.clone()));
    }
    let burns = |i: &&Item| i.prop == "place-card" || is_strewn(&i.prop);
    for item in l.items.iter().filter(burns) {
        let line = outline(&item.size, item.at.vec(), item.turn.degrees(), CHORD_ERROR);
        all.push((gap(flame, &line), study.name(item.id)));
    }
    if matches!(
        l.table.surface.prop.as_str(),
        "brown-paper" | "linen-cloth" | "dark-linen" | "oat-linen"
    ) {
        all.push((0.0, study.name(crate::layout::Id(0))));
    }
    for hand in &l.hands {
        let person = l.people.iter().find(|p| p.id == hand.person);
        if person.is_some_and(|p| p.sleeve.length != SleeveLength::Bare) {
            let sleeve = arm(l, hand).sleeve;
            let args = [("flag", Arg::Text(study.name(hand.id)))];
            all.push((gap(flame, &sleeve), say("name-sleeve", &args)));
        }
    }
    let least = |a: Near, b: Near| if b.0 < a.0 { b } else { a };
    all.into_iter().filter(|n| n.0.is_finite()).reduce(least)
}

/// Distance from a place to an outline, mm; 0 on it.
fn gap(p: DVec2, line: &[DVec2]) -> f64 {
    if contains(line, p) {
        return 0.0;
    }
    to_edge(line, p)
}
