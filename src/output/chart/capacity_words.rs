//! Title and sentence of the chart of capacity.

use crate::analysis::ready::Ready;

use super::Story;
use super::capacity::Step;
use super::rect::Point;
use super::words::short;

pub fn titles(story: &Story<'_>, steps: &[Step; 2]) -> Vec<String> {
    let feed = story.verdict.feed_mg_n_per_day;
    let calendar = story.calendar();
    let [ammonia, nitrite] = steps.each_ref().map(|s| s.covers_feed);
    let short_of = |step: &Step, name: &str| {
        let end = step.capacity.last().map_or(0.0, |p| p.1);
        vec![format!(
            "The {name} step cannot take the feed: {} of {} mg N a day at the end",
            short(end),
            short(feed)
        )]
    };
    match (ammonia, nitrite) {
        (Some(a), Some(n)) if matches!(story.verdict.ready, Ready::LaterThan(_)) => vec![format!(
            "Both steps could take the feed from day {}, but the limits do not hold yet",
            a.max(n)
        )],
        (Some(a), Some(n)) => {
            let last = match a.cmp(&n) {
                std::cmp::Ordering::Less => "the nitrite step is the last",
                std::cmp::Ordering::Equal => "no step waits for the other",
                std::cmp::Ordering::Greater => "the ammonia step is the last",
            };
            vec![
                format!(
                    "Both steps can take the feed from {}: {last}",
                    calendar.day(a.max(n))
                ),
                format!("Both steps can take the feed from day {}", a.max(n)),
            ]
        }
        (Some(_), None) => short_of(&steps[1], "nitrite"),
        (None, Some(_)) => short_of(&steps[0], "ammonia"),
        (None, None) => vec![format!(
            "Neither step can take the feed of {} mg N a day by the end",
            short(feed)
        )],
    }
}

pub fn sentences(story: &Story<'_>, steps: &[Step; 2], load: &[Point]) -> Vec<String> {
    let never = steps.iter().all(|s| s.covers_load.is_none());
    let covers = |step: &Step, name: &str| match step.covers_load {
        Some(0) => format!("the {name} step covers it from the start"),
        Some(day) => format!("the {name} step covers it from day {day}"),
        None => format!("the {name} step does not cover it at the end"),
    };
    let first = load.first().map_or(0.0, |p| p.1);
    let end = load.last().map_or(0.0, |p| p.1);
    let covered = if never {
        "neither step covers it at the end".to_string()
    } else {
        let [ammonia, nitrite] = steps;
        format!(
            "{}, {}",
            covers(ammonia, "ammonia"),
            covers(nitrite, "nitrite")
        )
    };
    let comes = format!(
        "What comes in goes from {} to {} mg N a day; {covered}.",
        short(first),
        short(end),
    );
    let assumed = if story.verdict.feed_is_planned {
        "Capacity: the lowest of each day, with food in plenty."
    } else {
        "No animals are planned, so the feed is that of a usual stock."
    };
    vec![format!("{comes} {assumed}"), comes]
}
