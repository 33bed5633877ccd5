//! Outside checks; the tests stand beside their reference data in `tests/`.
mod table;

pub use table::{Row, Table};
pub mod probe;
pub mod python;
pub mod tree;
