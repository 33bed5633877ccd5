use super::*;

fn patch(side: usize, colour: impl Fn(usize, usize) -> [u8; 3]) -> Vec<u8> {
    let at = |n: usize| {
        let [r, g, b] = colour(n % side, n / side);
        [r, g, b, 255]
    };
    (0..side * side).flat_map(at).collect()
}

fn read(thing: &[u8], paper: &[u8], side: usize) -> Result<Vec<Tone>, Unread> {
    let of = |rgba| Patch { rgba, width: side };
    tones_of(of(thing), of(paper), Paper::White)
}

/// White paper of L* 95 in neutral light, as sRGB writes it.
const PAPER: [u8; 3] = [0xf0; 3];

fn plain(colour: [u8; 3]) -> Vec<u8> {
    patch(16, |_, _| colour)
}

#[test]
fn in_neutral_light_well_exposed_nothing_changes() {
    for colour in [[0xc0, 0x39, 0x2b], [0x80; 3], [0x1f, 0x2a, 0x44]] {
        let tones = read(&plain(colour), &plain(PAPER), 16).expect("readable");
        assert_eq!(tones.len(), 1, "one tone of one colour: {tones:?}");
        for (found, wanted) in tones[0].srgb.0.iter().zip(colour) {
            assert!(found.abs_diff(wanted) <= 1, "{:?} of {colour:?}", tones[0]);
        }
        assert_eq!(
            (tones[0].share, tones[0].origin),
            (100, crate::layout::Origin::Photo),
            "whole"
        );
    }
}

#[test]
fn paper_read_as_grey_darkens_what_lies_on_it() {
    let of = |rgba| Patch { rgba, width: 16 };
    let (thing, card) = (plain([0x80; 3]), plain([0x77; 3]));
    let found = tones_of(of(&thing), of(&card), Paper::Grey).expect("readable");
    assert!(
        found[0].srgb.0[0].abs_diff(0x80) <= 1,
        "a card of L* 50: {found:?}"
    );
    let found = tones_of(of(&thing), of(&card), Paper::White).expect("readable");
    assert_eq!(
        found[0].srgb.0, [255; 3],
        "lighter than paper, brought to white"
    );
}

#[test]
fn two_tones_keep_their_shares_and_specks_are_none() {
    let (crust, crumb) = ([0x8b, 0x5a, 0x2b], [0xe6, 0xd2, 0xa8]);
    let thing = patch(40, |x, y| match (x, y) {
        (4 | 5, 4..8) => [0x20, 0x60, 0x20],
        (0..10, _) => crust,
        _ => crumb,
    });
    let tones = read(&thing, &plain(PAPER), 40);
    assert_eq!(
        tones,
        Err(Unread::Small),
        "the paper has 16 pixels in a row of 40"
    );
    let tones = read(&thing, &patch(40, |_, _| PAPER), 40).expect("readable");
    let shares: Vec<u8> = tones.iter().map(|t| t.share).collect();
    assert_eq!(shares, [75, 25], "crumb, then crust: {tones:?}");
}

#[test]
fn neighbouring_tones_are_one() {
    let thing = patch(32, |x, _| if x < 16 { [0x80; 3] } else { [0x8c; 3] });
    let tones = read(&thing, &patch(32, |_, _| PAPER), 32).expect("readable");
    assert_eq!(tones.len(), 1, "5 apart in L*: {tones:?}");
    let thing = patch(32, |x, _| if x < 16 { [0x80; 3] } else { [0x98; 3] });
    let tones = read(&thing, &patch(32, |_, _| PAPER), 32).expect("readable");
    assert_eq!(tones.len(), 2, "9 apart in L*: {tones:?}");
}

#[test]
fn what_cannot_be_read_is_said() {
    let (thing, paper) = (plain([0x80; 3]), plain(PAPER));
    for (found, wanted, case) in [
        (
            read(&thing, &plain([255; 3]), 16),
            Unread::PaperClipped,
            "paper at the top",
        ),
        (
            read(&thing, &plain([253, 240, 240]), 16),
            Unread::PaperClipped,
            "one channel there",
        ),
        (
            read(&thing, &plain([0x50; 3]), 16),
            Unread::PaperDark,
            "more than three stops under",
        ),
        (read(&thing, &plain([0; 3]), 16), Unread::PaperDark, "black"),
        (
            read(&thing, &plain([0xe0, 0x70, 0x50]), 16),
            Unread::PaperCast,
            "orange",
        ),
        (
            read(&thing, &plain([0xf0, 0xf0, 0]), 16),
            Unread::PaperCast,
            "no blue at all",
        ),
        (
            read(&plain([255; 3]), &paper, 16),
            Unread::ThingClipped,
            "a glint",
        ),
        (read(&plain([3; 3]), &paper, 16), Unread::ThingDark, "black"),
        (
            read(&thing[..4 * 16 * 7], &paper, 16),
            Unread::Small,
            "seven rows",
        ),
        (read(&[], &paper, 16), Unread::Small, "nothing"),
        (read(&thing, &paper, 0), Unread::Small, "rows of nothing"),
    ] {
        assert_eq!(found, Err(wanted), "{case}");
        assert!(
            wanted.to_string().ends_with('.'),
            "{wanted:?} is a sentence: {wanted}"
        );
    }
}

#[test]
fn half_in_shine_still_reads() {
    let thing = patch(16, |x, _| if x < 7 { [255; 3] } else { [0x40, 0x60, 0x80] });
    let tones = read(&thing, &plain(PAPER), 16).expect("more than half is of use");
    assert_eq!(tones.len(), 1, "the shine is no tone: {tones:?}");
}
