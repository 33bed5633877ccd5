//! What exposures add and where they clash, against shapely.
//!
//! `generate_regions.py` makes 48 random layouts and works out areas from the
//! outlines of the arms. Tolerances: 0.1% and 1 cm² of what is cut and united,
//! both being exact; 1.5% and 2 cm² of shadows, a round source being a ring of
//! 24 corners here and of 360 there.
use std::rc::Rc;

use planner::exposures::{Added, Clash, Meeting, added, clashes};
use planner::layout::{Id, Layout, open};
use planner::scene::Lit;

const LAYOUTS: &str = include_str!("../../reference/regions.jsonl");
const AREAS: &str = include_str!("../../reference/regions.csv");

/// One row: case, exposures, and areas in mm².
struct Row {
    case: usize,
    first: Id,
    second: Id,
    areas: [f64; 6],
}

fn rows() -> Vec<Row> {
    let rows = AREAS.lines().skip(1).map(|line| {
        let all: Vec<f64> = line
            .split(',')
            .map(|figure| figure.parse().expect("a figure"))
            .collect();
        Row {
            case: all[0] as usize,
            first: Id(all[1] as u16),
            second: Id(all[2] as u16),
            areas: all[3..9].try_into().expect("six areas"),
        }
    });
    rows.collect()
}

fn layouts() -> Vec<Layout> {
    let each = LAYOUTS.lines().map(open);
    each.map(|layout| layout.expect("a sound layout")).collect()
}

fn near(found: f64, told: f64, share: f64, mm2: f64) -> bool {
    (found - told).abs() <= told * share + mm2
}

fn of(all: &[Rc<Added>], id: Id) -> &Added {
    all.iter().find(|a| a.exposure == id).expect("added")
}

#[test]
fn what_exposures_add_has_the_area_shapely_gives_it() {
    let layouts = layouts();
    assert!(layouts.len() >= 40, "{} layouts", layouts.len());
    let mut checked = 0;
    for row in rows().iter().filter(|row| row.second == Id(0)) {
        let all = added(&layouts[row.case]);
        let own = of(&all, row.first);
        let [solid, shadow, exact, ..] = row.areas;
        let (case, id) = (row.case, row.first.0);
        let found = own.solid.area();
        assert!(
            near(found, solid, 0.001, 100.0),
            "{case} {id}: {found} {solid}"
        );
        let found = own.shadow.area();
        assert!(
            near(found, shadow, 0.015, 200.0),
            "{case} {id}: {found} {shadow}"
        );
        // The hulls of the plates hold all of the true penumbra, and are wider
        // by what lies between fingers and in the bend of an arm.
        assert!(
            found > exact * 0.985 - 200.0,
            "{case} {id}: {found} {exact}"
        );
        assert!(
            found < exact * 1.12 + 2_000.0,
            "{case} {id}: {found} {exact}"
        );
        checked += 1;
    }
    assert!(checked > 100, "{checked} exposures");
}

#[test]
fn clashes_have_the_area_shapely_gives_them() {
    let layouts = layouts();
    let found: Vec<Vec<Clash>> = layouts
        .iter()
        .map(|layout| clashes(layout, &Lit::of(layout), &added(layout)))
        .collect();
    let (mut outlines, mut shadows) = (0, 0);
    for row in rows().iter().filter(|row| row.second != Id(0)) {
        let [.., both, on_second, on_first] = row.areas;
        let pair = |c: &&Clash| (c.first, c.second) == (row.first, row.second);
        let clash = found[row.case].iter().find(pair);
        let (case, a, b) = (row.case, row.first.0, row.second.0);
        let Some(clash) = clash else {
            assert!(both < 100.0, "{case} {a} {b}: {both} overlap");
            continue;
        };
        let area = clash.area();
        // Where two shadows fall both ways their union is no sum.
        let told = match clash.by {
            Meeting::Outlines => both,
            Meeting::ShadowOfFirst => on_second,
            Meeting::ShadowOfSecond => on_first,
            Meeting::BothShadows => continue,
        };
        let (share, mm2) = if clash.by == Meeting::Outlines {
            outlines += 1;
            (0.001, 100.0)
        } else {
            shadows += 1;
            (0.015, 200.0)
        };
        assert!(
            near(area, told, share, mm2),
            "{case} {a} {b}: {area} {told}"
        );
    }
    assert!(outlines > 10 && shadows > 10, "{outlines} and {shadows}");
}
