//! The papers a shoot runs from, and the day itself step by step.
mod crockery;
mod running_order;
mod steps;
mod test_frame;

pub use crockery::crockery;
pub use running_order::{Lasts, RunningOrder, Turn, running_order};
pub use steps::{Lasting, Step, StepKind, Tick, steps};
pub use test_frame::{Aligned, Bump, Drift, Found, FrameOff, Told, bumped, find_again, tellable};
