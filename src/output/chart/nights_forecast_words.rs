//! Title and sentence of the chart of the nights, where many plausible tanks speak.

use crate::analysis::charted::OXYGEN;
use crate::analysis::ensemble::days::Of;
use crate::analysis::forecast::Forecast;
use crate::output::text::words::capital;

use super::Story;
use super::hundred::{Share, middle_half, share};
use super::nights_words::air_helps;
use super::words::{number, trimmed};

/// Points of a band: that under which 5 of 100 lie, and the middle.
const P05: usize = 0;
const P50: usize = 2;

/// A point of the band of the lowest oxygen of a day, mg/L.
fn low_of(forecast: &Forecast, day: u32, point: usize) -> f64 {
    let band = forecast.ensemble.bands.of_day(day, OXYGEN, Of::Lowest);
    band.map_or(f64::INFINITY, |band| f64::from(band[point]))
}

/// Day from which air helps the middle tank, its lowest oxygen before and after.
fn air_helps_many(story: &Story<'_>, forecast: &Forecast) -> Option<(u32, f64, f64)> {
    air_helps(story, |day| low_of(forecast, day, P50))
}

/// The result, longest wording first.
pub fn titles(story: &Story<'_>, forecast: &Forecast) -> Vec<String> {
    if let Some((day, before, after)) = air_helps_many(story, forecast) {
        let (before, after) = (number(before, 1), number(after, 1));
        return vec![
            format!(
                "Night air from day {day} lifts the lowest oxygen of the middle tank from {before} to {after} mg/L"
            ),
            format!(
                "Night air from day {day} lifts the lowest oxygen from {before} to {after} mg/L"
            ),
        ];
    }
    let bound = trimmed(story.case.limits.oxygen.value);
    let under = under_limit(story, forecast);
    let brief = match under.of_100() {
        0 => format!("Oxygen stays over {bound} mg/L in all of 100 plausible tanks"),
        _ => format!(
            "Oxygen falls under {bound} mg/L in {} plausible tanks",
            under.words()
        ),
    };
    match middle_half(forecast, |t| t.figures.oxygen_low.value) {
        Some(middle) => {
            let [low, high] = middle.map(|value| number(value, 1));
            vec![
                format!("{brief}; the middle 50 reach {low} to {high} at worst"),
                brief,
            ]
        }
        None => vec![brief],
    }
}

fn under_limit(story: &Story<'_>, forecast: &Forecast) -> Share {
    let bound = story.case.limits.oxygen.value;
    share(forecast, |t| t.figures.oxygen_low.value < bound)
}

/// What the picture would hide.
pub fn sentences(story: &Story<'_>, forecast: &Forecast) -> Vec<String> {
    let low = story.milestones.oxygen_low;
    let lower = share(forecast, |t| t.figures.oxygen_low.value < low.value);
    let central = format!(
        "The central run falls to {} mg/L ({}); {} fall lower.",
        number(low.value, 1),
        story.calendar().moment(low.minute),
        lower.words()
    );
    let bound = story.case.limits.co2.value;
    let over = share(forecast, |t| t.figures.co2_high.value > bound);
    let gas = format!("CO₂ passes {} mg/L in {}.", trimmed(bound), over.words());
    let mut all = vec![format!("{central} {gas}"), central];
    if let Some((day, ..)) = air_helps_many(story, forecast) {
        all.insert(0, format!("{} {gas}", air_words(story, forecast, day)));
    }
    all
}

/// How many fall under the limit, and over what nearly all stay with night air.
fn air_words(story: &Story<'_>, forecast: &Forecast, day: u32) -> String {
    let after = (day + 1..=story.run.input.last_day).map(|day| low_of(forecast, day, P05));
    let nearly_all = after.fold(f64::INFINITY, f64::min);
    format!(
        "{} plausible tanks fall under {} mg/L at some time. On each night after day {day} 95 of 100 stay over {}.",
        capital(&under_limit(story, forecast).words()),
        trimmed(story.case.limits.oxygen.value),
        number(nearly_all, 1)
    )
}
