//! Numbers and losses in words that the terminal, the tables and the chart share.

use crate::analysis::change_worth::effects::{Effects, Loss};
use crate::analysis::change_worth::planned::Change;
use crate::analysis::figure_list::{Better, FigureOf};
use crate::analysis::levers::paired::Paired;
use crate::output::chart::words::{list, number, short};

/// Where fewer tanks of 100 move than this, a few of them make the mean, and how many is told (judgement).
const FEW_OF_100: f64 = 25.0;

/// What is lost: `ready day 0.8 days later`, `peak ammonia 0.14 mg N/L higher`.
pub fn loss(loss: &Loss) -> String {
    match loss {
        Loss::Later(days) => format!("ready day {} days later", number(*days, 1)),
        Loss::Worse(figure, by) => worse(figure, *by),
    }
}

/// `peak ammonia 0.14 mg N/L higher`, by how much a figure gets worse.
pub fn worse(figure: &FigureOf, by: f64) -> String {
    let (name, unit, by) = (figure.short, figure.unit, short(by));
    match (figure.better, unit) {
        (Better::More, _) => format!("{name} {by} {unit} lower"),
        (_, "h") => format!("{name} {by} h longer"),
        _ => format!("{name} {by} {unit} higher"),
    }
}

/// By how much a figure gets better: `peak ammonia 0.14 mg N/L lower`.
pub fn better(figure: &FigureOf, by: f64) -> String {
    let (name, unit, by) = (figure.short, figure.unit, short(by));
    match (figure.better, unit) {
        (Better::More, _) => format!("{name} {by} {unit} higher"),
        (_, "h") => format!("{name} {by} h shorter"),
        _ => format!("{name} {by} {unit} lower"),
    }
}

/// `ready 0.8 ± 0.1 days later`, `ready 0.4 ± 0.1 days sooner (9 of 100 move)`, or that no tank moves, of those too
/// that are never ready.
pub fn ready_day(effects: &Effects) -> String {
    let ready = &effects.ready;
    let later = effects.days_later();
    let size = number(later.abs(), 1);
    let error = number(ready.standard_error_days, 1);
    if ready.changed == 0 {
        return "no tank ready sooner or later".into();
    }
    let words = match later {
        none if size == "0.0" || none == 0.0 => format!("ready day moved by 0.0 ± {error} days"),
        later if later > 0.0 => format!("ready {size} ± {error} days later"),
        _ => format!("ready {size} ± {error} days sooner"),
    };
    match few_move(ready) {
        Some(few) => format!("{words} ({few})"),
        None => words,
    }
}

/// Tanks whose ready day moves, of 100.
pub fn moving_of_100(ready: &Paired) -> f64 {
    100.0 * ready.changed as f64 / ready.pairs.max(1) as f64
}

/// `9 of 100 move`, where so few tanks make the mean; none where more do, or none.
pub fn few_move(ready: &Paired) -> Option<String> {
    let of_100 = moving_of_100(ready);
    let few = of_100 > 0.0 && of_100 < FEW_OF_100;
    few.then(|| match number(of_100, 0).as_str() {
        "0" => "fewer than 1 of 100 moves".to_string(),
        "1" => "1 of 100 moves".to_string(),
        count => format!("{count} of 100 move"),
    })
}

/// Digits after the point of a figure that is told as a difference.
pub fn places(figure: &FigureOf) -> usize {
    match figure.unit {
        "h" => 0,
        "dKH" => 1,
        _ => 2,
    }
}

/// Every judged figure that moves by as much as is told of it; empty where none does.
pub fn figures(effects: &Effects) -> Vec<String> {
    let told = effects.judged.iter().filter_map(|on| {
        let by = on.worse_by();
        let is_told = by.abs() >= on.figure.told_from;
        is_told.then(|| match by > 0.0 {
            true => worse(on.figure, by),
            false => better(on.figure, -by),
        })
    });
    told.collect()
}

/// What an altered plan does in a line: the ready day, then every figure that moves.
pub fn in_a_line(effects: &Effects) -> String {
    let mut told = vec![ready_day(effects)];
    told.extend(figures(effects));
    told.join(", ")
}

/// `day 7`, `days 7 and 50`.
pub fn days_list(changes: &[Change]) -> String {
    let days: Vec<u32> = changes.iter().map(Change::day).collect();
    days_in_words(&days)
}

/// `day 7`, `days 7 and 50`, `day 4 (two changes)`: each day once, in the order given.
pub fn days_in_words(days: &[u32]) -> String {
    let mut counts: Vec<(u32, usize)> = Vec::new();
    for &day in days {
        match counts.iter_mut().find(|(known, _)| *known == day) {
            Some((_, count)) => *count += 1,
            None => counts.push((day, 1)),
        }
    }
    let words = counts.iter().map(|&(day, count)| match count {
        1 => day.to_string(),
        2 => format!("{day} (two changes)"),
        more => format!("{day} ({more} changes)"),
    });
    let words: Vec<String> = words.collect();
    match words.len() {
        1 => format!("day {}", words[0]),
        _ => format!("days {}", list(&words)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn two_changes_on_one_day_are_told_as_two() {
        let said = [&[7][..], &[7, 50], &[4, 4], &[9, 4, 4, 4]].map(days_in_words);
        let words = [
            "day 7",
            "days 7 and 50",
            "day 4 (two changes)",
            "days 9 and 4 (3 changes)",
        ];
        assert_eq!(said, words);
    }
}
