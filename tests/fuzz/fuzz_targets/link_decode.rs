//! Any bytes as a link. From `tests`: `cargo +nightly fuzz run link_decode`.
#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| {
    outside_checks::probe::fragment(bytes);
    // And behind the check sum, which random bytes never get past.
    outside_checks::probe::body(bytes);
});
