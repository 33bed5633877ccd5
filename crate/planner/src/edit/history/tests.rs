use super::*;
use crate::layout::{Id, LayoutId, Point, open};

fn laid(count: u16) -> Layout {
    let items: Vec<String> = (1..=count)
        .map(|n| {
            format!(
                r#"{{"id":{n},"number":{n},"name":"pot {n}","prop":"enamel-pot","at":[{},300],
                "size":{{"shape":"disc","diameter":200,"rim":8}}}}"#,
                n * 10
            )
        })
        .collect();
    let text = Layout::empty(LayoutId(1)).to_json();
    let text = text.replacen(
        "\"items\": []",
        &format!("\"items\": [{}]", items.join(",")),
        1,
    );
    let next = format!("\"next_id\": {}", count + 1);
    let text = text.replacen("\"next_id\": 1", &next, 1);
    let number = format!("\"next_number\": {}", count + 1);
    open(&text.replacen("\"next_number\": 1", &number, 1)).expect("sound")
}

/// Moves the first `count` items to a place as one act.
fn move_to(history: &mut History, count: usize, x: i32, run: Run) -> Option<Done> {
    let mut after = history.layout().clone();
    for item in after.items.iter_mut().take(count) {
        item.at = Point::new(x, 300);
    }
    let edit = Edit::between(history.layout(), &after);
    history.make("moved", edit, run).expect("fits")
}

fn x(history: &History) -> i32 {
    history.layout().items[0].at.x
}

fn undone(history: &mut History) -> Done {
    history.undo().expect("fits").expect("there is one")
}

/// What a page keeps of the acts on a layout.
#[derive(Default)]
struct Shelf {
    steps: Vec<(u32, String)>,
    at: u32,
}

impl Shelf {
    fn keep(&mut self, done: &Done) {
        self.steps
            .retain(|(n, _)| (done.first..done.end).contains(n));
        if let Some(record) = &done.record {
            self.steps.retain(|(n, _)| *n != done.at - 1);
            self.steps.push((done.at - 1, record.clone()));
        }
        self.at = done.at;
    }
}

#[test]
fn there_and_back_and_there_again() {
    let mut history = History::new(laid(1));
    let before = history.layout().to_json();
    move_to(&mut history, 1, 500, Run::Alone).expect("something changed");
    let after = history.layout().to_json();
    let back = undone(&mut history);
    assert_eq!(back.name, "taken back: moved", "said");
    let other = Edit::open(&back.edit).expect("its own text");
    assert_eq!(other.added(), [], "the edit made, for another instance");
    assert_eq!(history.layout().to_json(), before, "byte for byte");
    let again = history.redo().expect("fits").expect("there is one");
    assert_eq!(again.name, "again: moved", "said");
    assert_eq!(history.layout().to_json(), after, "byte for byte");
    assert!(history.redo().expect("nothing to fit").is_none(), "no more");
}

#[test]
fn what_changes_nothing_is_no_step() {
    let mut history = History::new(laid(1));
    assert!(move_to(&mut history, 1, 10, Run::Alone).is_none(), "there");
    assert!(!history.can_undo(), "no step");
}

#[test]
fn a_run_of_nudges_within_a_second_is_one_step() {
    let mut history = History::new(laid(1));
    for (n, at) in [0.0, 400.0, 1_400.0].into_iter().enumerate() {
        move_to(&mut history, 1, 11 + n as i32, Run::Nudge(at));
    }
    move_to(&mut history, 1, 99, Run::Nudge(2_400.1));
    undone(&mut history);
    assert_eq!(x(&history), 13, "the late one alone");
    undone(&mut history);
    assert_eq!(x(&history), 10, "the three before together");
    assert!(!history.can_undo(), "two steps in all");
}

#[test]
fn a_field_is_one_step_until_it_is_left() {
    let mut history = History::new(laid(2));
    let before = history.layout().to_json();
    move_to(&mut history, 1, 40, Run::Field(1));
    move_to(&mut history, 1, 50, Run::Field(1));
    let third = move_to(&mut history, 1, 60, Run::Field(2)).expect("made");
    assert_eq!((third.at, third.end), (2, 2), "another visit");
    move_to(&mut history, 2, 70, Run::Field(2));
    assert_eq!(undone(&mut history).at, 2, "other things, another step");
    undone(&mut history);
    assert_eq!(x(&history), 50, "the first visit as a whole");
    undone(&mut history);
    assert_eq!(history.layout().to_json(), before, "as it was");
}

#[test]
fn a_run_back_to_where_it_began_leaves_no_step() {
    let mut history = History::new(laid(1));
    move_to(&mut history, 1, 40, Run::Field(1));
    let back = move_to(&mut history, 1, 10, Run::Field(1)).expect("something changed");
    assert_eq!((back.at, back.end, back.record), (0, 0, None), "no step");
    assert!(!history.can_undo(), "nothing to take back");
}

#[test]
fn a_run_ends_when_it_is_taken_back() {
    let mut history = History::new(laid(1));
    move_to(&mut history, 1, 40, Run::Field(1));
    undone(&mut history);
    history.redo().expect("fits").expect("there is one");
    move_to(&mut history, 1, 50, Run::Field(1));
    undone(&mut history);
    assert_eq!(x(&history), 40, "a step of its own");
}

#[test]
fn a_new_step_replaces_those_taken_back() {
    let mut history = History::new(laid(1));
    for to in [20, 30, 40] {
        move_to(&mut history, 1, to, Run::Alone);
    }
    undone(&mut history);
    undone(&mut history);
    let done = move_to(&mut history, 1, 99, Run::Alone).expect("made");
    assert_eq!((done.first, done.at, done.end), (0, 2, 2), "number 1 anew");
    assert!(!history.can_redo(), "30 and 40 are gone");
    undone(&mut history);
    assert_eq!(x(&history), 20, "back to before");
}

#[test]
fn a_thousand_moves_of_a_place_setting_can_be_taken_back() {
    let mut history = History::new(laid(5));
    for n in 0..1_000 {
        move_to(&mut history, 5, n, Run::Alone);
    }
    let mut steps = 0;
    while history.undo().expect("fits").is_some() {
        steps += 1;
    }
    assert!(steps >= 500, "{steps} steps of five things each");
}

#[test]
fn the_oldest_steps_go_when_there_is_no_room() {
    let mut history = History::new(laid(400));
    let mut last = None;
    for n in 0..60 {
        last = move_to(&mut history, 400, n, Run::Alone);
    }
    let done = last.expect("made");
    assert!(done.first > 0 && done.first < 59, "some went: {done:?}");
    assert_eq!((done.at, done.end), (60, 60), "numbers go on");
    assert!(history.bytes <= MAX_HISTORY_BYTES, "{}", history.bytes);
    let held: usize = history.steps.iter().map(|s| s.bytes).sum();
    assert_eq!(held, history.bytes, "the count is kept");
    let mut back = 0;
    while history.undo().expect("fits").is_some() {
        back += 1;
    }
    assert_eq!(back, 60 - done.first, "the rest can be taken back");
}

#[test]
fn a_step_that_no_longer_fits_stays_and_is_said() {
    let mut history = History::new(laid(1));
    move_to(&mut history, 1, 40, Run::Alone);
    history.layout.items[0].at.x = 7;
    let stale = Err(EditError::Stale(super::super::Key::Item(Id(1))));
    assert_eq!(history.undo(), stale, "said");
    assert!(history.can_undo(), "the step stays");
    history.layout.items[0].at.x = 40;
    undone(&mut history);
    history.layout.items[0].at.x = 7;
    assert_eq!(history.redo(), stale, "said");
    assert!(history.can_redo(), "the step stays");
}

#[test]
fn steps_come_back_with_undo_and_redo_where_they_were() {
    let first = laid(2);
    let mut history = History::new(first.clone());
    let mut shelf = Shelf::default();
    for to in [20, 30, 40, 50] {
        shelf.keep(&move_to(&mut history, 1, to, Run::Alone).expect("made"));
    }
    shelf.keep(&undone(&mut history));
    shelf.keep(&undone(&mut history));
    // From the file of any moment: the steps lead to where it was.
    let mut moments = vec![(0, first)];
    for (n, to) in [20, 30, 40, 50].into_iter().enumerate() {
        let mut at_that_moment = moments[0].1.clone();
        at_that_moment.items[0].at.x = to;
        moments.push((n as u32 + 1, at_that_moment));
    }
    for (upto, file) in moments {
        let (mut again, lost) = History::restored(file, upto, shelf.at, &shelf.steps);
        assert_eq!(lost, None, "all of it, from step {upto}");
        assert_eq!(again.layout(), history.layout(), "the layout");
        assert_eq!(again.redo().expect("fits").expect("one").at, 3, "redo");
        assert_eq!(x(&again), 40, "redone");
        for at in [2, 1, 0] {
            assert_eq!(undone(&mut again).at, at, "undo");
        }
        assert_eq!(x(&again), 10, "to the beginning");
    }
}

#[test]
fn a_damaged_step_is_left_out_with_what_leads_on_from_it() {
    let mut history = History::new(laid(1));
    let mut shelf = Shelf::default();
    for to in [20, 30, 40] {
        shelf.keep(&move_to(&mut history, 1, to, Run::Alone).expect("made"));
    }
    let whole = shelf.steps.clone();
    shelf.steps[1].1.truncate(30);
    let (again, lost) = History::restored(laid(1), 0, 3, &shelf.steps);
    assert_eq!(lost.map(|l| l.number), Some(1), "named");
    assert_eq!((x(&again), again.can_redo()), (20, false), "up to it");
    let (mut again, lost) = History::restored(history.layout().clone(), 3, 3, &shelf.steps);
    assert_eq!(lost.map(|l| l.number), Some(1), "named");
    assert_eq!(x(&again), 40, "the file holds it");
    assert_eq!(undone(&mut again).first, 2, "back to just after it");
    assert!(!again.can_undo(), "no further");
    let (again, lost) = History::restored(laid(1), 0, 3, &whole[1..]);
    assert_eq!(lost.map(|l| l.number), Some(0), "a missing one too");
    assert_eq!(x(&again), 10, "the file as it is");
    let strange = [(0, String::new()), (9, "{}".into())];
    let (again, lost) = History::restored(laid(1), 4, 4, &strange);
    assert!(lost.is_some() && !again.can_undo(), "nothing of use");
}
