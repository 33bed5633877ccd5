//! Where the stand and the photographer are put down first.
use glam::DVec2;

use super::{Act, Refused};
use crate::layout::{Layout, Point, TableShape};
use crate::words::say;

/// How far from the table's edge the mast is put down, mm: a leg fits under
/// the table, the hub beside it. Our choice.
const BESIDE: f64 = 250.0;
/// How far from the table's edge the photographer stands, mm. Our choice.
const STANDS: f64 = 600.0;

/// Puts the mast down beside the table, at the side nearest to the lens.
///
/// # Errors
/// When something locked would change.
pub fn place_stand(layout: &Layout) -> Result<Act, Refused> {
    let mut after = layout.clone();
    let lens = layout.frame.at.vec();
    let [mast, ..] = sides(layout, BESIDE, lens);
    after.rig.at = Some(Point::nearest(mast));
    Act::between(say("done-stand", &[]), layout, &after)
}

/// Puts the photographer down beside the table, where the stand is not.
///
/// # Errors
/// When something locked would change.
pub fn place_photographer(layout: &Layout) -> Result<Act, Refused> {
    let mut after = layout.clone();
    let lens = layout.frame.at.vec();
    let [near, next, ..] = sides(layout, STANDS, lens);
    let taken = layout.rig.at.map(Point::vec);
    let is_taken = taken.is_some_and(|at| at.distance(near) < at.distance(next));
    let place = if is_taken { next } else { near };
    after.rig.photographer = Some(Point::nearest(place));
    Act::between(say("done-photographer", &[]), layout, &after)
}

/// Where a photographer may stand beside the table, the place nearest to the
/// lens first.
#[must_use]
pub fn places_beside(layout: &Layout) -> [DVec2; 4] {
    sides(layout, STANDS, layout.frame.at.vec())
}

/// The places so far past the table's edge level with `lens`, the nearest
/// first; below before above, left before right.
fn sides(layout: &Layout, past: f64, lens: DVec2) -> [DVec2; 4] {
    let (wide, deep) = (f64::from(layout.table.width), f64::from(layout.table.depth));
    let ways = [DVec2::Y, DVec2::NEG_X, DVec2::NEG_Y, DVec2::X];
    let place = |way: DVec2| match layout.table.shape {
        TableShape::Rect => {
            let far = DVec2::new(wide, deep) * 0.5;
            let out = far + way * (far + past);
            // Level with the lens along that edge.
            lens * (DVec2::ONE - way.abs()) + out * way.abs()
        }
        TableShape::Round => DVec2::splat(wide * 0.5) + way * (wide * 0.5 + past),
    };
    let mut found = ways.map(place);
    crate::order::sort(&mut found, |a, b| {
        lens.distance(*a).total_cmp(&lens.distance(*b))
    });
    found
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::layout::LayoutId;
    use crate::rig::Stand;
    use crate::shape::{CHORD_ERROR, contains, table_outline};

    fn done(layout: &Layout, act: &Act) -> Layout {
        let mut after = layout.clone();
        act.edit.apply_checked(&mut after).expect("fits");
        after
    }

    #[test]
    fn the_stand_is_put_beside_the_table_at_its_nearest_side() {
        for shape in [TableShape::Rect, TableShape::Round] {
            let mut layout = Layout::empty(LayoutId(1));
            layout.table.shape = shape;
            let act = place_stand(&layout).expect("free");
            let with = done(&layout, &act);
            let mast = with.rig.at.expect("told").vec();
            let table = table_outline(&layout.table, CHORD_ERROR);
            assert!(!contains(&table, mast), "{shape:?}: {mast}");
            assert!(Stand::of(&with).is_some(), "it can be reckoned");
        }
    }

    #[test]
    fn the_photographer_does_not_stand_where_the_stand_is() {
        let layout = Layout::empty(LayoutId(1));
        let alone = done(&layout, &place_photographer(&layout).expect("free"));
        let first = alone.rig.photographer.expect("told");
        let stood = done(&layout, &place_stand(&layout).expect("free"));
        let both = done(&stood, &place_photographer(&stood).expect("free"));
        assert_ne!(both.rig.photographer, Some(first), "another side");
    }
}
