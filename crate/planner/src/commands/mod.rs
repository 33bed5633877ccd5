//! What a person does to a layout: every act takes the layout and gives the
//! edit that leads on from it, or says why not.
//!
//! What is locked is never changed by any of them but one that unlocks it.
mod about;
mod add;
mod again;
mod arrange;
mod away;
mod board;
mod camera;
mod cards;
mod crops;
mod drag;
mod exposures;
mod free;
mod hands;
mod hold;
mod lay;
mod lock;
mod many;
mod onto;
mod over;
mod own;
mod people;
mod place;
mod rig;
pub(crate) mod room;
mod seats;
mod settings;
mod snap;
mod stack;
mod states;
mod stock;
mod strew;
#[cfg(test)]
mod tests;
mod thing;
mod trace;

pub use about::{
    Carry, Fixture, Motion, PERSON_REACH, aim_light, away_at, fixture_at, move_photographer,
    move_stand,
};
pub use add::{Own, OwnShape, add, add_own};
pub use again::{repeat, repeat_along, repeat_round};
pub use arrange::{InLine, align, equal_gaps, swap, swaps};
pub use away::remove;
pub use board::set_surface;
pub use camera::{Dial, NARROWEST, focus_evenly, keep_lens, set_format, set_pixels, step_camera};
pub use cards::add_card;
pub(crate) use cards::stand_card;
pub use crops::{Page, add_crop, add_page, add_print, keep_copy_space, must_show};
pub use drag::{Drag, taken_by};
pub use exposures::{add_exposure, exposure_takes, remove_exposure, shift_exposure};
pub use hands::{Wish as HandsWish, add_hands, flip, shoot_in};
pub use hold::{do_else, hold};
pub use lay::{Offer, Wish as TableWish, lay, offers};
pub use many::{
    Deed, do_picked, free, middle_of, move_picked, pick_all, pick_within, picked, toggle,
    turn_picked,
};
pub use onto::{lies_over, put_on};
pub use over::{cloth_at, crossed, lay_over, lay_under};
pub use own::{add_kept, kept};
pub use people::give_hand;
pub use place::{move_by, turn_by};
pub use rig::{place_photographer, place_stand, places_beside};
pub use seats::{
    BEHIND, Spot, come_from, come_to, comes_from, move_seat, spot_at, spots, stand_or_sit,
};
pub use settings::{Wish as SettingsWish, lay_places};
pub use snap::{Snap, snap};
pub use stack::{moving, moving_all};
pub use states::{How, Look, all_as_set, has_food, move_in, put_in};
pub use stock::{Said, say_of, set_count};
pub use strew::strew;
pub use thing::{resize, set_role};
pub use trace::trace;

use again::repeat_beside;
use std::fmt;

use crate::catalogue;
use crate::edit::Edit;
use crate::layout::{Id, Item, Layout, Point};
use crate::words::{Arg, say};

/// One act on a layout.
#[derive(Clone, Debug, PartialEq)]
pub struct Act {
    /// What is done, in words.
    pub name: String,
    /// What changes.
    pub edit: Edit,
}

/// Why an act is refused.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Refused {
    /// The thing of this name is locked.
    Locked(String),
    /// Nobody knows this.
    Unknown(String),
    /// The layout would break a limit there.
    Limit(String),
    /// There is no room for any of what was asked for.
    NoRoom,
    /// This would come to lie on itself.
    OnItself(String),
    /// It takes at least so many things.
    TooFew(usize),
    /// There is no runner.
    NoRunner,
    /// What was kept under this name holds no thing.
    NothingKept(String),
    /// A line traced over a photo is no outline, for the reason in this
    /// sentence.
    Trace(String),
}

impl fmt::Display for Refused {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (id, name, what) = match self {
            Self::Locked(name) => ("refused-locked", "thing", name),
            Self::Unknown(name) => ("refused-unknown", "thing", name),
            Self::Limit(path) => ("refused-limit", "place", path),
            Self::NothingKept(name) => ("refused-nothing-kept", "thing", name),
            Self::OnItself(name) => ("refused-on-itself", "thing", name),
            Self::NoRoom => return f.write_str(&say("refused-room", &[])),
            Self::Trace(why) => return f.write_str(why),
            Self::NoRunner => return f.write_str(&say("refused-no-runner", &[])),
            Self::TooFew(least) => {
                let least = [("count", Arg::Text(least.to_string()))];
                return f.write_str(&say("refused-few", &least));
            }
        };
        f.write_str(&say(id, &[(name, Arg::Name(what.clone()))]))
    }
}

impl std::error::Error for Refused {}

impl Act {
    /// The act called `name` that leads from one layout to another.
    ///
    /// # Errors
    /// When something locked would change.
    pub fn between(name: String, before: &Layout, after: &Layout) -> Result<Self, Refused> {
        Self::of(name, before, Edit::between(before, after))
    }

    /// The act called `name` that makes an edit.
    ///
    /// # Errors
    /// When something locked would change.
    pub fn of(name: String, before: &Layout, edit: Edit) -> Result<Self, Refused> {
        match lock::broken(&edit) {
            None => Ok(Self { name, edit }),
            Some(id) => Err(Refused::Locked(name_of(before, id))),
        }
    }
}

/// What an act on the thing of this name is called.
fn called(id: &str, thing: &str) -> String {
    say(id, &[("thing", Arg::Name(thing.into()))])
}

/// The name a thing goes by.
#[must_use]
pub fn name_of(layout: &Layout, id: Id) -> String {
    let item = layout.items.iter().find(|o| o.id == id).map(|o| &o.name);
    let linen = layout.linens.iter().find(|o| o.id == id).map(|o| &o.name);
    let crop = layout.crops.iter().find(|o| o.id == id).map(|o| &o.name);
    match item.or(linen).or(crop) {
        None if layout.cards.iter().any(|o| o.id == id) => say("name-card", &[]),
        None => say("name-hand", &[]),
        Some(name) if name.is_empty() => say("name-thing", &[]),
        Some(name) => name.clone(),
    }
}

/// A thing of the catalogue with a number of its own, not laid yet.
fn fresh_item(layout: &mut Layout, prop: &str) -> Result<Item, Refused> {
    let entry = catalogue::prop(prop).ok_or_else(|| Refused::Unknown(prop.into()))?;
    let (id, number) = (fresh_id(layout), fresh_number(layout));
    Ok(catalogue::item_from(entry, id, number, Point::new(0, 0)))
}

/// An id no object had before.
fn fresh_id(layout: &mut Layout) -> Id {
    let id = Id(layout.head.next_id);
    layout.head.next_id = layout.head.next_id.saturating_add(1);
    id
}

/// A printed number no item had before.
fn fresh_number(layout: &mut Layout) -> u16 {
    let number = layout.head.next_number;
    layout.head.next_number = number.saturating_add(1);
    number
}
