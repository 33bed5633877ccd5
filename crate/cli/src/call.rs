//! What the command was called with.
use lexopt::ValueExt as _;
use lexopt::prelude::{Long, Short, Value};
use planner::readings::Corners;

use crate::help::HELP;
use crate::papers::Wish;
use crate::propose::Asked;

/// A drawing of a layout.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Drawing {
    /// The picture from above.
    Above,
    /// The picture through the lens.
    Lens,
    /// The set from the side.
    Side,
    /// The transparent plan.
    SeeThrough,
}

/// What was asked for.
#[derive(Debug, PartialEq, Eq)]
pub(crate) enum Call {
    /// The readings of a file.
    Read {
        /// The file.
        path: String,
        /// For people rather than as JSON.
        table: bool,
        /// The crop in view, of which the scores are.
        crop: Option<u16>,
        /// The one triangle that is asked for.
        triangle: Option<Corners>,
    },
    /// The picture of a file.
    Draw {
        /// The file.
        path: String,
        /// The exposure whose hands are drawn; all when none is named.
        exposure: Option<u16>,
        /// The crop of which the picture is what it keeps.
        crop: Option<u16>,
        /// Which drawing of it.
        drawing: Drawing,
        /// Pixels across, where it is a PNG.
        width: Option<u32>,
        /// Where it goes; standard output when nowhere is named.
        out: Option<String>,
    },
    /// The mask guides of a file.
    Guides {
        /// The file.
        path: String,
        /// The folder or archive they go to.
        out: String,
    },
    /// The papers of a file.
    Papers {
        /// The file.
        path: String,
        /// Which, and how.
        wish: Wish,
        /// The folder they go to.
        out: String,
    },
    /// Two files beside each other.
    Compare {
        /// The files.
        paths: [String; 2],
        /// For people rather than as JSON.
        table: bool,
    },
    /// What the search proposes for a file.
    Propose {
        /// The file.
        path: String,
        /// How.
        asked: Asked,
        /// For people rather than as JSON.
        table: bool,
        /// The crop in view.
        crop: Option<u16>,
    },
    /// Whether a file is sound.
    Check {
        /// The file.
        path: String,
    },
    /// The link of a file.
    Link {
        /// The file.
        path: String,
        /// The file of another version.
        other: Option<String>,
        /// What the two are called, where that is told.
        names: Vec<String>,
    },
    /// The file of a link.
    Unlink {
        /// The link, or `-`.
        link: String,
        /// Whether it is the other version in it.
        other: bool,
    },
    /// The JSON Schema of a file.
    Schema,
    /// This text.
    Say(String),
}

/// Reads the words the command was called with.
///
/// # Errors
/// An unknown option, an unknown or incomplete call.
pub(crate) fn parse(mut parser: lexopt::Parser) -> Result<Call, lexopt::Error> {
    let mut words: Vec<String> = Vec::new();
    let (mut table, mut side, mut over) = (false, false, false);
    let (mut exposure, mut crop, mut out) = (None, None, None);
    let (mut triangle, mut from, mut width) = (None, None, None);
    let (mut other, mut with, mut names) = (false, None, Vec::new());
    let mut asked = Asked::default();
    let mut wish = Wish::default();
    while let Some(arg) = parser.next()? {
        match arg {
            Long("help") | Short('h') => return Ok(Call::Say(HELP.into())),
            Long("version") => {
                let version = env!("CARGO_PKG_VERSION");
                return Ok(Call::Say(format!("overspread {version}\n")));
            }
            Long("table") => table = true,
            Long("side") => side = true,
            Long("other") => other = true,
            Long("with") => with = Some(parser.value()?.string()?),
            Long("name") => names.push(parser.value()?.string()?),
            Long("see-through") => over = true,
            Long("triangles") => triangle = Some(corners(&parser.value()?.string()?)?),
            Long("exposure") => exposure = Some(parser.value()?.parse()?),
            Long("crop") => crop = Some(parser.value()?.parse()?),
            Long("width") => width = Some(parser.value()?.parse()?),
            Long("from") => from = Some(through(&parser.value()?.string()?)?),
            Short('o') | Long("output") => out = Some(parser.value()?.string()?),
            Long(name) if Wish::knows(name) => {
                let name = name.to_owned();
                wish.option(&name, &mut parser)?;
            }
            Long(name) if Asked::knows(name) => {
                let name = name.to_owned();
                asked.option(&name, &mut parser)?;
            }
            Value(word) => words.push(word.string()?),
            other => return Err(other.unexpected()),
        }
    }
    let words: Vec<&str> = words.iter().map(String::as_str).collect();
    let path = |path: &str| path.to_owned();
    match words[..] {
        [command, ..] if other && command != "unlink" => Err("--other goes with unlink".into()),
        [command, ..] if (with.is_some() || !names.is_empty()) && command != "link" => {
            Err("--with and --name go with link".into())
        }
        [command, ..] if command != "papers" && wish != Wish::default() => {
            Err("--paper, --only, --svg, --csv, --pdf and --ics go with papers".into())
        }
        ["draw", _] if side && (exposure.is_some() || crop.is_some() || from.is_some()) => {
            Err("--side goes without --from, --exposure and --crop".into())
        }
        ["draw", _] if over && (side || crop.is_some() || from.is_some()) => {
            Err("--see-through goes without --side, --from and --crop".into())
        }
        _ if width.is_some() && !out.as_deref().is_some_and(|out| out.ends_with(".png")) => {
            Err("--width goes with draw -o FILE.png".into())
        }
        ["draw", file] if !table => Ok(Call::Draw {
            path: path(file),
            exposure,
            crop,
            drawing: match (side, over) {
                (true, _) => Drawing::Side,
                (_, true) => Drawing::SeeThrough,
                _ => from.unwrap_or(Drawing::Above),
            },
            width,
            out,
        }),
        ["guides", file] if exposure.or(crop).is_none() && !table => match out {
            Some(out) if out != "-" => Ok(Call::Guides {
                path: path(file),
                out,
            }),
            _ => Err("guides are several files: -o names their folder or archive".into()),
        },
        ["papers", file] if exposure.or(crop).is_none() && !table => match out {
            Some(out) if out != "-" => Ok(Call::Papers {
                path: path(file),
                wish,
                out,
            }),
            _ => Err("papers are several files: -o names their folder".into()),
        },
        ["propose", file]
            if from.is_none() && !side && !over && triangle.is_none() && out.is_none() =>
        {
            Ok(Call::Propose {
                path: path(file),
                asked,
                table,
                crop,
            })
        }
        _ if asked != Asked::default() => {
            Err("--seed, --evaluations, --may, --most, --cure, --one, --take and --drive go with propose".into())
        }
        _ if from.is_some() => Err("--from goes with draw".into()),
        _ if side || over => Err("--side and --see-through go with draw".into()),
        _ if exposure.is_some() || out.is_some() => {
            Err("--exposure goes with draw, -o with draw and guides".into())
        }
        ["read", file] => Ok(Call::Read {
            path: path(file),
            table,
            crop,
            triangle,
        }),
        _ if triangle.is_some() => Err("--triangles goes with read".into()),
        _ if crop.is_some() => Err("--crop goes with read, draw and propose".into()),
        ["compare", before, after] => Ok(Call::Compare {
            paths: [before, after].map(path),
            table,
        }),
        _ if table => Err("--table goes with read, compare and propose".into()),
        ["check", file] => Ok(Call::Check { path: path(file) }),
        ["link", file] if matches!(names.len(), 0 | 2) && (with.is_some() || names.is_empty()) => {
            Ok(Call::Link {
                path: path(file),
                other: with,
                names,
            })
        }
        ["link", _] => Err("--name goes with --with, twice: once for each".into()),
        ["unlink", link] => Ok(Call::Unlink {
            link: path(link),
            other,
        }),
        ["schema"] => Ok(Call::Schema),
        [] => Err("a command is missing".into()),
        _ => Err("that call is not known".into()),
    }
}

/// Where a picture is drawn from.
fn through(from: &str) -> Result<Drawing, lexopt::Error> {
    match from {
        "above" => Ok(Drawing::Above),
        "lens" => Ok(Drawing::Lens),
        _ => Err("--from is above or lens".into()),
    }
}

/// What a triangle is asked for of.
fn corners(name: &str) -> Result<Corners, lexopt::Error> {
    let all = [Corners::Fingertips, Corners::Accents];
    let found = all.into_iter().find(|c| c.name() == name);
    found.ok_or_else(|| "--triangles is of fingertips or accents".into())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn called(words: &[&str]) -> Result<Call, lexopt::Error> {
        parse(lexopt::Parser::from_args(words))
    }

    #[test]
    fn calls_are_told_apart() {
        let check = Call::Check { path: "-".into() };
        assert_eq!(called(&["check", "-"]).expect("known"), check, "a file");
        assert_eq!(called(&["schema"]).expect("known"), Call::Schema, "alone");
        let read = Call::Read {
            path: "a".into(),
            table: true,
            crop: None,
            triangle: None,
        };
        let before = called(&["--table", "read", "a"]).expect("known");
        assert_eq!(before, read, "options stand anywhere");
        let draw = Call::Draw {
            path: "a".into(),
            exposure: Some(3),
            crop: Some(7),
            drawing: Drawing::Lens,
            width: Some(800),
            out: Some("b.png".into()),
        };
        let words = [
            "draw",
            "a",
            "--exposure=3",
            "--crop",
            "7",
            "--from",
            "lens",
            "-o",
            "b.png",
            "--width=800",
        ];
        assert_eq!(called(&words).expect("known"), draw, "with values");
        let side = Call::Draw {
            path: "a".into(),
            exposure: None,
            crop: None,
            drawing: Drawing::Side,
            width: None,
            out: None,
        };
        assert_eq!(called(&["draw", "--side", "a"]).expect("known"), side);
        let over = Call::Draw {
            path: "a".into(),
            exposure: Some(3),
            crop: None,
            drawing: Drawing::SeeThrough,
            width: None,
            out: None,
        };
        let words = ["draw", "--see-through", "a", "--exposure=3"];
        assert_eq!(called(&words).expect("known"), over);
        let compare = Call::Compare {
            paths: ["a".into(), "-".into()],
            table: true,
        };
        let words = ["compare", "a", "--table", "-"];
        assert_eq!(called(&words).expect("known"), compare, "two files");
        let link = Call::Link {
            path: "a".into(),
            other: Some("b".into()),
            names: vec!["x".into(), "y".into()],
        };
        let words = ["link", "a", "--with", "b", "--name", "x", "--name=y"];
        assert_eq!(called(&words).expect("known"), link, "two versions");
        let wrong: [&[&str]; 35] = [
            &["papers", "a"],
            &["papers", "a", "-o", "b", "--paper", "a3"],
            &["papers", "a", "-o", "b", "--only", "cups"],
            &["draw", "a", "--pdf"],
            &["draw", "a", "--width", "9"],
            &["draw", "a", "-o", "b.svg", "--width", "9"],
            &["link", "a", "--name", "x", "--name", "y"],
            &["link", "a", "--with", "b", "--name", "x"],
            &["unlink", "a", "--with", "b"],
            &["check", "a", "--with", "b"],
            &["check", "a", "--other"],
            &["link", "a", "--other"],
            &["compare", "a"],
            &["compare", "a", "b", "c"],
            &["compare", "a", "b", "--crop", "3"],
            &["read", "a", "--see-through"],
            &["draw", "a", "--see-through", "--side"],
            &["draw", "a", "--see-through", "--from", "lens"],
            &["draw", "a", "--see-through", "--crop", "3"],
            &["read", "a", "--side"],
            &["draw", "a", "--side", "--crop", "3"],
            &["draw", "a", "--side", "--from", "lens"],
            &[],
            &["check"],
            &["check", "a", "b"],
            &["link", "a", "--table"],
            &["schema", "a"],
            &["check", "a", "--loud"],
            &["draw"],
            &["draw", "a", "--exposure"],
            &["draw", "a", "--crop", "post"],
            &["draw", "a", "--table"],
            &["draw", "a", "--from", "below"],
            &["check", "a", "--crop", "3"],
            &["read", "a", "-o", "b"],
        ];
        for words in wrong {
            assert!(called(words).is_err(), "{words:?}");
        }
    }

    #[test]
    fn the_help_names_every_command() {
        for command in [
            "read", "draw", "papers", "guides", "compare", "propose", "check", "link", "unlink",
            "schema",
        ] {
            assert!(HELP.contains(&format!("overspread {command}")), "{command}");
        }
    }
}
