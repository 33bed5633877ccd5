//! The core of Overspread, a planner for overhead table spreads.
//!
//! Data flows one way: a [`layout`] is what the photographer said, a `scene`
//! is what that means in space, readings are computed from the scene, and
//! drawings are made of all three. The crate knows no browser, no clock and
//! no randomness of its own, and gives the same bits natively and in wasm.
//!
//! ```
//! use planner::layout::open;
//! use planner::papers::{Paper, Sheet, pages};
//! use planner::readings::{Study, report};
//! use planner::starters::harbour_supper;
//!
//! let layout = open(&harbour_supper().to_json()).expect("its own file opens");
//! let read = report(&Study::new(&layout), false);
//! assert!((1..=3).contains(&read.pressing().count()), "three sentences at a time");
//! let pull = pages(&layout, Sheet::Pull, Paper::A4);
//! assert!(pull[0].contains("<svg"), "each page stands alone");
//! ```
#![forbid(unsafe_code)]

pub mod answers;
pub mod arms;
pub mod arrangements;
pub mod catalogue;
pub mod colour;
pub mod commands;
pub mod compare;
pub mod dates;
pub mod drawing;
pub mod edit;
pub mod exposures;
pub mod figure;
pub mod layout;
pub mod light;
pub mod link;
pub mod measures;
pub mod optics;
pub mod order;
pub mod papers;
pub mod propose;
pub mod readings;
pub mod rig;
pub mod scene;
pub mod seats;
pub mod shape;
pub mod shelf;
pub mod starters;
pub mod words;
