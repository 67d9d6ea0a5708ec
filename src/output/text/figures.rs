//! The figures: peaks, the lowest oxygen, running limits.

use crate::analysis::levels::Level;
use crate::analysis::margin::{Stand, margin};
use crate::analysis::milestones::Extreme;
use crate::analysis::running::Finding;
use crate::output::kit;
use crate::output::when::day_and_clock;

use super::words::{counted, short};
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
    let at_the_end = short(m.nitrate_end);
    let nitrate = peak(
        "nitrate",
        m.nitrate_peak,
        &kit::nitrate(m.nitrate_peak.value),
    );
    page.line(Tone::Plain, format!("{nitrate}; {at_the_end} at the end"));
    page.line(Tone::Plain, lowest_oxygen(story));
}

fn peak(label: &str, extreme: Extreme, on_the_kit: &str) -> String {
    let value = short(extreme.value);
    format!(
        "{label:<15}{value:>6} mg N/L ({on_the_kit}) on {}",
        day_and_clock(extreme.minute)
    )
}

fn lowest_oxygen(story: &Story) -> String {
    let low = story.outcome.milestones.oxygen_low;
    let run = &story.outcome.run;
    let at = run.readings.partition_point(|r| r.minute < low.minute);
    let beside = run.readings.get(at).map_or(String::new(), |r| {
        let saturation = format!(" ({:.0} % of saturation)", r.oxygen_saturation_percent);
        match story.is_full() {
            true => format!(
                "{saturation}, CO2 {} mg/L, pH {:.2}",
                short(r.co2_mg_per_l),
                r.ph
            ),
            false => saturation,
        }
    });
    format!(
        "{:<15}{:>6} mg/L{beside} on {}",
        "lowest oxygen",
        short(low.value),
        day_and_clock(low.minute)
    )
}

/// Running limits: those kept in a line, inside first, then close with the margin; each other with the setting
/// that cures it.
pub fn running(page: &mut Page, findings: &[Finding]) {
    let of = |stand: Stand| -> Vec<String> {
        let standing = findings.iter().filter(|finding| finding.stand() == stand);
        standing.map(kept_words).collect()
    };
    let kept = [Stand::Inside, Stand::Close].map(|stand| (stand, of(stand)));
    let kept = kept.iter().filter(|(_, words)| !words.is_empty());
    let kept: Vec<String> = kept
        .map(|(stand, words)| format!("{} {}", stand.word(), words.join(", ")))
        .collect();
    let mut label = "Running";
    if !kept.is_empty() {
        page.block(
            label,
            Tone::Plain,
            format!("central run: {}", kept.join("; ")),
        );
        label = "";
    }
    for finding in findings.iter().filter(|finding| !finding.kept) {
        page.block(label, Tone::Warn, broken_words(finding));
        label = "";
    }
}

/// `lowest oxygen 6.58 mg/L (limit 5)`, with the margin where it is close.
fn kept_words(finding: &Finding) -> String {
    let margin = match finding.stand() {
        Stand::Close => format!(
            ", margin {}",
            short(margin(finding.worst.value, finding.limit))
        ),
        _ => String::new(),
    };
    let (label, value) = (finding.label, with_unit(finding));
    format!("{label} {value} (limit {}{margin})", finding.limit)
}

fn with_unit(finding: &Finding) -> String {
    let unit = match finding.unit {
        "" | "1" => String::new(),
        unit => format!(" {unit}"),
    };
    format!("{}{unit}", short(finding.worst.value))
}

fn value_of(finding: &Finding) -> String {
    // past its limit nothing is called comfortable, whatever other animals would bear
    let level = finding.level.filter(|&level| level > Level::Comfortable);
    let level = level.map_or(String::new(), |level| format!(", {}", level.word()));
    format!(
        "{} outside (limit {}{level})",
        with_unit(finding),
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
