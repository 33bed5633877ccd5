//! Text without what does not belong in it.

/// As [`clean_text`], line by line: a note keeps its line feeds, and of control
/// characters these alone.
pub(super) fn clean_note(text: &str) -> String {
    let mut note = String::new();
    for line in text.lines() {
        note.push_str(&clean_text(line));
        note.push('\n');
    }
    note.trim().into()
}

/// Text without control, zero-width and direction-changing characters, and
/// without white space at its ends. Joiners that scripts need stay.
#[must_use]
pub fn clean_text(text: &str) -> String {
    let kept = |c: &char| {
        !c.is_control()
            && !matches!(*c,
                '\u{061c}' | '\u{200b}' | '\u{200e}' | '\u{200f}' | '\u{2028}' | '\u{2029}'
                | '\u{202a}'..='\u{202e}' | '\u{2060}' | '\u{2066}'..='\u{2069}' | '\u{feff}')
    };
    let spaced = text.chars().map(|c| {
        if matches!(c, '\n' | '\t' | '\r') {
            ' '
        } else {
            c
        }
    });
    spaced.filter(kept).collect::<String>().trim().into()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::layout::{Layout, LayoutId, open};

    #[test]
    fn a_note_keeps_its_line_feeds_and_no_other_control_character() {
        let note = "one\r\ntwo\n\n  three\u{7}\u{1b}\tof\u{202e} it \n";
        let mut layout = Layout::empty(LayoutId(7));
        layout.head.note = note.into();
        layout.head.title = note.into();
        let read = open(&layout.to_json()).expect("opens").head;
        assert_eq!(read.note, "one\ntwo\n\nthree of it", "line by line");
        assert_eq!(read.title, "one  two    three of it", "a title is one line");
    }

    #[test]
    fn what_is_clean_stays_as_it_is() {
        for code in (0..0x20).chain(0x7f..0xa0) {
            let control = char::from_u32(code).expect("a character");
            let note = clean_note(&format!("a{control}b"));
            let kept = note.chars().filter(|c| c.is_control()).collect::<String>();
            let wanted = if control == '\n' { "\n" } else { "" };
            assert_eq!(kept, wanted, "{code:#x}");
            assert_eq!(clean_note(&note), note, "{code:#x} once cleaned");
        }
    }
}
