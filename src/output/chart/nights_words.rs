//! Title and sentence of the chart of the nights.

use crate::analysis::beyond::hours_under;

use super::Story;
use super::day_hours::minutes;
use super::night_air::is_on;
use super::nights_forecast_words;
use super::words::{counted, number, short, span, trimmed};

/// The result, longest wording first.
pub fn titles(story: &Story<'_>) -> Vec<String> {
    if let Some(forecast) = story.forecast {
        return nights_forecast_words::titles(story, forecast);
    }
    let bound = story.case.limits.oxygen.value;
    let low = story.milestones.oxygen_low;
    let under = story.days().filter(|d| d.oxygen_low.value < bound).count();
    let all = story.days().count();
    let lowest = format!(
        "{} mg/L on day {}",
        number(low.value, 1),
        story.day_of(low.minute)
    );
    if let Some((day, before, after)) = air_helps(story, |day| lowest_of(story, day)) {
        let (before, after) = (number(before, 1), number(after, 1));
        return vec![format!(
            "Night air from day {day} lifts the lowest oxygen from {before} to {after} mg/L"
        )];
    }
    vec![match under {
        0 => format!(
            "Oxygen never falls under {} mg/L: at worst {lowest}",
            trimmed(bound)
        ),
        n if n == all => format!(
            "Oxygen falls under {} mg/L every day, to {lowest}",
            trimmed(bound)
        ),
        n => format!(
            "Oxygen falls under {} mg/L on {}, to {lowest}",
            trimmed(bound),
            counted(n, "day", "days")
        ),
    }]
}

/// The lowest oxygen of a day, mg/L.
fn lowest_of(story: &Story<'_>, day: u32) -> f64 {
    let of_day = story.days().find(|d| d.day == day);
    of_day.map_or(f64::INFINITY, |d| d.oxygen_low.value)
}

/// Day from which air runs that did not before, with the lowest oxygen of the week before and of
/// the time after, if it lifts it by 0.3 mg/L or more; `low_of` tells that of a day.
pub fn air_helps(story: &Story<'_>, low_of: impl Fn(u32) -> f64) -> Option<(u32, f64, f64)> {
    let lines = &story.run.input.air;
    let first = lines.iter().find(|l| is_on(l))?;
    let day = first.from_day;
    let low = |from: u32, until: u32| {
        let some = story.days().filter(move |d| (from..until).contains(&d.day));
        some.map(|d| low_of(d.day)).fold(f64::INFINITY, f64::min)
    };
    let end = story.run.input.last_day + 1;
    if day < 3 || day + 3 > end {
        return None;
    }
    let (before, after) = (low(day.saturating_sub(7), day), low(day + 1, end));
    (after >= before + 0.3).then_some((day, before, after))
}

/// The least that is said of a time under the limit, minutes: points of a curve are five minutes apart.
const SHORTEST: u32 = 5;

/// What the picture would hide.
pub fn sentences(story: &Story<'_>) -> Vec<String> {
    if let Some(forecast) = story.forecast {
        return nights_forecast_words::sentences(story, forecast);
    }
    let calendar = story.calendar();
    let (low, high) = (story.milestones.oxygen_low, story.milestones.co2_high);
    let oxygen = story.case.limits.oxygen.value;
    let moment = calendar.moment(low.minute);
    let under = hours_under(story.run.shown(), |r| r.oxygen_mg_per_l, oxygen);
    let worst = if under.is_empty() {
        format!(
            "The margin is smallest at {moment}: {} mg/L.",
            number(low.value - oxygen, 1)
        )
    } else {
        format!(
            "Under {} mg/L for {} in all, lowest at {moment}.",
            trimmed(oxygen),
            span(minutes(&under).max(SHORTEST))
        )
    };
    let bound = story.case.limits.co2.value;
    let over = story.days().filter(|d| d.co2_high.value > bound).count();
    let gas = match over {
        0 => format!("CO₂ reaches {} mg/L at most.", short(high.value)),
        n => format!(
            "CO₂ passes {} mg/L on {} and reaches {}.",
            trimmed(bound),
            counted(n, "day", "days"),
            number(high.value, 1)
        ),
    };
    let swing = story
        .days()
        .map(|d| d.ph_high.value - d.ph_low.value)
        .fold(0.0, f64::max);
    let swing = format!("pH swings by up to {} in a day.", number(swing, 1));
    vec![
        format!("{worst} {gas} {swing} Lowest and highest count both sides of every water change."),
        format!("{worst} {gas} {swing}"),
        worst,
    ]
}
