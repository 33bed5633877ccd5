//! What is measured: tables and lights of known size.

pub mod full_table;
pub mod shadows;
pub mod ten_exposures;
