//! Where things stand in the work tree.

use std::path::{Path, PathBuf};

/// The top of the work tree.
pub(crate) fn root() -> PathBuf {
    let manifest = Path::new(env!("CARGO_MANIFEST_DIR"));
    manifest
        .ancestors()
        .nth(2)
        .unwrap_or(manifest)
        .to_path_buf()
}

/// The page's sources.
pub(crate) fn www() -> PathBuf {
    root().join("www")
}

/// What a build makes for the page's sources to import; never committed.
pub(crate) fn generated() -> PathBuf {
    www().join("generated")
}

/// The finished page.
pub(crate) fn dist() -> PathBuf {
    root().join("dist")
}

/// Browser tests and the scripts that drive a browser.
pub(crate) fn browser() -> PathBuf {
    root().join("tests/browser")
}

/// What drives Firefox and WebKit.
pub(crate) fn engines() -> PathBuf {
    browser().join("engines")
}

/// Where cargo puts what it compiles.
pub(crate) fn target() -> PathBuf {
    std::env::var_os("CARGO_TARGET_DIR").map_or_else(|| root().join("target"), PathBuf::from)
}

/// This program, for a script that starts it again. By the name it was started
/// with, as the running file itself may have been replaced by a newer one.
///
/// # Errors
/// When there is no such file.
pub(crate) fn program() -> std::io::Result<PathBuf> {
    let name = std::env::args_os().next().unwrap_or_default();
    Path::new(&name).canonicalize()
}
