//! Builds, serves, tests, measures and pictures Overspread.

fn main() {}
