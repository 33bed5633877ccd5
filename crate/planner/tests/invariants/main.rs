//! What holds of every table and every act on it.
mod proposals;
mod random;

use std::cell::Cell;

use planner::commands::{move_by, moving};
use planner::drawing::{Shown, sheet};
use planner::edit::{Edit, History};
use planner::layout::{Id, Item, Layout, open};
use planner::link::{link, unlink};
use planner::optics::View;
use planner::readings::{Finding, Kept, Mark, Report, Settling, Study, live, report};
use proptest::prelude::*;
use proptest::test_runner::Config;

use random::{act, laid, steps, tables};

fn read(layout: &Layout) -> Report {
    report(&Study::new(layout), true)
}

/// All a report says, finding by finding, figures to the last bit.
fn said(report: &Report) -> Vec<String> {
    let scores = format!("{:?}", report.scores);
    let all = report.findings.iter().map(|finding| {
        let mut bare = finding.clone();
        // Whole objects stand in a remedy's edit, with their places in the file.
        let cure = bare
            .remedy
            .take()
            .map(|r| (r.act, r.predicted, r.after.to_bits()));
        let text = serde_json::to_string(&bare).expect("plain data");
        format!("{} {cure:?} {text}", bare.figure.to_bits())
    });
    all.chain([scores]).collect()
}

/// The first place where two reports say something else.
fn apart(one: &Report, other: &Report) -> Option<(Option<String>, Option<String>)> {
    let (one, other) = (said(one), said(other));
    let longest = one.len().max(other.len());
    let pairs = (0..longest).map(|n| (one.get(n).cloned(), other.get(n).cloned()));
    pairs.into_iter().find(|(one, other)| one != other)
}

/// The report made in slices that end when the hand of `deal` that is next says,
/// and what it leaves behind.
fn in_slices(layout: &Layout, before: Option<&Kept>, deal: &[bool]) -> (Report, Kept) {
    let mut settling = Settling::begin(layout, before, Id(0));
    let next = Cell::new(0);
    let go_on = || deal[next.replace(next.get() + 1) % deal.len()];
    loop {
        if let Some(report) = settling.step(&go_on) {
            return (report, settling.keep());
        }
    }
}

/// How far a thing reaches from its middle at most, mm.
fn reach(item: &Item) -> f64 {
    let [width, depth] = item.size.extent().map(f64::from);
    0.5 * glam::dvec2(width, depth).length()
}

/// Whether nothing that stands on the table can touch another.
fn lie_apart(layout: &Layout) -> bool {
    let standing = layout.items.iter().filter(|o| o.on.is_none());
    let standing: Vec<&Item> = standing.collect();
    standing.iter().enumerate().all(|(n, a)| {
        let mut later = standing[n + 1..].iter();
        later.all(|b| a.at.vec().distance(b.at.vec()) > reach(a) + reach(b))
    })
}

fn edits(report: &Report) -> Vec<&Edit> {
    let remedies = report.findings.iter().filter_map(|f| f.remedy.as_ref());
    remedies.map(|r| &r.edit).collect()
}

fn points(mark: &Mark) -> Vec<f64> {
    let flat = |points: &[glam::DVec2]| points.iter().flat_map(|p| p.to_array()).collect();
    match mark {
        Mark::LostEdge { line } | Mark::StopLine { line, .. } => flat(line),
        Mark::Gap { from, to, .. } | Mark::Arrow { from, to } | Mark::Tip { from, to } => {
            flat(&[*from, *to])
        }
        Mark::Overrun { outline, .. }
        | Mark::Area { outline, .. }
        | Mark::Group { outline }
        | Mark::Added { outline, .. }
        | Mark::Glare { outline }
        | Mark::Ghost { outline } => flat(outline),
        Mark::Label { at, .. } | Mark::Swatch { at, .. } => flat(&[*at]),
        Mark::Triangle { corners } => flat(corners),
        Mark::Ring { at, radius } => vec![at.x, at.y, *radius],
    }
}

/// A twenty-fourth of the usual number of cases: in each a whole table is laid,
/// changed and read.
fn fewer() -> Config {
    let mut config = Config::default();
    config.cases = (config.cases / 24).max(1);
    config
}

proptest! {
    #![proptest_config(fewer())]

    #[test]
    fn findings_after_any_acts_are_those_of_the_layout_opened_fresh(
        start in tables(),
        steps in steps(8),
    ) {
        let mut history = History::new(start);
        let mut kept = Study::new(history.layout()).keep();
        for step in steps {
            // As the page's worker reads: going on from what was read before.
            let study = Study::after(history.layout(), &kept);
            drop(report(&study, false));
            kept = study.keep();
            act(&mut history, step);
        }
        let file = history.layout().to_json();
        let fresh = open(&file).expect("its own file opens");
        prop_assert_eq!(&fresh, history.layout(), "the layout");
        let (one, other) = (read(&fresh), read(history.layout()));
        prop_assert_eq!(apart(&one, &other), None, "the findings");
        prop_assert!(edits(&one) == edits(&other), "what they propose");
        let over = Study::after(history.layout(), &kept);
        prop_assert_eq!(live(&over), live(&Study::new(&fresh)), "in a drag");
        prop_assert_eq!(apart(&one, &report(&over, true)), None, "after the last act");
    }

    #[test]
    fn a_report_in_slices_is_the_one_made_in_one_go(
        start in tables(),
        steps in steps(3),
        deal in prop::collection::vec(any::<bool>(), 1..9),
    ) {
        let mut history = History::new(start);
        let mut kept: Option<Kept> = None;
        for step in steps {
            let (report, left) = in_slices(history.layout(), kept.as_ref(), &deal);
            let whole = read(history.layout());
            prop_assert_eq!(apart(&report, &whole), None, "the findings");
            prop_assert!(report == whole, "and all else");
            kept = Some(left);
            act(&mut history, step);
        }
    }

    #[test]
    fn undo_after_acts_is_the_identity_on_bytes(start in tables(), steps in steps(12)) {
        let mut history = History::new(start);
        let mut files = vec![history.layout().to_json()];
        for step in steps {
            if act(&mut history, step) {
                files.push(history.layout().to_json());
            }
        }
        for file in files.iter().rev().skip(1) {
            history.undo().expect("fits").expect("there is one");
            prop_assert_eq!(&history.layout().to_json(), file, "taken back");
        }
        prop_assert!(!history.can_undo(), "no more steps than acts");
        for file in files.iter().skip(1) {
            history.redo().expect("fits").expect("there is one");
            prop_assert_eq!(&history.layout().to_json(), file, "made again");
        }
    }

    #[test]
    fn save_after_open_is_the_identity_on_canonical_files(start in tables(), steps in steps(8)) {
        let mut history = History::new(start);
        for step in steps {
            act(&mut history, step);
        }
        let file = history.layout().to_json();
        let again = open(&file).expect("its own file opens").to_json();
        prop_assert_eq!(again, file, "byte for byte");
    }

    #[test]
    fn unlink_of_link_is_the_layout(start in tables(), steps in steps(8)) {
        let mut history = History::new(start);
        for step in steps {
            act(&mut history, step);
        }
        let made = link(history.layout());
        prop_assert_eq!(made.losses, Vec::<String>::new(), "no unknown fields, no losses");
        let back = unlink(&made.fragment).expect("its own link opens");
        prop_assert_eq!(&back.layout, history.layout(), "the layout");
    }

    #[test]
    fn no_finding_depends_on_the_order_of_things_that_lie_apart(
        (start, order) in laid(0, 3).prop_filter("lie apart", lie_apart).prop_flat_map(|l| {
            let order: Vec<usize> = (0..l.items.len()).collect();
            (Just(l), Just(order).prop_shuffle())
        }),
    ) {
        let mut other = start.clone();
        other.items = order.into_iter().map(|n| start.items[n].clone()).collect();
        prop_assert_eq!(apart(&read(&other), &read(&start)), None, "in any order");
    }

    #[test]
    fn every_remedy_yields_the_figure_it_promised(start in tables(), steps in steps(4)) {
        let mut history = History::new(start);
        for step in steps {
            act(&mut history, step);
        }
        for finding in read(history.layout()).findings {
            let Some(remedy) = finding.remedy else { continue };
            let mut after = history.layout().clone();
            remedy.edit.apply_checked(&mut after).expect("fits the layout it was made for");
            let now = read(&after).findings.into_iter().find(|f: &Finding| f.key == finding.key);
            match now {
                Some(now) => prop_assert_eq!(
                    now.figure.to_bits(), remedy.after.to_bits(),
                    "{}: {} promised {}, got {}",
                    finding.key, remedy.act, remedy.after, now.figure
                ),
                None => prop_assert!(
                    (remedy.after > finding.figure) == finding.rule.falls
                        && remedy.after.to_bits() != finding.figure.to_bits(),
                    "{}: {} is cured", finding.key, remedy.act
                ),
            }
        }
    }

    #[test]
    fn no_number_is_missing_or_endless(start in tables(), steps in steps(8)) {
        let mut history = History::new(start);
        for step in steps {
            act(&mut history, step);
        }
        let report = read(history.layout());
        for finding in &report.findings {
            prop_assert!(finding.figure.is_finite(), "{}: {}", finding.key, finding.figure);
            let after = finding.remedy.as_ref().map_or(0.0, |r| r.after);
            prop_assert!(after.is_finite(), "{}: {after}", finding.key);
            let all = finding.marks.iter().flat_map(points);
            prop_assert!(all.into_iter().all(f64::is_finite), "{}: marks", finding.key);
        }
        if let Some(scores) = report.scores {
            let all = [scores.balance, scores.triangle, scores.separation];
            prop_assert!(all.into_iter().flatten().all(f64::is_finite), "{scores:?}");
        }
        for eye in [View::Above, View::of(history.layout())] {
            let drawing = sheet(history.layout(), Shown::All, eye);
            for word in ["NaN", "\"inf", "-inf"] {
                prop_assert!(!drawing.contains(word), "{word} in the drawing, {eye:?}");
            }
        }
    }

    #[test]
    fn no_act_changes_what_is_locked(start in tables(), locks in any::<u64>(), steps in steps(12)) {
        let mut start = start;
        let locked = |n: usize| locks >> (n % 64) & 1 == 1;
        for (n, item) in start.items.iter_mut().enumerate() {
            item.locked = locked(n);
        }
        for (n, linen) in start.linens.iter_mut().enumerate() {
            linen.locked = locked(n + 31);
        }
        let mut history = History::new(start.clone());
        for step in steps {
            act(&mut history, step);
            let now = history.layout();
            for item in start.items.iter().filter(|o| o.locked) {
                prop_assert!(now.items.contains(item), "{:?} moved {:?}", step, item);
            }
            for linen in start.linens.iter().filter(|o| o.locked) {
                prop_assert!(now.linens.contains(linen), "{:?} moved {:?}", step, linen);
            }
        }
    }

    #[test]
    fn what_goes_along_keeps_its_place_among_its_own(
        start in laid(4, 3),
        steps in steps(6),
        which in any::<usize>(),
        by in [-600_i32..600, -600_i32..600],
    ) {
        let mut history = History::new(start);
        for step in steps {
            act(&mut history, step);
        }
        let before = history.layout().clone();
        let Some(chosen) = before.items.get(which % before.items.len().max(1)) else {
            return Ok(());
        };
        let along = moving(&before, chosen.id);
        let Ok(moved) = move_by(&before, chosen.id, false, by) else {
            let locked = |o: &Item| o.locked && along.contains(&o.id);
            prop_assert!(before.items.iter().any(locked), "why is it held?");
            return Ok(());
        };
        let mut after = before.clone();
        if moved.edit.apply_checked(&mut after).is_err() {
            return Ok(());
        }
        for (was, is) in before.items.iter().zip(&after.items) {
            let mut expected = was.clone();
            if along.contains(&was.id) {
                expected.at = was.at.moved(by[0], by[1]);
            }
            prop_assert_eq!(is, &expected, "moved as one, or not at all");
            let same_group = was.group.is_some() && was.group == chosen.group;
            prop_assert!(!same_group || along.contains(&was.id), "its whole group");
        }
    }
}

#[test]
fn the_demonstration_read_in_slices_is_the_same() {
    let layout = planner::starters::harbour_supper();
    let (report, _) = in_slices(&layout, None, &[false]);
    assert!(report == read(&layout), "as little at a time as can be");
}
