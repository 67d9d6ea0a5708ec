//! What is said where no calendar keeps what was asked for.

use crate::analysis::calendar::Found;
use crate::analysis::calendar::conflict::{Broken, Conflict, NEARLY_ALL};
use crate::analysis::case::Case;
use crate::base::units::digits;
use crate::output::text::words::{counted, short};
use crate::output::when::day_in_words;

/// What stands against it, which calendar comes nearest, and what would help; what was asked for stands on the page.
pub fn none(case: &Case, found: &Found, conflict: &Conflict) -> String {
    let score = &conflict.score;
    let limit = match conflict.limit {
        Broken::Late => "the day by which tanks must be ready",
        Broken::Tan => "the peak of total ammonia",
        Broken::Nitrite => "the peak of nitrite",
    };
    let keep = found.terms.keep_of_100;
    let nearest = match conflict.ready_by {
        Some(day) => format!(
            "{keep} of 100 are then ready by {}",
            day_in_words(case.filled_on, day)
        ),
        None => format!(
            "fewer than {keep} of 100 are then ready by day {}",
            case.input.last_day
        ),
    };
    let quantile = |peaks: [f64; 3]| short(peaks[2]);
    let [tan, nitrite] = score.peaks.map(quantile);
    format!(
        "no calendar keeps this{}. What stands against it most is {limit}. The nearest has {}, {:.0} L, and holds in {:.0} of 100; {nearest}, and 95 of 100 stay under {tan} mg N/L of total ammonia and {nitrite} of nitrite. With every day free, at the largest share, {:.0} of 100 would hold; with {} % at once on the free days, {:.0}. Try a later ready_by, a smaller keep, or `firstfill levers` for what else would help",
        own(found),
        counted(score.visits, "change"),
        score.litres,
        score.of_100().floor(),
        conflict.every_day_of_100.floor(),
        digits(100.0 * NEARLY_ALL),
        conflict.larger_of_100.floor(),
    )
}

/// The changes as written may keep it where they use what is not allowed.
fn own(found: &Found) -> &'static str {
    match found.planned.is_kept && !found.forbidden.is_nothing() {
        true => ", though the changes as written would: they use what [calendar] does not allow",
        false => "",
    }
}
