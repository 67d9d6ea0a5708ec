//! `choices.csv`: the plan as written and every choice, on the same fresh members.

use crate::analysis::calendar::Found;
use crate::analysis::calendar::score::Score;
use crate::analysis::case::Case;
use crate::base::units::digits;
use crate::output::csv::Head;
use crate::output::table::{Cell, Table};

const FILE: &str = "choices.csv";
/// Ready days that are told: so many of 100 are ready by them.
const OF_100: [usize; 3] = [10, 50, 90];

/// A row for the plan as written, then one for each choice.
pub fn table(case: &Case, found: &Found) -> Table {
    let mut rows = vec![row("as written", &case.input.changes(), &found.planned)];
    for (place, choice) in found.choices.iter().enumerate() {
        rows.push(row(
            &format!("choice-{}", place + 1),
            &choice.changes,
            &choice.score,
        ));
    }
    Table {
        file: FILE,
        heads: heads(),
        rows,
    }
}

fn row(name: &str, changes: &[(u32, f64)], score: &Score) -> Vec<Cell> {
    let changes: Vec<String> = (changes.iter())
        .map(|(day, share)| format!("{day} ({} %)", digits((1000.0 * share).round() / 10.0)))
        .collect();
    let day = |of_100: usize| match score.curve.day_of(of_100) {
        Some(day) => Cell::Count(day.into()),
        None => Cell::Empty,
    };
    let mut cells = vec![
        Cell::words_of(name),
        Cell::Count(score.visits as u64),
        Cell::Number(score.litres),
        Cell::Count(score.members as u64),
        Cell::Number(score.of_100()),
        Cell::words_of(if score.is_kept { "yes" } else { "no" }),
    ];
    cells.extend(OF_100.map(day));
    cells.push(Cell::Number(score.mean_ready_day));
    cells.extend(
        score
            .peaks
            .as_flattened()
            .iter()
            .map(|&peak| Cell::Number(peak)),
    );
    cells.push(Cell::words_of(changes.join("; ")));
    cells
}

fn heads() -> Vec<Head> {
    let mut heads = heads_of_amounts();
    heads.extend(OF_100.map(|of_100| {
        let name = format!("ready_{of_100}_of_100_day");
        let meaning = format!("day by which {of_100} of 100 are ready");
        Head::plain(&name, &meaning, "empty when later than the last day")
    }));
    heads.push(Head::new(
        "mean_ready_day",
        "day",
        "mean ready day",
        "later than the last day counts as the day after it",
    ));
    for (key, what) in [
        ("tan_peak", "highest total ammonia"),
        ("nitrite_peak", "highest nitrite"),
    ] {
        for share in ["p05", "p50", "p95"] {
            let name = format!("{key}_mg_n_per_l_{share}");
            heads.push(Head::new(&name, "mg N/L", what, FRESH));
        }
    }
    heads.push(Head::plain(
        "changes",
        "day and share of every change",
        "in order",
    ));
    heads
}

/// On which tanks scores are made.
const FRESH: &str = "plausible tanks that the search has not seen";

fn heads_of_amounts() -> Vec<Head> {
    let plain = Head::plain;
    let name = "name of its scenario file";
    let kept = "whether that is as many as asked for";
    vec![
        plain("calendar", "the plan as written, or a choice", name),
        plain("visits", "changes of water within the run", "count"),
        Head::new(
            "litres",
            "L",
            "water changed within the run",
            "mean of the tanks",
        ),
        plain("tanks", "plausible tanks", FRESH),
        plain(
            "hold_of_100",
            "of 100, how many keep all that was asked for",
            FRESH,
        ),
        plain("is_kept", kept, "yes or no"),
    ]
}
