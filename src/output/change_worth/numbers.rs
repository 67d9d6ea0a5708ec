//! The columns that tell what an altered plan does, the same in every table of a ranking.

use crate::analysis::change_worth::effects::{Effects, JUDGED, figure};
use crate::analysis::figure_list::FigureOf;
use crate::output::csv::Head;
use crate::output::table::Cell;

const LATER: &str =
    "min(ready day with it, last day) - min(ready day as planned, last day), tank by tank";
const LESS: &str = "altered plan - plan as written, tank by tank";
const ERROR: &str = "sd/sqrt(pairs)";

/// Heads of the ready day, of every figure for itself, and of the litres.
pub fn heads() -> Vec<Head> {
    let days = |name: &str, meaning: &str| Head::new(name, "day", meaning, LATER);
    let mut heads = vec![
        Head::plain("pairs", "tanks that failed neither way", "count"),
        days(
            "days_later",
            "mean of the days by which the ready day comes later",
        ),
        Head::new(
            "days_later_error",
            "day",
            "standard error of that mean",
            ERROR,
        ),
        days("days_later_p10", "10 of 100 tanks are later by less"),
        days("days_later_p90", "90 of 100 tanks are later by less"),
    ];
    for name in JUDGED.into_iter().chain(["nitrate_end_mg_n_per_l"]) {
        heads.extend(of_figure(figure(name)));
    }
    let saved = "water of the changes as planned - with it, mean of the tanks";
    heads.push(Head::new(
        "litres_saved_l",
        "L",
        "water that is saved",
        saved,
    ));
    heads
}

/// Heads of what happens to a figure.
fn of_figure(figure: &FigureOf) -> [Head; 2] {
    let name = |end: &str| format!("{}_{end}", figure.name);
    [
        Head::new(
            &name("change"),
            figure.unit,
            &format!("change of: {}; mean", figure.what),
            LESS,
        ),
        Head::new(
            &name("error"),
            figure.unit,
            "standard error of that mean",
            ERROR,
        ),
    ]
}

/// What stands under [`heads`].
pub fn cells(effects: &Effects) -> Vec<Cell> {
    let ready = &effects.ready;
    let [low, high] = ready.range_days;
    let days = [
        effects.days_later(),
        ready.standard_error_days,
        0.0 - high,
        0.0 - low,
    ];
    let mut cells = vec![Cell::Count(ready.pairs as u64)];
    cells.extend(days.map(Cell::Number));
    for on in effects.judged.iter().chain(&effects.nitrate_end) {
        cells.extend([on.effect.mean, on.effect.standard_error].map(Cell::Number));
    }
    cells.push(Cell::Number(effects.litres_saved));
    cells
}

/// Whether something holds.
pub fn yes_or_no(holds: bool) -> Cell {
    Cell::words_of(if holds { "yes" } else { "no" })
}
