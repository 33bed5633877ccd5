//! Pictures of other formats, by the name of their file.
use std::process::Command;

const SUPPER: &str = concat!(
    env!("CARGO_MANIFEST_DIR"),
    "/../../static/starters/harbour-supper.spread.json"
);

/// What `overspread draw` writes to a file of this name.
fn drawn(name: &str, more: &[&str]) -> Vec<u8> {
    let dir = std::env::temp_dir().join(format!("overspread-{}-{name}", std::process::id()));
    std::fs::create_dir_all(&dir).expect("a folder");
    let file = dir.join(name);
    let out = Command::new(env!("CARGO_BIN_EXE_overspread"))
        .args(["draw", SUPPER, "-o"])
        .arg(&file)
        .args(more)
        .output()
        .expect("the command runs");
    let said = String::from_utf8_lossy(&out.stderr);
    assert!(out.status.success() && said.is_empty(), "{name}: {said}");
    let bytes = std::fs::read(&file).expect("a file");
    std::fs::remove_dir_all(dir).expect("removed");
    bytes
}

#[test]
fn a_png_is_as_wide_as_asked_and_has_the_picture_and_its_words() {
    let bytes = drawn("a.png", &["--side", "--width", "500"]);
    let decoder = png::Decoder::new(std::io::Cursor::new(bytes));
    let mut reader = decoder.read_info().expect("a PNG");
    let size = reader.output_buffer_size().expect("it fits");
    let mut pixels = vec![0; size];
    let info = reader.next_frame(&mut pixels).expect("pixels");
    assert_eq!(info.width, 500, "pixels across");
    let dark = pixels.chunks(4).filter(|p| p[3] > 128 && p[0] < 90).count();
    assert!(dark > 500, "lines and words are drawn: {dark} dark pixels");
}

#[test]
fn a_pdf_is_one() {
    let bytes = drawn("a.PDF", &["--side"]);
    assert!(bytes.starts_with(b"%PDF-"), "its first bytes");
    let text = String::from_utf8_lossy(&bytes);
    assert!(text.contains("NotoSerif"), "words are letters of its font");
}

#[test]
fn every_paper_of_every_starter_is_a_pdf_of_its_paper() {
    for starter in ["harbour-supper", "citrus-breakfast", "noodle-night"] {
        let file = SUPPER.replace("harbour-supper", starter);
        for (paper, size) in [("a4", "595.2"), ("letter", "612")] {
            let dir = format!("overspread-papers-{}-{starter}-{paper}", std::process::id());
            let dir = std::env::temp_dir().join(dir);
            let out = Command::new(env!("CARGO_BIN_EXE_overspread"))
                .args(["papers", &file, "--pdf", "--paper", paper, "-o"])
                .arg(&dir)
                .output()
                .expect("the command runs");
            let said = String::from_utf8_lossy(&out.stderr);
            assert!(out.status.success(), "{starter} on {paper}: {said}");
            let names = [
                "approval", "set", "shots", "pull", "food", "order", "log", "after", "release",
            ];
            for name in names {
                let bytes = std::fs::read(dir.join(format!("{name}.pdf")));
                let bytes = bytes.unwrap_or_else(|e| panic!("{starter}, {name}: {e}"));
                let text = String::from_utf8_lossy(&bytes);
                assert!(text.starts_with("%PDF-"), "{starter}, {name}");
                assert!(text.contains(size), "{starter}, {name} on {paper}");
            }
            std::fs::remove_dir_all(dir).expect("removed");
        }
    }
}
