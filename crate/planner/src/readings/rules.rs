//! The one table of thresholds: where each reading changes its mind, what that
//! rests on and which test holds it to either side.
//!
//! Thresholds that say "our choice" have no published figure; those marked
//! common practice have no source at all.
use super::finding::Grade;
use crate::colour::{
    CLEAR_FROM, CONTRAST_LARGE, CONTRAST_TEXT, MERGED_WITHIN, NEUTRAL_BELOW, STRONG_FROM,
};
use crate::measures::{CLEAR_DOMINANCE, EQUAL_GAPS, GROUP_CUT, KISSING_OVERLAP, NEAR_TANGENT};

/// What a threshold is measured in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unit {
    /// Millimetres on the table.
    Mm,
    /// A share of 1.
    Share,
    /// A plain number.
    Plain,
}

/// One row of the table.
#[derive(Debug, PartialEq)]
pub struct Rule {
    /// What it judges.
    pub name: &'static str,
    /// The reading it belongs to.
    pub reading: &'static str,
    /// Where it is first said, and where it goes as far as it may; infinite
    /// where it goes no farther.
    pub edges: [f64; 2],
    /// What the edges are measured in.
    pub unit: Unit,
    /// Whether a smaller figure is the worse one.
    pub falls: bool,
    /// What it rests on.
    pub grade: Grade,
    /// Whether it is a matter of taste, silent until asked.
    pub taste: bool,
    /// How far the figure may drift before an accepted finding speaks again.
    pub same: f64,
    /// The sentence on measure, formula and source.
    pub working: &'static str,
    /// The test on either side of its edges.
    pub test: &'static str,
}

use Grade::{OurChoice, Physics, PublishedMeasure, TradePractice};
use Unit::{Mm, Plain, Share};

const NEVER: f64 = f64::INFINITY;

macro_rules! rules {
    ($($(#[$doc:meta])* $id:ident: $name:literal, $reading:literal, $edges:expr, $unit:ident,
        $falls:literal, $grade:ident, $taste:literal, $same:literal, $working:literal, $test:literal;)*) => {
        $($(#[$doc])* pub(super) static $id: Rule = Rule {
            name: $name, reading: $reading, edges: $edges, unit: $unit, falls: $falls,
            grade: $grade, taste: $taste, same: $same, working: $working, test: $test,
        };)*
        /// Every rule.
        pub static RULES: &[&Rule] = &[$(&$id),*];
    };
}

rules! {
    /// Frame past the table's edge, mm.
    FIT_BOARD: "frame past the table", "fit", [1.0, NEVER], Mm, false, Physics, false, 5.0, "working-fit-board", "a_millimetre_of_floor_is_said_and_less_is_not";
    /// Spare table round the frame, share of its width: 10 to 20% is usual
    /// (common practice, no source); the figure is in mm.
    FIT_MARGIN: "table round the frame", "fit", [0.10, 0.0], Share, true, TradePractice, true, 5.0, "working-fit-margin", "margin_is_said_below_a_tenth_and_not_above";
    /// Room under the ceiling: less than lenses differ from a thin one (5% of
    /// the distance, from memory) is in doubt, none at all won't work; mm.
    FIT_CEILING: "room under the ceiling", "fit", [0.05, 0.0], Share, true, Physics, false, 20.0, "working-fit", "a_ceiling_is_in_doubt_within_a_twentieth_and_wont_work_below_nothing";
    /// Lens above the tallest thing in the frame: our choice of room for the
    /// barrel; a thing taller than the lens stands is in the way, mm.
    FIT_LENS: "lens above the tallest thing", "fit", [150.0, 0.0], Mm, true, Physics, false, 20.0, "working-fit", "a_lens_must_clear_the_tallest_thing";
    /// Outline lost against what lies outside it; under the same it is cured.
    SEPARATION: "outline lost", "separation", [0.10, NEVER], Share, false, OurChoice, false, 2.0, "working-separation", "a_tenth_of_the_outline_lost_is_said";
    /// Share of a pale outline that shadow draws, from which on it is read; the
    /// figure counts the things.
    SEPARATION_DRAWN: "drawn by shadow", "separation", [super::separation_light::DRAWN_FROM, NEVER], Share, false, OurChoice, false, 0.5, "working-drawn", "three_tenths_of_a_pale_edge_in_shadow_are_enough";
    /// Share of an outline that colour gives and light takes: told, and said of
    /// hero and main dishes.
    SEPARATION_TAKEN: "taken by light", "separation", super::separation_light::TAKEN_FROM, Share, false, OurChoice, false, 2.0, "working-taken", "three_tenths_of_an_edge_taken_by_light_are_said";
    /// HyAB difference: full from the first, lost under the second.
    SEPARATION_SCORE: "difference", "separation", [STRONG_FROM, CLEAR_FROM], Plain, true, OurChoice, true, 2.0, "working-separation-score", "an_edge_is_lost_under_twenty_and_full_from_forty";
    /// Gap that looks like a mistake, share of the picture's diagonal; the
    /// figure is what is missing to it, mm.
    SPACING_GAP: "gap", "spacing", [NEAR_TANGENT, 0.0], Share, false, OurChoice, false, 3.0, "working-spacing", "a_gap_under_a_hundredth_of_the_diagonal_is_said";
    /// Overlap too shallow to read as depth, share of the smaller short side;
    /// the figure is what is missing to it, mm.
    SPACING_KISS: "overlap", "spacing", [KISSING_OVERLAP, 0.0], Share, false, OurChoice, false, 3.0, "working-spacing", "an_overlap_under_fifteen_hundredths_is_said";
    /// Sliver a crop leaves or takes, share of the thing's side, or a gap to
    /// its line, share of its diagonal; the figure counts the things.
    SPACING_CROP: "sliver at a crop", "spacing", [KISSING_OVERLAP, NEAR_TANGENT], Share, false, OurChoice, false, 0.5, "working-spacing-crop", "slivers_and_near_lines_at_a_crop_are_said";
    /// Crop line by a joint of an arm, mm: common practice, no source, never
    /// to cut at a joint; the distance is our choice.
    SPACING_JOINT: "joint cut", "spacing", [30.0, 0.0], Mm, true, TradePractice, false, 5.0, "working-spacing-joint", "a_crop_line_by_the_wrist_is_said";
    /// Ratio of gaps that parts groups, and under which gaps read as equal.
    SPACING_GROUPS: "groups", "spacing", [GROUP_CUT, EQUAL_GAPS], Plain, false, PublishedMeasure, true, 0.5, "working-spacing-groups", "gaps_half_as_wide_again_part_groups";
    /// What a crop cuts of hero or must-show things, mm: a must won't work.
    CROP_CUT: "cut by a crop", "crops", [1.0, 1.0], Mm, false, Physics, false, 5.0, "working-crop", "a_millimetre_cut_is_said_and_of_a_must_wont_work";
    /// Crop past the frame, mm: it cannot be delivered.
    CROP_OUTSIDE: "crop past the frame", "crops", [1.0, 1.0], Mm, false, Physics, false, 5.0, "working-crop-outside", "a_crop_past_the_frame_wont_work";
    /// What falls into the gutter, mm.
    CROP_GUTTER: "in the gutter", "crops", [1.0, NEVER], Mm, false, Physics, false, 5.0, "working-crop-gutter", "a_millimetre_in_the_gutter_is_said";
    /// Bleed missing, mm.
    CROP_BLEED: "bleed missing", "crops", [0.5, NEVER], Mm, false, Physics, false, 3.0, "working-crop-bleed", "half_a_millimetre_of_bleed_missing_is_said";
    /// Reach into the safe margin, mm.
    CROP_SAFE: "in the safe margin", "crops", [0.5, NEVER], Mm, false, Physics, false, 3.0, "working-crop-safe", "half_a_millimetre_in_the_safe_margin_is_said";
    /// Pixels to the inch of print: publishers' pages ask for the first.
    CROP_PPI: "pixels to the inch", "crops", [300.0, 0.0], Plain, true, TradePractice, false, 5.0, "working-crop-ppi", "under_three_hundred_pixels_to_the_inch_is_said";
    /// Pixels across over those usual on screens for the ratio.
    CROP_PIXELS: "pixels on screen", "crops", [1.0, 0.0], Plain, true, TradePractice, false, 0.05, "working-crop-pixels", "fewer_pixels_than_a_screen_takes_is_said";
    /// Balance score: over 82 beats nineteen of twenty random layouts, under
    /// 50 half of them do better.
    BALANCE: "weight aside", "balance", [50.0, 82.0], Plain, true, PublishedMeasure, true, 3.0, "working-balance", "weight_is_said_to_sit_aside_under_fifty";
    /// Third mass over fourth.
    TRIANGLE: "clear three", "triangle", [CLEAR_DOMINANCE, 1.0], Plain, true, TradePractice, true, 0.05, "working-triangle", "no_clear_three_is_said_under_five_quarters";
    /// Triangle score: the lower quartile and the middle of random triangles.
    TRIANGLE_SCORE: "triangle", "triangle", [29.0, 59.0], Plain, true, TradePractice, true, 3.0, "working-triangle", "a_flat_triangle_is_said_under_the_lower_quartile";
    /// Place of the hero in visual weight.
    HERO_RANK: "hero's place", "hero", [2.0, NEVER], Plain, false, TradePractice, true, 0.5, "working-hero", "a_hero_second_in_weight_is_said";
    /// Main dishes out of the light altogether: none may be.
    LIGHT_DARK: "dishes without light", "light", [1.0, 1.0], Plain, false, Physics, false, 0.5, "working-light-dark", "a_light_under_the_table_is_said_and_one_above_is_not";
    /// Stops between the brightest and the darkest main dish.
    LIGHT_FALLS: "stops between main dishes", "light", [1.0, NEVER], Plain, false, OurChoice, false, 0.1, "working-light", "more_than_a_stop_between_main_dishes_is_said";
    /// Share of the hero's face in shadow: noted, and said.
    LIGHT_SHADOW: "hero in shadow", "light", [0.10, 0.25], Share, false, OurChoice, false, 3.0, "working-light-shadow", "a_quarter_of_the_hero_in_shadow_is_said";
    /// Stops that people take from a main dish: noted, and said.
    LIGHT_KEY: "arm in the key", "light", [1.0 / 3.0, 1.0], Plain, false, OurChoice, false, 0.1, "working-light-key", "an_arm_between_a_dish_and_the_light_is_said";
    /// Stops left before a pale thing clips: noted, and said.
    LIGHT_WHITES: "stops to clipping", "light", [0.5, 0.0], Plain, true, OurChoice, false, 0.1, "working-light-whites", "a_white_brighter_lit_than_the_hero_clips";
    /// Places of camera size beside places of true size: how many of the fewer.
    SETTINGS_SIZE: "places of two sizes", "settings", [1.0, NEVER], Plain, false, TradePractice, true, 0.5, "working-settings-size", "camera_size_beside_true_size_is_noted";
    /// From plate to plate, mm: 15 in (a page on placing dinnerware, weak).
    SETTINGS_NEAR: "from plate to plate", "settings", [381.0, 0.0], Mm, true, TradePractice, true, 10.0, "working-settings-near", "plates_under_fifteen_inches_apart_are_noted";
    /// A runner's breadth as a share of the table's; the figure is mm past it.
    SETTINGS_RUNNER: "runner's breadth", "settings", [1.0 / 3.0, NEVER], Share, false, TradePractice, true, 5.0, "working-settings-runner", "a_runner_broader_than_a_third_of_the_table_is_noted";
    /// Free share of the picture: no figure is known to please, so it is told
    /// and never judged.
    SPACE_FREE: "free share", "space", [0.0, NEVER], Share, false, OurChoice, true, 2.0, "working-space", "how_much_is_free_is_told_and_never_judged";
    /// Share of the copy space that things take: under it they are specks.
    SPACE_COPY: "copy space taken", "space", [0.01, NEVER], Share, false, OurChoice, false, 1.0, "working-space-copy", "a_hundredth_of_the_copy_space_taken_is_said";
    /// Contrast of the better of white and near-black type: ordinary type
    /// reads from the first, large type from the second.
    SPACE_TYPE: "contrast of type", "space", [CONTRAST_TEXT, CONTRAST_LARGE], Plain, true, PublishedMeasure, false, 0.2, "working-space-copy", "type_reads_from_three_when_large_and_from_four_and_a_half";
    /// How soon past its end the line of a thing leaves the picture, share of
    /// the diagonal; the figure counts the things.
    DIRECTION_OUT: "run to the edge", "direction", [0.15, NEVER], Share, false, TradePractice, true, 0.5, "working-direction", "a_handle_near_the_edge_points_out_and_one_farther_in_does_not";
    /// How near to its end the copy space begins that a tip points at, share
    /// of the crop's diagonal; the figure counts the tips.
    DIRECTION_COPY: "run to the copy space", "direction", [0.15, NEVER], Share, false, TradePractice, false, 0.5, "working-direction", "a_tip_near_the_copy_space_points_into_it_and_one_farther_off_does_not";
    /// HyAB within which tones are one: where edges merge, too. The figure is
    /// the warm share, told and never judged.
    COLOUR_PALETTE: "tones merged", "colour", [MERGED_WITHIN, NEVER], Plain, false, OurChoice, true, 2.0, "working-colour", "tones_within_ten_are_one_swatch_and_shares_are_of_the_picture";
    /// Chroma below which a colour has no family.
    COLOUR_FAMILY: "chroma of a family", "colour", [NEUTRAL_BELOW, NEVER], Plain, false, OurChoice, true, 2.0, "working-colour", "a_colour_has_a_family_from_a_chroma_of_ten";
    /// Share of the picture under which a colour is an accent.
    COLOUR_ACCENT: "area of an accent", "colour", [0.05, 0.0], Share, true, OurChoice, true, 2.0, "working-colour", "a_strong_colour_under_a_twentieth_of_the_picture_is_an_accent";
    /// Chroma from which a small colour is an accent.
    COLOUR_CHROMA: "chroma of an accent", "colour", [40.0, NEVER], Plain, false, OurChoice, true, 2.0, "working-colour", "an_accent_has_a_chroma_of_forty";
    /// L* over which a thing near the edge shines.
    COLOUR_HOT: "light at the edge", "colour", [88.0, NEVER], Plain, false, TradePractice, true, 0.5, "working-colour-edge", "white_within_three_hundredths_of_the_edge_is_said_from_eighty_eight";
    /// How near to the edge, share of the diagonal; the figure counts things.
    COLOUR_EDGE: "distance to the edge", "colour", [0.03, NEVER], Share, false, OurChoice, true, 0.5, "working-colour-edge", "white_within_three_hundredths_of_the_edge_is_said_from_eighty_eight";
    /// Share of a level surface that mirrors light, camera, arm or photographer:
    /// told from the first, said of a liquid or a main dish from the second.
    GLARE: "surface mirrored", "glare", [0.01, 0.10], Share, false, OurChoice, false, 2.0, "working-glare", "a_tenth_of_a_liquid_mirrored_is_said_and_a_hundredth_is_told";
    /// The same of a table, share of the picture.
    GLARE_TABLE: "table mirrored", "glare", [0.005, 0.02], Share, false, OurChoice, false, 2.0, "working-glare-table", "a_fiftieth_of_the_picture_mirrored_by_the_table_is_said_and_half_a_hundredth_told";
    /// Round rims that catch the light: told and never judged; the figure counts.
    GLARE_RIMS: "rims that catch the light", "glare", [1.0, NEVER], Plain, false, Physics, false, 0.5, "working-glare-rims", "rims_that_catch_the_light_are_told_and_matt_ones_are_not";
    /// Share of a main dish that something hides by leaning; note and figure
    /// of what leans most are mm.
    LEAN_HIDES: "hidden by a lean", "lean", [0.10, NEVER], Share, false, OurChoice, false, 2.0, "working-lean", "a_tenth_of_a_main_dish_hidden_by_a_lean_is_said";
    /// Share of a thing's side that a crop takes off its top: slivers under it
    /// are Spacing's; the figure is in mm.
    LEAN_CROP: "top past a crop's line", "lean", [KISSING_OVERLAP, NEVER], Share, false, OurChoice, false, 5.0, "working-lean-crop", "a_top_past_a_crop_line_is_said_and_a_sliver_is_not";
    /// How much between cloth and tallest rim is not sharp, mm.
    LEAN_FOCUS: "not in focus", "lean", [0.5, NEVER], Mm, false, Physics, false, 5.0, "working-focus", "half_a_millimetre_out_of_focus_is_said";
    /// The aperture's own disc over the blur allowed.
    LEAN_AIRY: "blur of the aperture", "lean", [1.0, NEVER], Plain, false, Physics, false, 0.1, "working-focus-airy", "an_aperture_that_blurs_more_than_is_allowed_is_said";
    /// How far fingertips stay short of their target, mm.
    HANDS_REACH: "out of reach", "hands", [1.0, 1.0], Mm, false, Physics, false, 5.0, "working-hands", "fingertips_a_millimetre_short_wont_work";
    /// How much nearer than an elbow bends a hand works, mm.
    HANDS_NEAR: "too close to the body", "hands", [1.0, NEVER], Mm, false, Physics, false, 5.0, "working-hands-near", "a_wrist_nearer_than_an_elbow_bends_is_said";
    /// Angle across the body, degrees.
    HANDS_ACROSS: "across the body", "hands", [45.0, NEVER], Plain, false, TradePractice, false, 2.0, "working-hands-across", "an_arm_half_a_right_angle_across_is_said";
    /// Angle to the edge of the picture, degrees.
    HANDS_EDGE: "arm along an edge", "hands", [20.0, 0.0], Plain, true, TradePractice, false, 2.0, "working-hands-edge", "an_arm_along_the_edge_is_said_and_a_steeper_one_is_not";
    /// Arms that cross in one exposure; the figure counts.
    HANDS_CROSS: "arms cross", "hands", [1.0, NEVER], Plain, false, TradePractice, false, 0.5, "working-hands-cross", "arms_that_cross_are_said_and_parallel_ones_are_not";
    /// How far a pair is from being its own mirror image, mm.
    HANDS_MIRROR: "mirrored pair", "hands", [20.0, 0.0], Mm, true, TradePractice, true, 5.0, "working-hands-mirror", "a_pair_within_two_centimetres_of_its_mirror_image_is_said";
    /// Gap between arms that are no pair, mm.
    HANDS_APART: "arms apart", "hands", [40.0, 0.0], Mm, true, TradePractice, false, 5.0, "working-hands-apart", "arms_within_four_centimetres_are_said";
    /// Hands of a person too many in an exposure; the figure counts.
    HANDS_TWICE: "in two places", "hands", [1.0, 1.0], Plain, false, Physics, false, 0.5, "working-hands-twice", "one_person_in_two_places_wont_work";
    /// How far the thumbs of a pair on one thing are turned from each other,
    /// degrees: at a right angle each still lies beside it.
    HANDS_THUMB: "thumb away", "hands", [90.0, NEVER], Plain, false, TradePractice, false, 2.0, "working-hands-thumb", "thumbs_turned_from_what_two_hands_hold_are_said";
    /// People who play one sitter and do not look alike; the figure counts.
    HANDS_SITTER: "one sitter by several", "hands", [2.0, NEVER], Plain, false, TradePractice, false, 0.5, "working-hands-sitter", "one_sitter_played_by_two_who_differ_is_said";
    /// Sitters one ring is seen on; the figure counts.
    HANDS_RING: "ring seen", "hands", [2.0, NEVER], Plain, false, TradePractice, false, 0.5, "working-hands-ring", "a_ring_on_two_sitters_is_said_and_on_one_is_not";
    /// States of things that are gone; the figure counts.
    EXPOSURE_GONE: "state of a gone thing", "exposures", [1.0, NEVER], Plain, false, OurChoice, false, 0.5, "working-exposure-gone", "a_state_of_a_gone_thing_is_told_and_kept";
    /// Things held and standing at once; the figure counts.
    EXPOSURE_TWICE: "held and standing", "exposures", [1.0, 1.0], Plain, false, Physics, false, 0.5, "working-exposure-twice", "what_is_held_cannot_stand_in_its_place";
    /// Things held by hands that are no pair; the figure counts.
    EXPOSURE_HELD: "held twice", "exposures", [1.0, NEVER], Plain, false, Physics, false, 0.5, "working-exposure-held", "a_thing_held_by_two_hands_that_are_no_pair_is_said";
    /// Exposures for hands without any; the figure counts.
    EXPOSURE_IDLE: "exposure without hands", "exposures", [1.0, NEVER], Plain, false, OurChoice, false, 0.5, "working-exposure-idle", "an_exposure_without_hands_is_said";
    /// States of the food without a clean exposure; the figure counts.
    EXPOSURE_CLEAN: "clean exposure", "exposures", [1.0, NEVER], Plain, false, TradePractice, false, 0.5, "working-exposure-clean", "each_state_of_the_food_wants_a_clean_exposure";
    /// What two exposures both want of the picture, cm².
    EXPOSURE_CLASH: "exposures clash", "exposures", [1.0, NEVER], Plain, false, OurChoice, false, 2.0, "working-exposure-clash", "exposures_that_want_the_same_square_centimetre_clash";
    /// What a seam costs, in centimetres over glass, rims, food and folds, weighted.
    EXPOSURE_SEAM: "seam over busy things", "exposures", [40.0, NEVER], Plain, false, OurChoice, false, 5.0, "working-exposure-seam", "a_seam_over_glass_costs_more_than_over_the_board";
    /// Kinds of exposure that cost little and might save the picture.
    EXPOSURE_INSURANCE: "exposures in case", "exposures", [1.0, NEVER], Plain, false, TradePractice, false, 0.5, "working-exposure-insurance", "what_this_table_is_worth_in_case_is_told_and_added";
    /// Exposures that are enough for the people there are; the figure counts.
    EXPOSURE_FEWEST: "fewest exposures", "exposures", [1.0, NEVER], Plain, false, TradePractice, false, 0.5, "working-exposure-fewest", "what_two_people_can_shoot_together_is_told";
    /// Exposures that stand elsewhere in a better order; the figure counts.
    EXPOSURE_ORDER: "order of shooting", "exposures", [1.0, NEVER], Plain, false, TradePractice, false, 0.5, "working-exposure-order", "an_order_that_costs_more_than_it_must_is_said";
    /// Food that is needed twice; the figure counts.
    EXPOSURE_FOOD: "food needed twice", "exposures", [1.0, NEVER], Plain, false, Physics, false, 0.5, "working-exposure-food", "food_changed_in_two_ways_is_needed_twice";
    /// Minutes food stands longer than it looks right, added up.
    TIMING_HOLD: "food past its time", "timing", [1.0, NEVER], Plain, false, TradePractice, false, 2.0, "working-timing-hold", "food_a_minute_past_its_time_is_said";
    /// Minutes one exposure takes longer than its food looks right: by the
    /// user's own word it won't work.
    TIMING_ALONE: "food outlived by its exposure", "timing", [1.0, 1.0], Plain, false, Physics, false, 2.0, "working-timing-alone", "food_that_dies_within_its_own_exposure_wont_work";
    /// Minutes food is out; past the first nobody should eat it.
    TIMING_EAT: "food out", "timing", [crate::catalogue::DANGER_ZONE as f64, NEVER], Plain, false, PublishedMeasure, false, 5.0, "working-timing-eat", "food_out_for_more_than_two_hours_is_said";
    /// When the first food must have been shot, minutes from the first
    /// exposure: told and never judged.
    TIMING_BY: "to be shot by", "timing", [0.0, NEVER], Plain, false, TradePractice, false, 2.0, "working-timing-by", "when_each_food_must_be_shot_is_told";
    /// Days before it is on sale: told and never judged.
    TIMING_LEAD: "lead time", "timing", [0.0, NEVER], Plain, false, TradePractice, false, 0.5, "working-timing-lead", "the_day_to_shoot_by_is_told";
    /// Share of the hero hidden by hands or things: noted, and said.
    HERO_HIDDEN: "hero hidden", "hero", [0.10, 0.25], Share, false, OurChoice, false, 2.0, "working-hero-hidden", "a_quarter_of_the_hero_hidden_is_said";
    /// Margin against tipping, in the weakest direction: people work under the
    /// arm, so twice is asked for (our choice; structures are commonly given
    /// 1.5, from memory); under 1 it tips.
    RIG_MARGIN: "margin against tipping", "rig", [2.0, 1.0], Plain, true, Physics, false, 0.1, "working-rig", "a_margin_is_said_under_two_and_wont_work_under_one";
    /// What the arm lacks to the lens, mm.
    RIG_ARM: "arm too short", "rig", [1.0, 1.0], Mm, false, Physics, false, 5.0, "working-rig-arm", "an_arm_a_millimetre_short_wont_work";
    /// Share of an arm in use from which it counts as drawn out (our choice)
    /// and needs a bag on the stand (common practice, no source).
    RIG_EXTENDED: "arm drawn out", "rig", [0.9, NEVER], Share, false, TradePractice, false, 5.0, "working-rig-extended", "an_arm_drawn_out_nine_tenths_wants_a_bag";
    /// What the mast lacks to the arm, mm.
    RIG_MAST: "mast too low", "rig", [1.0, 1.0], Mm, false, Physics, false, 5.0, "working-rig-mast", "a_mast_a_millimetre_too_low_wont_work";
    /// How far inside the table's edge a mast or a leg would go through it, mm.
    RIG_TABLE: "stand through the table", "rig", [1.0, 1.0], Mm, false, Physics, false, 5.0, "working-rig-table", "a_mast_through_the_table_wont_work_and_one_beside_it_does";
    /// Room where the photographer stands: 2 ft clear is what a film school
    /// asks of ways through a set, mm.
    RIG_PATH: "room to walk", "rig", [610.0, 0.0], Mm, true, TradePractice, false, 10.0, "working-rig-path", "a_leg_within_two_feet_of_the_photographer_is_said";
    /// How much longer a way is for what stands there, mm; our choice.
    RIG_ROUND: "way round things", "rig", [1000.0, NEVER], Mm, false, OurChoice, false, 50.0, "working-rig-way", "a_long_way_round_is_said_and_a_short_one_is_not";
    /// What a way lacks of a foot to either side of its middle, mm.
    RIG_WAY: "room on the way", "rig", [1.0, NEVER], Mm, false, TradePractice, false, 10.0, "working-rig-way", "a_weight_in_the_way_is_said_and_cured_and_one_past_it_is_not";
}
