//! Any bytes as the beginning of a photo. Run by `cargo xtask test` over what is
//! kept, by `cargo xtask deep` for longer.
#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| {
    outside_checks::probe::photo(bytes);
});
