//! Cautions about food: who may eat what, and what it does on the set.
use super::super::study::Study;
use super::{Caution, Concern, named, put};
use crate::catalogue::{allergens_in, kind_of};
use crate::layout::Item;
use crate::words::{Arg, listed, say};

/// Food that steams or scalds.
const BROTHS: [&str; 4] = ["soup", "miso-soup", "curry", "bean-stew"];

/// Food that is raw before it is cooked, and carries more than most then.
const RAW: [&str; 9] = [
    "mussels",
    "clams",
    "oysters",
    "prawns",
    "egg-halves",
    "fried-eggs",
    "omelette",
    "egg-cup",
    "salmon-fillet",
];

/// Surfaces that are painted, stained or aged.
const COATED: [&str; 9] = [
    "charcoal-planks",
    "painted-board",
    "white-washed",
    "black-board",
    "navy-board",
    "white-board",
    "blush-board",
    "copper",
    "plaster",
];

/// Whether it steams or scalds.
pub(in super::super) fn is_broth(item: &Item) -> bool {
    BROTHS.contains(&item.prop.as_str())
}

pub(super) fn add(study: &Study<'_>, out: &mut Vec<Caution>) {
    let l = study.layout();
    let broths = named(study, is_broth);
    if !broths.is_empty() {
        let args = [("things", Arg::Text(listed(&broths)))];
        put(out, "steam", Concern::Hands, say("caution-steam", &args));
    }
    let raw = named(study, |i| RAW.contains(&i.prop.as_str()));
    if !raw.is_empty() {
        let args = [("things", Arg::Text(listed(&raw)))];
        put(out, "raw", Concern::Food, say("caution-raw", &args));
    }
    let props: Vec<&str> = l.items.iter().map(|i| i.prop.as_str()).collect();
    let known = allergens_in(&props).into_iter();
    let words: Vec<String> = known.map(|id| say(id, &[])).collect();
    if !words.is_empty() {
        let args = [("list", Arg::Text(listed(&words)))];
        put(
            out,
            "allergens",
            Concern::Food,
            say("caution-allergens", &args),
        );
    }
    // Food that lies on the board itself.
    let bare = l
        .items
        .iter()
        .any(|i| i.on.is_none() && kind_of(&i.prop).is_food());
    if bare && COATED.contains(&l.table.surface.prop.as_str()) {
        let args = [("ground", Arg::Name(study.name(crate::layout::Id(0))))];
        put(
            out,
            "surface",
            Concern::Table,
            say("caution-surface", &args),
        );
    }
    if l.items.iter().any(|i| kind_of(&i.prop).is_food()) {
        put(out, "set-food", Concern::Food, say("caution-set-food", &[]));
    }
}
