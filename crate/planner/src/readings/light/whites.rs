//! Which pale things are near clipping when the hero is exposed right.
//!
//! A meter set by the saturation-based speed of ISO 12232 leaves half a stop
//! above a perfect white in the light it is set for (from memory): 18% grey
//! comes out at 18%/√2 of full tone. So a thing clips where its tone times its
//! light over the hero's passes √2.
use super::super::finding::{Finding, Mark, State};
use super::super::rules::LIGHT_WHITES;
use super::super::study::Study;
use super::{Dish, dishes, on_top, reference, spared, stops};
use crate::catalogue;
use crate::colour::{lab, luminance_of};
use crate::layout::{Id, Item, Look, Part};
use crate::order;
use crate::scene::rise;
use crate::words::{Arg, listed, say};

/// A tone under this share of a part is a glint, which may clip; percent. Our
/// choice.
const GLINT: u8 = 20;

/// Stops between a perfect white in the hero's light and full tone.
const HEADROOM: f64 = 0.5;

/// Stops left before each pale thing clips, the least first.
fn left(study: &Study<'_>, found: &[Dish]) -> Vec<(Id, f64)> {
    let (layout, lit) = (study.layout(), study.lit());
    let reference = reference(study, found);
    let mut out: Vec<(Id, f64)> = Vec::new();
    let mut add = |id: Id, tone: f64, light: f64| {
        if let Some(over) = crate::light::stops(tone * light, reference) {
            out.push((id, HEADROOM - over));
        }
    };
    let inside = |item: &&Item| study.scene().frame.contains(item.at.vec());
    for item in layout.items.iter().filter(inside) {
        let tone = lightest(item);
        // What is under half of full tone clips at more than a stop over the
        // hero only, and is then no white.
        if tone >= 0.5 {
            add(item.id, tone, on_top(study, lit, item));
        }
    }
    // A white ground is what a high-key picture is after.
    if layout.head.look != Look::HighKey {
        for linen in &layout.linens {
            let at = linen.at.vec();
            if study.scene().frame.contains(at) {
                let tone = luminance_of(lab(linen.colour).l);
                if tone >= 0.5 {
                    add(linen.id, tone, lit.at(at.extend(0.0)));
                }
            }
        }
    }
    order::sort(&mut out, |a, b| a.1.total_cmp(&b.1).then(a.0.cmp(&b.0)));
    out
}

/// Relative luminance of the lightest tone of a thing that is no glint.
fn lightest(item: &Item) -> f64 {
    let parts = catalogue::shown_parts(item);
    let each = [&parts.rim, &parts.well, &parts.food];
    let tones = each
        .into_iter()
        .flatten()
        .flat_map(|part: &Part| part.colours.iter())
        .filter(|tone| tone.share >= GLINT);
    tones
        .map(|tone| luminance_of(lab(tone.srgb).l))
        .fold(0.0, f64::max)
}

/// Stops left before the first pale thing clips.
pub(super) fn least(study: &Study<'_>) -> Option<f64> {
    left(study, &dishes(study)).first().map(|l| l.1)
}

/// The finding: noted within half a stop, said when something clips.
pub(super) fn read(study: &Study<'_>, found: &[Dish], settled: bool) -> Option<Finding> {
    let near: Vec<(Id, f64)> = left(study, found)
        .into_iter()
        .filter(|l| l.1 < LIGHT_WHITES.edges[0])
        .collect();
    let figure = near.first()?.1;
    let clips = figure < LIGHT_WHITES.edges[1];
    let told: Vec<Id> = near
        .iter()
        .filter(|l| !clips || l.1 < LIGHT_WHITES.edges[1])
        .map(|l| l.0)
        .collect();
    let state = if clips {
        State::LookAgain
    } else {
        State::Holds
    };
    let key = "light:whites".into();
    let mut f = Finding::by(&LIGHT_WHITES, key, (state, 3), figure, told.clone());
    let layout = study.layout();
    f.marks = told
        .iter()
        .filter_map(|id| study.item(*id))
        .map(|item| {
            let [w, d] = item.size.extent();
            Mark::Ring {
                at: study
                    .scene()
                    .view
                    .project(item.at.vec(), rise(layout, item).top),
                radius: f64::from(w.max(d)) * 0.55,
            }
        })
        .collect();
    f.sentence = study.sentence(|| {
        let names = study.names(&told);
        let args = [
            ("stops", Arg::Text(stops(figure.abs()))),
            ("things", Arg::Text(listed(&names))),
        ];
        say(if clips { "light-clips" } else { "light-near" }, &args)
    });
    f.working = study.tell(|| {
        let mut lines = vec![say("working-light-whites", &[])];
        if clips {
            lines.push(say("working-light-lower", &[]));
        }
        lines
    });
    if settled && clips {
        f.remedy = study.remedy(&f.key, &|| spared::first(study, &f.key, &f.about, figure));
    }
    Some(f)
}
