//! What varies, laid over a scenario as `based_on` lays one file over another: lines of the study file, which keep
//! their places, so that the reader of the scenario points at them.

use crate::analysis::case::Case;
use crate::model::parameters;
use crate::scenario::desk::Desk;
use crate::scenario::problem::{Place, Problem};
use crate::scenario::tree::{Entry, Node, Table, Value};
use crate::scenario::{based_on, build};

use super::values::Values;
use super::wishes::Wish;

/// Why a parameter is not what it usually is.
const WHY: &str = "varied by the study";

/// A scenario of a study, before anything varies.
pub struct Ground {
    /// Its name without its ending.
    pub stem: String,
    /// Its merged tree.
    pub merged: based_on::Merged,
}

impl Ground {
    /// The scenario as it is, or with some entries laid over it.
    pub fn with(&self, entries: Table) -> Result<Case, Vec<Problem>> {
        let table = based_on::over(self.merged.table.clone(), entries);
        let desk = Desk::default();
        let case = build::case(&desk, &table, &self.stem, 0);
        let problems = desk.take_problems();
        match case {
            Some(case) if problems.is_empty() => Ok(case),
            _ => Err(problems),
        }
    }
}

/// The ranges among some wishes, as entries of a scenario.
pub fn ranges(wishes: &[Wish]) -> Table {
    let node = |wish: &Wish| match &wish.values {
        Values::Range(node) | Values::Even(node) => Some(node.clone()),
        _ => None,
    };
    let lines = wishes
        .iter()
        .filter_map(|wish| Some(line(wish, node(wish)?)));
    lines.fold(Table::default(), based_on::over)
}

/// One setting of a wish as entries of a scenario.
pub fn setting(wish: &Wish, number: usize) -> Table {
    match &wish.values {
        Values::Settings(settings) => line(wish, settings[number].clone()),
        _ => Table::default(),
    }
}

fn line(wish: &Wish, node: Node) -> Table {
    let place = &wish.place;
    if parameters::spec(&wish.name).is_none() {
        return nested(&wish.name, place, node);
    }
    let why = Node {
        place: place.clone(),
        value: Value::Text(WHY.into()),
    };
    let entries = vec![entry("value", place, node), entry("why", place, why)];
    let both = Node {
        place: place.clone(),
        value: Value::Table(Table { entries }),
    };
    nested(&format!("parameters.{}", wish.name), place, both)
}

/// A dotted path as tables within tables.
fn nested(path: &str, place: &Place, node: Node) -> Table {
    let (first, rest) = path.split_once('.').unwrap_or((path, ""));
    let node = match rest {
        "" => node,
        rest => Node {
            place: place.clone(),
            value: Value::Table(nested(rest, place, node)),
        },
    };
    Table {
        entries: vec![entry(first, place, node)],
    }
}

fn entry(key: &str, place: &Place, node: Node) -> Entry {
    Entry {
        key: key.to_string(),
        key_place: place.clone(),
        node,
    }
}
