//! The camera: what it is, which lens it has, how high it hangs.
use super::{Act, Refused};
use crate::layout::{Camera, Format, Layout, MAX_HEIGHT, MAX_LENSES, MAX_SIZE};
use crate::optics::{Lens, STOPS, at_hand};
use crate::scene::even_focus;
use crate::words::{Arg, length, rounded, say};

/// The camera is raised and lowered by this much, mm.
const HEIGHT_STEP: i32 = 50;
/// Narrowest frame, mm.
pub const NARROWEST: i32 = 50;
/// A height within this of a step counts as on it, mm: the frame's width is
/// in whole millimetres.
const ON_STEP: f64 = 4.0;

/// Something of the camera that is set in steps.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Dial {
    /// Focal length, among the lenses at hand.
    Focal,
    /// The f-number, by thirds of a stop.
    Aperture,
    /// Lens above the table: it sets how wide the frame is.
    Height,
    /// Where it focuses above the table, by whole centimetres.
    Focus,
}

fn text(id: &str, name: &str, value: String) -> String {
    say(id, &[(name, Arg::Text(value))])
}

/// Sets a dial one step up or down; at its end it stays.
///
/// # Errors
/// None so far as nothing there is locked.
pub fn step_camera(layout: &Layout, dial: Dial, up: bool) -> Result<Act, Refused> {
    let mut after = layout.clone();
    let name = match dial {
        Dial::Focal => {
            let camera = &mut after.camera;
            camera.focal = next(&at_hand(camera), camera.focal, up);
            text("done-focal", "focal", camera.focal.to_string())
        }
        Dial::Aperture => {
            let camera = &mut after.camera;
            camera.aperture = next(&STOPS, camera.aperture, up);
            let stop = rounded(f64::from(camera.aperture) / 10.0);
            text("done-aperture", "stop", stop)
        }
        Dial::Height => {
            after.frame.width = raised(layout, up).unwrap_or(layout.frame.width);
            let height = height(&after).unwrap_or_default();
            text("done-height", "height", length(height, layout.head.units))
        }
        Dial::Focus => {
            let own = layout.camera.focus_height.map(f64::from);
            let now = own.or_else(|| even_focus(layout)).unwrap_or_default();
            let cm = now / 10.0;
            let to = if up {
                cm.floor() + 1.0
            } else {
                cm.ceil() - 1.0
            };
            let to = (to as i32 * 10).clamp(0, MAX_HEIGHT);
            after.camera.focus_height = Some(to);
            let height = length(f64::from(to), layout.head.units);
            text("done-focus", "height", height)
        }
    };
    Act::between(name, layout, &after)
}

/// The next of some values, smallest first, above or below one.
fn next(all: &[i32], now: i32, up: bool) -> i32 {
    let found = if up {
        all.iter().find(|v| **v > now)
    } else {
        all.iter().rev().find(|v| **v < now)
    };
    found.copied().unwrap_or(now)
}

/// Lens above the table, mm.
fn height(layout: &Layout) -> Option<f64> {
    let frame = &layout.frame;
    Lens::of(&layout.camera).height_over(f64::from(frame.width), frame.height())
}

/// How wide the frame is from the next step of height.
fn raised(layout: &Layout, up: bool) -> Option<i32> {
    let step = f64::from(HEIGHT_STEP);
    let now = height(layout)?;
    let to = if up {
        ((now + ON_STEP) / step).floor() + 1.0
    } else {
        ((now - ON_STEP) / step).ceil() - 1.0
    };
    let lens = Lens::of(&layout.camera);
    let wide = lens.width_under(to * step, layout.frame.ratio.height_for(1.0))?;
    Some((libm::round(wide) as i32).clamp(NARROWEST, MAX_SIZE))
}

/// Focuses where cloth and tallest top come out equally sharp.
///
/// # Errors
/// None so far as nothing there is locked.
pub fn focus_evenly(layout: &Layout) -> Result<Act, Refused> {
    let mut after = layout.clone();
    after.camera.focus_height = None;
    Act::between(say("done-focus-even", &[]), layout, &after)
}

/// Takes another camera, with the usual lens and f-number where a phone comes
/// or goes: neither has much to do with the other's.
///
/// # Errors
/// None so far as nothing there is locked.
pub fn set_format(layout: &Layout, format: Format) -> Result<Act, Refused> {
    let mut after = layout.clone();
    let camera = &mut after.camera;
    let phone = |format: Format| format == Format::Phone;
    if phone(format) != phone(camera.format) {
        let usual = Camera::default();
        camera.lenses.clear();
        (camera.focal, camera.aperture) = if phone(format) {
            PHONE
        } else {
            (usual.focal, usual.aperture)
        };
    }
    camera.format = format;
    camera.pixels = None;
    Act::between(say("done-format", &[]), layout, &after)
}

/// A phone's usual camera: mm of equal diagonal, tenths of an f-number (from
/// memory).
const PHONE: (i32, i32) = (26, 18);

/// Sets the pixels of the camera's picture; `None` for those of the usual
/// model.
///
/// # Errors
/// When there are none, or more than a layout may hold.
pub fn set_pixels(layout: &Layout, pixels: Option<[i32; 2]>) -> Result<Act, Refused> {
    let mut after = layout.clone();
    let within = |n: i32| (1..=crate::layout::MAX_PIXELS).contains(&n);
    if pixels.is_some_and(|sides| !sides.into_iter().all(within)) {
        return Err(Refused::Limit("camera.pixels".into()));
    }
    after.camera.pixels = pixels.map(|[a, b]| [a.max(b), a.min(b)]);
    Act::between(say("done-pixels", &[]), layout, &after)
}

/// Has a lens at hand, or no longer.
///
/// # Errors
/// When there are as many as a layout may hold.
pub fn keep_lens(layout: &Layout, focal: i32) -> Result<Act, Refused> {
    let mut after = layout.clone();
    let lenses = &mut after.camera.lenses;
    let before = lenses.len();
    lenses.retain(|own| *own != focal);
    if lenses.len() == before {
        if before == MAX_LENSES {
            return Err(Refused::Limit("camera.lenses".into()));
        }
        lenses.push(focal);
        crate::order::sort(lenses, i32::cmp);
    }
    Act::between(say("done-lenses", &[]), layout, &after)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::layout::{LayoutId, Ratio};

    fn done(layout: &Layout, act: Result<Act, Refused>) -> (String, Layout) {
        let act = act.expect("an act");
        let mut after = layout.clone();
        act.edit.apply_checked(&mut after).expect("within limits");
        (act.name, after)
    }

    #[test]
    fn raising_the_camera_widens_the_frame_and_lowering_undoes_it() {
        for (width, high) in [(3, 2), (2, 3), (1, 1), (16, 9)] {
            let mut layout = Layout::empty(LayoutId(1));
            layout.frame.ratio = Ratio {
                width,
                height: high,
            };
            let now = height(&layout).expect("a lens");
            let (name, up) = done(&layout, step_camera(&layout, Dial::Height, true));
            let then = height(&up).expect("a lens");
            let step = (now / 50.0).floor() * 50.0 + 50.0;
            assert!((then - step).abs() < ON_STEP, "{now} to {then}");
            assert!(up.frame.width > layout.frame.width, "{name}");
            let (_, higher) = done(&up, step_camera(&up, Dial::Height, true));
            let (_, back) = done(&higher, step_camera(&higher, Dial::Height, false));
            assert_eq!(back.frame.width, up.frame.width, "there and back");
        }
    }

    #[test]
    fn dials_go_to_the_next_mark_and_stay_at_their_ends() {
        let mut layout = Layout::empty(LayoutId(1));
        layout.camera.lenses = vec![100, 35];
        let (name, up) = done(&layout, step_camera(&layout, Dial::Focal, true));
        assert_eq!(
            (up.camera.focal, name.contains("100 mm")),
            (100, true),
            "{name}"
        );
        let (_, end) = done(&up, step_camera(&up, Dial::Focal, true));
        assert_eq!(end, up, "no longer one at hand");
        let (name, wide) = done(&layout, step_camera(&layout, Dial::Aperture, false));
        assert_eq!(
            (wide.camera.aperture, name.contains("f/7.1")),
            (71, true),
            "{name}"
        );
        let mut odd = layout;
        odd.camera.aperture = 640;
        let (_, less) = done(&odd, step_camera(&odd, Dial::Aperture, false));
        assert_eq!(less.camera.aperture, 320, "back among the marks");
        odd.frame.width = MAX_SIZE;
        let (_, top) = done(&odd, step_camera(&odd, Dial::Height, true));
        assert_eq!(top.frame.width, MAX_SIZE, "as wide as a frame may be");
    }

    #[test]
    fn a_phone_brings_its_own_lens_and_takes_it_away() {
        let mut layout = Layout::empty(LayoutId(1));
        layout.camera.pixels = Some([9504, 6336]);
        let (_, phone) = done(&layout, set_format(&layout, Format::Phone));
        let camera = &phone.camera;
        assert_eq!(
            (camera.focal, camera.aperture, camera.pixels),
            (26, 18, None)
        );
        let (_, back) = done(&phone, set_format(&phone, Format::Medium));
        assert_eq!((back.camera.focal, back.camera.aperture), (50, 80));
        let (_, other) = done(&back, set_format(&back, Format::ApsC));
        assert_eq!(other.camera.focal, 50, "a lens goes on another body");
    }

    #[test]
    fn pixels_lenses_and_focus_are_kept_within_limits() {
        let layout = Layout::empty(LayoutId(1));
        let (_, fine) = done(&layout, set_pixels(&layout, Some([4000, 6000])));
        assert_eq!(fine.camera.pixels, Some([6000, 4000]), "long side first");
        for sides in [[0, 10], [10, 20_001]] {
            assert!(set_pixels(&layout, Some(sides)).is_err(), "{sides:?}");
        }
        let (_, one) = done(&layout, keep_lens(&layout, 50));
        let (_, two) = done(&one, keep_lens(&one, 24));
        assert_eq!(two.camera.lenses, [24, 50], "shortest first");
        let (_, less) = done(&two, keep_lens(&two, 50));
        assert_eq!(less.camera.lenses, [24], "taken out again");
        let mut full = layout.clone();
        full.camera.lenses = (1..=MAX_LENSES as i32).map(|n| n * 10).collect();
        assert!(keep_lens(&full, 5).is_err(), "no more than may be held");
        let (_, low) = done(&layout, step_camera(&layout, Dial::Focus, false));
        assert_eq!(low.camera.focus_height, Some(0), "not under the table");
        let (_, high) = done(&low, step_camera(&low, Dial::Focus, true));
        assert_eq!(high.camera.focus_height, Some(10), "by whole centimetres");
        let (_, even) = done(&high, focus_evenly(&high));
        assert_eq!(even.camera.focus_height, None);
    }
}
