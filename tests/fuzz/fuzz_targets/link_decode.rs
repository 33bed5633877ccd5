//! Any bytes as a link. Run by `cargo xtask test` over what is kept, by
//! `cargo xtask deep` for longer.
#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| {
    outside_checks::probe::fragment(bytes);
    // And behind the check sum, which random bytes never get past.
    outside_checks::probe::body(bytes);
});
