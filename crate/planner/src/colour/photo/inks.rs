//! Whether a photo is written in printing inks, from its head.

/// Starts a picture, and stands alone as these do: no length follows them.
const START: u8 = 0xd8;
const END: u8 = 0xd9;
const SCAN: u8 = 0xda;

/// Whether a file's first bytes are those of a JPEG of four channels: inks,
/// whose colours a browser only guesses. Any bytes may be given; false where
/// the frame's header is not among them.
///
/// Markers as in ITU-T T.81, annex B; what stands between two segments is
/// passed over, as the decoders of browsers do.
#[must_use]
pub fn in_inks(head: &[u8]) -> bool {
    let Some(mut rest) = head.strip_prefix(&[0xff, START]) else {
        return false;
    };
    while let Some((marker, after)) = marker(rest) {
        rest = after;
        match marker {
            START | END | SCAN => return false,
            // Restarts, and one kept for arithmetic coding, have no segment.
            0x01 | 0xd0..=0xd7 => {}
            _ => {
                let Some((segment, after)) = segment(rest) else {
                    return false;
                };
                // A frame's header, but for the three among them that are tables.
                if matches!(marker, 0xc0..=0xcf) && !matches!(marker, 0xc4 | 0xc8 | 0xcc) {
                    return segment.get(5) == Some(&4);
                }
                rest = after;
            }
        }
    }
    false
}

/// The next marker, and what follows it; any number of 0xff may lead to it.
fn marker(bytes: &[u8]) -> Option<(u8, &[u8])> {
    let from = bytes.windows(2).position(|two| {
        let [first, second] = two else { return false };
        *first == 0xff && !matches!(second, 0x00 | 0xff)
    })?;
    Some((*bytes.get(from + 1)?, bytes.get(from + 2..)?))
}

/// What a segment holds after its length, and what follows it. One that is cut
/// off is there as far as it goes.
fn segment(bytes: &[u8]) -> Option<(&[u8], &[u8])> {
    let (length, rest) = bytes.split_first_chunk::<2>()?;
    let length = usize::from(u16::from_be_bytes(*length)).checked_sub(2)?;
    Some(rest.split_at(length.min(rest.len())))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A frame's header of so many channels, cut off after their number.
    fn frame(marker: u8, channels: u8) -> Vec<u8> {
        vec![0xff, marker, 0, 20, 8, 0, 16, 0, 16, channels]
    }

    fn picture(parts: &[&[u8]]) -> Vec<u8> {
        [&[0xff, START], parts.concat().as_slice()].concat()
    }

    #[test]
    fn four_channels_are_inks_in_any_kind_of_frame() {
        for kind in (0xc0..=0xcf).filter(|kind| !matches!(kind, 0xc4 | 0xc8 | 0xcc)) {
            assert!(in_inks(&picture(&[&frame(kind, 4)])), "{kind:x}");
            assert!(!in_inks(&picture(&[&frame(kind, 3)])), "{kind:x}");
        }
        for table in [0xc4, 0xc8, 0xcc, 0xdb, 0xe1] {
            assert!(!in_inks(&picture(&[&frame(table, 4)])), "{table:x}");
        }
    }

    #[test]
    fn what_stands_before_the_frame_is_passed_over() {
        let frame = frame(0xc2, 4);
        let notes = [0xff, 0xe1, 0, 4, 0xff, 0xc0];
        assert!(in_inks(&picture(&[&notes, &frame])), "a segment's content");
        assert!(in_inks(&picture(&[&[0xff, 0xff, 0xff], &frame])), "fill");
        assert!(
            in_inks(&picture(&[&[1, 2, 0xff, 0], &frame])),
            "stray bytes"
        );
        assert!(in_inks(&picture(&[&[0xff, 0xd3], &frame])), "a restart");
        assert!(!in_inks(&picture(&[&[0xff, SCAN], &frame])), "a scan");
        assert!(!in_inks(&picture(&[&[0xff, END], &frame])), "an end");
    }

    #[test]
    fn bytes_of_no_photo_are_no_inks() {
        let whole = picture(&[&frame(0xc0, 4)]);
        for cut in 0..whole.len() {
            assert!(!in_inks(&whole[..cut]), "cut after {cut}");
        }
        assert!(!in_inks(&picture(&[&[0xff, 0xe0, 0, 0]])), "no length");
        assert!(!in_inks(b"two loaves, one knife"));
    }
}
