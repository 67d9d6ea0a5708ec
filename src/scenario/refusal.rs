//! Why a quantity was refused, in words: what was found, what is allowed, what to try.

use crate::base::units::quantity::Refusal;
use crate::base::units::{Kind, digits};

use super::problem::{Place, Problem};
use super::words::list_or;

/// The problem of a text that is no quantity of a kind.
pub fn problem(path: &str, text: &str, kind: &Kind, refusal: &Refusal, place: &Place) -> Problem {
    let problem = Problem::at(place, title(path, text, kind, refusal));
    let examples = quoted(kind.examples);
    match refusal {
        Refusal::Empty | Refusal::NoNumber => problem
            .label("a number and a unit")
            .help(format!("write it like {examples}")),
        Refusal::Comma { with_point } => problem
            .label("decimals take a point")
            .help(format!("write \"{with_point}\"")),
        Refusal::Band => problem
            .label("one value here")
            .help("write the value you believe in")
            .help("a range is understood for soil, waters, temperatures, surface, light, gas, air, cover and [parameters]"),
        Refusal::NoUnit { number } if kind.base().symbol == "1" => problem
            .label("the percent sign is missing")
            .help(format!("write it like {}", with_percent(number, &examples))),
        Refusal::NoUnit { number } => problem
            .label("the unit is missing")
            .help(format!("write it like {}", with_units(number, kind))),
        Refusal::Unknown {
            number, closest, ..
        } => {
            let problem = problem.label(format!("allowed: {}", symbols(kind)));
            match closest {
                Some(symbol) => problem.help(format!("did you mean \"{number} {symbol}\"?")),
                None => problem.help(format!("write it like {examples}")),
            }
        }
        Refusal::OtherKind { .. } => problem
            .label(format!("allowed: {}", symbols(kind)))
            .help(format!("write it like {examples}")),
        Refusal::Unclear {
            number,
            readings,
            shown_in,
            ..
        } => unclear(problem, number, readings, shown_in),
    }
}

fn title(path: &str, text: &str, kind: &Kind, refusal: &Refusal) -> String {
    let needs = format!("{path} needs {}", kind.name);
    match refusal {
        Refusal::Empty => format!("{needs}, but the text is empty"),
        Refusal::NoNumber => format!("{needs}; \"{text}\" does not begin with a number"),
        Refusal::Comma { .. } => format!("{path} = \"{text}\" has a comma in its number"),
        Refusal::Band => format!("{path} = \"{text}\" is a range, not one quantity"),
        Refusal::NoUnit { number } => format!("{needs}; {number} has no unit"),
        Refusal::Unknown { unit, .. } => format!("{needs}; \"{unit}\" is no unit of that"),
        Refusal::OtherKind { unit, other } => {
            format!("{needs}, but {unit} measures {other}")
        }
        Refusal::Unclear { unit, open, .. } => {
            format!("{path}: {unit} alone does not say {open}")
        }
    }
}

fn unclear(problem: Problem, number: &str, readings: &[(&str, f64)], shown: &str) -> Problem {
    let low = readings.iter().map(|r| r.1).fold(f64::INFINITY, f64::min);
    let high = readings.iter().map(|r| r.1).fold(0.0, f64::max);
    let meant: Vec<String> = readings
        .iter()
        .map(|(symbol, value)| {
            let answer = if *symbol == shown {
                String::new()
            } else {
                format!(" (= {} {shown})", rounded(*value))
            };
            format!("\"{number} {symbol}\"{answer}")
        })
        .collect();
    problem
        .label(format!(
            "anything from {} to {} {shown}",
            rounded(low),
            rounded(high)
        ))
        .help(format!("write which is meant: {}", list_or(&meant)))
}

/// A number for comparing answers: two or three digits.
fn rounded(value: f64) -> String {
    if value >= 100.0 {
        format!("{value:.0}")
    } else if value >= 1.0 {
        format!("{value:.1}")
    } else if value >= 0.1 {
        format!("{value:.2}")
    } else {
        format!("{value:.3}")
    }
}

/// The same number with the units of the examples.
pub fn with_units(number: &str, kind: &Kind) -> String {
    let ways: Vec<String> = kind
        .examples
        .iter()
        .filter_map(|example| example.split_once(' '))
        .map(|(_, unit)| format!("\"{number} {unit}\""))
        .collect();
    list_or(&ways)
}

/// A share as it could have been meant: `0.5` may be half of something, or half a percent; more than the whole was
/// hardly meant at all.
fn with_percent(number: &str, examples: &str) -> String {
    let same = format!("\"{number} %\"");
    match number.parse::<f64>() {
        Ok(share) if share <= 1.0 => {
            format!(
                "\"{} %\", or {same} if that is meant",
                digits(100.0 * share)
            )
        }
        Ok(share) if share > 100.0 => examples.to_string(),
        _ => same,
    }
}

/// Texts in quotes, joined by "or".
pub fn quoted(texts: &[&str]) -> String {
    let texts: Vec<String> = texts.iter().map(|text| format!("\"{text}\"")).collect();
    list_or(&texts)
}

/// The symbols of a kind's units.
fn symbols(kind: &Kind) -> String {
    let symbols: Vec<&str> = kind
        .units
        .iter()
        .map(|unit| unit.symbol)
        .filter(|symbol| *symbol != "1")
        .collect();
    symbols.join(", ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn more_than_the_whole_is_not_what_to_try() {
        assert_eq!(with_percent("50", "\"30 %\""), "\"50 %\"");
        assert_eq!(with_percent("150", "\"30 %\""), "\"30 %\"");
    }
}
