//! Files and links made to hurt: each gives its problems, none a panic, and
//! nothing takes more room than its own length calls for.
use outside_checks::probe;
use outside_checks::tree::{in_tests, read};
use planner::layout::{Layout, LayoutId, MAX_FILE_BYTES, ProblemKind, open};
use planner::link::{MAX_LINK, link, unlink};
use planner::starters::harbour_supper;
use proptest::prelude::*;
use zune_jpeg::JpegDecoder;
use zune_jpeg::zune_core::bytestream::ZCursor;

/// Names and bytes of the files in a folder, sorted.
fn corpus(folder: &str) -> Vec<(String, Vec<u8>)> {
    let dir = in_tests(folder);
    let entries = std::fs::read_dir(&dir).unwrap_or_else(|e| panic!("{folder}: {e}"));
    let mut all: Vec<_> = entries
        .map(|e| e.expect("readable").path())
        .map(|p| {
            let name = p.file_name().unwrap_or_default().to_string_lossy();
            let bytes = std::fs::read(&p).expect("readable");
            (name.into_owned(), bytes)
        })
        .collect();
    all.sort();
    all
}

/// Whether what was said is what the first word of the name calls for.
fn as_named(name: &str, said: &[ProblemKind]) -> bool {
    let wanted = match name.split('-').next().unwrap_or_default() {
        "ok" => return said.is_empty(),
        "syntax" => ProblemKind::Syntax,
        "version" => ProblemKind::Version,
        "limit" => ProblemKind::Limit,
        "value" => ProblemKind::Value,
        "reference" => ProblemKind::Reference,
        "checksum" => ProblemKind::Checksum,
        other => panic!("`{other}` is no kind of problem"),
    };
    said.contains(&wanted)
}

/// By their names, and where another reader of JPEG heads (`zune-jpeg`) reads
/// one, by the channels it counts.
#[test]
fn heads_of_photos_are_told_for_what_they_are() {
    let all = corpus("hostile/photos");
    assert!(all.len() >= 16, "{} heads", all.len());
    let mut read = 0;
    for (name, bytes) in all {
        let inks = probe::photo(&bytes);
        assert_eq!(inks, name.starts_with("inks-"), "{name}");
        let mut other = JpegDecoder::new(ZCursor::new(&bytes));
        if other.decode_headers().is_ok() {
            let channels = other.info().expect("after its head").components;
            assert_eq!(inks, channels == 4, "{name}: {channels} channels");
            read += 1;
        }
    }
    assert!(read >= 4, "the other reader read {read}");
}

type Probe = fn(&[u8]) -> Vec<ProblemKind>;

#[test]
fn hostile_files_and_links_are_answered_with_the_right_kind() {
    let sets: [(&str, usize, Probe); 3] = [
        ("hostile/files", 115, probe::file),
        ("hostile/links", 92, probe::fragment),
        ("hostile/answers", 34, probe::answer),
    ];
    for (folder, least, probe) in sets {
        let all = corpus(folder);
        assert!(all.len() >= least, "{folder} holds {}", all.len());
        let wrong: Vec<String> = all
            .iter()
            .filter_map(|(name, bytes)| {
                let said = probe(bytes);
                (!as_named(name, &said)).then(|| format!("{folder}/{name}: {said:?}"))
            })
            .collect();
        assert!(wrong.is_empty(), "{wrong:#?}");
    }
}

#[test]
fn what_fuzzing_starts_from_is_replayed() {
    let list: Probe = |bytes| {
        probe::list(bytes);
        Vec::new()
    };
    let photo: Probe = |bytes| {
        probe::photo(bytes);
        Vec::new()
    };
    let sets: [(&str, Probe); 7] = [
        ("fuzz/corpus/photo_head", photo),
        ("fuzz/corpus/answer_read", probe::answer),
        ("fuzz/corpus/list_read", list),
        ("hostile/lists", list),
        ("fuzz/corpus/file_open", probe::file),
        ("fuzz/corpus/link_decode", probe::fragment),
        ("fuzz/corpus/link_decode", probe::body),
    ];
    for (folder, probe) in sets {
        let all = corpus(folder);
        assert!(all.len() >= 3, "{folder} holds {}", all.len());
        for (_, bytes) in all {
            probe(&bytes);
        }
    }
}

#[test]
fn a_bad_file_gets_one_report_of_all_its_problems() {
    let text = read("hostile/files/ok-sound.json")
        .replace("1200", "-1")
        .replace("900", "\"wide\"")
        .replace("#a27c59", "url(#x)")
        .replace("1050", "0.5");
    let problems = open(&text).expect_err("bad");
    let paths: Vec<&str> = problems.iter().map(|p| p.path.as_str()).collect();
    let wanted = [
        "table.width",
        "table.depth",
        "table.surface.colour",
        "frame.width",
    ];
    assert_eq!(paths, wanted, "{problems:?}");
}

#[test]
fn vast_input_is_refused_before_it_is_read() {
    let file = " ".repeat(MAX_FILE_BYTES + 1);
    let problems = open(&file).expect_err("too long");
    assert_eq!(problems[0].kind, ProblemKind::Limit, "{problems:?}");
    let address = "A".repeat(MAX_LINK + 1);
    let problems = unlink(&address).expect_err("too long");
    assert_eq!(problems[0].kind, ProblemKind::Limit, "{problems:?}");
}

#[test]
fn a_hundred_thousand_items_are_one_problem() {
    let items = vec!["{}"; 100_000].join(",");
    let text = Layout::empty(LayoutId(1)).to_json();
    let text = text.replacen("\"items\": []", &format!("\"items\": [{items}]"), 1);
    let problems = open(&text).expect_err("too many");
    assert_eq!(problems.len(), 1, "{problems:?}");
    assert_eq!(problems[0].kind, ProblemKind::Limit, "{problems:?}");
}

/// The same in a link: the shortest item takes four bytes once the first has
/// given the size.
#[test]
fn a_hundred_thousand_items_in_a_link_are_one_problem() {
    let empty = probe::body_of(read("golden/version-1/empty.link").trim());
    let mut items = b"\x04\x0c\x02\x02\x00\x0a".to_vec();
    items.extend(b"\x00\x0c\x00\x00".repeat(99_999));
    let mut body = empty;
    body.push(10);
    let mut length = items.len();
    while length >= 128 {
        body.push(length as u8 | 128);
        length >>= 7;
    }
    body.push(length as u8);
    body.extend(items);
    let problems = unlink(&probe::link_of(&body)).expect_err("too many");
    assert_eq!(problems.len(), 1, "{problems:?}");
    assert_eq!(problems[0].kind, ProblemKind::Limit, "{problems:?}");
}

#[test]
fn markup_and_hidden_characters_in_names_stay_text_or_go() {
    let titled = |name: &str| {
        let text = read(&format!("hostile/files/ok-{name}.json"));
        open(&text).expect("opens").head.title
    };
    let markup = titled("markup-in-title");
    assert_eq!(markup, "<script>alert(1)</script>", "text, nothing more");
    assert_eq!(titled("turned-writing"), "evil", "direction marks go");
    assert_eq!(titled("zero-width"), "plate", "zero-width marks go");
    assert_eq!(titled("escaped-controls"), "abc[31m", "controls go");
    let sent = |name: &str| {
        let text = read(&format!("hostile/links/ok-{name}.link"));
        unlink(&text).expect("opens").layout
    };
    for (name, title) in [
        ("markup-in-title", "<script>alert(1)</script>"),
        ("turned-writing", "evil"),
        ("zero-width", "plate"),
        ("controls", "abc[31m"),
    ] {
        assert_eq!(sent(name).head.title, title, "{name} in a link");
    }
    assert_eq!(
        sent("proto").items[0].prop,
        "__proto__",
        "a prop of no kind"
    );
    let proto = open(&read("hostile/files/ok-proto.json")).expect("opens");
    assert!(proto.extra.contains_key("__proto__"), "an unknown field");
}

#[test]
fn every_truncation_of_a_file_is_refused() {
    let text = harbour_supper().to_json();
    for cut in (0..text.len()).step_by(7) {
        assert!(open(&text[..cut]).is_err(), "cut at {cut}");
    }
}

/// A change of some bytes at a few places.
fn mutation() -> impl Strategy<Value = Vec<(prop::sample::Index, u8)>> {
    prop::collection::vec((any::<prop::sample::Index>(), any::<u8>()), 1..6)
}

fn mutated(text: &str, changes: &[(prop::sample::Index, u8)]) -> Vec<u8> {
    let mut bytes = text.as_bytes().to_vec();
    for (at, byte) in changes {
        let at = at.index(bytes.len());
        bytes[at] = *byte & 0x7f;
    }
    bytes
}

proptest! {
    #[test]
    fn random_bytes_do_no_harm(bytes in prop::collection::vec(any::<u8>(), 0..400)) {
        probe::file(&bytes);
        probe::fragment(&bytes);
        probe::body(&bytes);
    }

    #[test]
    fn random_link_letters_are_refused(text in "#?[A-Za-z0-9_-]{0,400}") {
        prop_assert!(unlink(&text).is_err(), "{} was read", text);
    }

    #[test]
    fn altered_files_do_no_harm(changes in mutation()) {
        probe::file(&mutated(&harbour_supper().to_json(), &changes));
        probe::file(&mutated(&read("golden/version-1/everything.spread.json"), &changes));
    }

    #[test]
    fn altered_bodies_with_a_right_sum_do_no_harm(
        changes in prop::collection::vec((any::<prop::sample::Index>(), any::<u8>()), 1..6),
        cut in any::<prop::sample::Index>(),
    ) {
        for name in ["supper", "everything"] {
            let mut bytes = probe::body_of(read(&format!("golden/version-1/{name}.link")).trim());
            for (at, byte) in &changes {
                let at = at.index(bytes.len());
                bytes[at] = *byte;
            }
            probe::body(&bytes);
            bytes.truncate(cut.index(bytes.len()));
            probe::body(&bytes);
        }
    }

    #[test]
    fn altered_links_are_refused(changes in mutation()) {
        let whole = link(&harbour_supper()).fragment;
        let bytes = mutated(&whole, &changes);
        prop_assume!(bytes != whole.as_bytes());
        let said = probe::fragment(&bytes);
        // Changes may leave white space at the ends, which is dropped, or put
        // a `#` before a whole link; five changes cannot do the latter.
        prop_assert!(!said.is_empty(), "{:?} was read", changes);
    }
}
