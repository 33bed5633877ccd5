//! What stands on what, when a thing is turned, taken away or locked.
use std::collections::BTreeSet;

use planner::catalogue::{self, Kind};
use planner::layout::{Id, Layout, Point};

use crate::Planner;
use crate::drag::is_locked;

impl Planner {
    /// Refuses to touch what is locked.
    pub(crate) fn free(&self, ids: &[u16]) -> Result<(), Locked> {
        let locked = ids.iter().find(|id| is_locked(self.now(), Id(**id)));
        locked.map_or(Ok(()), |id| Err(Locked(self.name_of(Id(*id)))))
    }
}

/// Why an act was refused.
#[derive(Debug, thiserror::Error)]
#[error("{0} is locked; unlock it first")]
pub(crate) struct Locked(String);

/// These things and all that stands on them.
pub(crate) fn above(layout: &Layout, ids: &BTreeSet<Id>) -> BTreeSet<Id> {
    let mut all = ids.clone();
    loop {
        let before = all.len();
        let on = layout
            .items
            .iter()
            .filter(|o| o.on.is_some_and(|on| all.contains(&on)));
        let more: Vec<Id> = on.map(|o| o.id).collect();
        all.extend(more);
        if all.len() == before {
            return all;
        }
    }
}

/// A board is a support, not a dish: what stands on the boards among `ids`
/// comes down to what they stand on.
pub(crate) fn off_boards(layout: &mut Layout, ids: &BTreeSet<Id>) {
    for _ in 0..layout.items.len() {
        let boards: Vec<(Id, Option<Id>)> = layout
            .items
            .iter()
            .filter(|o| ids.contains(&o.id))
            .filter(|o| catalogue::prop(&o.prop).is_some_and(|e| e.kind == Kind::Board))
            .map(|o| (o.id, o.on))
            .collect();
        for item in layout.items.iter_mut().filter(|o| !ids.contains(&o.id)) {
            if let Some((_, under)) = boards.iter().find(|(id, _)| item.on == Some(*id)) {
                item.on = *under;
            }
        }
    }
}

/// A thing turned; what stands on it goes round its middle with it.
pub(crate) fn turned(layout: &Layout, id: Id, half_degrees: i32) -> Layout {
    let mut after = layout.clone();
    let centre = after.items.iter().find(|o| o.id == id).map(|o| o.at);
    let (sin, cos) = libm::sincos(f64::from(half_degrees).to_radians() * 0.5);
    let stack = above(layout, &BTreeSet::from([id]));
    for item in after.items.iter_mut().filter(|o| stack.contains(&o.id)) {
        if let Some(centre) = centre {
            let off = item.at.vec() - centre.vec();
            let round = glam::DVec2::new(cos, sin).rotate(off);
            item.at = Point::nearest(centre.vec() + round);
        }
        item.turn = item.turn.plus(half_degrees);
    }
    for linen in after.linens.iter_mut().filter(|o| o.id == id) {
        linen.turn = linen.turn.plus(half_degrees);
    }
    after
}

#[cfg(test)]
mod tests {
    use super::*;
    use planner::layout::Item;
    use planner::starters::harbour_supper;

    fn named<'a>(layout: &'a Layout, name: &str) -> &'a Item {
        let found = layout.items.iter().find(|i| i.name == name);
        found.unwrap_or_else(|| panic!("{name} is on the table"))
    }

    #[test]
    fn food_goes_round_with_the_dish_it_lies_on() {
        let mut layout = harbour_supper();
        let platter = named(&layout, "dark platter").clone();
        let id = named(&layout, "seared aubergine").id;
        let turn = named(&layout, "seared aubergine").turn;
        for item in layout.items.iter_mut().filter(|i| i.id == id) {
            item.at = platter.at.moved(100, 0);
        }
        let after = turned(&layout, platter.id, 180);
        let food = named(&after, "seared aubergine");
        assert_eq!(
            food.at,
            platter.at.moved(0, 100),
            "a quarter turn clockwise"
        );
        assert_eq!(food.turn, turn.plus(180), "turned itself");
    }

    #[test]
    fn what_is_locked_is_refused() {
        let mut layout = harbour_supper();
        layout.items[0].locked = true;
        let id = layout.items[0].id.0;
        let planner = Planner::of(layout);
        assert!(planner.free(&[id]).is_err(), "locked");
        assert!(planner.free(&[id + 1]).is_ok(), "its neighbour is not");
    }

    #[test]
    fn dishes_stay_when_the_board_under_them_goes() {
        let mut layout = harbour_supper();
        let board = named(&layout, "loaf").id;
        for item in &mut layout.items {
            if item.id == board {
                item.prop = "wooden-board".into();
            }
            if item.name == "olive bowl" {
                item.on = Some(board);
            }
        }
        let taken = BTreeSet::from([board]);
        off_boards(&mut layout, &taken);
        let gone = above(&layout, &taken);
        assert_eq!(gone, taken, "only the board goes");
        let pot = named(&layout, "mussel pot").id;
        assert_eq!(
            above(&layout, &BTreeSet::from([pot])).len(),
            2,
            "mussels go with their pot"
        );
    }
}
