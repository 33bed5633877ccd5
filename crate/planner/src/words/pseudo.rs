//! Words as no one speaks them, to try a page with before it is translated:
//! longer ones, and ones that run from right to left. Named places stay as they
//! are, so that what fills them can be told from what the table says.

/// Letters and what stands for them: none of a line of the table is left as it is.
const LETTERS: &str = "aàbƀcçdđeéfḟgğhĥiïjĵkķlĺmṁnñoöpṗqɋrřsštŧuüvṽwŵxẋyýzž\
                       AÀBɃCÇDĐEÉFḞGĞHĤIÏJĴKĶLĹMṀNÑOÖPṖQɊRŘSŠTŦUÜVṼWŴXẊYÝZŽ";

/// Begin and end of what runs right to left, letter by letter.
const OVERRIDE: [char; 2] = ['\u{202e}', '\u{202c}'];
/// Begin and end of what keeps its own direction within.
const ISOLATE: [char; 2] = ['\u{2068}', '\u{2069}'];

/// The line with each of its letters accented and each vowel twice, so about
/// two fifths longer.
#[must_use]
pub fn long(line: &str) -> String {
    let mut text = String::new();
    each(line, |piece| match piece {
        Piece::Letter(letter) => {
            let accented = accented(letter);
            text.push(accented);
            if "aeiouy".contains(letter.to_ascii_lowercase()) {
                text.extend(accented.to_lowercase());
            }
        }
        Piece::Place(name) => text.push_str(name),
        Piece::Sign(sign) => text.push(sign),
    });
    text
}

/// The line from right to left, with what fills its places as it is written.
#[must_use]
pub fn mirrored(line: &str) -> String {
    let mut text = OVERRIDE[0].to_string();
    each(line, |piece| match piece {
        Piece::Letter(letter) | Piece::Sign(letter) => text.push(letter),
        Piece::Place(name) => {
            text.push(ISOLATE[0]);
            text.push_str(name);
            text.push(ISOLATE[1]);
        }
    });
    text.push(OVERRIDE[1]);
    text
}

/// A piece of a line.
enum Piece<'a> {
    /// A letter of the words.
    Letter(char),
    /// A named place with its braces, or the head of one that has two forms.
    Place(&'a str),
    Sign(char),
}

fn each<'a>(line: &'a str, mut take: impl FnMut(Piece<'a>)) {
    let mut rest = line;
    while let Some(sign) = rest.chars().next() {
        let named = rest
            .strip_prefix('{')
            .and_then(|inside| inside.find([':', '}']));
        let length = match named {
            // The forms of a count are words; its name is none.
            Some(end) if rest.as_bytes().get(1 + end) == Some(&b':') => {
                rest[..end + 2]
                    .chars()
                    .for_each(|sign| take(Piece::Sign(sign)));
                end + 2
            }
            Some(end) => {
                take(Piece::Place(&rest[..end + 2]));
                end + 2
            }
            None => {
                take(if sign.is_ascii_alphabetic() {
                    Piece::Letter(sign)
                } else {
                    Piece::Sign(sign)
                });
                sign.len_utf8()
            }
        };
        rest = &rest[length..];
    }
}

fn accented(letter: char) -> char {
    let mut after = LETTERS.chars().skip_while(|each| *each != letter);
    after.nth(1).unwrap_or(letter)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_letter_is_left_and_places_are() {
        assert_eq!(long("Add a {thing} to it"), "Ààđđ àà {thing} ŧöö ïïŧ");
        let count = long("{count:1 note|{count} notes} on {thing}");
        assert_eq!(count, "{count:1 ñööŧéé|{count} ñööŧééš} ööñ {thing}");
        let all: String = ('a'..='z').chain('A'..='Z').collect();
        assert!(
            !long(&all)
                .chars()
                .any(|letter| letter.is_ascii_alphabetic()),
            "{}",
            long(&all)
        );
    }

    #[test]
    fn what_fills_a_place_keeps_its_direction() {
        assert_eq!(
            mirrored("on {thing}."),
            "\u{202e}on \u{2068}{thing}\u{2069}.\u{202c}"
        );
        let count = mirrored("{count:1 note|{count} notes}");
        assert_eq!(
            count,
            "\u{202e}{count:1 note|\u{2068}{count}\u{2069} notes}\u{202c}"
        );
    }
}
