//! The readings: what is so, where to look and what to try. Never whether it
//! is beautiful.
//!
//! One file per reading. Each takes a [`Study`] and gives [`Finding`]s; ranking
//! and the three sentences at a time are in `report`.
//!
//! ```
//! use planner::readings::{Report, Study, report};
//! use planner::starters::harbour_supper;
//!
//! let mut layout = harbour_supper();
//! let before = report(&Study::new(&layout), true);
//! let lost = before.findings.iter().find(|f| f.reading == "separation");
//! let remedy = lost.and_then(|f| f.remedy.as_ref()).expect("something helps");
//! assert_eq!(remedy.act, "Lay the oat runner");
//! remedy.edit.apply(&mut layout).expect("it fits what it was found for");
//! let after = report(&Study::new(&layout), true);
//! let score = |of: &Report| of.scores.and_then(|scores| scores.separation);
//! assert!(score(&after) > score(&before));
//! ```
mod balance;
mod beside;
mod cautions;
mod colour;
mod crops;
mod direction;
mod exposures;
mod finding;
mod fit;
mod flat;
mod glare;
mod hands;
mod hero;
mod lean;
mod light;
mod live;
mod made;
mod mass;
mod names;
mod pace;
mod picture;
mod placing;
mod price;
mod remedies;
mod report;
mod rig;
mod rules;
#[cfg(test)]
mod samples;
mod separation;
mod separation_findings;
mod separation_inside;
mod separation_light;
mod separation_remedies;
mod settings;
mod settling;
mod space;
mod spacing;
mod stitches;
mod study;
#[cfg(test)]
mod tests;
mod timing;
mod triangle;
mod triangle_asked;
mod walked;

pub use beside::{Beside, Both, Told, beside};
pub use cautions::{Caution, Concern, cautions};
pub use exposures::{insurance, region_marks};
pub use finding::{Finding, Grade, Mark, Remedy, State};
pub use flat::flat_marks;
pub use live::{Figure, Live, Shift, Shifts, live, shifts};
pub use made::Kept;
pub(crate) use placing::{misplaced, structure, weighed};
pub use price::{Matter, Price, Weighed, Weighing, price};
pub use report::{Report, Scores, Waiting, report, scores};
pub use rules::{RULES, Rule, Unit};
pub use separation::separation_score_of;
pub use settling::Settling;
pub use space::copy_space;
pub use study::Study;
pub use triangle_asked::{Corners, asked_triangle};
pub use walked::{LOST_FROM, PartWalk};
