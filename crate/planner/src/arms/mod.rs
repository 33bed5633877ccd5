//! Arms: how long they are, where their shoulders stand behind the table, and
//! how two links reach a place.
mod body;
mod link;
mod percentile;
mod stance;

pub use body::Body;
pub use link::{Bent, MAX_FLEXION, Reach, bend};
pub use percentile::{STATURES, shorter};
pub use stance::{MAX_LEAN, Stance};
