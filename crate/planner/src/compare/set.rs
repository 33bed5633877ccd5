//! What there is one of, and cards.
use super::{Said, Sides, Topic, instead, plain};
use crate::edit::Object;
use crate::layout::{Camera, Card, CardKind, Frame, Head, Light, Look, Rig, Table, Units};
use crate::words::{Arg, clock, rounded, say};

/// Tells what became of a card.
pub(super) fn card(sides: &mut Sides<'_>, old: Option<&Object>, new: Option<&Object>) {
    let named = |card: &Card| {
        let id = match card.kind {
            CardKind::White => "compare-card-white",
            CardKind::Black => "compare-card-black",
        };
        Arg::Text(say(id, &[]))
    };
    let (id, card) = match (old, new) {
        (Some(Object::Card(old)), Some(Object::Card(new))) => {
            let what = named(new);
            let start = sides.told.len();
            let half = new.turn.half_degrees() - old.turn.half_degrees();
            sides.tell_motion(Topic::Light, &[new.id], &what, [old.at, new.at], half);
            let mut told = Vec::new();
            if old.kind != new.kind {
                told.push(plain("compare-card"));
            }
            if (old.width, old.height) != (new.width, new.height) {
                told.push(plain("compare-light-size"));
            }
            sides.tell_all(Topic::Light, &[new.id], start, &what, told);
            return;
        }
        (Some(Object::Card(old)), _) => ("compare-gone", old),
        (_, Some(Object::Card(new))) => ("compare-new", new),
        _ => return,
    };
    sides.tell(Topic::Light, &[card.id], id, &[("what", named(card))]);
}

/// Tells what became of what there is one of.
pub(super) fn single(sides: &mut Sides<'_>, old: &Object, new: &Object) {
    match (old, new) {
        (Object::Head(old), Object::Head(new)) => head(sides, old, new),
        (Object::Table(old), Object::Table(new)) => table(sides, old, new),
        (Object::Frame(old), Object::Frame(new)) => frame(sides, old, new),
        (Object::Camera(old), Object::Camera(new)) => camera(sides, old, new),
        (Object::Rig(old), Object::Rig(new)) => rig(sides, old, new),
        (Object::Light(old), Object::Light(new)) => light(sides, old, new),
        (Object::Floor(old), Object::Floor(new)) => {
            let mut told = Vec::new();
            if old.colour != new.colour {
                told.push(plain("compare-colour"));
            }
            sides.tell_one(Topic::Table, "compare-floor", told);
        }
        (Object::Dates(_), Object::Dates(_)) => {
            sides.tell(Topic::Plan, &[], "compare-dates", &[]);
        }
        (Object::Intended(_), Object::Intended(_)) => {
            sides.tell(Topic::Plan, &[], "compare-intended", &[]);
        }
        _ => {}
    }
}

impl Sides<'_> {
    /// Tells these of the one thing of this name.
    fn tell_one(&mut self, topic: Topic, name: &str, told: Vec<Said<'_>>) {
        let start = self.told.len();
        self.tell_all(topic, &[], start, &Arg::Text(say(name, &[])), told);
    }
}

fn head(sides: &mut Sides<'_>, old: &Head, new: &Head) {
    if old.title != new.title {
        let title = [("title", Arg::Name(new.title.clone()))];
        sides.tell(Topic::Head, &[], "compare-title", &title);
    }
    if old.client != new.client {
        sides.tell(Topic::Head, &[], "compare-client", &[]);
    }
    if old.note != new.note {
        sides.tell(Topic::Head, &[], "compare-note", &[]);
    }
    if old.look != new.look {
        let id = match new.look {
            Look::LowKey => "compare-low-key",
            Look::Normal => "compare-normal",
            Look::HighKey => "compare-high-key",
        };
        sides.tell(Topic::Head, &[], id, &[]);
    }
    if old.units != new.units {
        let id = match new.units {
            Units::Cm => "compare-cm",
            Units::In => "compare-in",
        };
        sides.tell(Topic::Plan, &[], id, &[]);
    }
}

fn table(sides: &mut Sides<'_>, old: &Table, new: &Table) {
    let mut told = Vec::new();
    let size = |t: &Table| [t.width, t.depth];
    if size(old) != size(new) {
        told.push(instead(
            "compare-instead",
            [old, new].map(|t| sides.sides_of(size(t))),
        ));
    }
    if (old.shape, old.corner) != (new.shape, new.corner) {
        told.push(plain("compare-outline"));
    }
    if old.height != new.height {
        told.push(instead(
            "compare-high",
            sides.lengths(old.height, new.height),
        ));
    }
    let (a, b) = (&old.surface, &new.surface);
    if (&a.prop, &a.name) != (&b.prop, &b.name) {
        let named = [a, b].map(|s| {
            let name = if s.name.is_empty() {
                say("ground-board", &[])
            } else {
                s.name.clone()
            };
            Arg::Name(name)
        });
        told.push(instead("compare-surface", named));
    } else {
        if a.colour != b.colour {
            told.push(plain("compare-colour"));
        }
        if a.finish != b.finish {
            told.push(plain("compare-shine"));
        }
    }
    sides.tell_one(Topic::Table, "compare-table", told);
}

fn frame(sides: &mut Sides<'_>, old: &Frame, new: &Frame) {
    let what = Arg::Text(say("compare-frame", &[]));
    let start = sides.told.len();
    let half = new.turn.half_degrees() - old.turn.half_degrees();
    sides.tell_motion(Topic::Camera, &[], &what, [old.at, new.at], half);
    let mut told = Vec::new();
    if old.width != new.width {
        told.push(instead("compare-wide", sides.lengths(old.width, new.width)));
    }
    if old.ratio != new.ratio {
        let ratios = [old.ratio, new.ratio].map(|r| Arg::Text(super::picture::ratio(r)));
        told.push(instead("compare-instead", ratios));
    }
    sides.tell_all(Topic::Camera, &[], start, &what, told);
}

fn camera(sides: &mut Sides<'_>, old: &Camera, new: &Camera) {
    let mut told = Vec::new();
    if old.format != new.format {
        told.push(plain("compare-format"));
    }
    if old.focal != new.focal {
        let focal = [old.focal, new.focal].map(|mm| Arg::Text(mm.to_string()));
        told.push(instead("compare-lens", focal));
    }
    if old.aperture != new.aperture {
        let stop = |tenths: i32| Arg::Text(rounded(f64::from(tenths) * 0.1));
        told.push(instead(
            "compare-stop",
            [old.aperture, new.aperture].map(stop),
        ));
    }
    if old.focus_height != new.focus_height {
        told.push(plain("compare-focus"));
    }
    if old.pixels != new.pixels {
        told.push(plain("compare-pixels"));
    }
    if old.lenses != new.lenses {
        told.push(plain("compare-lenses"));
    }
    sides.tell_one(Topic::Camera, "compare-camera", told);
}

fn rig(sides: &mut Sides<'_>, old: &Rig, new: &Rig) {
    let start = sides.told.len();
    for (name, from, to) in [
        ("compare-stand", old.at, new.at),
        ("compare-photographer", old.photographer, new.photographer),
    ] {
        let what = Arg::Text(say(name, &[]));
        match (from, to) {
            (Some(from), Some(to)) => {
                sides.tell_motion(Topic::Rig, &[], &what, [from, to], 0);
            }
            (None, Some(_)) => sides.tell(Topic::Rig, &[], "compare-placed", &[("what", what)]),
            (Some(_), None) => sides.tell(Topic::Rig, &[], "compare-unplaced", &[("what", what)]),
            (None, None) => {}
        }
    }
    let mut told = Vec::new();
    if old.ceiling != new.ceiling {
        let ceiling = sides.lengths(old.ceiling, new.ceiling);
        told.push(instead("compare-ceiling", ceiling));
    }
    if old.kind != new.kind {
        told.push(plain("compare-rig-kind"));
    }
    let mut rest = old.clone();
    rest.ceiling = new.ceiling;
    rest.kind = new.kind;
    (rest.at, rest.photographer) = (new.at, new.photographer);
    if rest != *new {
        told.push(plain("compare-rig"));
    }
    let what = Arg::Text(say("compare-camera", &[]));
    sides.tell_all(Topic::Rig, &[], start, &what, told);
}

fn light(sides: &mut Sides<'_>, old: &Light, new: &Light) {
    let mut told = Vec::new();
    if old.clock != new.clock {
        // As the picture shows it, which may be turned.
        let hour = |l: &Light| clock(l.clock.degrees() - sides.after.frame.turn.degrees());
        told.push(instead(
            "compare-from",
            [old, new].map(|l| Arg::Text(hour(l))),
        ));
    }
    if old.distance != new.distance {
        told.push(instead(
            "compare-away",
            sides.lengths(old.distance, new.distance),
        ));
    }
    if old.height_above_table != new.height_above_table {
        let above = sides.lengths(old.height_above_table, new.height_above_table);
        told.push(instead("compare-above", above));
    }
    if (old.shape, old.width, old.height) != (new.shape, new.width, new.height) {
        told.push(plain("compare-light-size"));
    }
    sides.tell_one(Topic::Light, "compare-light", told);
}
