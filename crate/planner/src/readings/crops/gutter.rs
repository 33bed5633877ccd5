//! What falls into the gutter of a double page.
use glam::DVec2;

use super::super::finding::{Finding, Remedy, State};
use super::super::remedies::{stack_moved, stands_clear};
use super::super::rules::CROP_GUTTER;
use super::super::study::Study;
use super::slide::{KEEP_CLEAR, slid};
use super::{Placed, boxed, item_box, laid_down, line, on_table, overruns, shown, spoils};
use crate::edit::Edit;
use crate::layout::{Id, Layout, Role};
use crate::order::sort;
use crate::scene::root;
use crate::shape::{Bounds, Region, intersection};
use crate::words::{Arg, length, listed, say};

/// A thing of which some lies in the gutter.
struct Caught {
    id: Id,
    outline: Vec<DVec2>,
    /// How much of its width the strip takes, mm.
    over: f64,
    /// Whether it is what the picture is about.
    chief: bool,
}

pub(super) fn read(study: &Study<'_>, placed: &Placed<'_>, settled: bool) -> Vec<Finding> {
    let Some(strip) = placed.strip() else {
        return Vec::new();
    };
    let mut out: Vec<Finding> = copy(study, placed, strip).into_iter().collect();
    let caught = caught(study, placed, strip);
    let Some(first) = caught.first() else {
        return out;
    };
    let units = placed.layout.head.units;
    let chief = caught.iter().any(|c| c.chief);
    let sort = if caught.len() == 1 {
        format!("gutter:{}", first.id.0)
    } else {
        "gutter".into()
    };
    let things: Vec<Id> = caught.iter().map(|c| c.id).collect();
    let state = (State::LookAgain, if chief { 2 } else { 3 });
    let mut f = placed.finding(&CROP_GUTTER, &sort, state, first.over, &things);
    let lines = Bounds {
        min: DVec2::new(strip[0], placed.trim.min.y),
        max: DVec2::new(strip[1], placed.trim.max.y),
    };
    let lines = Region::from_polygon(&on_table(placed.layout, lines)).unwrap_or_default();
    for c in &caught {
        let label = study.tell(|| length(c.over, units));
        let inside = Region::from_polygon(&c.outline).and_then(|r| intersection(&r, &lines));
        f.marks
            .extend(overruns(&inside.unwrap_or_default(), &label));
    }
    f.sentence = study.sentence(|| {
        let names = study.names(&things);
        let id = match caught.len() {
            1 if study.item(first.id).is_none() => "crop-gutter-hand",
            1 => "crop-gutter",
            _ => "crop-gutter-several",
        };
        let args = [
            ("crop", Arg::Name(placed.crop.name.clone())),
            ("thing", Arg::Text(listed(&names))),
            ("over", Arg::Text(length(first.over, units))),
        ];
        say(id, &args)
    });
    f.working = study.tell(|| {
        let each = caught
            .iter()
            .map(|c| line(study, c.id, &length(c.over, units)));
        std::iter::once(say("working-crop-gutter", &[]))
            .chain(each)
            .collect()
    });
    if settled {
        f.remedy = study.remedy(&f.key, &|| {
            slid(study, placed, &f).or_else(|| match caught.as_slice() {
                [one] => aside(study, placed, one.id, (strip, &f.key)),
                _ => None,
            })
        });
    }
    out.push(f);
    out
}

/// Heroes, main dishes, must-show things and hands in the strip, the one that
/// loses most first.
fn caught(study: &Study<'_>, placed: &Placed<'_>, strip: [f64; 2]) -> Vec<Caught> {
    let layout = placed.layout;
    let mut out: Vec<Caught> = Vec::new();
    let mut look = |id: Id, chief: bool| {
        let Some(outline) = shown(study, id) else {
            return;
        };
        let Some(b) = boxed(layout, outline).filter(|b| b.meets(placed.trim)) else {
            return;
        };
        let over = b.max.x.min(strip[1]) - b.min.x.max(strip[0]);
        if over >= CROP_GUTTER.edges[0] {
            out.push(Caught {
                id,
                outline: outline.to_vec(),
                over,
                chief,
            });
        }
    };
    let kept = placed.kept();
    for item in &layout.items {
        let main = matches!(item.role, Role::Hero | Role::Support);
        if main || kept.contains(&item.id) {
            look(item.id, item.role == Role::Hero);
        }
    }
    for hand in &layout.hands {
        look(hand.id, true);
    }
    // Food that is caught with its dish is not told twice.
    let roots: Vec<Id> = out.iter().map(|c| c.id).collect();
    out.retain(|c| {
        let below = root(study.layout(), c.id);
        below == c.id || !roots.contains(&below)
    });
    sort(&mut out, |a, b| {
        b.over.total_cmp(&a.over).then(a.id.cmp(&b.id))
    });
    out
}

/// The headline in the gutter.
fn copy(study: &Study<'_>, placed: &Placed<'_>, strip: [f64; 2]) -> Option<Finding> {
    let area = placed.copy()?;
    let over = area.max.x.min(strip[1]) - area.min.x.max(strip[0]);
    if over < CROP_GUTTER.edges[0] {
        return None;
    }
    let units = placed.layout.head.units;
    let state = (State::LookAgain, 2);
    let mut f = placed.finding(&CROP_GUTTER, "gutter:copy", state, over, &[]);
    let both = Bounds {
        min: DVec2::new(area.min.x.max(strip[0]), area.min.y),
        max: DVec2::new(area.max.x.min(strip[1]), area.max.y),
    };
    let outline = on_table(placed.layout, both);
    let label = study.tell(|| length(over, units));
    f.marks = vec![super::Mark::Overrun { outline, label }];
    f.sentence = study.sentence(|| {
        let crop = Arg::Name(placed.crop.name.clone());
        say("crop-gutter-copy", &[("crop", crop)])
    });
    f.working = study.tell(|| vec![say("working-crop-gutter", &[])]);
    Some(f)
}

/// The dish moved out of the strip by the shorter way, when it stands clear
/// there and the crop still shows it.
fn aside(
    study: &Study<'_>,
    placed: &Placed<'_>,
    id: Id,
    (strip, key): ([f64; 2], &str),
) -> Option<Remedy> {
    let layout = placed.layout;
    let stack = root(layout, id);
    let item = study.item(stack).filter(|i| !i.locked)?;
    let b = item_box(study, stack)?;
    let mut ways = [
        strip[0] - b.max.x - KEEP_CLEAR,
        strip[1] - b.min.x + KEEP_CLEAR,
    ];
    sort(&mut ways, |a, b| a.abs().total_cmp(&b.abs()));
    ways.into_iter().find_map(|by| {
        let there = b.min.x + by >= placed.trim.min.x && b.max.x + by <= placed.trim.max.x;
        let shift = laid_down(layout, DVec2::new(by, 0.0));
        if !there || !stands_clear(study, stack, shift) {
            return None;
        }
        let after = stack_moved(layout, stack, shift);
        if spoils(study, &after) || still(study, placed, &after, key) {
            return None;
        }
        let args = [
            ("thing", Arg::Name(study.name(item.id))),
            ("by", Arg::Text(length(by.abs(), layout.head.units))),
        ];
        let act = if by < 0.0 {
            "act-move-left"
        } else {
            "act-move-right"
        };
        let room = Arg::Text(length(KEEP_CLEAR, layout.head.units));
        Some(Remedy {
            act: say(act, &args),
            predicted: say("clear-by", &[("room", room)]),
            after: 0.0,
            edit: Edit::between(layout, &after),
        })
    })
}

/// Whether the gutter of this crop still says so after a change.
fn still(study: &Study<'_>, placed: &Placed<'_>, after: &Layout, key: &str) -> bool {
    let changed = study.changed(after);
    let placed = Placed::of(after, placed.crop);
    read(&changed, &placed, false).iter().any(|f| f.key == key)
}
