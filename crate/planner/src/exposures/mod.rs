//! The exposures of a picture: how each thing is in each of them, the table as
//! it stands then, and in which order and how few they are shot.
mod again;
mod fewest;
mod guide;
mod needs;
mod order;
mod penumbra;
mod rank;
mod regions;
mod running;
mod search;
mod shared;
mod solo;
mod states;

pub use again::{added, added_after};
pub use fewest::fewest;
pub use guide::{
    FEATHER, Guide, GuideFile, NONE, OVERVIEW, QUIET, TAPER, combined, guides, level_parts,
};
pub use needs::{Food, Founded, foods, hold_of};
pub use order::{
    CARRYING, Change, NoOrder, SWAPPING, Taken, WALKING, change, in_order, shooting_order,
};
pub use penumbra::soft_edge;
pub use regions::{Added, Clash, Meeting, SEEN, added_seen, clashes};
pub use running::{OnSet, Running, Shot, running};
pub use shared::{MOST_PAIRS, Pair, Second, shared};
pub use solo::{Solo, Walk, solo};
pub(crate) use states::changes;
pub use states::{food_states, held_in, in_exposure, state_of};
