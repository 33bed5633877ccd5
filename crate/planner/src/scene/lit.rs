//! The table as the light meets it: what stands in its way, what the cards
//! take and give back.
use core::f64::consts::PI;

use glam::{DVec2, DVec3, dvec3};

use super::card::{CARD, card_foot};
use super::rise::sections;
use super::{arm, inner, rise, root, silhouette, vessel_of};
use crate::catalogue::{self, Kind};
use crate::layout::{Card, CardKind, Finish, Id, Item, Layout, LightShape};
use crate::light::{Occluder, Source, illuminance, seen_share, seen_share_within};
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
}

impl Lit {
    /// The light of a layout.
    #[must_use]
    pub fn of(layout: &Layout) -> Self {
        let source = Source::of(layout);
        let mut solids: Vec<Occluder> = layout.cards.iter().filter_map(standing).collect();
        let cards = solids.len();
        solids.extend(layout.items.iter().filter_map(|item| solid(layout, item)));
        let white = layout.cards.iter().filter(|c| c.kind == CardKind::White);
        let arms = layout.hands.iter().flat_map(|hand| {
            let (arm, height) = (arm(layout, hand), f64::from(hand.height));
            let plate = |outline: &Vec<DVec2>| {
                let axis = arm.wrist;
                Occluder::new(hand.id, outline, axis, vec![[height, 1.0]])
            };
            let parts = [&arm.hand, &arm.forearm, &arm.sleeve];
            let plates: Vec<_> = parts.into_iter().filter_map(plate).collect();
            plates.into_iter().map(|plate| (hand.exposure, plate))
        });
        Self {
            bounces: white.map(|card| bounce(&source, card)).collect(),
            arms: arms.collect(),
            source,
            solids,
            cards,
            hollows: layout
                .items
                .iter()
                .filter_map(|i| hollow(layout, i))
                .collect(),
        }
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
        let own = illuminance(&self.source, place, DVec3::Z);
        own * self.share(place, stack) + self.bounced(place)
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
        let own = illuminance(&self.source, place, DVec3::Z);
        let skip = |o: &Occluder| through.contains(&o.owner);
        own * self.seen(place, stack, &skip) + self.bounced(place)
    }

    /// Share of the light that reaches a surface of a stack past all others,
    /// and out of the vessels of its own.
    #[must_use]
    pub fn share(&self, place: DVec3, stack: Id) -> f64 {
        let own = |o: &Occluder| stack != Id(0) && o.stack == stack;
        self.seen(place, stack, &own)
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
        let own = self.arms.iter().filter(|arm| arm.0 == exposure);
        own.map(|(_, arm)| {
            let arm = core::slice::from_ref(arm);
            seen_share(&self.source, place, arm, &|_| false)
        })
        .fold(1.0, f64::min)
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

/// A thing as the light meets it.
fn solid(layout: &Layout, item: &Item) -> Option<Occluder> {
    let rise = rise(layout, item);
    let strewn = catalogue::kind_of(&item.prop) == Kind::Scatter;
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
mod tests {
    use super::*;
    use crate::layout::{LayoutId, open};

    /// The empty board, its window at 9 o'clock, with what `more` adds.
    fn lit(more: &str) -> Lit {
        let text = Layout::empty(LayoutId(1)).to_json();
        let mut file: serde_json::Value = serde_json::from_str(&text).expect("JSON");
        file["light"]["clock"] = 270.into();
        file["next_id"] = 9.into();
        let more: serde_json::Value = serde_json::from_str(more).expect("JSON");
        for (key, value) in more.as_object().expect("an object") {
            file[key] = value.clone();
        }
        Lit::of(&open(&file.to_string()).unwrap_or_else(|p| panic!("{p:?}")))
    }

    fn card(kind: &str, x: i32) -> Lit {
        lit(&format!(
            r#"{{"cards":[{{"id":1,"kind":"{kind}","at":[{x},450],"turn":270,"width":700,"height":500}}]}}"#
        ))
    }

    const FAR: DVec3 = dvec3(1000.0, 450.0, 0.0);

    #[test]
    fn a_white_card_on_the_far_side_lifts_it_and_a_black_one_does_not() {
        let bare = lit("{}").open(FAR);
        assert!(card("white", 1250).open(FAR) > bare * 1.05);
        assert_eq!(card("black", 1250).open(FAR), bare);
    }

    #[test]
    fn a_card_towards_the_window_shades_whichever_it_is() {
        let bare = lit("{}").open(FAR);
        assert!(card("black", 700).open(FAR) < bare * 0.5);
    }

    #[test]
    fn a_pot_shades_what_lies_behind_it_but_not_its_own_lid() {
        let pot = r#"{"items":[{"id":1,"prop":"enamel-pot","at":[700,450],"height":200,
            "size":{"shape":"disc","diameter":300}}]}"#;
        let lit = lit(pot);
        assert!(lit.share(dvec3(860.0, 450.0, 0.0), Id(0)) < 0.3);
        assert_eq!(lit.share(dvec3(700.0, 450.0, 200.0), Id(1)), 1.0);
        assert_eq!(lit.share(dvec3(460.0, 450.0, 0.0), Id(0)), 1.0);
    }

    #[test]
    fn the_walls_of_a_pot_shade_what_lies_in_it_and_a_lower_sill_more() {
        let pot = r#""items":[{"id":1,"prop":"enamel-pot","at":[700,450],"height":130,
            "size":{"shape":"disc","diameter":300,"rim":14}}]"#;
        let at = |x: f64, z: f64, more: &str| {
            let lit = lit(&format!("{{{pot}{more}}}"));
            let place = dvec3(x, 450.0, z);
            let share = lit.share(place, Id(1));
            assert_eq!(share, lit.share_of_mouth(place, Id(1)), "nothing else");
            assert_eq!(lit.upon(place, Id(1), &[Id(1)]), lit.on(place, Id(1)));
            share
        };
        // The window is at the left: the left wall shades what lies under it.
        assert!(at(580.0, 20.0, "") < 0.05, "under the near wall");
        assert!(
            at(820.0, 20.0, "") > at(700.0, 20.0, ""),
            "less farther off"
        );
        assert_eq!(at(700.0, 130.0, ""), 1.0, "level with the rim");
        let low = r#","light":{"clock":270,"height_above_table":600}"#;
        assert!(at(700.0, 60.0, low) < at(700.0, 60.0, ""), "a lower light");
    }

    #[test]
    fn clear_glass_lets_the_light_through() {
        let glass = r#"{"items":[{"id":1,"prop":"tumbler","at":[700,450],"height":90,"finish":"clear",
            "size":{"shape":"disc","diameter":80}}]}"#;
        assert_eq!(lit(glass).share(dvec3(760.0, 450.0, 0.0), Id(0)), 1.0);
    }

    #[test]
    fn an_arm_shades_in_its_own_exposure_only() {
        let arm = r#"{"people":[{"id":1}],"exposures":[{"id":2},{"id":3}],"hands":[
            {"id":4,"person":1,"exposure":2,"entry":[600,800],"target":[600,400],"height":150}]}"#;
        let lit = lit(arm);
        // 1.8 m from the window, an arm 15 cm up throws its shadow 26 cm.
        let past = |exposure| {
            let along = (750..1000).step_by(10).map(f64::from);
            let shares = along.map(|x| lit.share_past_arms(dvec3(x, 600.0, 0.0), Id(exposure)));
            shares.fold(1.0, f64::min)
        };
        assert!(past(2) < 0.9, "{}", past(2));
        assert_eq!(past(3), 1.0);
    }
}
