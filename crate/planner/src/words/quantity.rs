//! Quantities as a person reads them.
use super::{Arg, say};
use crate::layout::{Frame, Point, Units};

/// A share of 1 as whole percent. Something small but not nothing is never
/// called 0, nor is something not quite whole called 100.
#[must_use]
pub fn percent(share: f64) -> String {
    let rounded = (share * 100.0).round();
    let shown = if share > 0.0 && rounded < 1.0 {
        1.0
    } else if share < 1.0 && rounded > 99.0 {
        99.0
    } else {
        rounded
    };
    whole(shown) + "%"
}

/// A figure to the nearest whole number.
#[must_use]
pub fn whole(figure: f64) -> String {
    fixed(figure, 0)
}

/// A figure to so many decimal places, zeros and all.
#[must_use]
pub fn fixed(figure: f64, places: u32) -> String {
    // By hand: the standard writing of real numbers is 10 kB of the module.
    let unit = 10_u64.pow(places);
    let count = (figure * unit as f64).round() as i64;
    let mut text = (count.unsigned_abs() / unit).to_string();
    if count < 0 {
        text.insert(0, '-');
    }
    if places > 0 {
        // The digit put before keeps the zeros that follow it.
        let digits = (unit + count.unsigned_abs() % unit).to_string();
        text.push('.');
        text.push_str(&digits[1..]);
    }
    text
}

/// A figure to one decimal place, or none when that is 0.
#[must_use]
pub fn rounded(figure: f64) -> String {
    let tenths = (figure * 10.0).round();
    let places = u32::from(tenths % 10.0 != 0.0);
    fixed(tenths / 10.0, places)
}

/// A length in mm, in the layout's units: cm below 10 with one decimal when it
/// is not whole, otherwise whole; inches with one decimal.
#[must_use]
pub fn length(mm: f64, units: Units) -> String {
    match units {
        Units::Cm => {
            let cm = mm / 10.0;
            let shown = if cm.abs() < 10.0 {
                rounded(cm)
            } else {
                whole(cm)
            };
            shown + " cm"
        }
        Units::In => set_length(mm, units),
    }
}

/// A length that is being set, in mm, in the layout's units, to a tenth: one
/// that is only told of is coarser.
#[must_use]
pub fn set_length(mm: f64, units: Units) -> String {
    match units {
        Units::Cm => rounded(mm / 10.0) + " cm",
        Units::In => rounded(mm / 25.4) + " in",
    }
}

/// A direction in degrees as the hand of a clock points: "10 o’clock", "10:30".
#[must_use]
pub fn clock(degrees: f64) -> String {
    let minutes = ((degrees * 2.0).round() as i64).rem_euclid(720);
    let hour = match minutes / 60 {
        0 => 12,
        hour => hour,
    };
    let hour = hour.to_string();
    match minutes % 60 {
        0 => say("clock-hour", &[("hour", Arg::Text(hour))]),
        rest if rest < 10 => hour + ":0" + &rest.to_string(),
        rest => hour + ":" + &rest.to_string(),
    }
}

/// Minutes from the beginning as hours and minutes: "0:33".
#[must_use]
pub fn running_time(minutes: i32) -> String {
    let rest = minutes.rem_euclid(60).to_string();
    let fill = if rest.len() < 2 { "0" } else { "" };
    minutes.div_euclid(60).to_string() + ":" + fill + &rest
}

/// Where a place of the table lies from the middle of the picture, to the hour.
#[must_use]
pub fn hour(at: glam::DVec2, frame: &Frame) -> String {
    let off = seen(at - frame.at.vec(), frame);
    let degrees = libm::atan2(off.x, -off.y).to_degrees();
    clock((degrees / 30.0).round() * 30.0)
}

/// A mass in grams, in kilograms or pounds with one decimal when it is not
/// whole. 1 lb is 453.592 37 g (international pound).
#[must_use]
pub fn mass(grams: f64, units: Units) -> String {
    match units {
        Units::Cm => rounded(grams / 1_000.0) + " kg",
        Units::In => rounded(grams / 453.592_37) + " lb",
    }
}

/// Where a place is in the picture: "top left", "middle", "bottom".
#[must_use]
pub fn place(at: Point, frame: &Frame) -> String {
    let v = (at.vec() - frame.at.vec()) / f64::from(frame.width);
    let turned = seen(v, frame);
    let third = |c: f64, full: f64| {
        if c < -full / 6.0 {
            0
        } else if c > full / 6.0 {
            2
        } else {
            1
        }
    };
    let tall = frame.ratio.height_for(1.0);
    let id = [
        ["place-top-left", "place-top", "place-top-right"],
        ["place-left", "place-middle", "place-right"],
        ["place-bottom-left", "place-bottom", "place-bottom-right"],
    ][third(turned.y, tall)][third(turned.x, 1.0)];
    say(id, &[] as &[(&str, Arg)])
}

/// Which way a step on the table goes in the picture: "to the left".
#[must_use]
pub fn way(by: glam::DVec2, frame: &Frame) -> String {
    let off = seen(by, frame);
    let eighths = (libm::atan2(off.x, -off.y).to_degrees() / 45.0).round();
    let id = [
        "way-up",
        "way-up-right",
        "way-right",
        "way-down-right",
        "way-down",
        "way-down-left",
        "way-left",
        "way-up-left",
    ][eighths.rem_euclid(8.0) as usize];
    say(id, &[])
}

/// From table directions to picture directions.
fn seen(v: glam::DVec2, frame: &Frame) -> glam::DVec2 {
    let (sin, cos) = libm::sincos(-frame.turn.radians());
    glam::DVec2::new(cos, sin).rotate(v)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn figures_are_written_as_the_standard_library_writes_them() {
        for n in -1005..=1005 {
            // Never half way: there the two round apart.
            let figure = f64::from(n) * 0.017 + 0.0003;
            assert_eq!(fixed(figure, 2), format!("{figure:.2}"), "two places");
            // Adding nothing makes 0 of the standard library's "-0".
            assert_eq!(whole(figure), (figure.round() + 0.0).to_string(), "none");
            let tenths = (figure * 10.0).round() / 10.0 + 0.0;
            assert_eq!(rounded(figure), tenths.to_string(), "one or none");
        }
    }

    #[test]
    fn shares_never_claim_all_or_nothing_wrongly() {
        assert_eq!(percent(0.0), "0%", "nothing");
        assert_eq!(percent(0.001), "1%", "a little");
        assert_eq!(percent(0.997), "99%", "nearly all");
        assert_eq!(percent(1.0), "100%", "all");
    }

    #[test]
    fn directions_read_as_the_hand_of_a_clock() {
        for (degrees, told) in [
            (0.0, "12 o’clock"),
            (300.0, "10 o’clock"),
            (315.0, "10:30"),
            (-60.0, "10 o’clock"),
            (362.5, "12:05"),
        ] {
            assert_eq!(clock(degrees), told, "{degrees}°");
        }
    }

    #[test]
    fn minutes_read_as_hours_and_minutes() {
        for (minutes, told) in [(0, "0:00"), (9, "0:09"), (60, "1:00"), (754, "12:34")] {
            assert_eq!(running_time(minutes), told);
        }
    }

    #[test]
    fn lengths_read_in_both_units() {
        assert_eq!(length(14.0, Units::Cm), "1.4 cm", "small");
        assert_eq!(length(1395.0, Units::Cm), "140 cm", "large");
        assert_eq!(length(254.0, Units::In), "10 in", "inches");
        assert_eq!(mass(6_800.0, Units::Cm), "6.8 kg", "kilograms");
        assert_eq!(mass(6_804.0, Units::In), "15 lb", "pounds");
    }
}
