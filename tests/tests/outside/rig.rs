//! Statics of the rig: a worked textbook problem, figures worked out by hand
//! from the same formulas, and 200 random rigs by a linear program, barycentric
//! coordinates and bisection (tests/reference/generate_rig.py).
use glam::{DVec2, DVec3, dvec2, dvec3};
use outside_checks::Table;
use planner::layout::{Bag, Counterweight, Hung, Layout, LayoutId, Point, Turn};
use planner::rig::{Mass, Stand, Tipping, bag_for, counterweight_for, tipping};

fn close(found: f64, expected: f64, tolerance: f64, what: &str) {
    assert!(
        (found - expected).abs() <= tolerance,
        "{what}: found {found}, expected {expected} within {tolerance}"
    );
}

fn mass(grams: f64, x: f64) -> Mass {
    Mass {
        grams,
        at: dvec3(x, 0.0, 1_000.0),
    }
}

/// Three feet about the origin, the first in this direction.
fn feet(radius: f64, lead: f64) -> Vec<DVec2> {
    [0.0_f64, 120.0, 240.0]
        .map(|turn| DVec2::from_angle((lead + turn).to_radians()) * radius)
        .to_vec()
}

fn stood(feet: &[DVec2], masses: &[Mass]) -> Tipping {
    tipping(feet, masses).expect("it weighs something")
}

/// Problem 343 on equilibrium of parallel forces, as worked at mathalino.com: a
/// travelling crane of 20 t, 6 ft from the rear wheels, which stand 5 ft behind
/// the front ones, lifts 20 t at 10 ft before those. A counterweight of 20 t
/// 6 ft behind the rear wheels just keeps it up loaded and unloaded. In feet
/// and tons; tolerance: rounding, the answer is whole.
#[test]
fn counterweight_of_a_travelling_crane() {
    let wheels = [
        dvec2(0.0, -3.0),
        dvec2(5.0, -3.0),
        dvec2(5.0, 3.0),
        dvec2(0.0, 3.0),
    ];
    let (crane, counter, load) = (mass(20.0, 6.0), mass(20.0, -6.0), mass(20.0, 15.0));
    close(
        stood(&wheels, &[crane, counter, load]).margin(),
        1.0,
        1e-12,
        "loaded",
    );
    close(
        stood(&wheels, &[crane, counter]).margin(),
        1.0,
        1e-12,
        "unloaded",
    );
    // A little less of it falls forward, a little farther off backward.
    let less = mass(19.9, -6.0);
    assert!(
        stood(&wheels, &[crane, less, load]).margin() < 1.0,
        "forward"
    );
    let farther = mass(20.0, -6.1);
    assert!(stood(&wheels, &[crane, farther]).margin() < 1.0, "backward");
}

/// By hand: feet 0.48 m out, stand 6 kg in the middle, camera 2 kg at 1 m, arm
/// 1.5 kg at 0.4 m. Tolerance: half of the last digit given.
#[test]
fn a_lamp_stand_over_a_leg_and_between_two() {
    let masses = [
        mass(6_000.0, 0.0),
        mass(2_000.0, 1_000.0),
        mass(1_500.0, 400.0),
    ];
    let over = stood(&feet(480.0, 0.0), &masses);
    close(over.centre.x, 274.0, 0.5, "centre of mass");
    close(over.margin(), 2.88, 0.005, "over a leg");
    let between = stood(&feet(480.0, 180.0), &masses);
    close(between.margin(), 0.82, 0.005, "between two legs");
    assert!(between.tilt() < 0.0, "it tips on a level floor");
}

/// By hand: (R/2)/cos(60° − φ) is how far out a mass may be in the direction φ
/// from a leg. Tolerance: the lever of a mass there is 0 to a nanometre.
#[test]
fn limit_of_the_feet_in_every_direction() {
    for phi in 0..=60 {
        let phi = f64::from(phi);
        let out = 240.0 / DVec2::from_angle((60.0 - phi).to_radians()).x;
        let found = stood(&feet(480.0, -phi), &[mass(1.0, out)]);
        let lever = found.edges.iter().map(|e| e.lever);
        let least = lever.fold(f64::INFINITY, f64::min);
        close(least, 0.0, 1e-6, &format!("{phi}° from a leg"));
    }
    let levers = |at: DVec2| {
        let mut found: Vec<f64> = stood(&feet(480.0, 0.0), &[mass(1.0, 0.0)])
            .edges
            .iter()
            .map(|e| e.lever_of(at))
            .collect();
        found.sort_by(f64::total_cmp);
        found
    };
    // A bag at 0.3 m: 0.09 m about the edges beside its leg, 0.54 m about the other.
    let bag = levers(dvec2(300.0, 0.0));
    close(bag[0], 90.0, 1e-9, "near edges");
    close(bag[2], 540.0, 1e-9, "far edge");
    close(levers(DVec2::ZERO)[0], 240.0, 1e-9, "at the hub");
}

/// By hand: 2.6 kg·m is balanced by 8.67 kg 0.30 m behind.
#[test]
fn counterweight_that_balances() {
    let masses = [
        mass(2_000.0, 1_000.0),
        mass(1_500.0, 400.0),
        mass(8_670.0, -300.0),
        mass(6_000.0, 0.0),
    ];
    let found = stood(&feet(480.0, 0.0), &masses);
    // 8.67 is rounded by up to 5 g at 0.3 m, over 18.2 kg.
    close(found.centre.x, 0.0, 1.5 / 18.17, "over the mast");
}

/// By hand: with its centre of mass 1.6 m up a stand tips at 5° with 0.140 m to
/// the edge, and at 8.53° with 0.24 m.
#[test]
fn slope_of_the_floor() {
    let at = |x| {
        [Mass {
            grams: 1.0,
            at: DVec3::new(x, 0.0, 1_600.0),
        }]
    };
    let square = [
        dvec2(-240.0, -240.0),
        dvec2(240.0, -240.0),
        dvec2(240.0, 240.0),
        dvec2(-240.0, 240.0),
    ];
    close(stood(&square, &at(0.0)).tilt(), 8.53, 0.005, "0.24 m");
    close(stood(&square, &at(100.0)).tilt(), 5.0, 0.02, "0.14 m");
}

/// Tolerances: margins, places and slopes to a millionth of themselves, masses
/// to a tenth of a gram (the bisection stops far below that).
#[test]
fn random_rigs_against_a_linear_program() {
    let table = Table::read("rig.csv");
    assert_eq!(table.len(), 200, "rigs");
    let (mut fall, mut helped) = (0, 0);
    for row in table.rows() {
        let whole = |name| row.number(name) as i32;
        let told = |name: &str| !row.text(name).is_empty();
        let mut layout = Layout::empty(LayoutId(1));
        let rig = &mut layout.rig;
        rig.at = Some(Point::new(whole("x"), whole("y")));
        rig.leg_bearing = told("lead").then(|| Turn::from_half_degrees(whole("lead")));
        rig.foot_radius = whole("radius");
        rig.stand_mass = whole("stand");
        (rig.arm_length, rig.arm_mass) = (whole("length"), whole("arm"));
        rig.load_mass = whole("load");
        rig.counterweight = told("weight").then(|| Counterweight {
            mass: whole("weight"),
            behind: whole("behind"),
        });
        rig.bag = told("hung").then(|| Bag {
            mass: whole("bag"),
            hung: match row.text("hung") {
                "hub" => Hung::Hub,
                "lead-leg" => Hung::LeadLeg,
                _ => Hung::RearLegs,
            },
        });
        let stand = Stand::of(&layout).expect("a stand");
        let found = stand.tipping().expect("it weighs");
        let place = row.place();
        let margin = row.number("margin");
        close(found.margin(), margin, 1e-6 * margin, &place);
        // A side it falls over as easily as over the one we name, which may be
        // another where the two beside the lead leg are as weak.
        let falls = found.edges.iter().any(|edge| {
            let way = edge.outward;
            let bearing = dvec2(-way.y, way.x).to_angle().to_degrees();
            let apart = (bearing - row.number("way") + 540.0).rem_euclid(360.0) - 180.0;
            apart.abs() < 1e-4 && edge.margin() <= found.margin() * (1.0 + 1e-9)
        });
        assert!(falls, "{place}: not towards {:?}", found.weakest());
        close(found.centre.x, row.number("centre_x"), 1e-4, &place);
        close(found.centre.y, row.number("centre_y"), 1e-4, &place);
        if told("tilt") {
            close(
                found.tilt(),
                row.number("tilt"),
                1e-4,
                &format!("{place}, slope"),
            );
        } else {
            fall += 1;
            assert!(found.margin() < 1.0 && found.tilt() < 0.0, "{place} falls");
        }
        let hub = bag_for(&stand, Hung::Hub);
        assert_eq!(hub.is_some(), told("hub"), "{place}, bag at the hub");
        if let Some(grams) = hub {
            close(grams, row.number("hub"), 0.1, &format!("{place}, bag"));
            helped += usize::from(grams > 0.0);
        }
        // The program knows nothing of the camera taken off.
        if let Some(grams) = counterweight_for(&stand, 300.0) {
            close(
                grams,
                row.number("counterweight"),
                0.1,
                &format!("{place}, behind"),
            );
        }
    }
    assert!(fall > 10 && helped > 50, "both are tried: {fall}, {helped}");
}
