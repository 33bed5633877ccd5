//! Writes the list or the calendar that programs of others are given to judge.
#[path = "../tests/samples/mod.rs"]
mod samples;

use std::io::Write as _;

fn main() -> std::io::Result<()> {
    let kind = std::env::args().nth(1).unwrap_or_default();
    let bytes = if kind == "ics" {
        samples::calendar()
    } else {
        samples::list()
    };
    std::io::stdout().write_all(&bytes)
}
