//! Edits as values: what changed, object by object, so that the same record
//! serves undo, the autosave journal and a remedy's proposal.
mod change;
mod history;
mod journal;
mod object;
mod sound;
mod step;
#[cfg(test)]
mod tests;

pub use change::{Change, Edit, EditError};
pub use history::{Done, History, Lost, MAX_HISTORY_BYTES, NUDGES_WITHIN, Run};
pub use object::{Key, Object, Placed};
