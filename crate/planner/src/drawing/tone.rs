//! Flat colours: the ink, the pencils and arithmetic on tones.

/// An 8-bit sRGB colour, red first.
pub type Tone = [u8; 3];

/// The one ink.
pub const INK: Tone = rgb(0x1f1915);
/// White pencil, for lines on dark boards.
pub const PENCIL: Tone = rgb(0xf6ecd8);
/// The window's light caught on a rim.
pub(super) const GLINT: Tone = rgb(0xfff6e2);
/// Pure white, for light on glass and glaze.
pub(super) const WHITE: Tone = rgb(0xffffff);
/// What a shadow is washed with.
pub(super) const SHADE: Tone = rgb(0x0b0705);

/// The tone of a `0xrrggbb` number.
pub const fn rgb(code: u32) -> Tone {
    [(code >> 16) as u8, (code >> 8) as u8, code as u8]
}

/// `tone` moved by as much as `to` differs from `from`, channel by channel.
///
/// A recoloured dish keeps the steps between its flat tones this way.
pub(super) fn shifted(tone: Tone, from: Tone, to: Tone) -> Tone {
    let moved =
        |i: usize| (i16::from(tone[i]) + i16::from(to[i]) - i16::from(from[i])).clamp(0, 255) as u8;
    [moved(0), moved(1), moved(2)]
}

/// `share` of `other` mixed into `tone`, in sRGB.
pub(super) fn mixed(tone: Tone, other: Tone, share: f64) -> Tone {
    let blend = |i: usize| {
        (f64::from(tone[i]) * (1.0 - share) + f64::from(other[i]) * share)
            .round()
            .clamp(0.0, 255.0) as u8
    };
    [blend(0), blend(1), blend(2)]
}

/// A deeper step of `tone`: what it looks like turned from the light.
pub(super) fn deeper(tone: Tone) -> Tone {
    mixed(tone, rgb(0x120c0a), 0.24)
}

/// A lighter step of `tone`: what it looks like turned to the light.
pub(super) fn lighter(tone: Tone) -> Tone {
    mixed(tone, rgb(0xfff4de), 0.24)
}

/// Luma of `tone` from 0 to 1 (Rec. 709 weights on the encoded values), good
/// enough to choose between ink and pencil.
pub(super) fn luma(tone: Tone) -> f64 {
    (0.2126 * f64::from(tone[0]) + 0.7152 * f64::from(tone[1]) + 0.0722 * f64::from(tone[2]))
        / 255.0
}

/// `tone` as `#rrggbb`.
pub(super) fn hex(tone: Tone) -> String {
    const DIGITS: &[u8; 16] = b"0123456789abcdef";
    let mut text = String::with_capacity(7);
    text.push('#');
    for channel in tone {
        text.push(char::from(DIGITS[usize::from(channel >> 4)]));
        text.push(char::from(DIGITS[usize::from(channel & 15)]));
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn hex_writes_all_six_digits() {
        assert_eq!(hex(rgb(0x0a1b00)), "#0a1b00", "leading zeros must stay");
    }

    #[test]
    fn shifted_keeps_the_step_and_clamps() {
        let step = shifted([100, 10, 250], [90, 20, 240], [190, 0, 255]);
        assert_eq!(step, [200, 0, 255], "each channel moves by the same step");
    }
}
