//! What to do next: the test that tells most, what the last tests should read, and where to see what would help.

use crate::analysis::ensemble::bands::SHARES;
use crate::analysis::ensemble::confirm::Confirming;
use crate::analysis::ensemble::next_test::{Meaning, Worth};
use crate::analysis::forecast::Forecast;
use crate::analysis::kit::Step;
use crate::base::units::digits;
use crate::output::kit::stands_between;
use crate::output::waiting::later;

use super::forecast::FEW;
use super::{Page, Story, Tone};

/// A test that takes less of the squared error away is not named.
const WORTH_TESTING: f64 = 0.05;
/// A test that takes more than this share off the spread is told step by step; of others, the lowest and the highest.
const WORTH_A_TABLE: f64 = 0.25;
/// Days of a week.
const WEEK: u32 = 7;

/// The block; the first of its lines carries the label.
pub fn block(page: &mut Page, story: &Story) {
    let mut lines = Vec::new();
    if let Some(forecast) = story.forecast {
        lines.extend(worth(story, forecast));
        lines.extend(confirming(story, forecast));
    }
    let file = story.file.unwrap_or("FILE");
    let help = format!("What would help: `firstfill levers {file}`.");
    lines.push(match story.is_full() {
        true => help,
        false => format!("{help} More: `--full`, and `firstfill check {file}`."),
    });
    for (at, line) in lines.into_iter().enumerate() {
        page.block(if at == 0 { "Next" } else { "" }, Tone::Plain, line);
    }
}

/// The test of week 1 that tells most, that of the first four weeks, and what the steps of this one mean.
fn worth(story: &Story, forecast: &Forecast) -> Option<String> {
    let best = forecast.tests.first()?;
    let mean: Vec<Option<u32>> = best.readings.iter().map(|read| read.middle_day).collect();
    if best.narrowed < WORTH_TESTING || mean.windows(2).all(|pair| pair[0] == pair[1]) {
        return Some("No test of the first four weeks would tell much of the ready day.".into());
    }
    let last_day = forecast.curve.last_day;
    let unit = &best.tested.card(&story.case.kit).unit;
    let highest = best.readings.last().map_or(0.0, |read| read.up_to);
    let told = told(best);
    let steps: Vec<String> = (told.iter())
        .map(|read| meaning(read, highest, last_day))
        .collect();
    let first = forecast.tests.iter().find(|test| test.day <= WEEK);
    let first = first.filter(|first| *first != best && first.narrowed >= WORTH_TESTING);
    let first = first.map_or(String::new(), |test| {
        format!("In week 1 test {}. ", worth_words(test))
    });
    Some(format!(
        "{first}Of the first four weeks {} tells most. If it then reads, {unit}, half of such tanks are ready by: {}.",
        worth_words(best),
        steps.join(", ")
    ))
}

/// The steps that are told: all where the test tells much, else the lowest and the highest.
fn told(best: &Worth) -> Vec<&Meaning> {
    let (first, last) = (best.readings.first(), best.readings.last());
    match best.off_the_spread() >= WORTH_A_TABLE {
        true => best.readings.iter().collect(),
        false => first.into_iter().chain(last).collect(),
    }
}

/// `0.1 day 25 (31 tanks)`, `2 or more later than day 56 (40 tanks)`; days past the run are never a number.
fn meaning(read: &Meaning, highest: f64, last_day: u32) -> String {
    let day = match read.middle_day {
        Some(day) => format!("day {day}"),
        None => later(last_day),
    };
    let step = match (read.printed, read.up_to) {
        (one, same) if one == same => digits(one),
        (low, high) if high == highest => format!("{} or more", digits(low)),
        (low, high) => format!("{} to {}", digits(low), digits(high)),
    };
    format!("{step} {day} ({} tanks)", read.tanks)
}

/// What a test takes off the spread of the ready day.
fn worth_words(test: &Worth) -> String {
    format!(
        "{} on the evening of day {} (takes {:.0} % off the spread of the ready day)",
        test.tested.words(),
        test.day,
        100.0 * test.off_the_spread()
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
        let few = match forecast.curve.ever_ready() {
            few if few < FEW => format!(", from {few} tanks only"),
            _ => String::new(),
        };
        format!(
            "Tests before the ready day, 90 of 100{few}, ammonia ({}) and nitrite ({}): {}.",
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

/// `0 to 0.2 (inside)`, `0 to 5 (inside to outside)`.
fn range(steps: &[Step; SHARES.len()], limit: f64) -> String {
    let [low, .., high] = steps;
    let stands = stands_between(low, high, limit);
    match low.printed == high.printed {
        true => format!("{} ({stands})", digits(low.printed)),
        false => format!(
            "{} to {} ({stands})",
            digits(low.printed),
            digits(high.printed)
        ),
    }
}
