//! Everything that goes into the folder of a run, as names and bytes.

use rayon::prelude::*;

use crate::analysis::levers::Levers;
use crate::analysis::outcome::Outcome;
use crate::base::stop::{Stop, Stopped};
use crate::engine::close_ups::CloseUps;

use super::chart::{self, Figure};
use super::columns;
use super::csv::{
    NotANumber, Table, bands, daily, events, guide, ledger, levers, members, plan, ready, series,
};
use super::manifest::{self, Story};
use super::place::MARK;

/// One file of the folder.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Entry {
    /// Its name.
    pub name: String,
    /// What is in it.
    pub bytes: Vec<u8>,
}

/// What is wanted besides the tables that are always there.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Wanted {
    /// Minutes between two rows of `series.csv`.
    pub every_minutes: u32,
    /// Whether charts are drawn.
    pub charts: bool,
    /// Days with a chart of their own; none means the worst night.
    pub days: Vec<u32>,
}

impl Wanted {
    /// What a run must be looked at closely for: the days with a chart, and rows between steps.
    pub fn closely(&self, outcome: &Outcome) -> CloseUps {
        let step = outcome.run.input.step_minutes;
        let rows = (!self.every_minutes.is_multiple_of(step)).then_some(self.every_minutes);
        let mut closely = CloseUps::none();
        if self.charts {
            let days = days_to_draw(outcome, &self.days);
            closely = closely.of_days(&days, rows.map_or(CURVE, |rows| common(rows, CURVE)));
        }
        rows.map_or(closely.clone(), |rows| closely.throughout(rows))
    }
}

/// Minutes between two points of a curve over one day.
const CURVE: u32 = 5;

/// The greatest number that divides both.
fn common(a: u32, b: u32) -> u32 {
    if b == 0 { a } else { common(b, a % b) }
}

/// Why a folder could not be filled.
#[derive(Debug, thiserror::Error)]
pub enum FolderError {
    /// A number that no file may hold.
    #[error(transparent)]
    Number(#[from] NotANumber),
    /// A chart that could not be drawn.
    #[error("cannot draw {name}: {why}")]
    Chart {
        /// Which chart.
        name: String,
        /// Why.
        why: chart::RenderError,
    },
    /// Somebody wishes to stop.
    #[error(transparent)]
    Stopped(#[from] Stopped),
    /// The manifest could not be written.
    #[error("cannot write the manifest: {0}")]
    Manifest(#[from] serde_json::Error),
}

/// All files of a run, tables first.
///
/// # Errors
/// When a number is none, a chart cannot be drawn, or somebody wishes to stop.
pub fn entries(story: &Story, wanted: &Wanted, stop: &Stop) -> Result<Vec<Entry>, FolderError> {
    let mut entries: Vec<Entry> = tables(story, wanted)?.into_iter().map(of_table).collect();
    entries.push(Entry {
        name: MARK.into(),
        bytes: manifest::text(story)?.into_bytes(),
    });
    if wanted.charts {
        entries.extend(charts(story, wanted, stop)?);
    }
    Ok(entries)
}

/// All files of levers that were tried.
///
/// # Errors
/// When the manifest cannot be written, the chart cannot be drawn, or somebody wishes to stop.
pub fn lever_entries(
    story: &Story,
    tried: &Levers,
    stop: &Stop,
) -> Result<Vec<Entry>, FolderError> {
    let mut tables = vec![levers::table(tried)];
    tables.push(guide::table(&tables));
    let mut entries: Vec<Entry> = tables.into_iter().map(of_table).collect();
    entries.push(Entry {
        name: MARK.into(),
        bytes: manifest::text(story)?.into_bytes(),
    });
    entries.extend(drawn(&chart::levers::figure(story.case, tried), stop)?);
    Ok(entries)
}

fn tables(story: &Story, wanted: &Wanted) -> Result<Vec<Table>, NotANumber> {
    let (case, outcome) = (story.case, story.outcome);
    let run = &outcome.run;
    let columns = columns::of(&run.input);
    let mut tables = vec![
        series::table(run, case, &columns, wanted.every_minutes)?,
        daily::table(run, case, &columns)?,
        events::table(run, case, &columns)?,
        plan::table(run, case, &outcome.verdict, &outcome.arrivals)?,
        ledger::table(&run.ledger, run.input.end_minute())?,
    ];
    if let Some(forecast) = story.forecast {
        let chloride = outcome.milestones.end.chloride_mg_per_l;
        let limits = case.limits.of_tests(chloride);
        tables.push(ready::table(forecast, &case.kit, limits));
        tables.push(bands::table(&forecast.ensemble.bands)?);
        tables.push(members::table(forecast)?);
    }
    tables.push(guide::table(&tables));
    Ok(tables)
}

/// A table as a file.
pub fn of_table(table: Table) -> Entry {
    Entry {
        name: table.file.into(),
        bytes: table.bytes(),
    }
}

fn charts(story: &Story, wanted: &Wanted, stop: &Stop) -> Result<Vec<Entry>, FolderError> {
    let outcome = story.outcome;
    let days = days_to_draw(outcome, &wanted.days);
    let figures = chart::figures(
        &outcome.run,
        story.case,
        &outcome.milestones,
        &outcome.verdict,
        story.forecast,
        &days,
    );
    drawn_all(&figures, stop)
}

/// Both files of every chart: side by side, one picture in memory per core; the order stays.
pub(super) fn drawn_all(figures: &[Figure], stop: &Stop) -> Result<Vec<Entry>, FolderError> {
    let drawn: Result<Vec<[Entry; 2]>, FolderError> = figures
        .par_iter()
        .with_max_len(1)
        .map(|figure| drawn(figure, stop))
        .collect();
    Ok(drawn?.into_iter().flatten().collect())
}

/// Both files of a chart.
fn drawn(figure: &Figure, stop: &Stop) -> Result<[Entry; 2], FolderError> {
    stop.check()?;
    let svg = chart::svg(figure);
    let png = chart::png(&svg).map_err(|why| FolderError::Chart {
        name: figure.name.clone(),
        why,
    })?;
    let entry = |ending: &str, bytes| Entry {
        name: format!("{}.{ending}", figure.name),
        bytes,
    };
    Ok([entry("png", png), entry("svg", svg.into_bytes())])
}

/// The days asked for, each once and in order; else the one of the worst night.
pub fn days_to_draw(outcome: &Outcome, asked: &[u32]) -> Vec<u32> {
    if asked.is_empty() {
        return vec![
            outcome
                .milestones
                .oxygen_low
                .day()
                .min(outcome.run.input.last_day),
        ];
    }
    let mut days = asked.to_vec();
    days.sort_unstable();
    days.dedup();
    days
}
