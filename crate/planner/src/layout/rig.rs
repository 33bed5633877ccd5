//! What holds the camera, and the room it stands in.
//!
//! The usual sizes and masses are those of a 40 inch lamp stand with a grip arm
//! and a full-frame camera (retailers' pages and handling guides; foot circle and the mass
//! of the arm from memory). All are the user's to change.
use serde::{Deserialize, Serialize};

use super::limits::{MAX_PLACE, MAX_SIZE};
use super::read::Fields;
use super::value::{Extra, Point, Turn};

/// Heaviest part of a rig, grams.
const MAX_MASS: i32 = 100_000;

/// What holds the camera.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum RigKind {
    /// An arm out from one stand.
    #[default]
    Arm,
    /// A bar between two stands.
    TwoStands,
    /// A tripod whose column lies level.
    Tripod,
    /// A mount on the ceiling.
    Ceiling,
}

/// Where a bag hangs.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Hung {
    /// At the mast, where the legs meet.
    #[default]
    Hub,
    /// On the leg under the load.
    LeadLeg,
    /// Half on each of the other two legs.
    RearLegs,
}

/// A mass on the arm behind the mast.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Counterweight {
    /// Grams.
    pub mass: i32,
    /// How far behind the mast, mm.
    pub behind: i32,
}

/// A bag that holds the stand down.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Bag {
    /// Grams.
    pub mass: i32,
    /// Where it hangs.
    pub hung: Hung,
}

/// What holds the camera, and the room it stands in.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Rig {
    /// Ceiling above the floor, mm.
    pub ceiling: i32,
    /// What holds the camera.
    pub kind: RigKind,
    /// Where the mast stands; nothing is worked out about tipping before that
    /// is told.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub at: Option<Point>,
    /// Where the lead leg points; without it, under the load.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub leg_bearing: Option<Turn>,
    /// From the mast to the end of a leg, mm.
    pub foot_radius: i32,
    /// How high the mast reaches above the floor, mm.
    pub mast_height: i32,
    /// Stand without arm, grams.
    pub stand_mass: i32,
    /// The arm from end to end, mm.
    pub arm_length: i32,
    /// The arm, grams.
    pub arm_mass: i32,
    /// Camera, lens and head, grams.
    pub load_mass: i32,
    /// A mass on the arm behind the mast.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub counterweight: Option<Counterweight>,
    /// A bag on the stand.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bag: Option<Bag>,
    /// Where the photographer stands.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub photographer: Option<Point>,
    /// Unknown fields.
    #[serde(flatten)]
    pub extra: Extra,
}

impl Rig {
    pub(super) fn read(f: &mut Fields<'_>) -> Self {
        let usual = Self::default();
        let mut mass = |key: &str, otherwise| f.int(key, 0..=MAX_MASS).unwrap_or(otherwise);
        let stand_mass = mass("stand_mass", usual.stand_mass);
        let arm_mass = mass("arm_mass", usual.arm_mass);
        let load_mass = mass("load_mass", usual.load_mass);
        let foot = f.int("foot_radius", 50..=MAX_SIZE);
        let mast = f.int("mast_height", 100..=MAX_PLACE);
        let arm = f.int("arm_length", 0..=MAX_SIZE);
        Self {
            ceiling: f.int("ceiling", 1_000..=MAX_PLACE).unwrap_or(usual.ceiling),
            kind: f.choice("kind").unwrap_or_default(),
            at: f.point("at"),
            leg_bearing: f.turn("leg_bearing"),
            foot_radius: foot.unwrap_or(usual.foot_radius),
            mast_height: mast.unwrap_or(usual.mast_height),
            stand_mass,
            arm_length: arm.unwrap_or(usual.arm_length),
            arm_mass,
            load_mass,
            counterweight: f.object("counterweight", |c| Counterweight {
                mass: c.int("mass", 0..=MAX_MASS).unwrap_or(0),
                behind: c.int("behind", 0..=MAX_SIZE).unwrap_or(300),
            }),
            bag: f.object("bag", |b| Bag {
                mass: b.int("mass", 0..=MAX_MASS).unwrap_or(0),
                hung: b.choice("hung").unwrap_or_default(),
            }),
            photographer: f.point("photographer"),
            extra: f.extra(),
        }
    }
}

impl Default for Rig {
    fn default() -> Self {
        Self {
            ceiling: 2_600,
            kind: RigKind::Arm,
            at: None,
            leg_bearing: None,
            foot_radius: 480,
            mast_height: 3_000,
            stand_mass: 6_000,
            arm_length: 1_016,
            arm_mass: 1_500,
            load_mass: 2_000,
            counterweight: None,
            bag: None,
            photographer: None,
            extra: Extra::new(),
        }
    }
}
