//! Times of the core's costly sums. `cargo xtask bench` runs them and writes
//! tests/reports/bench.md, each time also as a ratio to `calibration`, so that
//! machines can be compared. Times are reported, never asserted.
//!
//! To add one: write a function like those below and name it in the group.

use std::hint::black_box;

use criterion::{BenchmarkId, Criterion, criterion_group, criterion_main};
use glam::DVec2;
use planner::catalogue::{item_from, prop};
use planner::colour::{Lab, ciede2000};
use planner::layout::{Id, Layout, LayoutId, Point, Role};
use planner::readings::{Study, live, report};
use planner::shape::{CHORD_ERROR, Region, disc, rect, visible};

/// Things laid at the density of a full table.
const COUNTS: [u32; 3] = [60, 200, 800];
/// Table area per thing, mm²: sixty on 2 m by 0.95 m.
const AREA_EACH: f64 = 2000.0 * 950.0 / 60.0;

/// A fixed sum of the same kind of work, never changed.
fn calibration(criterion: &mut Criterion) {
    criterion.bench_function("calibration", |bencher| {
        bencher.iter(|| {
            let steps = 0..10_000_u32;
            steps.fold(0.0, |sum, step| sum + libm::sin(black_box(f64::from(step))))
        });
    });
}

/// Discs of 80 to 280 mm, strewn evenly but not in rows (a Kronecker sequence
/// over the plastic number's powers), on a table that grows with their number.
fn strewn(count: u32) -> (Vec<Region>, Region) {
    let side = (f64::from(count) * AREA_EACH).sqrt();
    let fraction = |step: u32, by: f64| (f64::from(step) * by).fract();
    let thing = |step: u32| {
        let unit = DVec2::new(
            fraction(step, 0.754_877_666_246_692_7),
            fraction(step, 0.569_840_290_998_053_2),
        );
        let radius = 40.0 + 100.0 * fraction(step, 0.618_033_988_749_894_9);
        Region::from_polygon(&disc(unit * side, radius, CHORD_ERROR)).expect("a disc on the table")
    };
    let table = rect(
        DVec2::splat(side / 2.0),
        DVec2::splat(side),
        0.0,
        0.0,
        CHORD_ERROR,
    );
    let table = Region::from_polygon(&table).expect("a table");
    ((1..=count).map(thing).collect(), table)
}

/// What is seen of every thing from above.
fn visible_areas(criterion: &mut Criterion) {
    let mut group = criterion.benchmark_group("visible areas");
    group.sample_size(20);
    for count in COUNTS {
        let (pieces, table) = strewn(count);
        group.bench_function(BenchmarkId::from_parameter(count), |bencher| {
            bencher.iter(|| visible(black_box(&pieces), &table).expect("within limits"));
        });
    }
    group.finish();
}

/// A thousand colour differences.
fn colour_differences(criterion: &mut Criterion) {
    let shade = |step: u32| {
        let step = f64::from(step);
        Lab {
            l: step % 100.0,
            a: (step * 7.0) % 120.0 - 60.0,
            b: (step * 13.0) % 120.0 - 60.0,
        }
    };
    criterion.bench_function("colour differences/1000", |bencher| {
        bencher.iter(|| {
            let steps = 0..1000_u32;
            steps.fold(0.0, |sum, step| {
                sum + ciede2000(black_box(shade(step)), shade(step * 3))
            })
        });
    });
}

/// A table of `count` dishes at the density of a full one, the first the hero,
/// every tenth a main dish, each with a rim and a well.
fn laid(count: u16) -> Layout {
    let mut layout = Layout::empty(LayoutId(1));
    let side = (f64::from(count) * AREA_EACH).sqrt();
    (layout.table.width, layout.table.depth) = (side as i32, side as i32);
    layout.frame.at = layout.table.centre();
    layout.frame.width = (side * 0.95) as i32;
    let plate = prop("dinner-plate").expect("in the catalogue");
    for step in 1..=count {
        let fraction = |by: f64| (f64::from(step) * by).fract();
        let at = DVec2::new(
            fraction(0.754_877_666_246_692_7),
            fraction(0.569_840_290_998_053_2),
        );
        let mut item = item_from(plate, Id(step), step, Point::nearest(at * side));
        let across = 80 + (200.0 * fraction(0.618_033_988_749_894_9)) as i32;
        item.size = item.size.resized(across, across);
        item.role = match step {
            1 => Role::Hero,
            _ if step % 10 == 0 => Role::Support,
            _ => Role::Filler,
        };
        layout.items.push(item);
    }
    layout
}

/// One step of a drag: a dish moves by a centimetre and all is read again,
/// going on from what was made for the step before.
fn live_step(criterion: &mut Criterion) {
    let mut group = criterion.benchmark_group("live step");
    group.sample_size(20);
    for count in COUNTS {
        let layout = laid(count as u16);
        let kept = Study::new(&layout).keep();
        let mut moved = layout.clone();
        moved.items[count as usize / 2].at.x += 10;
        group.bench_function(BenchmarkId::from_parameter(count), |bencher| {
            bencher.iter(|| live(&Study::after(black_box(&moved), &kept)));
        });
    }
    group.finish();
}

/// All readings with their remedies, from nothing, as after a drag has ended.
fn settled(criterion: &mut Criterion) {
    let mut group = criterion.benchmark_group("settled");
    group.sample_size(10);
    // A full table and half of one: more are not laid for one picture.
    for count in [COUNTS[0] / 2, COUNTS[0]] {
        let layout = laid(count as u16);
        group.bench_function(BenchmarkId::from_parameter(count), |bencher| {
            bencher.iter(|| report(&Study::new(black_box(&layout)), true));
        });
    }
    group.finish();
}

criterion_group!(
    benches,
    calibration,
    visible_areas,
    colour_differences,
    live_step,
    settled
);
criterion_main!(benches);
