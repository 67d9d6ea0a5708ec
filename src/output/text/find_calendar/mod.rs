//! The calendars that were found, on the terminal; in `none`, what is said where there is none.

mod none;

use crate::analysis::calendar::forbidden::Forbidden;
use crate::analysis::calendar::score::Score;
use crate::analysis::calendar::wish::{Least, Terms};
use crate::analysis::calendar::{Ended, Found};
use crate::analysis::case::Case;
use crate::base::units::digits;
use crate::output::when::{day_in_words, weekday};

use super::words::{counted, list, short};
use super::{Page, Tone};

pub use none::none;

/// The page of what was found.
pub fn page(case: &Case, found: &Found) -> Page {
    let mut page = Page::default();
    page.block("firstfill", Tone::Strong, case.name.as_str());
    page.line(Tone::Plain, asked(case, found));
    page.gap();
    page.block("As written", Tone::Plain, did(case, &found.planned));
    if let Some(words) = not_allowed(&found.forbidden) {
        page.line(Tone::Warn, words);
    }
    for (place, choice) in found.choices.iter().enumerate() {
        let tone = if choice.score.is_kept {
            Tone::Strong
        } else {
            Tone::Warn
        };
        page.gap();
        page.block(
            &format!("Choice {}", place + 1),
            tone,
            against(&choice.score, found),
        );
        page.line(Tone::Plain, did(case, &choice.score));
        page.line(Tone::Plain, days(case, &choice.changes));
    }
    if !found.choices.is_empty() {
        page.gap();
        page.block("Mind", Tone::Plain, mind(case, found));
    }
    page.block("Searched", Tone::Faint, searched(found));
    page
}

fn asked(case: &Case, found: &Found) -> String {
    let least = match found.trying.least {
        Least::Litres => "least litres",
        Least::Visits => "fewest visits",
        Least::ReadyDay => "earliest ready day",
    };
    format!("{least}; {}", terms(case, &found.terms))
}

/// What must hold, in words.
fn terms(case: &Case, terms: &Terms) -> String {
    let mut parts = vec![format!(
        "ready by {}",
        day_in_words(case.filled_on, terms.ready_by)
    )];
    if terms.peak_tan_mg_n_per_l.is_finite() {
        let peak = digits(terms.peak_tan_mg_n_per_l);
        parts.push(format!("total ammonia never over {peak} mg N/L"));
    }
    if terms.peak_nitrite_mg_n_per_l.is_finite() {
        let peak = digits(terms.peak_nitrite_mg_n_per_l);
        parts.push(format!("nitrite never over {peak} mg N/L"));
    }
    let whose = match (terms.keep_is_own, terms.ready_by_is_own) {
        (true, _) => ", as many as with the changes as written",
        (false, true) => ", the day of the changes as written",
        (false, false) => "",
    };
    format!(
        "{} in {} of 100 plausible tanks like yours{whose}",
        parts.join(", "),
        terms.keep_of_100
    )
}

/// What a calendar takes, and what comes of it.
fn did(case: &Case, score: &Score) -> String {
    let day = |of_100: usize| match score.curve.day_of(of_100) {
        Some(day) => format!("day {day}"),
        None => format!("later than day {}", case.input.last_day),
    };
    let [tan, nitrite] = score.peaks.map(|[low, middle, high]| {
        format!("{} ({} to {})", short(middle), short(low), short(high))
    });
    format!(
        "{}, {:.0} L; it holds in {:.0} ± {:.0} of 100; ready by {} in 10, {} in 50, {} in 90 of 100; peaks, 90 of 100 between: total ammonia {tan} mg N/L, nitrite {nitrite} mg N/L",
        counted(score.visits, "change"),
        score.litres,
        score.of_100().floor(),
        score.error_of_100(),
        day(10),
        day(50),
        day(90)
    )
}

/// What of the changes as written the section `[calendar]` does not allow.
fn not_allowed(forbidden: &Forbidden) -> Option<String> {
    let on = |days: &[u32]| match days {
        [one] => format!("day {one}"),
        days => format!("days {}", list(days)),
    };
    let mut parts = Vec::new();
    if !forbidden.days.is_empty() {
        let days = &forbidden.days;
        let are = if days.len() == 1 { "is" } else { "are" };
        parts.push(format!("{}, which {are} not free", on(days)));
    }
    if !forbidden.too_much.is_empty() {
        let days = on(&forbidden.too_much);
        parts.push(format!("more at once than may be on {days}"));
    }
    match parts.is_empty() {
        true => None,
        false => Some(format!("it uses {}", parts.join(", and "))),
    }
}

const SAME_DAY: &str = "ready on the same day";

/// A choice against the changes as written.
fn against(score: &Score, found: &Found) -> String {
    let (planned, terms) = (&found.planned, &found.terms);
    let litres = (score.litres - planned.litres).round();
    let visits = score.visits as i64 - planned.visits as i64;
    let days = score.mean_ready_day - planned.mean_ready_day;
    let way = |more: f64, unit: &str| match more {
        0.0 => format!("as many {unit}"),
        more if more < 0.0 => format!("{} {unit} less", digits(-more)),
        more => format!("{} {unit} more", digits(more)),
    };
    let when = match (days * 10.0).round() / 10.0 {
        0.0 => SAME_DAY.to_string(),
        days if days < 0.0 => format!("ready {:.1} days earlier", -days),
        days => format!("ready {days:.1} days later"),
    };
    let is_clear = score.is_sooner_than(planned) || planned.is_sooner_than(score);
    let chance = match is_clear || when == SAME_DAY {
        true => "",
        false => ", which may be chance",
    };
    let short = match (score.is_kept, terms.are_kept_by(score)) {
        (true, true) => "",
        (true, false) => "; it holds in fewer tanks than asked for, which may be chance",
        (false, _) => "; it falls short of what was asked for in fresh tanks",
    };
    format!(
        "{}, {}, {when} on the mean{chance}{short}",
        way(litres, "L"),
        way(
            visits as f64,
            if visits.abs() == 1 {
                "change"
            } else {
                "changes"
            }
        )
    )
}

/// The days of a choice, with weekdays where there are dates.
fn days(case: &Case, changes: &[(u32, f64)]) -> String {
    let mut runs: Vec<(f64, Vec<u32>)> = Vec::new();
    for &(day, share) in changes {
        match runs.last_mut() {
            Some((own, days)) if *own == share => days.push(day),
            _ => runs.push((share, vec![day])),
        }
    }
    if runs.is_empty() {
        return "no change at all".into();
    }
    let runs: Vec<String> = (runs.iter())
        .map(|(share, days)| {
            let percent = digits((1000.0 * share).round() / 10.0);
            format!("{percent} % on day {}", in_rows(case, days).join(", "))
        })
        .collect();
    runs.join("; ")
}

/// Days with their weekdays, those of a long row by its ends.
fn in_rows(case: &Case, days: &[u32]) -> Vec<String> {
    let word = |day: u32| match weekday(case.filled_on, day).as_str() {
        "" => day.to_string(),
        weekday => format!("{day} {weekday}"),
    };
    let rows = days.chunk_by(|one, next| one + 1 == *next);
    let told = rows.flat_map(|row| match row {
        [first, .., last] if row.len() >= LONG_ROW => {
            vec![format!("{} to {}", word(*first), word(*last))]
        }
        few => few.iter().map(|&day| word(day)).collect(),
    });
    told.collect()
}

/// Days in a row that are told by their ends.
const LONG_ROW: usize = 4;

fn mind(case: &Case, found: &Found) -> String {
    let what = match found.trying.least {
        Least::Litres => "less water",
        Least::Visits => "fewer changes",
        Least::ReadyDay => "an earlier ready day",
    };
    let beaten = if found.plan_is_best(&case.input) {
        format!(
            "choice 1 is your own changes: no calendar was found that keeps the same with {what}; "
        )
    } else if found.plan_does_with_less() {
        let but = match found.forbidden.is_nothing() {
            true => ": no choice beats them",
            false => ", but use what [calendar] does not allow",
        };
        format!("the changes as written keep the same with {what}{but}; ")
    } else {
        String::new()
    };
    format!(
        "{beaten}a calendar that is just enough on paper leaves little for a mistake; peaks, light with ammonia and KH are kept only where they were asked for (calendar.peak_tan, calendar.peak_nitrite)"
    )
}

fn searched(found: &Found) -> String {
    let (tried, trying) = (counted(found.tried, "calendar"), found.trying);
    let ended = match found.ended {
        Ended::All => "; no other that [calendar] allows could come before the best on these tanks",
        Ended::Settled => "; nothing better near the best, nor from many others that were drawn",
        Ended::Spent => "; as many as a search is given, so a better one may exist",
        Ended::Stopped => "; stopped before its end, the best so far",
    };
    format!(
        "{tried} on {} plausible tanks each, hopeless ones on fewer; the choice made on {} others, and the numbers above (± standard error) from {} that neither had seen{ended}",
        trying.members,
        trying.choosing().len(),
        trying.fresh
    )
}
