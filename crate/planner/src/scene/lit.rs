//! The table as the light meets it: what stands in its way, what the cards
//! take and give back.
use core::f64::consts::PI;

use glam::{DVec2, DVec3, dvec3};

use super::alike::Alike;
use super::card::{CARD, card_foot};
use super::known::{Asked, Known};
use super::rise::sections;
use super::sitter::bodies;
use super::{arm, inner, rise, root, silhouette, vessel_of};
use crate::catalogue::{self, Kind};
use crate::layout::{Card, CardKind, Finish, Id, Item, Layout, LightShape};
use crate::light::{Occluder, Source, illuminance, may_shade, seen_share, seen_share_within};
use crate::shape::hull;

/// What a white card gives back of the light that meets it. Our estimate.
const BOUNCED: f64 = 0.85;
/// Things lower than this throw no shadow worth a line, mm. Our choice.
const LOW: f64 = 6.0;

/// The light and all that changes it. Clear glass lets it through; loose
/// pieces and cutlery are too low to count.
#[derive(Clone, Debug)]
pub struct Lit {
    /// The light.
    pub source: Source,
    /// White cards as sources, each with its luminance.
    bounces: Vec<(Source, f64)>,
    /// Cards, then things.
    solids: Vec<Occluder>,
    cards: usize,
    /// Insides of vessels.
    hollows: Vec<Occluder>,
    /// Arms, each with its exposure.
    arms: Vec<(Id, Occluder)>,
    /// Trunks and heads of those they are of, each with its exposure.
    bodies: Vec<(Id, Occluder)>,
    known: Known,
    before: Option<Before>,
}

/// What the same light did before an edit: it still holds wherever none of what
/// then stood or now stands otherwise may come in between.
#[derive(Clone, Debug)]
struct Before {
    known: Known,
    /// Solids, then hollows.
    changed: [Vec<Occluder>; 2],
    same_arms: bool,
    same_bodies: bool,
}

impl Lit {
    /// The light of a layout.
    #[must_use]
    pub fn of(layout: &Layout) -> Self {
        Self::made(layout, &|item| solid(layout, item))
    }

    fn made(layout: &Layout, solid: &dyn Fn(&Item) -> Option<Occluder>) -> Self {
        let source = Source::of(layout);
        let mut solids: Vec<Occluder> = layout.cards.iter().filter_map(standing).collect();
        let cards = solids.len();
        solids.extend(layout.items.iter().filter_map(solid));
        let white = layout.cards.iter().filter(|c| c.kind == CardKind::White);
        let arms = layout.hands.iter().flat_map(|hand| {
            let (arm, height) = (arm(layout, hand), f64::from(hand.height));
            let plate = |outline: &Vec<DVec2>| {
                let axis = arm.wrist;
                Occluder::new(hand.id, outline, axis, vec![[height, 1.0]])
            };
            let plates: Vec<_> = arm.plates().iter().filter_map(plate).collect();
            plates.into_iter().map(|plate| (hand.exposure, plate))
        });
        Self {
            bounces: white.map(|card| bounce(&source, card)).collect(),
            arms: arms.collect(),
            bodies: bodies(layout),
            source,
            solids,
            cards,
            hollows: layout
                .items
                .iter()
                .filter_map(|i| hollow(layout, i))
                .collect(),
            known: Known::default(),
            before: None,
        }
    }

    /// The light of a layout after an edit: as [`Lit::of`], to the last bit, but
    /// what the edit did not reach is taken over.
    #[must_use]
    pub fn after(layout: &Layout, (was, before): (&Layout, &Self)) -> Self {
        let alike = Alike::of(was, layout);
        let known = |id: Id| {
            let mut things = before.solids[before.cards..].iter();
            things.find(|solid| solid.owner == id).cloned()
        };
        let lit = Self::made(layout, &|item| {
            let stands = alike.stands(item.id);
            let same = |[old, new]: [&Item; 2]| stands && old.finish == new.finish;
            if alike.both(item.id).is_some_and(same) {
                known(item.id)
            } else {
                solid(layout, item)
            }
        });
        let same = lit.source == before.source && lit.bounces == before.bounces;
        let taken = same.then(|| Before {
            known: before.known.clone(),
            changed: [
                changed(&before.solids, &lit.solids),
                changed(&before.hollows, &lit.hollows),
            ],
            same_arms: before.arms == lit.arms,
            same_bodies: before.bodies == lit.bodies,
        });
        Self {
            before: taken,
            ..lit
        }
    }

    /// A figure of a place, worked out once.
    fn once(&self, place: DVec3, asked: Asked, figure: &dyn Fn() -> f64) -> f64 {
        if let Some(known) = self.known.get(place, &asked) {
            return known;
        }
        let before = self.before.as_ref().and_then(|before| {
            let was = before.known.get(place, &asked)?;
            let [solids, hollows] = &before.changed;
            let holds = match &asked {
                Asked::Light(stack) | Asked::Share(stack) | Asked::Upon(stack, _) => {
                    let within = hollows.iter().any(|h| h.stack == *stack);
                    !within && !may_shade(&self.source, place, solids)
                }
                Asked::PastArms(_) => before.same_arms,
                Asked::PastPeople(_) => before.same_arms && before.same_bodies,
            };
            holds.then_some(was)
        });
        let figure = before.unwrap_or_else(figure);
        self.known.put(place, asked, figure);
        figure
    }

    /// Light on a level surface with nothing but cards about, the source's
    /// luminance being 1.
    #[must_use]
    pub fn open(&self, place: DVec3) -> f64 {
        let own = illuminance(&self.source, place, DVec3::Z);
        let cards = &self.solids[..self.cards];
        own * seen_share(&self.source, place, cards, &|_| false) + self.bounced(place)
    }

    /// Light on a level surface of a stack, past all other things; what a
    /// white card gives is not shaded.
    #[must_use]
    pub fn on(&self, place: DVec3, stack: Id) -> f64 {
        self.once(place, Asked::Light(stack), &|| {
            let own = illuminance(&self.source, place, DVec3::Z);
            own * self.share(place, stack) + self.bounced(place)
        })
    }

    /// Light on a level surface past all things.
    #[must_use]
    pub fn at(&self, place: DVec3) -> f64 {
        self.on(place, Id(0))
    }

    /// Light on a level place on a thing of a stack, past all but the things
    /// `through`, which it lies on.
    #[must_use]
    pub fn upon(&self, place: DVec3, stack: Id, through: &[Id]) -> f64 {
        self.once(place, Asked::Upon(stack, through.to_vec()), &|| {
            let own = illuminance(&self.source, place, DVec3::Z);
            let skip = |o: &Occluder| through.contains(&o.owner);
            own * self.seen(place, stack, &skip) + self.bounced(place)
        })
    }

    /// Share of the light that reaches a surface of a stack past all others,
    /// and out of the vessels of its own.
    #[must_use]
    pub fn share(&self, place: DVec3, stack: Id) -> f64 {
        self.once(place, Asked::Share(stack), &|| {
            let own = |o: &Occluder| stack != Id(0) && o.stack == stack;
            self.seen(place, stack, &own)
        })
    }

    /// The same out of its own vessels, with nothing else about.
    #[must_use]
    pub fn share_of_mouth(&self, place: DVec3, stack: Id) -> f64 {
        self.seen(place, stack, &|_| true)
    }

    /// The same past one stack or card alone.
    #[must_use]
    pub fn share_past(&self, place: DVec3, only: Id) -> f64 {
        seen_share(&self.source, place, &self.solids, &|o| o.stack != only)
    }

    /// Share of the light that is seen out of the vessels of a stack which hold
    /// the place, and past what is not skipped.
    fn seen(&self, place: DVec3, stack: Id, skip: &dyn Fn(&Occluder) -> bool) -> f64 {
        let hollows = self.hollows.iter();
        let mut hollows = hollows.filter(|h| h.stack == stack && h.holds(place));
        seen_share_within(&self.source, place, &self.solids, skip, &mut hollows)
    }

    /// The same past the arms of one exposure alone.
    #[must_use]
    pub fn share_past_arms(&self, place: DVec3, exposure: Id) -> f64 {
        self.once(place, Asked::PastArms(exposure), &|| {
            let own = self.arms.iter().filter(|arm| arm.0 == exposure);
            own.map(|(_, arm)| {
                let arm = core::slice::from_ref(arm);
                seen_share(&self.source, place, arm, &|_| false)
            })
            .fold(1.0, f64::min)
        })
    }

    /// The same past its arms and the bodies of those they are of.
    #[must_use]
    pub fn share_past_people(&self, place: DVec3, exposure: Id) -> f64 {
        self.once(place, Asked::PastPeople(exposure), &|| {
            let own = self.bodies.iter().filter(|body| body.0 == exposure);
            let bodies: Vec<Occluder> = own.map(|body| body.1.clone()).collect();
            let past = seen_share(&self.source, place, &bodies, &|_| false);
            past.min(self.share_past_arms(place, exposure))
        })
    }

    /// The things that throw shadows, but for one stack.
    #[must_use]
    pub fn standing(&self, but: Id) -> Vec<&Occluder> {
        let things = self.solids[self.cards..].iter();
        things.filter(|o| o.stack != but).collect()
    }

    /// Whose solids there are: stacks and cards, each once.
    #[must_use]
    pub fn owners(&self) -> Vec<Id> {
        let mut all: Vec<Id> = self.solids.iter().map(|o| o.stack).collect();
        crate::order::sort(&mut all, Id::cmp);
        all.dedup();
        all
    }

    fn bounced(&self, place: DVec3) -> f64 {
        let each = self.bounces.iter();
        each.map(|(card, luminance)| luminance * illuminance(card, place, DVec3::Z))
            .sum()
    }
}

/// Solids that stand in one of two sets and not in the other.
fn changed(before: &[Occluder], after: &[Occluder]) -> Vec<Occluder> {
    // An edit leaves most as they are, in their order.
    let same = |pair: &(&Occluder, &Occluder)| pair.0 == pair.1;
    let head = before.iter().zip(after).take_while(same).count();
    let (before, after) = (&before[head..], &after[head..]);
    let back = before.iter().rev().zip(after.iter().rev());
    let tail = back.take_while(same).count();
    let middle = |all: &[Occluder]| all[..all.len() - tail].to_vec();
    let (before, after) = (middle(before), middle(after));
    let alone = |own: &Occluder, other: &[Occluder]| !other.contains(own);
    let gone = before.iter().filter(|o| alone(o, &after));
    let new = after.iter().filter(|o| alone(o, &before));
    gone.chain(new).cloned().collect()
}

/// A thing as the light meets it.
fn solid(layout: &Layout, item: &Item) -> Option<Occluder> {
    let rise = rise(layout, item);
    let strewn = catalogue::is_strewn(&item.prop);
    if strewn || item.finish == Finish::Clear || rise.top - rise.base < LOW {
        return None;
    }
    let within = vessel_of(layout, item).is_some();
    let levels = sections(item, rise, within).map(|(z, share)| [z, share]);
    let own = Occluder::new(item.id, &silhouette(item), item.at.vec(), levels.collect());
    own.map(|own| own.in_stack(root(layout, item.id)))
}

/// The inside of a vessel, its walls as thick as its rim; a hull stands for one
/// with a spout or a handle.
fn hollow(layout: &Layout, item: &Item) -> Option<Occluder> {
    let rise = rise(layout, item);
    let holds = catalogue::kind_of(&item.prop) == Kind::Vessel && item.finish != Finish::Clear;
    if !holds || rise.top - rise.base < LOW {
        return None;
    }
    let levels = sections(item, rise, false).map(|(z, share)| [z, share]);
    let own = Occluder::new(
        item.id,
        &hull(&inner(item)?),
        item.at.vec(),
        levels.collect(),
    );
    own.map(|own| own.in_stack(root(layout, item.id)))
}

fn standing(card: &Card) -> Option<Occluder> {
    Occluder::sheet(card.id, card_foot(card), CARD, f64::from(card.height))
}

/// A white card as a source: evenly as bright as its middle is lit, on the
/// side that faces the light. What shades the card itself is left out.
fn bounce(source: &Source, card: &Card) -> (Source, f64) {
    let [from, to] = card_foot(card);
    let half = f64::from(card.height) * 0.5;
    let at = card.at.vec();
    let centre = dvec3(at.x, at.y, half);
    let front = card.turn.direction().extend(0.0);
    let facing = if front.dot(source.centre - centre) < 0.0 {
        -front
    } else {
        front
    };
    let lit = illuminance(source, centre, facing);
    let own = Source {
        // Light is shed off the face, not off the middle of the sheet.
        centre: centre + facing * (CARD * 0.5),
        facing,
        across: ((to - from) * 0.5).extend(0.0),
        up: DVec3::Z * half,
        shape: LightShape::Window,
    };
    (own, BOUNCED * lit / PI)
}

#[cfg(test)]
mod tests;
