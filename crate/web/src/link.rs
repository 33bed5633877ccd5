//! A layout within a link: its file without private notes, deflated, in the
//! letters a link may hold.
use base64::Engine;
use base64::engine::general_purpose::URL_SAFE_NO_PAD;
use miniz_oxide::deflate::compress_to_vec;
use miniz_oxide::inflate::decompress_to_vec_with_limit;
use planner::layout::{Layout, MAX_FILE_BYTES, open};
use wasm_bindgen::prelude::*;

use crate::Planner;

/// The first letter says how the rest is written.
const PLAIN_FILE: char = 'f';

/// What stands after the `#`.
fn written(layout: &Layout) -> String {
    let mut shared = layout.clone();
    shared.head.note.clear();
    shared.intended.clear();
    let file = serde_json::to_vec(&shared).unwrap_or_default();
    format!(
        "{PLAIN_FILE}{}",
        URL_SAFE_NO_PAD.encode(compress_to_vec(&file, 9))
    )
}

/// Why a link holds no layout.
#[derive(Debug, thiserror::Error)]
enum Unread {
    #[error("it was made by a newer planner, or is not one of ours")]
    Kind,
    #[error("part of it is missing")]
    Cut,
    #[error("it holds {0} mistakes")]
    Bad(usize),
}

fn read(payload: &str) -> Result<Layout, Unread> {
    let code = payload.strip_prefix(PLAIN_FILE).ok_or(Unread::Kind)?;
    let packed = URL_SAFE_NO_PAD.decode(code).map_err(|_| Unread::Cut)?;
    let file = decompress_to_vec_with_limit(&packed, MAX_FILE_BYTES).map_err(|_| Unread::Cut)?;
    let text = String::from_utf8(file).map_err(|_| Unread::Cut)?;
    open(&text).map_err(|problems| Unread::Bad(problems.len()))
}

#[wasm_bindgen]
impl Planner {
    /// What a link to this layout carries after its `#`.
    #[must_use]
    pub fn link(&self) -> String {
        written(self.now())
    }

    /// Opens what a link carries after its `#`.
    ///
    /// # Errors
    /// When it holds no layout; the open one stays.
    pub fn open_link(&mut self, payload: &str) -> Result<(), JsError> {
        let layout = read(payload)?;
        self.open(layout);
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use planner::starters::harbour_supper;

    #[test]
    fn a_link_carries_the_layout_without_its_private_note() {
        let mut layout = harbour_supper();
        layout.head.note = "the client must not see this".into();
        let mut public = layout.clone();
        public.head.note.clear();
        assert_eq!(
            read(&written(&layout)).expect("reads"),
            public,
            "all but the note"
        );
    }

    #[test]
    fn cut_and_foreign_links_are_refused() {
        let whole = written(&harbour_supper());
        for cut in [0, 1, 2, whole.len() / 2, whole.len() - 1] {
            assert!(
                read(&whole[..cut]).is_err(),
                "cut at {cut} of {}",
                whole.len()
            );
        }
        assert!(matches!(read("x123"), Err(Unread::Kind)), "another writing");
    }
}
