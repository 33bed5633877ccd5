//! Much that is strewn: what it costs is counted in pieces and steps, and all
//! of it can be taken back.
use planner::catalogue::{self, Kind};
use planner::commands::{remove, strew};
use planner::drawing::{View, groups};
use planner::edit::{History, Run};
use planner::layout::{Id, Layout, LayoutId, Point, Size};
use planner::scene::Scene;
use planner::starters::harbour_supper;

fn kinds() -> impl Iterator<Item = &'static catalogue::Entry> {
    catalogue::foods()
        .iter()
        .filter(|food| food.kind == Kind::Scatter)
}

/// Loops and lines drawn for all things that stand or lie on a table.
fn drawn(layout: &Layout) -> usize {
    let keyed = groups(layout, &View::default());
    let items = keyed.iter().filter(|k| k.key.starts_with("item-"));
    items
        .map(|k| k.group.to_string().matches('M').count())
        .sum()
}

/// Strews along paths across the table until something refuses, `times` at
/// most; each is a step of its own.
fn strewn(history: &mut History, times: usize) -> usize {
    let kinds: Vec<&str> = kinds().map(|food| food.id).collect();
    for n in 0..times {
        let y = 60 + (n as i32 * 37) % 800;
        let path = [Point::new(20, y), Point::new(1_500, y)];
        let prop = kinds[n % kinds.len()];
        let act = strew(history.layout(), prop, &path, 4).expect("along a path");
        if history.make(&act.name, act.edit, Run::Alone).is_err() {
            return n;
        }
    }
    times
}

fn pieces(layout: &Layout) -> usize {
    Scene::of(layout, None).pieces.len()
}

#[test]
fn a_vast_scatter_is_drawn_of_no_more_pieces_than_a_large_one() {
    for food in kinds() {
        let of = |side: i32| {
            let mut layout = Layout::empty(LayoutId(9));
            let mut item = catalogue::item_from(food, Id(1), 1, Point::new(500, 400));
            item.size = Size::Oval {
                width: side,
                depth: side,
                rim: 0,
            };
            layout.items.push(item);
            (drawn(&layout), pieces(&layout))
        };
        let (large, vast) = (of(2_000), of(10_000));
        assert!(vast.0 <= 2_000, "{}: {} loops", food.id, vast.0);
        assert!(
            vast.0 <= large.0 + large.0 / 4 + 8,
            "{}: {large:?}, {vast:?}",
            food.id
        );
        assert!(of(40).0 < vast.0, "{}: a pinch is fewer", food.id);
        assert_eq!(vast.1, 1, "{}: no piece of it is read", food.id);
    }
}

#[test]
fn two_hundred_strewn_things_are_taken_back_step_by_step_and_made_again() {
    let before = harbour_supper();
    let mut history = History::new(before.clone());
    let items = before.items.len();
    assert_eq!(strewn(&mut history, 25), 25, "room for all");
    let after = history.layout().clone();
    assert_eq!(after.items.len(), items + 200, "eight along each path");
    let more = drawn(&after) - drawn(&before);
    assert!(more > 2_000, "more than two thousand pieces: {more}");
    assert!(more < 200 * 200, "and not without end: {more}");
    assert_eq!(pieces(&after), pieces(&before), "crumbs are not read");
    for _ in 0..25 {
        history.undo().expect("fits").expect("a step");
    }
    assert!(!history.can_undo(), "no step is left");
    assert!(*history.layout() == before, "as it was");
    for _ in 0..25 {
        history.redo().expect("fits").expect("a step");
    }
    assert!(*history.layout() == after, "all of it again");
}

#[test]
fn strewing_past_the_limit_is_refused_and_changes_nothing() {
    let mut history = History::new(harbour_supper());
    let room = (planner::layout::MAX_ITEMS - history.layout().items.len()) / 8;
    let done = strewn(&mut history, 200);
    assert_eq!(done, room, "as many as fit");
    let full = history.layout().clone();
    assert_eq!(strewn(&mut history, 1), 0, "no more");
    assert!(*history.layout() == full, "and nothing changed");
    let all: Vec<Id> = full.items.iter().map(|item| item.id).collect();
    let act = remove(&full, &all).expect("nothing is locked");
    history.make(&act.name, act.edit, Run::Alone).expect("fits");
    assert!(history.layout().items.is_empty(), "all away in one step");
    history.undo().expect("fits").expect("a step");
    assert!(*history.layout() == full, "and back in one");
    for _ in 0..done {
        history.undo().expect("fits").expect("a step");
    }
    assert!(*history.layout() == harbour_supper(), "to the beginning");
}
