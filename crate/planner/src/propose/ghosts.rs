//! What a proposal moves, drawn as marks: ghosts where things would stand, and
//! arrows from where they are.
use crate::compare::changes;
use crate::edit::{Edit, EditError, Key};
use crate::layout::{Id, Layout};
use crate::optics::View;
use crate::readings::Mark;
use crate::scene::{arm, crop_outline, lifted, linen_seen, rise, seen_outline, vessel_of};

/// The marks of an edit of a layout, seen from above or through the lens.
///
/// # Errors
/// When the edit no longer fits.
pub fn ghosts(layout: &Layout, edit: &Edit, view: View) -> Result<Vec<Mark>, EditError> {
    let mut after = layout.clone();
    edit.apply(&mut after)?;
    let touched = |key: Key| edit.keys().any(|k| k == key);
    let mut marks = Vec::new();
    let mut ghost = |outline| marks.push(Mark::Ghost { outline });
    for linen in after.linens.iter().filter(|l| touched(Key::Linen(l.id))) {
        ghost(linen_seen(&after.table, linen));
    }
    for item in after.items.iter().filter(|i| touched(Key::Item(i.id))) {
        let inside = vessel_of(&after, item).is_some();
        ghost(seen_outline(item, rise(&after, item), inside, view));
    }
    for crop in after.crops.iter().filter(|c| touched(Key::Crop(c.id))) {
        ghost(crop_outline(&after, crop));
    }
    // An arm is another as soon as its hand or where it comes from is.
    let others = |id: Id| {
        let hand = |l: &Layout| l.hands.iter().find(|h| h.id == id).map(|h| arm(l, h));
        (hand(layout) != hand(&after))
            .then(|| hand(&after))
            .flatten()
    };
    for hand in &after.hands {
        if let Some(arm) = others(hand.id) {
            for part in [&arm.hand, &arm.forearm, &arm.sleeve] {
                ghost(lifted(part, view, f64::from(hand.height)));
            }
        }
    }
    let told = changes(layout, &after);
    let ways = told.iter().filter_map(|c| c.moved);
    marks.extend(ways.map(|[from, to]| Mark::Arrow {
        from: from.vec(),
        to: to.vec(),
    }));
    Ok(marks)
}
