use clipper2_rust::{FillRule, Path64, Paths64, Point64};
use clipper2_rust::{difference_64, intersect_64, union_subjects_64};
use glam::DVec2;

use super::{Region, ShapeError, area, signed_area};

/// Farthest a coordinate may be from the origin, mm: 100 m, far more than any
/// table, and still exact in the whole units used here.
pub const COORDINATE_LIMIT: f64 = 100_000.0;
/// Most points of one polygon.
pub const POLYGON_VERTEX_LIMIT: usize = 4096;
/// Most points of all polygons of one call.
pub const CALL_VERTEX_LIMIT: usize = 131_072;
/// Rings smaller than this many mm² are dust left by rounding and are dropped.
pub const SLIVER_AREA: f64 = 1e-4;

/// Whole units in a millimetre. A power of two, so that going there and back
/// is exact for every stored millimetre.
const UNITS: f64 = 65_536.0;

/// The area covered by any of the regions.
///
/// # Errors
/// When a coordinate is not finite or too far away, or there are too many
/// points.
pub fn union(regions: &[&Region]) -> Result<Region, ShapeError> {
    let paths = to_paths(regions)?;
    Ok(from_paths(&union_subjects_64(&paths, FillRule::NonZero)))
}

/// The area covered by both.
///
/// # Errors
/// As [`union`].
pub fn intersection(a: &Region, b: &Region) -> Result<Region, ShapeError> {
    let (paths_a, paths_b) = (to_paths(&[a])?, to_paths(&[b])?);
    Ok(from_paths(&intersect_64(
        &paths_a,
        &paths_b,
        FillRule::NonZero,
    )))
}

/// The area of `region` not covered by any of `holes`.
///
/// # Errors
/// As [`union`].
pub fn difference(region: &Region, holes: &[&Region]) -> Result<Region, ShapeError> {
    let (subject, clips) = (to_paths(&[region])?, to_paths(holes)?);
    Ok(from_paths(&difference_64(
        &subject,
        &clips,
        FillRule::NonZero,
    )))
}

/// What a polygon goes round, its direction ignored.
pub(super) fn enclosed(polygon: &[DVec2]) -> Result<Region, ShapeError> {
    check(&[polygon])?;
    let paths = vec![to_path(polygon)];
    Ok(from_paths(&union_subjects_64(&paths, FillRule::NonZero)))
}

/// Refuses what the library must not see.
pub(super) fn check(polygons: &[&[DVec2]]) -> Result<(), ShapeError> {
    let mut total = 0;
    for polygon in polygons {
        total += polygon.len();
        if polygon.len() > POLYGON_VERTEX_LIMIT {
            return Err(ShapeError::TooManyPoints {
                found: polygon.len(),
                limit: POLYGON_VERTEX_LIMIT,
            });
        }
        for p in *polygon {
            if !p.is_finite() {
                return Err(ShapeError::NotFinite);
            }
            let found = p.abs().max_element();
            if found > COORDINATE_LIMIT {
                return Err(ShapeError::TooFar {
                    found,
                    limit: COORDINATE_LIMIT,
                });
            }
        }
    }
    if total > CALL_VERTEX_LIMIT {
        return Err(ShapeError::TooManyPoints {
            found: total,
            limit: CALL_VERTEX_LIMIT,
        });
    }
    Ok(())
}

fn to_paths(regions: &[&Region]) -> Result<Paths64, ShapeError> {
    let rings: Vec<&[DVec2]> = regions
        .iter()
        .flat_map(|r| r.rings())
        .map(Vec::as_slice)
        .collect();
    // A ring of a region may be longer than one given polygon: it is what many
    // polygons left behind. Only the total counts then.
    let total = rings.iter().map(|r| r.len()).sum();
    if total > CALL_VERTEX_LIMIT {
        return Err(ShapeError::TooManyPoints {
            found: total,
            limit: CALL_VERTEX_LIMIT,
        });
    }
    for ring in &rings {
        for part in ring.chunks(POLYGON_VERTEX_LIMIT) {
            check(&[part])?;
        }
    }
    Ok(rings.into_iter().map(to_path).collect())
}

fn to_path(ring: &[DVec2]) -> Path64 {
    let unit = |c: f64| (c * UNITS).round() as i64;
    let mut path: Path64 = ring
        .iter()
        .map(|p| Point64::new(unit(p.x), unit(p.y)))
        .collect();
    path.dedup();
    path
}

fn from_paths(paths: &Paths64) -> Region {
    let point = |p: &Point64| DVec2::new(p.x as f64 / UNITS, p.y as f64 / UNITS);
    let mut rings: Vec<Vec<DVec2>> = paths
        .iter()
        .map(|path| path.iter().map(point).collect::<Vec<_>>())
        .filter(|ring| area(ring) >= SLIVER_AREA)
        .collect();
    // A hole cannot outlive the sliver around it.
    if rings.iter().all(|ring| signed_area(ring) < 0.0) {
        rings.clear();
    }
    Region::from_rings(rings)
}

#[cfg(test)]
mod tests;
