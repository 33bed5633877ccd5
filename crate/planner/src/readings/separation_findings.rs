//! What Separation has to say, one sentence for one cause.
use std::rc::Rc;

use super::finding::{Finding, State};
use super::rules::{SEPARATION, SEPARATION_SCORE};
use super::separation::{is_pressed, lost_share, separation_score_of};
use super::separation_inside;
use super::separation_light::{self, DRAWN_FROM};
use super::separation_remedies as remedies;
use super::stitches::stitches;
use super::study::Study;
use super::walked::{LOST_FROM, Meeting, PartWalk};
use crate::catalogue::is_several;
use crate::colour::{Shade, TONE_FROM, mixed_separation};
use crate::layout::{Id, Role};
use crate::order;
use crate::scene::{Ground, PartKind, effective_role, flag};
use crate::words::{self, Arg, listed, percent, say};

/// Two sides both lighter than this L* are pale on pale: shadow may draw the
/// edge that colour does not. Our choice.
const PALE_FROM: f64 = 75.0;

/// A pressed part that loses enough of its outline to be said.
pub(super) struct Loss<'a> {
    pub(super) walk: &'a PartWalk,
    pub(super) owner: Id,
    part: PartKind,
    role: Role,
    /// Whose the ground is; the table's own id stands for the floor too.
    pub(super) ground: Id,
    floor: bool,
    /// Share of its outline that shadow draws after light.
    by_shadow: f64,
}

impl Loss<'_> {
    /// What the ground is called.
    pub(super) fn called(&self, study: &Study<'_>) -> String {
        if self.floor {
            say("ground-floor", &[])
        } else {
            study.name(self.ground)
        }
    }

    /// The ground as a finding's key names it.
    fn ground_key(&self) -> String {
        if self.floor {
            "floor".into()
        } else {
            self.ground.0.to_string()
        }
    }

    /// What a hero or main dish costs is dearer.
    pub(super) const fn rank(&self) -> u8 {
        if matches!(self.role, Role::Hero) {
            2
        } else {
            3
        }
    }
}

/// The findings, with remedies when `settled`.
pub(super) fn read(study: &Study<'_>, settled: bool) -> Vec<Finding> {
    let (losses, drawn) = losses(study);
    let mut findings = Vec::new();
    let mut rest: Vec<&Loss<'_>> = Vec::new();
    let mut inside: Vec<&Loss<'_>> = Vec::new();
    let mut sleeves: Vec<&Loss<'_>> = Vec::new();
    for loss in &losses {
        let lies_in = study
            .item(loss.owner)
            .is_some_and(|i| i.on == Some(loss.ground));
        match loss.part {
            PartKind::Sleeve => sleeves.push(loss),
            PartKind::Hand => findings.push(hand(study, loss)),
            _ if lies_in && loss.part == PartKind::Food => inside.push(loss),
            // A hero sinks by itself, save pale on pale: there light decides for all.
            _ if loss.role == Role::Hero && !is_pale(study, loss.walk) => {
                findings.push(single(study, loss, settled));
            }
            _ => rest.push(loss),
        }
    }
    while let Some(first) = rest.first() {
        let on = (first.ground, first.floor);
        let (same, other): (Vec<&Loss<'_>>, Vec<&Loss<'_>>) = rest
            .iter()
            .copied()
            .partition(|l| (l.ground, l.floor) == on);
        findings.push(if let [one] = same.as_slice() {
            single(study, one, settled)
        } else {
            many(study, &same, settled)
        });
        rest = other;
    }
    findings.extend(separation_inside::read(study, &inside, settled));
    if !sleeves.is_empty() {
        findings.push(cuffs(study, &sleeves, settled));
    }
    findings.extend(separation_light::drawn(study, &drawn));
    findings.extend(separation_light::taken(study, settled));
    findings.extend(score(study.viewed()));
    findings
}

/// Parts that lose their outline, and pale ones of these that shadow draws.
fn losses<'a>(study: &'a Study<'_>) -> (Vec<Loss<'a>>, Vec<&'a PartWalk>) {
    let (mut out, mut drawn) = (Vec::new(), Vec::new());
    let light = super::light::exposed_for(study);
    for walk in study.walks_by_number() {
        if walk.lost < LOST_FROM || !is_pressed(study, walk) {
            continue;
        }
        let piece = &study.scene().pieces[walk.piece];
        let Some(ground) = walk.chief_ground() else {
            continue;
        };
        let role = study
            .item(piece.owner)
            .map(|i| effective_role(study.layout(), i));
        let by_shadow = light.filter(|_| is_pale(study, walk)).map_or(0.0, |light| {
            separation_light::drawn_share(study, walk, light)
        });
        if by_shadow >= DRAWN_FROM {
            drawn.push(walk.as_ref());
            continue;
        }
        out.push(Loss {
            by_shadow,
            walk,
            owner: piece.owner,
            part: piece.part,
            role: role.unwrap_or_default(),
            ground: match ground {
                Ground::Floor => Id(0),
                Ground::Piece(n) => study.scene().pieces[n].owner,
            },
            floor: ground == Ground::Floor,
        });
    }
    (out, drawn)
}

/// A finding over these losses: marks along them and a working line for each.
pub(super) fn finding(
    study: &Study<'_>,
    (key, rank): (String, u8),
    share: f64,
    about: Vec<Id>,
    losses: &[&Loss<'_>],
) -> Finding {
    let state = (State::LookAgain, rank);
    let mut f = Finding::by(&SEPARATION, key, state, share * 100.0, about);
    for loss in losses {
        for (line, share) in &loss.walk.runs {
            f.marks.extend(stitches(line, *share));
        }
    }
    f.working = study.tell(|| {
        let mut lines = vec![say("working-separation", &[])];
        for loss in losses {
            lines.push(part_line(study, loss.walk));
            lines.extend(separation_light::line(study, loss.walk));
        }
        let pieces = &study.scene().pieces;
        let guessed = |n: usize| pieces[n].guessed;
        let met = |(ground, met): (&Ground, &Meeting)| {
            met.lost > 0.0 && matches!(ground, Ground::Piece(n) if guessed(*n))
        };
        let on_guess = |l: &&Loss<'_>| guessed(l.walk.piece) || l.walk.against.iter().any(met);
        if losses.iter().any(on_guess) {
            lines.push(say("working-guess", &[]));
        }
        lines
    });
    f
}

/// One part against what it lies on and against the bare surface.
fn part_line(study: &Study<'_>, walk: &PartWalk) -> String {
    let scene = study.scene();
    let piece = &scene.pieces[walk.piece];
    let table = scene.pieces.iter().find(|p| p.part == PartKind::Table);
    let bare = table.and_then(|t| mixed_separation(&piece.shades, &t.shades));
    let ground = walk
        .against
        .iter()
        .max_by(|a, b| a.1.length.total_cmp(&b.1.length));
    let called = match walk.chief_ground().or(ground.map(|g| *g.0)) {
        Some(Ground::Piece(n)) => study.name(scene.pieces[n].owner),
        Some(Ground::Floor) | None => say("ground-floor", &[]),
    };
    let whole = |x: f64| Arg::Text(words::whole(x));
    let args = [
        ("thing", Arg::Name(study.name(piece.owner))),
        ("ground", Arg::Name(called)),
        ("share", Arg::Text(percent(walk.lost))),
        ("difference", whole(walk.band_value)),
        ("weakest", whole(walk.worst.min(walk.band_value))),
        ("bare", whole(bare.map_or(0.0, |b| b.band_value))),
    ];
    let by_hue = walk.delta_l < TONE_FROM && walk.lost < LOST_FROM;
    say(
        if by_hue {
            "working-part-hue"
        } else {
            "working-part"
        },
        &args,
    )
}

fn single(study: &Study<'_>, loss: &Loss<'_>, settled: bool) -> Finding {
    let key = format!("separation:{}:{:?}", loss.owner.0, loss.part);
    let about = vec![loss.owner, loss.ground];
    let mut f = finding(study, (key, loss.rank()), loss.walk.lost, about, &[loss]);
    f.sentence = study.sentence(|| {
        let name = study.name(loss.owner);
        let id = if is_pale(study, loss.walk) {
            "separation-pale"
        } else {
            match is_several(&name) {
                Some(false) => "separation-hero",
                Some(true) => "separation-hero-several",
                None => "separation-hero-any",
            }
        };
        let args = [
            ("thing", Arg::Name(name)),
            ("share", Arg::Text(percent(loss.walk.lost))),
            ("ground", Arg::Name(loss.called(study))),
            ("drawn", Arg::Text(percent(loss.by_shadow))),
        ];
        say(id, &args)
    });
    if settled {
        let own = [(loss.owner, loss.part)];
        f.remedy = study.remedy(&f.key, &|| remedies::outline(study, &f.key, &own));
    }
    f
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
    let parts: Vec<(Id, PartKind)> = losses.iter().map(|l| (l.owner, l.part)).collect();
    let figure = lost_share(study, &parts);
    let key = format!("separation:on:{}", losses[0].ground_key());
    let rank = losses.iter().map(|l| l.rank()).min().unwrap_or(3);
    let mut f = finding(study, (key, rank), figure, owners.clone(), losses);
    f.sentence = study.sentence(|| {
        let names = study.names(&owners);
        let id = if losses.iter().all(|l| is_pale(study, l.walk)) {
            "separation-pale-many"
        } else if owners.len() == 2 {
            "separation-two"
        } else {
            "separation-many"
        };
        let args = [
            ("count", Arg::Text(owners.len().to_string())),
            ("things", Arg::Text(listed(&names))),
            ("share", Arg::Text(percent(figure))),
            ("ground", Arg::Name(losses[0].called(study))),
            ("drawn", Arg::Text(percent(mean_drawn(losses)))),
        ];
        say(id, &args)
    });
    if settled {
        f.remedy = study.remedy(&f.key, &|| remedies::outline(study, &f.key, &parts));
    }
    f
}

/// Share of all these outlines that shadow draws, by length.
fn mean_drawn(losses: &[&Loss<'_>]) -> f64 {
    let whole: f64 = losses.iter().map(|l| l.walk.length).sum();
    let drawn = losses.iter().map(|l| l.by_shadow * l.walk.length);
    drawn.sum::<f64>() / whole.max(1.0)
}

fn hand(study: &Study<'_>, loss: &Loss<'_>) -> Finding {
    let key = format!("separation:hand:{}", loss.owner.0);
    let about = vec![loss.owner, loss.ground];
    let mut f = finding(study, (key, 2), loss.walk.lost, about, &[loss]);
    f.sentence = study.sentence(|| {
        let args = [
            ("flag", Arg::Text(flag_of(study, loss.owner))),
            ("share", Arg::Text(percent(loss.walk.lost))),
            ("ground", Arg::Name(loss.called(study))),
        ];
        say("separation-hand", &args)
    });
    f
}

fn cuffs(study: &Study<'_>, losses: &[&Loss<'_>], settled: bool) -> Finding {
    let mut owners: Vec<Id> = losses.iter().map(|l| l.owner).collect();
    owners.dedup();
    let parts: Vec<(Id, PartKind)> = owners.iter().map(|o| (*o, PartKind::Sleeve)).collect();
    let figure = lost_share(study, &parts);
    let key = "separation:cuffs".into();
    let mut f = finding(study, (key, 2), figure, owners.clone(), losses);
    f.sentence = study.sentence(|| {
        let mut flags: Vec<String> = owners.iter().map(|o| flag_of(study, *o)).collect();
        order::sort(&mut flags, String::cmp);
        flags.dedup();
        let args = [
            ("share", Arg::Text(percent(figure))),
            ("flag", Arg::Text(listed(&flags))),
            ("ground", Arg::Name(losses[0].called(study))),
        ];
        let id = if owners.len() == 1 {
            "separation-cuff"
        } else {
            "separation-cuffs"
        };
        say(id, &args)
    });
    if settled {
        f.remedy = study.remedy(&f.key, &|| remedies::sleeve(study, &f.key, &owners));
    }
    f
}

/// What the score is made of, once there are three dishes.
fn score(study: &Study<'_>) -> Option<Finding> {
    let score = separation_score_of(study).filter(|_| study.has_three_dishes())?;
    let pressed = study.walks_by_number().iter();
    let pressed: Vec<&Rc<PartWalk>> = pressed.filter(|w| is_pressed(study, w)).collect();
    let worst = pressed.iter().min_by(|a, b| a.score.total_cmp(&b.score))?;
    let owner = study.scene().pieces[worst.piece].owner;
    let state = (State::Holds, 3);
    let mut f = Finding::by(
        &SEPARATION_SCORE,
        "separation".into(),
        state,
        score,
        vec![owner],
    );
    for (line, share) in &worst.runs {
        f.marks.extend(stitches(line, *share));
    }
    f.sentence = study.sentence(|| {
        let thing = Arg::Name(study.name(owner));
        let id = if study.layout().hands.iter().any(|h| h.id == owner) {
            "separation-weakest-hand"
        } else {
            "separation-weakest"
        };
        say(id, &[("thing", thing)])
    });
    f.working = study.tell(|| {
        let both = separation_light::scores_line(study, score);
        let lines = pressed.iter().flat_map(|w| {
            let after = separation_light::line(study, w);
            std::iter::once(part_line(study, w)).chain(after)
        });
        std::iter::once(say("working-separation-score", &[]))
            .chain(both)
            .chain(lines)
            .collect()
    });
    Some(f)
}

fn flag_of(study: &Study<'_>, hand: Id) -> String {
    let hand = study.layout().hands.iter().find(|h| h.id == hand);
    hand.map(|h| flag(study.layout(), h)).unwrap_or_default()
}
