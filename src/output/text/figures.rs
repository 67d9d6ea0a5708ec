//! The figures: peaks, the worst night, running limits, water and gas.

use crate::analysis::cost::{Item, Taken};
use crate::analysis::levels::Level;
use crate::analysis::milestones::{DayFigures, Extreme, Milestones};
use crate::analysis::running::Finding;
use crate::output::kit;
use crate::output::when::day_and_clock;

use super::words::{counted, list, short};
use super::{Page, Story, Tone};

/// Peaks with day and hour, as the model counts them and as kits read them.
pub fn peaks(page: &mut Page, story: &Story) {
    let m = &story.outcome.milestones;
    page.block(
        "Peaks",
        Tone::Plain,
        peak(
            "total ammonia",
            m.tan_peak,
            &kit::ammonium(m.tan_peak.value),
        ),
    );
    page.line(
        Tone::Plain,
        peak(
            "nitrite",
            m.nitrite_peak,
            &kit::nitrite(m.nitrite_peak.value),
        ),
    );
    page.line(
        Tone::Plain,
        peak(
            "free ammonia",
            m.free_ammonia_peak,
            &kit::ammonia(m.free_ammonia_peak.value),
        ),
    );
    page.line(
        Tone::Plain,
        format!(
            "{:<15}{:>6} mg N/L ({}) at the end",
            "nitrate",
            short(m.nitrate_end),
            kit::nitrate(m.nitrate_end)
        ),
    );
    page.line(Tone::Plain, worst_night(story));
}

fn peak(label: &str, extreme: Extreme, on_the_kit: &str) -> String {
    let value = short(extreme.value);
    format!(
        "{label:<15}{value:>6} mg N/L ({on_the_kit}) on {}",
        day_and_clock(extreme.minute)
    )
}

fn worst_night(story: &Story) -> String {
    let low = story.outcome.milestones.oxygen_low;
    let run = &story.outcome.run;
    let at = run.readings.partition_point(|r| r.minute < low.minute);
    let beside = run.readings.get(at).map_or(String::new(), |r| {
        format!(
            " ({:.0} % of saturation), CO2 {} mg/L, pH {:.2}",
            r.oxygen_saturation_percent,
            short(r.co2_mg_per_l),
            r.ph
        )
    });
    format!(
        "{:<15}{:>6} mg/L oxygen{beside} on {}",
        "worst night",
        short(low.value),
        day_and_clock(low.minute)
    )
}

/// Running limits: kept ones in one line, each other with the setting that cures it.
pub fn running(page: &mut Page, findings: &[Finding]) {
    let kept: Vec<String> = findings
        .iter()
        .filter(|finding| finding.kept)
        .map(|finding| format!("{} {}", finding.label, value_of(finding)))
        .collect();
    let broken = findings.iter().filter(|finding| !finding.kept);
    let mut label = "Running";
    if !kept.is_empty() {
        page.block(
            label,
            Tone::Plain,
            format!("these limits are kept: {}", kept.join("; ")),
        );
        label = "";
    }
    for finding in broken {
        page.block(label, Tone::Warn, broken_words(finding));
        label = "";
    }
}

fn value_of(finding: &Finding) -> String {
    let unit = match finding.unit {
        "" | "1" => String::new(),
        unit => format!(" {unit}"),
    };
    // past its limit nothing is called comfortable, whatever other animals would bear
    let level = finding
        .level
        .filter(|&level| finding.kept || level > Level::Comfortable)
        .map_or(String::new(), |level| format!(", {}", level.word()));
    format!(
        "{}{unit} (limit {}{level})",
        short(finding.worst.value),
        finding.limit
    )
}

fn broken_words(finding: &Finding) -> String {
    let hours = if finding.hours > 0.0 {
        format!("{} h on ", short(finding.hours))
    } else {
        String::new()
    };
    let last = finding
        .days
        .last()
        .map_or(String::new(), |day| format!(", last on day {day}"));
    let cure = finding
        .cure
        .as_deref()
        .map_or(String::new(), |cure| format!("; cure: {cure}"));
    format!(
        "{} {} on {}; beyond it {hours}{}{last}{cure}",
        finding.label,
        value_of(finding),
        day_and_clock(finding.worst.minute),
        counted(finding.days.len(), "day")
    )
}

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
    if let Some(words) = plants(story) {
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

/// What became of the plants, and what they are short of at the end; none without plants.
fn plants(story: &Story) -> Option<String> {
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
    Some(format!(
        "{from} g dry weight when planted, {to} g at the end{hint}"
    ))
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
        words.push(format!(
            "tuned on {} {}: highest CO2 {} mg/L, at lights-on {}",
            if days.len() == 1 { "day" } else { "days" },
            list(&days),
            span(&highest),
            span(&lights)
        ));
        words.extend(drift(story));
    }
    if let Some((swing, day)) = widest_ph_swing(&story.outcome.milestones) {
        words.push(format!(
            "pH swings by {swing:.2} in a day at most (day {day}; shown, no limit)"
        ));
    }
    words.join("; ")
}

/// `28.0`, or `9.8 to 10.6` where values differ.
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
        "the highest of a day then lies between {low:.1} and {high:.1}{cure}"
    ))
}

/// A spread of the day's highest CO2 beyond which tuning more often is worth a word, mg/L.
const STRAYS_MG_PER_L: f64 = 5.0;

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
