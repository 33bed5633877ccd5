//! Mask guides as files: one PNG an exposure, row by row, into a folder or an
//! archive, with a sheet that shows where each goes.
use std::fs::{self, File, create_dir_all};
use std::io::{BufWriter, Result, Write};
use std::path::Path;

use planner::drawing::guide_sheet;
use planner::exposures::{Guide, GuideFile, OVERVIEW, guides};
use planner::layout::Layout;
use planner::optics::Pixels;
use zip::write::SimpleFileOptions;

/// Why a layout has no guides.
pub(crate) const NONE: &str =
    "no guides: there is no exposure to make one of, or the lens cannot show this frame";

/// What is to be said of the size of the guides, where the layout does not say
/// it.
pub(crate) fn note(layout: &Layout) -> Option<String> {
    let Pixels { size, told, .. } = Pixels::of(layout);
    let [wide, high] = size;
    (!told).then(|| {
        format!("camera.pixels is not said: made at {wide} × {high}, as usual for this sensor")
    })
}

/// Writes every guide and the sheet: to an archive when `out` ends in `.zip`,
/// else into the folder of that name.
///
/// # Errors
/// When something cannot be written.
pub(crate) fn written(layout: &Layout, out: &Path) -> Result<()> {
    let sheet = guide_sheet(layout).unwrap_or_default();
    let packed = out
        .extension()
        .is_some_and(|e| e.eq_ignore_ascii_case("zip"));
    if !packed {
        create_dir_all(out)?;
        fs::write(out.join(OVERVIEW), sheet)?;
        for file in guides(layout) {
            let mut to = BufWriter::new(File::create(out.join(&file.name))?);
            picture(layout, &file, &mut to)?;
            to.flush()?;
        }
        return Ok(());
    }
    let mut archive = zip::ZipWriter::new(BufWriter::new(File::create(out)?));
    // Pictures are packed already.
    let stored = SimpleFileOptions::default().compression_method(zip::CompressionMethod::Stored);
    archive.start_file(OVERVIEW, SimpleFileOptions::default())?;
    archive.write_all(sheet.as_bytes())?;
    for file in guides(layout) {
        archive.start_file(&file.name, stored)?;
        picture(layout, &file, &mut archive)?;
    }
    archive.finish()?.flush()
}

/// One guide as a grey picture of 8 bits.
fn picture(layout: &Layout, file: &GuideFile, to: &mut impl Write) -> Result<()> {
    let Some(mut guide) = Guide::new(layout, file.exposure) else {
        return Ok(());
    };
    let [wide, high] = guide.size();
    let mut png = png::Encoder::new(to, wide as u32, high as u32);
    png.set_color(png::ColorType::Grayscale);
    png.set_depth(png::BitDepth::Eight);
    png.set_filter(png::Filter::Up);
    let mut png = png.write_header()?;
    let mut rows = png.stream_writer()?;
    let mut row = vec![0; wide];
    for y in 0..high {
        guide.row(y, &mut row);
        rows.write_all(&row)?;
    }
    rows.finish()?;
    Ok(())
}
