//! What many plausible tanks say: when they are ready, what held them back, what tests should read.

use jiff::civil::Date;

use crate::analysis::broken::Running;
use crate::analysis::case::Case;
use crate::analysis::ensemble::bands::SHARES;
use crate::analysis::ensemble::confirm::Confirming;
use crate::analysis::ensemble::curve::ReadyCurve;
use crate::analysis::ensemble::next_test::Worth;
use crate::analysis::ensemble::soil::{DAYS, SoilAmmonia};
use crate::analysis::forecast::Forecast;
use crate::analysis::kit::Step;
use crate::base::units::everyday::AMMONIA;
use crate::output::waiting::{later, waited_words};
use crate::output::when::day_in_words;

use super::words::{list, short};
use super::{Page, Tone};

/// Reasons that are told; the rest are few.
const TOLD_REASONS: usize = 3;
/// A test that takes less of the squared error away is not named.
const WORTH_TESTING: f64 = 0.05;
/// Of 100: a step that fewer tanks read is left out.
const WORTH_A_WORD: f64 = 5.0;
/// Days of a week.
const WEEK: u32 = 7;
/// Of 100: a running limit that fewer break is not told.
const WORTH_TELLING: f64 = 0.5;

/// So many of 100: more figures than two would not be true of 256 members.
fn whole(of_100: f64) -> String {
    match of_100 {
        few if few > 0.0 && few < 1.0 => "under 1".into(),
        many => format!("{many:.0}"),
    }
}

/// When plausible tanks are ready, why not earlier, and what to expect of the first tests and the last.
pub fn ready(page: &mut Page, case: &Case, forecast: &Forecast) {
    let curve = &forecast.curve;
    let tone = match curve.day_of(50) {
        Some(_) => Tone::Strong,
        None => Tone::Warn,
    };
    page.block("Ready", tone, by_when(curve, case.filled_on));
    page.line(Tone::Plain, reasons(curve));
    if let Some(breaks) = breaks(curve) {
        page.line(Tone::Warn, breaks);
    }
    if let Some(failed) = failed(forecast) {
        page.line(Tone::Warn, failed);
    }
}

/// `50 of 100 plausible tanks like yours by day 30, Mon 5 Apr; 10 by day 24, 90 later than day 56`
fn by_when(curve: &ReadyCurve, filled_on: Option<Date>) -> String {
    let by = |of_100: usize| match curve.day_of(of_100) {
        Some(day) => format!("by {}", day_in_words(filled_on, day)),
        None => later(curve.last_day),
    };
    let ready = whole(curve.of_100_by(curve.last_day));
    let later = later(curve.last_day);
    match (curve.day_of(10), curve.day_of(50)) {
        (_, Some(_)) => format!(
            "50 of 100 plausible tanks like yours {}; 10 of 100 {}, 90 of 100 {}",
            by(50),
            by(10),
            by(90)
        ),
        (Some(_), None) => format!(
            "{later} in most of the plausible tanks like yours: {ready} of 100 are ready by then, 10 of 100 {}",
            by(10)
        ),
        (None, None) => format!(
            "{later} in nearly all plausible tanks like yours: {ready} of 100 are ready by then"
        ),
    }
}

fn reasons(curve: &ReadyCurve) -> String {
    let of_100 = |count: usize| whole(100.0 * count as f64 / curve.members.max(1) as f64);
    let told: Vec<String> = curve
        .waited_for
        .iter()
        .take(TOLD_REASONS)
        .map(|&(waiting, count)| {
            let what = waiting.map_or("nothing", waited_words);
            format!("{what} in {} of 100", of_100(count))
        })
        .collect();
    format!(
        "What was last to come right, or never did: {}.",
        list(&told)
    )
}

/// How many break which running limit, with the setting that cures it.
fn breaks(curve: &ReadyCurve) -> Option<String> {
    let told: Vec<String> = Running::ALL
        .into_iter()
        .filter(|&limit| curve.of_100_that_break(limit) >= WORTH_TELLING)
        .map(|limit| {
            let of_100 = whole(curve.of_100_that_break(limit));
            format!("{} in {of_100} of 100 (cure: {})", what(limit), cure(limit))
        })
        .collect();
    (!told.is_empty()).then(|| {
        let told = told.join("; ");
        format!(
            "Limits broken in the two weeks from the ready day, by those that have one: {told}."
        )
    })
}

fn what(limit: Running) -> &'static str {
    match limit {
        Running::Oxygen => "oxygen",
        Running::Co2 => "CO2",
        Running::TemperatureJump => "temperature",
        Running::PhJump => "pH",
        Running::ShrimpNitrate => "nitrate (shrimp)",
    }
}

/// The setting that cures it, whatever the tank.
fn cure(limit: Running) -> &'static str {
    match limit {
        Running::Oxygen => "air through the dark hours (air.on)",
        Running::Co2 => "less gas (gas.hold, gas.rate) or a rougher surface",
        Running::TemperatureJump => "smaller changes, or water nearer to the tank's temperature",
        Running::PhJump => "smaller changes, or refill water nearer to the tank's KH",
        Running::ShrimpNitrate => "more water changes before shrimp go in",
    }
}

fn failed(forecast: &Forecast) -> Option<String> {
    let members = &forecast.ensemble.members;
    let failed = members.iter().filter(|member| member.told.is_err()).count();
    (failed > 0).then(|| {
        format!(
            "{failed} of {} members failed and are left out; members.csv has the reasons.",
            members.len()
        )
    })
}

/// What tests should read: the soil's ammonia in the first two weeks, and the two before the ready day.
pub fn tests(page: &mut Page, case: &Case, forecast: &Forecast) {
    let soil = evenings(&forecast.soil_ammonia);
    if soil.is_empty() {
        return;
    }
    let first = format!("evening ammonia, mg NH4/L, half of 100 below (90 of 100 between): {soil}");
    page.block("Tests", Tone::Plain, first);
    if let Some(less) = &forecast.one_bag_less {
        let bag = short(case.soil_bag_l);
        let words = format!(
            "with a bag of soil less ({bag} L, same water line): {}",
            evenings(less)
        );
        page.line(Tone::Plain, words);
    }
    if let Some(words) = worth(case, forecast) {
        page.line(Tone::Plain, words);
    }
    if !forecast.confirming.is_empty() {
        page.line(Tone::Plain, confirming(&forecast.confirming, case));
    }
}

/// `day 1 2.1 (0.9 to 4.4), day 3 …`
fn evenings(ammonia: &SoilAmmonia) -> String {
    let as_ion = |value: f64| {
        let ion = AMMONIA
            .unit("mg NH4/L")
            .map_or(value, |unit| unit.from_base(value));
        short(ion)
    };
    let told = DAYS.iter().zip(ammonia);
    let words: Vec<String> = told
        .filter_map(|(day, points)| {
            let [low, _, half, _, high] = (*points)?.map(as_ion);
            Some(format!("day {day} {half} ({low} to {high})"))
        })
        .collect();
    words.join(", ")
}

/// The evening of the first four weeks whose test tells most, what its steps mean, and the best of week 1.
fn worth(case: &Case, forecast: &Forecast) -> Option<String> {
    let best = forecast.tests.first()?;
    if best.narrowed < WORTH_TESTING {
        return None;
    }
    let steps: Vec<String> = best
        .readings
        .iter()
        .filter(|reading| reading.of_100 >= WORTH_A_WORD)
        .map(|reading| format!("{} day {:.0}", short(reading.printed), reading.mean_day))
        .collect();
    let unit = &best.tested.card(&case.kit).unit;
    let first = forecast.tests.iter().find(|test| test.day <= WEEK);
    let first = first.filter(|first| *first != best && first.narrowed >= WORTH_TESTING);
    let first = first.map_or(String::new(), |test| {
        format!("; in week 1 {} tells most", worth_words(test))
    });
    Some(format!(
        "most telling: {}{first}. What a step in {unit} would mean, tanks that are never ready counted as the last day: {}.",
        worth_words(best),
        steps.join(", ")
    ))
}

fn worth_words(test: &Worth) -> String {
    format!(
        "{} on the evening of day {} (takes away {:.0} % of the squared error of the ready day)",
        test.tested.words(),
        test.day,
        100.0 * test.narrowed
    )
}

/// What the card should show on the two evenings before the ready day, in 90 of 100 tanks.
fn confirming(tests: &[Confirming], case: &Case) -> String {
    let range = |steps: &[Step; SHARES.len()]| {
        let [low, .., high] = steps;
        match low.printed == high.printed {
            true => short(low.printed),
            false => format!("{} to {}", short(low.printed), short(high.printed)),
        }
    };
    let words: Vec<String> = tests
        .iter()
        .map(|test| {
            let when = match test.days_before {
                1 => "1 day".to_string(),
                days => format!("{days} days"),
            };
            format!(
                "{when} before, {} and {}",
                range(&test.ammonia),
                range(&test.nitrite)
            )
        })
        .collect();
    format!(
        "card steps before the ready day (90 of 100 between), ammonia ({}) and nitrite ({}): {}.",
        case.kit.ammonia.unit,
        case.kit.nitrite.unit,
        words.join("; ")
    )
}
