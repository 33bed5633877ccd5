//! Prints the table of sixty dishes that the benches measure, as a file of the
//! planner, so that the page is measured on the very same.
//!
//! `cargo run -p planner --example full_table > full-table.spread.json`

#[path = "../benches/full_table/mod.rs"]
mod full_table;

fn main() {
    println!("{}", full_table::laid(60).to_json());
}
