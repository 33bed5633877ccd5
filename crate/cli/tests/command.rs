//! The command run as a script would run it.
use std::io::Write as _;
use std::process::{Command, Output, Stdio};

fn run(args: &[&str]) -> Output {
    fed(args, "")
}

/// Runs the command with this text as its standard input.
fn fed(args: &[&str], input: &str) -> Output {
    let mut child = Command::new(env!("CARGO_BIN_EXE_overspread"))
        .args(args)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .expect("the command runs");
    let mut stdin = child.stdin.take().expect("a pipe");
    let input = input.to_owned();
    // A command that does not read its input closes the pipe.
    let writer = std::thread::spawn(move || drop(stdin.write_all(input.as_bytes())));
    let out = child.wait_with_output().expect("the command ends");
    writer.join().expect("joined");
    out
}

fn text(bytes: &[u8]) -> String {
    String::from_utf8_lossy(bytes).into_owned()
}

macro_rules! in_tree {
    ($path:literal) => {
        concat!(env!("CARGO_MANIFEST_DIR"), "/../../", $path)
    };
}

const SUPPER: &str = in_tree!("static/starters/harbour-supper.spread.json");
const BAD: &str = in_tree!("tests/hostile/files/value-colour-url.json");
const EXTRA: &str = in_tree!("tests/hostile/files/ok-proto.json");
const LATER: &str = in_tree!("tests/hostile/links/ok-unknown-section.link");

#[test]
fn a_sound_layout_is_read_for_people_and_for_machines() {
    let people = run(&["read", "--table", SUPPER]);
    let said = text(&people.stdout);
    assert!(people.status.success(), "{said}");
    assert!(said.contains("Lay the oat runner"), "{said}");
    let machine = run(&["read", SUPPER]);
    let value: serde_json::Value = serde_json::from_slice(&machine.stdout).expect("JSON");
    assert!(
        value["findings"].as_array().is_some_and(|f| f.len() > 3),
        "findings as JSON"
    );
}

#[test]
fn scores_are_of_the_crop_that_is_asked_for() {
    let read = |args: &[&str]| {
        let out = run(args);
        let value: serde_json::Value = serde_json::from_slice(&out.stdout).expect("JSON");
        assert_eq!(out.status.code(), Some(0), "{args:?}");
        value
    };
    let whole = read(&["read", SUPPER]);
    let post = read(&["read", SUPPER, "--crop", "39"]);
    assert_eq!(post["crop"], 39, "it says of which");
    assert!(whole["crop"].is_null(), "or of the whole frame");
    assert_ne!(post["scores"], whole["scores"], "another picture");
    let people = text(&run(&["read", "--table", "--crop", "39", SUPPER]).stdout);
    assert!(people.contains("in 4:5 post"), "{people}");
    let none = run(&["read", SUPPER, "--crop", "9"]);
    assert_eq!(none.status.code(), Some(1), "no such crop");
    assert!(text(&none.stderr).contains("no such crop"), "and says so");
}

#[test]
fn two_layouts_are_compared_for_people_and_for_machines() {
    let before = std::fs::read_to_string(SUPPER).expect("the supper");
    let mut after: serde_json::Value = serde_json::from_str(&before).expect("JSON");
    after["items"][2]["at"] = serde_json::json!([555, 372]);
    let machine = fed(&["compare", SUPPER, "-"], &after.to_string());
    let told: serde_json::Value = serde_json::from_slice(&machine.stdout).expect("JSON");
    assert_eq!(told["versions"], true);
    let change = &told["changes"][0];
    assert_eq!(change["number"], 3, "{told}");
    assert_eq!(change["sentence"], "3 loaf moved 12 cm to the left.");
    assert_eq!(change["moved"], serde_json::json!([[675, 372], [555, 372]]));
    assert!(
        told["findings"]["scores"][1]["balance"].is_number(),
        "{told}"
    );
    let both = told["findings"]["both"].as_array().expect("a list");
    assert!(
        both.iter()
            .all(|f| f["figures"].as_array().is_some_and(|f| f.len() == 2))
    );
    let people = text(&fed(&["compare", "-", SUPPER, "--table"], &after.to_string()).stdout);
    assert!(
        people.contains("3 loaf moved 12 cm to the right."),
        "{people}"
    );
    assert!(people.contains("Balance "), "{people}");
    let alike = text(&run(&["compare", SUPPER, SUPPER, "--table"]).stdout);
    assert!(alike.contains("What changed: 0"), "{alike}");
    let bad = run(&["compare", SUPPER, BAD]);
    assert_eq!(bad.status.code(), Some(1), "either may be bad");
}

#[test]
fn a_link_may_hold_two_versions_and_gives_back_both() {
    let before = std::fs::read_to_string(SUPPER).expect("the supper");
    let after = before.replacen("675,", "555,", 1);
    assert_ne!(before, after, "the loaf moved");
    let words = [
        "link", SUPPER, "--with", "-", "--name", "right", "--name", "left",
    ];
    let link = text(&fed(&words, &after).stdout);
    let first = run(&["unlink", link.trim()]);
    assert_eq!(text(&first.stdout), before, "the first");
    let said = text(&first.stderr);
    assert!(
        said.contains("“right”") && said.contains("“left”"),
        "{said}"
    );
    let other = run(&["unlink", "--other", link.trim()]);
    assert_eq!(text(&other.stdout), after, "and the other");
    let alone = text(&run(&["link", SUPPER]).stdout);
    assert_eq!(
        run(&["unlink", alone.trim(), "--other"]).status.code(),
        Some(1)
    );
    let titled = text(&fed(&["link", "-", "--with", SUPPER], &after).stdout);
    let said = text(&run(&["unlink", titled.trim()]).stderr);
    assert!(said.contains("Harbour supper"), "{said}");
}

#[test]
fn wrong_calls_and_bad_files_have_their_own_codes() {
    let code = |args: &[&str]| run(args).status.code();
    assert_eq!(code(&["check", SUPPER]), Some(0), "sound");
    assert_eq!(code(&["check", "no-such-file"]), Some(2), "unreadable");
    assert_eq!(code(&["dance"]), Some(2), "unknown");
    assert_eq!(code(&["unlink", "AAAA"]), Some(1), "not a link");
    let out = run(&["check", BAD]);
    assert_eq!(out.status.code(), Some(1), "not a layout");
    let said = text(&out.stderr);
    assert!(said.contains("floor.colour: found \"url(#x)\""), "{said}");
    assert!(out.stdout.is_empty(), "nothing but the complaint");
}

#[test]
fn a_file_goes_through_a_link_and_comes_back_byte_for_byte() {
    let file = std::fs::read_to_string(SUPPER).expect("readable");
    let made = fed(&["link", "-"], &file);
    assert!(made.status.success(), "{}", text(&made.stderr));
    assert!(made.stderr.is_empty(), "nothing lost");
    let fragment = text(&made.stdout);
    let piped = fed(&["unlink", "-"], &fragment);
    assert_eq!(text(&piped.stdout), file, "through standard input");
    let address = format!("https://planner.example/#{}", fragment.trim());
    let given = run(&["unlink", &address]);
    assert_eq!(text(&given.stdout), file, "as a whole address");
}

#[test]
fn what_is_left_out_is_said() {
    let out = run(&["link", EXTRA]);
    assert_eq!(out.status.code(), Some(0), "a link all the same");
    let said = text(&out.stderr);
    assert!(said.contains("__proto__: left out"), "{said}");
    let later = std::fs::read_to_string(LATER).expect("readable");
    let out = fed(&["unlink", "-"], &later);
    assert_eq!(out.status.code(), Some(0), "a file all the same");
    let said = text(&out.stderr);
    assert!(said.contains("section 99: left out"), "{said}");
}

#[test]
fn the_see_through_plan_says_whose_pixels_it_has() {
    let out = run(&["draw", SUPPER, "--see-through"]);
    assert!(out.status.success(), "{}", text(&out.stderr));
    let svg = text(&out.stdout);
    assert!(svg.contains("viewBox=\"0 0 6000 4000\""), "full frame");
    let said = text(&out.stderr);
    assert!(said.contains("camera.pixels is not said"), "{said}");
    let mut layout: serde_json::Value =
        serde_json::from_str(&std::fs::read_to_string(SUPPER).expect("readable")).expect("JSON");
    layout["camera"]["pixels"] = serde_json::json!([900, 600]);
    let out = fed(&["draw", "-", "--see-through"], &layout.to_string());
    let svg = text(&out.stdout);
    assert!(svg.contains("viewBox=\"0 0 900 600\""), "as told");
    assert!(out.stderr.is_empty(), "nothing to add");
    let none = run(&["draw", SUPPER, "--see-through", "--exposure", "9"]);
    assert_eq!(none.status.code(), Some(1), "no such exposure");
}

#[test]
fn a_layout_is_drawn_whole_by_exposure_and_by_crop() {
    let layout: serde_json::Value =
        serde_json::from_str(&std::fs::read_to_string(SUPPER).expect("readable")).expect("JSON");
    let id = |list: &str, n: usize| layout[list][n]["id"].to_string();
    let drawn = |args: &[&str]| {
        let out = run(&[&["draw", SUPPER], args].concat());
        assert!(out.status.success(), "{args:?}: {}", text(&out.stderr));
        text(&out.stdout)
    };
    let whole = drawn(&[]);
    assert!(whole.starts_with("<svg"), "a drawing");
    assert!(whole.contains("Harbour supper"), "with its title");
    assert!(whole.contains("\n2A\n"), "hands of every exposure");
    let hands = |n: usize| layout["exposures"][n]["kind"] == "hands";
    let first = (0..9).find(|n| hands(*n)).expect("one with hands");
    let one = drawn(&["--exposure", &id("exposures", first)]);
    assert!(
        one.contains("\n1A\n") && !one.contains("\n2A\n"),
        "one only"
    );
    let crop = drawn(&["--crop", &id("crops", 0)]);
    assert!(!crop.contains("Harbour supper"), "only what it keeps");
    assert_ne!(crop, drawn(&["--crop", &id("crops", 1)]), "each its own");
}

#[test]
fn a_drawing_goes_to_a_file_and_what_is_not_there_is_said() {
    let file = std::env::temp_dir().join(format!("overspread-{}.svg", std::process::id()));
    let name = file.to_str().expect("plain");
    let out = run(&["draw", SUPPER, "-o", name]);
    assert!(out.status.success(), "{}", text(&out.stderr));
    assert!(out.stdout.is_empty(), "nothing else is printed");
    let kept = std::fs::read(&file).expect("written");
    std::fs::remove_file(&file).expect("removed");
    assert_eq!(kept, run(&["draw", SUPPER]).stdout, "the same drawing");
    for (option, id) in [("--exposure", "999"), ("--crop", "1")] {
        let out = run(&["draw", SUPPER, option, id]);
        assert_eq!(out.status.code(), Some(1), "{option}");
        let said = text(&out.stderr);
        assert!(said.contains("there is no such"), "{option}: {said}");
        assert!(out.stdout.is_empty(), "{option}: no drawing");
    }
    let side = text(&run(&["draw", SUPPER, "--side"]).stdout);
    assert!(
        side.starts_with("<svg") && side.contains("ceiling"),
        "from the side"
    );
    assert!(!side.contains("Harbour supper"), "and nothing else");
    let out = run(&["draw", SUPPER, "-o", "/no/such/place.svg"]);
    assert_eq!(out.status.code(), Some(2), "cannot be written");
}

#[test]
fn guides_go_to_a_folder_or_an_archive() {
    let layout = std::env::temp_dir().join(format!("overspread-{}.json", std::process::id()));
    let supper = std::fs::read_to_string(SUPPER).expect("the supper");
    let small = r#""format": "full-frame", "pixels": [600, 400],"#;
    let supper = supper.replacen(r#""format": "full-frame","#, small, 1);
    std::fs::write(&layout, supper).expect("written");
    let from = layout.to_str().expect("plain");
    let names = ["00-overview.svg", "01-clean.png", "02-hands-1.png"];
    let folder = layout.with_extension("guides");
    let out = run(&["guides", from, "-o", folder.to_str().expect("plain")]);
    assert!(out.status.success(), "{}", text(&out.stderr));
    assert!(out.stdout.is_empty() && out.stderr.is_empty(), "in silence");
    for name in names {
        let kept = std::fs::read(folder.join(name)).unwrap_or_else(|e| panic!("{name}: {e}"));
        let svg = name.ends_with(".svg");
        let head: &[u8] = if svg { b"<svg" } else { b"\x89PNG" };
        assert!(kept.starts_with(head), "{name}");
        // The header of a PNG: 600 across, 400 down, 8 bits, grey.
        if !svg {
            assert_eq!(kept[16..26], [0, 0, 2, 88, 0, 0, 1, 144, 8, 0], "{name}");
        }
    }
    std::fs::remove_dir_all(&folder).expect("removed");
    let archive = layout.with_extension("zip");
    let out = run(&["guides", from, "-o", archive.to_str().expect("plain")]);
    assert!(out.status.success(), "{}", text(&out.stderr));
    let kept = std::fs::read(&archive).expect("written");
    assert!(kept.starts_with(b"PK"), "an archive");
    for name in names {
        let inside = kept.windows(name.len()).any(|part| part == name.as_bytes());
        assert!(inside, "{name} is in it");
    }
    std::fs::remove_file(&archive).expect("removed");
    std::fs::remove_file(&layout).expect("removed");
    let out = run(&["guides", SUPPER]);
    assert_eq!(out.status.code(), Some(2), "nowhere to go");
    let out = run(&["guides", SUPPER, "-o", "/dev/null/place"]);
    assert_eq!(out.status.code(), Some(2), "cannot be written");
    assert!(text(&out.stderr).contains("6000 × 4000, as usual"), "said");
}

#[test]
fn schema_help_and_version_are_printed() {
    let schema: serde_json::Value = serde_json::from_slice(&run(&["schema"]).stdout).expect("JSON");
    let format = &schema["properties"]["format"]["const"];
    assert_eq!(format, "overspread-layout", "the schema of a layout");
    let help = text(&run(&["--help"]).stdout);
    assert!(help.contains("overspread unlink LINK"), "{help}");
    let version = text(&run(&["--version"]).stdout);
    assert!(version.starts_with("overspread 0."), "{version}");
}
