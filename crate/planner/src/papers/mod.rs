//! The papers a shoot runs from, and the day itself step by step.
//!
//! Every list is made of the layout anew, so that its counts are those of the
//! picture; every paper is set from the same few blocks.
mod after;
mod alike;
mod approval;
mod crockery;
mod food;
mod letters;
mod list;
mod log;
mod plan;
mod press;
mod pull;
mod release;
mod running_order;
mod set_sheet;
mod sheets;
mod shots;
mod steps;
mod swapped;
mod test_frame;
#[cfg(test)]
mod tests;
mod told;

pub use crockery::crockery;
pub use food::{Dish, food};
pub use list::List;
pub use log::Logged;
pub use pull::{Pull, pull, shelf_told};
pub use running_order::{Lasts, RunningOrder, Turn, running_order};
pub use sheets::{Known, Paper, Sheet, lists, lists_with, pages, pages_with};
pub use steps::{Lasting, Step, StepKind, Tick, steps};
pub use swapped::{Going, difference, going};
pub use test_frame::{Aligned, Bump, Drift, Found, FrameOff, Told, bumped, find_again, tellable};
