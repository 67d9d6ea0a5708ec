//! Which paths a scenario knows, which of them are numbers, and what a path was perhaps meant to be.

use crate::analysis::sweep::axis::Axis;
use crate::base::units::quantity;
use crate::scenario::based_on::Merged;
use crate::scenario::keys::{self, KEYS, Key};
use crate::scenario::paths::flat_of;
use crate::scenario::problem::Problem;
use crate::scenario::tree::Table;
use crate::scenario::words::{closest, list_or};

use super::spec::Spec;

/// What stands for a name of the user's own among the documented keys.
const OWN: &str = "NAME";
/// Most numbers that are named to somebody who named none.
const NAMED: usize = 6;

/// The problem of a path that no scenario has, or of an entry that is nearly one of this scenario.
pub fn unknown(spec: &Spec, written: &Merged) -> Option<Problem> {
    let path = spec.axis.path.as_str();
    let title = format!("there is no {path} in the scenario");
    let problem = Problem::at(&spec.place, title).label("unknown name");
    if is_written(path, &written.table) {
        return None;
    }
    match key_of(path) {
        Some(key) => match entry_meant(path, key, &written.table) {
            Some(near) => Some(problem.help(format!("did you mean {near}?"))),
            None => without_section(spec, &written.table),
        },
        None => Some(told(problem, path, &numbers_written(&written.table))),
    }
}

/// The problem of a section that is not there and needs more than what is varied in it.
fn without_section(spec: &Spec, table: &Table) -> Option<Problem> {
    let path = spec.axis.path.as_str();
    let (section, _) = path.split_once('.')?;
    let lines: Vec<String> = KEYS
        .iter()
        .filter(|key| key.default == "required" && key.path != path)
        .filter_map(|key| {
            let name = key.path.strip_prefix(section)?.strip_prefix('.')?;
            (!name.contains('.')).then(|| format!("{name} = {}", key.example))
        })
        .collect();
    if lines.is_empty() || is_written(section, table) {
        return None;
    }
    let title = format!("the scenario has no [{section}] in which {path} could be varied");
    let lines = lines.join(" and ");
    let advice = format!("write [{section}] into it first, with {lines}, then vary {path}");
    Some(
        Problem::at(&spec.place, title)
            .label("nothing to vary")
            .help(advice),
    )
}

/// The path with the name of an entry that the file has, where its own name is nearly that one.
fn entry_meant(path: &str, key: &Key, table: &Table) -> Option<String> {
    let (section, _) = key.path.split_once(&format!(".{OWN}"))?;
    let rest = path.strip_prefix(section)?.strip_prefix('.')?;
    let (name, rest) = rest.split_once('.').unwrap_or((rest, ""));
    let start = format!("{section}.");
    let all = flat_of(table);
    let entries = all
        .iter()
        .filter_map(|(known, _)| known.strip_prefix(&start)?.split('.').next());
    let entries: Vec<&str> = entries.collect();
    if entries.contains(&name) {
        return None;
    }
    let near = closest(name, entries)?;
    Some(format!("{section}.{near}.{rest}"))
}

fn told(problem: Problem, path: &str, own: &[String]) -> Problem {
    let known = KEYS.iter().map(|key| key.path);
    let near = closest(path, own.iter().map(String::as_str));
    match near.or_else(|| closest(path, known)) {
        Some(near) => problem.help(format!("did you mean {near}?")),
        None => problem.help(format!("numbers of this scenario: {}", some(own))),
    }
}

/// Whether the file says a path, or something inside it: what is wrong with that the reader says.
fn is_written(path: &str, table: &Table) -> bool {
    let start = format!("{path}.");
    let mut all = flat_of(table).into_iter();
    all.any(|(known, _)| known == path || known.starts_with(&start))
}

/// The documented key of a path: of its own, of the timer whose length it is, of the list whose share it is.
pub fn key_of(path: &str) -> Option<&'static Key> {
    let is_of = |path: &str, key: &Key| {
        let (known, own) = (key.path.split('.'), path.split('.'));
        known.clone().count() == own.clone().count()
            && known
                .zip(own)
                .all(|(known, own)| known == own || known == OWN)
    };
    let whole = KEYS.iter().find(|key| is_of(path, key));
    whole.or_else(|| {
        let (above, last) = path.rsplit_once('.')?;
        let holds = |key: &&Key| match key.example.starts_with('{') {
            true => true,
            false => is_timer(key) && matches!(last, "for" | "from"),
        };
        KEYS.iter().filter(|key| is_of(above, key)).find(holds)
    })
}

fn is_timer(key: &Key) -> bool {
    key.example.contains("..") && key.example.contains(':')
}

/// Adds to a problem with a line of the grid which numbers there are near by, where its path is none.
pub fn with_numbers(problem: Problem, file: usize, axes: &[Axis], table: &Table) -> Problem {
    let on_line = |axis: &&Axis| problem.title.contains(&axis.path);
    let is_of_grid = problem.place.as_ref().is_some_and(|p| p.file == file);
    let axis = axes.iter().filter(|_| is_of_grid).find(on_line);
    let Some(axis) = axis.filter(|axis| !is_number(&axis.path)) else {
        return problem;
    };
    let section = axis.path.split('.').next().unwrap_or_default();
    let start = format!("{section}.");
    let documented = KEYS.iter().filter(|key| is_example(key.example));
    let documented = documented.map(|key| key.path.to_string());
    let mut near = numbers_written(table);
    let others: Vec<String> = documented.filter(|path| !near.contains(path)).collect();
    near.extend(others);
    near.retain(|path| path.starts_with(&start) && *path != axis.path);
    match near.is_empty() {
        true => problem.help("a sweep varies numbers"),
        false => problem.help(format!("a sweep varies numbers, such as {}", some(&near))),
    }
}

/// Whether a path is written as a number.
fn is_number(path: &str) -> bool {
    let key = key_of(path);
    key.is_some_and(|key| {
        is_example(key.example) || (keys::key(path).is_none() && path.ends_with(".for"))
    })
}

/// Whether an example is a number with or without a unit: no word, time, date, range or measures.
fn is_example(example: &str) -> bool {
    let text = example.trim_matches('"');
    quantity::split(text).is_ok_and(|split| {
        let is_unit = |sign: char| sign.is_alphabetic() || matches!(sign, '%' | '°' | '/');
        let unit = split.unit;
        unit.is_empty() || (unit.starts_with(is_unit) && !unit.starts_with("x "))
    })
}

/// Paths of the numbers that a scenario says, in order.
fn numbers_written(table: &Table) -> Vec<String> {
    let all = flat_of(table).into_iter();
    let numbers = all.filter(|(_, value)| is_example(value));
    numbers.map(|(path, _)| path).collect()
}

fn some(paths: &[String]) -> String {
    list_or(&paths[..paths.len().min(NAMED)])
}
