//! Title and sentence of the chart of the weeks.

use crate::analysis::ready::{Ready, Waiting};
use crate::output::waiting::waited_words;

use super::Story;
use super::weekly::Weekly;
use super::weeks_forecast_words;
use super::words::{counted, number};

/// The result, longest wording first.
pub fn titles(story: &Story<'_>) -> Vec<String> {
    if let Some(forecast) = story.forecast {
        return weeks_forecast_words::titles(story, &forecast.curve);
    }
    let calendar = story.calendar();
    let waited = story.verdict.waited_for.map(waited_words);
    match (&story.verdict.ready, waited) {
        (Ready::Day(day), Some(waited)) => {
            let when = calendar.day(*day);
            vec![
                format!("Ready from {when}: {waited} is the last to come right"),
                format!("Ready from day {day}: {waited} comes last"),
            ]
        }
        (Ready::Day(day), None) => vec![format!(
            "Ready from {}: every ripening limit holds from the first day",
            calendar.day(*day)
        )],
        (Ready::QuietNotRipe { day, step, .. }, _) => vec![format!(
            "Quiet from day {day}, but not shown to be ripe: {} falls short of the feed",
            waited_words(Waiting::Capacity(*step))
        )],
        (Ready::LaterThan(day), _) => {
            let unmet = story.verdict.unmet.iter().map(|limit| waited_words(*limit));
            let unmet: Vec<&str> = unmet.collect();
            vec![
                format!(
                    "Not ready by day {day}: still waiting for {}",
                    unmet.join(" and ")
                ),
                format!("Not ready by day {day}"),
            ]
        }
    }
}

/// What the picture would hide.
pub fn sentences(story: &Story<'_>) -> Vec<String> {
    if let Some(forecast) = story.forecast {
        return weeks_forecast_words::sentences(story, forecast);
    }
    let tank = &story.run.input.tank;
    let bound = story.case.limits.free_ammonia.value;
    let over = story
        .days()
        .filter(|d| d.free_ammonia_high.value > bound)
        .count();
    let free = match over {
        0 => "Free ammonia never passes its limit.".to_string(),
        n => format!(
            "Free ammonia is over its limit on {}.",
            counted(n, "day", "days")
        ),
    };
    let changes = match Weekly::usual(story).changes().len() {
        0 => "no water changes".to_string(),
        n => format!(
            "{} that take {} L",
            counted(n, "change", "changes"),
            number(story.milestones.litres_changed, 0)
        ),
    };
    let water = format!("{} L of water", number(tank.volume_l, 0));
    let late = "One central forecast: real tanks cleared nitrite up to two weeks later.";
    vec![
        format!("{water}, {changes}. {free} {late}"),
        format!("{free} {late}"),
        late.to_string(),
    ]
}
