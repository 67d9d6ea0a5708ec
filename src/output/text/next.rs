//! What to do next: the test that tells most, what the last tests should read, and where to see what would help.

use crate::analysis::ensemble::bands::SHARES;
use crate::analysis::ensemble::confirm::Confirming;
use crate::analysis::ensemble::next_test::{Meaning, Worth};
use crate::analysis::forecast::Forecast;
use crate::analysis::kit::Step;
use crate::output::kit::stands_between;
use crate::output::waiting::later;

use super::words::short;
use super::{Page, Story, Tone};

/// A test that takes less of the squared error away is not named.
const WORTH_TESTING: f64 = 0.05;
/// Of 100: a step that fewer tanks read is left out.
const WORTH_A_WORD: f64 = 5.0;
/// Days of a week.
const WEEK: u32 = 7;

const HELP: &str = "What would help: `firstfill levers FILE`.";
const MORE: &str = "More: `--full`, and `firstfill check FILE`.";

/// The block; the first of its lines carries the label.
pub fn block(page: &mut Page, story: &Story) {
    let mut lines = Vec::new();
    if let Some(forecast) = story.forecast {
        lines.extend(worth(story, forecast));
        lines.extend(confirming(story, forecast));
    }
    lines.push(match story.is_full() {
        true => HELP.to_string(),
        false => format!("{HELP} {MORE}"),
    });
    for (at, line) in lines.into_iter().enumerate() {
        page.block(if at == 0 { "Next" } else { "" }, Tone::Plain, line);
    }
}

/// The evening of the first four weeks whose test tells most, what its steps mean, and the best of week 1.
fn worth(story: &Story, forecast: &Forecast) -> Option<String> {
    let best = forecast.tests.first()?;
    if best.narrowed < WORTH_TESTING {
        return None;
    }
    let last_day = forecast.curve.last_day;
    let read = best.readings.iter();
    let read = read.filter(|reading| reading.of_100 >= WORTH_A_WORD);
    let steps: Vec<String> = read.map(|reading| meaning(reading, last_day)).collect();
    let unit = &best.tested.card(&story.case.kit).unit;
    let first = forecast.tests.iter().find(|test| test.day <= WEEK);
    let first = first.filter(|first| *first != best && first.narrowed >= WORTH_TESTING);
    let first = first.map_or(String::new(), |test| {
        format!("; in week 1 {}", worth_words(test))
    });
    Some(format!(
        "Most telling test: {} of the ready day's squared error{first}. Half of those that read so many {unit} are ready by (tanks behind it): {}.",
        worth_words(best),
        steps.join(", ")
    ))
}

/// `0.10 day 25 (31)`; days past the run are never a number.
fn meaning(reading: &Meaning, last_day: u32) -> String {
    let day = match reading.middle_day {
        Some(day) => format!("day {day}"),
        None => later(last_day),
    };
    format!("{} {day} ({})", short(reading.printed), reading.tanks)
}

fn worth_words(test: &Worth) -> String {
    format!(
        "{} on the evening of day {} takes away {:.0} %",
        test.tested.words(),
        test.day,
        100.0 * test.narrowed
    )
}

/// What the card should show on the two evenings before the ready day, in 90 of 100 tanks.
fn confirming(story: &Story, forecast: &Forecast) -> Option<String> {
    let chloride = story.outcome.milestones.end.chloride_mg_per_l;
    let limits = story.case.limits.of_tests(chloride);
    let tests = forecast.confirming.iter();
    let tests: Vec<String> = tests.map(|test| confirmed(test, limits)).collect();
    let kit = &story.case.kit;
    (!tests.is_empty()).then(|| {
        format!(
            "Tests before the ready day, 90 of 100, ammonia ({}) and nitrite ({}): {}.",
            kit.ammonia.unit,
            kit.nitrite.unit,
            tests.join("; ")
        )
    })
}

fn confirmed(test: &Confirming, limits: [f64; 2]) -> String {
    let when = match test.days_before {
        1 => "1 day".to_string(),
        days => format!("{days} days"),
    };
    let ammonia = range(&test.ammonia, limits[0]);
    let nitrite = range(&test.nitrite, limits[1]);
    format!("{when} before, {ammonia} and {nitrite}")
}

/// `0 to 0.20 inside`, `0 to 5.00 inside to outside`.
fn range(steps: &[Step; SHARES.len()], limit: f64) -> String {
    let [low, .., high] = steps;
    let stands = stands_between(low, high, limit);
    match low.printed == high.printed {
        true => format!("{} {stands}", short(low.printed)),
        false => format!("{} to {} {stands}", short(low.printed), short(high.printed)),
    }
}
