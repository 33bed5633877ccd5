//! What must hold for any bytes whatever, shared by the tests and the fuzzers.
use base64::Engine;
use base64::engine::general_purpose::URL_SAFE_NO_PAD;
use outputs::{Limits, csv, csv_read};
use planner::answers::taken;
use planner::colour::photo::in_inks;
use planner::layout::{Layout, MAX_PROBLEMS, Problem, ProblemKind, Units, open};
use planner::link::{link, link_answer, unlink, unlink_answer};
use planner::shelf::{ShelfThing, read, records};
use planner::starters::harbour_supper;

/// Opens bytes as a file, read as a browser reads one: what is no UTF-8 becomes
/// a mark. Whatever they are: no panic, short problems, and what opens can be
/// saved and sent.
///
/// # Panics
/// When one of these does not hold.
pub fn file(bytes: &[u8]) -> Vec<ProblemKind> {
    match open(&String::from_utf8_lossy(bytes)) {
        Ok(layout) => {
            saved_and_sent(&layout);
            Vec::new()
        }
        Err(problems) => kinds(&problems),
    }
}

/// Opens bytes as a link; the same promises.
///
/// # Panics
/// When one of them does not hold.
pub fn fragment(bytes: &[u8]) -> Vec<ProblemKind> {
    match unlink(&String::from_utf8_lossy(bytes)) {
        Ok(unlinked) => {
            saved_and_sent(&unlinked.layout);
            if let Some(other) = &unlinked.other {
                saved_and_sent(&other.layout);
            }
            Vec::new()
        }
        Err(problems) => kinds(&problems),
    }
}

/// Reads bytes as an answer: no panic, a short problem, and what is read can be
/// written, and put on a layout that can be saved.
///
/// # Panics
/// When one of these does not hold.
pub fn answer(bytes: &[u8]) -> Vec<ProblemKind> {
    match unlink_answer(&String::from_utf8_lossy(bytes)) {
        Ok(answer) => {
            assert_eq!(unlink_answer(&link_answer(&answer)), Ok(answer.clone()));
            let mut layout = harbour_supper();
            let (edit, _) = taken(&layout, &answer);
            edit.apply_checked(&mut layout).expect("an answer fits");
            saved_and_sent(&layout);
            Vec::new()
        }
        Err(problem) => kinds(&[problem]),
    }
}

/// Reads bytes as a list of things owned: no panic, every row taken or told, and
/// what is taken can be written as a list that is read again.
///
/// # Panics
/// When one of these does not hold.
pub fn list(bytes: &[u8]) {
    let Ok(sheet) = csv_read(bytes, &Limits::LIST) else {
        return;
    };
    let rows: Vec<(u32, Vec<String>)> = sheet
        .rows
        .into_iter()
        .map(|(line, cells)| (u32::try_from(line).unwrap_or(u32::MAX), cells))
        .collect();
    let Ok(taken) = read(&sheet.head, &rows, Units::Cm, &[]) else {
        return;
    };
    assert_eq!(taken.good.len() + taken.bad.len(), rows.len(), "each row");
    assert!(taken.bad.iter().all(|row| !row.why.is_empty()), "says why");
    let things: Vec<ShelfThing> = taken.good.into_iter().map(|row| row.thing).collect();
    let written = csv(&records(&things, Units::Cm));
    let again = csv_read(&written, &Limits::LIST).expect("its own list is read");
    assert_eq!(again.faults, vec![], "whole");
    assert_eq!(again.rows.len(), things.len(), "a row for each");
}

/// Takes bytes as the beginning of a photo: no panic, and once it is told to be
/// in printing inks, what follows changes nothing.
///
/// # Panics
/// When one of these does not hold.
pub fn photo(bytes: &[u8]) -> bool {
    let inks = in_inks(bytes);
    if in_inks(&bytes[..bytes.len() / 2]) {
        assert!(inks, "the second half changes what the first says");
    }
    inks
}

/// Takes bytes as the body of a link, check sum put right, so that what is
/// behind it is reached; the same promises.
///
/// # Panics
/// When one of them does not hold.
pub fn body(bytes: &[u8]) -> Vec<ProblemKind> {
    fragment(link_of(bytes).as_bytes())
}

/// The link with these bytes as its body, its check sum right.
#[must_use]
pub fn link_of(body: &[u8]) -> String {
    let mut whole = body.to_vec();
    let mut sum = crc32fast::Hasher::new();
    sum.update(body);
    sum.update(&(body.len() as u32).to_le_bytes());
    whole.extend(sum.finalize().to_le_bytes());
    URL_SAFE_NO_PAD.encode(whole)
}

/// The body of a link, its check sum taken off.
///
/// # Panics
/// When the text is no base64url.
#[must_use]
pub fn body_of(link: &str) -> Vec<u8> {
    let mut whole = URL_SAFE_NO_PAD.decode(link).expect("letters of a link");
    whole.truncate(whole.len().saturating_sub(4));
    whole
}

fn kinds(problems: &[Problem]) -> Vec<ProblemKind> {
    assert!(!problems.is_empty(), "a refusal says why");
    assert!(
        problems.len() <= MAX_PROBLEMS,
        "{} problems are no report",
        problems.len()
    );
    for p in problems {
        assert!(p.found.chars().count() <= 61, "found is short: {p:?}");
        assert!(!p.allowed.is_empty(), "what is allowed is said: {p:?}");
    }
    problems.iter().map(|p| p.kind).collect()
}

/// A layout that opened comes back from its own file and its own link.
fn saved_and_sent(layout: &Layout) {
    let again = open(&layout.to_json()).expect("its own file opens");
    assert!(again == *layout, "its own file is the same layout");
    let made = link(layout);
    let back = unlink(&made.fragment).expect("its own link opens").layout;
    // What a newer planner made is never sent, as only that one knows all of it.
    if made.losses.is_empty() && !layout.is_newer() {
        assert!(back == *layout, "its own link is the same layout");
    }
    let relinked = link(&back);
    assert_eq!(relinked.losses, Vec::<String>::new(), "lost only once");
    assert_eq!(relinked.fragment, made.fragment, "a link is settled");
}
