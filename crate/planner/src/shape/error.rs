//! What shapes are refused before anything is made of them.

use thiserror::Error;

/// Why a polygon operation was refused before it was tried.
///
/// Polygon libraries panic or misbehave on such input, and no panic may cross
/// into the page, so everything is checked on the way in.
#[derive(Clone, Copy, Debug, PartialEq, Error)]
pub enum ShapeError {
    /// A coordinate is NaN or infinite.
    #[error("a coordinate is not a finite number")]
    NotFinite,
    /// A coordinate is too far from the origin, in mm.
    #[error("coordinate {found} mm is beyond {limit} mm")]
    TooFar {
        /// The coordinate, mm.
        found: f64,
        /// The largest allowed, mm.
        limit: f64,
    },
    /// A polygon, or all polygons of one call together, have too many points.
    #[error("{found} points are more than {limit}")]
    TooManyPoints {
        /// How many came.
        found: usize,
        /// How many are allowed.
        limit: usize,
    },
}
