//! A whole layout as the fragment of an address, and back.
//!
//! The writing is described in `FORMAT.md` beside this file, well enough to
//! read a link without this code. [`link`] writes, [`unlink`] reads and
//! checks as strictly as a file is checked, [`link_answer`] and
//! [`unlink_answer`] carry what a client answers, [`link_two`] writes two
//! versions as one, and [`qr`] draws a short link as a square of modules.
//!
//! ```
//! use planner::link::{link, unlink};
//! use planner::starters::harbour_supper;
//!
//! let supper = harbour_supper();
//! let sent = link(&supper);
//! assert!(sent.losses.is_empty());
//! assert_eq!(unlink(&sent.fragment).expect("it opens").layout, supper);
//! let cut = &sent.fragment[..sent.fragment.len() - 4];
//! assert!(unlink(cut).is_err(), "what is damaged is refused");
//! ```
mod answer;
mod bytes;
mod dated;
mod envelope;
mod fields;
mod kinds;
mod names;
mod phrases;
mod public;
mod qr;
mod read;
mod states;
mod stock;
mod two;
mod write;

#[cfg(test)]
mod tests;

pub use answer::{Answer, is_answer, link_answer, unlink_answer};
pub use envelope::{LINK_VERSION, MAX_LINK};
pub use public::public;
pub use qr::{MAX_QR_VERSION, QrModules, qr};
pub use read::{Unlinked, unlink};
pub use two::{Other, link_two};
pub use write::{Linked, Section, link};
