//! Codes of short links, read back by two libraries that did not draw them.
use outside_checks::Table;
use outside_checks::tree::{in_tests, read};
use planner::link::{MAX_QR_VERSION, QrModules, qr};

fn kept(name: &str) -> String {
    read(&format!("golden/version-1/{name}.link"))
        .trim()
        .to_owned()
}

/// What the code shows, read by a library that did not draw it.
fn read_back(text: &str) -> Option<String> {
    const MODULE: usize = 4;
    const QUIET: usize = 4;
    let code = qr(text)?;
    let side = code.extent() * MODULE;
    let dark = |x: usize, y: usize| {
        let module = |n: usize| (n / MODULE).checked_sub(QUIET).filter(|n| *n < code.side);
        let (x, y) = module(x).zip(module(y))?;
        Some(code.dark[y * code.side + x])
    };
    let mut picture = rqrr::PreparedImage::prepare_from_greyscale(side, side, |x, y| {
        if dark(x, y) == Some(true) { 0 } else { 255 }
    });
    let found = picture.detect_grids();
    assert_eq!(found.len(), 1, "one code for {} bytes", text.len());
    Some(found[0].decode().expect("readable").1)
}

#[test]
fn codes_are_read_back_by_another_library() {
    let board = format!("https://planner.example/#{}", kept("empty"));
    for text in ["a", &board, &"long ".repeat(150)] {
        assert_eq!(read_back(text).as_deref(), Some(text), "{text}");
    }
    // 858 bytes are the most a version-20 code holds (ISO/IEC 18004, table 7,
    // from memory).
    assert_eq!(MAX_QR_VERSION, 20, "what the next lines are about");
    assert!(qr(&"x".repeat(858)).is_some(), "just fits");
    assert_eq!(qr(&"x".repeat(859)), None, "just too long");
}

#[test]
fn the_drawn_path_covers_exactly_the_dark_modules() {
    let code = qr("https://planner.example/").expect("short");
    let path = code.svg_path();
    let mut area = 0;
    for run in path.split('M').skip(1) {
        let wide = run.split(['h', 'v']).nth(1).expect("a width");
        area += wide.parse::<usize>().expect("a number");
    }
    let dark = code.dark.iter().filter(|d| **d).count();
    assert_eq!(area, dark, "one unit of area a module");
    assert!(path.starts_with("M4 4h7v1h-7z"), "corner mark: {path}");
}

/// Addresses that fill codes of many versions, the last one the largest.
fn addresses() -> Vec<String> {
    let whole = format!("https://planner.example/#{}", kept("supper"));
    let lengths = [1, 20, 60, 110, 180, 280, 400, 600, 792, 858];
    lengths.map(|n| whole[..n].to_owned()).to_vec()
}

/// Its rows, 1 for dark, joined to one number in hexadecimal digits.
fn hexadecimal(code: &QrModules) -> String {
    let digit = |four: &[bool]| {
        let value = (0..4).fold(0, |v, n| v * 2 + u32::from(four.get(n) == Some(&true)));
        char::from_digit(value, 16).expect("less than 16")
    };
    code.dark.chunks(4).map(digit).collect()
}

/// OpenCV 5.0 (`reference/generate_qr.py`) read these very modules: no error
/// allowed. Run with `OVERSPREAD_WRITE_QR=1` to write the modules anew.
#[test]
fn codes_are_read_back_by_opencv() {
    let codes: Vec<(String, QrModules)> = addresses()
        .into_iter()
        .map(|text| {
            let code = qr(&text).expect("fits");
            (text, code)
        })
        .collect();
    assert_eq!(codes[9].1.side, 97, "the last is of version 20");
    if std::env::var_os("OVERSPREAD_WRITE_QR").is_some() {
        let row = |(text, code): &(String, QrModules)| {
            format!("{text},{},{}\n", code.side, hexadecimal(code))
        };
        let rows: String = codes.iter().map(row).collect();
        let path = in_tests("reference/qr_modules.csv");
        std::fs::write(path, format!("text,side,modules\n{rows}")).expect("written");
    }
    let (drawn, found) = (Table::read("qr_modules.csv"), Table::read("qr_read.csv"));
    assert_eq!((drawn.len(), found.len()), (10, 10), "codes");
    for ((text, code), (drawn, found)) in codes.iter().zip(drawn.rows().zip(found.rows())) {
        let same = drawn.text("modules") == hexadecimal(code);
        assert!(same, "{}: the code has changed", drawn.place());
        assert_eq!(found.text("read"), text, "{}", found.place());
    }
}
