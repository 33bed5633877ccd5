//! Food, by how it looks from above. Sizes are those of one serving heap and
//! are our guesses; so are the colours, save where a remark says otherwise.
use super::entry::Evidence::Guess;
use super::entry::Kind::{Food, Scatter};
use super::entry::{Entry, Kind, disc, oval, rect, tone};
use crate::layout::{Face, Finish, Size, Tone};

#[expect(clippy::too_many_arguments, reason = "one row of a table")]
const fn row(
    id: &'static str,
    name: &'static str,
    kind: Kind,
    size: Size,
    height: i32,
    food: &'static [Tone],
    face: Face,
    range: [i32; 2],
) -> Entry {
    let (rim, well): (&[Tone], &[Tone]) = (&[], &[]);
    let (finish, evidence) = (Finish::Satin, Guess);
    Entry {
        id,
        name,
        kind,
        size,
        height,
        rim,
        well,
        food,
        finish,
        face,
        range,
        evidence,
    }
}

const fn finished(mut entry: Entry, finish: Finish) -> Entry {
    entry.finish = finish;
    entry
}

use Face::{Crust, Cut, Open, Usual};
use Finish::{Gloss, Liquid, Matt};

#[rustfmt::skip]
static FOODS: [Entry; 24] = [
    finished(row("mussels", "mussels", Food, disc(236, 0), 40, &[tone(0x20_2b44, 47), tone(0xe5_7d28, 45), tone(0xb7_bfd0, 8)], Open, [120, 320]), Gloss),
    row("lemon-wedges", "lemon wedges", Food, disc(110, 0), 30, &[tone(0xe9_b21f, 30), tone(0xf6_cf45, 50), tone(0xfb_f2d2, 20)], Usual, [60, 200]),
    row("citrus-half", "halved citrus", Food, disc(72, 0), 35, &[tone(0xe9_b21f, 15), tone(0xf6_cf45, 65), tone(0xfb_f2d2, 20)], Cut, [50, 140]),
    finished(row("loaf", "loaf", Food, oval(300, 170, 0), 95, &[tone(0x34_1b0d, 35), tone(0x5a_3218, 35), tone(0x7b_4722, 30)], Crust, [180, 400]), Matt),
    finished(row("torn-bread", "torn bread", Food, oval(160, 110, 0), 60, &[tone(0x7b_4722, 35), tone(0xd9_b685, 15), tone(0xec_d7ae, 50)], Cut, [60, 220]), Matt),
    finished(row("bread-slice", "slice of bread", Food, rect(130, 95, 30, 0), 15, &[tone(0x7b_4722, 15), tone(0xd9_b685, 25), tone(0xec_d7ae, 60)], Cut, [80, 180]), Matt),
    finished(row("olives", "black olives", Food, disc(90, 0), 25, &[tone(0x2f_2430, 65), tone(0x4b_3a4c, 35)], Usual, [50, 200]), Gloss),
    row("aubergine", "seared aubergine", Food, oval(290, 190, 0), 35, &[tone(0x3d_2145, 35), tone(0xb6_7a36, 35), tone(0xdc_b069, 30)], Cut, [120, 400]),
    finished(row("herbs", "sprig of herbs", Scatter, oval(150, 60, 0), 15, &[tone(0x3f_6b2c, 60), tone(0x7e_a24a, 40)], Usual, [50, 300]), Matt),
    finished(row("crumbs", "crumbs", Scatter, disc(140, 0), 4, &[tone(0xe2_c693, 100)], Usual, [50, 400]), Matt),
    finished(row("tomato-salad", "tomato salad", Food, disc(210, 0), 45, &[tone(0x8e_2a1e, 30), tone(0xb0_3a2a, 55), tone(0x7e_a24a, 15)], Cut, [100, 300]), Gloss),
    row("leaf-salad", "leaf salad", Food, disc(220, 0), 70, &[tone(0x3c_5a2a, 35), tone(0x5f_8a3a, 40), tone(0x9d_bb62, 25)], Usual, [100, 320]),
    row("noodles", "noodles", Food, disc(170, 0), 50, &[tone(0xb9_915c, 20), tone(0xe0_c48a, 60), tone(0xef_dcb0, 20)], Usual, [90, 260]),
    row("egg-halves", "halved eggs", Food, oval(120, 80, 0), 25, &[tone(0xbc_641a, 15), tone(0xd9_902b, 25), tone(0xf3_ede0, 60)], Cut, [45, 200]),
    finished(row("rice", "rice", Food, disc(160, 0), 45, &[tone(0xcf_c6b2, 25), tone(0xec_e6d8, 75)], Usual, [80, 260]), Matt),
    row("roast-fish", "roast fish", Food, oval(320, 130, 0), 55, &[tone(0x5f_5348, 30), tone(0x9a_8a72, 45), tone(0xc9_b794, 25)], Usual, [180, 450]),
    finished(row("berries", "berries", Food, disc(120, 0), 30, &[tone(0x2e_2547, 40), tone(0x7a_1f38, 35), tone(0xb8_2f3f, 25)], Usual, [50, 220]), Gloss),
    row("cheese-wedge", "wedge of cheese", Food, rect(140, 80, 8, 0), 45, &[tone(0xc9_a45e, 25), tone(0xee_dcab, 75)], Cut, [70, 220]),
    finished(row("nuts", "nuts", Scatter, disc(110, 0), 18, &[tone(0x6a_4526, 35), tone(0xa0_7442, 45), tone(0xd2_b184, 20)], Usual, [40, 300]), Matt),
    finished(row("soup", "soup", Food, disc(185, 0), 8, &[tone(0xa8_4f1c, 30), tone(0xd9_752a, 60), tone(0xf0_dfc0, 10)], Usual, [80, 280]), Liquid),
    row("roast-potatoes", "roast potatoes", Food, disc(200, 0), 50, &[tone(0x8a_5524, 25), tone(0xc0_8a3e, 45), tone(0xe4_c47c, 30)], Usual, [100, 320]),
    row("roast-carrots", "roast carrots", Food, oval(200, 150, 0), 30, &[tone(0x8a_4416, 20), tone(0xd9_752a, 55), tone(0xf0_a04e, 25)], Usual, [60, 320]),
    finished(row("herb-scatter", "picked herb leaves", Scatter, disc(150, 0), 4, &[tone(0x3f_6b2c, 60), tone(0x7e_a24a, 40)], Usual, [40, 400]), Matt),
    finished(row("salt", "salt flakes", Scatter, disc(50, 0), 6, &[tone(0xff_faf0, 100)], Usual, [20, 120]), Matt),
];

/// Every food, in the order it is offered.
#[must_use]
pub fn foods() -> &'static [Entry] {
    &FOODS
}

/// The face a stylist would turn up when this food, lying like this, sinks
/// into what it lies on, and the tones seen then; `None` when the better face
/// is up already or it has but one.
#[must_use]
pub fn better_face(prop: &str, face: Face) -> Option<(Face, &'static [Tone])> {
    // A loaf is cut open: its crumb is that of a slice.
    let shown = if prop == "loaf" { "bread-slice" } else { prop };
    let entry = FOODS.iter().find(|e| e.id == shown)?;
    // A food that says nothing of its faces is taken to have but one.
    let worse = matches!((face, entry.face), (Crust, Cut) | (Face::Closed, Open));
    worse.then_some((entry.face, entry.food))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_better_face_is_offered_once() {
        let (face, tones) = better_face("loaf", Crust).expect("a loaf is cut");
        assert_eq!(face, Cut, "cut side up");
        assert!(tones.iter().any(|t| t.share >= 50), "mostly crumb");
        assert_eq!(better_face("loaf", Cut), None, "it is up already");
        assert_eq!(better_face("loaf", Usual), None, "nothing is known of it");
        assert_eq!(
            better_face("mussels", Face::Closed).map(|f| f.0),
            Some(Open),
            "opened"
        );
        assert_eq!(better_face("olives", Usual), None, "one face");
        assert_eq!(better_face("no-such", Usual), None, "unknown");
    }
}
