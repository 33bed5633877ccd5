//! Drawings as pages of a PDF, each exactly as large as its drawing says.
//!
//! What the file holds of fonts is what its words need; nothing in it tells when
//! or where it was made, so the same drawings give the same bytes.
mod document;
mod matrix;
mod page;
mod paint;

use std::collections::BTreeSet;

use document::Document;

use crate::svg::{self, Fault};

/// What a document says of itself.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Meta<'a> {
    /// Its title.
    pub title: &'a str,
    /// The language of its words, as BCP 47 writes it.
    pub language: &'a str,
}

/// A document.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Pdf {
    /// The file.
    pub bytes: Vec<u8>,
    /// Letters the serif has no shape of; in the file stands an empty box for each.
    pub missing: Vec<char>,
}

/// Makes a document page by page.
pub struct Maker {
    document: Document,
    missing: BTreeSet<char>,
}

impl Default for Maker {
    fn default() -> Self {
        Self::new()
    }
}

impl Maker {
    /// A document without pages.
    #[must_use]
    pub fn new() -> Self {
        Self {
            document: Document::new(),
            missing: BTreeSet::new(),
        }
    }

    /// Adds a drawing as a page.
    ///
    /// # Errors
    /// When it holds what would be left out of the page; the document is as
    /// it was.
    pub fn page(&mut self, svg: &str) -> Result<(), Fault> {
        let drawing = svg::read(svg)?;
        page::add(&mut self.document, &drawing, &mut self.missing);
        Ok(())
    }

    /// The document.
    #[must_use]
    pub fn finish(self, meta: &Meta) -> Pdf {
        Pdf {
            bytes: self.document.finish(meta),
            missing: self.missing.into_iter().collect(),
        }
    }
}

/// Drawings as a document, one a page.
///
/// # Errors
/// When one of them holds what would be left out.
pub fn pdf(pages: &[&str], meta: &Meta) -> Result<Pdf, Fault> {
    let mut maker = Maker::new();
    for page in pages {
        maker.page(page)?;
    }
    Ok(maker.finish(meta))
}
