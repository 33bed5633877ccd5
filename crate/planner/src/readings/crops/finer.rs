//! More pixels for a crop: a larger share of the frame, or the frame taken in
//! round the crops, so that the camera comes closer.
use super::super::finding::{Finding, Remedy};
use super::super::study::{Study, Words};
use super::super::{fit, lean};
use super::{Placed, cured, laid_down, moved, spoils};
use crate::commands::NARROWEST;
use crate::edit::Edit;
use crate::layout::{Crop, Layout, Point};
use crate::optics::at_hand;
use crate::scene::crop_outline;
use crate::shape::Bounds;
use crate::words::{Arg, length, say};

use glam::DVec2;

/// The first change that gives a crop `needed` times the pixels it has.
/// `figure` is that of a finding for so many times the pixels, `told` how it is
/// said.
pub(super) fn found(
    study: &Study<'_>,
    placed: &Placed<'_>,
    finding: &Finding,
    needed: f64,
    told: &dyn Fn(f64) -> String,
) -> Option<Remedy> {
    let grown = |times: f64, remedy: Remedy| Remedy {
        predicted: told(times),
        after: finding.figure * times,
        ..remedy
    };
    if let Some((after, times)) = wider(placed, needed) {
        let width = Arg::Text(length(f64::from(after.width), placed.layout.head.units));
        let name = Arg::Name(placed.crop.name.clone());
        let words = [("crop", name), ("width", width)];
        let found = cured(study, finding, after, |_| {
            (say("act-wider-crop", &words), String::new())
        });
        if let Some(remedy) = found {
            return Some(grown(times, remedy));
        }
    }
    closer(study, placed, needed).map(|(remedy, times)| grown(times, remedy))
}

/// The crop made so much wider about its middle, slid into the frame, when the
/// frame has room for it with its bleed; and how much wider it is.
fn wider(placed: &Placed<'_>, needed: f64) -> Option<(Crop, f64)> {
    let crop = placed.crop;
    let width = (f64::from(crop.width) * needed).ceil();
    let after = Crop {
        width: width as i32,
        ..crop.clone()
    };
    let half = (DVec2::from_array(after.extent()) + bleed(&after) * 2.0) * 0.5;
    let room = placed.frame.size() * 0.5 - half;
    if room.min_element() < 0.0 {
        return None;
    }
    let middle = placed.frame.centre();
    let to = placed.trim.centre().clamp(middle - room, middle + room);
    let times = width / f64::from(crop.width);
    Some((moved(placed.layout, &after, to), times))
}

/// The bleed of a crop on the table, mm on each side.
fn bleed(crop: &Crop) -> f64 {
    f64::from(crop.bleed) * crop.print_scale().unwrap_or(0.0)
}

/// The frame taken in by so much round all crops; with the lens there is, or
/// the shortest at hand that stands clear of everything.
fn closer(study: &Study<'_>, placed: &Placed<'_>, needed: f64) -> Option<(Remedy, f64)> {
    let layout = placed.layout;
    let width = (f64::from(layout.frame.width) / needed).floor();
    if width < f64::from(NARROWEST) {
        return None;
    }
    let mut after = layout.clone();
    after.frame.width = width as i32;
    let size = DVec2::new(width, after.frame.height());
    let all = kept(layout)?;
    if (size - all.size()).min_element() < 0.0 {
        return None;
    }
    // As near to where it is as keeps every crop in, on whole mm.
    let (least, most) = (all.max - size * 0.5, all.min + size * 0.5);
    let to = placed.frame.centre().clamp(least, most);
    after.frame.at = Point::nearest(laid_down(layout, to));
    let times = f64::from(layout.frame.width) / width;
    let own = layout.camera.focal;
    let lenses = at_hand(&layout.camera).into_iter().filter(|f| *f > own);
    let focal = core::iter::once(own)
        .chain(lenses)
        .find(|focal| fit::fits(&fit::with_lens(&after, *focal)))?;
    let after = fit::with_lens(&after, focal);
    if spoils(study, &after) || leans_more(study, &after) {
        return None;
    }
    let units = layout.head.units;
    let words = [
        ("width", Arg::Text(length(width, units))),
        ("focal", Arg::Text(focal.to_string())),
    ];
    let id = if focal == own {
        "act-closer"
    } else {
        "act-closer-lens"
    };
    let remedy = Remedy {
        act: say(id, &words),
        predicted: String::new(),
        after: 0.0,
        edit: Edit::between(layout, &after),
    };
    Some((remedy, times))
}

/// The upright box round all crops with their bleed.
fn kept(layout: &Layout) -> Option<Bounds> {
    let boxes = layout.crops.iter().filter_map(|crop| {
        let own = super::boxed(layout, &crop_outline(layout, crop))?;
        Some(own.grown(bleed(crop)))
    });
    boxes.reduce(|a, b| Bounds {
        min: a.min.min(b.min),
        max: a.max.max(b.max),
    })
}

/// Whether something presses about leans or focus that did not before.
fn leans_more(study: &Study<'_>, after: &Layout) -> bool {
    let before = lean::read(study, false);
    let then = study.changed(after);
    then.say_only(Words::None);
    let pressing = lean::read(&then, false);
    pressing.iter().any(|f| {
        let was = before.iter().find(|b| b.key == f.key && b.is_pressing());
        f.is_pressing() && was.is_none_or(|b| f.figure > b.figure + f.rule.same)
    })
}

#[cfg(test)]
mod tests {
    use crate::layout::Layout;
    use crate::readings::State;
    use crate::readings::samples::{after, disc, laid, said};

    /// One crop of this shape, so wide, in the middle of a frame of 1050 × 700
    /// mm on 6000 pixels.
    fn cropped(width: i32, shape: &str) -> Layout {
        laid(&format!(
            r#""crops":[{{"id":9,"name":"page","at":[600,450],"width":{width},{shape}}}]"#
        ))
    }

    /// A finding's figure after its remedy is the one that was promised.
    fn kept(layout: &Layout, key: &str) -> Layout {
        let before = said(layout, key).expect("something to cure");
        let then = after(layout, &before);
        let promised = before.remedy.expect("a remedy").after;
        let found = said(&then, key).map_or(0.0, |f| f.figure);
        assert!(
            (found - promised).abs() < 1e-9,
            "{key}: promised {promised}, got {found}"
        );
        then
    }

    #[test]
    fn few_pixels_are_cured_by_a_wider_crop() {
        // 400 mm of 1050 on 6000 pixels are 2286: 293.2 to the inch of 198 mm.
        let layout = cropped(400, r#""print":[198,132],"bleed":3"#);
        let few = said(&layout, "crops:9:size").expect("told");
        assert_eq!(few.state, State::LookAgain, "{}", few.sentence);
        let line = few.working.last().expect("a line");
        // 2286 × 1524 pixels at 300 to the inch.
        assert!(line.contains("19 cm × 13 cm"), "{line}");
        let then = kept(&layout, "crops:9:size");
        assert_eq!(then.frame, layout.frame, "the camera stays");
        assert!(then.crops[0].width > 400, "{}", then.crops[0].width);
        let enough = said(&then, "crops:9:size").expect("told");
        assert_eq!(enough.state, State::Holds, "{}", enough.sentence);
    }

    #[test]
    fn few_pixels_are_cured_by_a_closer_camera_where_the_crop_may_not_grow() {
        // 600 of 1050 mm on 300 mm: 290 to the inch. The strip about the fold is
        // 240 mm, and would be 248 of a wider crop: the hero begins 121 off it.
        let hero = disc(1, 771, 450, 100, "hero");
        let layout = laid(&format!(
            r#""items":[{hero}],"crops":[{{"id":9,"name":"page","at":[600,450],"width":600,
            "print":[300,200],"bleed":3,"gutter":120}}]"#
        ));
        let then = kept(&layout, "crops:9:size");
        assert_eq!(then.crops, layout.crops, "no crop changes");
        assert!(then.frame.width < 1_020, "closer: {}", then.frame.width);
    }

    #[test]
    fn nothing_is_promised_where_no_camera_gives_so_many_pixels() {
        let layout = cropped(600, r#""print":[900,600],"bleed":3"#);
        let few = said(&layout, "crops:9:size").expect("told");
        assert_eq!(few.state, State::LookAgain, "{}", few.sentence);
        assert!(few.remedy.is_none(), "{:?}", few.remedy);
        let line = few.working.last().expect("a line");
        assert!(
            line.contains("At 300 ppi it prints 29 cm × 19 cm."),
            "{line}"
        );
    }

    #[test]
    fn fewer_pixels_than_a_screen_takes_are_cured() {
        let layout = cropped(170, r#""ratio":[8,10]"#);
        let few = said(&layout, "crops:9:size").expect("told");
        assert_eq!(few.state, State::LookAgain, "{}", few.sentence);
        let then = kept(&layout, "crops:9:size");
        let enough = said(&then, "crops:9:size").expect("told");
        assert_eq!(enough.state, State::Holds, "{}", enough.sentence);
    }
}
