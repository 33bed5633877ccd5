//! Things taken away, with all that leads to them.
use std::collections::BTreeSet;

use super::stack::{above, is_board};
use super::{Act, Refused, called, name_of};
use crate::layout::{Id, Layout};

/// Takes things away, with what lies on them in a dish.
///
/// # Errors
/// When one of them is locked, or stands on a board that goes and is locked.
pub fn remove(layout: &Layout, ids: &[Id]) -> Result<Act, Refused> {
    let mut taken = BTreeSet::new();
    taken.extend(ids.iter().copied());
    let mut after = layout.clone();
    off_boards(&mut after, &taken);
    let gone = above(&after, &taken);
    after.items.retain(|o| !gone.contains(&o.id));
    after.linens.retain(|o| !gone.contains(&o.id));
    after.hands.retain(|o| !gone.contains(&o.id));
    after.crops.retain(|o| !gone.contains(&o.id));
    after.cards.retain(|o| !gone.contains(&o.id));
    for hand in &mut after.hands {
        hand.pair = hand.pair.filter(|id| !gone.contains(id));
        hand.holds = hand.holds.filter(|id| !gone.contains(id));
    }
    for linen in &mut after.linens {
        linen.over.retain(|id| !gone.contains(id));
    }
    for crop in &mut after.crops {
        crop.must_show.retain(|id| !gone.contains(id));
    }
    // An exposure goes with the last hand it was for, a group with its last
    // member.
    let hands = &after.hands;
    after.exposures.retain(|e| {
        layout.hands.iter().all(|h| h.exposure != e.id) || hands.iter().any(|h| h.exposure == e.id)
    });
    let items = &after.items;
    let had = |id: Id| layout.items.iter().any(|o| o.group == Some(id));
    let has = |id: Id| items.iter().any(|o| o.group == Some(id));
    after.groups.retain(|g| has(g.id) || !had(g.id));
    let name = ids.first().map(|id| name_of(layout, *id));
    let name = called("done-removed", &name.unwrap_or_default());
    Act::between(name, layout, &after)
}

/// A board is a support, not a dish: what stands on the boards among `ids`
/// comes down to what they stand on.
fn off_boards(layout: &mut Layout, ids: &BTreeSet<Id>) {
    for _ in 0..layout.items.len() {
        let boards: Vec<(Id, Option<Id>)> = layout
            .items
            .iter()
            .filter(|o| ids.contains(&o.id))
            .filter(|o| is_board(o))
            .map(|o| (o.id, o.on))
            .collect();
        for item in layout.items.iter_mut().filter(|o| !ids.contains(&o.id)) {
            if let Some((_, under)) = boards.iter().find(|(id, _)| item.on == Some(*id)) {
                item.on = *under;
            }
        }
    }
}
