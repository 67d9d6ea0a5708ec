//! How the inputs of a study are spread: over the range of the file, the usual one of the model, or some settings.

use std::path::Path;

use crate::analysis::case::Case;
use crate::analysis::study::group::Group;
use crate::analysis::study::input::{Input, Spread};
use crate::analysis::uncertain::Varied;
use crate::base::units::converted::Converted;
use crate::base::units::quantity;
use crate::model::parameters;
use crate::scenario::keys;
use crate::scenario::problem::Problem;

use super::chosen::group_of;
use super::head::Head;
use super::known::Known;
use super::values::Values;
use super::wishes::{Wish, Wishes};

/// Name of the input that is the scenario itself.
const SCENARIO: &str = "scenario";
/// Where the values of a line of the study are from.
const GIVEN: &str = "given in the study";

/// The inputs as the cases have them.
pub fn inputs(
    head: &Head,
    wishes: &Wishes,
    list: &[Wish],
    cases: &[Case],
) -> Result<Vec<Input>, Vec<Problem>> {
    let known = Known::of(cases);
    let mut problems = Vec::new();
    let scenarios = (head.scenarios.len() > 1).then(|| of_scenarios(head));
    let mut inputs: Vec<Input> = scenarios.into_iter().collect();
    for wish in list {
        let group = group_of(&wish.name, wishes);
        match (&wish.values, known.row(&wish.name)) {
            (Values::Settings(_), _) => inputs.push(of_settings(wish, group)),
            (_, Some(row)) => inputs.push(of_row(wish, row, group)),
            (_, None) => problems.push(stays(wish, &known)),
        }
    }
    match problems.is_empty() {
        true => Ok(inputs),
        false => Err(problems),
    }
}

fn stays(wish: &Wish, known: &Known) -> Problem {
    let title = format!("{} cannot be uncertain here", wish.name);
    let why = known.why_kept(&wish.name);
    Problem::at(&wish.place, title)
        .label(why.unwrap_or("it takes single values only"))
        .help("give settings instead: { settings = [...] } or { settings = \"FROM..TO:N\" }")
}

fn of_scenarios(head: &Head) -> Input {
    Input {
        name: SCENARIO.into(),
        words: SCENARIO.into(),
        unit: String::new(),
        group: Group::of(SCENARIO),
        source: GIVEN.into(),
        spread: Spread::Settings(short_names(head)),
        shown: None,
    }
}

/// The scenarios by the names of their files alone; as they are written where two files of one name are in two folders.
fn short_names(head: &Head) -> Vec<String> {
    let names = || head.scenarios.iter().map(|(name, _)| name);
    let stem = |name: &String| {
        Path::new(name)
            .file_stem()
            .map(|stem| stem.to_string_lossy().into_owned())
    };
    let stems: Option<Vec<String>> = names().map(stem).collect();
    let apart = |stems: &Vec<String>| (1..stems.len()).all(|at| !stems[..at].contains(&stems[at]));
    stems
        .filter(apart)
        .unwrap_or_else(|| names().cloned().collect())
}

fn of_settings(wish: &Wish, group: Group) -> Input {
    let Values::Settings(settings) = &wish.values else {
        unreachable!("asked for settings only");
    };
    let spec = parameters::spec(&wish.name).map(|spec| spec.meaning);
    let key = meaning_of_path(&wish.name);
    Input {
        name: wish.name.clone(),
        words: spec.or(key).unwrap_or_default().into(),
        unit: String::new(),
        group,
        source: GIVEN.into(),
        spread: Spread::Settings(settings.iter().map(|node| node.value.written()).collect()),
        shown: None,
    }
}

fn of_row(wish: &Wish, row: &Varied, group: Group) -> Input {
    let (low, high) = row.ends();
    let spread = match wish.values {
        Values::Even(_) => Spread::Even { low, high },
        _ => Spread::Shape(row.shape),
    };
    let key = meaning_of_path(&wish.name);
    // of a path of the keeper's own its name says most
    let words = if wish.name.contains('.') {
        ""
    } else {
        &row.words
    };
    Input {
        name: wish.name.clone(),
        words: key.unwrap_or(words).into(),
        unit: row.unit.clone(),
        group,
        source: row.source.clone(),
        spread,
        shown: row
            .written
            .as_ref()
            .and_then(|range| as_written(&range.text, &row.unit)),
    }
}

/// To the unit in which a range is written, from the one that it is kept in.
fn as_written(range: &str, unit: &str) -> Option<Converted> {
    let (_, last) = quantity::ends(range)?;
    let spelling = quantity::split(&last).ok()?.unit;
    let to = Converted::between(unit, spelling)?;
    (to.symbol() != unit).then_some(to)
}

/// What a path of the list of keys is, where that is a name of it: neither a list of words, nor what a yes would mean.
fn meaning_of_path(name: &str) -> Option<&'static str> {
    let meaning = keys::key(name)?.meaning;
    let head = meaning.split([':', ';']).next().unwrap_or_default();
    let is_a_list = head.matches(", ").count() > 1 || head.contains(" or ");
    let names_it = !is_a_list && !head.starts_with("whether ");
    names_it.then_some(meaning)
}
