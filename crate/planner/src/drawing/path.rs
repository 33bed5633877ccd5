//! Compact path data: relative commands on a 0.1 mm grid.
//!
//! Positions are rounded once, to whole tenths, and every step is the
//! difference of two rounded positions, so errors never add up along a path.

use glam::DVec2;

/// Path data being written.
#[derive(Clone, Default)]
pub(super) struct PathData {
    text: String,
    command: u8,
    x: i32,
    y: i32,
}

/// `value` in mm as a whole number of tenths; not a number becomes 0.
fn tenths(value: f64) -> i32 {
    (value * 10.0).round() as i32
}

/// Appends `count / 10^places` without trailing zeros or a leading zero.
fn push_decimal(text: &mut String, count: i32, places: u32) {
    let unit = 10_u32.pow(places);
    if count < 0 {
        text.push('-');
    }
    let whole = count.unsigned_abs() / unit;
    let part = count.unsigned_abs() % unit;
    if whole > 0 || part == 0 {
        text.push_str(&whole.to_string());
    }
    if part > 0 {
        text.push('.');
        let digits = (part + unit).to_string();
        text.push_str(digits[1..].trim_end_matches('0'));
    }
}

/// `value` with at most two decimals, for attributes.
pub(super) fn short(value: f64) -> String {
    let mut text = String::new();
    push_decimal(&mut text, (value * 100.0).round() as i32, 2);
    text
}

/// `value` mm to a tenth, for attributes.
pub(super) fn tenth(value: f64) -> String {
    let mut text = String::new();
    push_decimal(&mut text, tenths(value), 1);
    text
}

impl PathData {
    fn number(&mut self, count: i32, first: bool) {
        if !first && count >= 0 {
            self.text.push(' ');
        }
        push_decimal(&mut self.text, count, 1);
    }

    /// Starts a command, leaving its letter out where it repeats.
    fn command(&mut self, letter: u8, first: i32) {
        if self.command == letter {
            self.number(first, false);
        } else {
            self.text.push(char::from(letter));
            self.number(first, true);
            self.command = letter;
        }
    }

    /// Lifts the pen to `p`.
    pub(super) fn move_to(&mut self, p: DVec2) {
        (self.x, self.y) = (tenths(p.x), tenths(p.y));
        self.command = 0;
        self.command(b'M', self.x);
        self.number(self.y, false);
    }

    /// A straight line to `p`.
    pub(super) fn line_to(&mut self, p: DVec2) {
        let (x, y) = (tenths(p.x), tenths(p.y));
        self.command(b'l', x - self.x);
        self.number(y - self.y, false);
        (self.x, self.y) = (x, y);
    }

    /// A quadratic curve with control point `c` to `p`.
    pub(super) fn quad_to(&mut self, c: DVec2, p: DVec2) {
        let (x, y) = (tenths(p.x), tenths(p.y));
        self.command(b'q', tenths(c.x) - self.x);
        self.number(tenths(c.y) - self.y, false);
        self.number(x - self.x, false);
        self.number(y - self.y, false);
        (self.x, self.y) = (x, y);
    }

    /// Joins the end to the beginning.
    pub(super) fn close(&mut self) {
        self.text.push('Z');
        self.command = 0;
    }

    /// A smooth closed curve: through the midpoints of the sides, with the
    /// corners as control points.
    pub(super) fn smooth(&mut self, loop_: impl Iterator<Item = DVec2> + Clone) {
        let mut points = loop_.clone();
        let (Some(first), Some(last)) = (points.next(), loop_.clone().last()) else {
            return;
        };
        self.move_to((first + last) / 2.0);
        let mut here = first;
        for next in points.chain([first]) {
            self.quad_to(here, (here + next) / 2.0);
            here = next;
        }
        self.close();
    }

    /// A closed polygon with straight sides.
    pub(super) fn polygon(&mut self, loop_: impl Iterator<Item = DVec2>) {
        self.straight(loop_);
        if self.command != 0 {
            self.close();
        }
    }

    /// An open line with straight pieces.
    pub(super) fn straight(&mut self, line: impl Iterator<Item = DVec2>) {
        for (i, p) in line.enumerate() {
            if i == 0 {
                self.move_to(p);
            } else {
                self.line_to(p);
            }
        }
    }

    /// A smooth open line from the first point to the last.
    pub(super) fn open(&mut self, line: &[DVec2]) {
        if let Some(&first) = line.first() {
            self.move_to(first);
            self.onward(line);
        }
    }

    /// The rest of a smooth open line whose first point the pen stands on.
    pub(super) fn onward(&mut self, line: &[DVec2]) {
        if line.len() < 3 {
            for &p in line.iter().skip(1) {
                self.line_to(p);
            }
            return;
        }
        let end = line.len() - 2;
        for i in 1..=end {
            let to = if i == end {
                line[i + 1]
            } else {
                (line[i] + line[i + 1]) / 2.0
            };
            self.quad_to(line[i], to);
        }
    }

    /// Adds the whole of another path.
    pub(super) fn append(&mut self, other: PathData) {
        self.text.push_str(&other.text);
        self.command = 0;
    }

    /// True while nothing has been written.
    pub(super) fn is_empty(&self) -> bool {
        self.text.is_empty()
    }

    /// The data, ready for a `d` attribute.
    pub(super) fn finish(self) -> String {
        self.text
    }
}

#[cfg(test)]
mod tests {
    use glam::dvec2;

    use super::*;

    fn of(count: i32) -> String {
        let mut text = String::new();
        push_decimal(&mut text, count, 1);
        text
    }

    #[test]
    fn decimals_are_short() {
        let cases = [(0, "0"), (5, ".5"), (-5, "-.5"), (10, "1"), (-123, "-12.3")];
        for (count, text) in cases {
            assert_eq!(of(count), text, "{count} tenths");
        }
        assert_eq!(short(1.005), "1", "hundredths drop trailing zeros");
        assert_eq!(short(0.05), ".05", "a zero between point and digit stays");
    }

    #[test]
    fn steps_are_differences_of_rounded_positions() {
        let mut path = PathData::default();
        path.straight([dvec2(0.04, 0.0), dvec2(0.44, 1.0), dvec2(0.84, 1.96)].into_iter());
        assert_eq!(path.finish(), "M0 0l.4 1 .4 1", "quantised once, to 0.1 mm");
    }

    #[test]
    fn smooth_closes_through_midpoints() {
        let mut path = PathData::default();
        path.smooth([dvec2(0.0, 0.0), dvec2(2.0, 0.0), dvec2(2.0, 2.0)].into_iter());
        assert_eq!(
            path.finish(),
            "M1 1q-1-1 0-1 1 0 1 1 0 1-1 0Z",
            "three curves"
        );
    }

    #[test]
    fn nothing_comes_of_no_points() {
        let mut path = PathData::default();
        path.smooth(core::iter::empty());
        path.polygon(core::iter::empty());
        path.open(&[]);
        assert!(path.is_empty(), "no points, no data");
    }
}
