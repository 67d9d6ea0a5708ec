//! Every single value of a scenario by its dotted path, as sweeps and studies name them.

use std::path::Path;

use super::based_on;
use super::files::Files;
use super::tree::{Table, Value};

/// Dotted path and value of everything a text (and what it is based on) says, in order.
///
/// Timers written as `"a..b"` keep their text; entries inside inline tables are single values.
pub fn flat(name: &str, text: &str) -> Vec<(String, String)> {
    let mut files = Files::default();
    let merged = based_on::load(&mut files, Path::new(name), text.to_string());
    let mut list = Vec::new();
    walk("", &merged.table, &mut list);
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
            value => list.push((path, value.written())),
        }
    }
}
