//! Outside checks; the tests stand beside their reference data in `tests/`.
mod mix;
mod table;

pub use mix::fnv;
pub use table::{Row, Table};
pub mod probe;
pub mod python;
pub mod tree;
