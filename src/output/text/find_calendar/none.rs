//! What is said where no calendar keeps what was asked for.

use crate::analysis::calendar::Found;
use crate::analysis::calendar::broken::Broken;
use crate::analysis::calendar::conflict::{Conflict, NEARLY_ALL};
use crate::analysis::calendar::easing::{Eased, Easing};
use crate::analysis::case::Case;
use crate::base::units::digits;
use crate::output::text::words::{counted, short};
use crate::output::when::day_in_words;

use super::days;

/// What stands against it, which calendar comes nearest, and what would do; what was asked for stands on the page.
pub fn none(case: &Case, found: &Found, conflict: &Conflict) -> String {
    let score = &conflict.score;
    let limit = match conflict.limit {
        Broken::Late => "the day by which tanks must be ready",
        Broken::Tan => "the peak of total ammonia",
        Broken::Nitrite => "the peak of nitrite",
    };
    let [tan, nitrite] = score.peaks.map(|peaks| short(peaks[2]));
    format!(
        "no calendar was found that keeps this{}. What stands against it most is {limit}. The nearest has {}, {:.0} L ({}), and holds in {:.0} of 100; 95 of 100 stay under {tan} mg N/L of total ammonia and {nitrite} of nitrite. {}",
        own(found),
        counted(score.visits, "change"),
        score.litres,
        days(case, &conflict.nearest),
        score.of_100().floor(),
        what_would_do(case, found, conflict),
    )
}

/// What was run and works: one thing that gives way, or several together, and what might be allowed.
fn what_would_do(case: &Case, found: &Found, conflict: &Conflict) -> String {
    let easing = &conflict.easing;
    let mut less = eased(case, easing);
    if easing.keep_of_100 > 0 {
        less.push(format!("keep = {} with the nearest", easing.keep_of_100));
    }
    let mut told = vec![match less.is_empty() {
        true => "Asking less of one thing does not do".to_string(),
        false => format!("Asking less of one thing would do: {}", any_of(&less)),
    }];
    told.extend(together(case, easing));
    let (may, not) = allowed(case, found, conflict);
    if !may.is_empty() {
        told.push(format!("so would {}", any_of(&may)));
    }
    match not.as_slice() {
        [] => {}
        [one] => told.push(format!("{one} would not")),
        both => told.push(format!("neither {} would", both.join(" nor "))),
    }
    format!(
        "{}. `firstfill levers` tells what else would help",
        told.join("; ")
    )
}

/// What may give way alone, with what the calendar takes that does with it.
fn eased(case: &Case, easing: &Easing) -> Vec<String> {
    let [day, tan, nitrite] = &easing.alone;
    let with = |eased: &Eased| {
        format!(
            "with {}, {:.0} L",
            counted(eased.visits, "change"),
            eased.litres
        )
    };
    let peak = |name: &'static str| {
        move |eased: &Eased| format!("{} {}", peak_key(name, eased.to), with(eased))
    };
    let day = day.as_ref().map(|eased| {
        let date = day_in_words(case.filled_on, eased.to as u32);
        format!("ready_by = {:.0} ({date}) {}", eased.to, with(eased))
    });
    let tan = tan.as_ref().map(peak("peak_tan"));
    let nitrite = nitrite.as_ref().map(peak("peak_nitrite"));
    [tan, nitrite, day].into_iter().flatten().collect()
}

/// What would do only together.
fn together(case: &Case, easing: &Easing) -> Option<String> {
    let both = easing.together.as_ref()?;
    let tan = both
        .peak_tan_mg_n_per_l
        .map(|peak| peak_key("peak_tan", peak));
    let nitrite = both
        .peak_nitrite_mg_n_per_l
        .map(|peak| peak_key("peak_nitrite", peak));
    let peaks: Vec<String> = [tan, nitrite].into_iter().flatten().collect();
    Some(format!(
        "together would do ready_by = {} with {}",
        case.input.last_day,
        peaks.join(" and ")
    ))
}

fn peak_key(name: &str, mg_n_per_l: f64) -> String {
    format!("{name} = \"{} mg N/L\"", rounded_up(mg_n_per_l))
}

/// What would do if more were allowed, and what would not, each where it is not allowed already.
fn allowed(case: &Case, found: &Found, conflict: &Conflict) -> (Vec<String>, Vec<String>) {
    let wish = case.calendar.as_ref();
    let all_free = wish.is_some_and(|wish| wish.free_days.len() == case.input.last_day as usize);
    let percent = digits(100.0 * NEARLY_ALL);
    let most = wish.and_then(|wish| wish.shares.last().copied());
    let mut tries = Vec::new();
    if !all_free {
        tries.push(("every day free".to_string(), conflict.every_day_of_100));
    }
    if most.is_none_or(|most| most < NEARLY_ALL) {
        let words = format!("up to {percent} % at once (most_share, most_litres) on the free days");
        tries.push((words, conflict.larger_of_100));
    }
    let keep = found.terms.keep_of_100 as f64;
    let (may, not): (Vec<_>, Vec<_>) = tries.into_iter().partition(|(_, of_100)| *of_100 >= keep);
    let may = may.into_iter().map(|(words, _)| words).collect();
    let not = not.into_iter();
    let not = not.map(|(words, of_100)| format!("{words} ({:.0} of 100)", of_100.floor()));
    (may, not.collect())
}

/// To hundredths, never below.
fn rounded_up(value: f64) -> String {
    digits((100.0 * value).ceil() / 100.0)
}

/// `a`, `a or b`, `a, b or c`.
fn any_of(parts: &[String]) -> String {
    match parts {
        [] => String::new(),
        [one] => one.clone(),
        [front @ .., last] => format!("{} or {last}", front.join(", ")),
    }
}

/// The changes as written may keep it where they use what is not allowed.
fn own(found: &Found) -> &'static str {
    match found.planned.is_kept && !found.forbidden.is_nothing() {
        true => ", though the changes as written would: they use what [calendar] does not allow",
        false => "",
    }
}
