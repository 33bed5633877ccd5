//! The log that is filled as it is shot.
use serde::Deserialize;

use super::list::{List, TICK};
use super::shots::{hands_of, names};
use crate::layout::{Id, Layout};
use crate::scene::exposure_name;
use crate::words::{Arg, listed, say};

/// What was written down of an exposure while it was shot.
#[derive(Clone, Debug, Default, PartialEq, Eq, Deserialize)]
pub struct Logged {
    /// Which exposure.
    pub exposure: Id,
    /// How many frames were shot.
    pub frames: u16,
    /// The file of the one that is kept.
    pub file: String,
    /// What is to be remembered of it.
    pub note: String,
    /// Whether one was looked at in full size and is kept.
    pub kept: bool,
}

/// What is written down as it is shot.
///
/// What was written down on the phone is filled in; the rest is left for a pen.
pub(super) fn log_list(layout: &Layout, logged: &[Logged]) -> List {
    let columns = [
        ("col-number", 9),
        ("col-exposure", 32),
        ("col-hands", 38),
        ("col-takes", 24),
        ("col-files", 28),
        ("col-keeper", 20),
        ("col-mask", 28),
        ("col-ok", 9),
    ];
    let mut list = List::of("", &columns);
    for (n, exposure) in layout.exposures.iter().enumerate() {
        let mut hands = hands_of(layout, exposure.id);
        let changed = exposure.states.iter().map(|s| s.item);
        let changed: Vec<Id> = changed.collect();
        let things = names(layout, &|id| changed.contains(&id));
        if !things.is_empty() {
            let things = ("things", Arg::Text(listed(&things)));
            hands.push(say("log-otherwise", &[things]));
        }
        let shot = logged.iter().find(|l| l.exposure == exposure.id);
        let shot = shot.cloned().unwrap_or_default();
        let takes = if shot.frames > 0 {
            shot.frames.to_string()
        } else {
            // Two lines of room for a pen.
            "\n".into()
        };
        let ok = if shot.kept {
            say("log-kept", &[])
        } else {
            TICK.into()
        };
        list.rows.push(vec![
            (n + 1).to_string(),
            exposure_name(layout, exposure.id),
            hands.join("\n"),
            takes,
            String::new(),
            shot.file,
            shot.note,
            ok,
        ]);
    }
    list
}
