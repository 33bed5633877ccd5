//! The day of the shoot, one step at a time: the set made ready, what changes
//! before each exposure, the exposure itself, the look over everything before
//! the strike, and the strike.
//!
//! The order is the running order's; what is to be seen to before and after is
//! common practice, no source.
use serde::Serialize;

use super::running_order::{Turn, carried, running_order};
use crate::exposures::{OnSet, Shot, running};
use crate::layout::{Exposure, Id, Item, Layout};
use crate::readings::{Concern, Study, cautions};
use crate::scene::exposure_name;
use crate::words::{Arg, place, say};

/// What a step is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum StepKind {
    /// Before the first exposure.
    Ready,
    /// What is carried and which food goes in before an exposure.
    Change,
    /// One exposure.
    Shoot,
    /// Before anything is taken away.
    Review,
    /// Afterwards.
    Strike,
}

/// Food that does not keep, from the moment it stands there.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Lasting {
    /// Which thing.
    pub item: Id,
    /// What it is called.
    pub name: String,
    /// How long it looks right, minutes.
    pub minutes: i32,
}

/// One thing to be done, with a box to tick.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Tick {
    /// The same for the same thing, however the layout changes.
    pub key: String,
    /// What is to be done.
    pub text: String,
    /// The food whose time begins when this is ticked.
    pub lasting: Option<Lasting>,
}

/// One step.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Step {
    /// The same for the same step, however the layout changes.
    pub key: String,
    /// What it is for.
    pub kind: StepKind,
    /// The exposure it leads to or is.
    pub exposure: Option<Id>,
    /// What is to be done, in a few words.
    pub title: String,
    /// When it begins and ends by the running order; empty outside it.
    pub time: String,
    /// Who, from where and with which hand, or what to take care of.
    pub lines: Vec<String>,
    /// Food on the set that does not keep, and by when it is to be shot.
    pub due: Vec<String>,
    /// What is to be done one by one.
    pub ticks: Vec<Tick>,
}

/// Seen to before the first exposure, on a table with exposures.
const READY: [&str; 7] = [
    "ready-laid",
    "ready-camera",
    "ready-settings",
    "ready-marks",
    "ready-taped",
    "ready-reach",
    "ready-release",
];
/// Seen to before the strike, beside each exposure and crop.
const REVIEW: [&str; 2] = ["review-clean", "review-copied"];
/// Seen to at the strike.
const STRIKE: [&str; 3] = ["strike-heat", "strike-props", "strike-food"];

/// The steps of a layout's day; none without exposures.
#[must_use]
pub fn steps(layout: &Layout) -> Vec<Step> {
    if layout.exposures.is_empty() {
        return Vec::new();
    }
    let study = Study::new(layout);
    let (run, order) = (running(layout), running_order(layout));
    let mut out = vec![plain(layout, StepKind::Ready, "step-ready", &READY)];
    for ((own, shot), turn) in layout.exposures.iter().zip(&run.shots).zip(&order.turns) {
        out.extend(change(&study, own, shot, &run.foods));
        out.push(shoot(turn));
    }
    let mut review = plain(layout, StepKind::Review, "step-review", &REVIEW);
    let each = layout.exposures.iter().map(|own| {
        let name = Arg::Text(exposure_name(layout, own.id));
        let key = format!("review-{}", own.id.0);
        tick(key, say("review-exposure", &[("exposure", name)]))
    });
    let crops = layout.crops.iter().map(|crop| {
        let name = Arg::Name(crop.name.clone());
        let key = format!("review-{}", crop.id.0);
        tick(key, say("review-crop", &[("crop", name)]))
    });
    let all: Vec<Tick> = each.chain(crops).collect();
    review.ticks.splice(0..0, all);
    out.push(review);
    out.push(plain(layout, StepKind::Strike, "step-strike", &STRIKE));
    out
}

fn tick(key: String, text: String) -> Tick {
    Tick {
        key,
        text,
        lasting: None,
    }
}

/// A step outside the exposures, with what to take care of in it.
fn plain(layout: &Layout, kind: StepKind, key: &str, ticks: &[&str]) -> Step {
    let concerns: &[Concern] = match kind {
        StepKind::Ready => &[Concern::Camera, Concern::Table],
        StepKind::Strike => &[Concern::Food],
        _ => &[],
    };
    let care = cautions(layout).into_iter();
    let care = care.filter(|caution| concerns.contains(&caution.concern));
    Step {
        key: key.into(),
        kind,
        exposure: None,
        title: say(key, &[]),
        time: String::new(),
        lines: care.map(|caution| caution.line).collect(),
        due: Vec::new(),
        ticks: ticks
            .iter()
            .map(|id| tick((*id).into(), say(id, &[])))
            .collect(),
    }
}

/// What changes before an exposure; nothing when nothing does.
fn change(study: &Study<'_>, own: &Exposure, shot: &Shot, foods: &[OnSet]) -> Option<Step> {
    let layout = study.layout();
    let moved = carried(study, own, &shot.carried).into_iter();
    let mut ticks: Vec<Tick> = moved
        .enumerate()
        .map(|(n, text)| tick(format!("carry-{}-{n}", own.id.0), text))
        .collect();
    let due = |food: &&OnSet| food.from == shot.from;
    let told = foods.iter().filter(due).filter_map(|food| {
        let item = study.item(food.item)?;
        let swapped = shot.swapped.contains(&food.item);
        (swapped || food.hold.is_some()).then(|| serve(study, item, swapped, food, own.id))
    });
    ticks.extend(told);
    let exposure = exposure_name(layout, own.id);
    (!ticks.is_empty()).then(|| Step {
        key: format!("change-{}", own.id.0),
        kind: StepKind::Change,
        exposure: Some(own.id),
        title: say("step-change", &[("exposure", Arg::Text(exposure))]),
        time: String::new(),
        lines: Vec::new(),
        due: Vec::new(),
        ticks,
    })
}

/// Real food that goes in, in place of what stood in for it or new.
fn serve(study: &Study<'_>, item: &Item, swapped: bool, food: &OnSet, exposure: Id) -> Tick {
    let hold = food.hold.map(|(minutes, _)| minutes);
    let id = match (swapped, hold.is_some()) {
        (true, true) => "serve-swap-hold",
        (true, false) => "serve-swap",
        (false, _) => "serve-hold",
    };
    let name = study.name(item.id);
    let args = [
        ("thing", Arg::Name(name.clone())),
        ("stand_in", Arg::Name(item.stand_in.clone())),
        ("place", Arg::Text(place(item.at, &study.layout().frame))),
        ("minutes", Arg::Text(hold.unwrap_or(0).to_string())),
    ];
    Tick {
        key: format!("serve-{}-{}", exposure.0, item.id.0),
        text: say(id, &args),
        lasting: hold.map(|minutes| Lasting {
            item: item.id,
            name,
            minutes,
        }),
    }
}

fn shoot(turn: &Turn) -> Step {
    let told = [&turn.who, &turn.solo];
    Step {
        key: format!("shoot-{}", turn.exposure.0),
        kind: StepKind::Shoot,
        exposure: Some(turn.exposure),
        title: say("step-shoot", &[("exposure", Arg::Text(turn.name.clone()))]),
        time: format!("{}–{}", turn.from, turn.to),
        lines: told.into_iter().flatten().cloned().collect(),
        due: turn.food.clone(),
        ticks: Vec::new(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::layout::{As, Extra, LayoutId, State, open};

    fn supper() -> Layout {
        let file = include_str!("../../../../static/starters/harbour-supper.spread.json");
        open(file).expect("a sound file")
    }

    #[test]
    fn every_exposure_is_shot_in_order_after_what_changes_before_it() {
        let layout = supper();
        let day = steps(&layout);
        let shot: Vec<Id> = day
            .iter()
            .filter(|s| s.kind == StepKind::Shoot)
            .filter_map(|s| s.exposure)
            .collect();
        let wanted: Vec<Id> = layout.exposures.iter().map(|e| e.id).collect();
        assert_eq!(shot, wanted, "each once, in the order told");
        let kinds: Vec<StepKind> = day.iter().map(|s| s.kind).collect();
        assert_eq!(kinds.first(), Some(&StepKind::Ready));
        assert_eq!(
            kinds[kinds.len() - 2..],
            [StepKind::Review, StepKind::Strike]
        );
        for (n, step) in day.iter().enumerate() {
            if step.kind == StepKind::Change {
                assert_eq!(day[n + 1].kind, StepKind::Shoot, "{}", step.title);
                assert_eq!(day[n + 1].exposure, step.exposure, "{}", step.title);
            }
        }
        let mut keys: Vec<&str> = day.iter().map(|s| s.key.as_str()).collect();
        keys.extend(day.iter().flat_map(|s| &s.ticks).map(|t| t.key.as_str()));
        let all = keys.len();
        keys.sort_unstable();
        keys.dedup();
        assert_eq!(keys.len(), all, "no key twice");
        assert!(
            steps(&Layout::empty(LayoutId(1))).is_empty(),
            "no exposures"
        );
    }

    #[test]
    fn a_stand_in_is_swapped_once_and_its_food_begins_to_age_then() {
        let mut layout = supper();
        let mussels = layout.items.iter_mut().find(|i| i.prop == "mussels");
        let mussels = mussels.expect("mussels");
        mussels.stand_in = "black pebbles".into();
        mussels.hold_minutes = Some(25);
        let id = mussels.id;
        let serving = |layout: &Layout| -> Vec<(Option<Id>, Tick)> {
            let all = steps(layout).into_iter();
            all.flat_map(|s| s.ticks.into_iter().map(move |t| (s.exposure, t)))
                .filter(|(_, t)| t.lasting.as_ref().is_some_and(|l| l.item == id))
                .collect()
        };
        let found = serving(&layout);
        let [(before, tick)] = &found[..] else {
            panic!("once: {found:?}");
        };
        assert_eq!(tick.lasting.as_ref().map(|l| l.minutes), Some(25));
        assert!(tick.text.contains("black pebbles"), "{}", tick.text);
        // Not wanted in the first exposure, it goes in before a later one.
        let first = before.expect("before an exposure");
        let own = layout.exposures.iter_mut().find(|e| e.id == first);
        own.expect("one of them").states.push(State {
            item: id,
            is: As::Absent,
            at: None,
            turn: None,
            parts: None,
            extra: Extra::new(),
        });
        let later = serving(&layout);
        assert_eq!(later.len(), 1, "still once");
        assert_ne!(later[0].0, Some(first), "before the next that shows it");
    }
}
