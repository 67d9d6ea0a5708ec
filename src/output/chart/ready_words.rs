//! Title, sentence and note of the chart of the ready day.

use crate::analysis::broken::Running;
use crate::analysis::ensemble::curve::ReadyCurve;

use super::Story;
use super::hundred::Share;
use super::weeks_forecast_words::{central_words, ever, ready_by};

/// The result, longest wording first.
pub fn titles(story: &Story<'_>, curve: &ReadyCurve) -> Vec<String> {
    let brief = ready_by(story, curve);
    let long = match story.case.input.has_animals() {
        true => brief.replacen("ready", "ready for their animals", 1),
        false => brief.replacen("ready", "ready for animals", 1),
    };
    vec![
        long.replacen("plausible tanks", "plausible tanks like yours", 1),
        long,
        brief,
    ]
}

/// What the picture would hide.
pub fn sentences(story: &Story<'_>, curve: &ReadyCurve) -> Vec<String> {
    let late = format!("later than day {}", curve.last_day);
    let by = |share| match curve.day_of(share) {
        Some(day) => format!("by day {day}"),
        None => late.clone(),
    };
    let ends = match (curve.day_of(10), ever(curve).reached()) {
        (Some(_), _) => format!("10 of 100 are ready {}, 90 of 100 {}.", by(10), by(90)),
        (None, _) => format!("Even the day of 10 of 100 is {late}."),
    };
    let central = central_words(story, curve);
    let judged = match story.case.input.has_animals() {
        true => "Ready means that the planned animals could stay.",
        false => "Judged without animals, as none are planned.",
    };
    vec![
        format!("{ends} {central} {judged}"),
        format!("{ends} {central}"),
        ends,
    ]
}

/// Of fewer ready tanks, of 100, no share is told: it would be one of a handful of members.
const FEW_OF_100: usize = 10;

/// Whether too few are ever ready to tell shares of them.
pub fn are_few(curve: &ReadyCurve) -> bool {
    ever(curve).reached() < FEW_OF_100
}

/// What no forecast can do, and what animals would meet.
pub fn note(curve: &ReadyCurve) -> String {
    let test = "A forecast never replaces the test before animals go in.";
    let most = curve.break_after.iter().max_by_key(|(_, count)| *count);
    match most {
        Some(&(limit, count)) if count > 0 && !are_few(curve) => {
            let share = Share {
                count,
                members: curve.ever_ready(),
            };
            format!(
                "{test} In the two weeks after, {} ready tanks {}.",
                share.words(),
                broken_words(limit)
            )
        }
        _ => test.to_string(),
    }
}

fn broken_words(limit: Running) -> &'static str {
    match limit {
        Running::Oxygen => "fall under the oxygen limit",
        Running::Co2 => "pass the CO₂ limit",
        Running::TemperatureJump => "jump too far in temperature at a water change",
        Running::PhJump => "jump too far in pH at a water change",
        Running::ShrimpNitrate => "hold more nitrate than shrimp bear",
    }
}
