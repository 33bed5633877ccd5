//! What the photographer said: plain data, versioned, validated on entry.
//!
//! A layout holds quantised values only (whole millimetres, turns in half
//! degrees, 8-bit sRGB), so that a file, a link and the memory of two phones
//! agree to the bit. [`open`] reads a file and reports all its problems at
//! once; [`Layout::to_json`] writes the canonical form.
mod alone;
mod camera;
mod check;
mod clean;
mod crop;
mod dates;
mod day;
mod exposure;
mod head;
mod item;
mod light;
mod limits;
mod linen;
mod open;
mod people;
mod problem;
mod read;
mod remark;
mod rig;
#[cfg(feature = "schema")]
mod schema;
#[cfg(feature = "schema")]
mod schema_answers;
#[cfg(feature = "schema")]
mod schema_people;
mod seat;
mod size;
mod stock;
mod strict;
mod table;
mod text;
mod value;

pub(crate) use alone::{
    Read, parse_json, read_camera, read_card, read_crop, read_dates, read_exposure, read_floor,
    read_frame, read_group, read_hand, read_head, read_intended, read_item, read_light, read_linen,
    read_person, read_rig, read_seat, read_table,
};
pub use camera::{Camera, Format};
pub use check::references;
pub use clean::clean_text;
pub use crop::{CopyArea, CopySpace, Crop, CropShape};
pub use dates::{Dates, Hemisphere, Medium, STEPS, Season, StepDays};
pub use day::Day;
pub use exposure::{As, Exposure, ExposureKind, State};
pub use head::{Accepted, Group, Head, Look, Revision, Units};
pub use item::{Face, Finish, Item, Origin, Part, Parts, Role, Tone};
pub use light::{Card, CardKind, Light, LightShape};
pub use limits::*;
pub use linen::{Linen, LinenKind, LinenState};
pub(crate) use open::read_tree;
pub use open::{FORMAT, Layout, VERSION, open};
pub use people::{Action, Hand, Palm, Person, Side, Sleeve, SleeveLength};
pub use problem::{Problem, ProblemKind};
pub use remark::{Answered, Remark, Verdict};
pub use rig::{Bag, Counterweight, Hung, Rig, RigKind};
#[cfg(feature = "schema")]
pub use schema::schema;
pub use seat::Seat;
pub use size::Size;
pub use stock::{Source, Stock};
pub use table::{Floor, Frame, Surface, Table, TableShape};
pub(crate) use text::line;
pub use text::to_line;
pub use value::{Extra, Id, LayoutId, Point, Ratio, Srgb, Turn};
