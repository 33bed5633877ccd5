//! Whether the photographer gets to the stand and round the table without a
//! leg, a weight or a sitter in the way, or a long way round them.
use super::super::finding::{Finding, Mark, Remedy, State};
use super::super::rules::{RIG_PATH, RIG_ROUND, RIG_WAY};
use super::super::study::Study;
use super::margin::state_of;
use super::room;
use crate::commands::places_beside;
use crate::edit::Edit;
use crate::layout::{Hung, Id, Layout, Point, Turn};
use crate::rig::Stand;
use crate::scene::{Goal, HALF_WAY, InTheWay, Way, ways};
use crate::words::{Arg, length, say};

/// The legs are turned by steps of this, half degrees, this many to each side:
/// past it they lie as before.
const LEG_STEP: i32 = 30;
const LEG_STEPS: i32 = 3;

/// How much the narrowest of the ways lacks, mm, and which it is.
fn narrowest(layout: &Layout) -> Option<(f64, Way)> {
    let short = |way: &Way| HALF_WAY - way.gap;
    let narrow = ways(layout).into_iter().map(|way| (short(&way), way));
    let narrow = narrow.filter(|(short, _)| *short >= RIG_WAY.edges[0]);
    narrow.max_by(|a, b| a.0.total_cmp(&b.0))
}

/// The way that goes farthest round what stands there.
fn longest(layout: &Layout) -> Option<Way> {
    let long = ways(layout).into_iter();
    let long = long.filter(|way| way.extra >= RIG_ROUND.edges[0] && way.round.is_some());
    long.max_by(|a, b| a.extra.total_cmp(&b.extra))
}

/// What a way leads to, and what stands there, in words.
fn named(goal: Goal, what: InTheWay) -> [(&'static str, Arg); 2] {
    let goal = match goal {
        Goal::FarSide | Goal::Place => "way-far",
        Goal::Mast(_) => "way-stand",
    };
    [
        ("goal", Arg::Text(say(goal, &[]))),
        ("what", Arg::Text(what.name())),
    ]
}

fn about(what: InTheWay) -> Vec<Id> {
    match what {
        InTheWay::Sitter(hand) => vec![hand],
        _ => Vec::new(),
    }
}

/// The finding about a way that leads far round something.
fn round(study: &Study<'_>, settled: bool) -> Option<Finding> {
    let layout = study.layout();
    let way = longest(layout)?;
    let what = way.round?;
    let key = "rig:round".into();
    let state = (State::LookAgain, 3);
    let mut f = Finding::by(&RIG_ROUND, key, state, way.extra, about(what));
    f.sentence = study.sentence(|| {
        let [goal, what] = named(way.goal, what);
        let extra = length(way.extra, layout.head.units);
        say("rig-round", &[goal, what, ("extra", Arg::Text(extra))])
    });
    f.working = study.tell(|| vec![say(RIG_ROUND.working, &[])]);
    f.marks = vec![Mark::Group { outline: way.line }];
    if settled {
        f.remedy = remedy(layout, what);
    }
    Some(f)
}

/// The finding about the ways; silent where one stands among the legs already.
pub(super) fn read(study: &Study<'_>, settled: bool) -> Option<Finding> {
    let layout = study.layout();
    let Some((short, way)) = narrowest(layout) else {
        return round(study, settled);
    };
    let (what, [thing, on_way]) = way.nearest?;
    let key = "rig:way".into();
    let state = (State::LookAgain, 3);
    let mut f = Finding::by(&RIG_WAY, key, state, short, about(what));
    let units = layout.head.units;
    f.sentence = study.sentence(|| {
        let [goal, what] = named(way.goal, what);
        let args = [
            goal,
            what,
            ("gap", Arg::Text(length(way.gap, units))),
            ("least", Arg::Text(length(HALF_WAY, units))),
        ];
        say("rig-way", &args)
    });
    f.working = study.tell(|| vec![say(RIG_WAY.working, &[])]);
    f.marks = vec![Mark::Gap {
        from: thing,
        to: on_way,
        label: study.tell(|| length(way.gap, units)),
    }];
    if settled {
        f.remedy = remedy(layout, what);
    }
    Some(f)
}

/// The first change that leaves every way clear and the stand no worse: the bag
/// at the hub, the legs turned, the photographer at another side.
fn remedy(layout: &Layout, what: InTheWay) -> Option<Remedy> {
    let bag = (what == InTheWay::Bag)
        .then(|| bag_at_hub(layout))
        .flatten();
    let legs = matches!(what, InTheWay::Leg | InTheWay::Bag);
    let turns = legs.then(|| legs_turned(layout)).into_iter().flatten();
    let mut tries = bag.into_iter().chain(turns).chain(elsewhere(layout));
    let (after, act) = tries.find(|(after, _)| clear(layout, after))?;
    Some(made(layout, &after, act))
}

/// The photographer at another side, where no leg is near and every way clear.
pub(super) fn stands_elsewhere(layout: &Layout) -> Option<Remedy> {
    let (after, act) = elsewhere(layout).find(|(after, _)| clear(layout, after))?;
    Some(made(layout, &after, act))
}

fn made(layout: &Layout, after: &Layout, act: String) -> Remedy {
    Remedy {
        act,
        predicted: say("rig-way-clear", &[]),
        // Nothing is lacking any more.
        after: 0.0,
        edit: Edit::between(layout, after),
    }
}

/// Whether nothing stands in the way then, and the stand is none the worse.
fn clear(before: &Layout, after: &Layout) -> bool {
    let stands = |l: &Layout| {
        let margin = Stand::of(l)?.tipping()?.margin();
        Some((state_of(margin), margin))
    };
    let steady = match (stands(before), stands(after)) {
        (Some(was), Some(is)) => is.0 == State::Holds || (is.0 == was.0 && is.1 >= was.1),
        (None, _) => true,
        _ => false,
    };
    let stand = Stand::of(after);
    let clear_of_table = stand.is_none_or(|stand| {
        let near = room::nearest_leg(after, &stand);
        !room::through(after, &stand) && near.is_none_or(|(gap, _)| gap >= RIG_PATH.edges[0])
    });
    steady && clear_of_table && narrowest(after).is_none() && longest(after).is_none()
}

/// A change and what it is called.
type Try = (Layout, String);

fn bag_at_hub(layout: &Layout) -> Option<Try> {
    let mut after = layout.clone();
    after.rig.bag.as_mut()?.hung = Hung::Hub;
    Some((after, say("act-rig-bag-hub", &[])))
}

/// The legs turned about the mast, the least first.
fn legs_turned(layout: &Layout) -> Vec<Try> {
    let Some(stand) = Stand::of(layout) else {
        return Vec::new();
    };
    let lead = stand.feet[0][0] - stand.masts[0];
    let now = Turn::from_degrees(libm::atan2(lead.x, -lead.y).to_degrees());
    let steps = (1..=LEG_STEPS).flat_map(|n| [n * LEG_STEP, -n * LEG_STEP]);
    steps
        .map(|by| {
            let mut after = layout.clone();
            after.rig.leg_bearing = Some(now.plus(by));
            let args = [("degrees", Arg::Text((by.abs() / 2).to_string()))];
            let id = if by > 0 {
                "act-rig-legs-on"
            } else {
                "act-rig-legs-back"
            };
            (after, say(id, &args))
        })
        .collect()
}

/// The photographer beside the table, at each side.
fn elsewhere(layout: &Layout) -> impl Iterator<Item = Try> {
    places_beside(layout).into_iter().map(|place| {
        let mut after = layout.clone();
        after.rig.photographer = Some(Point::nearest(place));
        (after, say("act-photographer-side", &[]))
    })
}
