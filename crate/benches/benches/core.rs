//! Times of the core's costly sums. `cargo xtask bench` runs them and writes
//! tests/reports/bench.md, each time also as a ratio to `calibration`, so that
//! machines can be compared. Times are reported, never asserted.
//!
//! To add one: write a function like those below and name it in the group.

use std::hint::black_box;

use benches::full_table::{AREA_EACH, laid};
use benches::shadows::Shadows;
use benches::ten_exposures::ten_exposures;
use criterion::{BenchmarkId, Criterion, criterion_group, criterion_main};
use glam::DVec2;
use planner::colour::{Lab, ciede2000};
use planner::commands::{SettingsWish, lay_places};
use planner::exposures::shooting_order;
use planner::layout::Role;
use planner::readings::{Study, live, report};
use planner::shape::{CHORD_ERROR, Region, disc, rect, visible};
use planner::starters::harbour_supper;

/// Things laid at the density of a full table.
const COUNTS: [u32; 3] = [60, 200, 800];

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

/// One step of a drag: a dish moves by a centimetre and all is read again,
/// going on from what was made of the layout when it was read before the drag,
/// as the page's worker does.
fn live_step(criterion: &mut Criterion) {
    let mut group = criterion.benchmark_group("live step");
    group.sample_size(20);
    for count in COUNTS {
        let layout = laid(count as u16);
        let study = Study::new(&layout);
        black_box(report(&study, false));
        let kept = study.keep();
        let mut moved = layout.clone();
        moved.items[count as usize / 2].at.x += 10;
        group.bench_function(BenchmarkId::from_parameter(count), |bencher| {
            bencher.iter(|| live(&Study::after(black_box(&moved), &kept)));
        });
    }
    group.finish();
}

/// The same, shadows and all, of the demonstration table.
fn live_step_of_supper(criterion: &mut Criterion) {
    let layout = harbour_supper();
    let study = Study::new(&layout);
    black_box(report(&study, false));
    let kept = study.keep();
    let mut moved = layout.clone();
    let hero = moved.items.iter_mut().find(|i| i.role == Role::Hero);
    hero.expect("the supper has one").at.x += 10;
    criterion.bench_function("live step of Harbour supper", |bencher| {
        bencher.iter(|| live(&Study::after(black_box(&moved), &kept)));
    });
}

/// The same while a fingertip is dragged: the arm, what its exposure adds and
/// what that clashes with are made anew.
fn live_step_of_a_fingertip(criterion: &mut Criterion) {
    let layout = harbour_supper();
    let study = Study::new(&layout);
    black_box(report(&study, false));
    let kept = study.keep();
    let mut moved = layout.clone();
    moved
        .hands
        .first_mut()
        .expect("the supper has hands")
        .target
        .x += 10;
    criterion.bench_function("live step of a fingertip", |bencher| {
        bencher.iter(|| live(&Study::after(black_box(&moved), &kept)));
    });
}

/// All there is to say of the demonstration table and its four crops, remedies
/// included: shadows, stops and glare among it.
fn settled_supper(criterion: &mut Criterion) {
    let layout = harbour_supper();
    assert_eq!(layout.crops.len(), 4, "four crops are measured");
    let mut group = criterion.benchmark_group("settled Harbour supper");
    group.sample_size(10);
    group.bench_function("four crops", |bencher| {
        bencher.iter(|| report(&Study::new(black_box(&layout)), true));
    });
    group.finish();
}

/// The shadows of cans on places in their penumbras, by strips and by as many
/// plain rays as it takes for the same error.
fn shadow_costs(criterion: &mut Criterion) {
    let mut group = criterion.benchmark_group("shadows by strips");
    group.sample_size(20);
    for count in COUNTS {
        let shadows = Shadows::of(count);
        group.bench_function(BenchmarkId::from_parameter(count), |bencher| {
            bencher.iter(|| black_box(&shadows).strips());
        });
    }
    group.finish();
    let shadows = Shadows::of(COUNTS[0]);
    let (to_a_side, rays, strips) = shadows.equal_error();
    println!(
        "{} rays: RMS {rays:.4}; strips: RMS {strips:.4}",
        to_a_side * to_a_side
    );
    let mut group = criterion.benchmark_group("shadows by rays");
    group.sample_size(10);
    group.bench_function(BenchmarkId::from_parameter(COUNTS[0]), |bencher| {
        bencher.iter(|| black_box(&shadows).rays(to_a_side));
    });
    group.finish();
}

/// All readings with their remedies, from nothing, as after a drag has ended.
fn settled(criterion: &mut Criterion) {
    let mut group = criterion.benchmark_group("settled");
    group.sample_size(10);
    // Half a full table, a full one, and more than is laid for one picture.
    for count in [COUNTS[0] / 2, COUNTS[0], COUNTS[1]] {
        let layout = laid(count as u16);
        group.bench_function(BenchmarkId::from_parameter(count), |bencher| {
            bencher.iter(|| report(&Study::new(black_box(&layout)), true));
        });
    }
    group.finish();
}

/// Six place settings laid round a table that has its dishes.
fn place_settings(criterion: &mut Criterion) {
    let mut layout = laid(12);
    (layout.table.width, layout.table.depth) = (2400, 1200);
    let wish = SettingsWish {
        setting: "camera".into(),
        places: 6,
        close: false,
    };
    criterion.bench_function("laying six places", |bencher| {
        bencher.iter(|| lay_places(black_box(&layout), &wish).expect("something fits"));
    });
}

/// The order of ten exposures with food that does not keep.
fn order_of_ten(criterion: &mut Criterion) {
    let layout = ten_exposures();
    criterion.bench_function("order of ten exposures", |bencher| {
        bencher.iter(|| shooting_order(black_box(&layout)));
    });
}

criterion_group!(
    benches,
    calibration,
    visible_areas,
    colour_differences,
    live_step,
    live_step_of_supper,
    live_step_of_a_fingertip,
    settled,
    settled_supper,
    shadow_costs,
    place_settings,
    order_of_ten
);
criterion_main!(benches);
