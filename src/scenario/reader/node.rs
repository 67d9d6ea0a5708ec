//! Single values as quantities and words.

use crate::base::units::{Kind, Unit, digits, quantity};

use crate::scenario::desk::Desk;
use crate::scenario::problem::{Place, Problem};
use crate::scenario::refusal;
use crate::scenario::tree::{Node, Value};
use crate::scenario::words::closest;

/// Whether a value is the word that removes an entry.
pub fn is_none(node: &Node) -> bool {
    matches!(&node.value, Value::Text(text) if text == "none")
}

/// A node as a quantity of a kind within bounds; what is wrong goes to the desk.
pub fn quantity_of(
    desk: &Desk,
    path: &str,
    node: &Node,
    kind: &'static Kind,
    bounds: (f64, f64),
) -> Option<f64> {
    let text = match &node.value {
        Value::Text(text) => text.clone(),
        Value::Whole(_) | Value::Number(_) => node.value.written(),
        other => {
            let title = format!("{path} needs {}, but this is {}", kind.name, other.words());
            let examples = refusal::quoted(kind.examples);
            desk.problem(Problem::at(&node.place, title).help(format!("write it like {examples}")));
            return None;
        }
    };
    let read = match quantity::read(&text, kind) {
        Ok(_) if bare_where_a_percent_sign_is_needed(node, kind) => {
            Err(quantity::Refusal::NoUnit {
                number: text.clone(),
            })
        }
        read => read,
    };
    match read {
        Ok(value) => {
            if let Some(problem) = outside(path, &text, value, kind, bounds, &node.place) {
                desk.problem(problem);
                return None;
            }
            Some(value)
        }
        Err(refused) => {
            desk.problem(refusal::problem(path, &text, kind, &refused, &node.place));
            None
        }
    }
}

/// A share is written with its percent sign, so that `0.5` and `50` cannot be mixed up.
fn bare_where_a_percent_sign_is_needed(node: &Node, kind: &Kind) -> bool {
    let bare = match &node.value {
        Value::Text(text) => quantity::split(text).is_ok_and(|split| split.unit.is_empty()),
        _ => true,
    };
    bare && kind.base().symbol == "1"
}

/// The problem of a value out of bounds, told in the unit in which it is written.
fn outside(
    path: &str,
    text: &str,
    value: f64,
    kind: &'static Kind,
    (low, high): (f64, f64),
    place: &Place,
) -> Option<Problem> {
    if value >= low && value <= high {
        return None;
    }
    let symbol = quantity::split(text).ok().map_or("", |split| split.unit);
    let unit = kind.spelled(symbol).unwrap_or(kind.base());
    let print = |base: f64| digits(unit.from_base(base));
    let allowed = format!("allowed: {} to {} {}", print(low), print(high), unit.symbol);
    let problem = Problem::at(place, format!("{path} is {text}")).label(allowed);
    Some(match other_scale(text, kind, (low, high)) {
        Some(help) => problem.help(help),
        None => problem,
    })
}

/// Where a temperature would be allowed in another scale: the text to write.
fn other_scale(text: &str, kind: &'static Kind, bounds: (f64, f64)) -> Option<String> {
    if !kind.units.iter().any(|unit| unit.shift != 0.0) {
        return None;
    }
    let number = quantity::split(text).ok()?.number;
    let fits = |unit: &&Unit| (bounds.0..=bounds.1).contains(&unit.to_base(number));
    let unit = kind.units.iter().find(fits)?;
    let meant = digits((unit.to_base(number) * 10.0).round() / 10.0);
    let (number, symbol, base) = (digits(number), unit.symbol, kind.base().symbol);
    Some(format!(
        "if {number} was meant in {symbol}, write \"{number} {symbol}\" (= {meant} {base})"
    ))
}

/// A node as one of some words.
pub fn choice_of(desk: &Desk, path: &str, node: &Node, words: &[&str]) -> Option<usize> {
    let found = match &node.value {
        Value::Text(text) => words.iter().position(|word| word == text),
        _ => None,
    };
    if found.is_none() {
        let problem = Problem::at(&node.place, format!("{path} is {}", node.value.shown()))
            .label(format!("allowed: {}", words.join(", ")));
        let near = match &node.value {
            Value::Text(text) => closest(text, words.iter().copied()),
            _ => None,
        };
        desk.problem(match near {
            Some(near) => problem.help(format!("did you mean \"{near}\"?")),
            None => problem,
        });
    }
    found
}
