//! Title and sentence of the chart of nitrogen, and what came in after filling.

use crate::model::conserved::{Flux, Quantity};

use super::Story;
use super::accounts::accounts;
use super::stack::Layer;
use super::words::{milligrams, number};

/// The ways by which nitrogen comes in after filling, with words.
const WAYS_IN: [(Flux, &str); 6] = [
    (Flux::SuppliedByRefills, "refills"),
    (Flux::TopUp, "top-up"),
    (Flux::Dosed, "doses"),
    (Flux::Seeded, "seed"),
    (Flux::Planted, "plants"),
    (Flux::AnimalsAndFeed, "feed"),
];

/// What came in after filling: the amount and the way, largest first.
pub fn brought_later<'a>(story: &Story<'_>) -> Vec<(f64, &'a str)> {
    let all = accounts(story.run);
    let filled = story.run.input.filled_at;
    let start = all.iter().rfind(|a| a.reading.minute == filled);
    let (Some(start), Some(end)) = (start, all.last()) else {
        return Vec::new();
    };
    let came =
        |flux| end.crossed(flux, Quantity::Nitrogen) - start.crossed(flux, Quantity::Nitrogen);
    // what is under a hundredth of all that came is not worth a word
    let all: f64 = WAYS_IN.iter().map(|&(flux, _)| came(flux).max(0.0)).sum();
    let least = (0.01 * all).max(0.5);
    let mut ways: Vec<(f64, &str)> = WAYS_IN
        .iter()
        .map(|&(flux, words)| (came(flux), words))
        .filter(|way| way.0 >= least)
        .collect();
    ways.sort_by(|a, b| b.0.total_cmp(&a.0));
    ways
}

/// Where nitrogen can end, in words that follow "most of it", with the layers that make it up.
const SINKS: [(&str, &[usize]); 5] = [
    ("left in the buckets", &[0]),
    ("was trimmed and cleaned away", &[1]),
    ("is gone as gas", &[2]),
    ("is in plants, algae and what fell from them", &[3, 4]),
    ("is in the water", &[5]),
];

/// The result, longest wording first.
pub fn titles(layers: &[Layer], later: &[(f64, &str)]) -> Vec<String> {
    let gain = |layer: &Layer| layer.end() - layer.start();
    let refilled = later.iter().find(|w| w.1 == "refills").map_or(0.0, |w| w.0);
    let mut sinks: Vec<(f64, &str)> = SINKS
        .iter()
        .map(|(words, places)| {
            let amount: f64 = places.iter().map(|&n| gain(&layers[n])).sum();
            // buckets also carry back what the refills brought
            let back = if places.contains(&0) { refilled } else { 0.0 };
            ((amount - back).max(0.0), *words)
        })
        .collect();
    sinks.sort_by(|a, b| b.0.total_cmp(&a.0));
    let all: f64 = sinks.iter().map(|s| s.0).sum();
    let (largest, place) = sinks[0];
    let is_most = largest > 0.5 * all;
    let part = if is_most {
        "most of it"
    } else {
        "the largest part"
    };
    let soil = &layers[6];
    let given = -gain(soil);
    if soil.start() < 0.5 {
        return vec![if largest < 0.5 {
            "Hardly any nitrogen came in, and it stayed where it was".to_string()
        } else {
            let part = if is_most { "most" } else { "the largest part" };
            format!("No soil to feed the tank: {part} of what came in {place}")
        }];
    }
    let percent = number(100.0 * given / soil.start(), 0);
    if given < 0.5 {
        return vec!["The soil kept its nitrogen".to_string()];
    }
    vec![
        format!("The soil gave up {percent} % of its nitrogen; {part} {place}"),
        format!("The soil gave up {percent} % of its nitrogen"),
    ]
}

/// What the picture would hide.
pub fn sentences(story: &Story<'_>, layers: &[Layer]) -> Vec<String> {
    let soil = &layers[6];
    let days = story.run.input.last_day;
    let held = if soil.start() < 0.5 {
        "There is no active soil.".to_string()
    } else {
        format!(
            "Soil {} at the start, {} after day {days}.",
            milligrams(soil.start()),
            milligrams(soil.end())
        )
    };
    let came: Vec<String> = brought_later(story)
        .into_iter()
        .take(3)
        .map(|(amount, way)| format!("{way} {}", milligrams(amount)))
        .collect();
    let brought = if came.is_empty() {
        "Nothing was brought in later.".to_string()
    } else {
        format!("Brought in later: {}.", came.join(", "))
    };
    let plants = layers[3].end() - layers[3].start();
    let took = format!("Water changes took {}.", milligrams(layers[0].end()));
    let lives = format!(
        "Plants and algae {} {}.",
        if plants < 0.0 { "lost" } else { "gained" },
        milligrams(plants.abs())
    );
    vec![
        format!("{held} {took} {lives} {brought}"),
        format!("{held} {lives} {brought}"),
        format!("{held} {brought}"),
        held,
    ]
}
