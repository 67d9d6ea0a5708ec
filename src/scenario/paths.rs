//! Every single value of a scenario by its dotted path, as sweeps and studies name them.

use std::path::Path;

use super::based_on;
use super::files::Files;
use super::timer;
use super::tree::{Table, Value};

/// Dotted path and value of everything a text (and what it is based on) says, in order.
///
/// A timer written as `"20:00..08:00"` comes as its two parts, `….from` and `….for`.
pub fn flat(name: &str, text: &str) -> Vec<(String, String)> {
    let mut files = Files::default();
    let merged = based_on::load(&mut files, Path::new(name), text.to_string());
    flat_of(&merged.table)
}

/// The same of a tree.
pub(super) fn flat_of(table: &Table) -> Vec<(String, String)> {
    let mut list = Vec::new();
    walk("", table, &mut list);
    list
}

fn walk(path: &str, table: &Table, list: &mut Vec<(String, String)>) {
    for entry in &table.entries {
        let path = if path.is_empty() {
            entry.key.clone()
        } else {
            format!("{path}.{}", entry.key)
        };
        match &entry.node.value {
            Value::Table(inner) => walk(&path, inner, list),
            value => push(path, &value.written(), list),
        }
    }
}

fn push(path: String, value: &str, list: &mut Vec<(String, String)>) {
    match timer::parts(value) {
        Some((from, length)) => {
            list.push((format!("{path}.from"), from));
            list.push((format!("{path}.for"), length));
        }
        None => list.push((path, value.to_string())),
    }
}
