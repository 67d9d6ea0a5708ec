//! Title and sentence of the chart of alkalinity.

use crate::analysis::alkalinity::{Alkalinity, STUCK_FRAC, judge};
use crate::analysis::ready::Ready;
use crate::base::units::MEQ_PER_DKH;

use super::Story;
use super::alkalinity_forecast_words;
use super::stack::Layer;
use super::words::number;

/// The result, longest wording first.
pub fn titles(story: &Story<'_>) -> Vec<String> {
    if let Some(forecast) = story.forecast {
        return alkalinity_forecast_words::titles(story, forecast);
    }
    let low = story.milestones.kh_low;
    let (kh, day) = (number(low.value, 1), story.day_of(low.minute));
    let brief = format!("KH falls to {kh} dKH on day {day}");
    let Some(judged) = judge(story.run, story.verdict) else {
        return vec![brief];
    };
    let end_kh = story.milestones.end.alkalinity_meq_per_l / MEQ_PER_DKH;
    let comes_back = end_kh > low.value + 0.2;
    let ready = matches!(story.verdict.ready, Ready::Day(_));
    let title = if !judged.enough {
        let percent = number(100.0 * judged.speed_at_end_frac, 0);
        format!(
            "Not enough to finish: at KH {} the nitrite step keeps {percent} % of its speed",
            number(end_kh, 1)
        )
    } else if !ready {
        format!("Not finished, but not for want of KH: {kh} dKH at its lowest, on day {day}")
    } else if judged.slowest.value < STUCK_FRAC {
        format!(
            "Just enough to finish: KH falls to {kh} dKH and nitrite oxidisers to {} of full speed",
            percent_of(&judged)
        )
    } else if comes_back {
        format!("Enough to finish: KH dips to {kh} dKH on day {day}")
    } else {
        format!("Enough to finish: KH is {kh} dKH at its lowest, on day {day}")
    };
    vec![title, brief]
}

/// Least speed of nitrite oxidisers, of full speed.
pub fn percent_of(judged: &Alkalinity) -> String {
    format!("{} %", number(100.0 * judged.slowest.value, 0))
}

/// What the picture would hide.
pub fn sentences(story: &Story<'_>, layers: &[Layer]) -> Vec<String> {
    let budget = budget_words(layers);
    if let Some(forecast) = story.forecast {
        return alkalinity_forecast_words::sentences(story, forecast, &budget);
    }
    let Some(judged) = judge(story.run, story.verdict) else {
        return vec![budget];
    };
    let speed = format!(
        "The water leaves nitrite oxidisers at least {} of full speed (day {}).",
        percent_of(&judged),
        story.day_of(judged.slowest.minute)
    );
    vec![format!("{budget} {speed}"), budget]
}

/// What supplied and took alkalinity.
fn budget_words(layers: &[Layer]) -> String {
    let ends: Vec<f64> = layers.iter().map(Layer::end).collect();
    let verb = |value: f64, gives: &str, takes: &str| {
        let verb = if value < 0.0 { takes } else { gives };
        format!("{verb} {}", number(value.abs(), 1))
    };
    format!(
        "Refills, less what the changes took out, {}; nitrifiers {}; the soil {} dKH.",
        verb(ends[0], "bring", "cost"),
        verb(ends[2], "give", "use"),
        verb(ends[3], "gives back", "keeps"),
    )
}
