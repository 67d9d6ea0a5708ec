//! Soil and feed: a bag of soil less, more or less food for the planned animals.

use crate::analysis::ensemble::soil::one_bag_less;
use crate::base::units::digits;
use crate::engine::event::EventKind;
use crate::engine::input::ModelInput;

use super::lever::Lever;

/// The levers on soil and feed; `bag_l` is the size of a bag of soil.
pub fn levers(input: &ModelInput, bag_l: f64) -> Vec<Lever> {
    let less = one_bag_less(input, bag_l).map(|_| bag_less(bag_l));
    let mut levers: Vec<Lever> = less.into_iter().collect();
    if feeds(input) {
        levers.push(feed("feed_less", "half the feed", 0.5));
        levers.push(feed("feed_more", "half as much feed again", 1.5));
    }
    levers
}

fn bag_less(bag_l: f64) -> Lever {
    let words = format!("one bag of soil less, {} L", digits(bag_l));
    Lever::of("soil_one_bag_less", words, move |input| {
        if let Some(less) = one_bag_less(input, bag_l) {
            *input = less;
        }
    })
}

fn feeds(input: &ModelInput) -> bool {
    let fed = |kind: &EventKind| matches!(kind, EventKind::Stock(who) if who.feed_g_per_day > 0.0);
    input.events.iter().any(|event| fed(&event.kind))
}

fn feed(key: &'static str, words: &str, factor: f64) -> Lever {
    Lever::of(key, words, move |input| {
        for event in &mut input.events {
            if let EventKind::Stock(animals) = &mut event.kind {
                animals.feed_g_per_day *= factor;
            }
        }
    })
}
