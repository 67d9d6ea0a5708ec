//! The page of a sweep: maps or curves, and the figures of every point.

use maud::{Markup, html};

use crate::output::chart::sweep::figures;
use crate::output::folder::Entry;
use crate::output::sweep::Story;
use crate::output::sweep::words::{bare, setting, with_unit};
use crate::output::text::sweep::range;
use crate::output::text::words::capital;

use super::report::{Report, page};
use super::table::Words;

/// Most rows that a page can bear; the rest stands in `sweep.csv`.
const MOST_ROWS: usize = 150;

/// The page as a file.
pub fn entry(story: &Story<'_>) -> Entry {
    let sweep = story.sweep;
    let how = format!(
        "firstfill {} ran every point of the grid on the same {} plausible tanks (seed {}), each as if its values had been \
         written into the scenario.",
        env!("CARGO_PKG_VERSION"),
        sweep.common.members,
        sweep.common.seed
    );
    let html = page(&Report {
        over: "Values of a tank varied by firstfill",
        title: &story.case.name,
        result: result(story),
        figures: &figures(sweep, story.of),
        tables: &[("All points".into(), points(story))],
        how: &[how],
        files: story.files,
    });
    Entry {
        name: "page.html".into(),
        bytes: html.into_bytes(),
    }
}

/// From where to where each figure runs.
fn result(story: &Story<'_>) -> Markup {
    let sweep = story.sweep;
    let ranges = story.of.iter().map(|&line| range(sweep, line));
    let size = format!(
        "{} settings, each on the same {} plausible tanks, to day {}.",
        sweep.points.len(),
        sweep.common.members,
        sweep.last_day
    );
    html! {
        @for (place, words) in ranges.enumerate() {
            p class=[(place == 0).then_some("headline")] { (capital(&words)) "." }
        }
        p class="faint" { (size) }
    }
}

/// A row per point: its settings, and the middle of each figure that was asked for.
fn points(story: &Story<'_>) -> Words {
    let sweep = story.sweep;
    let row = |number: usize| {
        let own = sweep.points[number].at.iter().zip(&sweep.axes);
        let settings = own.map(|(&at, axis)| setting(axis, at));
        let lines = story.of.iter().map(|&line| &sweep.lines[line]);
        let figures = lines.map(|line| bare(line, &line.values[number]));
        settings.chain(figures).collect()
    };
    let paths = sweep.axes.iter().map(|axis| axis.words().to_string());
    let names = story.of.iter().map(|&line| with_unit(&sweep.lines[line]));
    let all = sweep.points.len();
    let some = match all > MOST_ROWS {
        true => format!("The first {MOST_ROWS} of {all} points"),
        false => "Every point".into(),
    };
    Words {
        caption: format!(
            "{some}, middle of the tanks; later: than day {}. All figures, and what 5 and 95 of 100 stay under: sweep.csv",
            sweep.last_day
        ),
        heads: paths.chain(names).collect(),
        rows: (0..all.min(MOST_ROWS)).map(row).collect(),
    }
}
