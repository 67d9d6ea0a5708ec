//! Title and sentence of the chart of alkalinity, where many plausible tanks speak.

use crate::analysis::alkalinity::{STUCK_FRAC, judge};
use crate::analysis::forecast::Forecast;
use crate::analysis::ready::Ready;

use super::Story;
use super::alkalinity_words::percent_of;
use super::hundred::{middle_half, share};
use super::weeks_forecast_words::ever;
use super::words::number;

/// The result, longest wording first.
pub fn titles(story: &Story<'_>, forecast: &Forecast) -> Vec<String> {
    let Some(middle) = middle_half(forecast, |t| t.figures.kh_low.value) else {
        return vec![verdict_words(story).to_string()];
    };
    let [low, high] = middle.map(kh);
    let range = if low == high {
        low
    } else if low.starts_with('−') {
        // a dash behind a minus sign reads as another
        format!("{low} to {high}")
    } else {
        format!("{low}–{high}")
    };
    let many = format!("KH falls to {range} dKH in 50 of 100 plausible tanks");
    vec![format!("{}; {many}", verdict_words(story)), many]
}

/// Whether the central run has alkalinity enough.
fn verdict_words(story: &Story<'_>) -> &'static str {
    let ready = matches!(story.verdict.ready, Ready::Day(_));
    match judge(story.run, story.verdict) {
        None => "No step waits for KH in the central run",
        Some(judged) if !judged.enough => "The central run lacks KH to finish",
        Some(_) if !ready => "The central run does not finish, but not for want of KH",
        Some(judged) if judged.slowest.value < STUCK_FRAC => {
            "Just enough KH for the central run to finish"
        }
        Some(_) => "Enough KH for the central run to finish",
    }
}

/// What the picture would hide.
pub fn sentences(story: &Story<'_>, forecast: &Forecast, budget: &str) -> Vec<String> {
    let low = story.milestones.kh_low;
    let lower = share(forecast, |t| t.figures.kh_low.value < low.value);
    let finish = format!(
        "{} finish by day {}; {} fall lower than the central run’s {}.",
        ever(&forecast.curve)
            .reached_words()
            .replacen("none", "None", 1)
            .replacen("all", "All", 1),
        forecast.curve.last_day,
        lower.words(),
        kh_explained(low.value)
    );
    let speed = judge(story.run, story.verdict).map(|judged| {
        format!(
            "In the central run the water leaves nitrite oxidisers at least {} of full speed.",
            percent_of(&judged)
        )
    });
    let mut all = vec![format!("{finish} Central run: {}", small_start(budget))];
    all.extend(speed.map(|speed| format!("{finish} {speed}")));
    all.push(finish);
    all
}

/// KH as it is told: finer where there is hardly any.
fn kh(dkh: f64) -> String {
    number(dkh, if dkh.abs() < 1.0 { 2 } else { 1 })
}

/// The same with its unit, and what it means below nothing.
fn kh_explained(dkh: f64) -> String {
    match dkh < 0.0 {
        true => format!("{} dKH (below 0 the water holds free acid)", kh(dkh)),
        false => format!("{} dKH", kh(dkh)),
    }
}

/// The same without a capital letter at the start.
fn small_start(words: &str) -> String {
    let mut letters = words.chars();
    let first = letters.next().map(|letter| letter.to_ascii_lowercase());
    first.into_iter().chain(letters).collect()
}
