//! What leaves the planner in formats of others: drawings as PDF and PNG,
//! lists as CSV, dates as a calendar.
//!
//! It knows nothing of tables and dishes: SVG, rows and days come in, bytes go
//! out, the same bytes for the same input. It has no clock, opens no file and
//! needs no font of the system.
#![forbid(unsafe_code)]

mod calendar;
mod csv;
mod face;
mod fonts;
mod pdf;
#[cfg(feature = "png")]
mod png;
mod svg;

pub use calendar::{Event, Stamp, ics};
pub use csv::{CsvFault, Limits, RowFault, Sheet, What, csv, csv_read};
pub use pdf::{Maker, Meta, Pdf, pdf};
#[cfg(feature = "png")]
pub use png::{PngFault, Size, png};
pub use svg::Fault;
