//! Every page of every paper of a layout as a file of its own:
//! `cargo run -p planner --example papers LAYOUT DIR`.
use std::fs;

use planner::layout::open;
use planner::papers::{Paper, Sheet, pages};

fn main() {
    let mut args = std::env::args().skip(1);
    let (file, dir) = (args.next().expect("LAYOUT"), args.next().expect("DIR"));
    let text = fs::read_to_string(&file).expect("readable");
    let layout = open(&text).expect("a sound layout");
    for sheet in Sheet::ALL {
        for (paper, name) in [(Paper::A4, "a4"), (Paper::Letter, "letter")] {
            for (n, page) in pages(&layout, sheet, paper).iter().enumerate() {
                let path = format!("{dir}/{}-{name}-{}.svg", sheet.key(), n + 1);
                fs::write(path, page).expect("written");
            }
        }
    }
}
