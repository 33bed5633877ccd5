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
static FOODS: [Entry; 118] = [
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
    finished(row("roast-chicken", "roast chicken", Food, oval(290, 200, 0), 110, &[tone(0x6a_3a18, 30), tone(0xa8_642a, 40), tone(0xd3_9a4e, 30)], Crust, [220, 380]), Gloss),
    row("steak-slices", "sliced steak", Food, oval(210, 120, 0), 28, &[tone(0x5a_443a, 30), tone(0x8a_3f3a, 35), tone(0xb4_575a, 35)], Cut, [80, 320]),
    finished(row("meatballs", "meatballs in sauce", Food, disc(170, 0), 40, &[tone(0x5a_3420, 40), tone(0x7e_4c2c, 35), tone(0xb9_8a5e, 25)], Usual, [90, 280]), Gloss),
    finished(row("sausages", "sausages", Food, oval(170, 130, 0), 32, &[tone(0x5e_2f1a, 35), tone(0x91_502c, 45), tone(0xd0_8a54, 20)], Usual, [60, 300]), Gloss),
    finished(row("prawns", "prawns", Food, disc(180, 0), 35, &[tone(0xc0_492a, 25), tone(0xe5_8a5e, 45), tone(0xf3_bd98, 30)], Usual, [80, 320]), Gloss),
    finished(row("oysters", "oysters", Food, oval(280, 220, 0), 35, &[tone(0x6d_6a62, 35), tone(0xa9_aaa0, 25), tone(0xd9_dad2, 40)], Open, [100, 400]), Gloss),
    row("clams", "clams", Food, disc(190, 0), 40, &[tone(0x8a_7a64, 30), tone(0xc4_b597, 35), tone(0xe2_d8c0, 35)], Open, [100, 320]),
    row("salmon-fillet", "salmon fillet", Food, oval(250, 130, 0), 30, &[tone(0xc8_704e, 25), tone(0xe3_9a7c, 50), tone(0xf3_c2aa, 25)], Cut, [120, 400]),
    row("cured-ham", "slices of cured ham", Food, oval(220, 160, 0), 15, &[tone(0x8a_2f38, 30), tone(0xb0_4a50, 40), tone(0xec_d2c8, 30)], Usual, [100, 320]),
    row("dumplings", "dumplings", Food, disc(210, 0), 30, &[tone(0xa9_713a, 20), tone(0xd9_c294, 30), tone(0xf0_e2c2, 50)], Usual, [80, 320]),
    row("rice-rolls", "rice rolls", Food, oval(190, 110, 0), 30, &[tone(0x1f_2a26, 25), tone(0xef_eae0, 50), tone(0xe5_8a5e, 25)], Cut, [60, 320]),
    row("fried-eggs", "fried eggs", Food, oval(190, 120, 0), 18, &[tone(0xd9_902b, 15), tone(0xf0_b53c, 15), tone(0xf7_f2e6, 70)], Usual, [90, 300]),
    row("penne", "penne in tomato sauce", Food, disc(190, 0), 45, &[tone(0xb9_8a3e, 20), tone(0xe0_b45e, 50), tone(0xf2_d796, 30)], Usual, [100, 300]),
    row("spaghetti", "spaghetti in tomato sauce", Food, disc(190, 0), 50, &[tone(0xb9_8a3e, 25), tone(0xe6_c682, 50), tone(0xf4_e0aa, 25)], Usual, [100, 300]),
    row("couscous", "couscous", Food, disc(190, 0), 45, &[tone(0xb8_964e, 25), tone(0xd8_b970, 45), tone(0xec_d79c, 30)], Usual, [80, 320]),
    finished(row("curry", "curry", Food, disc(190, 0), 10, &[tone(0x8a_4a12, 30), tone(0xc0_7a22, 40), tone(0xdb_a03e, 30)], Usual, [80, 300]), Liquid),
    finished(row("bean-stew", "bean stew", Food, disc(190, 0), 12, &[tone(0x6a_2414, 30), tone(0x96_391f, 35), tone(0xd3_b18a, 35)], Usual, [80, 300]), Liquid),
    row("hummus", "hummus", Food, disc(170, 0), 35, &[tone(0xc9_ae7e, 30), tone(0xde_c79a, 50), tone(0xed_dcb8, 20)], Usual, [70, 280]),
    row("yogurt", "yogurt", Food, disc(140, 0), 25, &[tone(0xdc_d8cc, 25), tone(0xf1_eee4, 50), tone(0xff_fdf6, 25)], Usual, [60, 240]),
    finished(row("green-sauce", "green sauce", Food, disc(100, 0), 15, &[tone(0x3c_5a1e, 35), tone(0x5f_8330, 40), tone(0x93_ae54, 25)], Usual, [50, 200]), Gloss),
    finished(row("miso-soup", "clear soup", Food, disc(120, 0), 8, &[tone(0x8a_5f30, 35), tone(0xb9_8d52, 45), tone(0xef_e6d0, 20)], Usual, [80, 240]), Liquid),
    row("tofu-cubes", "cubes of bean curd", Food, disc(130, 0), 25, &[tone(0xcf_c3a4, 20), tone(0xe8_dfc8, 40), tone(0xf6_f0de, 40)], Cut, [60, 240]),
    finished(row("feta", "crumbled white cheese", Food, disc(120, 0), 22, &[tone(0xdc_d4c0, 25), tone(0xef_e9da, 40), tone(0xfb_f8ee, 35)], Usual, [50, 260]), Matt),
    row("mozzarella", "torn fresh cheese", Food, disc(160, 0), 35, &[tone(0xdc_d6c6, 25), tone(0xf0_ece0, 45), tone(0xfd_fbf4, 30)], Cut, [60, 280]),
    finished(row("soft-cheese", "round of soft cheese", Food, disc(120, 0), 35, &[tone(0xe2_d6b0, 20), tone(0xe9_e3d2, 25), tone(0xf8_f5ea, 55)], Cut, [80, 260]), Matt),
    row("butter", "butter", Food, rect(110, 65, 8, 0), 30, &[tone(0xd9_b95a, 25), tone(0xef_d988, 55), tone(0xfa_ecb4, 20)], Cut, [50, 200]),
    row("omelette", "folded omelette", Food, oval(210, 120, 0), 30, &[tone(0xcf_9a34, 30), tone(0xe9_bd52, 45), tone(0xf6_dd90, 25)], Usual, [120, 300]),
    finished(row("skewers", "grilled skewers", Food, oval(230, 150, 0), 25, &[tone(0x6a_3318, 35), tone(0xa0_5a28, 40), tone(0x8f_a04a, 25)], Usual, [150, 320]), Gloss),
    row("asparagus", "asparagus", Food, oval(190, 110, 0), 18, &[tone(0x56_763e, 30), tone(0x8c_bc6b, 50), tone(0xbc_d999, 20)], Usual, [60, 300]),
    row("green-beans", "green beans", Food, oval(180, 130, 0), 25, &[tone(0x3f_6b2c, 30), tone(0x6a_963f, 50), tone(0xa5_c57c, 20)], Usual, [80, 300]),
    row("peas", "peas", Food, disc(130, 0), 20, &[tone(0x4a_7a2c, 25), tone(0x79_a943, 50), tone(0xa8_cd6c, 25)], Usual, [60, 260]),
    row("broccoli", "broccoli", Food, disc(180, 0), 45, &[tone(0x3a_5a2a, 35), tone(0x55_7a3a, 40), tone(0x86_a85c, 25)], Usual, [60, 300]),
    row("cauliflower", "roast cauliflower", Food, disc(190, 0), 45, &[tone(0xb9_9a62, 25), tone(0xe2_d3aa, 40), tone(0xf4_ecd2, 35)], Usual, [80, 320]),
    row("mushrooms", "sliced mushrooms", Food, disc(160, 0), 22, &[tone(0x7a_5a3c, 30), tone(0xc0_a27a, 35), tone(0xe8_d8ba, 35)], Cut, [60, 280]),
    finished(row("beetroot", "sliced beetroot", Food, disc(180, 0), 20, &[tone(0x5a_1730, 35), tone(0x84_264a, 40), tone(0xb8_527a, 25)], Cut, [80, 300]), Gloss),
    row("corn-cobs", "sweetcorn cobs", Food, oval(180, 150, 0), 45, &[tone(0xb9_8a1e, 25), tone(0xe8_bb3a, 50), tone(0xf8_dc7c, 25)], Usual, [80, 320]),
    finished(row("grilled-peppers", "grilled peppers", Food, oval(190, 140, 0), 20, &[tone(0x8e_2418, 30), tone(0xc2_3a24, 45), tone(0xe8_8058, 25)], Usual, [80, 300]), Gloss),
    row("courgette", "grilled courgette", Food, disc(180, 0), 18, &[tone(0x4a_6b30, 25), tone(0xc0_cf8a, 35), tone(0xe2_e6b8, 40)], Cut, [80, 300]),
    row("cucumber", "sliced cucumber", Food, disc(150, 0), 15, &[tone(0x3f_6b34, 25), tone(0xb9_d490, 35), tone(0xdc_ebb8, 40)], Cut, [60, 280]),
    row("radishes", "radishes", Food, disc(120, 0), 25, &[tone(0x8e_1f38, 20), tone(0xc4_304f, 50), tone(0xf6_ece6, 30)], Usual, [50, 240]),
    row("avocado", "halved avocado", Food, oval(170, 130, 0), 35, &[tone(0x2f_3a22, 20), tone(0xb5_c466, 35), tone(0xdd_e09a, 45)], Cut, [60, 300]),
    finished(row("cherry-tomatoes", "cherry tomatoes", Food, disc(150, 0), 28, &[tone(0xa8_2a1c, 40), tone(0xd0_432d, 40), tone(0xf5_a58a, 20)], Usual, [50, 280]), Gloss),
    finished(row("garlic", "garlic bulbs", Food, disc(110, 0), 40, &[tone(0xb9_a2b0, 20), tone(0xdc_d2ca, 35), tone(0xf4_efe6, 45)], Usual, [45, 240]), Matt),
    row("red-onion", "red onion rings", Food, disc(140, 0), 10, &[tone(0x6d_2450, 25), tone(0xa8_5c8c, 30), tone(0xf2_e2ea, 45)], Cut, [60, 280]),
    finished(row("chillies", "red chillies", Food, oval(130, 100, 0), 15, &[tone(0xa0_1c14, 45), tone(0xc4_301f, 35), tone(0xef_8a6a, 20)], Usual, [60, 240]), Gloss),
    row("spinach", "leaves of spinach", Food, disc(180, 0), 35, &[tone(0x2f_4f24, 40), tone(0x4a_7034, 40), tone(0x8f_b06a, 20)], Usual, [80, 300]),
    row("artichokes", "grilled artichokes", Food, oval(190, 140, 0), 30, &[tone(0x5a_5a30, 35), tone(0x98_904e, 40), tone(0xd3_c88e, 25)], Cut, [80, 320]),
    row("pumpkin-wedges", "roast pumpkin", Food, oval(230, 150, 0), 30, &[tone(0x8a_5a24, 25), tone(0xd0_7a22, 45), tone(0xed_a24a, 30)], Cut, [80, 340]),
    row("fig-halves", "halved figs", Food, disc(140, 0), 25, &[tone(0x3d_2445, 30), tone(0xa8_3a4a, 35), tone(0xec_d2b4, 35)], Cut, [50, 260]),
    row("grapes", "grapes", Food, oval(170, 120, 0), 35, &[tone(0x3a_1f40, 40), tone(0x5f_3864, 40), tone(0xb9_a0c0, 20)], Usual, [70, 280]),
    row("peach-halves", "halved peaches", Food, disc(170, 0), 32, &[tone(0xc8_6a3a, 25), tone(0xeb_a24e, 45), tone(0xf8_d08e, 30)], Cut, [60, 300]),
    finished(row("cherries", "cherries", Food, disc(130, 0), 24, &[tone(0x5a_1020, 45), tone(0x8e_1f33, 40), tone(0xe8_a0a8, 15)], Usual, [50, 240]), Gloss),
    row("apple-slices", "sliced apple", Food, disc(150, 0), 20, &[tone(0xa8_2f2a, 20), tone(0xc8_b070, 25), tone(0xf4_ecc8, 55)], Cut, [60, 260]),
    row("melon-slices", "slices of melon", Food, oval(210, 150, 0), 35, &[tone(0x8a_9a4a, 20), tone(0xed_a45a, 50), tone(0xf8_cd94, 30)], Cut, [100, 340]),
    row("watermelon", "wedges of watermelon", Food, disc(220, 0), 25, &[tone(0x2f_5a2e, 20), tone(0xd6_434a, 60), tone(0xf0_9090, 20)], Cut, [100, 360]),
    finished(row("strawberries", "strawberries", Food, disc(150, 0), 28, &[tone(0xa8_1c20, 35), tone(0xd0_342c, 50), tone(0xf4_b0a0, 15)], Usual, [50, 280]), Gloss),
    row("orange-slices", "slices of orange", Food, disc(160, 0), 10, &[tone(0xe0_781a, 25), tone(0xf0_9a34, 50), tone(0xfa_ecd0, 25)], Cut, [70, 300]),
    row("grapefruit", "halved grapefruit", Food, oval(210, 110, 0), 45, &[tone(0xe3_9a4a, 20), tone(0xe0_685a, 55), tone(0xf8_e2cc, 25)], Cut, [90, 300]),
    row("pomegranate", "halved pomegranate", Food, oval(190, 100, 0), 45, &[tone(0xa0_2a2c, 25), tone(0x8e_1430, 45), tone(0xf0_dcb8, 30)], Cut, [80, 280]),
    row("kiwi-slices", "slices of kiwi", Food, disc(130, 0), 10, &[tone(0x6a_5a34, 20), tone(0x7f_a83a, 55), tone(0xe6_ecc0, 25)], Cut, [45, 260]),
    row("banana-slices", "slices of banana", Food, disc(120, 0), 12, &[tone(0xa8_823a, 15), tone(0xe2_cf94, 35), tone(0xf6_ecc6, 50)], Cut, [35, 260]),
    row("plums", "plums", Food, disc(150, 0), 42, &[tone(0x3a_2048, 45), tone(0x5c_3a6a, 35), tone(0xb8_a4c8, 20)], Usual, [45, 280]),
    row("lemon-slices", "slices of lemon", Food, disc(130, 0), 8, &[tone(0xe9_b21f, 25), tone(0xf6_cf45, 50), tone(0xfb_f2d2, 25)], Cut, [50, 260]),
    finished(row("flatbreads", "flatbreads", Food, disc(240, 0), 20, &[tone(0x8a_5524, 20), tone(0xd3_ad72, 40), tone(0xea_d3a4, 40)], Usual, [140, 380]), Matt),
    row("pancakes", "pancakes", Food, disc(150, 0), 45, &[tone(0x8a_5220, 35), tone(0xbd_7f38, 40), tone(0xec_ca8c, 25)], Usual, [100, 260]),
    finished(row("croissants", "croissants", Food, oval(230, 150, 0), 55, &[tone(0x8a_4e1c, 35), tone(0xc0_7c34, 40), tone(0xe6_b46a, 25)], Usual, [100, 340]), Gloss),
    finished(row("bread-rolls", "bread rolls", Food, disc(190, 0), 55, &[tone(0x78_4a2a, 35), tone(0xb9_8448, 40), tone(0xdc_b682, 25)], Crust, [70, 320]), Matt),
    finished(row("toast", "toast", Food, oval(210, 130, 0), 15, &[tone(0x7b_4722, 25), tone(0xb9_8448, 35), tone(0xdc_b47a, 40)], Cut, [90, 300]), Matt),
    finished(row("baguette", "stick of bread", Food, oval(480, 75, 0), 65, &[tone(0x7a_4520, 35), tone(0xb0_733a, 40), tone(0xe0_bc84, 25)], Crust, [200, 700]), Matt),
    row("pizza", "pizza", Food, disc(300, 0), 20, &[tone(0xa8_682c, 20), tone(0xb8_432a, 40), tone(0xef_dca8, 40)], Usual, [200, 400]),
    finished(row("focaccia", "flat oil bread", Food, rect(320, 220, 20, 0), 35, &[tone(0x9a_6428, 25), tone(0xcf_9a4c, 45), tone(0xec_c988, 30)], Crust, [150, 460]), Gloss),
    row("savoury-tart", "savoury tart", Food, disc(260, 0), 35, &[tone(0xa8_702e, 25), tone(0xe6_c46e, 45), tone(0x7e_9a4a, 30)], Usual, [120, 320]),
    finished(row("fruit-tart", "fruit tart", Food, disc(240, 0), 35, &[tone(0xa8_702e, 25), tone(0xc4_302c, 45), tone(0xf4_e4b0, 30)], Usual, [90, 320]), Gloss),
    row("chocolate-cake", "chocolate cake", Food, disc(220, 0), 80, &[tone(0x2a_1a12, 35), tone(0x4a_2c1c, 45), tone(0x7a_4e34, 20)], Cut, [150, 300]),
    row("cake-slices", "slices of cake", Food, oval(190, 120, 0), 60, &[tone(0xd8_c090, 25), tone(0xf2_e6c6, 45), tone(0xfd_f6e4, 30)], Cut, [100, 300]),
    finished(row("brownies", "brownies", Food, oval(170, 130, 0), 30, &[tone(0x2a_1a12, 40), tone(0x3c_2c24, 40), tone(0x8a_6040, 20)], Cut, [55, 320]), Matt),
    finished(row("biscuits", "biscuits", Food, disc(170, 0), 14, &[tone(0xa0_6a2c, 30), tone(0xcf_9c54, 50), tone(0x4a_2c1a, 20)], Usual, [55, 320]), Matt),
    finished(row("meringues", "meringues", Food, disc(160, 0), 35, &[tone(0xd8_ccb8, 25), tone(0xf2_ebdc, 45), tone(0xff_fcf4, 30)], Usual, [55, 300]), Matt),
    row("chocolate", "pieces of chocolate", Food, disc(110, 0), 12, &[tone(0x24_1c1a, 45), tone(0x34_2a26, 40), tone(0x8a_6a58, 15)], Cut, [35, 240]),
    row("waffles", "waffles", Food, oval(220, 150, 0), 25, &[tone(0x9a_5f22, 35), tone(0xcf_9440, 45), tone(0xef_c880, 20)], Usual, [110, 320]),
    finished(row("doughnuts", "doughnuts", Food, disc(180, 0), 35, &[tone(0xa8_682c, 30), tone(0xe2_a3a8, 45), tone(0xf6_e6d0, 25)], Usual, [80, 320]), Gloss),
    finished(row("granola", "granola", Food, disc(140, 0), 25, &[tone(0x8a_5a28, 35), tone(0xb9_8244, 40), tone(0xe0_b880, 25)], Usual, [60, 260]), Matt),
    row("porridge", "porridge", Food, disc(150, 0), 12, &[tone(0xb9_a888, 30), tone(0xd8_cbb0, 45), tone(0xee_e6d2, 25)], Usual, [80, 240]),
    finished(row("honey", "honey", Food, disc(70, 0), 20, &[tone(0xb0_6a0e, 35), tone(0xd8_962a, 45), tone(0xf6_cf7c, 20)], Usual, [40, 160]), Liquid),
    finished(row("jam", "jam", Food, disc(70, 0), 20, &[tone(0x5a_0f1c, 40), tone(0x8e_1c30, 40), tone(0xe0_8a94, 20)], Usual, [40, 160]), Gloss),
    row("ice-cream", "scoops of ice cream", Food, disc(120, 0), 45, &[tone(0xd8_c69c, 25), tone(0xf0_e3c2, 45), tone(0xfd_f8e8, 30)], Usual, [50, 240]),
    finished(row("crackers", "crackers", Food, disc(150, 0), 10, &[tone(0xa8_743a, 25), tone(0xdc_b67c, 50), tone(0xf0_d9ac, 25)], Usual, [50, 300]), Matt),
    finished(row("petals", "flower petals", Scatter, disc(160, 0), 4, &[tone(0xd5_8a9a, 60), tone(0xf2_c8cc, 40)], Usual, [40, 400]), Matt),
    finished(row("seeds", "seeds", Scatter, disc(120, 0), 3, &[tone(0x3a_2c20, 60), tone(0xd8_c69a, 40)], Usual, [30, 400]), Matt),
    finished(row("icing-sugar", "icing sugar", Scatter, disc(160, 0), 2, &[tone(0xff_faf2, 100)], Usual, [40, 400]), Matt),
    finished(row("chilli-flakes", "chilli flakes", Scatter, disc(100, 0), 2, &[tone(0xa8_281a, 60), tone(0xd0_622e, 40)], Usual, [30, 300]), Matt),
    finished(row("peppercorns", "peppercorns", Scatter, disc(110, 0), 5, &[tone(0x2a_2320, 70), tone(0x5a_4c40, 30)], Usual, [30, 300]), Matt),
    finished(row("bay-leaves", "bay leaves", Scatter, oval(160, 110, 0), 6, &[tone(0x4a_6a3a, 60), tone(0x7a_9560, 40)], Usual, [60, 300]), Matt),
    finished(row("rocket", "rocket leaves", Scatter, disc(170, 0), 12, &[tone(0x3f_6b2c, 60), tone(0x8f_b05c, 40)], Usual, [60, 360]), Matt),
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
