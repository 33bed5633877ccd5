//! How wide words are on paper, and how they are broken into lines.
//!
//! Widths are those of Helvetica's metrics, which Arial, Liberation Sans and
//! others share; a line near its limit is told its length besides, so that it
//! keeps to its column in any letters a device has instead.

/// Widths of the letters from space to `~`, in 1/1000 of their size (Adobe's
/// Helvetica font metrics, from memory; those of Liberation Sans are the same).
#[rustfmt::skip]
static WIDTHS: [u16; 95] = [
    278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278,
    556, 556, 556, 556, 556, 556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556,
    1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833, 722, 778,
    667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556,
    333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556,
    556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584,
];
/// Bold letters are wider by so much.
const BOLD: f64 = 1.09;

/// How wide a text is, mm, in letters of this size.
pub(super) fn width(text: &str, size: f64, bold: bool) -> f64 {
    let thousandths: u32 = text.chars().map(|c| u32::from(letter(c))).sum();
    f64::from(thousandths) / 1_000.0 * size * if bold { BOLD } else { 1.0 }
}

fn letter(c: char) -> u16 {
    let code = c as u32;
    let known = code.checked_sub(32).and_then(|n| WIDTHS.get(n as usize));
    match known {
        Some(width) => *width,
        None if code < 0x250 && c.is_uppercase() => 722,
        None if code < 0x1100 => 580,
        // Whole squares, as of Chinese, and pictures.
        None if code < 0x2100 => 600,
        None => 1_050,
    }
}

/// A text in lines no wider than this: broken at spaces, within a word only
/// where it alone is wider.
pub(super) fn lines(text: &str, size: f64, bold: bool, most: f64) -> Vec<String> {
    let mut out = Vec::new();
    for part in text.split('\n') {
        let mut line = String::new();
        for word in part.split(' ') {
            let joined = if line.is_empty() {
                word.to_string()
            } else {
                [line.as_str(), word].join(" ")
            };
            if width(&joined, size, bold) <= most {
                line = joined;
                continue;
            }
            if !line.is_empty() {
                out.push(std::mem::take(&mut line));
            }
            for c in word.chars() {
                let mut longer = line.clone();
                longer.push(c);
                if width(&longer, size, bold) > most && !line.is_empty() {
                    out.push(std::mem::take(&mut line));
                    line.push(c);
                } else {
                    line = longer;
                }
            }
        }
        out.push(line);
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_line_is_wider_than_its_column() {
        let text =
            "a pot of mussels and Donaudampfschifffahrtsgesellschaftskapitän 蛤蜊 next to it";
        for most in [9.0, 17.0, 40.0, 300.0] {
            let all = lines(text, 3.2, false, most);
            for line in &all {
                assert!(width(line, 3.2, false) <= most, "{line} in {most}");
            }
            let whole: String = all.concat().split(' ').collect();
            assert_eq!(
                whole,
                text.split(' ').collect::<String>(),
                "nothing is lost"
            );
        }
        assert_eq!(lines("one\ntwo", 3.2, false, 90.0), ["one", "two"]);
        assert_eq!(lines("", 3.2, false, 90.0), [""]);
    }
}
