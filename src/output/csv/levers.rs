//! `levers.csv`: what each lever does to the ready day, and what it takes.

use crate::analysis::levers::paired::Paired;
use crate::analysis::levers::price::Price;
use crate::analysis::levers::{Levers, Pulled};
use crate::output::number::six_digits;
use crate::output::waiting::waited_words;

use super::{Head, Row, Table};

const FILE: &str = "levers.csv";
/// Key and words of the first row.
const PLAN: [&str; 2] = ["plan", "the plan as written"];
/// How many columns tell of pairs, which the plan has none of.
const OF_PAIRS: usize = 13;

/// The plan as written, then every lever, the one that gains most first.
pub fn table(levers: &Levers) -> Table {
    let plan = PLAN.map(String::from).into_iter();
    let plan = plan
        .chain(vec![String::new(); OF_PAIRS])
        .chain(price(&levers.plan));
    let rows = levers.pulled.iter().map(row);
    Table {
        file: FILE,
        heads: heads(),
        rows: std::iter::once(Row::of(plan)).chain(rows).collect(),
    }
}

fn row(pulled: &Pulled) -> Row {
    let words = [pulled.key.to_string(), pulled.words.clone()];
    let paired = paired(&pulled.paired, pulled.does_something());
    Row::of(words.into_iter().chain(paired).chain(price(&pulled.price)))
}

fn paired(paired: &Paired, does_something: bool) -> [String; OF_PAIRS] {
    let [low, high] = paired.range_days;
    let moved = paired.moved;
    let of_100 = |share: Option<f64>| share.map_or(String::new(), six_digits);
    [
        six_digits(paired.mean_days),
        six_digits(paired.standard_error_days),
        six_digits(low),
        six_digits(high),
        if does_something { "yes" } else { "no" }.into(),
        paired.pairs.to_string(),
        paired.changed.to_string(),
        paired.only_with.to_string(),
        paired.only_without.to_string(),
        paired.neither.to_string(),
        moved.map_or(String::new(), |moved| waited_words(moved.waiting).into()),
        of_100(moved.map(|moved| moved.of_100_before)),
        of_100(moved.map(|moved| moved.of_100_after)),
    ]
}

fn price(price: &Price) -> [String; 6] {
    [
        price.litres,
        price.gas_g,
        price.worst_night_mg_per_l,
        price.ammonia_peak_mg_n_per_l,
        price.nitrite_peak_mg_n_per_l,
        price.ready_of_100,
    ]
    .map(six_digits)
}

fn heads() -> Vec<Head> {
    let mut heads = vec![
        Head::plain("lever", "name of the lever", "as said"),
        Head::plain("words", "what is done otherwise", "as said"),
    ];
    heads.extend(gain_heads());
    heads.extend(pair_heads());
    heads.extend(price_heads());
    heads
}

fn gain_heads() -> [Head; 5] {
    let pair =
        "min(ready day as planned, last day) - min(ready day with it, last day), pair by pair";
    let days = |name: &str, meaning: &str, derived: &str| Head::new(name, "day", meaning, derived);
    let half = "whether it moves the ready day by half a day or more";
    [
        days("days_gained", "mean of the days gained", pair),
        days(
            "standard_error_days",
            "its standard error",
            "sd/sqrt(pairs)",
        ),
        days("gained_p10_days", "10 of 100 pairs gain less", pair),
        days("gained_p90_days", "90 of 100 pairs gain less", pair),
        Head::plain("does_something", half, "|mean| >= 0.5"),
    ]
}

fn pair_heads() -> [Head; 8] {
    let plain = |name: &str, meaning: &str| Head::plain(name, meaning, "count of pairs");
    let share = |name: &str, meaning: &str| Head::new(name, "of 100", meaning, "of the pairs");
    let moved = "what was last to come right in another share than before";
    [
        plain("pairs", "pairs of which neither failed"),
        plain("pairs_moved", "pairs whose ready day moves at all"),
        plain("ready_only_with", "ready within the run only with it"),
        plain("ready_only_without", "ready within the run only without it"),
        plain("ready_neither_way", "not ready within the run either way"),
        Head::plain("limit_moved", moved, "the largest change"),
        share("limit_before_of_100", "its share as planned"),
        share("limit_after_of_100", "its share with the lever"),
    ]
}

fn price_heads() -> [Head; 6] {
    let middle = "middle one of all tanks";
    [
        Head::new(
            "water_changed_l",
            "L",
            "water taken out by changes",
            "mean of all tanks",
        ),
        Head::new(
            "gas_g",
            "g",
            "gas that left the cylinder",
            "mean of all tanks",
        ),
        Head::new(
            "worst_night_mg_per_l",
            "mg/L",
            "lowest oxygen of the run",
            middle,
        ),
        Head::new(
            "tan_peak_mg_n_per_l",
            "mg N/L",
            "highest total ammonia",
            middle,
        ),
        Head::new(
            "nitrite_peak_mg_n_per_l",
            "mg N/L",
            "highest nitrite",
            middle,
        ),
        Head::new(
            "ready_of_100",
            "of 100",
            "tanks ready by the last day",
            "share of all tanks",
        ),
    ]
}
