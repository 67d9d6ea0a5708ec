//! What the weeks take and what grows from it: water, gas, plants, money.

use crate::analysis::cost::{Item, Taken};
use crate::analysis::milestones::{DayFigures, Milestones};

use super::words::{counted, list, short};
use super::{Page, Story, Tone};

/// Litres, visits and gas.
pub fn water_and_gas(page: &mut Page, story: &Story) {
    let m = &story.outcome.milestones;
    let end = story.outcome.run.input.end_minute();
    let events = &story.outcome.run.events;
    let changes = events
        .iter()
        .filter(|e| e.litres > 0.0 && e.minute < end)
        .count();
    let taken = if changes == 0 {
        "no change planned".to_string()
    } else {
        format!(
            "{} L taken out in {}",
            short(m.litres_changed),
            counted(changes, "change")
        )
    };
    let filled = short(m.litres_filled);
    let visits = counted(m.visits as usize, "visit");
    page.block(
        "Water",
        Tone::Plain,
        format!("{taken}; {filled} L for the first filling; {visits}"),
    );
    if m.gas_g > 0.0 {
        page.block("Gas", Tone::Plain, gas(story));
    }
    if let Some((words, is_short)) = plants(story)
        && (is_short || story.is_full())
    {
        page.block("Plants", Tone::Plain, words);
    }
    let bill = story.case.prices.bill(&Taken {
        litres_filled: m.litres_filled,
        litres_refilled: m.litres_changed,
        gas_g: m.gas_g,
    });
    if !bill.is_empty() {
        page.block("Cost", Tone::Plain, cost(&bill));
    }
}

/// What became of the plants, and whether they are short of something at the end; none without plants.
fn plants(story: &Story) -> Option<(String, bool)> {
    let run = &story.outcome.run;
    let planted = run
        .input
        .stands
        .iter()
        .map(|stand| stand.planted_at)
        .max()?;
    let first = run.shown().iter().find(|r| r.minute > planted)?;
    let end = &story.outcome.milestones.end;
    let half = |id: &str| run.input.parameters.get(id);
    let short_of: Vec<&str> = [
        ("iron", end.iron_mg_per_l < half("K_Fe")),
        ("potassium", end.potassium_mg_per_l < half("K_K")),
        ("phosphate", end.phosphate_mg_p_per_l < half("K_P")),
    ]
    .into_iter()
    .filter_map(|(name, is_short)| is_short.then_some(name))
    .collect();
    let hint = if short_of.is_empty() {
        String::new()
    } else {
        format!(
            "; the water then is short of {}, see [doses]",
            short_of.join(" and ")
        )
    };
    let (from, to) = (short(first.plants_g), short(end.plants_g));
    let words = format!("{from} g dry weight when planted, {to} g at the end{hint}");
    Some((words, !short_of.is_empty()))
}

/// The bill in one line, in the money the prices are given in.
fn cost(bill: &[Item]) -> String {
    let total: f64 = bill.iter().filter_map(|item| item.money).sum();
    let items: Vec<String> = bill
        .iter()
        .map(|item| {
            let (amount, unit, name) = (short(item.amount), item.unit, &item.name);
            match item.money {
                Some(money) => format!("{amount} {unit} {name} {money:.2}"),
                None => format!("{amount} {unit} {name} without a price"),
            }
        })
        .collect();
    format!("{total:.2} in your money: {}", items.join(", "))
}

fn gas(story: &Story) -> String {
    let mut words = vec![format!(
        "{} g from the cylinder",
        short(story.outcome.milestones.gas_g)
    )];
    let tunings = &story.outcome.run.tunings;
    if !tunings.is_empty() {
        let days: Vec<u32> = tunings.iter().map(|tuning| tuning.day).collect();
        let highest: Vec<f64> = tunings.iter().map(|t| t.highest_mg_per_l).collect();
        let lights: Vec<f64> = tunings
            .iter()
            .filter_map(|t| t.at_lights_on_mg_per_l)
            .collect();
        if story.is_full() {
            words.push(format!(
                "tuned on {} {}: highest CO2 {} mg/L, at lights-on {}",
                if days.len() == 1 { "day" } else { "days" },
                list(&days),
                span(&highest),
                span(&lights)
            ));
        }
        words.extend(drift(story));
    }
    let swing = widest_ph_swing(&story.outcome.milestones).filter(|_| story.is_full());
    if let Some((swing, day)) = swing {
        words.push(format!(
            "pH swings by {swing:.2} in a day at most (day {day}; shown, no limit)"
        ));
    }
    words.join("; ")
}

/// How far the day's highest strays from the target once the valve has been set for the first time.
fn drift(story: &Story) -> Option<String> {
    let first = story.outcome.run.tunings.first()?.day;
    let days = &story.outcome.milestones.days;
    let highest: Vec<f64> = days
        .iter()
        .filter(|d| d.day > first)
        .map(|d| d.co2_high.value)
        .collect();
    let (low, high) = (
        highest.iter().copied().reduce(f64::min)?,
        highest.iter().copied().reduce(f64::max)?,
    );
    let cure = if high - low > STRAYS_MG_PER_L {
        ", more tuned_on days hold it closer"
    } else {
        ""
    };
    Some(format!(
        "the highest CO2 of a day then lies between {low:.1} and {high:.1} mg/L{cure}"
    ))
}

/// A spread of the day's highest CO2 beyond which tuning more often is worth a word, mg/L.
const STRAYS_MG_PER_L: f64 = 5.0;

/// `28.0`, or `9.8 to 10.6` where values differ.
fn span(values: &[f64]) -> String {
    let low = values
        .iter()
        .copied()
        .reduce(f64::min)
        .map(|v| format!("{v:.1}"));
    let high = values
        .iter()
        .copied()
        .reduce(f64::max)
        .map(|v| format!("{v:.1}"));
    match (low, high) {
        (Some(low), Some(high)) if low == high => low,
        (Some(low), Some(high)) => format!("{low} to {high}"),
        _ => "none: the light stays off".into(),
    }
}

fn widest_ph_swing(milestones: &Milestones) -> Option<(f64, u32)> {
    let swing = |figures: &DayFigures| figures.ph_high.value - figures.ph_low.value;
    milestones
        .days
        .iter()
        .map(|figures| (swing(figures), figures.day))
        .max_by(|a, b| a.0.total_cmp(&b.0))
}
