//! Places one prop can dress in two exposures, in words.
use serde::Serialize;

use crate::exposures::{Second, shared};
use crate::layout::{Id, Layout};
use crate::scene::exposure_name;
use crate::words::{Arg, place, say};

/// Two places one piece can dress.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Twice {
    /// The thing that stays, and the one that is left at home.
    pub things: [Id; 2],
    /// How many more exposures that costs.
    pub costs: u16,
    /// In words.
    pub told: String,
}

/// Every pair of places one piece can dress, what costs nothing first.
#[must_use]
pub fn twice(layout: &Layout) -> Vec<Twice> {
    let item = |id: Id| layout.items.iter().find(|o| o.id == id);
    let pairs = shared(layout).into_iter().filter_map(|pair| {
        let [first, second] = [item(pair.first)?, item(pair.second)?];
        let at = |o: &crate::layout::Item| Arg::Text(place(o.at, &layout.frame));
        let (costs, id, by) = match pair.by {
            Second::There(exposure) => {
                let name = Arg::Text(exposure_name(layout, exposure));
                (0, "twice-there", ("exposure", name))
            }
            Second::OneMore(minutes) => {
                let minutes = Arg::Text(minutes.to_string());
                (1, "twice-more", ("minutes", minutes))
            }
        };
        let args = [
            ("thing", Arg::Name(first.name.clone())),
            ("first", at(first)),
            ("second", at(second)),
            by,
        ];
        Some(Twice {
            things: [pair.first, pair.second],
            costs,
            told: say(id, &args),
        })
    });
    pairs.collect()
}
