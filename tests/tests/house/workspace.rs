//! Which crate leans on which, and the features that keep arithmetic the same.

use std::collections::BTreeSet;
use std::process::Command;

use serde_json::Value;

use crate::tree::root;

/// What cargo knows of the workspace.
fn metadata() -> Value {
    let cargo = std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into());
    let output = Command::new(cargo)
        .args(["metadata", "--format-version", "1", "--locked"])
        .current_dir(root())
        .output()
        .expect("cargo starts");
    let complaint = String::from_utf8_lossy(&output.stderr);
    assert!(output.status.success(), "cargo metadata: {complaint}");
    serde_json::from_slice(&output.stdout).expect("cargo prints JSON")
}

fn list<'a>(value: &'a Value, key: &str) -> &'a [Value] {
    value[key]
        .as_array()
        .unwrap_or_else(|| panic!("cargo metadata has no `{key}`"))
}

fn text<'a>(value: &'a Value, key: &str) -> &'a str {
    value[key]
        .as_str()
        .unwrap_or_else(|| panic!("cargo metadata has no `{key}`"))
}

/// The crates of this work tree that a crate of it leans on.
fn own_dependencies(metadata: &Value, name: &str) -> BTreeSet<String> {
    let packages = list(metadata, "packages");
    let package = packages
        .iter()
        .find(|package| text(package, "name") == name && package["source"].is_null())
        .unwrap_or_else(|| panic!("no crate `{name}`"));
    list(package, "dependencies")
        .iter()
        .filter(|dependency| !dependency["path"].is_null())
        .map(|dependency| text(dependency, "name").to_owned())
        .collect()
}

/// The features a library is built with, all members taken together.
fn features(metadata: &Value, name: &str) -> Vec<String> {
    let packages = list(metadata, "packages");
    let ids: Vec<&str> = packages
        .iter()
        .filter(|package| text(package, "name") == name)
        .map(|package| text(package, "id"))
        .collect();
    assert!(
        !ids.is_empty(),
        "`{name}` is no longer used: take it out of this rule"
    );
    list(&metadata["resolve"], "nodes")
        .iter()
        .filter(|node| ids.contains(&text(node, "id")))
        .flat_map(|node| list(node, "features"))
        .map(|feature| feature.as_str().unwrap_or_default().to_owned())
        .collect()
}

#[test]
fn boundaries_and_command_lean_on_what_they_bind_alone() {
    let metadata = metadata();
    let allowed: [(&str, &[&str]); 7] = [
        ("benches", &["planner"]),
        ("early-web", &["planner"]),
        ("web", &["planner"]),
        ("outputs-web", &["outputs"]),
        ("overspread", &["outputs", "planner"]),
        ("outputs", &[]),
        ("planner", &[]),
    ];
    for (name, wanted) in allowed {
        let wanted: BTreeSet<String> = wanted.iter().map(|&n| n.to_owned()).collect();
        let own = own_dependencies(&metadata, name);
        assert_eq!(own, wanted, "crates that `{name}` uses");
    }
}

/// Nothing is built with what was not looked at: every npm package is of one
/// version, told by its sum, and every crate by that of `Cargo.lock`.
#[test]
fn versions_are_pinned_by_their_sums() {
    let json = |path: &str| -> Value {
        serde_json::from_str(&outside_checks::tree::read(path)).expect("JSON")
    };
    let wanted = json("../www/package.json");
    for part in ["dependencies", "devDependencies"] {
        for (name, version) in wanted[part].as_object().expect("a list") {
            let version = version.as_str().unwrap_or_default();
            let exact = version
                .split('.')
                .all(|n| n.bytes().all(|b| b.is_ascii_digit()));
            assert!(exact && version.contains('.'), "{name} {version}");
        }
    }
    let lock = json("../www/package-lock.json");
    for (name, package) in lock["packages"].as_object().expect("a list") {
        let sum = package["integrity"].as_str().unwrap_or_default();
        assert!(
            name.is_empty() || sum.starts_with("sha512-"),
            "{name} has no sum"
        );
    }
    let crates = outside_checks::tree::read("../Cargo.lock");
    for part in crates.split("[[package]]").skip(1) {
        let registry = part.contains("source = ");
        assert_eq!(registry, part.contains("checksum = "), "{part}");
    }
}

#[test]
fn colours_are_computed_with_libm() {
    let features = features(&metadata(), "palette");
    let of = |name: &str| features.iter().any(|feature| feature == name);
    assert!(of("libm"), "palette needs libm: {features:?}");
    assert!(!of("std"), "palette/std differs per device: {features:?}");
}

/// What of vectors is not exact is kept out by a test of its own.
#[test]
fn vectors_take_square_roots_as_instructions() {
    let features = features(&metadata(), "glam");
    let slow = features.iter().any(|feature| feature == "libm");
    assert!(!slow, "counted out in wasm: {features:?}");
}

#[test]
fn the_core_forbids_unsafe_code() {
    let lib = std::fs::read_to_string(root().join("crate/planner/src/lib.rs")).expect("the core");
    assert!(
        lib.contains("#![forbid(unsafe_code)]"),
        "forbidden, not merely denied"
    );
}
