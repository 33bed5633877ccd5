//! Published and derived measures of composition: pure formulas on points,
//! areas and masses, without a layout.
//!
//! Places are in the picture's own axes, from its top-left corner, x right and
//! y down; `size` is the picture's width and height in the same unit. Where a
//! measure has no meaning (nothing to weigh, no picture, numbers that are not
//! finite) it is `None`, never NaN and never a perfect score.
mod balance;
mod groups;
mod mass;
mod separation_score;
mod spacing;
mod spread;
mod triangle;

pub use balance::{
    Offset, balance_score, balance_score_of, dcm, object_balance, offset, score_band,
};
pub use groups::{GROUP_CUT, Link, groups, spanning_links};
pub use mass::{CHROMA_WEIGHTS, CONTRAST_FLOOR, PointMass, Weighed, centroid, contrast};
pub use separation_score::{MIN_RUN, overall_separation, separation_score};
pub use spacing::{
    EQUAL_GAPS, KISSING_OVERLAP, NEAR_TANGENT, is_kissing, is_near_tangent, spacing_score,
};
pub use spread::{Spread, SpreadMass, homogeneity, spread};
pub use triangle::{
    CLEAR_DOMINANCE, FULL_AREA, FULL_QUALITY, Triangle, dominance, triangle, triangle_score,
};
