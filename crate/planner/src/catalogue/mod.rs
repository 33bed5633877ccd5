//! What can be put on a table: dishes, food, surfaces and linens, with the
//! sizes and colours they start from.
//!
//! Every value here is a starting point the user may change, and says how
//! well it is founded. Entries never change once layouts refer to them; a
//! correction is a new id.
mod allergens;
mod cloth;
mod entry;
mod foods;
mod groups;
mod holding;
mod make;
mod number;
#[rustfmt::skip]
mod profile;
mod props;
mod search;
mod seasons;
mod surfaces;

pub use allergens::{allergens, allergens_in};
pub use cloth::{LinenEntry, linen, linens};
pub use entry::{Entry, Evidence, Kind, SOURCES, source};
pub use foods::{better_face, foods};
pub use groups::{Group, group_of_id, groups};
pub use holding::{CHILLED, DANGER_ZONE, HOT, Hold, TIME_ALONE, holds};
pub use make::{
    UNSAID, is_strewn, item_from, kind_of, linen_from, parts_of, shown_parts, surface_from,
};
pub use number::is_several;
pub use profile::{Profile, plain_profile, profile};
pub use props::props;
pub use search::{prop, search};
pub use seasons::{in_season, on_the_day, season_of};
pub use surfaces::{Grain, SurfaceEntry, surface, surfaces};
