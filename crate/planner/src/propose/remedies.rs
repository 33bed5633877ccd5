//! Which remedies of a report a search may take up: those that move what is
//! there, and neither bring, swap nor recolour anything.
use super::wish::May;
use crate::edit::{Change, Edit, Object};

/// Whether an edit moves nothing but what may be moved.
pub(super) fn only_moves(edit: &Edit, may: May) -> bool {
    !edit.is_empty() && edit.0.iter().all(|change| moves(change, may))
}

fn moves(change: &Change, may: May) -> bool {
    let (Some(before), Some(after)) = (&change.before, &change.after) else {
        return false;
    };
    match (&before.object, &after.object) {
        (Object::Item(a), Object::Item(b)) => {
            let mut same = a.clone();
            (same.at, same.turn) = (b.at, b.turn);
            may.dishes && same == *b && before.place == after.place
        }
        (Object::Linen(a), Object::Linen(b)) => {
            let mut same = a.clone();
            (same.at, same.turn, same.state) = (b.at, b.turn, b.state);
            may.linens && same == *b
        }
        (Object::Crop(_), Object::Crop(_)) => may.crops,
        (Object::Light(_), Object::Light(_)) => may.light,
        (Object::Seat(_), Object::Seat(_))
        | (Object::Person(_), Object::Person(_))
        | (Object::Exposure(_), Object::Exposure(_))
        | (Object::Hand(_), Object::Hand(_)) => may.hands,
        _ => false,
    }
}
