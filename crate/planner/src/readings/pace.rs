//! How far a report gets at a time.
//!
//! Looking for remedies takes longest: each change tried is a study of its own.
//! Whoever reads in slices is asked between them whether to go on; what was
//! found out by then is known when the reading is made again.
use std::cell::{Cell, RefCell};

use super::finding::Remedy;

/// What is known of the searches of one reading.
#[derive(Default)]
pub(super) struct Found {
    /// What each finding's search came to.
    remedies: Vec<(String, Option<Remedy>)>,
    /// What each change tried led to.
    figures: Vec<(String, usize, Option<f64>)>,
}

/// One slice of work.
pub(super) struct Pace<'a> {
    go_on: &'a dyn Fn() -> bool,
    /// Whether nothing new has been found out in this slice.
    fresh: Cell<bool>,
    stopped: Cell<bool>,
    found: RefCell<Found>,
}

impl<'a> Pace<'a> {
    /// A slice that asks this before it goes on.
    pub(super) fn new(go_on: &'a dyn Fn() -> bool, found: Found) -> Self {
        Self {
            go_on,
            fresh: Cell::new(true),
            stopped: Cell::new(false),
            found: RefCell::new(found),
        }
    }

    /// Whether a search was broken off, so that the reading is not whole.
    pub(super) const fn stopped(&self) -> bool {
        self.stopped.get()
    }

    /// Forgets what was found, the reading being whole.
    pub(super) fn next(&self) {
        self.found.take();
        self.got_on();
    }

    /// Something new has been found out in this slice.
    pub(super) fn got_on(&self) {
        self.fresh.set(false);
    }

    /// What is to be known in the next slice.
    pub(super) fn leave_off(self) -> Found {
        self.found.into_inner()
    }

    pub(super) fn remedy(&self, key: &str, find: &dyn Fn() -> Option<Remedy>) -> Option<Remedy> {
        if let Some(known) = self.found.borrow().remedies.iter().find(|k| k.0 == key) {
            return known.1.clone();
        }
        if !self.goes_on() {
            return None;
        }
        let found = find();
        if self.stopped() {
            return None;
        }
        self.got_on();
        let mut all = self.found.borrow_mut();
        all.remedies.push((key.to_owned(), found.clone()));
        found
    }

    pub(super) fn figure(
        &self,
        key: &str,
        n: usize,
        find: &dyn Fn() -> Option<f64>,
    ) -> Option<f64> {
        let asked = |k: &&(String, usize, _)| k.1 == n && k.0 == key;
        if let Some(known) = self.found.borrow().figures.iter().find(asked) {
            return known.2;
        }
        if !self.goes_on() {
            return None;
        }
        let found = find();
        self.got_on();
        let mut all = self.found.borrow_mut();
        all.figures.push((key.to_owned(), n, found));
        found
    }

    /// Each slice finds out something new, however little time there is.
    pub(super) fn goes_on(&self) -> bool {
        if !self.stopped() && !self.fresh.get() && !(self.go_on)() {
            self.stopped.set(true);
        }
        !self.stopped()
    }
}
