//! Walking the visible outline of every part and comparing it with what lies
//! just outside.
use std::collections::BTreeMap;
use std::rc::Rc;

use glam::DVec2;

use crate::colour::{MixedSeparation, mixed_separation};
use crate::measures::{MIN_RUN, separation_score};
use crate::scene::{Ground, PartKind, REACH, Scene};
use crate::shape::walk;

/// Longest piece of outline compared at once, mm. Our choice: a tenth of the
/// smallest main dish's side.
pub(super) const STEP: f64 = 6.0;
/// How far outside the outline the ground is looked up, mm. Our choice.
const OUTSIDE: f64 = REACH;
/// A lost share from here on is said; below it the edge counts as cured.
pub const LOST_FROM: f64 = 0.10;

/// Places of an outline that are looked at more closely later on, such as in
/// which light they lie. Our choice.
const SPOTS: f64 = 24.0;

/// A stretch of outline over one ground, by a place on it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spot {
    /// A place within it.
    pub at: DVec2,
    /// Unit vector away from the inside, there.
    pub outward: DVec2,
    /// How long it is, mm.
    pub length: f64,
    /// What lies outside.
    pub ground: Ground,
}

/// What a part's outline meets over some of its length.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Meeting {
    /// Length, mm.
    pub length: f64,
    /// Length times the share of tones lost, mm.
    pub lost: f64,
}

/// The visible outline of one piece, walked.
#[derive(Clone, Debug, PartialEq)]
pub struct PartWalk {
    /// The piece, by its index in the scene.
    pub piece: usize,
    /// Visible outline, mm.
    pub length: f64,
    /// Share of it that is lost, 0 to 1.
    pub lost: f64,
    /// Length-weighted mean HyAB.
    pub hyab: f64,
    /// Length-weighted mean |ΔL*|.
    pub delta_l: f64,
    /// Length-weighted mean distance on the a*b* plane.
    pub delta_c: f64,
    /// Length-weighted mean of what the bands are read on.
    pub band_value: f64,
    /// Length-weighted mean of the pieces' separation scores, 0 to 100.
    pub score: f64,
    /// Lowest band value over any ground met along a tenth of it or more.
    pub worst: f64,
    /// By ground.
    pub against: BTreeMap<Ground, Meeting>,
    /// Lost runs of outline, each with the share lost along it.
    pub runs: Vec<(Vec<DVec2>, f64)>,
    /// All of it in few stretches.
    pub spots: Vec<Spot>,
}

impl PartWalk {
    /// The ground it loses most of its outline to.
    #[must_use]
    pub fn chief_ground(&self) -> Option<Ground> {
        let most = self
            .against
            .iter()
            .max_by(|a, b| a.1.lost.total_cmp(&b.1.lost))?;
        (most.1.lost > 0.0).then_some(*most.0)
    }
}

/// All parts of a scene walked, in paint order. The table itself is ground.
/// Walks of the scene before are taken over where nothing they met changed.
#[must_use]
pub(super) fn walk_all(
    scene: &Scene,
    before: Option<(&Scene, &[Rc<PartWalk>])>,
) -> Vec<Rc<PartWalk>> {
    let mut pairs = Pairs::new();
    (0..scene.pieces.len())
        .filter(|n| scene.pieces[*n].part != PartKind::Table)
        .filter_map(|n| {
            let unchanged = before.and_then(|(old, walks)| {
                let was = scene.unchanged(n, old)?;
                scene.recall(n, old, was);
                Some(taken_over(scene, n, old, was, walks))
            });
            unchanged.unwrap_or_else(|| walk_one(scene, n, &mut pairs).map(Rc::new))
        })
        .collect()
}

/// The walk of the scene before, its pieces numbered as they are now.
fn taken_over(
    scene: &Scene,
    n: usize,
    old: &Scene,
    was: usize,
    walks: &[Rc<PartWalk>],
) -> Option<Rc<PartWalk>> {
    let found = walks.binary_search_by_key(&was, |w| w.piece).ok()?;
    let walk = &walks[found];
    let (now, then) = (scene.near(n), old.near(was));
    if n == was && now == then {
        return Some(Rc::clone(walk));
    }
    let renamed = |ground: Ground| match ground {
        Ground::Floor => Some(Ground::Floor),
        Ground::Piece(k) => {
            let place = then.binary_search(&k).ok()?;
            Some(Ground::Piece(now[place]))
        }
    };
    let mut walk = PartWalk::clone(walk);
    walk.piece = n;
    let against = std::mem::take(&mut walk.against);
    let kept = |(ground, met)| Some((renamed(ground)?, met));
    walk.against.extend(against.into_iter().filter_map(kept));
    for spot in &mut walk.spots {
        spot.ground = renamed(spot.ground)?;
    }
    Some(Rc::new(walk))
}

type Pairs = BTreeMap<(usize, Ground), Option<MixedSeparation>>;

fn walk_one(scene: &Scene, n: usize, pairs: &mut Pairs) -> Option<PartWalk> {
    let piece = &scene.pieces[n];
    let frame = scene.frame.bounds()?;
    if !piece.region.bounds()?.meets(frame) {
        return None;
    }
    let mut out = PartWalk {
        piece: n,
        length: 0.0,
        lost: 0.0,
        hyab: 0.0,
        delta_l: 0.0,
        delta_c: 0.0,
        band_value: 0.0,
        score: 0.0,
        worst: f64::INFINITY,
        against: BTreeMap::new(),
        runs: Vec::new(),
        spots: Vec::new(),
    };
    // The few grounds it meets: how far along each, and what parts them.
    let mut bands: Vec<(Ground, f64, f64)> = Vec::new();
    for ring in piece.region.rings() {
        let mut open = false;
        for step in walk(ring, STEP) {
            let inside = step.mid - step.outward * 0.2;
            let outside = step.mid + step.outward * OUTSIDE;
            if !scene.frame.contains(inside) || !scene.frame.contains(outside) {
                open = false;
                continue;
            }
            // Seen only where nothing painted later covers it; its own well is
            // inside its rim and never on its outline.
            let covered = |t: usize| t > n && scene.pieces[t].owner != piece.owner;
            if top(scene, n, inside).is_none_or(covered) {
                open = false;
                continue;
            }
            let ground = match top(scene, n, outside) {
                Some(t) if scene.pieces[t].owner == piece.owner && same_thing(scene, t, n) => {
                    open = false;
                    continue;
                }
                Some(t) => Ground::Piece(t),
                None => Ground::Floor,
            };
            let parted = *pairs
                .entry((n, ground))
                .or_insert_with(|| mixed_separation(&piece.shades, scene.shades_of(ground)));
            let Some(parted) = parted else { continue };
            out.length += step.length;
            out.spots.push(Spot {
                at: step.mid,
                outward: step.outward,
                length: step.length,
                ground,
            });
            out.lost += step.length * parted.lost;
            out.hyab += step.length * parted.hyab;
            out.delta_l += step.length * parted.delta_l;
            out.delta_c += step.length * parted.delta_c;
            out.band_value += step.length * parted.band_value;
            out.score += step.length * separation_score(parted.band_value);
            let met = out.against.entry(ground).or_default();
            met.length += step.length;
            met.lost += step.length * parted.lost;
            match bands.iter_mut().find(|band| band.0 == ground) {
                Some(band) => band.1 += step.length,
                None => bands.push((ground, step.length, parted.band_value)),
            }
            let half = step.outward.perp() * (step.length * 0.5);
            if parted.lost <= 0.0 {
                open = false;
            } else if let (true, Some((line, share))) = (open, out.runs.last_mut()) {
                if *share == parted.lost {
                    line.push(step.mid + half);
                } else {
                    out.runs
                        .push((vec![step.mid - half, step.mid + half], parted.lost));
                }
            } else {
                out.runs
                    .push((vec![step.mid - half, step.mid + half], parted.lost));
                open = true;
            }
        }
    }
    if out.length <= 0.0 {
        return None;
    }
    for mean in [
        &mut out.lost,
        &mut out.hyab,
        &mut out.delta_l,
        &mut out.delta_c,
        &mut out.band_value,
        &mut out.score,
    ] {
        *mean /= out.length;
    }
    out.spots = joined(&out.spots, out.length / SPOTS);
    for (_, length, value) in &bands {
        if *length >= out.length * MIN_RUN {
            out.worst = out.worst.min(*value);
        }
    }
    Some(out)
}

/// Pieces of outline put together as long as they are over one ground and not
/// longer than this.
fn joined(pieces: &[Spot], longest: f64) -> Vec<Spot> {
    let mut out: Vec<Spot> = Vec::new();
    for piece in pieces {
        match out.last_mut() {
            Some(last) if last.ground == piece.ground && last.length + piece.length <= longest => {
                // The place stays near its middle.
                if last.length < longest * 0.5 {
                    (last.at, last.outward) = (piece.at, piece.outward);
                }
                last.length += piece.length;
            }
            _ => out.push(*piece),
        }
    }
    out
}

/// What lies on top at a place within reach of piece `n`.
fn top(scene: &Scene, n: usize, p: DVec2) -> Option<usize> {
    let covers = |m: usize| {
        let region = &scene.pieces[m].region;
        region.bounds().is_some_and(|b| b.holds(p)) && region.contains(p)
    };
    let near = scene.near(n);
    let above = near.partition_point(|m| *m < n);
    let highest = near[above..].iter().rev().copied().find(|m| covers(*m));
    highest
        .or_else(|| covers(n).then_some(n))
        .or_else(|| near[..above].iter().rev().copied().find(|m| covers(*m)))
}

/// Whether two pieces of one owner are one surface: the bare forearm runs into
/// the hand. A sleeve ends on the skin and a well in its rim, so those do not.
fn same_thing(scene: &Scene, a: usize, b: usize) -> bool {
    scene.pieces[a].part == scene.pieces[b].part
}
