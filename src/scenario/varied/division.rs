//! A range divided into values: both ends as they are written, even steps between, whole ones where only whole
//! ones make sense.

use crate::analysis::sweep::axis::{Axis, Setting};
use crate::base::units::{digits, quantity, spelling};
use crate::scenario::problem::{Place, Problem};
use crate::scenario::words::list_or;

use super::named::in_a_few_words;
use super::spec::{MOST, Refused, like};

/// Last names of paths that take whole values only.
const WHOLE: [&str; 5] = ["day", "every", "count", "first_day", "length"];
/// Ways to divide a range that are told.
const TOLD: usize = 4;

/// Both ends of a range, in one unit.
pub struct Range<'a> {
    first: &'a str,
    last: &'a str,
    from: f64,
    to: f64,
    unit: &'a str,
}

/// Both ends of a range; they must rise, in one unit.
pub fn ends<'a>(first: &'a str, last: &'a str, place: &Place) -> Result<Range<'a>, Refused> {
    let refused = |title: String, help: String| Box::new(Problem::at(place, title).help(help));
    let number = |end: &'a str| {
        quantity::split(end).map_err(|_| refused(format!("\"{end}\" is no number"), like()))
    };
    let (from, to) = (number(first)?, number(last)?);
    if spelling::plain(from.unit) != spelling::plain(to.unit) {
        let title = format!("the ends {first} and {last} are in different units");
        return Err(refused(title, "write both in the same one".into()));
    }
    if from.number >= to.number {
        let title = format!("the range does not rise from {first} to {last}");
        return Err(refused(title, "write the smaller end first".into()));
    }
    Ok(Range {
        first,
        last,
        from: from.number,
        to: to.number,
        unit: to.unit,
    })
}

/// The values of a range, both ends as they are written.
///
/// ```text
/// value k of n = from + k·(to − from)/(n − 1), k = 0 … n − 1, to six digits
/// ```
pub fn divided(path: &str, range: &Range<'_>, count: usize) -> Axis {
    let steps = (count - 1) as f64;
    let between = |k: usize| {
        let number = range.from + k as f64 * (range.to - range.from) / steps;
        let words = digits(number);
        Setting {
            number: words.parse().unwrap_or(number),
            words: format!("{words} {}", range.unit).trim_end().to_string(),
        }
    };
    let end = |number: f64, words: &str| Setting {
        number,
        words: words.to_string(),
    };
    let mut settings: Vec<Setting> = (0..count).map(between).collect();
    settings[0] = end(range.from, range.first);
    settings[count - 1] = end(range.to, range.last);
    Axis {
        path: path.to_string(),
        name: in_a_few_words(path),
        unit: range.unit.to_string(),
        settings,
    }
}

/// Days and counts come in whole numbers.
pub fn refuse_parts(axis: &Axis, range: &Range<'_>, place: &Place) -> Result<(), Refused> {
    let part = axis.settings.iter().find(|s| s.number.fract() != 0.0);
    let Some(part) = part.filter(|_| WHOLE.contains(&axis.last_name())) else {
        return Ok(());
    };
    let (path, count, words) = (&axis.path, axis.settings.len(), &part.words);
    let title = format!("{path} takes whole values only");
    let problem = Problem::at(place, title).label(format!("{count} values include {words}"));
    let ways = whole_ways(range);
    Err(Box::new(match ways.is_empty() {
        true => problem.help("let both ends be whole numbers"),
        false => problem.help(format!("numbers of values that do: {}", list_or(&ways))),
    }))
}

/// Into how many whole values a range can be divided, the most first.
fn whole_ways(range: &Range<'_>) -> Vec<String> {
    if range.from.fract() != 0.0 || range.to.fract() != 0.0 || range.to - range.from > MOST as f64 {
        return Vec::new();
    }
    let span = (range.to - range.from) as usize;
    let steps = (1..=span).rev().filter(|steps| span.is_multiple_of(*steps));
    let ways = steps.map(|steps| (steps + 1).to_string());
    ways.take(TOLD).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_ways_to_divide_days_into_whole_ones_are_told() {
        let range = |from, to| Range {
            first: "",
            last: "",
            from,
            to,
            unit: "",
        };
        assert_eq!(whole_ways(&range(1.0, 7.0)), ["7", "4", "3", "2"]);
        assert!(whole_ways(&range(1.0, 7.5)).is_empty());
    }
}
