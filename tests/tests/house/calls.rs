//! The core calls nothing whose result depends on the device, the hour or the
//! order of a hash.

use crate::tree::{Source, lines_with, sources};

/// Methods of the standard library, and of vectors, which call it, whose last
/// bits differ between targets; `libm` has each. A square root is exact
/// everywhere, and in `libm` is a long sum where it is one instruction in wasm.
const INEXACT: [&str; 22] = [
    ".sin()",
    ".cos()",
    ".tan()",
    ".asin()",
    ".acos()",
    ".atan()",
    ".atan2(",
    ".sin_cos()",
    ".exp()",
    ".exp2()",
    ".ln()",
    ".log2()",
    ".log10()",
    ".powf(",
    ".powi(",
    ".cbrt()",
    ".hypot(",
    ".mul_add(",
    "from_angle(",
    ".to_angle(",
    ".angle_to(",
    ".angle_between(",
];

/// What has no fixed order, needs a clock, or belongs to the browser; and the
/// switch that would silence the linter about the list above.
const FOREIGN: [&str; 9] = [
    "HashMap",
    "HashSet",
    "std::time",
    "SystemTime",
    "thread_rng",
    "std::env",
    "std::fs",
    "wasm_bindgen",
    "disallowed_methods",
];

fn faults(source: &Source) -> Vec<String> {
    let mut faults = lines_with(source, &INEXACT);
    faults.extend(lines_with(source, &FOREIGN));
    faults
}

#[test]
fn the_core_gives_the_same_bits_everywhere() {
    let faults: Vec<String> = sources("crate/planner/src", &["rs"])
        .iter()
        .flat_map(faults)
        .collect();
    assert!(faults.is_empty(), "{faults:#?}");
}

#[test]
fn a_banned_call_is_found_and_its_replacement_is_not() {
    let source = |text: &str| Source {
        path: "a.rs".into(),
        text: text.into(),
    };
    let banned = [
        "x.sin()",
        "(a + b).powi(2)",
        "DVec2::from_angle(x)",
        "use std::collections::HashMap;",
        "Instant(std::time)",
    ];
    for text in banned {
        assert_eq!(faults(&source(text)).len(), 1, "`{text}` is banned");
    }
    for text in ["libm::sin(x)", "x.sqrt()", "BTreeMap::new()", "// x.sin()"] {
        assert_eq!(
            faults(&source(text)),
            Vec::<String>::new(),
            "`{text}` is allowed"
        );
    }
}
