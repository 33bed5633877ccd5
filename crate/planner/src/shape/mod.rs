//! Plane geometry in millimetres: polygons, regions with holes, distances.
//!
//! A polygon is a `Vec<DVec2>` without a repeated last point. A positive
//! shoelace area ([`signed_area`]) means that the inside lies to the left of
//! every edge in a y-up drawing, hence to the right on the y-down table; all
//! polygons made here are positive, and a [`Region`] keeps its holes negative.
mod boolean;
mod bounds;
mod convex;
mod error;
mod flatten;
mod gap;
mod homography;
mod hull;
mod outline;
mod overlap;
mod polygon;
mod region;
mod traced;
mod triangulate;
mod vacant;
mod visible;
mod walk;

pub use boolean::{
    CALL_VERTEX_LIMIT, COORDINATE_LIMIT, POLYGON_VERTEX_LIMIT, SLIVER_AREA, difference,
    intersection, union,
};
pub use bounds::Bounds;
pub use convex::{convex_sum, is_convex};
pub use error::ShapeError;
pub use flatten::{CHORD_ERROR, disc, oval, placed, rect, rotation};
pub use gap::{Gap, gap, gap_within, meeting, on_side, to_edge};
pub use homography::{Homography, MAX_MARKS, MarksFault};
pub use hull::hull;
pub use outline::{frame_outline, outline, table_outline, well};
pub use overlap::{clearing_move, thinned};
pub use polygon::{area, area_on_side, centroid, contains, perimeter, signed_area};
pub use region::Region;
pub use traced::{TRACED_SIDES, TraceFault, is_simple, scale_of, scaled, stroke, traced};
pub use triangulate::triangulate;
pub use vacant::{largest_circle, largest_rectangle};
pub use visible::{seen_under, visible};
pub use walk::{Step, walk};
