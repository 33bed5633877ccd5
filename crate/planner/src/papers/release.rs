//! What a hand model signs, in plain words.
use super::press::Block;
use crate::layout::{Id, Layout};
use crate::scene::letter;
use crate::words::{Arg, say};

fn all(ids: &[&str]) -> Vec<String> {
    ids.iter().map(|id| say(id, &[])).collect()
}

/// One page for each person whose hands are in the picture, and one at least.
pub(super) fn blocks(layout: &Layout) -> Vec<Block> {
    let people = layout.people.iter().map(|person| person.id);
    let people: Vec<Option<Id>> = people.map(Some).collect();
    let people = if people.is_empty() {
        vec![None]
    } else {
        people
    };
    let mut out = Vec::new();
    for (n, person) in people.into_iter().enumerate() {
        if n > 0 {
            out.push(Block::Break);
        }
        if let Some(id) = person {
            let letter = Arg::Text(letter(layout, id).to_string());
            out.push(Block::Heading(say("release-person", &[("person", letter)])));
        }
        out.push(Block::Blanks(all(&["release-name", "release-contact"])));
        out.push(Block::Blanks(all(&["release-photographer", "release-day"])));
        out.push(Block::Words(say("release-what", &[])));
        out.push(Block::Heading(say("release-use", &[])));
        out.push(Block::Ticks(all(&[
            "release-print",
            "release-packaging",
            "release-web",
            "release-social",
            "release-advertising",
            "release-portfolio",
        ])));
        out.push(Block::Blanks(all(&["release-where", "release-until"])));
        out.push(Block::Blanks(all(&["release-paid", "release-credit"])));
        out.push(Block::Words(say("release-face", &[])));
        out.push(Block::Ticks(all(&["release-face-no", "release-face-yes"])));
        out.push(Block::Heading(say("release-skin", &[])));
        out.push(Block::Words(say("release-skin-what", &[])));
        out.push(Block::Blanks(vec![String::new()]));
        out.push(Block::Heading(say("release-age", &[])));
        out.push(Block::Ticks(all(&["release-adult", "release-minor"])));
        out.push(Block::Words(say("release-minor-what", &[])));
        out.push(Block::Blanks(all(&[
            "release-guardian",
            "release-guardian-signed",
        ])));
        out.push(Block::Heading(say("release-sign", &[])));
        out.push(Block::Blanks(all(&["release-signed", "release-date"])));
        out.push(Block::Blanks(all(&[
            "release-signed-photographer",
            "release-date",
        ])));
        out.push(Block::Words(say("release-lawyer", &[])));
    }
    out
}
