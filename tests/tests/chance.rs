//! What chance gives, against which the scores are to be judged: percentiles
//! simulated once apart from the formulas, and a mean known by theory.
use glam::DVec2;
use planner::measures::{
    PointMass, SpreadMass, balance_score, centroid, dcm, direction_spread, homogeneity, offset,
    spread, triangle, triangle_score,
};
use planner::shape::{Region, disc, visible};

fn close(found: f64, expected: f64, tolerance: f64, what: &str) {
    assert!(
        (found - expected).abs() <= tolerance,
        "{what}: found {found}, expected {expected} within {tolerance}"
    );
}

/// Uniform numbers from 0 to 1, by a linear congruence (Knuth's constants).
struct Uniform(u64);

impl Uniform {
    fn next(&mut self) -> f64 {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 11) as f64 / (1u64 << 53) as f64
    }

    fn place(&mut self) -> DVec2 {
        DVec2::new(self.next(), self.next())
    }
}

/// The 5th, 25th, 50th, 75th and 95th percentile.
fn percentiles(mut values: Vec<f64>) -> [f64; 5] {
    values.sort_by(f64::total_cmp);
    [5, 25, 50, 75, 95].map(|p| values[values.len() * p / 100])
}

fn all_close(found: [f64; 5], expected: [f64; 5], tolerance: f64, what: &str) {
    for (found, expected) in found.into_iter().zip(expected) {
        close(found, expected, tolerance, what);
    }
}

/// Percentiles within 2 points; the mean area of a random triangle in a square
/// is 11/144 by theory.
#[test]
fn random_triangles_and_hands() {
    let mut pick = Uniform(20_260_905);
    let corners: Vec<[DVec2; 3]> = (0..40_000)
        .map(|_| [pick.place(), pick.place(), pick.place()])
        .collect();
    let found: Vec<_> = corners
        .iter()
        .map(|c| triangle(*c).expect("a triangle"))
        .collect();
    let quality = percentiles(found.iter().map(|t| t.quality).collect());
    all_close(
        quality,
        [0.051, 0.258, 0.518, 0.774, 0.958],
        0.02,
        "quality",
    );
    let area = percentiles(found.iter().map(|t| t.area).collect());
    all_close(area, [0.0043, 0.024, 0.056, 0.110, 0.214], 0.004, "area");
    let mean = found.iter().map(|t| t.area).sum::<f64>() / found.len() as f64;
    close(mean, 11.0 / 144.0, 0.001, "mean area");
    let scores = corners
        .iter()
        .map(|c| triangle_score(DVec2::ONE, *c).expect("a triangle"));
    all_close(
        percentiles(scores.collect()),
        [6.0, 29.0, 59.0, 90.0, 100.0],
        2.0,
        "score",
    );
    let hands = (0..40_000).map(|_| {
        let hands = [pick.next(), pick.next(), pick.next()].map(|t| t * 360.0);
        direction_spread(&hands).expect("three")
    });
    all_close(
        percentiles(hands.collect()),
        [6.0, 28.0, 51.0, 67.0, 83.0],
        2.0,
        "hands",
    );
}

/// Where the figures below come from: 5 to 12 discs of one tone in a 4:5
/// frame. How large the discs were is not on record; these sizes, found by
/// trying, give all of them.
const LEAST: f64 = 0.03;
const MOST: f64 = 0.16;
/// Two discs overlap at most so far that their centres are this share of both
/// radii apart.
const APART: f64 = 0.9;

fn discs(pick: &mut Uniform, size: DVec2) -> Vec<(DVec2, f64)> {
    let count = 5 + (pick.next() * 8.0) as usize;
    let mut laid: Vec<(DVec2, f64)> = Vec::new();
    for _ in 0..300 {
        let radius = (LEAST + (MOST - LEAST) * pick.next()) * size.x;
        let at = pick.place() * size;
        let near = |(p, r): &(DVec2, f64)| p.distance(at) < APART * (r + radius);
        if !laid.iter().any(near) {
            laid.push((at, radius));
        }
        if laid.len() == count {
            break;
        }
    }
    laid
}

/// How two lists of figures go together.
fn correlation(a: &[f64], b: &[f64]) -> f64 {
    let mean = |v: &[f64]| v.iter().sum::<f64>() / v.len() as f64;
    let (ma, mb) = (mean(a), mean(b));
    let sum = |f: &dyn Fn(f64, f64) -> f64| -> f64 {
        let pairs = a.iter().zip(b);
        pairs.map(|(x, y)| f(x - ma, y - mb)).sum()
    };
    sum(&|x, y| x * y) / (sum(&|x, _| x * x) * sum(&|_, y| y * y)).sqrt()
}

/// DCM, S1, APB and homogeneity of 6,000 random layouts: the 5th, 25th, 50th,
/// 75th and 95th percentile of a simulation apart from this code, within 2; the
/// correlation of DCM and APB within 0.05.
#[test]
fn random_layouts() {
    let mut pick = Uniform(20_260_908);
    let size = DVec2::new(800.0, 1000.0);
    let corners = [
        DVec2::ZERO,
        DVec2::new(size.x, 0.0),
        size,
        DVec2::new(0.0, size.y),
    ];
    let frame = Region::from_polygon(&corners).expect("a frame");
    let mut found: [Vec<f64>; 4] = Default::default();
    for _ in 0..6000 {
        let laid = discs(&mut pick, size);
        let whole = laid.iter().map(|(at, radius)| {
            // A millimetre off the true edge moves no figure by a tenth.
            Region::from_polygon(&disc(*at, *radius, 1.0)).expect("a disc")
        });
        let seen = visible(&whole.collect::<Vec<_>>(), &frame).expect("within limits");
        let seen: Vec<&Region> = seen.iter().filter(|r| !r.is_empty()).collect();
        let points: Vec<PointMass> = seen
            .iter()
            .map(|r| PointMass {
                at: r.centroid().expect("seen"),
                mass: r.area(),
            })
            .collect();
        let masses: Vec<SpreadMass> = seen
            .iter()
            .map(|region| SpreadMass {
                region,
                density: 1.0,
            })
            .collect();
        let centre = centroid(&points).expect("mass");
        found[0].push(dcm(offset(size, centre).expect("a picture")));
        found[1].push(balance_score(size, centre).expect("a picture"));
        found[2].push(spread(size, &masses).expect("mass").apb());
        found[3].push(homogeneity(size, &seen).expect("area"));
    }
    close(correlation(&found[0], &found[2]), 0.69, 0.05, "DCM and APB");
    for (values, (expected, what)) in found.into_iter().zip([
        ([6.2, 14.3, 21.7, 30.5, 49.6], "DCM"),
        ([20.5, 36.9, 50.2, 64.1, 82.3], "score"),
        ([12.7, 18.8, 24.1, 30.7, 42.9], "APB"),
        ([75.0, 84.0, 89.0, 92.0, 95.5], "homogeneity"),
    ]) {
        let found = percentiles(values);
        eprintln!("{what}: {found:.1?}");
        all_close(found, expected, 2.0, what);
    }
}
