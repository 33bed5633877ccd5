//! Links that are in the world, a second reader built from the written
//! format, damage, and codes read back by another library.
use std::io::Write as _;
use std::process::{Command, Stdio};

use outside_checks::tree::{in_tests, read};
use planner::layout::{Layout, LayoutId, ProblemKind, open};
use planner::link::{MAX_QR_VERSION, link, qr, unlink};
use serde_json::Value;

/// The layouts whose links are kept in `golden/NAME.link`.
fn golden() -> Vec<(&'static str, Layout)> {
    let everything = read("golden/everything.spread.json");
    vec![
        ("supper", planner::starters::harbour_supper()),
        ("empty", Layout::empty(LayoutId(0x0123_4567_89ab_cdef))),
        ("everything", open(&everything).expect("a sound file")),
    ]
}

fn kept(name: &str) -> String {
    read(&format!("golden/{name}.link")).trim().to_owned()
}

/// Links as they were sent must stay readable, and come out as they went in.
/// Run with `OVERSPREAD_WRITE_GOLDEN=1` to write them anew, while the format
/// is version 0.
#[test]
fn golden_links_are_still_what_is_written_and_read() {
    for (name, layout) in golden() {
        let made = link(&layout);
        if std::env::var_os("OVERSPREAD_WRITE_GOLDEN").is_some() {
            let path = in_tests(&format!("golden/{name}.link"));
            std::fs::write(path, format!("{}\n", made.fragment)).expect("written");
        }
        assert_eq!(made.fragment, kept(name), "{name}: the link");
        let address = format!("https://planner.example/#{}", kept(name));
        let back = unlink(&address).expect("opens");
        assert!(back.layout == layout, "{name}: the layout");
    }
}

/// The second reader's answer for each link, one a line.
fn second_reader(links: &[String]) -> Vec<String> {
    let script = in_tests("reference/link_decoder.py");
    let mut python = Command::new("python3")
        .arg(&script)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .unwrap_or_else(|e| panic!("python3 is needed to run {}: {e}", script.display()));
    let mut stdin = python.stdin.take().expect("a pipe");
    let text = links.join("\n") + "\n";
    let writer = std::thread::spawn(move || stdin.write_all(text.as_bytes()));
    let out = python.wait_with_output().expect("python3 ends");
    writer.join().expect("joined").expect("python3 reads");
    assert!(out.status.success(), "the second reader ended badly");
    let out = String::from_utf8(out.stdout).expect("UTF-8");
    out.lines().map(str::to_owned).collect()
}

#[test]
fn a_reader_built_from_the_written_format_reads_the_same() {
    let all = golden();
    let links: Vec<String> = all.iter().map(|(name, _)| kept(name)).collect();
    let answers = second_reader(&links);
    assert_eq!(answers.len(), all.len(), "an answer for each link");
    for ((name, layout), answer) in all.iter().zip(answers) {
        let theirs: Value = serde_json::from_str(&answer).unwrap_or_else(|e| {
            panic!("{name}: {e}: {answer}");
        });
        let ours: Value = serde_json::from_str(&layout.to_json()).expect("JSON");
        assert_eq!(theirs, ours, "{name}: the two readers differ");
    }
}

/// Every single-letter change, every cut and every swap of neighbours.
fn damaged(whole: &str) -> Vec<String> {
    const LETTERS: &[u8] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";
    let bytes = whole.as_bytes();
    let mut out = Vec::new();
    for at in 0..bytes.len() {
        for other in LETTERS.iter().filter(|l| **l != bytes[at]) {
            let mut changed = bytes.to_vec();
            changed[at] = *other;
            out.push(changed);
        }
        out.push(bytes[..at].to_vec());
        out.push(bytes[at + 1..].to_vec());
        if at > 0 && bytes[at] != bytes[at - 1] {
            let mut swapped = bytes.to_vec();
            swapped.swap(at - 1, at);
            out.push(swapped);
        }
    }
    let text = |b: Vec<u8>| String::from_utf8(b).expect("letters");
    out.into_iter().map(text).collect()
}

#[test]
fn every_small_damage_to_a_link_is_refused() {
    for (name, _) in golden() {
        let all = damaged(&kept(name));
        let expected = kept(name).len() * 65;
        assert!(all.len() > expected, "{name}: {} tried", all.len());
        for link in all {
            let problems = unlink(&link).err();
            let problems = problems.unwrap_or_else(|| panic!("{name}: {link} was read"));
            assert!(
                matches!(
                    problems[0].kind,
                    ProblemKind::Checksum | ProblemKind::Syntax
                ),
                "{name}: {problems:?}"
            );
        }
    }
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
