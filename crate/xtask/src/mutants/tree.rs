//! The part of the sources that formulas need, as a workspace of its own.

use std::fs;
use std::path::Path;

use anyhow::{Context, Result};

use crate::place;

/// Rooms of the core that hold formulas, and those they need.
pub(super) const ROOMS: [&str; 10] = [
    "arms", "colour", "layout", "light", "measures", "optics", "order", "rig", "shape", "words",
];
/// Outside checks that need no other room.
const CHECKS: [&str; 8] = [
    "colour",
    "composition",
    "geometry",
    "homography",
    "light",
    "photo",
    "rig",
    "space",
];
/// Writes the tree of a workspace with [`ROOMS`] and [`CHECKS`] alone.
pub(super) fn write(tree: &Path) -> Result<()> {
    let root = place::root();
    if tree.exists() {
        fs::remove_dir_all(tree)?;
    }
    for folder in ["crate/planner/src", "tests/tests"] {
        fs::create_dir_all(tree.join(folder))?;
    }
    for name in ROOMS {
        let room = format!("crate/planner/src/{name}");
        let file = format!("{room}.rs");
        if root.join(&file).exists() {
            copy(&root.join(&file), &tree.join(&file))?;
        } else {
            copy(&root.join(&room), &tree.join(&room))?;
        }
    }
    for name in CHECKS {
        let from = format!("tests/tests/outside/{name}.rs");
        copy(
            &root.join(from),
            &tree.join(format!("tests/tests/{name}.rs")),
        )?;
    }
    for path in [
        "crate/key-sort",
        "tests/src",
        "tests/reference",
        "Cargo.lock",
        "rust-toolchain.toml",
    ] {
        copy(&root.join(path), &tree.join(path))?;
    }
    let kept = |path: &str, keep: &dyn Fn(&str) -> bool| -> Result<()> {
        let text = fs::read_to_string(root.join(path))?;
        let lines: Vec<&str> = text.lines().filter(|line| keep(line)).collect();
        Ok(fs::write(tree.join(path), lines.join("\n"))?)
    };
    kept("crate/planner/Cargo.toml", &|_| true)?;
    kept("crate/planner/src/lib.rs", &|line| {
        let room = line
            .strip_prefix("pub mod ")
            .and_then(|l| l.strip_suffix(';'));
        room.is_none_or(|room| ROOMS.contains(&room))
    })?;
    // Reading what hostile input leads to takes every room.
    kept("tests/src/lib.rs", &|line| !line.contains("mod probe"))?;
    fs::remove_file(tree.join("tests/src/probe.rs"))?;
    kept("tests/Cargo.toml", &|line| !line.starts_with("outputs"))?;
    kept("Cargo.toml", &|line| {
        !line.starts_with("default-members") && !line.starts_with("outputs")
    })?;
    let file = tree.join("Cargo.toml");
    let text = fs::read_to_string(&file)?;
    let members = text.lines().find(|line| line.starts_with("members"));
    let members = members.context("Cargo.toml names its members")?;
    let fewer = r#"members = ["crate/key-sort", "crate/planner", "tests"]"#;
    // Compiled more often than run.
    let text = text
        .replace(members, fewer)
        .replace("opt-level = 1", "opt-level = 0");
    Ok(fs::write(file, text)?)
}

fn copy(from: &Path, to: &Path) -> Result<()> {
    if from.is_file() {
        fs::copy(from, to)?;
        return Ok(());
    }
    fs::create_dir_all(to)?;
    for entry in fs::read_dir(from).with_context(|| format!("{}", from.display()))? {
        let entry = entry?;
        copy(&entry.path(), &to.join(entry.file_name()))?;
    }
    Ok(())
}
