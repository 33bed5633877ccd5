//! Edits as values: what changed, object by object, so that the same record
//! serves undo, the autosave journal and a remedy's proposal.
mod change;
mod journal;
mod object;
mod sound;
#[cfg(test)]
mod tests;

pub use change::{Change, Edit, EditError};
pub use object::{Key, Object, Placed};
