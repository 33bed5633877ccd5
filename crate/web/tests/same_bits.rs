//! A shared link must read the same on every device: the same sums, compiled
//! natively and to wasm, give the same bits.
//!
//! The sums of the ground are compiled for both. `cargo test -p web` runs them on
//! this machine, `cargo test -p web --target wasm32-unknown-unknown` in a browser,
//! and both hold the digest to the same committed constant. What is said and
//! drawn of the demonstration table changes with the planner, so there the browser
//! is held to what this machine gives in the same run of `cargo xtask test wasm`.

use glam::DVec2;
use palette::color_difference::Ciede2000;
use palette::{FromColor, Lab, Srgb};
use wasm_bindgen_test::wasm_bindgen_test;

#[path = "digest/mod.rs"]
mod digest;
use digest::Digest;

#[cfg(target_arch = "wasm32")]
wasm_bindgen_test::wasm_bindgen_test_configure!(run_in_browser);

/// What the core leans on: transcendentals, vector arithmetic and colour
/// conversion, each over a spread of inputs.
fn of_the_ground() -> Digest {
    (0..4000_u32).fold(Digest::new(), |digest, step| {
        let x = f64::from(step) * 0.731 - 1400.0;
        let (sin, cos) = libm::sincos(x);
        let turned = DVec2::new(cos, sin).rotate(DVec2::new(x, 3.25)).normalize();
        let colour = |shift: u32| {
            let channel = |scale: u32| f64::from((step * scale + shift) % 256) / 255.0;
            Lab::from_color(Srgb::new(channel(7), channel(13), channel(29)))
        };
        let difference: f64 = colour(0).difference(colour(91));
        [
            libm::sin(x),
            libm::atan2(x, 17.5),
            libm::exp(x / 200.0),
            libm::pow(x.abs(), 0.4),
            libm::log(x.abs() + 1.0),
            libm::cbrt(x),
            turned.x,
            turned.y,
            turned.distance(DVec2::Y),
            (x.abs() + 0.1).sqrt(),
            DVec2::splat(x).floor().x,
            DVec2::splat(x).round().x,
            difference,
        ]
        .into_iter()
        .fold(digest, Digest::number)
    })
}

#[wasm_bindgen_test(unsupported = test)]
fn arithmetic_gives_the_same_bits_natively_and_in_wasm() {
    let digest = of_the_ground().0;
    assert_eq!(
        digest, 0x8518_424e_90c7_8019,
        "the digest is {digest:#018x}: native and wasm must agree on the committed one"
    );
}

#[wasm_bindgen_test(unsupported = test)]
fn the_digest_sees_a_last_bit() {
    let (one, next) = (
        Digest::new().number(1.0),
        Digest::new().number(1.0_f64.next_up()),
    );
    assert_ne!(one.0, next.0, "one unit in the last place");
    let (zero, minus) = (Digest::new().number(0.0), Digest::new().number(-0.0));
    assert_ne!(zero.0, minus.0, "the sign of zero");
}

#[cfg(target_arch = "wasm32")]
#[wasm_bindgen_test]
fn the_supper_is_read_and_drawn_the_same_natively_and_in_wasm() {
    // Known at compile time to be there or not, so compared as it is: `cargo
    // xtask test wasm` hands the native digest over.
    let native = option_env!("OVERSPREAD_SUPPER");
    let own = digest::of_the_supper().to_string();
    assert_eq!(
        Some(own.as_str()),
        native,
        "figures, sentences, marks and drawing"
    );
}

#[wasm_bindgen_test(unsupported = test)]
fn the_digest_of_the_supper_sees_a_letter() {
    let (one, next) = (Digest::new().text("pot"), Digest::new().text("pod"));
    assert_ne!(one.0, next.0, "one letter");
    assert_ne!(
        digest::of_the_supper().0,
        Digest::new().0,
        "something is said"
    );
}
