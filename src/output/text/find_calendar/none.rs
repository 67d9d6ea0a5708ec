//! What is said where no calendar keeps what was asked for.

use crate::analysis::calendar::Found;
use crate::analysis::calendar::conflict::{Broken, Conflict, NEARLY_ALL};
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
        "no calendar keeps this{}. What stands against it most is {limit}. The nearest has {}, {:.0} L ({}), and holds in {:.0} of 100; 95 of 100 stay under {tan} mg N/L of total ammonia and {nitrite} of nitrite. {}",
        own(found),
        counted(score.visits, "change"),
        score.litres,
        days(case, &conflict.nearest),
        score.of_100().floor(),
        what_would_do(case, found, conflict),
    )
}

/// What was run and works, each alone; with the same changes first.
fn what_would_do(case: &Case, found: &Found, conflict: &Conflict) -> String {
    let easing = &conflict.easing;
    let mut eased = Vec::new();
    if let Some(peak) = easing.peak_tan_mg_n_per_l {
        eased.push(format!("peak_tan = \"{} mg N/L\"", rounded_up(peak)));
    }
    if let Some(peak) = easing.peak_nitrite_mg_n_per_l {
        eased.push(format!("peak_nitrite = \"{} mg N/L\"", rounded_up(peak)));
    }
    if let Some(day) = easing.ready_by {
        let date = day_in_words(case.filled_on, day);
        eased.push(format!("ready_by = {day} ({date})"));
    }
    if easing.keep_of_100 > 0 {
        eased.push(format!("keep = {}", easing.keep_of_100));
    }
    let keep = found.terms.keep_of_100 as f64;
    let mut allowed = Vec::new();
    if conflict.every_day_of_100 >= keep {
        allowed.push("every day free".to_string());
    }
    if conflict.larger_of_100 >= keep {
        let most = digits(100.0 * NEARLY_ALL);
        allowed.push(format!(
            "up to {most} % at once (most_share, most_litres) on the free days"
        ));
    }
    let with_these = match eased.is_empty() {
        true => "Asking less of one thing does not do with these changes".to_string(),
        false => format!("The nearest would do with {}", any_of(&eased)),
    };
    let with_others = match allowed.is_empty() {
        true => format!(
            "neither every day free ({:.0} of 100) nor {} % at once ({:.0} of 100) would",
            conflict.every_day_of_100.floor(),
            digits(100.0 * NEARLY_ALL),
            conflict.larger_of_100.floor()
        ),
        false => format!("so would {}", any_of(&allowed)),
    };
    format!("{with_these}; {with_others}. `firstfill levers` tells what else would help")
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
