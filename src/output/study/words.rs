//! Names, shares and numbers of a study as people read them.

use crate::analysis::study::Study;
use crate::analysis::study::findings::Found;
use crate::analysis::study::findings::factor::Factor;
use crate::analysis::study::findings::index::{Index, Kind};
use crate::analysis::study::input::{Input, Spread};
use crate::analysis::study::milestone::Milestone;
use crate::output::chart::words::{number, short};
use crate::output::text::words::counted;

/// Where words about an input may be cut: what follows is a remark.
const REMARKS: [&str; 3] = [", ", "; ", ": "];

/// What a factor is, without remarks: `fastest growth of nitrite oxidisers at 20 °C`.
pub fn name(factor: &Factor) -> String {
    match factor.words.is_empty() {
        true => factor.name.clone(),
        false => without_remarks(&factor.words),
    }
}

/// The same with the name it has in files, or the number of its inputs: `… at 20 °C (mu_NOB)`.
pub fn full_name(factor: &Factor) -> String {
    match factor.inputs {
        1 if name(factor) != factor.name => format!("{} ({})", name(factor), factor.name),
        1 => factor.name.clone(),
        several => format!("{} ({})", factor.name, counted(several, "input")),
    }
}

/// Without what stands in brackets, and without what follows a comma, semicolon or colon.
fn without_remarks(words: &str) -> String {
    let words = match (words.find(" ("), words.find(')')) {
        (Some(from), Some(to)) if from < to => format!("{}{}", &words[..from], &words[to + 1..]),
        _ => words.to_string(),
    };
    let cuts = REMARKS.iter().filter_map(|remark| words.find(remark));
    words[..cuts.min().unwrap_or(words.len())].to_string()
}

/// A share: `31 %`, `0.4 %`; one that is nothing, or less by chance, is `0 %`.
pub fn share(value: f64) -> String {
    let percent = (100.0 * value).max(0.0);
    let digits = usize::from(percent > 0.05 && percent < 0.95);
    format!("{} %", number(percent, digits))
}

/// How many of 100: `31 of 100`, `0.4 of 100`.
pub fn of_100(value: f64) -> String {
    share(value).replace(" %", " of 100")
}

/// The unit of a milestone behind a number, with its space; nothing for pH and yes or no.
pub fn unit(milestone: &Milestone) -> String {
    match milestone.unit {
        "1" if is_day(milestone) => " days".into(),
        "1" => String::new(),
        unit => format!(" {unit}"),
    }
}

/// Whether a milestone is the number of a day.
pub fn is_day(milestone: &Milestone) -> bool {
    milestone.name.ends_with("_day")
}

/// An amount by which a milestone moves: `12 days`, `1.3 mg N/L`; of yes or no `38 of 100`.
pub fn amount(milestone: &Milestone, value: f64) -> String {
    if milestone.is_yes_or_no() {
        return of_100(value);
    }
    let unit = unit(milestone);
    match short(value) {
        one if one == "1" && is_day(milestone) => "1 day".into(),
        words => format!("{words}{unit}"),
    }
}

/// A value of a milestone: `day 31`, `1.3 mg N/L`, `later than day 56`.
pub fn value(milestone: &Milestone, value: f64, last_day: u32) -> String {
    if milestone.is_a_ready_day() && value > f64::from(last_day) {
        return format!("later than day {last_day}");
    }
    match is_day(milestone) {
        true => format!("day {}", number(value, 0)),
        false => amount(milestone, value),
    }
}

/// What a number about an input says: `31 %`, `−0.62`, `12 days`.
pub fn told(found: &Found, index: &Index) -> String {
    match index.kind {
        Kind::First | Kind::Total | Kind::Together | Kind::Second => share(index.value),
        Kind::Rank | Kind::Pawn | Kind::PawnByChance => number(index.value, 2),
        _ => amount(&found.milestone, index.value),
    }
}

/// The same without its unit, for a column: `31 %`, `−0.62`, `12`.
pub fn bare(found: &Found, index: &Index) -> String {
    match index.kind.is_in_units() {
        true => short(index.value),
        false => told(found, index),
    }
}

/// What leads of an input in words; beside a rank, which does not tell how much, its distance: `0.41, rank −0.62`.
pub fn told_in_full(found: &Found, leading: Kind, factor: usize) -> String {
    let told_of = |kind| found.at(kind, factor).map(|index| told(found, index));
    let own = told_of(leading).unwrap_or_default();
    match (leading, told_of(Kind::Pawn)) {
        (Kind::Rank, Some(distance)) => format!("{distance} (rank {own})"),
        (Kind::Rank, None) => format!("rank {own}"),
        _ => own,
    }
}

/// What the numbers of a kind are: `share of its variance`.
pub fn meaning(kind: Kind) -> &'static str {
    match kind {
        Kind::First => "share of its variance, alone",
        Kind::Total => "share of the variance it has a part in",
        Kind::Together => "share of its variance, with others only",
        Kind::Second => "share of its variance, by two",
        Kind::Mu => "mean effect from end to end",
        Kind::MuStar => "mean size of its effect from end to end",
        Kind::Sigma => "standard deviation of its effect",
        Kind::Rank => {
            "the distance tells how far it moves the distribution, the rank how regularly"
        }
        Kind::Pawn | Kind::PawnByChance => "how far it moves the distribution",
        Kind::Range => "from least to most, alone",
        Kind::Rise => "at its upper end less at its lower",
    }
}

/// Whether an input takes settings, whose order may mean nothing.
pub fn takes_settings(study: &Study, factor: usize) -> bool {
    let input = study.inputs.get(factor);
    input.is_some_and(|input| matches!(input.spread, Spread::Settings(_)))
}

/// A number in words with the unit in which an input is shown.
pub fn with_unit(input: &Input, number: &str) -> String {
    match input.shown_unit() {
        "" | "1" => number.to_string(),
        unit => format!("{number} {unit}"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn shares_are_whole_where_they_are_large_and_never_below_nothing() {
        let shares = [0.314, 0.004, 0.0002, -0.02, 1.0].map(share);
        assert_eq!(shares, ["31 %", "0.4 %", "0 %", "0 %", "100 %"]);
        assert_eq!(of_100(0.41), "41 of 100");
    }

    #[test]
    fn remarks_are_left_out_of_names() {
        let words = "first films of all guilds together, as a multiple of level 1";
        assert_eq!(without_remarks(words), "first films of all guilds together");
        assert_eq!(
            without_remarks("first films: nothing, a little"),
            "first films"
        );
        assert_eq!(
            without_remarks("alkalinity (KH) of the tap water"),
            "alkalinity of the tap water"
        );
        assert_eq!(without_remarks("growth"), "growth");
    }

    #[test]
    fn days_and_amounts_read_like_speech() {
        let ready = Milestone::named("ready_day").unwrap();
        let peak = Milestone::named("tan_peak_mg_n_per_l").unwrap();
        assert_eq!(value(&ready, 31.4, 56), "day 31");
        assert_eq!(value(&ready, 57.0, 56), "later than day 56");
        assert_eq!(amount(&ready, 12.3), "12 days");
        assert_eq!(amount(&peak, 1.34), "1.3 mg N/L");
    }
}
