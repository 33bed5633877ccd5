//! The house rules that a machine can hold: which room may use which, calls
//! that differ between devices, what the page never does, and file length.

mod calls;
mod page;
mod rooms;
mod tree;
mod words;
mod workspace;
