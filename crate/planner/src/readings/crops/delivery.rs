//! What a crop is delivered as: its pixels, and how many of them to the inch
//! of print.
//!
//! Effective ppi is the crop's pixels over the inches they are printed on.
//! Publishers' pages ask for 300; one arc-minute of sight is 3438 ÷ distance
//! in inches, so that fewer serve for what is seen from farther away.
use super::super::finding::{Finding, State};
use super::super::rules::{CROP_PIXELS, CROP_PPI};
use super::super::study::Study;
use super::{Placed, finer};
use crate::layout::{CropShape, Ratio};
use crate::optics::Lens;
use crate::words::{Arg, length, say, whole};

const INCH: f64 = 25.4;
/// Pixels to the inch times inches of distance at one arc-minute.
const ARC_MINUTE: f64 = 3438.0;
/// Pixels usual on screens for a ratio (trade pages, which change; 16:9 from
/// memory).
const SCREENS: [(Ratio, [u16; 2]); 6] = [
    (ratio(1, 1), [1080, 1080]),
    (ratio(4, 5), [1080, 1350]),
    (ratio(3, 4), [1080, 1440]),
    (ratio(9, 16), [1080, 1920]),
    (ratio(16, 9), [1920, 1080]),
    (ratio(191, 100), [1080, 566]),
];

const fn ratio(width: u16, height: u16) -> Ratio {
    Ratio { width, height }
}

/// Pixels of a crop, across and down.
fn pixels(placed: &Placed<'_>) -> [f64; 2] {
    let size = placed.frame.size();
    let density = Lens::of(&placed.layout.camera).density_over(size.x, size.y);
    placed.crop.extent().map(|mm| mm * density)
}

pub(super) fn read(study: &Study<'_>, placed: &Placed<'_>, settled: bool) -> Option<Finding> {
    let own = pixels(placed);
    match placed.crop.shape {
        CropShape::Print(print) => printed(study, placed, own, print.map(f64::from), settled),
        CropShape::Ratio(ratio) => shown(study, placed, own, ratio, settled),
    }
}

/// Width by height in whole pixels.
fn by([across, down]: [f64; 2]) -> Arg {
    let args = [
        ("across", Arg::Text(whole(across))),
        ("down", Arg::Text(whole(down))),
    ];
    Arg::Text(say("pixels-by", &args))
}

fn printed(
    study: &Study<'_>,
    placed: &Placed<'_>,
    own: [f64; 2],
    [wide, high]: [f64; 2],
    settled: bool,
) -> Option<Finding> {
    let ppi = own[0] * INCH / wide;
    let asked = CROP_PPI.edges[0];
    let few = ppi < asked;
    if !few && !study.tells_all() {
        return None;
    }
    let state = if few { State::LookAgain } else { State::Holds };
    let mut f = placed.finding(&CROP_PPI, "size", (state, 3), ppi, &[]);
    f.sentence = study.sentence(|| {
        let args = [
            ("crop", Arg::Name(placed.crop.name.clone())),
            ("pixels", by(own)),
            // Never said to be what it falls short of.
            ("ppi", Arg::Text(whole(ppi.floor()))),
            ("asked", Arg::Text(whole(asked))),
        ];
        say(if few { "crop-ppi-few" } else { "crop-ppi" }, &args)
    });
    f.working = study.tell(|| {
        let bleed = 2.0 * f64::from(placed.crop.bleed);
        let file = [wide + bleed, high + bleed].map(|mm| (mm / INCH * asked).round());
        let from = ARC_MINUTE / ppi.max(1.0) * INCH;
        let args = [
            ("file", by(file)),
            ("asked", Arg::Text(whole(asked))),
            ("from", Arg::Text(length(from, placed.layout.head.units))),
        ];
        let mut lines = vec![
            say("working-crop-ppi", &[]),
            say("working-crop-file", &args),
        ];
        if few {
            let units = placed.layout.head.units;
            let printed = own.map(|pixels| Arg::Text(length(pixels / asked * INCH, units)));
            let [across, down] = printed;
            let asked = Arg::Text(whole(asked));
            let args = [("asked", asked), ("across", across), ("down", down)];
            lines.push(say("working-crop-prints", &args));
        }
        lines
    });
    if settled && few {
        let told = |times: f64| {
            let said = |figure: f64| Arg::Text(whole(figure.floor()));
            let args = [("before", said(ppi)), ("after", said(ppi * times))];
            say("predicted-ppi", &args)
        };
        f.remedy = finer::found(study, placed, &f, asked / ppi, &told);
    }
    Some(f)
}

fn shown(
    study: &Study<'_>,
    placed: &Placed<'_>,
    own: [f64; 2],
    ratio: Ratio,
    settled: bool,
) -> Option<Finding> {
    let same = |usual: &&(Ratio, [u16; 2])| {
        let [w, h] = [usual.0.width, usual.0.height].map(u32::from);
        w * u32::from(ratio.height) == h * u32::from(ratio.width)
    };
    let usual = SCREENS.iter().find(same).map(|u| u.1.map(f64::from));
    let share = usual.map_or(f64::from(u8::MAX), |usual| own[0] / usual[0]);
    let few = share < CROP_PIXELS.edges[0];
    if !few && !study.tells_all() {
        return None;
    }
    let state = if few { State::LookAgain } else { State::Holds };
    let mut f = placed.finding(&CROP_PIXELS, "size", (state, 3), share, &[]);
    f.sentence = study.sentence(|| {
        let args = [
            ("crop", Arg::Name(placed.crop.name.clone())),
            ("pixels", by(own)),
            ("usual", usual.map_or(Arg::Text(String::new()), by)),
        ];
        let id = match (few, usual) {
            (true, _) => "crop-pixels-few",
            (false, Some(_)) => "crop-pixels",
            (false, None) => "crop-pixels-any",
        };
        say(id, &args)
    });
    f.working = study.tell(|| vec![say("working-crop-pixels", &[])]);
    if settled && few {
        let told = |times: f64| {
            let args = [("pixels", by(own.map(|pixels| pixels * times)))];
            say("predicted-pixels", &args)
        };
        f.remedy = finer::found(study, placed, &f, 1.0 / share, &told);
    }
    Some(f)
}
