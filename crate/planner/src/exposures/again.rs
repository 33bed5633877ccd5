//! What each exposure adds, taken over from before an edit where nothing it is
//! made of changed.
use std::collections::BTreeSet;
use std::rc::Rc;

use super::regions::{Added, added_by};
use crate::layout::{As, Exposure, ExposureKind, Hand, Id, Item, Layout};
use crate::optics::View;

/// What every exposure with hands adds, as the lens sees it, within the frame,
/// in list order.
#[must_use]
pub fn added(layout: &Layout) -> Vec<Rc<Added>> {
    added_after(layout, None)
}

/// The same, to the last bit, after an edit.
#[must_use]
pub fn added_after(layout: &Layout, before: Option<(&Layout, &[Rc<Added>])>) -> Vec<Rc<Added>> {
    let before = before.filter(|(old, _)| {
        let set = |l: &Layout| {
            (
                View::of(l),
                l.frame.clone(),
                l.light.clone(),
                l.table.clone(),
            )
        };
        set(old) == set(layout) && old.seats == layout.seats && old.people == layout.people
    });
    let with_hands = |e: &&Exposure| e.kind == ExposureKind::Hands;
    let each = layout.exposures.iter().filter(with_hands).map(|exposure| {
        let known = before.and_then(|(old, added)| {
            let was = old.exposures.iter().find(|e| e.id == exposure.id)?;
            let same = was == exposure && made_of(old, was) == made_of(layout, exposure);
            let known = added.iter().find(|a| a.exposure == exposure.id)?;
            same.then(|| Rc::clone(known))
        });
        known.unwrap_or_else(|| Rc::new(added_by(layout, exposure, View::of(layout))))
    });
    each.collect()
}

/// The hands of an exposure, and every thing that they hold or that is not as
/// it is set, with what it stands on and what stands on it.
fn made_of<'a>(layout: &'a Layout, exposure: &Exposure) -> (Vec<&'a Hand>, Vec<&'a Item>) {
    let own = layout.hands.iter().filter(|h| h.exposure == exposure.id);
    let hands: Vec<&Hand> = own.collect();
    let mut ids: BTreeSet<Id> = BTreeSet::new();
    let told = exposure.states.iter().filter(|s| s.is != As::Set);
    ids.extend(told.map(|s| s.item));
    ids.extend(hands.iter().filter_map(|h| h.holds));
    let mut all = ids.clone();
    for item in &layout.items {
        // A layout's `on` is acyclic; the counter ends it all the same.
        let mut chain = Vec::new();
        let mut at = Some(item);
        while let Some(one) = at.filter(|_| chain.len() <= layout.items.len()) {
            chain.push(one.id);
            at = one
                .on
                .and_then(|on| layout.items.iter().find(|i| i.id == on));
        }
        if chain.iter().any(|id| ids.contains(id)) {
            all.extend(chain);
        }
    }
    let items = layout.items.iter().filter(|i| all.contains(&i.id));
    (hands, items.collect())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::layout::open;

    #[test]
    fn what_is_taken_over_is_what_would_be_made_anew() {
        let file = include_str!("../../../../static/starters/harbour-supper.spread.json");
        let before = open(file).expect("the supper opens");
        let old = added_after(&before, None);
        let mut moved = Vec::new();
        for n in 0..before.items.len() {
            let mut after = before.clone();
            after.items[n].at = after.items[n].at.moved(15, -10);
            after.items[n].turn = after.items[n].turn.plus(40);
            moved.push(after);
        }
        for n in 0..before.hands.len() {
            let mut after = before.clone();
            after.hands[n].target = after.hands[n].target.moved(20, 20);
            moved.push(after);
        }
        let mut turned = before.clone();
        turned.seats[0].at = turned.seats[0].at.moved(0, 90);
        moved.push(turned);
        let mut kept = 0;
        for after in moved {
            let anew = added(&after);
            let again = added_after(&after, Some((&before, &old)));
            assert_eq!(anew.len(), again.len(), "as many exposures");
            for (a, b) in anew.iter().zip(&again) {
                assert_eq!(
                    a.solid.rings(),
                    b.solid.rings(),
                    "outlines of {:?}",
                    a.exposure
                );
                assert_eq!(
                    a.shadow.rings(),
                    b.shadow.rings(),
                    "shadows of {:?}",
                    a.exposure
                );
                kept += usize::from(old.iter().any(|o| Rc::ptr_eq(o, b)));
            }
        }
        assert!(kept > 20, "{kept} were taken over");
    }
}
