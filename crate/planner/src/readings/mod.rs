//! The readings: what is so, where to look and what to try. Never whether it
//! is beautiful.
//!
//! One file per reading. Each takes a [`Study`] and gives [`Finding`]s; ranking
//! and the three sentences at a time are in `report`.
mod balance;
mod crops;
mod finding;
mod fit;
mod hero;
mod mass;
mod remedies;
mod report;
mod separation;
mod separation_findings;
mod study;
mod triangle;
mod walked;

pub use finding::{Finding, Grade, Mark, Remedy, State};
pub use report::{Report, Scores, report};
pub use separation::separation_score_of;
pub use study::Study;
pub use walked::{LOST_FROM, PartWalk};
