//! The report on the terminal: one screen.

mod answer;
mod assumed;
pub mod change_worth;
pub mod compare;
mod figures;
pub mod find_calendar;
mod forecast;
pub mod latest_fill;
pub mod lesson;
pub mod levers;
mod next;
mod page;
pub mod study;
mod supplies;
pub mod sweep;
pub mod sweep_size;
pub mod uncertain;
pub mod understood;
pub(super) mod words;

use std::path::Path;

use crate::analysis::case::Case;
use crate::analysis::forecast::Forecast;
use crate::analysis::outcome::Outcome;
use crate::base::clock::TimeOfDay;

pub use page::{Page, Tone, WIDEST};

use super::cautions::CAUTIONS;
use super::manifest::notices;
use super::place::Written;
use super::study::entries::VERDICT;
use super::when::day_in_words;
use words::counted;

/// Everything the report is made from.
#[derive(Debug, Clone, Copy)]
pub struct Story<'a> {
    /// The scenario.
    pub case: &'a Case,
    /// Its run and what it means.
    pub outcome: &'a Outcome,
    /// Many plausible tanks; none where only the central run was asked for.
    pub forecast: Option<&'a Forecast>,
    /// How much is told.
    pub length: Length,
    /// The scenario file as it would be typed again; none where there is no such file at hand.
    pub file: Option<&'a str>,
}

/// How much is told of a run.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Length {
    /// What decides, on one screen; the rest stands in the files.
    Screen,
    /// Everything.
    Full,
}

impl Story<'_> {
    fn is_full(&self) -> bool {
        self.length == Length::Full
    }
}

/// The report of a run.
pub fn report(story: &Story) -> Page {
    let mut page = Page::default();
    title(&mut page, story.case);
    page.gap();
    answer::ready(&mut page, story);
    next::block(&mut page, story);
    answer::animals(&mut page, story);
    page.gap();
    if let (true, Some(forecast)) = (story.is_full(), story.forecast) {
        forecast::tests(&mut page, story.case, forecast);
    }
    figures::peaks(&mut page, story);
    figures::running(&mut page, &story.outcome.findings);
    page.gap();
    if story.is_full() {
        page.block("Tank", Tone::Plain, tank(story.case));
    }
    supplies::water_and_gas(&mut page, story);
    assumed::defaults(&mut page, story.case);
    assumed::notices(&mut page, &notices(&story.outcome.run, story.case));
    page
}

/// What has been written, and what to keep in mind.
pub fn closing(page: &mut Page, first_choice: &Path, written: &Written, files: &[String]) {
    let folder = written.folder.display();
    let words = if written.renamed {
        let taken = first_choice.display();
        format!("{taken} was there already, so this run is in {folder}")
    } else if written.replaced {
        format!("{folder} (replaced)")
    } else {
        folder.to_string()
    };
    page.block("Files", Tone::Plain, words);
    page.line(Tone::Plain, in_short(files));
    page.block("Cautions", Tone::Plain, CAUTIONS.join(" "));
}

/// The first pictures by name, the rest counted: a folder lists itself.
fn in_short(files: &[String]) -> String {
    let tables = files.iter().filter(|name| name.ends_with(".csv"));
    let pictures: Vec<&str> = files
        .iter()
        .filter_map(|name| name.strip_suffix(".png"))
        .collect();
    let tables = format!("{}, manifest.json", counted(tables.count(), "table"));
    let tables = match files.iter().find(|name| *name == VERDICT) {
        Some(verdict) => format!("{verdict}; {tables}"),
        None => tables,
    };
    let page = files.iter().find(|name| name.ends_with(".html"));
    let tables = match page {
        Some(page) => format!("{page} for the browser; {tables}"),
        None => tables,
    };
    match pictures.as_slice() {
        [] => tables,
        [one] => format!("{one}.png; {tables}"),
        [first, second] => format!("look at {first}.png and {second}.png; {tables}"),
        [first, second, rest @ ..] => format!(
            "look at {first}.png and {second}.png first; {} more; {tables}",
            counted(rest.len(), "chart")
        ),
    }
}

/// Name, first and last day.
fn title(page: &mut Page, case: &Case) {
    let filled = TimeOfDay::of(case.input.filled_at);
    let first = day_in_words(case.filled_on, 0);
    let last = day_in_words(case.filled_on, case.input.last_day);
    page.block("firstfill", Tone::Strong, case.name.as_str());
    page.line(
        Tone::Plain,
        format!("full on {first} at {filled}; to {last}"),
    );
}

/// The facts of the tank in a few lines; remarks in brackets are left to `check`.
fn tank(case: &Case) -> String {
    let facts: Vec<String> = case
        .facts
        .iter()
        .map(|(label, value)| match label.as_str() {
            "Tank" => without_remark(value).to_string(),
            label => format!("{} {}", label.to_lowercase(), without_remark(value)),
        })
        .collect();
    facts.join("; ")
}

fn without_remark(value: &str) -> &str {
    match value.find(" (") {
        Some(start) if value.ends_with(')') => &value[..start],
        _ => value,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::analysis::example::Example;
    use anstream::adapter::strip_str;

    fn printed(example: &Example) -> String {
        let case = example.case();
        let outcome = Outcome::judged(&case, example.run(), None);
        let mut page = report(&Story {
            case: &case,
            outcome: &outcome,
            forecast: None,
            file: None,
            length: Length::Screen,
        });
        let written = Written {
            folder: "output/made-up-2".into(),
            renamed: true,
            replaced: false,
        };
        let files = ["series.csv".into(), "daily.csv".into()];
        closing(&mut page, Path::new("output/made-up"), &written, &files);
        strip_str(&page.render(WIDEST)).to_string()
    }

    #[test]
    fn the_report_of_a_ready_tank_fits_one_screen() {
        let text = printed(&Example {
            stocked: Some((4, 0.1)),
            ..Example::default()
        });
        assert!(text.lines().count() <= 44, "{} lines", text.lines().count());
        insta::assert_snapshot!(text);
    }

    #[test]
    fn a_tank_that_does_not_get_ready_says_what_it_waits_for() {
        let text = printed(&Example {
            clean_from_day: 99,
            dated: false,
            ..Example::default()
        });
        assert!(text.contains("later than day 10"), "{text}");
        assert!(text.contains("waiting for nitrite"), "{text}");
    }

    #[test]
    fn a_quiet_tank_is_told_apart_from_a_ripe_one() {
        let text = printed(&Example {
            stocked: Some((9, 1.0)),
            ..Example::default()
        });
        let words =
            "quiet from day 6, Fri 12 Mar, not shown to be ripe: capacity 40.0 of 64.0 mg N/day";
        assert!(text.contains(words), "{text}");
    }
}
