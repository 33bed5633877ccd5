//! What the registries say against the versions in the lock files.
//!
//! A version that its makers took back is told by cargo itself, where no lock
//! file holds it: each is asked for by name in a manifest of its own. npm tells
//! of known holes, where the registry answers that question at all.

use std::fmt::Write as _;
use std::fs;

use anyhow::{Context, Result, bail, ensure};
use serde_json::Value;

use crate::{place, run, tools};

/// Asks what there is to be asked.
///
/// # Errors
/// When a version was taken back, is said to be given up, or has a known hole.
pub(crate) fn ask() -> Result<()> {
    let count = crates()?;
    println!("{count} crates: none was taken back");
    let count = given_up()?;
    println!("{count} npm packages: none is given up");
    holes()
}

/// Has cargo choose each crate of the lock file anew; returns how many.
fn crates() -> Result<usize> {
    let lock = fs::read_to_string(place::root().join("Cargo.lock"))?;
    let mut manifest =
        "[package]\nname = \"asked\"\nversion = \"0.0.0\"\nedition = \"2024\"\n\n[workspace]\n\n\
        [dependencies]\n"
            .to_owned();
    let mut count = 0;
    for part in lock.split("[[package]]").skip(1) {
        let value = |key: &str| {
            let line = format!("{key} = \"");
            let found = part.lines().find_map(|l| l.strip_prefix(&line));
            found.map(|rest| rest.trim_end_matches('"'))
        };
        if value("source").is_none() {
            continue;
        }
        let name = value("name").context("a crate without a name")?;
        let version = value("version").context("a crate without a version")?;
        let version = version.split('+').next().unwrap_or(version);
        writeln!(
            manifest,
            "c{count} = {{ package = \"{name}\", version = \"={version}\", default-features = false }}"
        )?;
        count += 1;
    }
    ensure!(count > 100, "Cargo.lock names {count} crates");
    let folder = place::target().join("advisories");
    fs::create_dir_all(folder.join("src"))?;
    fs::write(folder.join("src/lib.rs"), "")?;
    fs::write(folder.join("Cargo.toml"), manifest)?;
    let lock = folder.join("Cargo.lock");
    if lock.exists() {
        fs::remove_file(lock)?;
    }
    let mut choose = run::cargo(&["generate-lockfile", "--quiet"]);
    let output = choose.current_dir(&folder).output()?;
    let said = String::from_utf8_lossy(&output.stderr);
    ensure!(output.status.success(), "{said}");
    Ok(count)
}

/// Looks for packages whose makers gave them up; returns how many there are.
fn given_up() -> Result<usize> {
    let lock = fs::read_to_string(place::www().join("package-lock.json"))?;
    let lock: Value = serde_json::from_str(&lock)?;
    let packages = lock["packages"].as_object().context("no packages")?;
    let up: Vec<_> = packages
        .iter()
        .filter(|(_, package)| package.get("deprecated").is_some())
        .map(|(name, package)| format!("{name}: {}", package["deprecated"]))
        .collect();
    ensure!(up.is_empty(), "given up: {}", up.join("; "));
    Ok(packages.len() - 1)
}

/// Asks npm for known holes.
fn holes() -> Result<()> {
    tools::npm_packages()?;
    let mut audit = run::command("npm", &["audit", "--json", "--package-lock-only"]);
    let output = audit.current_dir(place::www()).output()?;
    let said: Value = serde_json::from_slice(&output.stdout).context("npm audit says no JSON")?;
    match said["metadata"]["vulnerabilities"]["total"].as_u64() {
        Some(0) => println!("npm: no known hole"),
        Some(_) => bail!("npm: {}", said["vulnerabilities"]),
        // Said, not passed over: some registries do not answer this.
        None => println!(
            "npm: not asked, as the registry does not answer: {}",
            said["message"]
        ),
    }
    Ok(())
}
