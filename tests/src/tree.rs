//! Files of this crate.
use std::path::{Path, PathBuf};

/// Where a file under `tests/` lies.
#[must_use]
pub fn in_tests(path: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join(path)
}

/// The text of a file under `tests/`.
///
/// # Panics
/// When it cannot be read as text.
#[must_use]
pub fn read(path: &str) -> String {
    let path = in_tests(path);
    std::fs::read_to_string(&path).unwrap_or_else(|e| panic!("{}: {e}", path.display()))
}
