//! Exposures and crops.
use super::{Said, Sides, Topic, instead, plain};
use crate::edit::Object;
use crate::layout::{As, Crop, CropShape, Exposure, Id, Ratio, State};
use crate::scene::exposure_name;
use crate::words::{Arg, say};

/// Tells what became of an exposure.
pub(super) fn exposure(sides: &mut Sides<'_>, old: Option<&Object>, new: Option<&Object>) {
    let named = |layout, id| ("exposure", Arg::Text(exposure_name(layout, id)));
    let (id, exposure, name) = match (old, new) {
        (Some(Object::Exposure(old)), Some(Object::Exposure(new))) => {
            both(sides, old, new);
            return;
        }
        (Some(Object::Exposure(old)), _) => {
            ("compare-exposure-gone", old.id, named(sides.before, old.id))
        }
        (_, Some(Object::Exposure(new))) => {
            ("compare-exposure-new", new.id, named(sides.after, new.id))
        }
        _ => return,
    };
    sides.tell(Topic::Exposure, &[exposure], id, &[name]);
}

fn both(sides: &mut Sides<'_>, old: &Exposure, new: &Exposure) {
    let start = sides.told.len();
    let name = Arg::Text(exposure_name(sides.after, new.id));
    if old.kind != new.kind {
        let before = Arg::Text(exposure_name(sides.before, old.id));
        let args = [("before", before), ("after", name.clone())];
        sides.tell(Topic::Exposure, &[new.id], "compare-exposure-kind", &args);
    } else if old.takes() != new.takes() {
        let [before, after] = [old, new].map(|e| Arg::Text(e.takes().to_string()));
        let args = [
            ("before", before),
            ("after", after),
            ("exposure", name.clone()),
        ];
        sides.tell(Topic::Exposure, &[new.id], "compare-exposure-takes", &args);
    }
    let mut items: Vec<Id> = [old, new]
        .map(|e| e.states.iter().map(|s| s.item))
        .into_iter()
        .flatten()
        .collect();
    crate::order::sort(&mut items, Ord::cmp);
    items.dedup();
    for item in items {
        let of = |e: &Exposure| -> Vec<State> {
            e.states
                .iter()
                .filter(|s| s.item == item)
                .cloned()
                .collect()
        };
        let (then, now) = (of(old), of(new));
        if then == now {
            continue;
        }
        let is = now.first().map_or(As::Set, |s| s.is);
        let id = match is {
            As::Set => "compare-in-set",
            As::Absent => "compare-in-absent",
            As::Moved => "compare-in-moved",
            As::Changed => "compare-in-changed",
        };
        let thing = sides.after.items.iter().chain(&sides.before.items);
        let what = thing.into_iter().find(|o| o.id == item);
        let what = what.map_or_else(|| Arg::Text(say("name-thing", &[])), super::things::what);
        let told = say(id, &[("what", what), ("exposure", name.clone())]);
        let at = |states: &[State]| states.first().and_then(|s| s.at);
        let path = at(&then).zip(at(&now)).filter(|(a, b)| a != b);
        let path = path.map(|(from, to)| [from, to]);
        sides.put(Topic::Exposure, &[new.id, item], told, path);
    }
    let rest = (&old.extra, old.minutes) != (&new.extra, new.minutes);
    if rest && sides.told.len() == start {
        let args = [("exposure", name)];
        sides.tell(Topic::Exposure, &[new.id], "compare-exposure-else", &args);
    }
}

/// Tells what became of a crop.
pub(super) fn crop(sides: &mut Sides<'_>, old: Option<&Object>, new: Option<&Object>) {
    let named = |crop: &Crop| {
        let thing = ("thing", super::things::called(&crop.name));
        Arg::Text(say("compare-quoted", &[thing]))
    };
    let (id, crop) = match (old, new) {
        (Some(Object::Crop(old)), Some(Object::Crop(new))) => {
            let what = named(new);
            changed(sides, old, new, what);
            return;
        }
        (Some(Object::Crop(old)), _) => ("compare-gone", old),
        (_, Some(Object::Crop(new))) => ("compare-new", new),
        _ => return,
    };
    sides.tell(Topic::Crop, &[crop.id], id, &[("what", named(crop))]);
}

fn changed(sides: &mut Sides<'_>, old: &Crop, new: &Crop, what: Arg) {
    let start = sides.told.len();
    if old.at != new.at {
        let path = [old.at, new.at];
        let told = sides.moved("compare-slid", &what, path);
        sides.put(Topic::Crop, &[new.id], told, Some(path));
    }
    let mut told: Vec<Said<'_>> = Vec::new();
    if old.name != new.name {
        told.push((
            "compare-renamed",
            vec![("thing", Arg::Name(new.name.clone()))],
        ));
    }
    if old.shape != new.shape {
        let [before, after] = [old.shape, new.shape].map(shape);
        told.push(instead("compare-instead", [before, after]));
    }
    if old.width != new.width {
        told.push(instead("compare-wide", sides.lengths(old.width, new.width)));
    }
    if (old.bleed, old.safe, old.gutter) != (new.bleed, new.safe, new.gutter) {
        told.push(plain("compare-margins"));
    }
    match (&old.copy, &new.copy) {
        (None, Some(_)) => told.push(plain("compare-copy-new")),
        (Some(_), None) => told.push(plain("compare-copy-gone")),
        (Some(old), Some(new)) => {
            if old.area != new.area {
                told.push(plain("compare-copy"));
            }
            if old.wording != new.wording {
                told.push(plain("compare-wording"));
            }
        }
        (None, None) => {}
    }
    if old.must != new.must {
        let id = if new.must {
            "compare-must"
        } else {
            "compare-nice"
        };
        told.push((id, Vec::new()));
    }
    let apart = |a: &[Id], b: &[Id]| a.iter().any(|id| !b.contains(id));
    if apart(&old.must_show, &new.must_show) || apart(&new.must_show, &old.must_show) {
        told.push(plain("compare-show"));
    }
    sides.tell_all(Topic::Crop, &[new.id], start, &what, told);
}

/// A ratio as it is said.
pub(super) fn ratio(ratio: Ratio) -> String {
    ratio.width.to_string() + ":" + &ratio.height.to_string()
}

fn shape(shape: CropShape) -> Arg {
    Arg::Text(match shape {
        CropShape::Ratio(shape) => ratio(shape),
        CropShape::Print([width, depth]) => {
            let args = [("width", width), ("depth", depth)];
            say(
                "compare-print",
                &args.map(|(k, mm)| (k, Arg::Text(mm.to_string()))),
            )
        }
    })
}
