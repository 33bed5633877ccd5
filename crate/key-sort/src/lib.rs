//! The sorts `i_overlay` asks for, all of them one sort of places.
//!
//! The crate of this name sorts by bins and falls back on the standard sort,
//! anew for each kind of element and each pair of keys: 60 kB of the page's
//! module for lists of some hundred segments. `Cargo.toml` puts this one in
//! its place; it has the part of the interface that `i_overlay` calls, and
//! sorts what compares equal by where it stood.
#![forbid(unsafe_code)]

pub mod sort;
