//! Food that sinks into what it lies in: vessels of one sort are one cause.
use super::finding::Finding;
use super::separation::lost_share;
use super::separation_findings::{Loss, finding};
use super::separation_remedies as remedies;
use super::study::Study;
use crate::catalogue::is_several;
use crate::layout::Id;
use crate::scene::PartKind;
use crate::words::{Arg, listed, noun, percent, say};

/// One finding for each sort of vessel.
pub(super) fn read(study: &Study<'_>, losses: &[&Loss<'_>], settled: bool) -> Vec<Finding> {
    let sort = |l: &Loss<'_>| study.item(l.ground).map(|i| i.prop.as_str());
    let mut out = Vec::new();
    let mut rest = losses.to_vec();
    while let Some(first) = rest.first() {
        let of = sort(first);
        let (same, other): (Vec<&Loss<'_>>, Vec<&Loss<'_>>) =
            rest.iter().copied().partition(|l| sort(l) == of);
        out.push(one(study, &same, settled));
        rest = other;
    }
    out
}

fn one(study: &Study<'_>, losses: &[&Loss<'_>], settled: bool) -> Finding {
    let first = losses[0];
    let foods: Vec<Id> = losses.iter().map(|l| l.owner).collect();
    let vessels: Vec<Id> = losses.iter().map(|l| l.ground).collect();
    let parts: Vec<(Id, PartKind)> = foods.iter().map(|f| (*f, PartKind::Food)).collect();
    let share = lost_share(study, &parts);
    let key = match study.item(first.ground) {
        Some(vessel) if losses.len() > 1 => format!("separation:in:{}", vessel.prop),
        _ => format!("separation:{}:{:?}", first.owner.0, PartKind::Food),
    };
    let rank = losses.iter().map(|l| l.rank()).min().unwrap_or(3);
    let about = foods.iter().chain(&vessels).copied().collect();
    let mut f = finding(study, (key, rank), share, about, losses);
    f.sentence = study.sentence(|| {
        let names = study.names(&foods);
        let id = match (losses.len(), is_several(&names[0])) {
            (2.., _) => "separation-inside-many",
            (_, Some(false)) => "separation-inside-one",
            (_, Some(true)) => "separation-inside",
            (_, None) => "separation-inside-any",
        };
        let args = [
            ("thing", Arg::Text(listed(&names))),
            ("count", Arg::Text(losses.len().to_string())),
            ("ground", Arg::Name(noun(&first.called(study)).into())),
            ("share", Arg::Text(percent(share))),
        ];
        say(id, &args)
    });
    if settled {
        f.remedy = study.remedy(&f.key, &|| {
            remedies::inside(study, &f.key, &parts, &vessels)
        });
    }
    f
}
