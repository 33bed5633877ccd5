//! The search itself: ways of different character, one after the other, each
//! climbing from the layout as it is by changes that cost less than they cure.
//!
//! What the readings themselves propose is tried first, then changes aimed at
//! what costs most; half way through all is read again, for what new remedies
//! there are. At the end every change is tried without: what was not needed is
//! taken back. Deterministic for its seed and number of evaluations.
use std::rc::Rc;

use super::characters::{Character, characters};
use super::limits::Limits;
use super::moves::{apart, difference};
use super::proposal::{Proposal, explained};
use super::remedies::only_moves;
use super::steps::{Step, Steps, Unit};
use super::wish::Wish;
use crate::edit::{Edit, Key};
use crate::figure::dice::Dice;
use crate::layout::Layout;
use crate::readings::{Kept, Price, Report, Settling, Study, price};

/// A change must save so much to be kept at the end.
const WORTH: f64 = 0.4;
/// A proposal must save so much.
const LEAST_SAVED: f64 = 1.0;
/// Tries that break a limit before one counts as an evaluation.
const TRIES: u32 = 60;
/// Below so many evaluations a way is not read again half way.
const LONG: u32 = 40;
/// Two proposals are told apart by this share of what they change, and what
/// likeness beyond costs. Our choice.
pub const APART: f64 = 0.3;
const ALIKE: f64 = 12.0;

/// A search in hand. It owns all it works on.
pub struct Search {
    start: Layout,
    wish: Wish,
    limits: Limits,
    /// The report of the start, and the price.
    report: Report,
    price: Price,
    kept: Rc<Kept>,
    ways: Vec<Character>,
    at: usize,
    way: Option<Way>,
    found: Vec<Proposal>,
    spent: u32,
}

/// One way in hand.
struct Way {
    steps: Steps,
    dice: Dice,
    best: Layout,
    kept: Rc<Kept>,
    price: Price,
    /// What `best` costs, its changes included.
    cost: f64,
    spent: u32,
    share: u32,
    phase: Phase,
}

impl Way {
    /// After so many evaluations what is left goes into trying without.
    const fn last(&self) -> u32 {
        self.share * 9 / 10
    }
}

enum Phase {
    /// Remedies left to try, the next one last, and up to how many evaluations.
    Remedies(Vec<Edit>, u32),
    Climb(u32),
    Settle(Box<Settling>),
    Prune(Vec<Edit>),
    Close(Box<Settling>),
    Done,
}

impl Search {
    /// Begins a search from a layout and what its settled report says, going on
    /// from what was kept of that.
    #[must_use]
    pub fn begin(layout: &Layout, report: &Report, kept: Option<&Kept>, wish: Wish) -> Self {
        let study = kept.map_or_else(|| Study::new(layout), |kept| Study::after(layout, kept));
        let study = study.viewing(wish.crop);
        let price = price(&study, &wish.weighing, None);
        let limits = Limits::of(layout);
        Self {
            kept: Rc::new(study.keep()),
            ways: characters(&limits, layout, &wish),
            start: layout.clone(),
            limits,
            report: report.clone(),
            price,
            at: 0,
            way: None,
            found: Vec::new(),
            spent: 1,
            wish,
        }
    }

    /// Goes on for as long as `go_on` says, however little it does; whether it
    /// is through.
    pub fn step(&mut self, go_on: &dyn Fn() -> bool) -> bool {
        loop {
            let Some(character) = self.ways.get(self.at).copied() else {
                return true;
            };
            let mut way = match self.way.take() {
                Some(way) => way,
                None => self.way(&character),
            };
            self.advance(&mut way, &character, go_on);
            if matches!(way.phase, Phase::Done) {
                self.at += 1;
            } else {
                self.way = Some(way);
            }
            if !go_on() {
                return self.at >= self.ways.len();
            }
        }
    }

    /// Layouts priced so far, and in all.
    #[must_use]
    pub fn progress(&self) -> [u32; 2] {
        [self.spent.min(self.wish.evaluations), self.wish.evaluations]
    }

    /// What was found so far, each way when it is through.
    #[must_use]
    pub fn found(&self) -> &[Proposal] {
        &self.found
    }

    /// What the layout it began with costs.
    #[must_use]
    pub const fn price(&self) -> &Price {
        &self.price
    }

    fn way(&self, character: &Character) -> Way {
        let may = character.may.and(self.wish.may);
        let ways = self.ways.len().max(1) as u32;
        let share = (self.wish.evaluations / ways).max(1);
        let remedies = self.report.findings.iter();
        let remedies = remedies.filter_map(|f| Some(f.remedy.as_ref()?.edit.clone()));
        let mut remedies: Vec<Edit> = remedies.filter(|e| only_moves(e, may)).collect();
        remedies.reverse();
        Way {
            steps: Steps::of(
                &self.limits,
                &self.start,
                may,
                character.reach,
                character.swaps,
            ),
            dice: Dice::new(self.wish.seed, self.at as u64 + 1),
            best: self.start.clone(),
            kept: Rc::clone(&self.kept),
            price: self.price.clone(),
            cost: self.price.total + self.alike(&self.start),
            spent: 0,
            share,
            phase: Phase::Remedies(remedies, share / 2),
        }
    }

    /// What it costs to be like what was found before.
    fn alike(&self, layout: &Layout) -> f64 {
        let near = |p: &Proposal| {
            let far = difference(&self.limits, &self.start, layout, &p.layout);
            (1.0 - far / APART).max(0.0) * ALIKE
        };
        self.found.iter().map(near).sum()
    }

    fn advance(&mut self, way: &mut Way, character: &Character, go_on: &dyn Fn() -> bool) {
        let share = way.share;
        match std::mem::replace(&mut way.phase, Phase::Done) {
            Phase::Remedies(mut left, until) => match left.pop() {
                Some(edit) if way.spent < until => {
                    let mut after = way.best.clone();
                    if edit.apply(&mut after).is_ok() && self.limits.hold(&after) {
                        self.weigh(way, character, after, false);
                    }
                    way.phase = Phase::Remedies(left, until);
                }
                _ if until < way.last() && share >= LONG => {
                    way.phase = Phase::Climb(share * 6 / 10);
                }
                _ => way.phase = Phase::Climb(way.last()),
            },
            Phase::Climb(until) if way.spent < until && !way.steps.is_empty() => {
                match self.tried(way) {
                    Some(step) => {
                        let light = step.unit == Unit::Light;
                        self.weigh(way, character, step.after, light);
                    }
                    None => self.count(way),
                }
                way.phase = Phase::Climb(until);
            }
            Phase::Climb(until) if until < way.last() && !way.steps.is_empty() => {
                let settling = Settling::begin(&way.best, Some(&way.kept), self.wish.crop);
                way.phase = Phase::Settle(Box::new(settling));
            }
            Phase::Climb(_) => {
                way.phase = Phase::Prune(apart(&self.limits, &self.start, &way.best));
            }
            Phase::Settle(mut settling) => match settling.step(go_on) {
                None => way.phase = Phase::Settle(settling),
                Some(report) => {
                    let may = character.may.and(self.wish.may);
                    let edits = report.findings.into_iter().rev();
                    let edits = edits.filter_map(|f| Some(f.remedy?.edit));
                    let left: Vec<Edit> = edits.filter(|e| only_moves(e, may)).collect();
                    way.phase = Phase::Remedies(left, way.last());
                }
            },
            Phase::Prune(mut left) => match left.pop() {
                Some(edit) => {
                    let mut after = way.best.clone();
                    let back = edit.reverted().apply(&mut after).is_ok();
                    if back && self.limits.hold(&after) {
                        let light = edit.keys().any(|key| key == Key::Light);
                        let price = self.priced(way, &after, light);
                        let cost = self.cost(character, &after, &price);
                        // Where changes cost nothing, none is taken back for its own sake.
                        let worth = if character.by_change > 0.0 {
                            WORTH
                        } else {
                            0.0
                        };
                        if cost <= way.cost + worth {
                            way.best = after;
                            way.price = price;
                            way.cost = cost;
                        }
                    }
                    way.phase = Phase::Prune(left);
                }
                None => {
                    let settling = Settling::begin(&way.best, Some(&way.kept), self.wish.crop);
                    way.phase = Phase::Close(Box::new(settling.without_remedies()));
                }
            },
            Phase::Close(mut settling) => match settling.step(go_on) {
                None => way.phase = Phase::Close(settling),
                Some(report) => self.close(way, character, &report),
            },
            Phase::Done => {}
        }
    }

    /// The next change that breaks no limit.
    fn tried(&self, way: &mut Way) -> Option<Step> {
        for _ in 0..TRIES {
            let step = way
                .steps
                .some(&self.limits, &way.best, &way.price, &mut way.dice);
            let sound = |s: &Step| same_count(&s.after, &way.best) && self.limits.hold(&s.after);
            if let Some(step) = step.filter(sound) {
                return Some(step);
            }
        }
        None
    }

    fn count(&mut self, way: &mut Way) {
        way.spent += 1;
        self.spent += 1;
    }

    fn priced(&mut self, way: &mut Way, after: &Layout, light: bool) -> Price {
        self.count(way);
        let study = Study::after(after, &way.kept).viewing(self.wish.crop);
        let known = (!light).then_some(way.price.light);
        price(&study, &self.wish.weighing, known)
    }

    /// What a layout costs with what was changed to get there.
    fn cost(&self, character: &Character, after: &Layout, price: &Price) -> f64 {
        let moved = character.by_change * self.changes(after);
        price.total + moved + self.alike(after)
    }

    /// How many things are changed.
    fn changes(&self, after: &Layout) -> f64 {
        let bodies = self.limits.bodies().iter();
        let moved = bodies.filter(|b| {
            let placed = |l: &Layout| {
                l.items
                    .iter()
                    .find(|i| i.id == b.chief)
                    .map(|i| (i.at, i.turn))
            };
            placed(&self.start) != placed(after)
        });
        let pairs = |n: usize| n as f64;
        let linens = self.start.linens.iter().zip(&after.linens);
        let crops = self.start.crops.iter().zip(&after.crops);
        let seats = self.start.seats.iter().zip(&after.seats);
        pairs(moved.count())
            + pairs(linens.filter(|(a, b)| a != b).count())
            + pairs(crops.filter(|(a, b)| a != b).count())
            + pairs(seats.filter(|(a, b)| a != b).count())
            + f64::from(u8::from(self.start.light != after.light))
    }

    /// Prices a layout, and goes on from it when it costs less.
    fn weigh(&mut self, way: &mut Way, character: &Character, after: Layout, light: bool) {
        self.count(way);
        let study = Study::after(&after, &way.kept).viewing(self.wish.crop);
        let known = (!light).then_some(way.price.light);
        let price = price(&study, &self.wish.weighing, known);
        let cost = self.cost(character, &after, &price);
        if cost < way.cost {
            let kept = study.keep();
            way.kept = Rc::new(kept);
            way.price = price;
            way.cost = cost;
            way.best = after;
        }
    }

    fn close(&mut self, way: &mut Way, character: &Character, report: &Report) {
        let saved = self.price.total - way.price.total;
        if saved < LEAST_SAVED {
            return;
        }
        let edits = apart(&self.limits, &self.start, &way.best);
        let (from, to) = ((&self.start, &self.report), (&way.best, report));
        let prices = [self.price.total, way.price.total];
        self.found
            .push(explained(character.name, from, to, edits, prices));
    }
}

/// Whether nothing came or went.
fn same_count(a: &Layout, b: &Layout) -> bool {
    a.head == b.head && a.seats.len() == b.seats.len()
}
