//! What the photographer owns: things kept apart from any table, what a layout
//! finds among them and what it lacks, and lists of them in and out.
//!
//! A thing of the shelf is a layout that holds it alone
//! ([`crate::commands::kept`]); here is what the shelf knows of it. How many
//! there are is one and those in reserve.
mod columns;
mod found;
mod measure;
mod places;
mod season;
mod thing;

pub use columns::{BadRow, GoodRow, Taken, read, records};
pub use found::{Found, Need, SIZE_WITHIN, find};
pub use measure::{Beside, Gauge, Measured, Rise, Sized, measure};
pub use places::{Twice, twice};
pub use season::{Season, Stays, Swapped, Wish, swap, swapped};
pub(crate) use thing::tones;
pub use thing::{MAX_COUNT, ShelfThing};
