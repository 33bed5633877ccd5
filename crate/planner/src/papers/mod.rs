//! The papers a shoot runs from.
mod running_order;

pub use running_order::{Lasts, RunningOrder, Turn, running_order};
