//! What a crop cuts off or leaves out.
use super::super::finding::{Finding, State};
use super::super::rules::{CROP_CUT, CROP_GUTTER};
use super::super::study::Study;
use super::slide::slid;
use super::{Placed, item_box, line, shown};
use crate::layout::{Crop, Id};
use crate::order::sort;
use crate::shape::Bounds;
use crate::words::{Arg, length, listed, say};

/// How a thing stands in a crop.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(in super::super) enum Standing {
    /// All of it is shown.
    Whole,
    /// An edge takes this much of it, mm.
    Cut(f64),
    /// It is whole, but the gutter takes this much of it, mm.
    Gutter(f64),
    /// Nothing of it is shown; it reaches this far past an edge, mm.
    Out(f64),
}

/// How a thing stands in a crop; `None` for a thing there is not.
pub(in super::super) fn standing(study: &Study<'_>, crop: &Crop, id: Id) -> Option<Standing> {
    let placed = Placed::of(study.layout(), crop);
    let thing = item_box(study, id)?;
    let stands = stands(&placed.trim, thing);
    let caught = placed.strip().map_or(0.0, |strip| {
        thing.max.x.min(strip[1]) - thing.min.x.max(strip[0])
    });
    let whole = stands == Standing::Whole;
    Some(if whole && caught >= CROP_GUTTER.edges[0] {
        Standing::Gutter(caught)
    } else {
        stands
    })
}

fn stands(trim: &Bounds, thing: Bounds) -> Standing {
    let past = (trim.min - thing.min)
        .max(thing.max - trim.max)
        .max_element();
    if !thing.meets(*trim) {
        Standing::Out(past)
    } else if past < CROP_CUT.edges[0] {
        Standing::Whole
    } else {
        Standing::Cut(past)
    }
}

pub(super) fn read(study: &Study<'_>, placed: &Placed<'_>, settled: bool) -> Vec<Finding> {
    let mut out: Vec<Finding> = spoiled(study, placed, settled).into_iter().collect();
    out.push(overview(study, placed));
    out
}

/// Hero and must-show things that are not whole: one sentence for all.
fn spoiled(study: &Study<'_>, placed: &Placed<'_>, settled: bool) -> Option<Finding> {
    let crop = placed.crop;
    let mut cut: Vec<(Id, f64, bool)> = Vec::new();
    for id in placed.kept() {
        let Some(thing) = item_box(study, id) else {
            continue;
        };
        match stands(&placed.trim, thing) {
            Standing::Whole | Standing::Gutter(_) => {}
            Standing::Cut(past) => cut.push((id, past, false)),
            Standing::Out(past) => cut.push((id, past, true)),
        }
    }
    sort(&mut cut, |a, b| b.1.total_cmp(&a.1).then(a.0.cmp(&b.0)));
    let (chief, past, gone) = *cut.first()?;
    let must = cut.iter().any(|c| crop.must_show.contains(&c.0));
    let state = if must {
        (State::WontWork, 1)
    } else {
        (State::LookAgain, 2)
    };
    let sort = if cut.len() == 1 {
        format!("cut:{}", chief.0)
    } else {
        "cut".into()
    };
    let things: Vec<Id> = cut.iter().map(|c| c.0).collect();
    let mut f = placed.finding(&CROP_CUT, &sort, state, past, &things);
    let units = placed.layout.head.units;
    for (id, past, _) in &cut {
        if let Some(outline) = shown(study, *id) {
            let label = study.tell(|| length(*past, units));
            f.marks.extend(placed.lost(outline, &label));
        }
    }
    f.sentence = study.sentence(|| {
        let id = match (cut.len(), gone) {
            (1, true) => "crop-misses",
            (1, false) => "crop-cuts-must",
            _ => "crop-cuts-several",
        };
        let names = study.names(&things);
        let args = [
            ("crop", Arg::Name(crop.name.clone())),
            ("thing", Arg::Text(listed(&names))),
            ("over", Arg::Text(length(past, units))),
        ];
        say(id, &args)
    });
    f.working = study.tell(|| {
        let each = cut.iter().map(|c| line(study, c.0, &length(c.1, units)));
        std::iter::once(say("working-crop", &[]))
            .chain(each)
            .collect()
    });
    if settled {
        f.remedy = study.remedy(&f.key, &|| slid(study, placed, &f));
    }
    Some(f)
}

/// What becomes of every dish, as a note.
fn overview(study: &Study<'_>, placed: &Placed<'_>) -> Finding {
    let layout = placed.layout;
    let units = layout.head.units;
    let mut cut = Vec::new();
    let mut out = 0;
    for item in layout.items.iter().filter(|i| i.on.is_none()) {
        match item_box(study, item.id).map(|thing| stands(&placed.trim, thing)) {
            Some(Standing::Cut(past)) => cut.push((item.id, past)),
            Some(Standing::Out(_)) => out += 1,
            Some(Standing::Whole | Standing::Gutter(_)) | None => {}
        }
    }
    sort(&mut cut, |a: &(Id, f64), b| a.0.cmp(&b.0));
    let most = cut.iter().map(|c| c.1).fold(0.0, f64::max);
    let mut f = placed.finding(&CROP_CUT, "all", (State::Holds, 3), most, &[]);
    f.sentence = study.sentence(|| {
        let id = match (cut.len(), out) {
            (0, 0) => "crop-whole",
            (0, _) => "crop-leaves",
            (_, 0) => "crop-cuts",
            _ => "crop-cuts-leaves",
        };
        let args = [
            ("crop", Arg::Name(placed.crop.name.clone())),
            ("cut", Arg::Text(cut.len().to_string())),
            ("out", Arg::Text(out.to_string())),
        ];
        say(id, &args)
    });
    f.working = study.tell(|| {
        let each = cut.iter().map(|c| line(study, c.0, &length(c.1, units)));
        std::iter::once(say("working-crop", &[]))
            .chain(each)
            .collect()
    });
    f
}
