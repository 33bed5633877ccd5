//! The house drawing style: a set drawing on good paper.
//!
//! Every function here returns plain SVG nodes with presentation attributes
//! only, in millimetres, already turned, so that a thing is placed with a
//! translation and the ink and shadows keep to the light of the room.

mod cloth;
mod coats;
mod food;
mod hand;
mod held;
mod path;
mod pen;
mod picture;
mod prop;
mod ribbon;
mod shadow;
mod sketch;
mod surface;
mod tone;

pub use crate::figure::{Face, Food, Form, Prop, food_outline, food_pieces};
pub use cloth::cloth;
pub use food::food;
pub use hand::{Limb, limb};
pub use held::held;
pub use pen::Pen;
pub use picture::{
    Again, Cut, Drawn, Keyed, SeeThrough, Shown, Trims, View, alone, carried, cut, cut_file,
    groups, groups_again, guide_sheet, marked, reaching, sample, see_through, sheet, side,
    side_file, stand_span, swatch, translation, version, view_box, waiting,
};
pub use prop::{Ware, flame, prop};
pub use shadow::{Ground, raised, shadows};
pub use surface::surface;
pub use tone::{INK, PENCIL, Tone, rgb};
