//! The margin against tipping in the weakest direction.
use super::super::finding::{Finding, Grade, State};
use super::super::rules::RIG_MARGIN;
use super::super::study::Study;
use super::{hour, remedy};
use crate::layout::Hung;
use crate::rig::{Edge, MOST, Stand, TARGET, Tipping, bag_for, counterweight_for};
use crate::words::{Arg, fixed, length, mass, say};

/// How well it stands.
pub(super) fn state_of(margin: f64) -> State {
    let [look, falls] = RIG_MARGIN.edges;
    if margin < falls {
        State::WontWork
    } else if margin < look {
        State::LookAgain
    } else {
        State::Holds
    }
}

/// A margin as said: never rounded up past a threshold.
pub(super) fn said(margin: f64) -> String {
    if margin >= 10.0 {
        return say("rig-ten", &[]);
    }
    fixed((margin * 10.0 + 1e-9).floor() / 10.0, 1)
}

pub(super) fn read(study: &Study<'_>, stand: &Stand, settled: bool) -> Option<Finding> {
    let found = stand.tipping()?;
    let weakest = found.weakest();
    let margin = weakest.margin();
    let state = state_of(margin);
    let rank = if state == State::Holds { 3 } else { 1 };
    let key = "rig:margin".into();
    let mut f = Finding::by(&RIG_MARGIN, key, (state, rank), margin, Vec::new());
    if state == State::LookAgain {
        f.grade = Grade::OurChoice;
    }
    f.sentence = study.sentence(|| {
        let args = [
            ("clock", Arg::Text(hour(study, weakest.outward))),
            ("margin", Arg::Text(said(margin))),
        ];
        let id = match state {
            State::WontWork => "rig-tips",
            State::LookAgain => "rig-low",
            _ if margin >= MOST => "rig-holds-well",
            _ => "rig-holds",
        };
        say(id, &args)
    });
    f.working = study.tell(|| working(study, stand, &found));
    if settled && state != State::Holds {
        f.remedy = remedy::found(study, margin);
    }
    Some(f)
}

fn working(study: &Study<'_>, stand: &Stand, found: &Tipping) -> Vec<String> {
    let units = study.layout().head.units;
    let mut out = vec![say("working-rig", &[])];
    let moment = |g_mm: f64| Arg::Text(fixed(g_mm / 1e6, 2));
    let line = |edge: &Edge| {
        let args = [
            ("clock", Arg::Text(hour(study, edge.outward))),
            ("holding", moment(edge.holding)),
            ("tipping", moment(edge.tipping)),
            ("margin", Arg::Text(said(edge.margin()))),
        ];
        say("working-rig-edge", &args)
    };
    out.extend(found.edges.iter().map(line));
    let mast = stand.masts[0];
    let off = (found.centre.truncate() - mast).dot(stand.along);
    let args = [
        ("reach", Arg::Text(length(stand.reach, units))),
        ("off", Arg::Text(length(off, units))),
        ("height", Arg::Text(length(found.centre.z, units))),
        ("tilt", Arg::Text(fixed(found.tilt(), 1))),
    ];
    out.push(say("working-rig-sum", &args));
    if let Some(bare) = stand.without_camera() {
        let margin = [("margin", Arg::Text(said(bare.margin())))];
        out.push(say("working-rig-off", &margin));
    }
    if found.margin() < TARGET {
        let grams = |found: Option<f64>| {
            Arg::Text(found.map_or_else(|| say("rig-none", &[]), |g| mass(g, units)))
        };
        let behind = remedy::behind(study.layout(), stand);
        let counter = behind.and_then(|b| counterweight_for(stand, b));
        let args = [
            ("hub", grams(bag_for(stand, Hung::Hub))),
            ("lead", grams(bag_for(stand, Hung::LeadLeg))),
            ("rear", grams(bag_for(stand, Hung::RearLegs))),
            ("counter", grams(counter)),
            ("behind", Arg::Text(length(behind.unwrap_or(0.0), units))),
        ];
        out.push(say("working-rig-bags", &args));
    }
    out.push(say("working-rig-bag", &[]));
    out.push(say("working-rig-not", &[]));
    out
}
