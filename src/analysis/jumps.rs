//! Jumps at a water change that animals must not be put through, each with the setting that cures it.

use crate::base::clock::DAY;
use crate::base::real::Real;
use crate::engine::result::{EventRecord, Reading, RunResult};

use super::levels::{self, Level};
use super::limits::Limit;
use super::milestones::Extreme;
use super::running::Finding;

/// A quantity that may jump at a water change.
pub(super) struct Jump {
    label: &'static str,
    unit: &'static str,
    value: fn(&Reading) -> f64,
    level: Option<fn(f64) -> Level>,
    cure: fn(&EventRecord, f64, f64) -> String,
}

/// Temperature.
pub(super) const TEMPERATURE: Jump = Jump {
    label: "temperature at a change",
    unit: "°C",
    value: |r| r.temperature_c,
    level: Some(levels::temperature_jump),
    cure: |event, jump, limit| {
        format!(
            "refill water nearer to the tank's temperature, or {} about {} % at most",
            share_path(event),
            smaller_share(event, jump, limit)
        )
    },
};

/// pH.
pub(super) const PH: Jump = Jump {
    label: "pH at a change",
    unit: "",
    value: |r| r.ph,
    level: None,
    cure: |event, jump, limit| {
        let smaller = format!(
            "{} about {} % at most",
            share_path(event),
            smaller_share(event, jump, limit)
        );
        if event.before.gas_mg_per_h > 0.0 {
            format!("{smaller}, or changes.time before the gas comes on")
        } else {
            format!("{smaller}, or refill water nearer in KH")
        }
    },
};

fn share_path(event: &EventRecord) -> String {
    format!("{}.share", event.name)
}

fn smaller_share(event: &EventRecord, jump: f64, limit: f64) -> u32 {
    let share = event.litres / event.before.volume_l;
    (100.0 * share * limit / jump).floor().max(1.0) as u32
}

/// How large a jump is.
pub(super) fn size<R: Real>(before: R, after: R) -> R {
    (after - before).abs()
}

/// What a run says of a limit on jumps; nothing without a change.
pub(super) fn jump(run: &RunResult, what: &Jump, limit: &Limit) -> Option<Finding> {
    let end = run.input.end_minute();
    let size = |event: &EventRecord| size((what.value)(&event.before), (what.value)(&event.after));
    let changes: Vec<&EventRecord> = run
        .events
        .iter()
        .filter(|event| event.litres > 0.0 && event.minute < end)
        .collect();
    let worst = *changes.iter().reduce(
        |best, next| {
            if size(next) > size(best) { next } else { best }
        },
    )?;
    let mut days: Vec<u32> = changes
        .iter()
        .filter(|event| size(event) > limit.value)
        .map(|event| event.minute / DAY)
        .collect();
    days.dedup();
    let value = size(worst);
    Some(Finding {
        key: limit.key,
        label: what.label,
        worst: Extreme {
            value,
            minute: worst.minute,
        },
        limit: limit.value,
        unit: what.unit,
        kept: days.is_empty(),
        hours: 0.0,
        cure: (!days.is_empty()).then(|| (what.cure)(worst, value, limit.value)),
        days,
        level: what.level.map(|level| level(value)),
    })
}
