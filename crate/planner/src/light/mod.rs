//! The one light in space: where it stands, which way it faces, how large it
//! is.
mod source;

pub use source::Source;
