//! The exposures of a picture: how each thing is in each of them, and the
//! table as it stands then.
mod states;

pub(crate) use states::changes;
pub use states::{food_states, held_in, in_exposure, state_of};
