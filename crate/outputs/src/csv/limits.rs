//! How large a list that is read may be.

/// How much is taken in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Limits {
    /// Length of the file.
    pub bytes: usize,
    /// Rows under the heading.
    pub rows: usize,
    /// Columns.
    pub columns: usize,
    /// Letters of a cell.
    pub letters: usize,
}

impl Limits {
    /// Of a list of things owned: many more than a studio has, few enough for a
    /// phone.
    pub const LIST: Self = Self {
        bytes: 2_000_000,
        rows: 3_000,
        columns: 40,
        letters: 400,
    };
}
