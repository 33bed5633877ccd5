//! Prints a table of so many dishes that the benches measure, as a file of the
//! planner, so that the page is measured on the very same.
//!
//! `cargo run -p benches 60 > full-table.spread.json`

use benches::full_table;

fn main() {
    let count = std::env::args().nth(1).and_then(|count| count.parse().ok());
    println!("{}", full_table::laid(count.unwrap_or(60)).to_json());
}
