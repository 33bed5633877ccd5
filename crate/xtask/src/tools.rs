//! The outside programs the tasks need, installed where that is allowed.

use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Result, bail};

use crate::{place, run};

/// Makes sure the page's npm packages are those of the lock file.
///
/// # Errors
/// When npm is missing or cannot install.
pub(crate) fn npm_packages() -> Result<()> {
    let lock = fs::read(place::www().join("package-lock.json"))?;
    let stamp = place::www().join("node_modules/.installed-lock.json");
    if fs::read(&stamp).is_ok_and(|installed| installed == lock) {
        return Ok(());
    }
    if !on_path("npm") {
        bail!("npm is missing: install Node.js 20 or newer, then run this again");
    }
    run::succeed(run::command("npm", &["ci"]).current_dir(place::www()))?;
    fs::write(stamp, lock)?;
    Ok(())
}

/// A program out of the page's npm packages.
pub(crate) fn npm_program(name: &str) -> PathBuf {
    let suffix = if cfg!(windows) { ".cmd" } else { "" };
    place::www().join(format!("node_modules/.bin/{name}{suffix}"))
}

/// The target the core is compiled to for the page.
pub(crate) const WASM: &str = "wasm32-unknown-unknown";

/// Makes sure Rust can compile for the page. `rust-toolchain.toml` lists the
/// target, yet rustup adds it by itself only where it may install by itself.
///
/// # Errors
/// When the target is missing and rustup is not there to add it.
pub(crate) fn wasm_target() -> Result<()> {
    let sysroot = run::output(&mut run::command("rustc", &["--print", "sysroot"]))?;
    if Path::new(sysroot.trim())
        .join("lib/rustlib")
        .join(WASM)
        .join("lib")
        .is_dir()
    {
        return Ok(());
    }
    if !on_path("rustup") {
        bail!("Rust's {WASM} target is missing: install it, or Rust through rustup");
    }
    run::succeed(&mut run::command("rustup", &["target", "add", WASM]))
}

/// Makes sure Chromium and its driver are installed.
///
/// # Errors
/// When they are missing and may not be installed from here; the message
/// holds the line to run.
pub(crate) fn chromium() -> Result<()> {
    apt_packages(&[
        ("chromium", "chromium"),
        ("chromedriver", "chromium-driver"),
    ])
}

/// Makes sure there is a screen in memory for browsers that need one.
///
/// # Errors
/// As [`chromium`].
pub(crate) fn screen() -> Result<()> {
    apt_packages(&[("Xvfb", "xvfb")])
}

/// Makes sure Firefox is installed, and WebKit with its driver and a screen to
/// draw on. Firefox is driven by a protocol of its own and needs no driver.
///
/// # Errors
/// As [`chromium`].
pub(crate) fn engines() -> Result<()> {
    screen()?;
    let mut wanted = vec![("WebKitWebDriver", "webkit2gtk-driver")];
    if std::env::var_os("FIREFOX").is_none() {
        wanted.push(("firefox-esr", "firefox-esr"));
    }
    apt_packages(&wanted)
}

/// Makes sure there is a C++ compiler.
///
/// # Errors
/// As [`chromium`].
pub(crate) fn cxx() -> Result<()> {
    if std::env::var_os("CXX").is_some() {
        return Ok(());
    }
    apt_packages(&[("c++", "g++")])
}

/// Makes sure there is a Python, for the second reader of links.
///
/// # Errors
/// As [`chromium`].
pub(crate) fn python() -> Result<()> {
    apt_packages(&[("python3", "python3")])
}

/// Makes sure each `(program, Debian package)` is there.
///
/// # Errors
/// When one is missing and may not be installed from here; the message holds
/// the line to run.
pub(crate) fn apt_packages(wanted: &[(&str, &str)]) -> Result<()> {
    let missing: Vec<&str> = wanted
        .iter()
        .filter(|(program, _)| !on_path(program))
        .map(|&(_, package)| package)
        .collect();
    if missing.is_empty() {
        return Ok(());
    }
    let line = format!(
        "apt-get update && apt-get install -y --no-install-recommends {}",
        missing.join(" ")
    );
    let root = run::output(&mut run::command("id", &["-u"])).is_ok_and(|id| id.trim() == "0");
    if !root || !on_path("apt-get") {
        bail!("missing programs; on Debian or Ubuntu run: sudo sh -c '{line}'");
    }
    println!("installing {}", missing.join(", "));
    let mut install = run::command("sh", &["-c", &line]);
    run::succeed(install.env("DEBIAN_FRONTEND", "noninteractive"))?;
    match wanted.iter().find(|(program, _)| !on_path(program)) {
        Some((program, package)) => bail!("installed {package}, yet {program} is not on the PATH"),
        None => Ok(()),
    }
}

/// Whether a program stands in one of the PATH's directories, or at the path
/// given.
pub(crate) fn on_path(program: &str) -> bool {
    if program.contains('/') {
        return Path::new(program).is_file();
    }
    std::env::var_os("PATH").is_some_and(|path| {
        std::env::split_paths(&path)
            .any(|dir| dir.join(program).is_file() || dir.join(format!("{program}.exe")).is_file())
    })
}
