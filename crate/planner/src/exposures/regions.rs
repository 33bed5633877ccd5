//! What each exposure adds to the combined picture, and where two of them
//! want the same place.
//!
//! An exposure adds its arms, what they hold, what is taken away, moved or
//! changed, all as the lens sees them, and every place of the table that loses
//! light to its arms and to what they hold, or that gets it back where a thing
//! is gone: the penumbra (`penumbra.rs`). Wide on purpose: real hands never land on the
//! line.
use std::rc::Rc;

use glam::DVec2;

use super::penumbra::{farthest, thrown};
use super::states::state_of;
use crate::layout::{As, Exposure, ExposureKind, Hand, Id, Item, Layout, State};
use crate::light::Source;
use crate::optics::View;
use crate::scene::{Arm, Lit, arm, held_at, lifted, rise, seen_outline, silhouette, vessel_of};
use crate::shape::{Region, frame_outline, hull, intersection, union};

/// A loss of light under this is not worth parting, share. Our choice: a
/// seventh of a stop.
pub const SEEN: f64 = 0.10;
/// Places in a clash that are asked how dark they get, to a side.
const ASKED: usize = 7;

/// What an exposure adds.
#[derive(Clone, Debug)]
pub struct Added {
    /// Which exposure.
    pub exposure: Id,
    /// Arms, what they hold and what is not as it is set, as the lens sees it.
    pub solid: Region,
    /// Where its arms take light from the table.
    pub shadow: Region,
}

/// How two exposures want the same place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Meeting {
    /// What the one adds lies over what the other adds.
    Outlines,
    /// Only the shadow of the first falls on what the second adds.
    ShadowOfFirst,
    /// Only the shadow of the second falls on what the first adds.
    ShadowOfSecond,
    /// The shadow of each falls on what the other adds.
    BothShadows,
}

/// Two exposures that want the same place.
#[derive(Clone, Debug)]
pub struct Clash {
    /// The one that is told first.
    pub first: Id,
    /// The other.
    pub second: Id,
    /// What lies over what.
    pub by: Meeting,
    /// Where.
    pub region: Region,
}

impl Clash {
    /// How large it is, mm².
    #[must_use]
    pub fn area(&self) -> f64 {
        self.region.area()
    }
}

/// What every exposure with hands adds, seen from elsewhere than the lens: from
/// above, to be drawn so; in list order.
#[must_use]
pub fn added_seen(layout: &Layout, view: View) -> Vec<Added> {
    let with_hands = |e: &&Exposure| e.kind == ExposureKind::Hands;
    let each = layout.exposures.iter().filter(with_hands);
    each.map(|exposure| added_by(layout, exposure, view))
        .collect()
}

/// What this exposure adds.
pub(super) fn added_by(layout: &Layout, exposure: &Exposure, view: View) -> Added {
    let source = Source::of(layout);
    let most = farthest(&layout.frame);
    let frame = Region::from_polygon(&frame_outline(&layout.frame)).unwrap_or_default();
    let hands = layout.hands.iter().filter(|h| h.exposure == exposure.id);
    let mut solid = Vec::new();
    let mut shadow = Vec::new();
    for hand in hands {
        let height = f64::from(hand.height);
        let arm = arm(layout, hand);
        for part in [&arm.hand, &arm.forearm, &arm.sleeve] {
            solid.push(lifted(part, view, height));
        }
        let held = held(layout, hand, &arm);
        solid.extend(held.as_ref().map(|held| lifted(held, view, height)));
        for plate in arm.plates().iter().chain(held.as_ref()) {
            shadow.push(thrown(&source, &hull(plate), height, most));
        }
    }
    for state in exposure.states.iter().filter(|s| s.is != As::Set) {
        for item in unlike(layout, state) {
            let inside = vessel_of(layout, &item).is_some();
            let rise = rise(layout, &item);
            solid.push(seen_outline(&item, rise, inside, view));
            // Food that is changed throws the shadow it threw.
            if state.is != As::Changed {
                shadow.push(thrown(&source, &hull(&silhouette(&item)), rise.top, most));
            }
        }
    }
    Added {
        exposure: exposure.id,
        solid: within(&solid, &frame),
        shadow: within(&shadow, &frame),
    }
}

pub(super) fn within(outlines: &[Vec<DVec2>], frame: &Region) -> Region {
    let parts: Vec<Region> = outlines
        .iter()
        .filter_map(|outline| Region::from_polygon(outline).ok())
        .collect();
    let all = union(&parts.iter().collect::<Vec<_>>()).unwrap_or_default();
    intersection(&all, frame).unwrap_or_default()
}

/// The outline of what a hand holds, where it holds it.
pub(super) fn held(layout: &Layout, hand: &Hand, arm: &Arm) -> Option<Vec<DVec2>> {
    let (item, to) = held_at(layout, hand, arm)?;
    let at = item.at.vec();
    Some(silhouette(item).iter().map(|p| *p - at + to).collect())
}

/// A thing that is not as it is set, where it stands and where it is moved to;
/// with what stands on it, when that goes along.
fn unlike(layout: &Layout, state: &State) -> Vec<Item> {
    let along = |item: &&Item| {
        let mut at = Some(item.id);
        let mut left = layout.items.len();
        while let Some(id) = at.filter(|id| *id != state.item && left > 0) {
            left -= 1;
            at = layout.items.iter().find(|i| i.id == id).and_then(|i| i.on);
        }
        at == Some(state.item) && (item.id == state.item || state.is != As::Changed)
    };
    let mut out: Vec<Item> = layout.items.iter().filter(along).cloned().collect();
    let own = layout.items.iter().find(|i| i.id == state.item);
    if let (As::Moved, Some(own), Some(to)) = (state.is, own, state.at) {
        let by = (to.x - own.at.x, to.y - own.at.y);
        let mut there = out.clone();
        for item in &mut there {
            item.at = item.at.moved(by.0, by.1);
            if let Some(turn) = state.turn.filter(|_| item.id == state.item) {
                item.turn = turn;
            }
        }
        out.extend(there);
    }
    out
}

/// Where two exposures want the same place, each two once: the outlines where
/// they overlap, or else the shadow of the one over what the other adds, as
/// far as it can be seen.
#[must_use]
pub fn clashes(layout: &Layout, lit: &Lit, added: &[Rc<Added>]) -> Vec<Clash> {
    let mut out = Vec::new();
    for (n, a) in added.iter().enumerate() {
        for b in &added[n + 1..] {
            let both = |x: &Region, y: &Region| {
                let meet = x.bounds().zip(y.bounds()).is_some_and(|(x, y)| x.meets(y));
                let both = meet.then(|| intersection(x, y).ok()).flatten();
                both.filter(|both| both.area() > 0.0)
            };
            let clash = |by, region| Clash {
                first: a.exposure,
                second: b.exposure,
                by,
                region,
            };
            if let Some(region) = both(&a.solid, &b.solid) {
                out.push(clash(Meeting::Outlines, region));
                continue;
            }
            let cast = |from: &Added, onto: &Added| {
                let region = both(&from.shadow, &onto.solid)?;
                let height = height_of(layout, onto.exposure);
                dark(lit, &region, from.exposure, height).then_some(region)
            };
            match (cast(a, b), cast(b, a)) {
                (Some(region), None) => out.push(clash(Meeting::ShadowOfFirst, region)),
                (None, Some(region)) => out.push(clash(Meeting::ShadowOfSecond, region)),
                (Some(one), Some(other)) => {
                    let region = union(&[&one, &other]).unwrap_or_default();
                    out.push(clash(Meeting::BothShadows, region));
                }
                (None, None) => {}
            }
        }
    }
    out
}

/// How high what an exposure changes stands, mm: the tops of the things; the
/// table where only hands come in.
fn height_of(layout: &Layout, exposure: Id) -> f64 {
    let own = layout.exposures.iter().find(|e| e.id == exposure);
    let changed = layout
        .items
        .iter()
        .filter(|i| own.is_some_and(|e| state_of(e, i.id) == As::Changed));
    changed
        .map(|item| rise(layout, item).top)
        .fold(0.0, f64::max)
}

/// Whether the arms of an exposure take light worth seeing anywhere there.
fn dark(lit: &Lit, region: &Region, exposure: Id, height: f64) -> bool {
    let Some(bounds) = region.bounds() else {
        return false;
    };
    let size = bounds.size() / ASKED as f64;
    (0..ASKED * ASKED).any(|n| {
        let step = DVec2::new((n % ASKED) as f64 + 0.5, (n / ASKED) as f64 + 0.5);
        let at = bounds.min + size * step;
        region.contains(at) && 1.0 - lit.share_past_arms(at.extend(height), exposure) >= SEEN
    })
}
