//! Title and sentence of the chart of alkalinity.

use crate::analysis::milestones::Extreme;
use crate::analysis::ready::Ready;
use crate::base::units::MEQ_PER_DKH;

use super::Story;
use super::stack::Layer;
use super::words::number;

/// The lowest share of full speed that water leaves the nitrite oxidisers, with its minute.
fn slowest(story: &Story<'_>) -> Extreme {
    let none = Extreme {
        value: 1.0,
        minute: 0,
    };
    story.run.shown().iter().fold(none, |low, r| {
        if r.nitrite_oxidiser_speed_frac < low.value {
            Extreme {
                value: r.nitrite_oxidiser_speed_frac,
                minute: r.minute,
            }
        } else {
            low
        }
    })
}

/// Share of full speed under which alkalinity is said to hold the microbes up.
const HELD_UP: f64 = 0.25;

pub fn titles(story: &Story<'_>) -> Vec<String> {
    let low = story.milestones.kh_low;
    let (kh, day) = (number(low.value, 1), story.day_of(low.minute));
    let end = &story.milestones.end;
    let end_kh = end.alkalinity_meq_per_l / MEQ_PER_DKH;
    let rises = end_kh > low.value + 0.2;
    let finished = matches!(story.verdict.ready, Ready::Day(_));
    let held_up = end.nitrite_oxidiser_speed_frac < HELD_UP;
    let title = match (finished, held_up) {
        (true, _) if rises => {
            format!("Enough to finish: KH dips to {kh} dKH on day {day} and comes back")
        }
        (true, _) => format!("Enough to finish: KH is {kh} dKH at its lowest, on day {day}"),
        (false, true) => {
            let percent = number(100.0 * end.nitrite_oxidiser_speed_frac, 0);
            format!(
                "Not enough to finish: at KH {} the nitrite step is left with {percent} % of its speed",
                number(end_kh, 1)
            )
        }
        (false, false) => {
            format!("Not finished, but not for want of KH: {kh} dKH at its lowest, on day {day}")
        }
    };
    vec![title, format!("KH falls to {kh} dKH on day {day}")]
}

pub fn sentences(story: &Story<'_>, layers: &[Layer]) -> Vec<String> {
    let ends: Vec<f64> = layers.iter().map(Layer::end).collect();
    let verb = |value: f64, gives: &str, takes: &str| {
        let verb = if value < 0.0 { takes } else { gives };
        format!("{verb} {}", number(value.abs(), 1))
    };
    let budget = format!(
        "Refills, less what the changes took out, {}; nitrifiers {}; the soil {} dKH.",
        verb(ends[0], "bring", "cost"),
        verb(ends[2], "give", "use"),
        verb(ends[3], "gives", "keeps"),
    );
    let slow = slowest(story);
    let percent = number(100.0 * slow.value, 0);
    let speed = format!(
        "The water leaves nitrite oxidisers at least {percent} % of full speed (day {}).",
        story.day_of(slow.minute)
    );
    let rest = "Plants and decay are what is left over.";
    vec![
        format!("{budget} {rest} {speed}"),
        format!("{budget} {speed}"),
        budget,
    ]
}
