//! Sentences of the shoot-day steps.

/// Sentences by id.
#[rustfmt::skip]
pub(super) const SENTENCES: &[(&str, &str)] = &[
    ("step-ready", "Make the set ready"),
    ("step-change", "Before {exposure}"),
    ("step-shoot", "Shoot {exposure}"),
    ("step-review", "Look through everything before you strike"),
    ("step-strike", "Strike"),
    ("ready-laid", "The table is laid as the set sheet says, stand-ins in their places."),
    ("ready-camera", "Camera level and straight down; focus and zoom locked; everything on the arm tied on."),
    ("ready-settings", "Exposure, white balance and flash set by hand, the same for every exposure."),
    ("ready-marks", "Two small marks inside the frame and outside the widest crop, to show a bump."),
    ("ready-taped", "Feet of stand, light and table marked with tape; bag hung; cables out of the way."),
    ("ready-reach", "Every place at the table reached once without touching the set."),
    ("ready-release", "Release or timer tried; one frame looked at on the tether."),
    ("serve-swap-hold", "Take out {stand_in}; {thing} goes into its very place, {place}; looks right for {minutes} min."),
    ("serve-swap", "Take out {stand_in}; {thing} goes into its very place, {place}."),
    ("serve-hold", "Put on {thing}, {place}; looks right for {minutes} min."),
    ("review-exposure", "{exposure}: sharp, nothing nudged, one kept."),
    ("review-crop", "{crop}: looked at in its own shape."),
    ("review-clean", "A clean exposure of the last state of the food is there."),
    ("review-copied", "Every file is on two devices."),
    ("strike-heat", "Candles, hot plates and lights out before anything is reached over."),
    ("strike-props", "Props counted back against the pull list."),
    ("strike-food", "Food that stood on the set kept apart from food that is eaten."),
];
