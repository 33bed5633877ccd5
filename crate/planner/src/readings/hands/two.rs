//! Two arms: crossing, too near, or each other's mirror image.
use std::cell::OnceCell;

use glam::DVec2;

use super::super::finding::{Finding, Mark, State};
use super::super::rules::{HANDS_APART, HANDS_CROSS, HANDS_MIRROR, HANDS_THUMB};
use super::super::study::Study;
use super::{Limb, called, remedy};
use crate::layout::{Id, Layout};
use crate::shape::{Bounds, Region, gap_within, meeting};
use crate::words::{Arg, length, say};

/// How long a thumb is marked, mm.
const THUMB: f64 = 90.0;

pub(super) fn read(study: &Study<'_>, limbs: &[Limb<'_>], settled: bool) -> Vec<Finding> {
    let mut out = Vec::new();
    let outlines: Vec<Outline> = limbs.iter().map(Outline::of).collect();
    for (n, a) in limbs.iter().enumerate() {
        for (m, b) in limbs.iter().enumerate().skip(n + 1) {
            let pair = a.hand.pair == Some(b.hand.id);
            if a.hand.exposure == b.hand.exposure {
                out.extend(crossing(study, a, b, settled));
            }
            if pair {
                out.extend(thumbs(study, a, b, settled));
                out.extend(mirrored(study, a, b));
            } else {
                out.extend(near(study, (a, &outlines[n]), (b, &outlines[m])));
            }
        }
    }
    out
}

/// Where the middle lines of two arms cross, hands left out.
fn cross(a: &Limb<'_>, b: &Limb<'_>) -> Option<DVec2> {
    let (one, other) = (a.line(), b.line());
    let (one, other) = (&one[1..], &other[1..]);
    let mut all = one
        .windows(2)
        .flat_map(|p| other.windows(2).map(move |q| (p, q)));
    all.find_map(|(p, q)| meeting(p[0], p[1], q[0], q[1]))
}

fn crossing(study: &Study<'_>, a: &Limb<'_>, b: &Limb<'_>, settled: bool) -> Option<Finding> {
    let at = cross(a, b)?;
    let about = vec![a.hand.id, b.hand.id];
    let key = format!("hands:{}:{}:cross", a.hand.id.0, b.hand.id.0);
    let mut f = Finding::by(&HANDS_CROSS, key, (State::LookAgain, 2), 1.0, about);
    f.marks = a.marks().into_iter().chain(b.marks()).collect();
    f.marks.push(Mark::Ring { at, radius: 60.0 });
    f.sentence = study.sentence(|| told(study, a, b, "hands-cross", ""));
    f.working = study.tell(|| vec![say("working-hands-cross", &[])]);
    if settled {
        f.remedy = remedy::uncrossed(study, a.hand, b.hand, &|layout| {
            let count = crossings(layout, a.hand.id, b.hand.id);
            (count == 0).then_some(0.0)
        });
    }
    Some(f)
}

fn crossings(layout: &Layout, a: Id, b: Id) -> usize {
    let limbs = super::limbs(layout);
    let of = |id: Id| limbs.iter().find(|l| l.hand.id == id);
    let both = of(a).zip(of(b));
    usize::from(
        both.is_some_and(|(a, b)| a.hand.exposure == b.hand.exposure && cross(a, b).is_some()),
    )
}

fn told(study: &Study<'_>, a: &Limb<'_>, b: &Limb<'_>, id: &str, figure: &str) -> String {
    let args = [
        ("hand", Arg::Text(called(study, a.hand))),
        ("other", Arg::Text(called(study, b.hand))),
        ("figure", Arg::Text(figure.into())),
    ];
    say(id, &args)
}

/// How far the thumb of a hand is turned from the other of its pair, degrees.
fn turned_away(a: &Limb<'_>, b: &Limb<'_>) -> f64 {
    let way = (b.arm.tip - a.arm.tip).normalize_or(a.arm.thumb);
    libm::acos(a.arm.thumb.dot(way).clamp(-1.0, 1.0)).to_degrees()
}

/// A pair on one thing with both thumbs turned from it: left and right are the
/// wrong way about, or the palms are.
pub(super) fn away(a: &Limb<'_>, b: &Limb<'_>) -> Option<f64> {
    let both = a.hand.holds.is_some() && a.hand.holds == b.hand.holds;
    let figure = turned_away(a, b).min(turned_away(b, a));
    (both && figure >= HANDS_THUMB.edges[0]).then_some(figure)
}

fn thumbs(study: &Study<'_>, a: &Limb<'_>, b: &Limb<'_>, settled: bool) -> Option<Finding> {
    let figure = away(a, b)?;
    let key = format!("hands:{}:{}:thumb", a.hand.id.0, b.hand.id.0);
    let about = vec![a.hand.id, b.hand.id];
    let mut f = Finding::by(&HANDS_THUMB, key, (State::LookAgain, 2), figure, about);
    f.marks = [a, b]
        .map(|limb| Mark::Arrow {
            from: limb.arm.wrist,
            to: limb.arm.wrist + limb.arm.thumb * THUMB,
        })
        .to_vec();
    f.sentence = study.sentence(|| told(study, a, b, "hands-thumb", ""));
    f.working = study.tell(|| vec![say("working-hands-thumb", &[])]);
    if settled {
        f.remedy = remedy::thumbs(study, a.hand, b.hand, &|layout| {
            let limbs = super::limbs(layout);
            let of = |id: Id| limbs.iter().find(|l| l.hand.id == id);
            let (a, b) = of(a.hand.id).zip(of(b.hand.id))?;
            let after = turned_away(a, b).min(turned_away(b, a));
            away(a, b).is_none().then_some(after)
        });
    }
    Some(f)
}

/// A pair whose arms are each other's image about the middle between them.
fn mirrored(study: &Study<'_>, a: &Limb<'_>, b: &Limb<'_>) -> Option<Finding> {
    let (one, other) = (a.joints?, b.joints?);
    let middle = (one.shoulder + other.shoulder).truncate() * 0.5;
    let image = |p: DVec2| {
        let off = p - middle;
        middle + one.inward * (2.0 * off.dot(one.inward)) - off
    };
    let off = |p: DVec2, q: DVec2| image(p).distance(q);
    let figure = off(a.arm.tip, b.arm.tip).max(off(a.arm.wrist, b.arm.wrist));
    if a.hand.side == b.hand.side || figure > HANDS_MIRROR.edges[0] {
        return None;
    }
    let key = format!("hands:{}:{}:mirror", a.hand.id.0, b.hand.id.0);
    let about = vec![a.hand.id, b.hand.id];
    let mut f = Finding::by(&HANDS_MIRROR, key, (State::LookAgain, 3), figure, about);
    f.marks = a.marks().into_iter().chain(b.marks()).collect();
    f.sentence = study.sentence(|| told(study, a, b, "hands-mirror", ""));
    f.working = study.tell(|| vec![say("working-hands-mirror", &[])]);
    Some(f)
}

/// Arms of two actions that lie too near each other in the combined picture;
/// those that overlap are for the exposures to part.
fn near(
    study: &Study<'_>,
    (a, one): (&Limb<'_>, &Outline),
    (b, other): (&Limb<'_>, &Outline),
) -> Option<Finding> {
    // Most arms lie far from each other.
    if one.bounds?.gap(other.bounds?) > HANDS_APART.edges[0] {
        return None;
    }
    let (one, other) = (one.whole(a)?, other.whole(b)?);
    let gap = gap_within(one, other, HANDS_APART.edges[0])?;
    if gap.distance <= 0.0 || gap.distance >= HANDS_APART.edges[0] {
        return None;
    }
    let key = format!("hands:{}:{}:apart", a.hand.id.0, b.hand.id.0);
    let about = vec![a.hand.id, b.hand.id];
    let figure = gap.distance;
    let mut f = Finding::by(&HANDS_APART, key, (State::LookAgain, 3), figure, about);
    let label = length(figure, study.layout().head.units);
    f.marks = vec![Mark::Gap {
        from: gap.from,
        to: gap.to,
        label: label.clone(),
    }];
    f.sentence = study.sentence(|| told(study, a, b, "hands-apart", &label));
    f.working = study.tell(|| vec![say("working-hands-apart", &[])]);
    Some(f)
}

/// Hand, forearm and sleeve together: the box round them, and their outline once
/// it is asked for.
struct Outline {
    bounds: Option<Bounds>,
    whole: OnceCell<Option<Region>>,
}

impl Outline {
    fn of(limb: &Limb<'_>) -> Self {
        let points: Vec<DVec2> = parts(limb).into_iter().flatten().copied().collect();
        Self {
            bounds: Bounds::around(&points),
            whole: OnceCell::new(),
        }
    }

    fn whole(&self, limb: &Limb<'_>) -> Option<&Region> {
        let whole = self.whole.get_or_init(|| {
            let all = parts(limb).into_iter();
            let all: Vec<Region> = all.filter_map(|p| Region::from_polygon(p).ok()).collect();
            crate::shape::union(&all.iter().collect::<Vec<&Region>>()).ok()
        });
        whole.as_ref()
    }
}

fn parts<'a>(limb: &'a Limb<'_>) -> [&'a Vec<DVec2>; 3] {
    [&limb.arm.hand, &limb.arm.forearm, &limb.arm.sleeve]
}
