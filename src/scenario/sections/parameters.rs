//! `[parameters]`: numbers of the model that differ for this tank, each with the reason.

use crate::analysis::case::SetBy;
use crate::analysis::uncertain::shape::Shape;
use crate::analysis::uncertain::spread;
use crate::analysis::uncertain::unsure::{Known, Written};
use crate::base::units::{self, digits};
use crate::model::parameter::ParameterSpec;
use crate::model::parameter_set::Origin;
use crate::model::parameters;
use crate::scenario::draft::Draft;
use crate::scenario::problem::Problem;
use crate::scenario::reader::{self, Reader, is_range, quantity_of};
use crate::scenario::tree::{Entry, Node, Value};

/// How many near ids are suggested.
const SUGGESTED: usize = 3;

/// Reads `[parameters]`.
pub fn read(file: &Reader<'_>, draft: &mut Draft<'_>) {
    let section = file.section("parameters");
    for entry in section.everything() {
        if crate::scenario::reader::is_none(&entry.node) {
            continue;
        }
        match parameters::spec(&entry.key) {
            Some(spec) => one(&section, entry, spec, draft),
            None => unknown(&section, entry),
        }
    }
}

fn unknown(section: &Reader<'_>, entry: &Entry) {
    let mut near: Vec<(usize, &str)> = parameters::all()
        .iter()
        .map(|spec| {
            let (a, b) = (entry.key.to_lowercase(), spec.id.to_lowercase());
            (strsim::damerau_levenshtein(&a, &b), spec.id)
        })
        .collect();
    near.sort_unstable();
    let near: Vec<&str> = near.iter().take(SUGGESTED).map(|(_, id)| *id).collect();
    section.desk.problem(
        Problem::at(
            &entry.key_place,
            format!("there is no parameter {}", entry.key),
        )
        .label("unknown symbol")
        .help(format!("the nearest are {}", near.join(", ")))
        .help("all of them: firstfill explain parameters"),
    );
}

fn one(section: &Reader<'_>, entry: &Entry, spec: &'static ParameterSpec, draft: &mut Draft<'_>) {
    let path = section.path_of(&entry.key);
    let Value::Table(table) = &entry.node.value else {
        section.desk.problem(
            Problem::at(&entry.node.place, format!("{path} does not say why"))
                .label("an override needs its reason")
                .help(format!(
                    "write {} = {{ value = {}, why = \"...\" }}",
                    entry.key,
                    example(spec)
                )),
        );
        return;
    };
    let why = why(section, entry, &path);
    let Some(value) = table.get("value") else {
        section.desk.problem(
            Problem::at(&entry.key_place, format!("{path} has no value"))
                .help(format!("add value = {}", example(spec))),
        );
        return;
    };
    for other in &table.entries {
        if !matches!(other.key.as_str(), "value" | "why") {
            section.desk.problem(
                Problem::at(&other.key_place, format!("{path} has no key {}", other.key))
                    .label("known here: value, why"),
            );
        }
    }
    let read = if is_range(&value.node) {
        range(section, &path, &value.node, spec)
    } else {
        number(section, &path, &value.node, spec)
    };
    let (Some(number), Some(why)) = (read, why) else {
        return;
    };
    judge(draft, spec, number);
    draft
        .desk
        .resolve(path, printed(spec, number), SetBy::Override(why.clone()));
    draft.parameters.set(spec.id, number, Origin::Given { why });
}

/// The reason, which must be there.
fn why(section: &Reader<'_>, entry: &Entry, path: &str) -> Option<String> {
    let Value::Table(table) = &entry.node.value else {
        return None;
    };
    match table
        .get("why")
        .map(|why| (&why.node.value, &why.node.place))
    {
        Some((Value::Text(text), _)) if !text.trim().is_empty() => Some(text.trim().to_string()),
        Some((_, place)) => {
            section.desk.problem(
                Problem::at(place, format!("{path} has an empty reason"))
                    .help("say why in a few words, for yourself in a year: why = \"cool room\""),
            );
            None
        }
        None => {
            section.desk.problem(
                Problem::at(&entry.key_place, format!("{path} does not say why"))
                    .label("an override needs its reason")
                    .help("add why = \"...\", for example why = \"cool room\""),
            );
            None
        }
    }
}

/// A plain number in quotes, as good as one without.
fn plain(text: &str) -> Option<f64> {
    text.trim().parse().ok()
}

/// The value in the unit of the declaration.
fn number(
    section: &Reader<'_>,
    path: &str,
    node: &Node,
    spec: &'static ParameterSpec,
) -> Option<f64> {
    let (kind, unit) = units::of_label(spec.unit)?;
    let value = match &node.value {
        Value::Whole(number) if spec.unit == "1" => *number as f64,
        Value::Number(number) if spec.unit == "1" => *number,
        Value::Text(text) if spec.unit == "1" && plain(text).is_some() => plain(text)?,
        _ => {
            let all = (f64::NEG_INFINITY, f64::INFINITY);
            unit.from_base(quantity_of(section.desk, path, node, kind, all)?)
        }
    };
    if !spec.allows(value) {
        section.desk.problem(
            Problem::at(
                &node.place,
                format!("{path} cannot be {}", printed(spec, value)),
            )
            .label(possible(spec))
            .help(format!(
                "plausible: {} to {}",
                digits(spec.low),
                printed(spec, spec.high)
            )),
        );
        return None;
    }
    Some(value)
}

/// The middle of a range in the unit of the declaration; the range is noted in that unit.
fn range(
    section: &Reader<'_>,
    path: &str,
    node: &Node,
    spec: &'static ParameterSpec,
) -> Option<f64> {
    let read = |node: &Node| number(section, path, node, spec);
    let (low, high) = reader::ends_of(section.desk, path, node, read)?;
    let most = if spec.is_share() { 1.0 } else { f64::INFINITY };
    let least = if spec.low < 0.0 {
        f64::NEG_INFINITY
    } else {
        0.0
    };
    let shape = Shape::of_range(low, high, spread::measure_of(spec)).within((least, most));
    let known = Known::Range {
        shape,
        unit: spec.unit,
        written: Written {
            text: node.value.written(),
            ends: (low, high),
        },
    };
    section.desk.unsure(path, known);
    Some(shape.middle)
}

fn possible(spec: &ParameterSpec) -> &'static str {
    if spec.is_share() {
        "a share lies between 0 and 1"
    } else {
        "it cannot be below zero, and must be a number"
    }
}

fn judge(draft: &Draft<'_>, spec: &ParameterSpec, value: f64) {
    if value < spec.low || value > spec.high {
        draft.desk.notice(format!(
            "parameters.{} = {} is outside the plausible range {} to {}",
            spec.id,
            printed(spec, value),
            digits(spec.low),
            printed(spec, spec.high)
        ));
    }
}

fn printed(spec: &ParameterSpec, value: f64) -> String {
    if spec.unit == "1" {
        digits(value)
    } else {
        format!("{} {}", digits(value), spec.unit)
    }
}

fn example(spec: &ParameterSpec) -> String {
    if spec.unit == "1" {
        digits(spec.default)
    } else {
        format!("\"{}\"", printed(spec, spec.default))
    }
}
