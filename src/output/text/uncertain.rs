//! What is uncertain of a tank, input by input, and what is not varied.

use crate::analysis::case::Case;
use crate::analysis::uncertain::{Kept, Uncertain, Varied};
use crate::output::number::six_digits;

use super::words::counted;
use super::{Page, Tone};

/// Widths of the columns: name, the three points, unit.
const NAME: usize = 21;
const POINT: usize = 8;
const UNIT: usize = 13;
/// Figures shown of a point.
const FIGURES: usize = 3;

/// The whole page.
pub fn page(case: &Case, uncertain: &Uncertain) -> Page {
    let mut page = Page::default();
    page.block("Scenario", Tone::Strong, case.name.as_str());
    let count = counted(uncertain.rows().len(), "input");
    page.block(
        "Uncertain",
        Tone::Plain,
        format!(
            "{count}, drawn independently of each other; {} kept as they are. Central is the median, but of a \
             triangular spread the likeliest value, which may be one of its ends",
            uncertain.kept().len()
        ),
    );
    page.gap();
    let heads = ["5 %", "central", "95 %"];
    page.block(
        "Varied",
        Tone::Faint,
        columns("input", heads.map(String::from), "unit", "shape"),
    );
    for row in uncertain.rows() {
        varied(&mut page, row);
    }
    page.gap();
    for (at, (why, names)) in by_reason(uncertain.kept()).iter().enumerate() {
        let label = if at == 0 { "Not varied" } else { "" };
        page.block(label, Tone::Plain, format!("{why}:"));
        page.line(Tone::Faint, format!("  {}", names.join(", ")));
    }
    page.gap();
    page.line(
        Tone::Plain,
        "To take a value as known, write it in the scenario or under [parameters]; a range such as \
         \"3..4 dKH\" gives its 5 % and 95 % points. A range of shares is logit-normal, which ends at 0 and at \
         100 % by itself; one that begins at an end is triangular from there.",
    );
    page
}

/// One input: its points, then what it is, where that is known from, and its partner.
fn varied(page: &mut Page, row: &Varied) {
    let (low, high) = row.shape.points();
    let points = [low, row.shape.middle, high].map(figures);
    let unit = if row.unit == "1" { "" } else { &row.unit };
    page.line(
        Tone::Plain,
        columns(&row.name, points, unit, row.shape.form.word()),
    );
    let partner = match row.told_apart.as_str() {
        "" => String::new(),
        words => format!("; not told apart from {words}"),
    };
    page.line(
        Tone::Faint,
        format!("  {}; {}{partner}", row.words, row.source),
    );
}

fn columns(name: &str, points: [String; 3], unit: &str, shape: &str) -> String {
    let points = points.map(|point| format!("{point:>POINT$}"));
    format!("{name:NAME$}{}  {unit:UNIT$} {shape}", points.join(" "))
}

/// A number with three figures.
fn figures(value: f64) -> String {
    let rounded: f64 = format!("{value:.*e}", FIGURES - 1).parse().unwrap_or(value);
    six_digits(rounded)
}

/// Names by reason, in the order in which the reasons first appear.
fn by_reason(kept: &[Kept]) -> Vec<(&'static str, Vec<&str>)> {
    let mut reasons: Vec<(&'static str, Vec<&str>)> = Vec::new();
    for input in kept {
        match reasons.iter_mut().find(|(why, _)| *why == input.why) {
            Some((_, names)) => names.push(&input.name),
            None => reasons.push((input.why, vec![&input.name])),
        }
    }
    reasons
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::analysis::example::Example;
    use anstream::adapter::strip_str;

    #[test]
    fn what_is_uncertain_is_printed_input_by_input() {
        let case = Example::default().case();
        let text = page(&case, &Uncertain::of(&case)).render(100);
        insta::assert_snapshot!(strip_str(&text).to_string());
    }

    #[test]
    fn points_have_three_figures_whatever_their_size() {
        let written = [6e-6, 0.047_123, 8.4067, 250.0, 0.0].map(figures);
        assert_eq!(written, ["0.000006", "0.0471", "8.41", "250", "0"]);
    }
}
