//! The answer: the ready day and why, and the animals that go in.

use crate::analysis::alkalinity::Alkalinity;
use crate::analysis::branch::planned_animals;
use crate::analysis::feed::{STAND_IN_G_PER_L_DAY, STAND_IN_PROTEIN_FRAC};
use crate::analysis::ready::{Ready, Ripening, Verdict, Waiting};
use crate::output::waiting::waited_words;
use crate::output::when::{day_and_clock, day_in_words};

use super::words::{list, short};
use super::{Page, Story, Tone, forecast};

/// The ready day, what it waited for and what it asks.
pub fn ready(page: &mut Page, story: &Story) {
    let verdict = &story.outcome.verdict;
    let (tone, answer) = answer(story);
    match story.forecast {
        Some(forecast) => {
            forecast::ready(page, story, forecast);
            page.line(Tone::Plain, format!("The central run: {answer}"));
        }
        None => page.block("Ready", tone, answer),
    }
    if story.is_full() {
        page.line(Tone::Plain, limits(story));
        page.line(Tone::Plain, feed(verdict));
    }
    if let Some(alkalinity) = &story.outcome.alkalinity {
        self::alkalinity(page, story, alkalinity);
    }
}

fn answer(story: &Story) -> (Tone, String) {
    let date = |day| day_in_words(story.case.filled_on, day);
    let waited = story.outcome.verdict.waited_for.map(waited_words);
    match story.outcome.verdict.ready {
        Ready::Day(day) => {
            let why = waited.map_or(String::new(), |what| {
                format!("; {what} was the last to come right")
            });
            let first = match story.is_full() {
                true => ": the first day that opens and stays within all ripening limits",
                false => "",
            };
            (Tone::Strong, format!("{}{first}{why}", date(day)))
        }
        Ready::QuietNotRipe {
            day,
            step,
            capacity_mg_n_per_day,
            needed_mg_n_per_day,
        } => {
            let (has, needs) = (short(capacity_mg_n_per_day), short(needed_mg_n_per_day));
            let from = date(day);
            let falls_short = format!("capacity {has} of {needs} mg N/day ({})", step.words());
            let next = "feed less, seed with mature media, or wait";
            (
                Tone::Warn,
                format!("quiet from {from}, not shown to be ripe: {falls_short}; {next}"),
            )
        }
        Ready::LaterThan(day) => {
            let verdict = &story.outcome.verdict;
            let unmet: Vec<&str> = verdict
                .unmet
                .iter()
                .map(|limit| waited_words(*limit))
                .collect();
            let what = unmet.join(" and ");
            let lowered = lowered_nitrite(story).filter(|_| waits_for_nitrite(verdict));
            let lowered = lowered.map_or(String::new(), |words| {
                format!(", the limit of nitrite being {words}; a chloride dose raises it")
            });
            (
                Tone::Warn,
                format!("later than day {day}, waiting for {what}{lowered}"),
            )
        }
    }
}

fn waits_for_nitrite(verdict: &Verdict) -> bool {
    use Waiting::{Limit, WithAnimals};
    let is_nitrite = |waiting: &Waiting| match waiting {
        Limit(limit) | WithAnimals(limit) => *limit == Ripening::Nitrite,
        Waiting::Capacity(_) => false,
    };
    verdict.unmet.iter().any(is_nitrite)
}

/// `0.02 (not 0.08, as there is only 0.4 mg/L chloride)`; none where chloride leaves the limit as it is.
fn lowered_nitrite(story: &Story) -> Option<String> {
    let limits = &story.case.limits;
    let chloride = story.outcome.milestones.end.chloride_mg_per_l;
    let with_chloride = limits.nitrite_with(chloride);
    (with_chloride < limits.nitrite.value).then(|| {
        format!(
            "{} (not {}, as there is only {} mg/L chloride)",
            short(with_chloride),
            limits.nitrite.value,
            short(chloride)
        )
    })
}

fn limits(story: &Story) -> String {
    let limits = &story.case.limits;
    let nitrite = lowered_nitrite(story).unwrap_or_else(|| limits.nitrite.value.to_string());
    let stocked = if planned_animals(&story.case.input).is_empty() {
        "."
    } else {
        "; the planned animals, all put in at noon of that day, then keep them for two weeks."
    };
    format!(
        "Limits: total ammonia {}, nitrite {nitrite}, free ammonia {} mg N/L, to the end and for {} days at least, judged without animals{stocked}",
        limits.total_ammonia.value, limits.free_ammonia.value, story.case.input.lookahead_days
    )
}

fn feed(verdict: &Verdict) -> String {
    let needed = short(verdict.feed_mg_n_per_day);
    if verdict.feed_is_planned {
        return format!(
            "Ripe means both steps can oxidise all nitrogen of the planned feed, {needed} mg N/day (fish keep some: cautious)."
        );
    }
    format!(
        "Ripe means both steps can oxidise {needed} mg N/day: no feed is planned, so {STAND_IN_G_PER_L_DAY} g per litre and day at {:.0} % protein stands in.",
        100.0 * STAND_IN_PROTEIN_FRAC
    )
}

fn alkalinity(page: &mut Page, story: &Story, alkalinity: &Alkalinity) {
    let facts = format!(
        "lowest KH {} dKH on {}; at worst nitrite oxidisers run at {:.0} % of full speed.",
        short(alkalinity.lowest_dkh.value),
        day_and_clock(alkalinity.lowest_dkh.minute),
        100.0 * alkalinity.slowest.value
    );
    let finished = !matches!(story.outcome.verdict.ready, Ready::LaterThan(_));
    let is_well = finished || alkalinity.enough;
    if is_well && !story.is_full() {
        return;
    }
    if finished {
        page.line(
            Tone::Plain,
            format!("Alkalinity lasts in this forecast: {facts}"),
        );
    } else if alkalinity.enough {
        page.line(
            Tone::Plain,
            format!("It is not for want of alkalinity: {facts}"),
        );
    } else {
        let words = format!(
            "Alkalinity runs short: {facts} Refill water with more KH, or doses of bicarbonate, are what helps; how much it takes, `sweep` tells (water.tap.alkalinity)."
        );
        page.line(Tone::Warn, words);
    }
}

/// Animals go in on the written day; here is whether the tank is ripe then.
pub fn animals(page: &mut Page, story: &Story) {
    for (at, arrival) in story.outcome.arrivals.iter().enumerate() {
        let label = if at == 0 { "Animals" } else { "" };
        let what = format!(
            "{} ({} g) goes in on {}",
            arrival.name,
            short(arrival.mass_g),
            day_in_words(story.case.filled_on, arrival.day)
        );
        let after = if arrival.leaves.is_empty() {
            "the ripening limits hold from then on".to_string()
        } else {
            format!("{} above the limit after that", list(&arrival.leaves))
        };
        let curve = story.forecast.map(|forecast| &forecast.curve);
        let of_100 = curve.map(|curve| curve.of_100_by(arrival.day));
        let is_safe = arrival.ripe && of_100.is_none_or(|of_100| of_100 >= SURE_OF_100);
        let tone = if is_safe { Tone::Plain } else { Tone::Warn };
        let ripe = if arrival.ripe { "ripe" } else { "NOT RIPE" };
        let ready = of_100.map_or(String::new(), |of_100| {
            let only = if is_safe { "" } else { "Only " };
            format!(
                " {only}{} of 100 plausible tanks are ready by that day.",
                of_100.floor()
            )
        });
        page.block(
            label,
            tone,
            format!("{what}; central run: {ripe}, {after}.{ready}"),
        );
    }
}

/// Animals that go in when fewer of 100 are ready are warned of.
const SURE_OF_100: f64 = 90.0;
