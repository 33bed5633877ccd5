//! The `overspread` terminal command.

fn main() {}
