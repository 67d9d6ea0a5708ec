//! What the chart of the calendars says in its title, made from their fresh scores.

use crate::analysis::calendar::Found;
use crate::analysis::calendar::score::Score;
use crate::analysis::calendar::wish::Least;
use crate::analysis::case::Case;
use crate::output::chart::words::{counted, number};

/// Titles, the longest first.
pub fn titles(case: &Case, found: &Found) -> Vec<String> {
    let Some(best) = found.choices.first() else {
        return vec!["No calendar keeps what is asked for".into()];
    };
    if !best.score.is_kept {
        let of_100 = number(best.score.of_100().floor(), 0);
        return vec![format!(
            "No calendar that was found holds in fresh tanks; the nearest in {of_100} of 100"
        )];
    }
    if found.plan_is_best(&case.input) {
        return vec!["Your own changes do with least of all calendars that were tried".into()];
    }
    if found.plan_does_with_less() {
        return vec![match found.forbidden.is_nothing() {
            true => "The changes as written do with least: no choice beats them".into(),
            false => {
                "The changes as written do with less, but use what [calendar] does not allow".into()
            }
        }];
    }
    vec![gained(&best.score, found)]
}

/// What the first choice has less of than the changes as written; no more than that it may be enough where it holds in
/// fewer tanks than asked for, by chance or not.
fn gained(best: &Score, found: &Found) -> String {
    let planned = &found.planned;
    let is_enough = found.terms.are_kept_by(best);
    let enough = match (is_enough, best.visits) {
        (false, _) => "may be enough",
        (true, 1) => "is enough",
        (true, _) => "are enough",
    };
    match found.trying.least {
        Least::Litres => {
            let [found, written] = [best, planned].map(|score| number(score.litres, 0));
            let enough = if is_enough { "are enough" } else { enough };
            format!("{found} L {enough}, in place of {written} as written")
        }
        Least::Visits => {
            let found = counted(best.visits, "change", "changes");
            format!(
                "{found} {enough}, in place of {} as written",
                planned.visits
            )
        }
        Least::ReadyDay if !best.is_sooner_than(planned) => {
            "No calendar that was tried is ready clearly before the changes as written".into()
        }
        Least::ReadyDay => {
            let days = number(planned.mean_ready_day - best.mean_ready_day, 1);
            format!("Ready {days} days before the changes as written, on the mean")
        }
    }
}

/// Sentences, the longest first.
pub fn sentences(found: &Found) -> Vec<String> {
    let terms = &found.terms;
    let scored = format!(
        "Scored on {} plausible tanks that the search has not seen.",
        found.planned.members
    );
    let asked = format!(
        "Asked for: ready by day {} in {} of 100",
        terms.ready_by, terms.keep_of_100
    );
    let peaks = match terms.has_peaks() {
        true => ", and the peaks kept",
        false => "",
    };
    vec![format!("{asked}{peaks}. {scored}"), scored]
}
