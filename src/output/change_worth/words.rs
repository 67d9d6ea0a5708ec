//! Numbers and losses in words that the terminal, the tables and the chart share.

use crate::analysis::change_worth::effects::{Effects, Loss};
use crate::analysis::change_worth::planned::Change;
use crate::analysis::figure_list::{Better, FigureOf};
use crate::output::chart::words::{list, number, short};

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

/// `0.8 ± 0.1 days later`, `0.4 ± 0.1 days sooner`, or that nothing is to be told.
pub fn ready_day(effects: &Effects) -> String {
    let ready = &effects.ready;
    let later = effects.days_later();
    let size = number(later.abs(), 1);
    let error = number(ready.standard_error_days, 1);
    if ready.changed == 0 {
        return "on the same day in every tank".into();
    }
    match later {
        none if size == "0.0" || none == 0.0 => format!("moved by 0.0 ± {error} days"),
        later if later > 0.0 => format!("{size} ± {error} days later"),
        _ => format!("{size} ± {error} days sooner"),
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
    let mut told = vec![format!("ready {}", ready_day(effects))];
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
