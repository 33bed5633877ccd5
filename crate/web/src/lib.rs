//! The wasm boundary of Overspread over [`planner`].
