//! The house drawing style: a set drawing on good paper.
//!
//! Every function here returns plain SVG nodes with presentation attributes
//! only, in millimetres, already turned, so that a thing is placed with a
//! translation and the ink and shadows keep to the light of the room.

mod blob;
mod dice;
mod food;
mod form;
mod outline;
mod path;
mod pen;
mod picture;
mod prop;
mod ribbon;
mod shadow;
mod sketch;
mod tone;

pub use food::{Food, food, food_outline, food_pieces};
pub use form::{Face, Form};
pub use pen::Pen;
pub use picture::{Cut, Keyed, Shown, View, cut, cut_file, groups, sheet, translation, view_box};
pub use prop::{Prop, Ware, prop};
pub use shadow::{shadow, shadows};
pub use tone::{INK, PENCIL, Tone, rgb};
