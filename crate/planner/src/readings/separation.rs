//! Separation: does each part stand out from what lies just outside it?
//!
//! The visible outline of every part is walked and compared with the colour
//! just outside (HyAB; Abasi et al. 2020, doi:10.1002/col.22451), before light.
//! Where both sides are darker than L* 40 tone alone counts. The bands are our
//! choice, so no finding here goes beyond `look again`.
//!
//! The score S3 of a part is the length-weighted mean over its pieces of
//! outline of 100·min(1, difference ÷ 40). That is stricter than capping the
//! mean of the whole outline, which lets a bright side pay for what is lost on
//! the other: an outline is not closed by being brighter elsewhere. Our choice.
use super::study::Study;
use super::walked::PartWalk;
use crate::layout::{Id, Look, Role};
use crate::measures::overall_separation;
use crate::scene::{PartKind, effective_role};

/// Whether the look presses this part: everything in a normal look, hero, main
/// dishes and hands where the dark or the pale ground is meant.
pub(super) fn is_pressed(study: &Study<'_>, walk: &PartWalk) -> bool {
    let piece = &study.scene().pieces[walk.piece];
    match piece.part {
        PartKind::Table | PartKind::Well => false,
        PartKind::Hand | PartKind::Sleeve => true,
        PartKind::Linen => study.layout().head.look == Look::Normal,
        PartKind::Rim | PartKind::Food => {
            let role = study
                .item(piece.owner)
                .map(|i| effective_role(study.layout(), i));
            study.layout().head.look == Look::Normal
                || matches!(role, Some(Role::Hero | Role::Support))
        }
    }
}

/// The separation score, 0 to 100: mean of the mean and the worst over what the
/// look presses. `None` when nothing is pressed.
#[must_use]
pub fn separation_score_of(study: &Study<'_>) -> Option<f64> {
    let pressed = study.walks_by_number();
    let pressed = pressed.iter().filter(|w| is_pressed(study, w));
    let scores: Vec<f64> = pressed.map(|w| w.score).collect();
    overall_separation(&scores)
}

/// Lost share of these owners' parts, by outline length; 0 when none of it is
/// seen.
pub(super) fn lost_share(study: &Study<'_>, parts: &[(Id, PartKind)]) -> f64 {
    let mut lost = 0.0;
    let mut length = 0.0;
    for walk in study.walks_by_number() {
        let piece = &study.scene().pieces[walk.piece];
        if parts.contains(&(piece.owner, piece.part)) {
            lost += walk.lost * walk.length;
            length += walk.length;
        }
    }
    if length > 0.0 { lost / length } else { 0.0 }
}
