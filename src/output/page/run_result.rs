//! What came of a run, for who reads a page and has no files: when it is ready and what held it up, animals, peaks,
//! limits, and what it takes.

use maud::{Markup, html};

use crate::analysis::arrivals::Arrival;
use crate::analysis::broken::Running;
use crate::analysis::ensemble::curve::ReadyCurve;
use crate::analysis::milestones::Extreme;
use crate::analysis::running::Finding;
use crate::output::chart::Figure;
use crate::output::chart::words::{list, short};
use crate::output::kit;
use crate::output::manifest::Story;
use crate::output::text::words::counted;
use crate::output::waiting::waited_words;
use crate::output::when::{day_and_clock, day_in_words};

use super::table::Words;

/// Charts whose titles tell the result: of plausible tanks where there are any.
const RESULT: [&str; 2] = ["ready", "weeks"];
/// Reasons that are told; the rest are few.
const TOLD_REASONS: usize = 3;
/// Of 100: a running limit that fewer break is not told.
const WORTH_TELLING: f64 = 0.5;

/// The whole part.
pub fn result(story: &Story<'_>, figures: &[Figure]) -> Markup {
    let of_name = |name: &&str| figures.iter().find(|figure| figure.name == **name);
    let told = RESULT.iter().find_map(of_name);
    let curve = story.forecast.map(|forecast| &forecast.curve);
    html! {
        @if let Some(figure) = told {
            p class="headline" { (figure.title) "." }
            p { (figure.sentence) }
        }
        @if let Some(curve) = curve {
            p { (held_back(curve)) }
            @if let Some(words) = breaks(curve) { p { (words) } }
        }
        @for arrival in &story.outcome.arrivals { p { (animals(story, arrival)) } }
        h3 { "Highest and lowest" }
        (extremes(story).markup(None))
        @if !story.outcome.findings.is_empty() {
            h3 { "Limits that animals need, in the central run" }
            (limits(&story.outcome.findings).markup(None))
        }
        h3 { "What it takes" }
        p { (takes(story)) }
    }
}

/// What plausible tanks waited for: `nitrite in 77 of 100, nitrite with the animals in, in 7 of 100`.
fn held_back(curve: &ReadyCurve) -> String {
    let of_100 = |count: usize| 100.0 * count as f64 / curve.members.max(1) as f64;
    let told = curve.waited_for.iter().take(TOLD_REASONS);
    let told: Vec<String> = told
        .map(|&(waiting, count)| {
            let what = waiting.map_or("nothing", waited_words);
            let comma = if what.ends_with(" in") { "," } else { "" };
            format!("{what}{comma} in {:.0} of 100", of_100(count))
        })
        .collect();
    format!("What held them back longest: {}.", list(&told))
}

/// How many of the ready tanks break a limit soon after.
fn breaks(curve: &ReadyCurve) -> Option<String> {
    let breaking = Running::ALL.into_iter();
    let breaking = breaking.filter(|&limit| curve.of_100_that_break(limit) >= WORTH_TELLING);
    let told: Vec<String> = breaking
        .map(|limit| {
            format!(
                "{} in {:.0} of 100",
                broken(limit),
                curve.of_100_that_break(limit)
            )
        })
        .collect();
    (!told.is_empty()).then(|| {
        format!(
            "Of the tanks that are ready, some leave a limit in the two weeks that follow: {}.",
            list(&told)
        )
    })
}

fn broken(limit: Running) -> &'static str {
    match limit {
        Running::Oxygen => "too little oxygen",
        Running::Co2 => "too much CO2",
        Running::TemperatureJump => "a jump of temperature at a change of water",
        Running::PhJump => "a jump of pH at a change of water",
        Running::ShrimpNitrate => "too much nitrate for shrimp",
    }
}

/// When animals go in, and whether the tank is ready for them.
fn animals(story: &Story<'_>, arrival: &Arrival) -> String {
    // the entry by its own name, without the section it stands in
    let name = arrival.name.rsplit('.').next().unwrap_or(&arrival.name);
    let when = day_in_words(story.case.filled_on, arrival.day);
    let mass = short(arrival.mass_g);
    let central = match (arrival.ripe, arrival.leaves.is_empty()) {
        (true, true) => "the central run is ready for them, and stays so".to_string(),
        (true, false) => format!(
            "the central run is ready for them, but {} passes its limit afterwards",
            arrival.leaves.join(" and ")
        ),
        (false, _) => "the central run is NOT ready for them by then".into(),
    };
    let curve = story.forecast.map(|forecast| &forecast.curve);
    let of_100 = curve.map_or(String::new(), |curve| {
        let ready = curve.of_100_by(arrival.day).floor();
        format!("; of 100 plausible tanks {ready} are ready by that day")
    });
    format!("Animals: {name} ({mass} g) go in on {when}; {central}{of_100}.")
}

/// Peaks and the lowest oxygen of the central run.
fn extremes(story: &Story<'_>) -> Words {
    let m = &story.outcome.milestones;
    let peak = |what: &str, extreme: Extreme, on_a_card: fn(f64) -> String| {
        vec![
            what.to_string(),
            format!("{} mg N/L", short(extreme.value)),
            on_a_card(extreme.value),
            day_and_clock(extreme.minute),
        ]
    };
    Words {
        caption: "Of the central run, as the model counts it and as a test card does".into(),
        heads: ["What", "Value", "On a card", "When"]
            .map(String::from)
            .to_vec(),
        rows: vec![
            peak("Highest total ammonia", m.tan_peak, kit::ammonium),
            peak("Highest nitrite", m.nitrite_peak, kit::nitrite),
            peak("Highest free ammonia", m.free_ammonia_peak, kit::ammonia),
            peak("Highest nitrate", m.nitrate_peak, kit::nitrate),
            vec![
                "Lowest oxygen".into(),
                format!("{} mg/L", short(m.oxygen_low.value)),
                super::table::NOTHING.into(),
                day_and_clock(m.oxygen_low.minute),
            ],
        ],
    }
}

/// Every running limit with the value nearest to it, or farthest beyond.
fn limits(findings: &[Finding]) -> Words {
    let unit = |finding: &Finding| match finding.unit {
        "" | "1" => String::new(),
        unit => format!(" {unit}"),
    };
    let row = |finding: &Finding| {
        vec![
            finding.label.to_string(),
            format!("{}{}", short(finding.worst.value), unit(finding)),
            format!("{}{}", finding.limit, unit(finding)),
            finding.stand().word().to_string(),
        ]
    };
    Words {
        caption: "The value nearest to the limit; close is within a fifth of it".into(),
        heads: ["What", "Value", "Limit", "Stands"]
            .map(String::from)
            .to_vec(),
        rows: findings.iter().map(row).collect(),
    }
}

/// Water, visits, gas.
fn takes(story: &Story<'_>) -> String {
    let m = &story.outcome.milestones;
    let end = story.outcome.run.input.end_minute();
    let events = story.outcome.run.events.iter();
    let changes = events.filter(|e| e.litres > 0.0 && e.minute < end).count();
    let mut parts = vec![format!(
        "{} L for the first filling",
        short(m.litres_filled)
    )];
    if changes > 0 {
        let litres = short(m.litres_changed);
        parts.push(format!(
            "{litres} L in {}",
            counted(changes, "water change")
        ));
    }
    parts.push(counted(m.visits as usize, "visit"));
    if m.gas_g > 0.0 {
        parts.push(format!("{} g of gas", short(m.gas_g)));
    }
    format!("{}.", list(&parts))
}
