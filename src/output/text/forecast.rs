//! What many plausible tanks say: when they are ready, what held them back, what tests should read.

use jiff::civil::Date;

use crate::analysis::broken::Running;
use crate::analysis::case::Case;
use crate::analysis::ensemble::curve::ReadyCurve;
use crate::analysis::ensemble::soil::{DAYS, SoilAmmonia};
use crate::analysis::forecast::Forecast;
use crate::analysis::uncovered::dark_without_air;
use crate::base::clock::Window;
use crate::base::units::everyday::AMMONIA;
use crate::engine::input::ModelInput;
use crate::output::waiting::{later, waited_words};
use crate::output::when::day_in_words;

use super::words::{list, short};
use super::{Page, Story, Tone};

/// Reasons that are told; the rest are few.
const TOLD_REASONS: usize = 3;
/// Of fewer tanks nothing is told of 100.
pub const FEW: usize = 30;
/// Of 100: a running limit that fewer break is not told.
const WORTH_TELLING: f64 = 0.5;

/// So many of 100: more figures than two would not be true of 256 members.
fn whole(of_100: f64) -> String {
    match of_100 {
        few if few > 0.0 && few < 1.0 => "under 1".into(),
        many => format!("{many:.0}"),
    }
}

/// So many of 100 are ready, rounded down: half of them are not called ready a tank too early.
fn at_least(of_100: f64) -> String {
    match of_100 {
        few if few > 0.0 && few < 1.0 => "under 1".into(),
        many => format!("{:.0}", many.floor()),
    }
}

/// When plausible tanks are ready, why not earlier, and what to expect of the first tests and the last.
pub fn ready(page: &mut Page, story: &Story, forecast: &Forecast) {
    let curve = &forecast.curve;
    when_and_why(page, curve, story.case.filled_on);
    if let Some(breaks) = breaks(curve, &story.case.input) {
        page.line(Tone::Warn, breaks);
    }
    if let Some(failed) = failed(forecast) {
        page.line(Tone::Warn, failed);
    }
}

/// By when plausible tanks are ready, and what they wait for.
pub fn when_and_why(page: &mut Page, curve: &ReadyCurve, filled_on: Option<Date>) {
    let tone = match curve.day_of(50) {
        Some(_) => Tone::Strong,
        None => Tone::Warn,
    };
    page.block("Ready", tone, by_when(curve, filled_on));
    page.line(Tone::Plain, reasons(curve));
}

/// `50 of 100 plausible tanks like yours by day 30, Mon 5 Apr; 10 by day 24, 90 later than day 56`
fn by_when(curve: &ReadyCurve, filled_on: Option<Date>) -> String {
    let by = |of_100: usize| match curve.day_of(of_100) {
        Some(day) => format!("by {}", day_in_words(filled_on, day)),
        None => later(curve.last_day),
    };
    let ready = at_least(curve.of_100_by(curve.last_day));
    let later = later(curve.last_day);
    match (curve.day_of(10), curve.day_of(50)) {
        (_, Some(_)) => format!(
            "50 of 100 plausible tanks like yours {}; 10 of 100 {}, 90 of 100 {}{}",
            by(50),
            by(10),
            by(90),
            match curve.day_of(90) {
                Some(_) => String::new(),
                None => format!(" ({ready} are ready by then)"),
            }
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
    format!("What held them back longest: {}.", list(&told))
}

/// How many break which running limit, with the setting that helps.
fn breaks(curve: &ReadyCurve, input: &ModelInput) -> Option<String> {
    let told: Vec<String> = Running::ALL
        .into_iter()
        .filter(|&limit| curve.of_100_that_break(limit) >= WORTH_TELLING)
        .map(|limit| {
            format!(
                "{} in {} (against it: {})",
                what(limit),
                how_many_break(curve, limit),
                against(limit, input)
            )
        })
        .collect();
    (!told.is_empty()).then(|| {
        let told = told.join("; ");
        let count = curve.ever_ready();
        format!("Of the {count} tanks with a ready day, so many break a limit in the two weeks from it: {told}.")
    })
}

/// `22 of 100`; of a few tanks, how many they are.
fn how_many_break(curve: &ReadyCurve, limit: Running) -> String {
    let (_, breaking) = curve.break_after[limit as usize];
    match curve.ever_ready() {
        few if few < FEW => format!("{breaking} of {few}"),
        _ => format!("{} of 100", whole(curve.of_100_that_break(limit))),
    }
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

/// The setting that helps; where air runs already, the hours it leaves out.
fn against(limit: Running, input: &ModelInput) -> String {
    let words = match limit {
        Running::Oxygen => return air(input),
        Running::Co2 => "less gas (gas.hold, gas.rate) or a rougher surface",
        Running::TemperatureJump => "smaller changes, or water nearer to the tank's temperature",
        Running::PhJump => "smaller changes, or refill water nearer to the tank's KH",
        Running::ShrimpNitrate => "more water changes before shrimp go in",
    };
    words.into()
}

fn air(input: &ModelInput) -> String {
    let hours: Vec<String> = dark_without_air(input)
        .iter()
        .map(Window::to_string)
        .collect();
    match (input.air.is_empty(), hours.is_empty()) {
        (true, _) => "air through the dark hours (air.on)".into(),
        (false, true) => "more air (air.flow) or a rougher surface".into(),
        (false, false) => format!("air at {} too (air.on)", hours.join(" and ")),
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

/// What tests of the first two weeks should read: the soil's ammonia.
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
