//! Title and sentence of the chart of levers, and its rows for those who hear them.

use crate::analysis::ensemble::curve::ReadyCurve;
use crate::analysis::levers::{Levers, Pulled, best, worst};
use crate::output::waiting::waited_words;

use super::hundred::Share;
use super::words::number;

/// The result, longest wording first.
pub fn titles(levers: &Levers) -> Vec<String> {
    let (gains, costs) = (
        best(&levers.pulled).next(),
        worst(&levers.pulled).next_back(),
    );
    let gained =
        gains.map(|pulled| format!("Most is gained by {}: {}", pulled.words, days(pulled)));
    let lost = costs.map(|pulled| format!("most is lost by {}: {}", pulled.words, days(pulled)));
    let nothing = "No lever is sure to bring the ready day half a day nearer".to_string();
    match (gained, lost) {
        (Some(gained), Some(lost)) => vec![format!("{gained}; {lost}"), gained],
        (Some(gained), None) => vec![gained],
        (None, Some(lost)) => vec![
            format!("{nothing}; {lost}"),
            format!("No lever is sure to gain half a day; {lost}"),
            format!("No gain is sure; {lost}"),
        ],
        (None, None) => vec![nothing],
    }
}

/// What the picture would hide, longest wording first.
pub fn sentences(levers: &Levers, last_day: u32) -> Vec<String> {
    let members = levers.trying.members;
    let ready = match levers.plan.ready_of_100 {
        all if all >= 100.0 => "all of 100 are ready".to_string(),
        some => format!("{some:.0} of 100 are ready"),
    };
    let alone = format!("Each lever alone, on the same {members} plausible tanks like yours");
    vec![
        format!(
            "{} Each lever alone, on the same {members} tanks; ~ may be chance.",
            as_planned(&levers.curve)
        ),
        format!(
            "{alone}; as planned {ready} by day {last_day}. Under half a day counts as nothing; ~ may be chance."
        ),
        format!("{alone}. Under half a day counts as nothing; ~ may be chance."),
        format!("{alone}."),
    ]
}

/// When tanks are ready as planned, and what they wait for last.
fn as_planned(curve: &ReadyCurve) -> String {
    let by = |of_100| match curve.day_of(of_100) {
        Some(day) => format!("{of_100} by day {day}"),
        None => format!("{of_100} later than day {}", curve.last_day),
    };
    let last = match curve.waited_for.first() {
        Some(&(Some(waiting), count)) => {
            let members = curve.members;
            let share = Share { count, members };
            format!("; {} last in {}", waited_words(waiting), share.of_100())
        }
        _ => String::new(),
    };
    format!(
        "As planned, ready of 100: {}, {}, {}{last}.",
        by(10),
        by(50),
        by(90)
    )
}

/// Every row in words.
pub fn description(levers: &Levers) -> String {
    let rows = levers.pulled.iter().map(|pulled| {
        let paired = &pulled.paired;
        let (mean, error) = (
            number(paired.mean_days, 1),
            number(paired.standard_error_days, 1),
        );
        format!("{} {mean} ± {error}", pulled.words)
    });
    let rows: Vec<String> = rows.collect();
    format!("Days sooner by each lever: {}", rows.join("; "))
}

/// `3.4 days`, without a sign.
fn days(pulled: &Pulled) -> String {
    format!("{} days", number(pulled.paired.mean_days.abs(), 1))
}
