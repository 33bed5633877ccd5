//! The papers a shoot runs from.
mod crockery;
mod running_order;

pub use crockery::crockery;
pub use running_order::{Lasts, RunningOrder, Turn, running_order};
