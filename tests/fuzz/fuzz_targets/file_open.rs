//! Any bytes as a file. From `tests`: `cargo +nightly fuzz run file_open`.
#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| {
    outside_checks::probe::file(bytes);
});
