//! What is around the sections: letters, version and check sum.
use base64::Engine;
use base64::engine::general_purpose::URL_SAFE_NO_PAD;

use super::bytes::{Bytes, put_varint};
use crate::layout::{Problem, ProblemKind};

/// The version of the writing; older ones are read alike. Place and sort of
/// the check sum never change.
pub const LINK_VERSION: u64 = 1;
/// Longest link read, in characters.
pub const MAX_LINK: usize = 1_000_000;

/// What stands in the place of the version in an answer.
pub(super) const ANSWER: u64 = 64;

/// Bytes of the check sum.
const SUM: usize = 4;

/// The check sum of a body: CRC-32 over it and its length in four bytes.
fn sum(body: &[u8]) -> u32 {
    let length = (body.len() as u32).to_le_bytes();
    crc_32(body.iter().chain(&length))
}

/// CRC-32/ISO-HDLC, bit by bit: libraries bring tables of up to 16 kB that no
/// server can compress, for a body of a few kB.
fn crc_32<'a>(bytes: impl Iterator<Item = &'a u8>) -> u32 {
    let mut crc = u32::MAX;
    for byte in bytes {
        crc ^= u32::from(*byte);
        for _ in 0..8 {
            let low = crc & 1;
            crc = (crc >> 1) ^ (0xedb8_8320 * low);
        }
    }
    !crc
}

/// Version, sections and check sum in letters.
pub(super) fn wrap(sections: &[u8]) -> String {
    wrap_as(LINK_VERSION, sections)
}

/// The same under another number.
pub(super) fn wrap_as(version: u64, sections: &[u8]) -> String {
    let mut body = Vec::with_capacity(sections.len() + 8);
    put_varint(&mut body, version);
    body.extend_from_slice(sections);
    let sum = sum(&body);
    body.extend_from_slice(&sum.to_le_bytes());
    URL_SAFE_NO_PAD.encode(body)
}

pub(super) fn problem(kind: ProblemKind, found: &str, allowed: &str) -> Problem {
    Problem::new(kind, "link", found, allowed)
}

/// The sections of a link; the address before the first `#` is ignored.
///
/// # Errors
/// One problem: too long, other letters than a link has, characters lost or
/// changed, an answer, or a later version.
pub(super) fn unwrap(text: &str) -> Result<Vec<u8>, Problem> {
    match bodied(text)? {
        (0..=LINK_VERSION, sections) => Ok(sections),
        (ANSWER, _) => {
            let (found, allowed) = ("an answer to a layout", "the link to a layout");
            Err(problem(ProblemKind::Version, found, allowed))
        }
        (later, _) => {
            let found = format!("version {later}");
            let allowed = format!("version {LINK_VERSION} or older; open it with a newer planner");
            Err(problem(ProblemKind::Version, &found, &allowed))
        }
    }
}

/// The version of a link and what follows it.
///
/// # Errors
/// One problem: too long, other letters than a link has, or characters lost or
/// changed.
pub(super) fn bodied(text: &str) -> Result<(u64, Vec<u8>), Problem> {
    if text.len() > MAX_LINK {
        let found = format!("{} bytes", text.len());
        let allowed = format!("at most {MAX_LINK} bytes");
        return Err(problem(ProblemKind::Limit, &found, &allowed));
    }
    let text = text.trim();
    let fragment = text.split_once('#').map_or(text, |(_, after)| after);
    let mut body = URL_SAFE_NO_PAD.decode(fragment).map_err(|error| {
        let allowed = "the letters A to Z, a to z, 0 to 9, - and _ of a whole link";
        problem(ProblemKind::Syntax, &error.to_string(), allowed)
    })?;
    let Some(at) = body.len().checked_sub(SUM).filter(|at| *at > 0) else {
        let found = format!("{} characters", fragment.len());
        return Err(problem(ProblemKind::Syntax, &found, "a whole link"));
    };
    let given = body.split_off(at);
    if given != sum(&body).to_le_bytes() {
        let allowed = "the link as it was made; copy it again, or ask for it again";
        let found = "lost or changed characters";
        return Err(problem(ProblemKind::Checksum, found, allowed));
    }
    let mut bytes = Bytes(&body);
    match bytes.varint() {
        Ok(version) => Ok((version, bytes.0.to_vec())),
        Err(bad) => Err(problem(ProblemKind::Syntax, &bad.to_string(), "a version")),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_check_sum_is_the_common_crc_32() {
        // The check value every catalogue of CRCs gives for this text.
        let sum = crc_32(b"123456789".iter());
        assert_eq!(sum, 0xcbf4_3926, "CRC-32/ISO-HDLC");
    }

    #[test]
    fn letters_outside_a_link_and_stray_bits_are_refused() {
        let whole = wrap(&[1, 0]);
        assert_eq!(unwrap(&whole), Ok(vec![1, 0]), "sections come back");
        assert_eq!(
            unwrap(&format!("https://example.org/a?b#{whole} ")),
            Ok(vec![1, 0]),
            "whole address"
        );
        for bad in [
            "",
            "A",
            "AAAA",
            "AAAAAA",
            &format!("{whole}="),
            "Ä",
            "a b",
            "+/",
        ] {
            assert!(unwrap(bad).is_err(), "`{bad}` is no link");
        }
    }

    #[test]
    fn a_later_version_is_named() {
        let mut body = vec![7];
        let check = sum(&body).to_le_bytes();
        body.extend(check);
        let problem = unwrap(&URL_SAFE_NO_PAD.encode(body)).expect_err("later");
        assert_eq!(problem.kind, ProblemKind::Version, "{problem:?}");
    }
}
