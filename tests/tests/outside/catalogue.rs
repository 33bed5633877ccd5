//! The catalogue's sizes and colours against published rows. Where a row says
//! "common practice, no source" or "from memory" it holds what the trade takes
//! for granted; everything the catalogue has besides is our own estimate and is
//! not checked against anything.
use outside_checks::Table;
use outside_checks::tree::read;
use planner::catalogue::{self, Entry, Evidence, Kind, foods, holds, prop, props};
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

/// Every holding time the catalogue has lies within what its row tells, and is
/// called what the row calls it.
#[test]
fn holding_times_lie_within_what_is_told_of_them() {
    let table = Table::read("holding_times.csv");
    let mut told = 0;
    for row in table.rows() {
        let food = row.text("food");
        let own = holds(food).unwrap_or_else(|| panic!("{}: no time", row.place()));
        let (least, most) = (row.number("least"), row.number("most"));
        assert!(
            (least..=most).contains(&f64::from(own.minutes)),
            "{}: {} is not from {least} to {most}",
            row.place(),
            own.minutes
        );
        let grade = row.text("grade");
        let said = match own.evidence {
            Evidence::Published(_) => grade.starts_with("published"),
            Evidence::TradePractice => grade == "common practice no source",
            Evidence::Guess => matches!(grade, "from memory" | "our estimate"),
        };
        assert!(
            said,
            "{}: the catalogue says {:?}",
            row.place(),
            own.evidence
        );
        told += 1;
    }
    let all = props().iter().chain(foods());
    let known = all.filter(|e| holds(e.id).is_some()).count();
    assert_eq!(known, told, "each has its row");
}

/// Food-safety limits as printed: USDA 2016 (2 h between 4 and 60 °C), NISR
/// 2006/3 schedule 4 (4 h above 8 °C), SI 2005/2059 schedule 4 (2 h below
/// 63 °C), US Food Code 3-501.19 (4 h).
#[test]
fn limits_of_food_safety_are_those_printed() {
    let hours = [
        (catalogue::DANGER_ZONE, 2),
        (catalogue::CHILLED, 4),
        (catalogue::HOT, 2),
        (catalogue::TIME_ALONE, 4),
    ];
    for (minutes, hours) in hours {
        assert_eq!(minutes, hours * 60);
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
    let surfaces = planner::catalogue::surfaces().len();
    assert!(surfaces >= 25, "surfaces");
    let said = format!("{props} props, {foods} foods and {surfaces} surfaces");
    assert!(read("../README.md").contains(&said), "README: {said}");
}
