//! Hands and sleeves in quiet outline, over the very shapes the readings walk.

use glam::{DVec2, dvec2};
use svg::node::element::Group;

use super::path::{PathData, short};
use super::pen::Pen;
use super::ribbon;
use super::sketch::{Look, Rows, Sketch};
use super::tone::{INK, PENCIL, Tone, deeper, lighter, luma};
use crate::figure::dice::{Dice, INSIDE};
use crate::figure::form::Frame;
use crate::figure::merged;
use crate::figure::outline::{polar, resampled};
use crate::layout::{Action, Palm};
use crate::scene::{Arm, Joint, digit, pose};
use crate::shape::{Region, difference, intersection};

/// What an arm looks like.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limb {
    /// The hand's number; it seeds the folds of the sleeve.
    pub seed: u32,
    /// Skin.
    pub skin: Tone,
    /// Sleeve.
    pub sleeve: Tone,
    /// What the hand does.
    pub action: Action,
    /// Which side of it is up.
    pub palm: Palm,
}

/// What lies under a hand shows through a little.
const OPAQUE: f64 = 0.93;
/// How far the shaded side of a hand reaches in, mm.
const SHADE: f64 = 9.0;

/// The arm in table coordinates, as much of its cloth and skin as lies within
/// the loop `within`.
#[must_use]
pub fn limb(arm: &Arm, look: &Limb, within: &[DVec2], pen: &Pen) -> Group {
    let sketch = || Sketch::new(pen, Dice::new(look.seed, INSIDE), Frame::turned(0.0));
    let mut skin = sketch();
    let within = Region::from_polygon(within).unwrap_or_default();
    flesh(&mut skin, arm, look, &within);
    let whole = Group::new().add(skin.done().set("opacity", short(OPAQUE)));
    if arm.sleeve.is_empty() {
        return whole;
    }
    let mut cloth = sketch();
    sleeve(&mut cloth, arm, look.sleeve, &within);
    whole.add(cloth.done())
}

/// Bare skin: hand and forearm as one, every digit over the last.
fn flesh(s: &mut Sketch<'_>, arm: &Arm, look: &Limb, within: &Region) {
    let skin = skin_outline(arm);
    s.fills(&kept(&skin, within), look.skin, 0.0, 0.0);
    let pose = pose(look.action);
    // Thumb and little finger lie lowest with the palm down.
    for n in [0, 4, 3, 2, 1] {
        let own: Vec<DVec2> = digit(&pose.digits[n]);
        let row: Vec<DVec2> = own.iter().map(|&p| arm.place(p)).collect();
        let mut data = PathData::default();
        data.open(&row);
        s.put(
            data,
            &Look {
                fill: Some(look.skin),
                stroke: Some((deeper(deeper(look.skin)), 0.7 * s.pen.weight)),
                ..Look::default()
            },
        );
    }
    let shade = ribbon::shade(&skin, s.pen.fall, SHADE);
    s.put(
        shade,
        &Look {
            fill: Some(deeper(look.skin)),
            opacity: 0.5,
            even_odd: true,
            ..Look::default()
        },
    );
    if look.palm == Palm::Down {
        // A finger bent back hides its nail.
        let seen = pose.digits.iter().filter(|d| joint(d, 3).1.x > 0.45);
        let nails: Rows = seen.map(|d| on(arm, nail(d))).collect();
        let pale = lighter(look.skin);
        s.fills(&nails, pale, 0.0, 0.85);
        s.lines(&nails, deeper(deeper(look.skin)), 0.4, 0.8);
        s.lines(&knuckles(arm, &pose.digits), INK, 0.5, 0.5);
    } else {
        s.lines(&creases(arm, &pose.digits), INK, 0.6, 0.6);
    }
    let web = vec![dvec2(72.0, 36.0), dvec2(54.0, 29.0), dvec2(38.0, 32.0)];
    let wrist = vec![dvec2(-6.0, -19.0), dvec2(-2.0, 0.0), dvec2(-6.0, 19.0)];
    s.lines(&[on(arm, web), on(arm, wrist)], INK, 0.5, 0.45);
    s.ink(&skin, 0.95);
}

/// What of a loop lies within a region.
fn kept(edge: &[DVec2], within: &Region) -> Rows {
    let cut = Region::from_polygon(edge).and_then(|own| intersection(&own, within));
    cut.map_or_else(|_| Rows::new(), |cut| cut.rings().to_vec())
}

/// Hand and bare forearm in one loop, evenly spaced.
fn skin_outline(arm: &Arm) -> Vec<DVec2> {
    let edge = if arm.forearm.is_empty() {
        arm.hand.clone()
    } else {
        merged(&[arm.hand.clone(), arm.forearm.clone()])
    };
    let long: f64 = crate::shape::perimeter(&edge);
    resampled(&edge, (long / 5.0) as usize, true)
}

fn on(arm: &Arm, own: Vec<DVec2>) -> Vec<DVec2> {
    own.iter().map(|&p| arm.place(p)).collect()
}

/// Middle, direction and half breadth of a digit at one of its joints.
fn joint(joints: &[Joint; 4], i: usize) -> (DVec2, DVec2, f64) {
    let at = |i: usize| dvec2(f64::from(joints[i][0]), f64::from(joints[i][1]));
    let along = (at((i + 1).min(3)) - at(i.saturating_sub(1))).normalize_or(DVec2::X);
    (at(i), along, f64::from(joints[i][2]) * 0.5)
}

/// The nail: a small shield near the tip.
fn nail(joints: &[Joint; 4]) -> Vec<DVec2> {
    let (tip, along, r) = joint(joints, 3);
    let across = along.perp();
    let shield = [
        [-0.75, 0.0],
        [-0.6, -0.5],
        [0.1, -0.56],
        [0.75, -0.44],
        [0.98, 0.0],
        [0.75, 0.44],
        [0.1, 0.56],
        [-0.6, 0.5],
        [-0.75, 0.0],
    ];
    let place = |[x, y]: [f64; 2]| tip + along * (x * r) + across * (y * r);
    shield.map(place).to_vec()
}

/// Two folds over the middle joint of each finger, one over its root.
fn knuckles(arm: &Arm, digits: &[[Joint; 4]; 5]) -> Rows {
    let mut rows = Rows::new();
    for (n, digit) in digits.iter().enumerate() {
        let joints: &[(usize, f64, f64)] = if n == 0 {
            &[(2, -1.5, 0.5), (2, 1.5, 0.4)]
        } else {
            &[(1, -1.8, 0.55), (1, 1.8, 0.5), (0, 5.0, 0.45)]
        };
        for &(i, shift, wide) in joints {
            let (at, along, r) = joint(digit, i);
            let across = along.perp() * (r * wide);
            let at = at + along * shift;
            let fold = vec![at - across, at + along * 1.6, at + across];
            rows.push(on(arm, fold));
        }
    }
    // Tendons fan out from the wrist.
    for (n, digit) in digits.iter().enumerate().skip(1) {
        let root = joint(digit, 0).0;
        let spread = dvec2(34.0, root.y * 0.42);
        let strain = root.lerp(spread, if n == 2 { 0.62 } else { 0.45 });
        rows.push(on(arm, vec![root - dvec2(13.0, root.y * 0.08), strain]));
    }
    rows
}

/// The lines of an open palm, and those across each joint.
fn creases(arm: &Arm, digits: &[[Joint; 4]; 5]) -> Rows {
    let mut rows: Rows = [
        [[84, -38], [76, -12], [82, 8], [94, 20]],
        [[66, 38], [58, 18], [52, -8], [42, -30]],
        [[66, 39], [52, 24], [32, 8], [8, 4]],
    ]
    .iter()
    .map(|line| {
        let own = line.iter().map(|&[x, y]| dvec2(f64::from(x), f64::from(y)));
        on(arm, own.collect())
    })
    .collect();
    for digit in digits {
        for i in [1, 2] {
            let (at, along, r) = joint(digit, i);
            let across = along.perp() * (r * 0.8);
            rows.push(on(arm, vec![at - across, at - along * 1.5, at + across]));
        }
    }
    rows
}

/// Cloth round the arm: a folded cuff, creases, an open end.
fn sleeve(s: &mut Sketch<'_>, arm: &Arm, tone: Tone, within: &Region) {
    let edge = &arm.sleeve;
    let n = (edge.len() - 2) / 2;
    let line = if luma(tone) < 0.42 { PENCIL } else { INK };
    s.polygons(&kept(edge, within), tone, 0.0, 0.9);
    let whole = Region::from_polygon(edge).unwrap_or_default();
    let lit = whole.moved(-s.pen.fall * (SHADE * 1.6));
    let turned = difference(&whole, &[&lit]).and_then(|r| intersection(&r, within));
    let turned = turned.unwrap_or_default();
    s.polygons(turned.rings(), deeper(deeper(tone)), 0.0, 0.45);
    // Both sides, and the end round the wrist: the shoulder stays open.
    let mut round: Vec<DVec2> = edge[..n].iter().rev().copied().collect();
    round.push(edge[2 * n + 1]);
    round.push(edge[2 * n]);
    round.extend(edge[n..2 * n].iter().rev());
    s.straight(&[round], line, 0.95);
    let half = edge[0].distance(edge[2 * n - 1]) * 0.5;
    let across = (edge[0] - edge[2 * n - 1]).normalize_or_zero();
    let up = -arm.along;
    let arc = |above: f64, reach: f64| {
        let at = arm.cuff + up * above;
        let out = across * (half * reach);
        let bow = up * (-0.2 * half);
        vec![
            at - out,
            at - out * 0.6 + bow,
            at + out * 0.6 + bow,
            at + out,
        ]
    };
    s.lines(&[arc(15.0, 1.0), arc(19.0, 0.98)], line, 0.7, 0.8);
    let mut folds = Rows::new();
    for i in 0..5 {
        let above = 42.0 + 46.0 * f64::from(i) + s.dice.about(12.0);
        let side = if i % 2 == 0 { 1.0 } else { -1.0 };
        let from = arm.cuff + up * above + across * (side * half * 1.02);
        let long = half * s.dice.between(0.7, 1.2);
        let lean = polar(s.dice.between(0.25, 0.6));
        let run = (-across * side * lean.x + up * lean.y) * long;
        folds.push(vec![from, from + run * 0.5 + up * 4.0, from + run]);
    }
    s.lines(&folds, line, 0.55, 0.5);
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::layout::open;
    use crate::scene::arm;

    #[test]
    fn every_action_is_drawn_for_either_hand_and_either_side_up() {
        let pen = Pen {
            weight: 2.4,
            fall: dvec2(0.866, 0.5),
            fine: true,
        };
        let laid = r#"{"format":"overspread-layout","version":0,"id":"0000000000000001",
            "next_id":9,"table":{"width":1200},"frame":{"at":[600,450],"width":1050},
            "people":[{"id":1}],"exposures":[{"id":2}],
            "hands":[{"id":3,"person":1,"exposure":2,"entry":[600,800],"target":[600,400]}]}"#;
        let mut layout = open(laid).expect("a sound layout");
        let mut drawn = std::collections::BTreeSet::new();
        for action in Action::ALL {
            for palm in [Palm::Down, Palm::Up] {
                layout.hands[0].action = action;
                layout.hands[0].palm = palm;
                let within = crate::shape::frame_outline(&layout.frame);
                let arm = arm(&layout, &layout.hands[0]);
                let look = Limb {
                    seed: 3,
                    skin: [0xc0, 0x8f, 0x6f],
                    sleeve: [0x19, 0x16, 0x14],
                    action,
                    palm,
                };
                let text = limb(&arm, &look, &within, &pen).to_string();
                assert!(!text.contains("NaN"), "{action:?} {palm:?}");
                drawn.insert(text);
            }
        }
        assert_eq!(drawn.len(), 2 * Action::ALL.len(), "each looks like itself");
    }
}
