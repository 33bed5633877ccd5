//! The limits of a layout, named so that a message can quote them.

/// Longest file read, in bytes.
pub const MAX_FILE_BYTES: usize = 1_000_000;
/// Most items on one table.
pub const MAX_ITEMS: usize = 800;
/// Most linens on one table.
pub const MAX_LINENS: usize = 60;
/// Most people at one table.
pub const MAX_PEOPLE: usize = 26;
/// Most hands in one layout.
pub const MAX_HANDS: usize = 64;
/// The shortest person, mm.
pub const MIN_STATURE: i32 = 1_400;
/// The tallest person, mm.
pub const MAX_STATURE: i32 = 2_100;
/// Longest an exposure may take and food may hold, minutes: a day.
pub const MAX_MINUTES: i32 = 1_440;
/// Most places at one table.
pub const MAX_SEATS: usize = 60;
/// Most exposures in one layout.
pub const MAX_EXPOSURES: usize = 60;
/// Most crops in one layout.
pub const MAX_CROPS: usize = 20;
/// Most groups in one layout.
pub const MAX_GROUPS: usize = 200;
/// Most accepted findings in one layout.
pub const MAX_ACCEPTED: usize = 200;
/// Most cards about the table.
pub const MAX_CARDS: usize = 12;
/// Most of one sort in reserve.
pub const MAX_SPARE: i32 = 999;
/// Longest a step of the plan takes, days: two years.
pub const MAX_STEP_DAYS: i32 = 730;
/// Most foods of which the months are told.
pub const MAX_SEASONS: usize = 200;
/// Most focal lengths at hand.
pub const MAX_LENSES: usize = 12;
/// Most pixels along a side of the camera's picture.
pub const MAX_PIXELS: i32 = 20_000;
/// Longest name, in characters.
pub const MAX_NAME: usize = 80;
/// Longest note, in characters.
pub const MAX_NOTE: usize = 2_000;
/// Most remarks on one layout.
pub const MAX_REMARKS: usize = 200;
/// Most remarks in one answer.
pub const MAX_SENT: usize = 60;
/// Longest remark, in characters.
pub const MAX_REMARK: usize = 500;
/// Longest word on a tag, in characters.
pub const MAX_TAG: usize = 8;
/// Most unknown fields kept in one file, in bytes of JSON.
pub const MAX_EXTRA_BYTES: usize = 64_000;
/// Farthest a thing may stand from the table's corner, in mm.
pub const MAX_PLACE: i32 = 20_000;
/// Widest thing or table, in mm.
pub const MAX_SIZE: i32 = 10_000;
/// Tallest thing, in mm.
pub const MAX_HEIGHT: i32 = 2_000;
/// Most points of a traced outline.
pub const MAX_OUTLINE: usize = 200;
/// Largest object id.
pub const MAX_ID: u16 = 60_000;
/// Most problems reported for one file; the rest are counted in the last.
pub const MAX_PROBLEMS: usize = 100;
