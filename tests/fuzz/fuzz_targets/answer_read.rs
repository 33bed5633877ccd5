//! Any bytes as a client's answer. Run by `cargo xtask test` over what is kept,
//! by `cargo xtask deep` for longer.
#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| {
    outside_checks::probe::answer(bytes);
    // And behind the check sum, which random bytes never get past.
    outside_checks::probe::answer(outside_checks::probe::link_of(bytes).as_bytes());
});
