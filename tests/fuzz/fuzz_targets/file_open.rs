//! Any bytes as a file. Run by `cargo xtask test` over what is kept, by
//! `cargo xtask deep` for longer.
#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| {
    outside_checks::probe::file(bytes);
});
