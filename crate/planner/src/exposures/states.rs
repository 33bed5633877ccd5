//! How things are in an exposure.
use crate::layout::{As, Exposure, ExposureKind, Hand, Id, Item, Layout, Parts, State};
use crate::scene::silhouette;
use crate::shape::contains;

/// How a thing is in an exposure; as it is set when nothing else is told.
#[must_use]
pub fn state_of(exposure: &Exposure, item: Id) -> As {
    let told = exposure.states.iter().find(|s| s.item == item);
    told.map_or(As::Set, |s| s.is)
}

/// The hands of an exposure that hold a thing.
pub fn held_in<'a>(
    layout: &'a Layout,
    exposure: Id,
    item: Id,
) -> impl Iterator<Item = &'a Hand> + 'a {
    let own = move |h: &&Hand| h.exposure == exposure && h.holds == Some(item);
    layout.hands.iter().filter(own)
}

/// The table as it stands in one exposure: only its hands, what is absent
/// taken away with all that stands on it, what is moved or changed so. Of an
/// empty table nothing is left.
#[must_use]
pub fn in_exposure(layout: &Layout, exposure: Id) -> Layout {
    let mut then = layout.clone();
    then.hands.retain(|h| h.exposure == exposure);
    let Some(own) = layout.exposures.iter().find(|e| e.id == exposure) else {
        return then;
    };
    if own.kind == ExposureKind::Empty {
        then.items.clear();
        then.linens.clear();
        return then;
    }
    // What carries is moved before what it carries, so that this comes to stand
    // where it is told to.
    let mut moves: Vec<&State> = own.states.iter().filter(|s| s.is == As::Moved).collect();
    crate::order::sort(&mut moves, |a, b| {
        below(layout, a.item).cmp(&below(layout, b.item))
    });
    for state in moves {
        moved(&mut then, state);
    }
    for state in &own.states {
        match state.is {
            As::Set | As::Moved => {}
            As::Absent => take_away(&mut then, state.item),
            As::Changed => {
                if let (Some(item), Some(parts)) = (find(&mut then, state.item), &state.parts) {
                    recolour(item, parts);
                }
            }
        }
    }
    then
}

/// How many things lie below one.
fn below(layout: &Layout, id: Id) -> usize {
    let under = |id: &Id| layout.items.iter().find(|i| i.id == *id)?.on;
    let way = core::iter::successors(Some(id), under);
    way.take(layout.items.len()).count()
}

/// The parts that are told of look so, the others as they did.
fn recolour(item: &mut Item, told: &Parts) {
    let own = &mut item.parts;
    for (own, told) in [
        (&mut own.rim, &told.rim),
        (&mut own.well, &told.well),
        (&mut own.food, &told.food),
    ] {
        if told.is_some() {
            own.clone_from(told);
        }
    }
}

fn find(layout: &mut Layout, id: Id) -> Option<&mut Item> {
    layout.items.iter_mut().find(|i| i.id == id)
}

/// Takes a thing away with all that stands on it.
fn take_away(layout: &mut Layout, id: Id) {
    let mut gone = vec![id];
    let mut n = 0;
    while let Some(below) = gone.get(n).copied() {
        let on = layout.items.iter().filter(|i| i.on == Some(below));
        gone.extend(on.map(|i| i.id));
        n += 1;
    }
    layout.items.retain(|i| !gone.contains(&i.id));
    for linen in &mut layout.linens {
        linen.over.retain(|id| !gone.contains(id));
    }
    for hand in &mut layout.hands {
        hand.holds = hand.holds.filter(|id| !gone.contains(id));
    }
    for crop in &mut layout.crops {
        crop.must_show.retain(|id| !gone.contains(id));
    }
}

/// Moves a thing with all that stands on it.
fn moved(layout: &mut Layout, state: &State) {
    let Some(item) = find(layout, state.item) else {
        return;
    };
    if let Some(turn) = state.turn {
        item.turn = turn;
    }
    let Some(at) = state.at else {
        return;
    };
    let (dx, dy) = (at.x - item.at.x, at.y - item.at.y);
    let mut along = vec![state.item];
    let mut n = 0;
    while let Some(below) = along.get(n).copied() {
        let on = layout.items.iter().filter(|i| i.on == Some(below));
        along.extend(on.map(|i| i.id));
        n += 1;
    }
    for item in layout.items.iter_mut().filter(|i| along.contains(&i.id)) {
        item.at = item.at.moved(dx, dy);
    }
    // What is moved off its dish stands on the table.
    let own = layout.items.iter().find(|i| i.id == state.item);
    let dish = own.and_then(|own| layout.items.iter().find(|i| Some(i.id) == own.on));
    let off = dish.is_some_and(|dish| !contains(&silhouette(dish), at.vec()));
    if let Some(item) = find(layout, state.item).filter(|_| off) {
        item.on = None;
    }
}

/// The states food goes through: every set of changed things that some
/// exposure shows, each once, beginning with none changed.
#[must_use]
pub fn food_states(layout: &Layout) -> Vec<Vec<(Id, Parts)>> {
    let mut out: Vec<Vec<(Id, Parts)>> = vec![Vec::new()];
    for exposure in &layout.exposures {
        let changed = changes(exposure);
        if !out.contains(&changed) {
            out.push(changed);
        }
    }
    out
}

/// What is changed in an exposure, in the order of ids.
pub(crate) fn changes(exposure: &Exposure) -> Vec<(Id, Parts)> {
    let changed = exposure.states.iter().filter(|s| s.is == As::Changed);
    let mut out: Vec<(Id, Parts)> = changed
        .map(|s| (s.item, s.parts.clone().unwrap_or_default()))
        .collect();
    crate::order::sort(&mut out, |a, b| a.0.cmp(&b.0));
    out
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::commands::move_in;
    use crate::layout::{Part, Point, Srgb, open};

    fn laid(states: &str) -> Layout {
        let text = format!(
            r##"{{"format":"overspread-layout","version":0,"id":"0000000000000001","next_id":40,
            "table":{{"width":1600,"depth":900}},"frame":{{"at":[800,450],"width":1300}},
            "items":[
              {{"id":1,"prop":"small-bowl","at":[500,400],"size":{{"shape":"disc","diameter":140}}}},
              {{"id":2,"prop":"olives","on":1,"at":[510,400],"size":{{"shape":"disc","diameter":100}}}},
              {{"id":3,"prop":"loaf","at":[900,400],"size":{{"shape":"oval","width":300,"depth":160}}}}],
            "people":[{{"id":4}}],
            "exposures":[{{"id":5,"kind":"clean"}},{{"id":6,"states":[{states}]}},{{"id":7,"kind":"empty"}}],
            "hands":[{{"id":8,"person":4,"exposure":6,"entry":[0,0],"target":[500,400],"holds":1}}]}}"##
        );
        open(&text).expect("a sound layout")
    }

    fn ids(layout: &Layout) -> Vec<u16> {
        layout.items.iter().map(|i| i.id.0).collect()
    }

    #[test]
    fn what_is_absent_takes_along_what_stands_on_it() {
        let then = in_exposure(&laid(r#"{"item":1,"state":"absent"}"#), Id(6));
        assert_eq!(ids(&then), [3], "the olives go with their bowl");
        assert_eq!(then.hands[0].holds, None, "and no hand holds it");
        assert_eq!(then.hands.len(), 1, "its own hands");
    }

    #[test]
    fn what_is_moved_takes_along_what_stands_on_it() {
        let moved = laid(r#"{"item":1,"state":"moved","at":[700,450],"turn":90}"#);
        let then = in_exposure(&moved, Id(6));
        let at: Vec<(i32, i32)> = then.items.iter().map(|i| (i.at.x, i.at.y)).collect();
        assert_eq!(at, [(700, 450), (710, 450), (900, 400)]);
        assert_eq!(in_exposure(&moved, Id(5)).items, moved.items, "as set");
    }

    #[test]
    fn what_lies_on_a_moved_thing_comes_to_stand_where_it_is_told_to() {
        let olives = r#"{"item":2,"state":"moved","at":[720,450]}"#;
        let bowl = r#"{"item":1,"state":"moved","at":[700,450]}"#;
        for states in [format!("{olives},{bowl}"), format!("{bowl},{olives}")] {
            let then = in_exposure(&laid(&states), Id(6));
            assert_eq!(then.items[1].at, Point::new(720, 450), "{states}");
            assert_eq!(then.items[1].on, Some(Id(1)), "still in its bowl");
        }
        let out = in_exposure(&laid(r#"{"item":2,"state":"moved","at":[720,450]}"#), Id(6));
        assert_eq!(out.items[1].on, None, "out of its bowl, on the table");
    }

    #[test]
    fn only_what_is_told_of_a_changed_thing_changes() {
        let cut = r##"{"item":3,"state":"changed","parts":{"food":{"colours":[{"srgb":"#ffffff","share":100,"origin":"guess"}]}}}"##;
        let mut layout = laid(cut);
        layout.items[2].parts.rim = Some(Part::plain(Srgb::hex(0x12_3456)));
        let then = in_exposure(&layout, Id(6));
        assert_eq!(
            then.items[2].parts.rim, layout.items[2].parts.rim,
            "its dish"
        );
        assert_ne!(then.items[2].parts.food, layout.items[2].parts.food, "cut");
    }

    #[test]
    fn a_dish_moved_by_hand_takes_its_food_along() {
        let layout = laid("");
        let act = move_in(&layout, Id(6), Id(1), [30, 0], 0).expect("there");
        let mut after = layout.clone();
        act.edit.apply_checked(&mut after).expect("it fits");
        let then = in_exposure(&after, Id(6));
        assert_eq!(then.items[1].at, Point::new(540, 400), "the olives too");
        assert_eq!(after.items, layout.items, "set where they were");
    }

    #[test]
    fn an_empty_table_is_empty_and_gone_things_change_nothing() {
        let layout = laid(r#"{"item":77,"state":"absent"},{"item":78,"state":"moved","at":[1,1]}"#);
        assert_eq!(ids(&in_exposure(&layout, Id(6))), [1, 2, 3]);
        assert!(in_exposure(&layout, Id(7)).items.is_empty(), "empty");
        assert!(in_exposure(&layout, Id(99)).hands.is_empty(), "no such");
    }

    #[test]
    fn each_state_of_the_food_counts_once() {
        let cut = r##"{"item":3,"state":"changed","parts":{"food":{"colours":[{"srgb":"#ffffff","share":100,"origin":"guess"}]}}}"##;
        let layout = laid(cut);
        let states = food_states(&layout);
        assert_eq!(states.len(), 2, "whole and cut");
        assert_eq!(states[1][0].0, Id(3));
        let then = in_exposure(&layout, Id(6));
        assert_ne!(then.items[2].parts, layout.items[2].parts, "it is cut");
    }
}
