//! `based_on`: a scenario laid over another one.
//!
//! Tables are merged key by key, to any depth; lists and single values are replaced as a whole; a
//! value of another kind replaces. `"none"` in place of a named entry removes it (the reader of
//! that section leaves it out). `air.on.for = "9 h"` over a timer `"20:00..08:00"` changes its length
//! and keeps its start.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

use super::files::Files;
use super::problem::{Place, Problem};
use super::timer;
use super::tree::{self, Entry, Node, Table, Value};

/// Most files in a chain; each is read and compared with all before it.
const LONGEST_CHAIN: usize = 20;

/// The merged tree of a file and of everything it is based on.
pub struct Merged {
    /// The tree.
    pub table: Table,
    /// Problems of files and syntax.
    pub problems: Vec<Problem>,
    /// Places of syntax errors: other problems there are left unsaid.
    pub broken: Vec<Place>,
}

/// Reads a text and what it is based on; names in `based_on` are relative to `path`.
pub fn load(files: &mut Files, path: &Path, text: String) -> Merged {
    let mut chain = vec![path.to_path_buf()];
    let mut merged = Merged {
        table: Table::default(),
        problems: Vec::new(),
        broken: Vec::new(),
    };
    merged.table = layer(files, &mut chain, text, &mut merged);
    merged
}

/// One file of the chain, laid over the files below it.
fn layer(files: &mut Files, chain: &mut Vec<PathBuf>, text: String, out: &mut Merged) -> Table {
    let path = chain[chain.len() - 1].clone();
    let file = files.add(&path, text);
    let (table, syntax) = tree::parse(file, files.text(file));
    out.broken
        .extend(syntax.iter().filter_map(|problem| problem.place.clone()));
    out.problems.extend(syntax);
    match below(files, &table, &path, chain, out) {
        Some((next, text)) => {
            chain.push(next);
            let lower = layer(files, chain, text, out);
            over(lower, table)
        }
        None => table,
    }
}

/// The next file of the chain with its text, if `based_on` names one that can be read.
fn below(
    files: &Files,
    table: &Table,
    path: &Path,
    chain: &[PathBuf],
    out: &mut Merged,
) -> Option<(PathBuf, String)> {
    let entry = table.get("based_on")?;
    let place = &entry.node.place;
    let Value::Text(name) = &entry.node.value else {
        out.problems.push(
            Problem::at(place, format!("based_on is {}", entry.node.value.words()))
                .label("the name of a file in quotes")
                .help("write it like based_on = \"first-tank.toml\""),
        );
        return None;
    };
    let next = path.parent().unwrap_or(Path::new("")).join(name);
    let refusal = why_not(chain, &next, place).or_else(|| no_file(files, &next, place));
    let text = match refusal {
        None => files.fetch(&next).map_err(|problem| {
            Problem::at(place, problem.title)
                .label(format!("the chain is {}", links(chain, &next)))
                .help("the name is relative to the file it stands in")
        }),
        Some(refusal) => Err(refusal),
    };
    match text {
        Ok(text) => Some((next, text)),
        Err(problem) => {
            out.problems.push(problem);
            None
        }
    }
}

/// Why a file may not be the next of a chain, if it may not.
fn why_not(chain: &[PathBuf], next: &Path, place: &Place) -> Option<Problem> {
    if chain.iter().any(|seen| same(seen, next)) {
        return Some(
            Problem::at(place, "based_on leads back to a file of the same chain")
                .label(format!("the chain is {}", links(chain, next)))
                .help("let one of them stand on its own: take out its based_on"),
        );
    }
    if chain.len() == LONGEST_CHAIN {
        return Some(
            Problem::at(place, "based_on leads on and on")
                .label(format!("this is file {LONGEST_CHAIN} of the chain"))
                .help("put some of them together into one file"),
        );
    }
    None
}

/// Why a name leads to nothing that can be read, if so: a pipe could keep us waiting for ever.
fn no_file(files: &Files, next: &Path, place: &Place) -> Option<Problem> {
    let on_disk = !files.are_kept();
    (on_disk && next.exists() && !next.is_file() && !next.is_dir()).then(|| {
        Problem::at(place, format!("{} is no file on a disk", next.display()))
            .help("name a scenario, relative to the file it stands in")
    })
}

fn same(a: &Path, b: &Path) -> bool {
    match (a.canonicalize(), b.canonicalize()) {
        (Ok(a), Ok(b)) => a == b,
        _ => a == b,
    }
}

fn links(chain: &[PathBuf], next: &Path) -> String {
    let names: Vec<String> = chain
        .iter()
        .map(|path| path.display().to_string())
        .chain([next.display().to_string()])
        .collect();
    names.join(" -> ")
}

/// `upper` laid over `lower`.
pub fn over(mut lower: Table, upper: Table) -> Table {
    let places: BTreeMap<String, usize> = (lower.entries.iter().enumerate())
        .map(|(at, entry)| (entry.key.clone(), at))
        .collect();
    for entry in upper.entries {
        match places.get(&entry.key).map(|&at| &mut lower.entries[at]) {
            Some(old) => {
                let below = std::mem::replace(&mut old.node.value, Value::Truth(false));
                let merged = match (below, entry.node.value) {
                    (Value::Table(below), Value::Table(above)) => Value::Table(over(below, above)),
                    (Value::Text(below), Value::Table(above)) if is_part_of_a_timer(&above) => {
                        Value::Table(over(timer_as_table(&below, &old.node.place), above))
                    }
                    (_, above) => above,
                };
                old.key_place = entry.key_place;
                old.node.place = entry.node.place;
                old.node.value = merged;
            }
            None => lower.entries.push(entry),
        }
    }
    lower
}

/// Whether a table says only the start or only the length of a timer.
fn is_part_of_a_timer(table: &Table) -> bool {
    let known = |key: &str| matches!(key, "from" | "for");
    table.entries.len() == 1 && table.entries.iter().all(|entry| known(&entry.key))
}

/// A timer written as `"20:00..08:00"` as the table it stands for; empty if it is none.
fn timer_as_table(text: &str, place: &Place) -> Table {
    let Some((from, length)) = timer::parts(text) else {
        return Table::default();
    };
    let entry = |key: &str, value: String| Entry {
        key: key.to_string(),
        key_place: place.clone(),
        node: Node {
            place: place.clone(),
            value: Value::Text(value),
        },
    };
    Table {
        entries: vec![entry("from", from), entry("for", length)],
    }
}
