//! The search from a terminal: proposals, and the price of any layout near this
//! one for other programs that search.
use std::fmt::Write as _;
use std::io::{BufRead, Write};

use lexopt::ValueExt as _;
use planner::layout::{Id, Layout};
use planner::propose::{May, Near, Proposal, Search, Wish};
use planner::readings::{Matter, Study, Weighing, report};

/// How a search was asked for.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(crate) struct Asked {
    /// What chance begins with; 1 when not told.
    seed: Option<u32>,
    /// Layouts priced; 600 when not told.
    evaluations: Option<u32>,
    /// What may be changed, by name; all when not told.
    may: Vec<String>,
    /// What matters most, by name.
    most: Vec<String>,
    /// The finding to be cured, by its key.
    cure: Option<String>,
    /// Whether all goes into one proposal.
    one: bool,
    /// Whether prices are asked for line by line.
    drive: bool,
    /// The proposal of which the file is wanted.
    take: Option<usize>,
}

/// Layouts priced when not told.
const EVALUATIONS: u32 = 600;

impl Asked {
    /// Whether an option is one of a search.
    pub(crate) fn knows(name: &str) -> bool {
        const OPTIONS: [&str; 8] = [
            "seed",
            "evaluations",
            "may",
            "most",
            "cure",
            "take",
            "one",
            "drive",
        ];
        OPTIONS.contains(&name)
    }

    /// Takes an option of this name.
    ///
    /// # Errors
    /// When its value is wrong or missing.
    pub(crate) fn option(
        &mut self,
        name: &str,
        parser: &mut lexopt::Parser,
    ) -> Result<(), lexopt::Error> {
        match name {
            "seed" => self.seed = Some(parser.value()?.parse()?),
            "evaluations" => self.evaluations = Some(parser.value()?.parse()?),
            "may" => self.may = names(&parser.value()?.string()?, &May::NAMES)?,
            "most" => self.most = names(&parser.value()?.string()?, &Matter::NAMES)?,
            "cure" => self.cure = Some(parser.value()?.string()?),
            "take" => self.take = Some(parser.value()?.parse()?),
            "one" => self.one = true,
            _ => self.drive = true,
        }
        Ok(())
    }

    fn may(&self) -> May {
        if self.may.is_empty() {
            return May::ALL;
        }
        May::named(&self.may)
    }

    fn weighing(&self) -> Weighing {
        Weighing {
            most: Matter::named(&self.most),
            cure: self.cure.clone(),
        }
    }
}

fn names(list: &str, known: &[&str]) -> Result<Vec<String>, lexopt::Error> {
    let all: Vec<String> = list.split(',').map(str::to_owned).collect();
    match all.iter().find(|name| !known.contains(&name.as_str())) {
        None => Ok(all),
        Some(name) => Err(format!("{name} is none of {}", known.join(", ")).into()),
    }
}

/// What the search proposes, as JSON, for people, or as a layout file.
///
/// # Errors
/// When the layout has no such crop or finding, or there is no such proposal.
pub(crate) fn proposed(
    layout: &Layout,
    asked: &Asked,
    table: bool,
    crop: Option<u16>,
) -> Result<String, String> {
    let crop = Id(crop.unwrap_or(0));
    if crop != Id(0) && layout.crops.iter().all(|c| c.id != crop) {
        return Err(format!("there is no crop {}", crop.0));
    }
    if asked.drive {
        return drive(layout, asked, crop);
    }
    let study = Study::new(layout).viewing(crop);
    let settled = report(&study, true);
    let kept = study.keep();
    if let Some(key) = &asked.cure
        && settled.findings.iter().all(|f| f.key != *key)
    {
        return Err(format!("there is no finding {key}"));
    }
    let wish = Wish {
        may: asked.may(),
        weighing: asked.weighing(),
        seed: asked.seed.unwrap_or(1),
        evaluations: asked.evaluations.unwrap_or(EVALUATIONS),
        several: !asked.one && asked.cure.is_none(),
        crop,
    };
    let mut search = Search::begin(layout, &settled, Some(&kept), wish);
    while !search.step(&|| true) {}
    if let Some(n) = asked.take {
        let one = n.checked_sub(1).and_then(|n| search.found().get(n));
        let one = one.ok_or_else(|| format!("there is no proposal {n}"))?;
        return Ok(one.layout.to_json() + "\n");
    }
    if table {
        return Ok(for_people(search.found()));
    }
    let least = |best: f64, p: &Proposal| best.min(p.prices[1]);
    let start = search.price().total;
    let told = serde_json::json!({
        "evaluations": search.progress()[0],
        "start": start,
        "objective": search.found().iter().fold(start, least),
        "proposals": search.found(),
    });
    Ok(serde_json::to_string_pretty(&told).unwrap_or_default() + "\n")
}

fn for_people(found: &[Proposal]) -> String {
    let mut out = String::new();
    if found.is_empty() {
        out.push_str("nothing better was found\n");
    }
    for (n, proposal) in found.iter().enumerate() {
        let [was, is] = proposal.prices;
        let _ = writeln!(out, "{}. {} ({was:.1} to {is:.1})", n + 1, proposal.name);
        for sentence in proposal.moves.iter().flat_map(|m| &m.sentences) {
            let _ = writeln!(out, "   {sentence}");
        }
        for (sign, list) in [("+", &proposal.better), ("-", &proposal.worse)] {
            for differs in list {
                let _ = writeln!(out, "   {sign} {}", differs.sentence);
            }
        }
    }
    out
}

/// Answers each line of numbers from 0 to 1 with the price of the layout they
/// stand for, after a first line that says how many they are and what the
/// layout costs as it is.
fn drive(layout: &Layout, asked: &Asked, crop: Id) -> Result<String, String> {
    let mut near = Near::of(layout, asked.may(), asked.weighing(), crop);
    let mut out = std::io::stdout().lock();
    let first = serde_json::json!({
        "variables": near.variables(),
        "objective": near.start(),
    });
    let fault = |error: std::io::Error| error.to_string();
    writeln!(out, "{first}").map_err(fault)?;
    out.flush().map_err(fault)?;
    for line in std::io::stdin().lock().lines() {
        let line = line.map_err(fault)?;
        let numbers: Result<Vec<f64>, _> = line.split_whitespace().map(str::parse).collect();
        let numbers = numbers.map_err(|error| format!("{line}: {error}"))?;
        let price = near.price(&numbers);
        let price = price.ok_or_else(|| format!("{} numbers are wanted", near.variables()))?;
        writeln!(out, "{price}").map_err(fault)?;
        out.flush().map_err(fault)?;
    }
    Ok(String::new())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_may_be_changed_is_named_and_nothing_else() {
        let all = Asked::default();
        assert_eq!(all.may(), May::ALL, "untold");
        let some = Asked {
            may: names("dishes,crops", &May::NAMES).expect("both are known"),
            ..all
        };
        let expected = May {
            dishes: true,
            crops: true,
            ..May::NONE
        };
        assert_eq!(some.may(), expected, "told");
        assert!(names("dishes,walls", &May::NAMES).is_err(), "unknown");
    }
}
