//! Bytes a phone has to fetch, held to the budgets.

use std::fs;

use anyhow::{Context, Result};

use super::tally::Tally;
use crate::{place, site};

/// kB are 1,000 bytes, after `gzip -9` where a server would compress.
const KILO: usize = 1000;
/// The core's module, compressed. The goal is 220, and until it is met this
/// holds what there is from growing: a commit that raises it says why. The same
/// for the two below.
const WASM: usize = 906 * KILO;
/// All a first visit fetches, compressed: the page and what the service worker
/// keeps, so that the second visit needs no network. Icons for a home screen
/// are fetched only when the page is put there.
const FIRST_VISIT: usize = 1_041 * KILO; // goal: 300
/// What makes papers, compressed: fetched when the first one is asked for, or in
/// the background after the first visit. Of it 130 kB are the serif; papers read
/// as SVG, PDF and its fonts, lists and calendars the rest.
const LATER: usize = 300 * KILO;
/// What shows the picture of a link, compressed: fetched before the rest where
/// the planner never was. A client on 1.6 Mbit/s is to see it within 2.5 s.
const EARLY: usize = 310 * KILO;
/// The page in one file, as it lies on a disk.
const SINGLE_FILE: usize = 1_551 * KILO; // goal: 600

/// Holds what was built last to the budgets.
///
/// # Errors
/// When nothing has been built.
pub(super) fn check() -> Result<Tally> {
    let dist = place::dist();
    let single = fs::metadata(dist.join(site::SINGLE_FILE))
        .context("no single file: run `cargo xtask dist` first")?;
    let mut wasm = 0;
    let mut visit = 0;
    let mut later = 0;
    let mut early = 0;
    for name in site::listing(&dist)? {
        if name == site::SINGLE_FILE || name.ends_with(".png") {
            continue;
        }
        let bytes = site::gzipped_len(&fs::read(dist.join(&name))?)?;
        println!("{bytes:>8} B  {name}");
        if site::is_later(&name) {
            later += bytes;
            continue;
        }
        if site::is_early(&name) {
            early += bytes;
            continue;
        }
        visit += bytes;
        if name.ends_with(".wasm") {
            wasm += bytes;
        }
    }
    let single = usize::try_from(single.len()).unwrap_or(usize::MAX);
    Ok(held("wasm, gzip -9", wasm, WASM)
        + held("first visit, gzip -9", visit, FIRST_VISIT)
        + held("papers, gzip -9", later, LATER)
        + held("picture of a link, gzip -9", early, EARLY)
        + held("single file", single, SINGLE_FILE))
}

fn held(what: &str, bytes: usize, budget: usize) -> Tally {
    let holds = bytes > 0 && bytes <= budget;
    let word = if holds { "within" } else { "NOT WITHIN" };
    println!("{what}: {bytes} B, {word} {budget} B");
    Tally::one(holds)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_budget_holds_up_to_its_last_byte() {
        assert_eq!(
            held("exact", 5, 5),
            Tally::one(true),
            "the budget itself is allowed"
        );
        assert_eq!(
            held("over", 6, 5),
            Tally::one(false),
            "one byte more is not"
        );
        assert_eq!(
            held("nothing", 0, 5),
            Tally::one(false),
            "a missing file is no saving"
        );
    }
}
