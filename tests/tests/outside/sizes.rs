//! Lengths in a photo beside a card or a sheet against OpenCV
//! (tests/reference/generate_sizes.py).
use glam::DVec2;
use outside_checks::Table;
use planner::layout::Units;
use planner::shelf::{Beside, Gauge, Rise, measure};

fn places(text: &str) -> Vec<DVec2> {
    let each = text.split(';').map(|pair| {
        let numbers: Vec<f64> = pair
            .split(' ')
            .map(|n| n.parse().expect("a number"))
            .collect();
        DVec2::from_slice(&numbers)
    });
    each.collect()
}

/// Tolerances: 0.05 mm of what OpenCV's mapping gives, which reads the corners
/// as 32-bit numbers; of the true length what a hundredth of a pixel in each tap
/// makes of it, a hundredth of what is told for two; the uncertainty within 15%
/// of the spread of 4000 draws, which is bent far from a small card.
#[test]
fn lengths_are_those_of_opencv_with_the_spread_of_its_draws() {
    let table = Table::read("sizes.csv");
    assert_eq!(table.len(), 90, "photos");
    for row in table.rows() {
        let gauge = Gauge::of(row.text("gauge"), 0.0).expect("known");
        let marks = places(row.text("marks"));
        let beside = Beside {
            gauge,
            marks: marks.try_into().expect("four"),
            straight: false,
        };
        let taps = places(row.text("taps"));
        let rise = Rise {
            rim: row.number("rim"),
            lens: row.number("lens"),
        };
        let length = |rise| {
            let found = measure(&beside, &taps, rise, Units::Cm);
            found
                .unwrap_or_else(|why| panic!("{}: {why}", row.place()))
                .sides[0]
        };
        let (flat, down) = (length(None), length(Some(rise)));
        let [mm, real, off] = ["mm", "true", "off"].map(|name| row.number(name));
        let place = row.place();
        assert!(
            (flat.mm - mm).abs() <= 0.05,
            "{place}: {} not {mm}",
            flat.mm
        );
        let most = 0.02 + flat.off * 0.01;
        assert!(
            (down.mm - real).abs() <= most,
            "{place}: {} not {real}",
            down.mm
        );
        let apart = (flat.off / off - 1.0).abs();
        assert!(apart <= 0.15, "{place}: ± {} against {off}", flat.off);
    }
}
