//! Place settings: what lies at a place and where, and where the places of a
//! table are.
mod setting;
mod table;

pub use setting::{Closeness, Laid, SETTINGS, Setting, setting};
pub use table::{PITCH, Stand, TIGHT_PITCH, seats, stand_at, stands};
