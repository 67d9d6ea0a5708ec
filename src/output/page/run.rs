//! The page of a run: what came of it, every chart, and the plan to pin to the wall.

use crate::output::chart;
use crate::output::csv::{NotANumber, plan};
use crate::output::folder::{Entry, Wanted, days_to_draw};
use crate::output::manifest::Story;

use super::report::{Report, page};
use super::run_result::result;
use super::table::{Words, name};

/// The page as a file.
///
/// # Errors
/// When a number of the plan is none.
pub fn entry(story: &Story<'_>, wanted: &Wanted) -> Result<Entry, NotANumber> {
    let (case, outcome) = (story.case, story.outcome);
    let figures = chart::figures(
        &outcome.run,
        case,
        &outcome.milestones,
        &outcome.verdict,
        story.forecast,
        &days_to_draw(outcome, &wanted.days),
    );
    let plan = plan::table(&outcome.run, case, &outcome.verdict, &outcome.arrivals)?;
    let mut plan = Words::of_csv("What to do, day by day", &plan, name);
    for row in &mut plan.rows {
        row[0] = format!("day {}", row[0]);
    }
    let html = page(&Report {
        over: "Eight weeks of a tank, simulated by firstfill",
        title: &case.name,
        result: result(story, &figures),
        figures: &figures,
        tables: &[("The plan".into(), plan)],
        how: &[how(story)],
        files: story.files,
    });
    Ok(Entry {
        name: "page.html".into(),
        bytes: html.into_bytes(),
    })
}

fn how(story: &Story<'_>) -> String {
    let alone = format!(
        "firstfill {} simulated the tank below in steps of an hour or less, once with the middle of all that is not known",
        env!("CARGO_PKG_VERSION")
    );
    match story.forecast {
        None => format!("{alone}."),
        Some(forecast) => format!(
            "{alone}, and {} plausible tanks like it (seed {}) that differ in all that is not known, within what is published \
             or judged.",
            forecast.ensemble.members.len(),
            forecast.seed
        ),
    }
}
