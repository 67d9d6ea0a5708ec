//! The figures of all plans, a line each, with the best and the worst in words.

use crate::analysis::compare::Comparison;
use crate::analysis::compare::lines::{Line, Standing};
use crate::analysis::compare::value::Value;
use crate::analysis::figure_list::Better;
use crate::output::chart::words::short as two_digits;
use crate::output::text::words::short;
use crate::output::text::{Length, Page, Tone};

use super::{BARE, NAMES, letter};

/// Up to so many plans have their bands beside the middles.
const MOST_WITH_BANDS: usize = 2;
/// Most plans with roomy columns.
const MOST_ROOMY: usize = 5;
/// Widths of a plan's column with bands, and of a roomy one.
const BANDED: usize = 20;
const ROOMY: usize = 8;
/// Figures that stand in the tables only.
const UNTOLD: [&str; 3] = [
    "nitrate_peak_mg_n_per_l",
    "tan_peak_day",
    "nitrite_peak_day",
];

/// One line per figure in which the plans are told apart; in full one per figure.
pub fn table(page: &mut Page, comparison: &Comparison<'_>, length: Length) {
    let count = comparison.strategies.len();
    let width = width(count);
    let heads: String = (0..count)
        .map(|place| format!("{:>width$}", letter(place)))
        .collect();
    page.block("Figures", Tone::Strong, format!("{:NAMES$}{heads}", ""));
    let lines = match length {
        Length::Screen => told(comparison),
        Length::Full => all(comparison),
    };
    for line in &lines {
        let cells: Vec<String> = line
            .values
            .iter()
            .map(|value| cell(line, value, width))
            .collect();
        let standing = standing(line, &cells, comparison.last_day);
        let words = format!("{}  {standing}", row(line, &cells, width));
        page.line(Tone::Plain, words.trim_end());
    }
    if length == Length::Screen {
        alike(page, comparison);
    }
    let bands = match count <= MOST_WITH_BANDS {
        true => "middle of the tanks (5 to 95 of 100)",
        false => "middle of the tanks",
    };
    let more = match length {
        Length::Screen => "more: --full, table.csv",
        Length::Full => "bands: table.csv",
    };
    page.line(
        Tone::Faint,
        format!(
            "{bands}; > later than the last day; best and worst only where it is no chance; {more}"
        ),
    );
}

/// Every line that holds something.
fn all<'a>(comparison: &'a Comparison<'_>) -> Vec<&'a Line> {
    let lines = comparison.lines.iter();
    lines.filter(|line| has_something(line)).collect()
}

/// Figures in which the plans are told apart by nothing but chance, in one sentence.
fn alike(page: &mut Page, comparison: &Comparison<'_>) {
    let lines = comparison.lines.iter();
    let same = lines.filter(|line| is_told(line) && !is_told_apart(line));
    let words: Vec<String> = same
        .map(|line| {
            let values = line.values.iter();
            let mut values: Vec<String> = values.map(|value| cell(line, value, ROOMY)).collect();
            if values.windows(2).all(|two| two[0] == two[1]) {
                values.truncate(1);
            }
            format!("{} {}", named(line), values.join(" | "))
        })
        .collect();
    if !words.is_empty() {
        page.block(
            "",
            Tone::Plain,
            format!("about the same: {}", words.join("; ")),
        );
    }
}

/// The lines in which the plans are told apart.
pub(in crate::output) fn told<'a>(comparison: &'a Comparison<'_>) -> Vec<&'a Line> {
    let lines = comparison.lines.iter();
    lines
        .filter(|line| is_told(line) && is_told_apart(line))
        .collect()
}

/// Whether a line stands on the screen, and holds something.
fn is_told(line: &Line) -> bool {
    !UNTOLD.contains(&line.name) && has_something(line)
}

/// Whether a plan is better than another one by what is told; ready days always are told.
fn is_told_apart(line: &Line) -> bool {
    line.unit == "day" || !line.is_about_the_same() || line.values.contains(&Value::Nothing)
}

/// How many plans are later than the last day.
fn later(line: &Line) -> usize {
    let values = line.values.iter();
    values.filter(|value| **value == Value::Later).count()
}

fn width(plans: usize) -> usize {
    match plans {
        few if few <= MOST_WITH_BANDS => BANDED,
        some if some <= MOST_ROOMY => ROOMY,
        _ => BARE,
    }
}

/// Whether there is something to tell: a cost without prices is nothing, hours that are nowhere neither.
fn has_something(line: &Line) -> bool {
    let is_some = |value: &Value| value.middle().is_some();
    line.values.iter().any(is_some)
}

/// Name of a figure with its unit.
pub(in crate::output) fn named(line: &Line) -> String {
    match line.unit {
        "" | "1" | "money" | "day" => line.short.to_string(),
        unit => format!("{}, {}", line.short, unit.replace(" dry weight", "")),
    }
}

fn row(line: &Line, cells: &[String], width: usize) -> String {
    let name = named(line);
    let cells: String = cells.iter().map(|cell| format!("{cell:>width$}")).collect();
    format!("{name:NAMES$}{cells}")
}

fn cell(line: &Line, value: &Value, width: usize) -> String {
    let is_whole = line.unit == "day" || line.name == "visits" || line.name.ends_with("_day");
    let words = |value: f64| match width {
        _ if is_whole => format!("{value:.0}"),
        BARE => two_digits(value),
        _ => short(value),
    };
    match value {
        Value::Nothing => "–".into(),
        Value::Later => ">".into(),
        Value::Band([low, middle, high]) if width == BANDED && low != high => {
            format!("{} ({}–{})", words(*middle), words(*low), words(*high))
        }
        Value::One(middle) | Value::Band([_, middle, _]) => words(*middle),
    }
}

/// `best A worst C`, or that all are about the same; of a best or worst that most plans share only the other is
/// told. Days behind the last one are not known, so they are never called the same.
fn standing(line: &Line, cells: &[String], last_day: u32) -> String {
    let count = line.values.len();
    let known = line.values.iter().filter(|value| **value != Value::Nothing);
    if line.better == Better::Neither || known.count() < 2 {
        return String::new();
    }
    let stands = |place: usize| line.standing_as(place, cells);
    if (0..count).all(|place| stands(place) == Standing::Between) {
        return match later(line) {
            0 => "about the same".into(),
            all if all == line.values.len() => format!("all after day {last_day}"),
            _ => "not told apart".into(),
        };
    }
    let told = [(Standing::Best, "best"), (Standing::Worst, "worst")];
    let words = told.into_iter().filter_map(|(wanted, word)| {
        let places: Vec<usize> = (0..count)
            .filter(|&place| stands(place) == wanted)
            .collect();
        let letters: String = places.iter().copied().map(letter).collect();
        are_few(places.len(), count).then(|| format!("{word} {letters}"))
    });
    words.collect::<Vec<_>>().join(" ")
}

/// Whether some plans stand so, and no more than half of them: a best that most plans share says nothing.
pub(in crate::output) fn marks_few(line: &Line, standing: Standing) -> bool {
    let count = line.values.len();
    let places = (0..count).filter(|&place| line.standing(place) == standing);
    are_few(places.count(), count)
}

fn are_few(so_many: usize, count: usize) -> bool {
    so_many > 0 && (count == 2 || 2 * so_many <= count)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::analysis::compare::alike::Alike;

    fn days(values: [Value; 2], alike: &[(usize, usize)]) -> Line {
        Line {
            name: "ready_90_of_100_day",
            unit: "day",
            what: "",
            short: "",
            better: Better::Less,
            told_from: 1.0,
            values: values.to_vec(),
            alike: Alike::pairs(alike),
        }
    }

    #[test]
    fn days_behind_the_last_one_are_not_called_about_the_same() {
        let told = |values, alike: &[(usize, usize)]| {
            let line = days(values, alike);
            let cells: Vec<String> = values.iter().map(|day| cell(&line, day, ROOMY)).collect();
            standing(&line, &cells, 56)
        };
        let day = Value::One;
        assert_eq!(told([Value::Later, Value::Later], &[]), "all after day 56");
        assert_eq!(told([Value::Later, day(55.0)], &[(0, 1)]), "not told apart");
        assert_eq!(told([day(40.0), day(40.0)], &[]), "about the same");
        assert_eq!(told([day(40.0), Value::Later], &[]), "best A worst B");
    }
}
