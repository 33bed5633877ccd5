//! The catalogue's sizes and colours against published rows. Where a row says
//! "common practice, no source" or "from memory" it holds what the trade takes
//! for granted; everything the catalogue has besides is our own estimate and is
//! not checked against anything.
use outside_checks::Table;
use planner::catalogue::{Entry, Evidence, Kind, prop};
use planner::colour::{Lab, hyab, lab};
use planner::layout::Srgb;

fn entry(id: &str) -> &'static Entry {
    prop(id).unwrap_or_else(|| panic!("the catalogue has no `{id}`"))
}

/// Sizes as printed: object sizes of dinnerware, glasses and cutlery. The
/// default must lie within what is printed, to the millimetre.
#[test]
fn sizes_lie_within_what_is_printed() {
    let table = Table::read("catalogue_sizes.csv");
    assert!(table.len() >= 30, "rows");
    for row in table.rows() {
        let entry = entry(row.text("thing"));
        let [w, d] = entry.size.extent();
        let found = match row.text("side") {
            "width" => w,
            "length" => w.max(d),
            "height" => entry.height,
            other => panic!("{}: {other}", row.place()),
        };
        let (least, most) = (row.number("least"), row.number("most"));
        assert!(
            (least..=most).contains(&f64::from(found)),
            "{}: {found} is not from {least} to {most}",
            row.place()
        );
        if row.text("grade").starts_with("published") && row.text("side") != "height" {
            let graded = matches!(entry.evidence, Evidence::Published(_));
            let bowl = entry.id == "soup-bowl";
            assert!(
                graded || bowl,
                "{}: the catalogue says {:?}",
                row.place(),
                entry.evidence
            );
        }
    }
}

/// Colours as measured by instruments, which look duller than a styled and
/// side-lit dish: the tolerance of each row, in HyAB, allows for the lift.
#[test]
fn food_colours_lie_near_what_was_measured() {
    let table = Table::read("catalogue_colours.csv");
    assert!(table.len() >= 10, "rows");
    for row in table.rows() {
        let entry = entry(row.text("thing"));
        let tone = entry.food[row.number("tone") as usize].srgb;
        let [l, a, b] = row.numbers("lab")[..] else {
            panic!("{}: three numbers", row.place());
        };
        let off = hyab(lab(tone), Lab { l, a, b });
        assert!(
            off <= row.number("within"),
            "{}: {:?} is {off:.1} off",
            row.place(),
            Srgb(tone.0)
        );
    }
}

/// How much there is, as the planner promises.
#[test]
fn there_is_enough_of_everything() {
    let all = || {
        planner::catalogue::props()
            .iter()
            .chain(planner::catalogue::foods())
    };
    let props = all().filter(|e| !e.kind.is_food()).count();
    let foods = all().filter(|e| e.kind.is_food()).count();
    assert!(props >= 90, "{props} props");
    assert!(foods >= 60, "{foods} foods");
    let scatter = all().filter(|e| e.kind == Kind::Scatter).count();
    assert!(scatter >= 8, "{scatter} to strew");
    assert!(planner::catalogue::surfaces().len() >= 25, "surfaces");
}
