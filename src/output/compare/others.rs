//! `pairs.csv`, `effects.csv` and `differences.csv`: plans pair by pair, every figure against the first plan,
//! and what the files say otherwise.

use crate::analysis::compare::Comparison;
use crate::analysis::compare::effect::Effect;
use crate::analysis::compare::versus::Versus;
use crate::analysis::figure_list::FIGURES;
use crate::output::csv::Head;
use crate::output::table::{Cell, Table};

/// Every plan against every other one, by the ready day.
pub fn pairs(comparison: &Comparison<'_>) -> Table {
    let days = |name: &str, meaning: &str| {
        let pair = "min(ready day of the other, last day) - min(own, last day), tank by tank";
        Head::new(name, "day", meaning, pair)
    };
    let count = |name: &str, meaning: &str| Head::plain(name, meaning, "count of tanks");
    Table {
        file: "pairs.csv",
        heads: vec![
            Head::plain("strategy", "short name of the plan", "name of its file"),
            Head::plain("against", "the plan it is held against", "name of its file"),
            count("pairs", "tanks that failed with neither"),
            count(
                "ready_before",
                "ready before they are with the other, or only so",
            ),
            count(
                "ready_after",
                "ready after they are with the other, or not at all",
            ),
            count("ready_same_day", "ready on the same day with both"),
            count("ready_neither_way", "ready within the run with neither"),
            days(
                "days_sooner",
                "mean of the days by which it is ready sooner",
            ),
            days(
                "standard_error_days",
                "standard error of that mean: sd/sqrt(pairs)",
            ),
            days("sooner_p10_days", "10 of 100 tanks gain less"),
            days("sooner_p90_days", "90 of 100 tanks gain less"),
        ],
        rows: comparison
            .pairs
            .iter()
            .map(|pair| of_pair(comparison, pair))
            .collect(),
    }
}

fn of_pair(comparison: &Comparison<'_>, versus: &Versus) -> Vec<Cell> {
    let name = |place: usize| Cell::words_of(&comparison.strategies[place].key);
    let counts = [
        versus.paired.pairs,
        versus.before,
        versus.after,
        versus.same_day,
        versus.neither,
    ];
    let [low, high] = versus.paired.range_days;
    let days = [
        versus.paired.mean_days,
        versus.paired.standard_error_days,
        low,
        high,
    ];
    let names = [name(versus.of), name(versus.against)].into_iter();
    let counts = counts.map(|count| Cell::Count(count as u64));
    names.chain(counts).chain(days.map(Cell::Number)).collect()
}

/// Every figure of every other plan against the first one, tank by tank.
pub fn effects(comparison: &Comparison<'_>) -> Table {
    let pair = "figure - figure of the same tank with the first plan";
    let plain = |name: &str, meaning: &str| Head::plain(name, meaning, "list of the program");
    let number = |name: &str, meaning: &str| Head::new(name, "of the row", meaning, pair);
    Table {
        file: "effects.csv",
        heads: vec![
            plain("strategy", "short name of the plan"),
            plain("against", "the first plan"),
            plain("figure", "which figure, as in table.csv"),
            plain("unit", "its unit"),
            Head::plain("pairs", "tanks that have the figure both ways", "count"),
            number("difference", "mean of the differences"),
            number("standard_error", "standard error of that mean"),
            number("p05", "5 of 100 tanks differ by less"),
            number("p25", "25 of 100 tanks differ by less"),
            number("p50", "half of the tanks differ by less"),
            number("p75", "75 of 100 tanks differ by less"),
            number("p95", "95 of 100 tanks differ by less"),
        ],
        rows: (1..comparison.strategies.len())
            .flat_map(|place| of_plan(comparison, place))
            .collect(),
    }
}

fn of_plan(comparison: &Comparison<'_>, place: usize) -> Vec<Vec<Cell>> {
    let (first, own) = (&comparison.strategies[0], &comparison.strategies[place]);
    let told = FIGURES.iter().filter_map(|figure| {
        let effect = Effect::of(&first.members, &own.members, |told| {
            (figure.read)(&told.figures)
        })?;
        let words = [own.key.as_str(), &first.key, figure.name, figure.unit];
        let numbers = [effect.mean, effect.standard_error]
            .into_iter()
            .chain(effect.points);
        let mut cells: Vec<Cell> = words.map(Cell::words_of).into();
        cells.push(Cell::Count(effect.pairs as u64));
        cells.extend(numbers.map(Cell::Number));
        Some(cells)
    });
    told.collect()
}

/// What the files say otherwise, one column per plan.
pub fn differences(comparison: &Comparison<'_>) -> Table {
    let path = Head::plain("path", "dotted path in the scenario", "values the run used");
    let plans = comparison.strategies.iter();
    let plans = plans.map(|s| {
        Head::plain(
            &s.key,
            "its value with this plan; empty for none",
            "as used",
        )
    });
    let row = |(path, values): (&str, &[Option<String>])| {
        let values = values.iter().cloned();
        let cells = values.map(|value| value.map_or(Cell::Empty, Cell::Words));
        std::iter::once(Cell::words_of(path)).chain(cells).collect()
    };
    let told = comparison.differences.iter();
    Table {
        file: "differences.csv",
        heads: std::iter::once(path).chain(plans).collect(),
        rows: told.map(|one| row((&one.path, &one.values))).collect(),
    }
}
