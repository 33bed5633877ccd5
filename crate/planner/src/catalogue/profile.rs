//! How wide a thing is at each height, from its foot to its top.
use super::entry::{Entry, Kind};

/// A height profile: pairs of height and width, in percent of the thing's
/// whole height and of its outline from above, the foot first. Between two
/// pairs the width changes evenly. Our own estimates, all of them.
pub type Profile = &'static [[u8; 2]];

const STRAIGHT: Profile = &[[0, 100], [100, 100]];
const PLATE: Profile = &[[0, 62], [55, 84], [100, 100]];
const FLARED: Profile = &[[0, 46], [22, 64], [62, 88], [100, 100]];
const TUMBLER: Profile = &[[0, 80], [100, 100]];
const STEM: Profile = &[
    [0, 78], [3, 76], [6, 12], [44, 12], [60, 80], [80, 100], [100, 86],
];
const BOTTLE: Profile = &[[0, 100], [62, 100], [76, 42], [100, 36]];
const CARAFE: Profile = &[[0, 100], [26, 100], [56, 40], [100, 46]];
const JUG: Profile = &[[0, 70], [36, 100], [76, 76], [100, 82]];
const TAPER: Profile = &[[0, 100], [7, 92], [12, 28], [100, 26]];
const LIDDED: Profile = &[[0, 62], [42, 100], [80, 80], [100, 20]];
const PEAK: Profile = &[[0, 90], [20, 100], [40, 78], [90, 18], [100, 16]];
const PEDESTAL: Profile = &[[0, 46], [8, 40], [20, 14], [84, 16], [90, 100], [100, 100]];
const BUNCH: Profile = &[[0, 30], [52, 34], [74, 82], [90, 100], [100, 56]];
const DOME: Profile = &[[0, 94], [38, 100], [74, 78], [100, 34]];
const HEAP: Profile = &[[0, 100], [50, 82], [100, 34]];

/// The profile of a thing of the catalogue.
#[must_use]
pub fn profile(entry: &Entry) -> Profile {
    match entry.id {
        "wine-glass" | "red-wine-glass" | "white-wine-glass" | "coupe" | "flute" | "goblet"
        | "cordial-glass" | "tasting-glass" | "egg-cup" => STEM,
        "bottle" | "vinegar-bottle" | "milk-bottle" => BOTTLE,
        "oil-carafe" | "decanter" => CARAFE,
        "jug" | "glass-pitcher" | "milk-jug" | "creamer" | "ceramic-vase" | "glass-vase" => JUG,
        "taper-candle" => TAPER,
        "teapot" | "coffee-pot" | "sugar-bowl" | "soup-tureen" => LIDDED,
        "tagine" => PEAK,
        "cake-stand" => PEDESTAL,
        "bud-vase" | "flower-bunch" | "herb-pot" => BUNCH,
        "loaf" | "bread-rolls" | "baguette" | "roast-chicken" | "soft-cheese" | "butter" => DOME,
        "chocolate-cake" | "cake-slices" | "brownies" | "pancakes" | "pizza" | "focaccia"
        | "savoury-tart" | "fruit-tart" | "cheese-wedge" | "tofu-cubes" => STRAIGHT,
        id if id.ends_with("-pot") || id.ends_with("-casserole") || id.ends_with("-tin") => STRAIGHT,
        _ => match entry.kind {
            Kind::Vessel if entry.height <= 30 => PLATE,
            Kind::Vessel => FLARED,
            Kind::Glass => TUMBLER,
            Kind::Food if entry.height >= 25 => HEAP,
            _ => STRAIGHT,
        },
    }
}

/// The profile of what the catalogue does not know: straight sides.
#[must_use]
pub const fn plain_profile() -> Profile {
    STRAIGHT
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalogue::{foods, props};

    #[test]
    fn every_profile_climbs_from_the_foot_to_the_top_and_reaches_the_outline() {
        for entry in props().iter().chain(foods()) {
            let all = profile(entry);
            assert_eq!(all[0][0], 0, "{}: the foot", entry.id);
            assert_eq!(all[all.len() - 1][0], 100, "{}: the top", entry.id);
            assert!(all.windows(2).all(|w| w[0][0] < w[1][0]), "{}", entry.id);
            let widest = all.iter().map(|p| p[1]).max();
            assert_eq!(widest, Some(100), "{}: the outline is its widest", entry.id);
        }
    }
}
