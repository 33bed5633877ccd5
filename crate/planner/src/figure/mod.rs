//! True outlines of what lies on a table, each seeded with the thing's own
//! number: the readings walk the very lines that are drawn.

pub(crate) mod blob;
pub(crate) mod cloth;
pub(crate) mod dice;
pub(crate) mod edges;
mod food;
pub(crate) mod form;
pub(crate) mod made;
pub(crate) mod outline;
mod points;
pub(crate) mod prop;
pub(crate) mod spot;
mod thing;

pub use cloth::cloth_outline;
#[cfg(test)]
pub(crate) use food::EDGE_POINTS;
pub use food::{Food, food_outline, food_pieces};
pub(crate) use food::{Plan, plan};
pub use form::{Face, Form};
pub use points::{Pointer, Pointing, pointing};
pub use prop::{Prop, is_coated, merged, prop_of, prop_outline};
pub use thing::{food_of, form_of, thing_outline};
