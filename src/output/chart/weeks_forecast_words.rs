//! Title and sentence of the chart of the weeks, where many plausible tanks speak.

use crate::analysis::ensemble::curve::ReadyCurve;
use crate::analysis::forecast::Forecast;
use crate::analysis::ready::{Ready, Waiting};
use crate::output::waiting::waited_words;

use super::Story;
use super::hundred::{Share, share};
use super::weekly::Weekly;
use super::words::{counted, number, trimmed};

/// The result, longest wording first.
pub fn titles(story: &Story<'_>, curve: &ReadyCurve) -> Vec<String> {
    let brief = ready_by(story, curve);
    match last_of_most(curve) {
        Some((waited, share)) => {
            let waits = match curve.day_of(50) {
                Some(_) => format!("{} comes last in {}", waited_words(waited), share.words()),
                None => format!(
                    "{} wait longest for {}",
                    share.words(),
                    waited_words(waited)
                ),
            };
            vec![format!("{brief}: {waits}"), brief]
        }
        None => vec![brief],
    }
}

/// How many are ready by when.
pub fn ready_by(story: &Story<'_>, curve: &ReadyCurve) -> String {
    if let Some(day) = curve.day_of(50) {
        let when = story.calendar().day(day);
        return format!("50 of 100 plausible tanks are ready by {when}");
    }
    let day = curve.last_day;
    match ever(curve).reached() {
        0 => format!("None of 100 plausible tanks is ready by day {day}"),
        1 => format!("Only 1 of 100 plausible tanks is ready by day {day}"),
        some => format!("Only {some} of 100 plausible tanks are ready by day {day}"),
    }
}

/// How many are ready by the last day.
pub fn ever(curve: &ReadyCurve) -> Share {
    Share {
        count: curve.ever_ready(),
        members: curve.members,
    }
}

/// What most tanks waited for last, with how many.
fn last_of_most(curve: &ReadyCurve) -> Option<(Waiting, Share)> {
    let waited = curve.waited_for.iter();
    let mut waited = waited.filter_map(|&(waited, count)| Some((waited?, count)));
    let (waited, count) = waited.next()?;
    let members = curve.members;
    Some((waited, Share { count, members }))
}

/// What the picture would hide.
pub fn sentences(story: &Story<'_>, forecast: &Forecast) -> Vec<String> {
    let central = central_words(story, &forecast.curve);
    let bound = story.case.limits.free_ammonia.value;
    let over = share(forecast, |t| t.figures.free_ammonia_peak.value > bound);
    let free = format!(
        "Free ammonia passes {} mg N/L in {}.",
        trimmed(bound),
        over.words()
    );
    let changed = match Weekly::usual(story).changes().len() {
        0 => "No water changes.".to_string(),
        n => format!(
            "{} take {} L.",
            counted(n, "water change", "water changes"),
            number(story.milestones.litres_changed, 0)
        ),
    };
    vec![
        format!("{central} {free} {changed}"),
        format!("{central} {free}"),
        central,
    ]
}

/// What the central run says, and how many agree by then.
pub fn central_words(story: &Story<'_>, curve: &ReadyCurve) -> String {
    match story.verdict.ready {
        Ready::Day(day) => {
            let by = Share {
                count: (curve.of_100_by(day) * curve.members as f64 / 100.0).round() as usize,
                members: curve.members,
            };
            let are = if by.of_100() == 1 { "is" } else { "are" };
            format!(
                "The central run is ready from day {day}; by then {} {are}.",
                by.words()
            )
        }
        Ready::QuietNotRipe { day, .. } => {
            format!("The central run is quiet from day {day}, but not shown to be ripe.")
        }
        Ready::LaterThan(day) => {
            let late = Share {
                count: curve.members - curve.ever_ready(),
                members: curve.members,
            };
            let others = match late.of_100() {
                0 => "though all of 100 are".to_string(),
                1 => "nor is 1 of 100".to_string(),
                100 => "nor is any of 100".to_string(),
                some => format!("nor are {some} of 100"),
            };
            format!("The central run is not ready by day {day}, {others}.")
        }
    }
}
