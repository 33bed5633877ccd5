//! Whether a layout would still open from its own file after an edit.
use super::change::{Edit, EditError};
use super::object::{Key, Object, Placed};
use crate::layout::{
    Layout, MAX_CARDS, MAX_CROPS, MAX_EXPOSURES, MAX_GROUPS, MAX_HANDS, MAX_ITEMS, MAX_LINENS,
    MAX_PEOPLE, MAX_SEATS, references,
};

impl Edit {
    /// [`Edit::apply`], refused when the layout would no longer open from its
    /// own file: a value or a count beyond its limit, or a reference that
    /// leads nowhere. On an error the layout is as it was.
    ///
    /// # Errors
    /// As [`Edit::apply`], and what the file's reader would refuse.
    pub fn apply_checked(&self, layout: &mut Layout) -> Result<(), EditError> {
        let mut next = layout.clone();
        self.apply(&mut next)?;
        for change in &self.0 {
            let readable = change.after.as_ref().is_none_or(reads_as_itself);
            if !readable || crowded(&next, change.key) {
                return Err(EditError::Limits(change.key));
            }
        }
        let problems = references(&next).len();
        if problems > 0 {
            return Err(EditError::References(problems));
        }
        *layout = next;
        Ok(())
    }
}

/// Whether the reader makes the same object of what is written.
fn reads_as_itself(placed: &Placed) -> bool {
    let written = serde_json::to_value(&placed.object);
    let read = written
        .ok()
        .and_then(|value| Object::read(placed.object.key().kind(), value).ok());
    read.as_ref() == Some(&placed.object)
}

/// Whether the array this object belongs to is longer than a file may hold.
fn crowded(layout: &Layout, key: Key) -> bool {
    match key {
        Key::Group(_) => layout.groups.len() > MAX_GROUPS,
        Key::Linen(_) => layout.linens.len() > MAX_LINENS,
        Key::Item(_) => layout.items.len() > MAX_ITEMS,
        Key::Seat(_) => layout.seats.len() > MAX_SEATS,
        Key::Person(_) => layout.people.len() > MAX_PEOPLE,
        Key::Hand(_) => layout.hands.len() > MAX_HANDS,
        Key::Exposure(_) => layout.exposures.len() > MAX_EXPOSURES,
        Key::Crop(_) => layout.crops.len() > MAX_CROPS,
        Key::Card(_) => layout.cards.len() > MAX_CARDS,
        _ => false,
    }
}
