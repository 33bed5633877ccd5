//! Proposals: what the planner would move, if it may, and what that would cost.
//!
//! A search over single changes under limits that none may break. The price it
//! lowers is made of the readings, so what is better is what they say is.
mod bodies;
mod characters;
mod ghosts;
mod limits;
mod moves;
mod near;
mod proposal;
mod remedies;
mod search;
mod steps;
#[cfg(test)]
mod tests;
mod wish;

pub use characters::SEVERAL;
pub use ghosts::ghosts;
pub use limits::{Limits, SETTING_SLIDES};
pub use near::Near;
pub use proposal::{Differs, Move, Proposal};
pub use search::{APART, Search};
pub use wish::{May, Wish};
