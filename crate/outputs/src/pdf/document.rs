//! The file: pages, what they share, and what it says of itself.
use std::collections::BTreeMap;

use miniz_oxide::deflate::compress_to_vec_zlib;
use pdf_writer::types::{CidFontType, FontFlags, SystemInfo, UnicodeCmap};
use pdf_writer::{Filter, Finish as _, Name, Pdf, Rect, Ref, Str, TextStr};

use super::Meta;
use crate::fonts::{Fonts, Part};

/// How hard streams are packed: more takes three times as long for 2%.
const PACKED: u8 = 6;
/// Opacities are told apart to a thousandth.
const FINE: f64 = 1000.0;
/// How letters are numbered in a font: as in its file.
const ORDER: SystemInfo = SystemInfo {
    registry: Str(b"Adobe"),
    ordering: Str(b"Identity"),
    supplement: 0,
};

/// A file in the making.
pub(super) struct Document {
    pdf: Pdf,
    next: Ref,
    tree: Ref,
    /// All pages and forms share one list of what they refer to.
    resources: Ref,
    pages: Vec<Ref>,
    forms: Vec<Ref>,
    states: BTreeMap<[u16; 2], Ref>,
    pub(super) fonts: Fonts,
}

impl Document {
    pub(super) fn new() -> Self {
        Self {
            pdf: Pdf::new(),
            next: Ref::new(3),
            tree: Ref::new(1),
            resources: Ref::new(2),
            pages: Vec::new(),
            forms: Vec::new(),
            states: BTreeMap::new(),
            fonts: Fonts::new(),
        }
    }

    /// The name of a state in which fills and strokes are so opaque.
    pub(super) fn state(&mut self, fill: f64, stroke: f64) -> String {
        let key = [fill, stroke].map(|share| (share.clamp(0.0, 1.0) * FINE).round() as u16);
        let next = &mut self.next;
        let state = *self.states.entry(key).or_insert_with(|| next.bump());
        format!("S{}", state.get())
    }

    /// The name of what is drawn as one and shown within `area`.
    pub(super) fn form(&mut self, [left, top, right, end]: [f64; 4], content: &[u8]) -> String {
        let (id, shared) = (self.next.bump(), self.resources);
        let packed = compress_to_vec_zlib(content, PACKED);
        let mut form = self.pdf.form_xobject(id, &packed);
        form.filter(Filter::FlateDecode);
        form.bbox(Rect::new(left as f32, top as f32, right as f32, end as f32));
        form.pair(Name(b"Resources"), shared);
        let mut group = form.group();
        group.transparency();
        group.color_space().device_rgb();
        group.finish();
        form.finish();
        self.forms.push(id);
        format!("X{}", id.get())
    }

    /// Adds a page so large, in points.
    pub(super) fn page(&mut self, [wide, high]: [f64; 2], content: &[u8]) {
        let [id, stream] = [(); 2].map(|()| self.next.bump());
        let packed = compress_to_vec_zlib(content, PACKED);
        self.pdf.stream(stream, &packed).filter(Filter::FlateDecode);
        let mut page = self.pdf.page(id);
        page.parent(self.tree).contents(stream);
        page.media_box(Rect::new(0.0, 0.0, wide as f32, high as f32));
        page.pair(Name(b"Resources"), self.resources);
        let mut group = page.group();
        group.transparency();
        group.color_space().device_rgb();
        group.finish();
        page.finish();
        self.pages.push(id);
    }

    /// The bytes of the file.
    pub(super) fn finish(mut self, meta: &Meta) -> Vec<u8> {
        let parts = std::mem::take(&mut self.fonts).parts();
        let fonts: Vec<(&str, Ref)> = parts
            .iter()
            .map(|part| (part.cut.name(), self.font(part)))
            .collect();
        for (key, id) in &self.states {
            let [fill, stroke] = key.map(|share| f32::from(share) / FINE as f32);
            let mut state = self.pdf.ext_graphics(*id);
            state.non_stroking_alpha(fill).stroking_alpha(stroke);
        }
        let mut shared = self.pdf.indirect(self.resources).dict();
        let mut list = shared.insert(Name(b"ExtGState")).dict();
        for id in self.states.values() {
            list.pair(Name(format!("S{}", id.get()).as_bytes()), *id);
        }
        list.finish();
        let mut list = shared.insert(Name(b"XObject")).dict();
        for id in &self.forms {
            list.pair(Name(format!("X{}", id.get()).as_bytes()), *id);
        }
        list.finish();
        let mut list = shared.insert(Name(b"Font")).dict();
        for (name, id) in fonts {
            list.pair(Name(name.as_bytes()), id);
        }
        list.finish();
        shared.finish();
        let count = self.pages.len() as i32;
        let mut tree = self.pdf.pages(self.tree);
        tree.kids(self.pages.iter().copied()).count(count);
        tree.finish();
        let [catalog, info] = [(); 2].map(|()| self.next.bump());
        let mut root = self.pdf.catalog(catalog);
        root.pages(self.tree).lang(TextStr(meta.language));
        root.viewer_preferences().display_doc_title(true);
        root.finish();
        self.pdf.document_info(info).title(TextStr(meta.title));
        self.pdf.finish()
    }

    /// Embeds what is used of a font.
    fn font(&mut self, part: &Part) -> Ref {
        let [font, letters, about, file, map] = [(); 5].map(|()| self.next.bump());
        let name = part.name();
        let name = Name(name.as_bytes());
        let mut whole = self.pdf.type0_font(font);
        whole
            .base_font(name)
            .encoding_predefined(Name(b"Identity-H"));
        whole.descendant_font(letters).to_unicode(map);
        whole.finish();
        let mut cid = self.pdf.cid_font(letters);
        cid.subtype(CidFontType::Type2).base_font(name);
        cid.system_info(ORDER).font_descriptor(about);
        cid.default_width(0.0)
            .cid_to_gid_map_predefined(Name(b"Identity"));
        cid.widths().consecutive(0, part.widths.iter().copied());
        cid.finish();
        let mut descriptor = self.pdf.font_descriptor(about);
        let (measures, mut flags) = (&part.measures, FontFlags::SERIF | FontFlags::SYMBOLIC);
        flags.set(FontFlags::ITALIC, measures.slant != 0.0);
        let [left, low, right, high] = measures.bounds;
        descriptor.name(name).flags(flags);
        descriptor.bbox(Rect::new(left, low, right, high));
        descriptor.italic_angle(measures.slant);
        descriptor.ascent(measures.ascent).descent(measures.descent);
        descriptor
            .cap_height(measures.capitals)
            .stem_v(measures.stem);
        descriptor.font_file2(file);
        descriptor.finish();
        let packed = compress_to_vec_zlib(&part.file, PACKED);
        let mut stream = self.pdf.stream(file, &packed);
        stream.filter(Filter::FlateDecode);
        stream.pair(Name(b"Length1"), part.file.len() as i32);
        stream.finish();
        let mut unicode = UnicodeCmap::new(Name(b"Letters"), ORDER);
        for &(code, letter) in &part.letters {
            unicode.pair(code, letter);
        }
        let unicode = unicode.finish();
        let packed = compress_to_vec_zlib(&unicode, PACKED);
        self.pdf.cmap(map, &packed).filter(Filter::FlateDecode);
        font
    }
}
