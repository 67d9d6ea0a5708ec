//! `regions.csv`: how inputs differ between the tanks that are ready by a day and the others.

use crate::analysis::study::findings::regions::{Apart, Regions};
use crate::output::csv::Head;
use crate::output::table::{Cell, Table};

use super::Story;

const FILE: &str = "regions.csv";

/// One row per input, the one that differs most first; none where all tanks are ready by the day, or none is.
pub fn table(story: &Story<'_>) -> Option<Table> {
    let regions = story.findings.regions.as_ref()?;
    let rows = regions.inputs.iter();
    Some(Table {
        file: FILE,
        heads: heads(),
        rows: rows.map(|apart| row(story, regions, apart)).collect(),
    })
}

fn row(story: &Story<'_>, regions: &Regions, apart: &Apart) -> Vec<Cell> {
    let input = &story.study.inputs[apart.input];
    let quarters = apart.region.meeting.iter().chain(&apart.region.others);
    let first = [
        Cell::words_of(&input.name),
        Cell::words_of(input.group.word()),
        Cell::words_of(input.shown_unit()),
        Cell::Number(apart.region.apart),
        Cell::Number(regions.by_chance),
    ];
    let quarters = quarters.map(|value| Cell::Number(input.shown(*value)));
    let rows = regions.rows.map(|rows| Cell::Count(rows as u64));
    let day = [Cell::Count(regions.by_day.into())];
    first
        .into_iter()
        .chain(quarters)
        .chain(day)
        .chain(rows)
        .collect()
}

fn heads() -> Vec<Head> {
    let quarter = |name: &str, of: &str, side: &str| {
        let meaning = format!("{of} of the tanks that are {side} by the day lie below");
        Head::new(name, "that of the row", &meaning, "the rows that are kept")
    };
    let (ready, not) = ("ready", "not ready");
    vec![
        Head::plain("input", "the input", "study file"),
        Head::plain("group", "what it belongs to", "list of the program"),
        Head::plain(
            "unit",
            "unit of the input, as its range is written",
            "study file",
        ),
        Head::new(
            "apart",
            "1",
            "how far the two kinds of tanks lie apart: largest difference of their shares below any value",
            "Kolmogorov and Smirnov's distance; the distance of indices.csv (pawn) asks the other way round, how far the milestone moves while the input stands still",
        ),
        Head::new(
            "by_chance",
            "1",
            "in 95 of 100 studies no input that does nothing lies further apart",
            "Kolmogorov's distribution",
        ),
        quarter("ready_p25", "25 of 100", ready),
        quarter("ready_p50", "50 of 100", ready),
        quarter("ready_p75", "75 of 100", ready),
        quarter("others_p25", "25 of 100", not),
        quarter("others_p50", "50 of 100", not),
        quarter("others_p75", "75 of 100", not),
        Head::plain("ready_by_day", "the day", "study file"),
        Head::plain("ready_rows", "rows that are ready by then", "count"),
        Head::plain("other_rows", "rows that are not", "count"),
    ]
}
