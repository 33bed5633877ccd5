//! A short link as a square of dark and light modules.
use std::fmt::Write as _;

use qrcodegen::{QrCode, QrCodeEcc, QrSegment, Version};

/// The largest version drawn. Common practice, no source: a phone reads a
/// larger one off paper only with patience.
pub const MAX_QR_VERSION: u8 = 20;

/// Light modules around the square that a reader needs (ISO/IEC 18004, 9.1;
/// the number is from memory).
const QUIET: usize = 4;

/// The modules of a QR code.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct QrModules {
    /// Modules along each side, without the quiet zone.
    pub side: usize,
    /// Row by row from the top left; true is dark.
    pub dark: Vec<bool>,
}

/// The QR code of a text, at the best error correction that its smallest
/// version leaves room for; nothing when it would need a version above
/// [`MAX_QR_VERSION`].
#[must_use]
pub fn qr(text: &str) -> Option<QrModules> {
    let segments = QrSegment::make_segments(text);
    let (least, most) = (Version::MIN, Version::new(MAX_QR_VERSION));
    let ecc = QrCodeEcc::Low;
    let code = QrCode::encode_segments_advanced(&segments, ecc, least, most, None, true).ok()?;
    let places = (0..code.size()).flat_map(|y| (0..code.size()).map(move |x| (x, y)));
    Some(QrModules {
        side: usize::try_from(code.size()).ok()?,
        dark: places.map(|(x, y)| code.get_module(x, y)).collect(),
    })
}

impl QrModules {
    /// Side of the picture in modules, the quiet zone included: the view box
    /// that [`Self::svg_path`] is drawn in.
    #[must_use]
    pub fn extent(&self) -> usize {
        self.side + 2 * QUIET
    }

    /// The dark modules as the `d` of one SVG path, one unit a module, runs
    /// of a row joined.
    #[must_use]
    pub fn svg_path(&self) -> String {
        let mut path = String::new();
        for (y, row) in self.dark.chunks(self.side.max(1)).enumerate() {
            let mut x = 0;
            for run in row.chunk_by(|a, b| a == b) {
                if run[0] {
                    let (left, top, wide) = (x + QUIET, y + QUIET, run.len());
                    let _ = write!(path, "M{left} {top}h{wide}v1h-{wide}z");
                }
                x += run.len();
            }
        }
        path
    }
}
