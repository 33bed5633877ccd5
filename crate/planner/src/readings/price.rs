//! What a layout costs as the search sees it: one number of what the readings
//! say, smaller being better. No score of beauty: it only weighs findings and
//! scores against each other, and the weights are our choice.
//!
//! Read are crops, leans, gaps, the hero, hands, exposures, glare, copy space and
//! tips pointing into it, each finding that asks for another look by what it
//! costs on the day; the outline every pressed part loses; and what is missing
//! of the three scores to 100. Light takes far longer to read than all of these,
//! so its part is read where it is asked for and else handed on.
use super::finding::{Finding, State};
use super::separation::{is_pressed, separation_score_of};
use super::study::{Study, Words};
use super::{
    balance, crops, direction, exposures, glare, hands, hero, lean, light, space, spacing, triangle,
};
use crate::layout::{Id, Role};
use crate::scene::effective_role;

/// What may matter more than the rest.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Matter {
    /// That edges show and keep apart.
    Edges,
    /// What crops keep, and their copy space.
    Crops,
    /// Hands and their exposures.
    Hands,
    /// Where the weight lies, the three dominants and the hero.
    Weight,
    /// Light, what mirrors it and what leans.
    Light,
}

impl Matter {
    /// All of them.
    pub const ALL: [Self; 5] = [
        Self::Edges,
        Self::Crops,
        Self::Hands,
        Self::Weight,
        Self::Light,
    ];
    /// Their names, in the same order.
    pub const NAMES: [&str; 5] = ["edges", "crops", "hands", "weight", "light"];

    /// Those of these names.
    #[must_use]
    pub fn named(names: &[String]) -> Vec<Self> {
        let all = Self::NAMES.iter().zip(Self::ALL);
        let named = all.filter(|(name, _)| names.iter().any(|n| n == *name));
        named.map(|(_, matter)| matter).collect()
    }
}

/// How findings are weighed.
#[derive(Clone, Debug, Default)]
pub struct Weighing {
    /// What counts threefold.
    pub most: Vec<Matter>,
    /// The finding, by its key, that is to be cured before all others.
    pub cure: Option<String>,
}

/// One finding, weighed.
#[derive(Clone, Debug, PartialEq)]
pub struct Weighed {
    /// What it is about, the chief one first.
    pub about: Vec<Id>,
    /// What it costs.
    pub cost: f64,
}

/// What a layout costs.
#[derive(Clone, Debug, PartialEq)]
pub struct Price {
    /// In all.
    pub total: f64,
    /// The part that light has in it.
    pub light: f64,
    /// What the findings cost, each.
    pub findings: Vec<Weighed>,
}

/// What matters most counts so many times.
const MOST: f64 = 3.0;
/// What is to be cured counts so many times.
const CURED: f64 = 25.0;
/// A finding by its rank: cannot be delivered, spoils the chief things, costs
/// hours of retouching.
const BY_RANK: [f64; 3] = [60.0, 20.0, 8.0];
/// What cannot work counts so many times what asks for another look.
const WONT_WORK: f64 = 1.5;
/// Half of what a finding may cost more as its figure grows is reached at so
/// many times the drift within which its figure counts as the same.
const HALF_WORSE: f64 = 20.0;
/// What a point missing to 100 costs: Separation, Balance, Triangle.
const BY_POINT: [f64; 3] = [0.25, 0.12, 0.08];
/// What an outline costs that is lost altogether: of the hero, a main dish, a
/// hand or anything else.
const LOST: [f64; 3] = [16.0, 8.0, 2.0];

impl Weighing {
    fn times(&self, matter: Matter) -> f64 {
        if self.most.contains(&matter) {
            MOST
        } else {
            1.0
        }
    }

    fn of(&self, finding: &Finding, matter: Matter) -> Option<Weighed> {
        if !finding.is_pressing() {
            return None;
        }
        let base = BY_RANK[usize::from(finding.rank.clamp(1, 3)) - 1];
        let drifts = finding.figure.max(0.0) / finding.rule.same;
        let grown = drifts / (drifts + HALF_WORSE);
        let worse = if finding.rule.falls {
            1.0 - grown
        } else {
            grown
        };
        let wont = match finding.state {
            State::WontWork => WONT_WORK,
            _ => 1.0,
        };
        let cured = match &self.cure {
            Some(key) if *key == finding.key => CURED,
            _ => 1.0,
        };
        Some(Weighed {
            about: finding.about.clone(),
            cost: base * wont * cured * self.times(matter) * (0.75 + 0.5 * worse),
        })
    }
}

/// Prices a layout. What light costs is taken to be `light`, or read where that
/// is absent.
#[must_use]
pub fn price(study: &Study<'_>, weighing: &Weighing, light_costs: Option<f64>) -> Price {
    study.say_only(Words::None);
    // Not read here, but handed on to where all is.
    study.lit();
    let mut findings = Vec::new();
    let mut weigh = |found: Vec<Finding>, matter| {
        findings.extend(found.iter().filter_map(|f| weighing.of(f, matter)));
    };
    weigh(crops::read(study, false), Matter::Crops);
    weigh(lean::read(study, false), Matter::Light);
    weigh(spacing::read(study, false), Matter::Edges);
    weigh(hero::read(study), Matter::Weight);
    if !study.layout().hands.is_empty() {
        weigh(hands::read(study, false), Matter::Hands);
        weigh(exposures::placed(study), Matter::Hands);
    }
    weigh(glare::read(study.viewed(), false), Matter::Light);
    weigh(space::read(study, false), Matter::Crops);
    weigh(direction::into_copy(study, false), Matter::Crops);
    let light = light_costs.unwrap_or_else(|| {
        let found = light::read(study.viewed(), false);
        let costs = found.iter().filter_map(|f| weighing.of(f, Matter::Light));
        costs.map(|w| w.cost).sum()
    });
    let total = findings.iter().map(|w| w.cost).sum::<f64>()
        + light
        + lost(study, &mut findings) * weighing.times(Matter::Edges)
        + missing(study, weighing);
    study.say_only(Words::All);
    Price {
        total,
        light,
        findings,
    }
}

/// What lost outlines cost; they are findings too of which a search may think.
fn lost(study: &Study<'_>, findings: &mut Vec<Weighed>) -> f64 {
    let mut all = 0.0;
    for walk in study.walks_by_number().iter() {
        if walk.lost <= 0.0 || !is_pressed(study, walk) {
            continue;
        }
        let owner = study.scene().pieces[walk.piece].owner;
        let role = study.item(owner).map(|i| effective_role(study.layout(), i));
        let cost = walk.lost
            * match role {
                Some(Role::Hero) => LOST[0],
                Some(Role::Support) => LOST[1],
                _ => LOST[2],
            };
        all += cost;
        findings.push(Weighed {
            about: vec![owner],
            cost,
        });
    }
    all
}

/// What is missing of the scores to 100.
fn missing(study: &Study<'_>, weighing: &Weighing) -> f64 {
    let study = study.viewed();
    if !study.has_three_dishes() {
        return 0.0;
    }
    let short = |score: Option<f64>, point: f64| score.map_or(0.0, |s| (100.0 - s) * point);
    let [edges, balanced, three] = BY_POINT;
    short(separation_score_of(study), edges) * weighing.times(Matter::Edges)
        + (short(balance::score(study), balanced) + short(triangle::score(study), three))
            * weighing.times(Matter::Weight)
}
