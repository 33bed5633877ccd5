//! What is done to several picked things at once, each as one act. Where
//! something of what moves as one is locked, all of that stays as it is, and the
//! rest goes on without it.
mod pick;
#[cfg(test)]
mod tests;

pub use pick::{pick_all, pick_within, picked, toggle};

use std::collections::BTreeSet;

use glam::DVec2;

use super::place::each;
use super::stack::{moving, moving_all, stays};
use super::{Act, Refused, called, name_of, remove, repeat_beside};
use crate::layout::{Extra, Group, Id, Layout, Point};
use crate::words::{Arg, say};

/// What is done to all that is picked, by word.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Deed {
    /// Locked.
    Lock,
    /// Unlocked.
    Unlock,
    /// Put together, so that it moves as one.
    Group,
    /// Taken apart, every group of it.
    Apart,
    /// Laid again beside itself.
    Repeat,
    /// Taken away.
    Remove,
}

impl Deed {
    /// The deed of this word.
    #[must_use]
    pub fn parse(word: &str) -> Option<Self> {
        Some(match word {
            "lock" => Self::Lock,
            "unlock" => Self::Unlock,
            "group" => Self::Group,
            "apart" => Self::Apart,
            "repeat" => Self::Repeat,
            "remove" => Self::Remove,
            _ => return None,
        })
    }
}

/// What of the picked things can be changed.
struct Free {
    /// As they are picked.
    ids: Vec<Id>,
    /// All that goes along.
    along: BTreeSet<Id>,
    /// Whether others are locked, and stay.
    stay: bool,
}

impl Free {
    fn of(layout: &Layout, ids: &[Id]) -> Result<Self, Refused> {
        let picked = picked(layout, ids);
        let free = |id: &Id| !stays(layout, &moving(layout, *id));
        let ids: Vec<Id> = picked.iter().copied().filter(free).collect();
        match (ids.first(), picked.first()) {
            (None, Some(id)) => Err(Refused::Locked(name_of(layout, *id))),
            (None, None) => Err(Refused::TooFew(1)),
            _ => Ok(Self {
                along: moving_all(layout, &ids),
                stay: ids.len() < picked.len(),
                ids,
            }),
        }
    }

    /// The middle of the things, about which they turn: it stays when they do.
    fn middle(&self, layout: &Layout) -> DVec2 {
        let mut sum = DVec2::ZERO;
        let own: BTreeSet<Id> = self.ids.iter().copied().collect();
        each(layout, &own, &mut |lying| sum += lying.at.vec());
        sum / self.ids.len() as f64
    }

    /// What an act on them is called, by the sentence for one and for several.
    fn name(&self, layout: &Layout, done: [&str; 2]) -> String {
        let name = counted(layout, &self.ids, done);
        if self.stay {
            say("done-rest-locked", &[("act", Arg::Text(name))])
        } else {
            name
        }
    }

    fn act(&self, layout: &Layout, after: &Layout, done: [&str; 2]) -> Result<Act, Refused> {
        Act::between(self.name(layout, done), layout, after)
    }
}

fn counted(layout: &Layout, ids: &[Id], [one, several]: [&str; 2]) -> String {
    match ids {
        [id] => called(one, &name_of(layout, *id)),
        _ => say(several, &[("count", Arg::Text(ids.len().to_string()))]),
    }
}

/// The picked things that can be changed.
///
/// # Errors
/// When nothing is picked, or all of it is locked.
pub fn free(layout: &Layout, ids: &[Id]) -> Result<Vec<Id>, Refused> {
    Free::of(layout, ids).map(|free| free.ids)
}

/// Moves what is picked, mm.
///
/// # Errors
/// When nothing is picked, or all of it is locked.
pub fn move_picked(layout: &Layout, ids: &[Id], [dx, dy]: [i32; 2]) -> Result<Act, Refused> {
    let free = Free::of(layout, ids)?;
    let after = each(layout, &free.along, &mut |lying| {
        *lying.at = lying.at.moved(dx, dy);
    });
    free.act(layout, &after, ["done-moved", "done-moved-several"])
}

/// Turns what is picked about its common middle, half degrees clockwise.
///
/// # Errors
/// When nothing is picked, or all of it is locked.
pub fn turn_picked(layout: &Layout, ids: &[Id], half_degrees: i32) -> Result<Act, Refused> {
    let free = Free::of(layout, ids)?;
    let middle = free.middle(layout);
    let after = each(layout, &free.along, &mut |lying| {
        lying.turn(middle, half_degrees)
    });
    free.act(layout, &after, ["done-turned", "done-turned-several"])
}

/// The middle about which what is picked turns; nothing when none of it can.
#[must_use]
pub fn middle_of(layout: &Layout, ids: &[Id]) -> Option<Point> {
    let free = Free::of(layout, ids).ok()?;
    Some(Point::nearest(free.middle(layout)))
}

/// Does a deed to all that is picked.
///
/// # Errors
/// When nothing is picked, all of it is locked, or it is too few for it.
pub fn do_picked(layout: &Layout, ids: &[Id], deed: Deed) -> Result<Act, Refused> {
    match deed {
        Deed::Lock => lock(layout, ids, true),
        Deed::Unlock => lock(layout, ids, false),
        Deed::Group => group(layout, ids),
        Deed::Apart => take_apart(layout, ids),
        Deed::Repeat => {
            let ids = picked(layout, ids);
            let after = repeat_beside(layout, &ids);
            let name = counted(layout, &ids, ["done-repeated", "done-repeated-several"]);
            Act::between(name, layout, &after)
        }
        Deed::Remove => {
            let free = Free::of(layout, ids)?;
            let gone: Vec<Id> = free.along.iter().copied().collect();
            let name = free.name(layout, ["done-removed", "done-removed-several"]);
            let edit = remove(layout, &gone)?.edit;
            Ok(Act { name, edit })
        }
    }
}

fn lock(layout: &Layout, ids: &[Id], locked: bool) -> Result<Act, Refused> {
    let ids = picked(layout, ids);
    let along = moving_all(layout, &ids);
    let after = each(layout, &along, &mut |lying| *lying.locked = locked);
    let name = if locked {
        ["done-locked", "done-locked-several"]
    } else {
        ["done-unlocked", "done-unlocked-several"]
    };
    Act::between(counted(layout, &ids, name), layout, &after)
}

/// Into the group one of them is in, else into a new one; a linen is in none.
fn group(layout: &Layout, ids: &[Id]) -> Result<Act, Refused> {
    let free = Free::of(layout, ids)?;
    let mut after = layout.clone();
    let named = |id: Id| free.ids.contains(&id);
    let old = layout.items.iter().filter(|o| free.along.contains(&o.id));
    let old: BTreeSet<Id> = old.filter_map(|o| o.group).collect();
    let count = layout.items.iter().filter(|o| named(o.id)).count();
    if count < 2 {
        return Err(Refused::TooFew(2));
    }
    let known = layout.items.iter().filter(|o| named(o.id));
    let group = known.filter_map(|o| o.group).next().unwrap_or_else(|| {
        let id = super::fresh_id(&mut after);
        after.groups.push(Group {
            id,
            name: String::new(),
            extra: Extra::new(),
        });
        id
    });
    let along = after
        .items
        .iter_mut()
        .filter(|o| free.along.contains(&o.id));
    for item in along.filter(|o| named(o.id) || o.group.is_some()) {
        item.group = Some(group);
    }
    after
        .groups
        .retain(|o| o.id == group || !old.contains(&o.id));
    free.act(layout, &after, ["done-grouped", "done-grouped"])
}

fn take_apart(layout: &Layout, ids: &[Id]) -> Result<Act, Refused> {
    let free = Free::of(layout, ids)?;
    let mut after = layout.clone();
    let mut groups = BTreeSet::new();
    for item in after
        .items
        .iter_mut()
        .filter(|o| free.along.contains(&o.id))
    {
        groups.extend(item.group.take());
    }
    after.groups.retain(|o| !groups.contains(&o.id));
    free.act(layout, &after, ["done-apart", "done-apart"])
}
