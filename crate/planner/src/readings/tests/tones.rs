//! What the colours come down to.
use super::four;
use crate::layout::{Id, Layout, Part, Srgb};
use crate::readings::samples::{after, said};
use crate::readings::{Mark, State};

fn painted(layout: &mut Layout, n: usize, colour: u32) {
    layout.items[n].parts.rim = Some(Part::plain(Srgb::hex(colour)));
}

#[test]
fn tones_within_ten_are_one_swatch_and_shares_are_of_the_picture() {
    let mut layout = four();
    layout.table.surface.colour = Srgb::hex(0x80_8080);
    let swatches = |layout: &Layout| {
        let f = said(layout, "colour").expect("four dishes");
        let is = |m: &&Mark| matches!(m, Mark::Swatch { .. });
        f.marks.iter().filter(is).count()
    };
    for n in 0..4 {
        painted(&mut layout, n, 0x99_9999);
    }
    assert_eq!(swatches(&layout), 1, "9.5 apart");
    for n in 0..4 {
        painted(&mut layout, n, 0x9b_9b9b);
    }
    assert_eq!(swatches(&layout), 2, "10.3 apart");
    for (n, colour) in [0xc0_392b, 0x2e_4057, 0x4a_7035, 0xf2_e8d0]
        .iter()
        .enumerate()
    {
        painted(&mut layout, n, *colour);
    }
    assert_eq!(swatches(&layout), 5, "four dishes and the board");
    let f = said(&layout, "colour").expect("four dishes");
    // The only warm dish is 240 mm across on 1,050 × 700 mm; cream is warm too.
    let warm = std::f64::consts::PI * (120.0 * 120.0 + 30.0 * 30.0) / (1050.0 * 700.0) * 100.0;
    assert!((f.figure - warm).abs() < 0.1, "{} of {warm}", f.figure);
    assert_eq!((f.state, f.taste), (State::Holds, true), "silent");
}

#[test]
fn a_colour_has_a_family_from_a_chroma_of_ten() {
    let warm = |colour: u32| {
        let mut layout = four();
        layout.table.surface.colour = Srgb::hex(colour);
        said(&layout, "colour").expect("four dishes").figure > 50.0
    };
    // Chroma 9.1 and 10.5 about L* 54.
    let chroma = |c: u32| crate::colour::chroma(crate::colour::lab(Srgb::hex(c)));
    let (grey, brown) = (0x8e_8074, 0x90_8072);
    assert!(chroma(grey) < 10.0 && chroma(brown) > 10.0, "either side");
    assert!(!warm(grey) && warm(brown), "neutral, and warm");
}

/// The discs' ids that are called accents, the last with this width.
fn accents(width: i32, colour: u32) -> Vec<Id> {
    let mut layout = four();
    layout.table.surface.colour = Srgb::hex(0x80_8080);
    for n in 0..3 {
        painted(&mut layout, n, 0x20_2020);
    }
    painted(&mut layout, 3, colour);
    layout.items[3].size = layout.items[3].size.resized(width, width);
    said(&layout, "colour").expect("four dishes").about
}

#[test]
fn a_strong_colour_under_a_twentieth_of_the_picture_is_an_accent() {
    // A twentieth of the picture is a disc of 216 mm.
    assert_eq!(accents(214, 0xc0_392b), [Id(4)], "small and red");
    assert!(accents(220, 0xc0_392b).is_empty(), "large and red");
}

#[test]
fn an_accent_has_a_chroma_of_forty() {
    let chroma = |c: u32| crate::colour::chroma(crate::colour::lab(Srgb::hex(c)));
    let (dull, bright) = (0xa2_504a, 0xa8_504c);
    assert!(
        chroma(dull) < 40.0 && chroma(bright) > 40.0,
        "{} {}",
        chroma(dull),
        chroma(bright)
    );
    assert!(accents(60, dull).is_empty(), "too dull");
    assert_eq!(accents(60, bright), [Id(4)], "strong enough");
}

#[test]
fn white_within_three_hundredths_of_the_edge_is_said_from_eighty_eight() {
    // 3% of the diagonal of 1,262 mm are 38 mm; the frame begins at 75 mm.
    let mut layout = four();
    layout.table.surface.colour = Srgb::hex(0x20_2020);
    for n in 0..4 {
        painted(&mut layout, n, 0x60_6060);
    }
    let said_at = |layout: &mut Layout, x: i32, colour: u32| {
        painted(layout, 3, colour);
        layout.items[3].at.x = x;
        said(layout, "colour:edge")
    };
    // A disc of 60 mm; #dddddd is L* 88.1 and #dcdcdc 87.8.
    assert!(
        said_at(&mut layout, 75 + 37 + 30, 0xdd_dddd).is_some(),
        "37 mm off"
    );
    assert!(
        said_at(&mut layout, 75 + 39 + 30, 0xdd_dddd).is_none(),
        "39 mm off"
    );
    assert!(
        said_at(&mut layout, 120, 0xdc_dcdc).is_none(),
        "not so pale"
    );
    let f = said_at(&mut layout, 120, 0xdd_dddd).expect("pale and near");
    assert!(
        f.taste && f.about == [Id(4)],
        "an observation: {}",
        f.sentence
    );
    let then = after(&layout, &f);
    assert!(said(&then, "colour:edge").is_none(), "moved in");
}
