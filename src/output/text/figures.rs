//! The figures: peaks, the worst night, running limits.

use crate::analysis::levels::Level;
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
            format!("kept by the central run: {}", kept.join("; ")),
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
