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
    let days: Vec<String> = changes.iter().map(|one| one.day().to_string()).collect();
    match days.len() {
        1 => format!("day {}", days[0]),
        _ => format!("days {}", list(&days)),
    }
}
