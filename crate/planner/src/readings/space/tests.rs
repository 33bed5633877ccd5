use crate::layout::{Id, Layout, Srgb};
use crate::readings::samples::{after, disc, laid, read, said};
use crate::readings::{State, Study, live};

/// Four dark dishes and a copy space of 300 × 200 mm about (900, 250).
fn four() -> Layout {
    let dishes = [
        disc(1, 350, 300, 240, "hero"),
        disc(2, 350, 640, 160, "support"),
        disc(3, 600, 650, 160, "support"),
        disc(4, 800, 700, 60, "filler"),
    ];
    let items = dishes.join(",");
    laid(&format!(
        r#""items":[{items}],"crops":[{{"id":9,"name":"post","ratio":[3,2],"at":[600,450],
        "width":1050,"copy":{{"area":[300,-200,300,200],"wording":"Supper"}}}}]"#
    ))
}

#[test]
fn how_much_is_free_is_told_and_never_judged() {
    let f = said(&four(), "space").expect("four dishes");
    let discs: f64 = [240.0_f64, 160.0, 160.0, 60.0]
        .iter()
        .map(|d| std::f64::consts::PI * d * d / 4.0)
        .sum();
    let free = 100.0 * (1.0 - discs / (1050.0 * 700.0));
    assert!((f.figure - free).abs() < 0.1, "{} of {free}", f.figure);
    assert_eq!((f.state, f.taste), (State::Holds, true), "silent");
    assert_eq!(f.marks.len(), 2, "the rectangle and the circle");
    let drag = live(&Study::new(&four()));
    let left_out = drag.findings.iter().all(|d| d.key != "space");
    assert!(left_out, "not looked for while something is dragged");
}

#[test]
fn a_hundredth_of_the_copy_space_taken_is_said() {
    let mut seen = [false; 2];
    for x in 700..760 {
        let mut layout = four();
        layout.items[3].at.x = x - 20;
        layout.items[3].at.y = 250;
        let f = said(&layout, "space:9:copy");
        // A segment of a disc of 30 mm, on 300 × 200 mm.
        let into = f64::from(x - 20 + 30 - 750);
        let share = segment(30.0, into) / (300.0 * 200.0);
        assert_eq!(f.is_some(), share >= 0.01, "{share} at {x}");
        if let Some(f) = &f {
            assert!(
                (f.figure - share * 100.0).abs() < 0.02,
                "{} at {x}",
                f.figure
            );
            assert!(f.is_pressing() && f.rank == 2, "the headline is spoiled");
        }
        seen[usize::from(f.is_some())] = true;
    }
    assert_eq!(seen, [true; 2], "both sides were tried");
}

/// Area of the part of a disc that lies this far past a line.
fn segment(radius: f64, into: f64) -> f64 {
    let into = into.clamp(0.0, 2.0 * radius);
    let off = radius - into;
    radius * radius * libm::acos(off / radius) - off * (radius * radius - off * off).sqrt()
}

#[test]
fn what_stands_in_it_moves_out_the_shortest_way() {
    let mut layout = four();
    // 20 mm of the disc lie in the space, from the left.
    layout.items[3].at = crate::layout::Point::new(740, 250);
    let f = said(&layout, "space:9:copy").expect("in the way");
    assert_eq!(f.about, [Id(4), Id(9)], "the thing, then the crop");
    let then = after(&layout, &f);
    assert!(said(&then, "space:9:copy").is_none(), "free");
    assert!(
        (717..=719).contains(&then.items[3].at.x),
        "{:?}",
        then.items[3].at
    );
    assert_eq!(then.crops, layout.crops, "the type stays");
}

#[test]
fn type_moves_to_the_largest_empty_place_when_things_cannot() {
    let mut layout = four();
    layout.items[3].at = crate::layout::Point::new(740, 250);
    layout.items[3].locked = true;
    let f = said(&layout, "space:9:copy").expect("in the way");
    let then = after(&layout, &f);
    assert_eq!(then.items, layout.items, "the thing is locked");
    assert_ne!(then.crops, layout.crops, "the type moves");
    assert!(said(&then, "space:9:copy").is_none(), "free");
}

#[test]
fn type_reads_from_three_when_large_and_from_four_and_a_half() {
    let mut seen = [false; 4];
    for grey in 0..=255_u32 {
        let mut layout = four();
        layout.table.surface.colour = Srgb::hex(grey * 0x01_0101);
        let f = said(&layout, "space:9:type").expect("a copy space");
        let words = &f.sentence;
        let which = if f.figure < 3.0 {
            assert!(words.starts_with("Neither"), "{words}");
            0
        } else if f.figure < 4.5 {
            assert!(words.starts_with("Only large"), "{words}");
            1
        } else {
            usize::from(words.starts_with("White")) + 2
        };
        assert_eq!(f.state == State::LookAgain, f.figure < 3.0, "{words}");
        seen[which] = true;
    }
    // On one grey the better of white and black is never under 3 to 1.
    assert_eq!(seen, [false, true, true, true], "plain grounds");
    // Half white, half black cloth: neither reads all over.
    let mut layout = four();
    layout.table.surface.colour = Srgb::hex(0);
    layout.linens = laid(
        r##""linens":[{"id":8,"name":"mat","kind":"mat","at":[900,150],"size":[500,200],
        "colour":"#ffffff"}]"##,
    )
    .linens;
    let f = said(&layout, "space:9:type").expect("a copy space");
    assert!(f.figure < 3.0 && f.is_pressing(), "{}", f.sentence);
}

#[test]
fn nothing_is_said_of_copy_space_where_there_is_none() {
    let mut layout = four();
    layout.crops[0].copy = None;
    let told = read(&layout).into_iter();
    let told: Vec<String> = told
        .filter(|f| f.reading == "space")
        .map(|f| f.key)
        .collect();
    assert_eq!(told, ["space"], "the free share alone");
}
