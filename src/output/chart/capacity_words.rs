//! Title and sentence of the chart of capacity.

use std::cmp::Ordering;

use super::Story;
use super::capacity_steps::Step;
use super::rect::Point;
use super::series::last;
use super::words::short;

/// The result, longest wording first.
pub fn titles(story: &Story<'_>, steps: &[Step; 2], load: &[Point]) -> Vec<String> {
    let feed = story.verdict.feed_mg_n_per_day;
    let behind = |covers: fn(&Step) -> Option<u32>| {
        let late = steps.iter().filter(move |s| covers(s).is_none());
        late.collect::<Vec<&Step>>()
    };
    let no_feed = behind(|s| s.covers_feed);
    if let Some(words) = falls_short(&no_feed, "take the feed", feed) {
        return vec![words];
    }
    let no_load = behind(|s| s.covers_load);
    if let Some(words) = falls_short(&no_load, "keep up with what comes in", last(load)) {
        return vec![words];
    }
    let [ammonia, nitrite] = steps
        .each_ref()
        .map(|s| s.covers_load.max(s.covers_feed).unwrap_or(0));
    let day = ammonia.max(nitrite);
    let order = match ammonia.cmp(&nitrite) {
        Ordering::Less => "the nitrite step comes last",
        Ordering::Equal => "neither waits for the other",
        Ordering::Greater => "the ammonia step comes last",
    };
    let outrun = "both steps could take more than comes in";
    vec![
        format!("From {} {outrun}: {order}", story.calendar().day(day)),
        format!("From day {day} {outrun}"),
    ]
}

/// Which steps cannot do something by the end, with how far they get.
fn falls_short(steps: &[&Step], what: &str, needed: f64) -> Option<String> {
    let amounts = |step: &Step| {
        format!(
            "{} of {} mg N a day at the end",
            short(last(&step.capacity)),
            short(needed)
        )
    };
    match steps {
        [] => None,
        [step] => Some(format!(
            "The {} cannot {what}: {}",
            step.name(),
            amounts(step)
        )),
        [..] => Some(format!(
            "Neither step can {what} of {} mg N a day at the end",
            short(needed)
        )),
    }
}

/// What the picture would hide.
pub fn sentences(story: &Story<'_>, steps: &[Step; 2], load: &[Point]) -> Vec<String> {
    let first = load.first().map_or(0.0, |p| p.1);
    let comes = format!(
        "What comes in goes from {} to {} mg N a day.",
        short(first),
        short(last(load))
    );
    let days = steps.each_ref().map(|s| from_when(s.covers_feed));
    let feed = if story.verdict.feed_is_planned {
        "The planned feed alone"
    } else {
        "The feed of a usual stock"
    };
    let fed = if steps.iter().all(|s| s.covers_feed.is_none()) {
        format!("{feed} is covered by neither step.")
    } else {
        format!(
            "{feed} is covered by the ammonia step {}, by the nitrite step {}.",
            days[0], days[1]
        )
    };
    let lowest = "Capacity is the lowest of each day, with food in plenty.";
    vec![
        format!("{comes} {fed} {lowest}"),
        format!("{comes} {fed}"),
        comes,
    ]
}

fn from_when(day: Option<u32>) -> String {
    match day {
        Some(0) => "from the start".to_string(),
        Some(day) => format!("from day {day}"),
        None => "not by the end".to_string(),
    }
}
