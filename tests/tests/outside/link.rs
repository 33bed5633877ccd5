//! Links that are in the world, a second reader built from the written
//! format, and damage.
use outside_checks::probe;
use outside_checks::python;
use outside_checks::tree::{in_tests, read};
use planner::layout::{Layout, Problem, ProblemKind, open};
use planner::link::{link, link_two, unlink};
use serde_json::Value;

/// The layouts whose links are kept in `golden/version-1/NAME.link`.
fn golden() -> Vec<(&'static str, Layout)> {
    let kept = |name| {
        let file = read(&format!("golden/version-1/{name}.spread.json"));
        (name, open(&file).expect("a sound file"))
    };
    let names = [
        "supper",
        "empty",
        "everything",
        "covered",
        "stocked",
        "dated",
    ];
    names.map(kept).into()
}

fn kept(name: &str) -> String {
    let link = read(&format!("golden/version-1/{name}.link"));
    link.trim().to_owned()
}

/// The same layout makes the same link, and the address it stands in opens.
/// Run with `OVERSPREAD_FREEZE=1` to write one that is missing.
#[test]
fn golden_links_are_still_what_is_written_and_read() {
    for (name, layout) in golden() {
        let made = link(&layout);
        let path = in_tests(&format!("golden/version-1/{name}.link"));
        if std::env::var_os("OVERSPREAD_FREEZE").is_some() && !path.exists() {
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
    let out = python::answer("link_decoder.py", links.join("\n") + "\n");
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

/// What came of a link: the layout, or the first problem's kind.
fn outcome<T>(read: Result<T, Vec<Problem>>) -> Result<T, ProblemKind> {
    read.map_err(|problems| problems[0].kind)
}

/// Ours and the second reader's outcome for each link are the same; where the
/// second reader finds the writing sound, its layout is checked as a file.
fn compared(links: &[(String, String)]) -> usize {
    let texts: Vec<String> = links.iter().map(|(_, link)| link.clone()).collect();
    let answers = second_reader(&texts);
    assert_eq!(answers.len(), links.len(), "an answer for each link");
    let mut sound = 0;
    for ((name, link), answer) in links.iter().zip(answers) {
        let ours = outcome(unlink(link));
        if answer.starts_with("refused") {
            let writing = [
                ProblemKind::Syntax,
                ProblemKind::Checksum,
                ProblemKind::Version,
            ];
            let kind = ours.expect_err(name);
            let many = kind == ProblemKind::Limit;
            assert!(
                writing.contains(&kind) || many,
                "{name}: {kind:?}, {answer}"
            );
        } else {
            sound += 1;
            let theirs: Value = serde_json::from_str(&answer).expect("JSON");
            let (first, other) = match theirs.get("layouts") {
                None => (answer.clone(), None),
                Some(two) => (two[0].to_string(), Some(two[1].to_string())),
            };
            let theirs = outcome(open(&first)).and_then(|first| {
                let other = other.map(|other| outcome(open(&other)));
                Ok((first, other.transpose()?))
            });
            let ours = ours.map(|read| (read.layout, read.other.map(|other| other.layout)));
            assert!(ours == theirs, "{name}: the readers differ: {answer}");
        }
    }
    sound
}

#[test]
fn both_readers_answer_hostile_links_alike() {
    let folder = std::fs::read_dir(in_tests("hostile/links")).expect("the folder");
    let links = folder.map(|entry| {
        let path = entry.expect("readable").path();
        let name = path.file_name().unwrap_or_default().to_string_lossy();
        let bytes = std::fs::read(&path).expect("readable");
        // One a line, so a link of several lines is given as its first.
        let text = String::from_utf8_lossy(&bytes).into_owned();
        let line = text.lines().next().unwrap_or_default().to_owned();
        (name.into_owned(), line)
    });
    let links: Vec<(String, String)> = links.collect();
    assert!(compared(&links) >= 12, "links whose writing is sound");
}

/// Links of two versions: both readers put the same two together, also where
/// bytes of what puts them together are altered.
#[test]
fn both_readers_read_two_versions_alike() {
    let all = golden();
    let mut links = Vec::new();
    let mut seed = 7_usize;
    for (name, first) in &all {
        for (other_name, other) in &all {
            let made = link_two(first, other, [name, other_name]).fragment;
            let body = probe::body_of(&made);
            let own = probe::body_of(&link(first).fragment).len();
            links.push((format!("{name} and {other_name}"), made));
            for n in 0..40 {
                seed = seed.wrapping_mul(25_173).wrapping_add(13_849) % 65_536;
                let mut body = body.clone();
                let at = own + seed % (body.len() - own);
                body[at] = body[at].wrapping_add(1 + n);
                links.push((
                    format!("{name} and {other_name}, {n}"),
                    probe::link_of(&body),
                ));
            }
        }
    }
    assert!(
        compared(&links) >= 16,
        "two versions whose writing is sound"
    );
}

/// Two thousand links with some bytes of the body altered and the check sum
/// put right: both readers make the same of each.
#[test]
fn both_readers_answer_altered_links_alike() {
    let mut seed = 20_260_909_u64;
    let mut next = |below: usize| {
        // Knuth's linear congruence.
        seed = seed
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        (seed >> 33) as usize % below
    };
    let mut links = Vec::new();
    for n in 0..1000 {
        for name in ["supper", "everything"] {
            let mut body = probe::body_of(&kept(name));
            for _ in 0..=next(3) {
                let at = 1 + next(body.len() - 1);
                body[at] = next(256) as u8;
            }
            links.push((format!("{name} {n}"), probe::link_of(&body)));
        }
    }
    assert!(compared(&links) > 200, "links whose writing is still sound");
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
