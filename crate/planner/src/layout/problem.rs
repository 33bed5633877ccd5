//! What is wrong with a file or link, each problem at its place.
use std::fmt;

use serde::Serialize;

/// The sort of problem found on entry.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum ProblemKind {
    /// Not JSON, not a link, or cut short.
    Syntax,
    /// Written by another version of the format.
    Version,
    /// More or larger than a layout may hold.
    Limit,
    /// A value of the wrong kind or outside its range.
    Value,
    /// A reference to something that is not there, a doubled id, or a cycle.
    Reference,
    /// The check sum does not fit: characters were lost or changed.
    Checksum,
}

/// One problem: where it is, what stands there, what may stand there.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Problem {
    /// The sort of problem.
    pub kind: ProblemKind,
    /// Path from the root, such as `items[3].size.diameter`.
    pub path: String,
    /// What was found, shortened.
    pub found: String,
    /// What would have been allowed.
    pub allowed: String,
}

impl Problem {
    /// A problem at `path`; `found` is cut to 60 characters.
    #[must_use]
    pub fn new(kind: ProblemKind, path: &str, found: &str, allowed: &str) -> Self {
        let mut short: String = found.chars().filter(|c| !c.is_control()).take(60).collect();
        if found.chars().count() > 60 {
            short.push('…');
        }
        Self {
            kind,
            path: path.into(),
            found: short,
            allowed: allowed.into(),
        }
    }
}

impl fmt::Display for Problem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        // What concerns a file or a link as a whole names no place.
        if !matches!(self.path.as_str(), "" | "link") {
            write!(f, "{}: ", self.path)?;
        }
        write!(f, "found {}; allowed: {}", self.found, self.allowed)
    }
}
