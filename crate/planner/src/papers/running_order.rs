//! The running order: exposure by exposure when, who, which hand, from where,
//! what is carried, which food must be shot by when, and where one who is
//! alone goes.
use serde::Serialize;

use crate::exposures::{
    Founded, OnSet, Running, Shot, Solo, held_in, hold_of, running, solo, state_of,
};
use crate::layout::{As, Exposure, Id, Layout, Side};
use crate::readings::Study;
use crate::scene::{exposure_name, letter, seat_of};
use crate::seats::stand_at;
use crate::words::{Arg, hour, length, listed, running_time, say};

/// One exposure's turn.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Turn {
    /// Which exposure.
    pub exposure: Id,
    /// As it is called.
    pub name: String,
    /// When it begins and ends, from the first exposure on.
    pub from: String,
    /// Its end.
    pub to: String,
    /// How long it takes, minutes.
    pub minutes: i32,
    /// Whose hands, which, and from where.
    pub who: Vec<String>,
    /// What is taken away, put back, moved or swapped in before it.
    pub props: Vec<String>,
    /// Food on the set that does not keep, and by when it is to be shot.
    pub food: Vec<String>,
    /// Whether some of that is past its time before the exposure ends.
    pub late: bool,
    /// What somebody does who is alone.
    pub solo: Vec<String>,
}

/// How long food lasts.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Lasts {
    /// Which thing.
    pub item: Id,
    /// What it is called.
    pub name: String,
    /// How long it looks right, minutes; none for what keeps.
    pub hold: Option<i32>,
    /// Whether that was told of this very thing.
    pub told: bool,
    /// What stands in for it; empty for real food from the start.
    pub stand_in: String,
    /// When it goes on the set.
    pub from: String,
    /// When the last exposure that shows it ends.
    pub last: String,
    /// Whether it lasts so long.
    pub late: bool,
}

/// The whole paper.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
pub struct RunningOrder {
    /// The exposures in the order they are told in.
    pub turns: Vec<Turn>,
    /// The food.
    pub food: Vec<Lasts>,
    /// How long it all takes.
    pub length: String,
}

/// The running order of a layout.
#[must_use]
pub fn running_order(layout: &Layout) -> RunningOrder {
    let study = Study::new(layout);
    let run = running(layout);
    let alone = solo(layout);
    let all = &layout.exposures;
    let turns = run
        .shots
        .iter()
        .zip(all)
        .enumerate()
        .map(|(n, (shot, own))| {
            let (food, late) = food(&study, &run, shot);
            let mut props = carried(&study, own, &shot.carried);
            props.extend(sentence(&study, "order-swap", &shot.swapped));
            let step = alone.iter().find(|step| step.exposure == own.id);
            let before = alone.iter().take_while(|step| step.exposure != own.id);
            let first = n == 0 || before.count() == 0;
            Turn {
                exposure: own.id,
                name: exposure_name(layout, own.id),
                from: running_time(shot.from),
                to: running_time(shot.to),
                minutes: own.takes(),
                who: who(layout, own.id),
                props,
                food,
                late,
                solo: step.map_or_else(Vec::new, |step| spoken(layout, step, first)),
            }
        });
    RunningOrder {
        turns: turns.collect(),
        food: run.foods.iter().map(|food| lasts(&study, food)).collect(),
        length: running_time(run.length),
    }
}

fn things(study: &Study<'_>, ids: &[Id]) -> Arg {
    let names: Vec<String> = ids.iter().map(|id| study.name(*id)).collect();
    Arg::Text(listed(&names))
}

fn sentence(study: &Study<'_>, id: &str, ids: &[Id]) -> Option<String> {
    (!ids.is_empty()).then(|| say(id, &[("things", things(study, ids))]))
}

/// Whose hands are in it: each person once, from where they are.
fn who(layout: &Layout, exposure: Id) -> Vec<String> {
    let own = || layout.hands.iter().filter(|h| h.exposure == exposure);
    let mut out: Vec<String> = Vec::new();
    for hand in own() {
        let from = seat_of(layout, hand).map_or(hand.entry, |seat| seat.at);
        let both = own().any(|other| other.person == hand.person && other.side != hand.side);
        let id = match (both, hand.side) {
            (true, _) => "order-hands-both",
            (false, Side::Left) => "order-hand-left",
            (false, Side::Right) => "order-hand-right",
        };
        let args = [
            ("person", Arg::Text(letter(layout, hand.person).to_string())),
            ("clock", Arg::Text(hour(from.vec(), &layout.frame))),
        ];
        let line = say(id, &args);
        if !out.contains(&line) {
            out.push(line);
        }
    }
    out
}

/// What is done with the things that are carried before an exposure.
pub(super) fn carried(study: &Study<'_>, own: &Exposure, ids: &[Id]) -> Vec<String> {
    let layout = study.layout();
    let held = |id: &Id| held_in(layout, own.id, *id).next().is_some();
    let so = |wanted: &dyn Fn(&Id) -> bool| -> Vec<Id> {
        ids.iter().copied().filter(|id| wanted(id)).collect()
    };
    let lines = [
        ("order-held", so(&|id| held(id))),
        (
            "order-away",
            so(&|id| !held(id) && state_of(own, *id) == As::Absent),
        ),
        (
            "order-moved",
            so(&|id| !held(id) && state_of(own, *id) == As::Moved),
        ),
        (
            "order-back",
            so(&|id| !held(id) && !matches!(state_of(own, *id), As::Absent | As::Moved)),
        ),
    ];
    let each = lines.iter();
    each.filter_map(|(id, ids)| sentence(study, id, ids))
        .collect()
}

/// The food on the set during an exposure that does not keep, and whether some
/// of it dies before the end.
fn food(study: &Study<'_>, run: &Running, shot: &Shot) -> (Vec<String>, bool) {
    let there = |food: &&OnSet| food.from <= shot.from && shot.to <= food.last;
    let mut all: Vec<(i32, Id)> = run
        .foods
        .iter()
        .filter(there)
        .filter_map(|food| Some((food.by()?, food.item)))
        .collect();
    crate::order::sort(&mut all, |a, b| a.cmp(b));
    let lines = all.iter().map(|(by, item)| {
        let args = [
            ("things", Arg::Name(study.name(*item))),
            ("by", Arg::Text(running_time(*by))),
        ];
        say("timing-by-one", &args)
    });
    let late = all.iter().any(|(by, _)| *by < shot.to);
    (lines.collect(), late)
}

fn lasts(study: &Study<'_>, food: &OnSet) -> Lasts {
    let item = study.item(food.item);
    let hold = item.and_then(hold_of);
    Lasts {
        item: food.item,
        name: study.name(food.item),
        hold: hold.map(|hold| hold.0),
        told: matches!(hold, Some((_, Founded::Told))),
        stand_in: item.map_or_else(String::new, |item| item.stand_in.clone()),
        from: running_time(food.from),
        last: running_time(food.last),
        late: food.over() > 0,
    }
}

/// Where to be, what the free hand does and how to get there, as sentences.
fn spoken(layout: &Layout, step: &Solo, first: bool) -> Vec<String> {
    let mut out = Vec::new();
    let units = layout.head.units;
    if let Some(walk) = &step.walk {
        let past = walk.past.map(|(what, gap)| (what.name(), gap));
        let (what, gap) = past.unwrap_or_default();
        let id = match (walk.clockwise, walk.past.is_some(), walk.clear) {
            (true, false, _) => "solo-clockwise",
            (false, false, _) => "solo-anticlockwise",
            (true, true, true) => "solo-clockwise-past",
            (false, true, true) => "solo-anticlockwise-past",
            (true, true, false) => "solo-clockwise-tight",
            (false, true, false) => "solo-anticlockwise-tight",
        };
        let args = [
            ("long", Arg::Text(length(walk.long, units))),
            ("what", Arg::Text(what)),
            ("gap", Arg::Text(length(gap, units))),
        ];
        out.push(say(id, &args));
    } else if step.stays && !first {
        out.push(say("solo-stay", &[]));
    }
    let at = stand_at(&layout.table, step.at).at;
    let id = match (step.standing, step.free) {
        (true, Some(Side::Left)) => "solo-stand-left",
        (true, Some(Side::Right)) => "solo-stand-right",
        (true, None) => "solo-stand-timer",
        (false, Some(Side::Left)) => "solo-sit-left",
        (false, Some(Side::Right)) => "solo-sit-right",
        (false, None) => "solo-sit-timer",
    };
    out.push(say(id, &[("clock", Arg::Text(hour(at, &layout.frame)))]));
    out
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::layout::{LayoutId, open};

    #[test]
    fn the_supper_runs_in_its_order_with_whose_hands_and_from_where() {
        let file = include_str!("../../../../static/starters/harbour-supper.spread.json");
        let mut layout = open(file).expect("a sound file");
        let mussels = layout.items.iter().position(|i| i.prop == "mussels");
        layout.items[mussels.expect("mussels")].hold_minutes = Some(25);
        let paper = running_order(&layout);
        let names: Vec<&str> = paper.turns.iter().map(|t| t.name.as_str()).collect();
        let all = layout.exposures.iter();
        let wanted: Vec<String> = all.map(|e| exposure_name(&layout, e.id)).collect();
        assert_eq!(names, wanted);
        assert_eq!(names[1..4], ["exposure 1", "exposure 2", "exposure 3"]);
        assert_eq!(
            (&*paper.turns[0].from, &*paper.turns[0].to),
            ("0:00", "0:03")
        );
        assert!(paper.turns[0].who.is_empty() && paper.turns[0].solo.is_empty());
        assert_eq!(paper.turns[1].who, ["A, both hands, from 9 o’clock"]);
        assert_eq!(paper.turns[3].who, ["A, right hand, from 6 o’clock"]);
        assert!(
            paper.turns[1].food[0].contains(" by 0:"),
            "{:?}",
            paper.turns[1]
        );
        for (n, turn) in paper.turns.iter().enumerate().skip(1).take(3) {
            let last = turn.solo.last().expect("one person is alone");
            let release = last.contains("release") || last.contains("timer");
            assert!(release, "{n}: {last}");
            assert_eq!(turn.solo.len(), if n == 1 { 1 } else { 2 }, "{turn:?}");
        }
        let lasts = paper.food.iter().find(|f| f.name == "mussels");
        let lasts = lasts.expect("on the paper");
        assert_eq!(
            (lasts.hold, lasts.told, &*lasts.from),
            (Some(25), true, "0:00")
        );
        let ends = paper.turns.last().map(|turn| turn.to.clone());
        assert_eq!(ends, Some(paper.length), "and no longer");
        let nothing = running_order(&Layout::empty(LayoutId(1)));
        assert!(nothing.turns.is_empty() && nothing.food.is_empty());
    }
}
