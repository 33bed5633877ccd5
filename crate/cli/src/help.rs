//! What the command can do, in words.

/// What `--help` prints.
pub(crate) const HELP: &str = "\
overspread: reads overhead table spreads from layout files

  overspread read LAYOUT [--table] [--crop ID] [--triangles fingertips|accents]
                                     what the readings say, as JSON or for people;
                                     scores are of the frame, or of this crop;
                                     or the triangle of fingertips or accents alone
  overspread draw LAYOUT [--from above|lens] [--exposure ID] [--crop ID] [-o FILE]
                                     the picture, from above or through the lens:
                                     the sheet with its list, or what one crop
                                     keeps; as SVG, or as PNG or PDF by the name
                                     of its file; --width N is a PNG’s pixels
                                     across
  overspread draw LAYOUT --side [-o FILE]
                                     camera, stand and light from the side
  overspread draw LAYOUT --see-through [--exposure ID] [-o FILE]
                                     outlines, crops and hands without a ground,
                                     at the camera's own pixels, to lay over what
                                     a tethered camera sees
  overspread papers LAYOUT -o DIR [--paper a4|letter] [--only KIND]...
        [--svg] [--csv] [--pdf] [--ics]
                                     the papers of a shoot into a folder: PDF,
                                     lists as CSV and dates as a calendar, unless
                                     one is named; KIND is picture, crockery,
                                     dates or a sheet
  overspread guides LAYOUT -o DIR|FILE.zip
                                     a grey mask guide for each exposure at the
                                     camera's own pixels, named in the order they
                                     are laid on each other, and a sheet that
                                     shows where each goes
  overspread compare LAYOUT LAYOUT [--table]
                                     what changed from the first to the second,
                                     and the findings and scores of both, as
                                     JSON or for people
  overspread propose LAYOUT [--seed N] [--evaluations N] [--may WHAT,...]
        [--most WHAT,...] [--cure KEY | --one] [--crop ID] [--table | --take N]
                                     layouts that read better, what each moves
                                     and what it costs; WHAT may be changed is
                                     dishes, linens, hands, crops, light; WHAT
                                     matters most is edges, crops, hands, weight,
                                     light; KEY is a finding's; N takes that one
                                     as a layout file
  overspread propose LAYOUT --drive  prices layouts near this one, given line by
                                     line as numbers from 0 to 1
  overspread check LAYOUT            whether the file is a sound layout
  overspread link LAYOUT [--with LAYOUT [--name NAME --name NAME]]
                                     the layout as what follows the # of a link,
                                     with another version to choose from; they
                                     are called by their titles unless named
  overspread unlink LINK [--other]   the layout file that a link holds, or that
                                     of the other version in it
  overspread schema                  the JSON Schema of a layout file
  overspread --help | --version

LAYOUT is a file, or - for standard input. LINK is a whole link or what follows
its #, or - for standard input.

Exit codes: 0 all well, 1 the layout or link has problems or not what was asked
of it, 2 the call is wrong or a file cannot be read or written.
";
