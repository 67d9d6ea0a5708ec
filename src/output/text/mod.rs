//! The report on the terminal: one screen.

mod answer;
mod assumed;
mod figures;
mod page;
pub mod understood;
mod words;

use std::path::Path;

use crate::analysis::case::Case;
use crate::analysis::outcome::Outcome;

pub use page::{Page, Tone, WIDEST};

use super::files::Written;
use super::manifest::notices;
use super::when::day_in_words;

/// Everything the report is made from.
#[derive(Debug, Clone, Copy)]
pub struct Story<'a> {
    /// The scenario.
    pub case: &'a Case,
    /// Its run and what it means.
    pub outcome: &'a Outcome,
}

/// The report of a run.
pub fn report(story: &Story) -> Page {
    let mut page = Page::default();
    heading(&mut page, story.case);
    page.gap();
    answer::ready(&mut page, story);
    answer::animals(&mut page, story);
    page.gap();
    figures::peaks(&mut page, story);
    figures::running(&mut page, &story.outcome.findings);
    page.gap();
    figures::water_and_gas(&mut page, story);
    assumed::defaults(&mut page, story.case);
    assumed::notices(&mut page, &notices(&story.outcome.run, story.case));
    page
}

/// What has been written, and what to keep in mind.
pub fn closing(page: &mut Page, first_choice: &Path, written: &Written, files: &[String]) {
    if written.renamed {
        let (taken, now) = (first_choice.display(), written.folder.display());
        page.block(
            "Files",
            Tone::Plain,
            format!("{taken} was there already, so this run is in {now}"),
        );
    } else {
        let replaced = if written.replaced { " (replaced)" } else { "" };
        let folder = written.folder.display();
        page.block("Files", Tone::Plain, format!("{folder}{replaced}"));
    }
    page.line(Tone::Faint, files.join(", "));
    page.gap();
    for line in CAVEATS {
        page.line(Tone::Plain, *line);
    }
}

const CAVEATS: &[&str] = &[
    "One central forecast with wide error: real tanks cleared nitrite up to two weeks later. It never replaces a test before animals go in.",
    "Fix CO2 cylinders upright and air the room; keep drip loops and residual-current protection; never leave a hose; air gap to the tap; labels of chemicals.",
    "Animals come first where they disagree with the numbers; release nothing into the wild. Local codes and licensed trades decide.",
];

fn heading(page: &mut Page, case: &Case) {
    let start = day_in_words(case.filled_on, 0);
    let last = case.input.last_day;
    page.block(
        "firstfill",
        Tone::Strong,
        format!("{}: {start} to day {last}", case.name),
    );
    tank(page, case);
}

/// The tank in the order of its facts.
pub fn tank(page: &mut Page, case: &Case) {
    let facts: Vec<String> = case
        .facts
        .iter()
        .map(|(label, value)| format!("{} {value}", label.to_lowercase()))
        .collect();
    page.block("Tank", Tone::Plain, facts.join("; "));
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
        assert!(text.lines().count() <= 48, "{} lines", text.lines().count());
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
