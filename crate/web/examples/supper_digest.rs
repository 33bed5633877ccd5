//! Prints the digest of the demonstration table as this machine reads and draws
//! it, for the browser's test to be held to.

#[path = "../tests/digest/mod.rs"]
mod digest;

fn main() {
    println!("{}", digest::of_the_supper());
}
