//! `members.csv`: every plausible tank with every plan.

use crate::analysis::compare::Comparison;
use crate::analysis::compare::strategy::Strategy;
use crate::analysis::ensemble::member::{Member, Told};
use crate::analysis::figure_list::FIGURES;
use crate::output::csv::Head;
use crate::output::table::{Cell, Table};
use crate::output::waiting::waited_words;

/// Columns before the figures that tell what came of a member.
const OF_READY: usize = 2;

/// One row per plan and member, failed ones too.
pub fn table(comparison: &Comparison<'_>) -> Table {
    let plans = comparison.strategies.iter();
    let rows = plans.flat_map(|plan| plan.members.iter().map(|member| row(plan, member)));
    Table {
        file: "members.csv",
        heads: heads(),
        rows: rows.collect(),
    }
}

fn row(plan: &Strategy<'_>, member: &Member) -> Vec<Cell> {
    let (status, rest) = match &member.told {
        Ok(told) => ("ok".to_string(), came_of_it(plan, told)),
        Err(why) => (
            why.to_string(),
            vec![Cell::Empty; OF_READY + FIGURES.len() + 1],
        ),
    };
    let first = [
        Cell::words_of(&plan.key),
        Cell::Count(member.number as u64),
        Cell::Words(status),
    ];
    first.into_iter().chain(rest).collect()
}

fn came_of_it(plan: &Strategy<'_>, told: &Told) -> Vec<Cell> {
    let day = told
        .ready
        .day
        .map_or(Cell::Empty, |day| Cell::Count(day.into()));
    let waited = told
        .ready
        .waited_for
        .map_or(Cell::Empty, |waiting| Cell::words_of(waited_words(waiting)));
    let figures = FIGURES.iter().map(|figure| (figure.read)(&told.figures));
    let numbers = figures.chain([plan.cost(&told.figures)]);
    [day, waited]
        .into_iter()
        .chain(numbers.map(Cell::number_or_empty))
        .collect()
}

fn heads() -> Vec<Head> {
    let mut heads = vec![
        Head::plain("strategy", "short name of the plan", "name of its file"),
        Head::plain(
            "member",
            "number of the plausible tank: the same tank with every plan",
            "counted from 0",
        ),
        Head::plain("status", "ok, or why its run failed", "the run"),
        Head::plain(
            "ready_day",
            "its ready day; empty when later than the last day",
            "the run",
        ),
        Head::plain("waited_for", "what the last days waited for", "the run"),
    ];
    let figures = FIGURES.iter();
    heads.extend(figures.map(|f| Head::new(f.name, f.unit, f.what, "the run as planned")));
    let cost = "waters, gas and dechlorinator at the prices of the file";
    heads.push(Head::new("cost", "money", cost, "the run as planned"));
    heads
}
