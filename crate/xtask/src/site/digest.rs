//! Hashes and sizes of what is emitted.

use std::fs;
use std::io::Write;
use std::num::NonZeroU64;
use std::path::Path;

use anyhow::Result;
use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use flate2::Compression;
use flate2::write::GzEncoder;
use sha2::{Digest, Sha256};

/// How often the shortest way to pack is searched for; each round takes a
/// second or so.
const ROUNDS: NonZeroU64 = NonZeroU64::new(5).unwrap();

/// Twelve hexadecimal digits that stand for some content.
pub(super) fn short(content: &[u8]) -> String {
    hex(&Sha256::digest(content), 6)
}

/// The source expression of a content security policy, and the value of an
/// `integrity` attribute: `sha256-` and the hash in base64.
pub(super) fn integrity(content: &[u8]) -> String {
    format!("sha256-{}", STANDARD.encode(Sha256::digest(content)))
}

/// Sixteen hexadecimal digits that stand for the names and contents of files.
pub(super) fn of_files(dir: &Path, files: &[String]) -> Result<String> {
    let mut hash = Sha256::new();
    for name in files {
        let content = fs::read(dir.join(name))?;
        hash.update((name.len() as u64).to_le_bytes());
        hash.update(name);
        hash.update((content.len() as u64).to_le_bytes());
        hash.update(content);
    }
    Ok(hex(&hash.finalize(), 8))
}

/// Raw deflate, searched for longer than `gzip -9` does, as
/// `DecompressionStream("deflate-raw")` reads it.
pub(super) fn deflated(content: &[u8]) -> Result<Vec<u8>> {
    let mut packed = Vec::new();
    let options = zopfli::Options {
        iteration_count: ROUNDS,
        ..zopfli::Options::default()
    };
    zopfli::compress(options, zopfli::Format::Deflate, content, &mut packed)?;
    Ok(packed)
}

/// Length in bytes after `gzip -9`.
pub(crate) fn gzipped_len(content: &[u8]) -> Result<usize> {
    let mut encoder = GzEncoder::new(Vec::new(), Compression::best());
    encoder.write_all(content)?;
    Ok(encoder.finish()?.len())
}

fn hex(hash: &[u8], bytes: usize) -> String {
    let digits = hash.iter().take(bytes);
    digits.map(|byte| format!("{byte:02x}")).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn integrity_is_that_of_the_standard_text() {
        // SHA-256 of "abc", FIPS 180-2 appendix B.1, in base64.
        assert_eq!(
            integrity(b"abc"),
            "sha256-ungWv48Bz+pBQUDeXa4iI7ADYaOWF3qctBD/YfIAFa0=",
            "hash of abc"
        );
    }

    #[test]
    fn a_moved_byte_changes_the_revision() {
        let dir = tempfile::tempdir().expect("a temporary directory");
        let write = |name: &str, content: &str| {
            fs::write(dir.path().join(name), content).expect("file written");
        };
        let files = ["a".to_owned(), "b".to_owned()];
        write("a", "12");
        write("b", "3");
        let before = of_files(dir.path(), &files).expect("revision");
        write("a", "1");
        write("b", "23");
        let after = of_files(dir.path(), &files).expect("revision");
        assert_ne!(before, after, "the border between files counts");
    }

    #[test]
    fn deflated_is_undone_by_a_reader() {
        let text = b"plate plate plate plate plate".as_slice();
        let packed = deflated(text).expect("packed");
        let mut unpacked = Vec::new();
        let mut reader = flate2::read::DeflateDecoder::new(packed.as_slice());
        std::io::Read::read_to_end(&mut reader, &mut unpacked).expect("unpacked");
        assert_eq!(unpacked, text, "round trip");
    }
}
