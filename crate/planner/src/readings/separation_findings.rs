//! What Separation has to say, one sentence for one cause.
use glam::DVec2;

use super::finding::{Finding, Grade, Mark, Remedy, State};
use super::remedies;
use super::separation::{is_pressed, lost_share};
use super::study::Study;
use super::walked::{LOST_FROM, PartWalk};
use crate::colour::Shade;
use crate::layout::{Id, Role};
use crate::scene::{Ground, PartKind, effective_role, flag};
use crate::words::{Arg, listed, percent, say};

/// Where only some tones of a food are lost, stitches cover that share of each
/// stretch this long, mm: nobody knows which piece will lie where.
const STITCH_CYCLE: f64 = 70.0;

/// Two sides both lighter than this L* are pale on pale: side light may draw
/// the edge that colour does not, so it is said more softly. Our choice.
const PALE_FROM: f64 = 75.0;

/// A pressed part that loses enough of its outline to be said.
struct Loss<'a> {
    walk: &'a PartWalk,
    owner: Id,
    part: PartKind,
    role: Role,
    /// Whose the ground is; the table's own id stands for the floor too.
    ground: Id,
    /// What the ground is called.
    called: String,
}

impl Loss<'_> {
    /// The ground as a finding's key names it.
    fn ground_key(&self) -> String {
        let floor = self.walk.chief_ground() == Some(Ground::Floor);
        if floor {
            "floor".into()
        } else {
            self.ground.0.to_string()
        }
    }
}

/// The findings, with remedies when `settled`.
pub(super) fn read(study: &Study<'_>, settled: bool) -> Vec<Finding> {
    let losses = losses(study);
    let mut findings = Vec::new();
    let mut rest: Vec<&Loss<'_>> = Vec::new();
    let mut sleeves: Vec<&Loss<'_>> = Vec::new();
    for loss in &losses {
        let inside = study
            .item(loss.owner)
            .is_some_and(|i| i.on == Some(loss.ground));
        match loss.part {
            PartKind::Sleeve => sleeves.push(loss),
            PartKind::Hand => findings.push(hand(study, loss)),
            _ if inside && loss.part == PartKind::Food => findings.push(food(study, loss, settled)),
            _ if loss.role == Role::Hero => findings.push(single(study, loss, settled)),
            _ => rest.push(loss),
        }
    }
    while let Some(first) = rest.first() {
        let called = first.called.clone();
        let (same, other): (Vec<&Loss<'_>>, Vec<&Loss<'_>>) =
            rest.iter().copied().partition(|l| l.called == called);
        findings.push(if let [one] = same.as_slice() {
            single(study, one, settled)
        } else {
            many(study, &same, settled)
        });
        rest = other;
    }
    if !sleeves.is_empty() {
        findings.push(cuffs(study, &sleeves, settled));
    }
    findings
}

fn losses<'a>(study: &'a Study<'_>) -> Vec<Loss<'a>> {
    let mut out = Vec::new();
    for walk in study
        .walks()
        .iter()
        .filter(|w| w.lost >= LOST_FROM && is_pressed(study, w))
    {
        let piece = &study.scene().pieces[walk.piece];
        let Some(ground) = walk.chief_ground() else {
            continue;
        };
        let role = study
            .item(piece.owner)
            .map(|i| effective_role(study.layout(), i));
        out.push(Loss {
            walk,
            owner: piece.owner,
            part: piece.part,
            role: role.unwrap_or_default(),
            ground: match ground {
                Ground::Floor => Id(0),
                Ground::Piece(n) => study.scene().pieces[n].owner,
            },
            called: match ground {
                Ground::Floor => say("ground-floor", &[]),
                Ground::Piece(n) => study.name(study.scene().pieces[n].owner),
            },
        });
    }
    out
}

fn finding(key: String, rank: u8, figure: f64, about: Vec<Id>, sentence: String) -> Finding {
    Finding {
        key,
        reading: "separation",
        state: State::LookAgain,
        rank,
        figure: figure * 100.0,
        about,
        sentence,
        working: Vec::new(),
        grade: Grade::OurChoice,
        taste: false,
        marks: Vec::new(),
        remedy: None,
    }
}

fn with_losses(study: &Study<'_>, mut f: Finding, losses: &[&Loss<'_>]) -> Finding {
    f.working.push(say("working-separation", &[]));
    let mut guessed = false;
    for loss in losses {
        f.working.push(say(
            "working-part",
            &[
                ("thing", Arg::Name(study.name(loss.owner))),
                ("ground", Arg::Name(loss.called.clone())),
                ("share", Arg::Text(percent(loss.walk.lost))),
                (
                    "difference",
                    Arg::Text(format!("{:.0}", loss.walk.band_value)),
                ),
            ],
        ));
        guessed |= study.scene().pieces[loss.walk.piece].guessed;
        for (line, share) in &loss.walk.runs {
            f.marks.extend(stitches(line, *share));
        }
    }
    if guessed {
        f.working.push(say("working-guess", &[]));
    }
    f
}

fn single(study: &Study<'_>, loss: &Loss<'_>, settled: bool) -> Finding {
    let rank = if loss.role == Role::Hero { 2 } else { 3 };
    let pale = is_pale(study, loss.walk);
    let sentence = say(
        if pale {
            "separation-pale"
        } else {
            "separation-hero"
        },
        &[
            ("thing", Arg::Name(study.name(loss.owner))),
            ("share", Arg::Text(percent(loss.walk.lost))),
            ("ground", Arg::Name(loss.called.clone())),
        ],
    );
    let key = format!("separation:{}:{:?}", loss.owner.0, loss.part);
    let mut f = finding(
        key,
        rank,
        loss.walk.lost,
        vec![loss.owner, loss.ground],
        sentence,
    );
    if settled {
        f.remedy = first_that_helps(
            study,
            &[loss.owner],
            loss.part,
            [
                remedies::lay_linen(study),
                remedies::onto_linen(study, loss.owner),
            ],
        );
    }
    with_losses(study, f, &[loss])
}

/// Whether the part and what it loses to are both pale.
fn is_pale(study: &Study<'_>, walk: &PartWalk) -> bool {
    let scene = study.scene();
    let light = |shades: &[Shade]| {
        let total: f64 = shades.iter().map(|s| s.share).sum();
        shades.iter().map(|s| s.lab.l * s.share).sum::<f64>() > PALE_FROM * total
    };
    let ground = walk.chief_ground().map(|g| scene.shades_of(g));
    light(&scene.pieces[walk.piece].shades) && ground.is_some_and(light)
}

fn many(study: &Study<'_>, losses: &[&Loss<'_>], settled: bool) -> Finding {
    let mut owners: Vec<Id> = losses.iter().map(|l| l.owner).collect();
    owners.dedup();
    let part = losses[0].part;
    let names: Vec<String> = owners.iter().map(|o| study.name(*o)).collect();
    let id = if owners.len() == 2 {
        "separation-two"
    } else {
        "separation-many"
    };
    let sentence = say(
        id,
        &[
            ("count", Arg::Text(owners.len().to_string())),
            ("things", Arg::Text(listed(&names))),
            ("ground", Arg::Name(losses[0].called.clone())),
        ],
    );
    let figure = lost_share(study, &owners, part);
    let key = format!("separation:on:{}", losses[0].ground_key());
    let mut f = finding(key, 3, figure, owners.clone(), sentence);
    if settled {
        let moves = remedies::onto_linen(study, owners[0]);
        f.remedy = first_that_helps(study, &owners, part, [remedies::lay_linen(study), moves]);
    }
    with_losses(study, f, losses)
}

fn food(study: &Study<'_>, loss: &Loss<'_>, settled: bool) -> Finding {
    let name = study.name(loss.owner);
    let dish = loss.called.clone();
    let noun = dish
        .split_whitespace()
        .last()
        .unwrap_or_default()
        .to_string();
    let plural = name.ends_with('s') && !name.ends_with("ss");
    let sentence = say(
        if plural {
            "separation-inside"
        } else {
            "separation-inside-one"
        },
        &[
            ("thing", Arg::Name(name)),
            ("ground", Arg::Name(noun)),
            ("share", Arg::Text(percent(loss.walk.lost))),
        ],
    );
    let rank = if loss.role == Role::Hero { 2 } else { 3 };
    let key = format!("separation:{}:{:?}", loss.owner.0, loss.part);
    let mut f = finding(
        key,
        rank,
        loss.walk.lost,
        vec![loss.owner, loss.ground],
        sentence,
    );
    if settled {
        let swap = remedies::pale_inside(study, loss.ground);
        f.remedy = first_that_helps(study, &[loss.owner], loss.part, [swap, None]);
    }
    with_losses(study, f, &[loss])
}

fn hand(study: &Study<'_>, loss: &Loss<'_>) -> Finding {
    let sentence = say(
        "separation-hand",
        &[
            ("flag", Arg::Text(flag_of(study, loss.owner))),
            ("share", Arg::Text(percent(loss.walk.lost))),
            ("ground", Arg::Name(loss.called.clone())),
        ],
    );
    let key = format!("separation:hand:{}", loss.owner.0);
    let f = finding(
        key,
        2,
        loss.walk.lost,
        vec![loss.owner, loss.ground],
        sentence,
    );
    with_losses(study, f, &[loss])
}

fn cuffs(study: &Study<'_>, losses: &[&Loss<'_>], settled: bool) -> Finding {
    let mut owners: Vec<Id> = losses.iter().map(|l| l.owner).collect();
    owners.dedup();
    let mut flags: Vec<String> = owners.iter().map(|o| flag_of(study, *o)).collect();
    flags.sort();
    flags.dedup();
    let figure = lost_share(study, &owners, PartKind::Sleeve);
    let sentence = say(
        "separation-cuff",
        &[
            ("share", Arg::Text(percent(figure))),
            ("flag", Arg::Text(listed(&flags))),
            ("ground", Arg::Name(losses[0].called.clone())),
        ],
    );
    let mut f = finding(
        "separation:cuffs".into(),
        2,
        figure,
        owners.clone(),
        sentence,
    );
    if settled {
        let roll = remedies::roll_sleeves(study, &owners);
        f.remedy = first_that_helps(study, &owners, PartKind::Sleeve, [roll, None]);
    }
    with_losses(study, f, losses)
}

fn flag_of(study: &Study<'_>, hand: Id) -> String {
    let hand = study.layout().hands.iter().find(|h| h.id == hand);
    hand.map(|h| flag(study.layout(), h)).unwrap_or_default()
}

/// The first change that lowers the figure, with the figure it leads to.
fn first_that_helps(
    study: &Study<'_>,
    owners: &[Id],
    part: PartKind,
    tries: [Option<remedies::Try>; 2],
) -> Option<Remedy> {
    let before = lost_share(study, owners, part);
    tries.into_iter().flatten().find_map(|attempt| {
        let after = lost_share(&Study::new(&attempt.after), owners, part);
        (after + 0.02 < before).then(|| {
            let args = [
                ("before", Arg::Text(percent(before))),
                ("after", Arg::Text(percent(after))),
            ];
            Remedy {
                act: attempt.act,
                predicted: say("predicted", &args),
                after: after * 100.0,
                edit: crate::edit::Edit::between(study.layout(), &attempt.after),
            }
        })
    })
}

/// Lost runs to stitch: all of the line, or its share of every cycle.
fn stitches(line: &[DVec2], share: f64) -> Vec<Mark> {
    if share > 0.999 {
        return vec![Mark::LostEdge {
            line: line.to_vec(),
        }];
    }
    let mut out = Vec::new();
    let mut run: Vec<DVec2> = Vec::new();
    let mut along = 0.0;
    for pair in line.windows(2) {
        let on = along % STITCH_CYCLE < STITCH_CYCLE * share;
        if on && run.is_empty() {
            run.push(pair[0]);
        }
        if on {
            run.push(pair[1]);
        } else if !run.is_empty() {
            out.push(Mark::LostEdge {
                line: std::mem::take(&mut run),
            });
        }
        along += pair[0].distance(pair[1]);
    }
    if !run.is_empty() {
        out.push(Mark::LostEdge { line: run });
    }
    out
}
