//! Panels that several lessons show.

use super::super::trace::{Line, Panel, Trace, limits};

/// Total ammonia with its limit.
pub const AMMONIA: Panel = Panel {
    title: "Total ammonia",
    traces: &[Trace::Ammonia],
    least: 1.0,
    from_zero: true,
    lines: &[Line::of("limit", |step| limits(step).total_ammonia.value)],
};

/// Free ammonia with its limit.
pub const FREE_AMMONIA: Panel = Panel {
    title: "Free ammonia",
    traces: &[Trace::FreeAmmonia],
    least: 0.03,
    from_zero: true,
    lines: &[Line::of("limit", |step| limits(step).free_ammonia.value)],
};

/// Nitrite with its limit.
pub const NITRITE: Panel = Panel {
    title: "Nitrite",
    traces: &[Trace::Nitrite],
    least: 1.0,
    from_zero: true,
    lines: &[Line::of("limit", |step| limits(step).nitrite.value)],
};

/// How many of 100 are ready.
pub const READY: Panel = Panel {
    title: "Plausible tanks that are ready",
    traces: &[Trace::Ready],
    least: 100.0,
    from_zero: true,
    lines: &[],
};

/// What the ammonia oxidisers could turn over.
pub const CAPACITY: Panel = Panel {
    title: "Capacity of the ammonia oxidisers",
    traces: &[Trace::AmmoniaCapacity],
    least: 10.0,
    from_zero: true,
    lines: &[],
};

/// Oxygen with its limit.
pub const OXYGEN: Panel = Panel {
    title: "Oxygen",
    traces: &[Trace::Oxygen],
    least: 9.0,
    from_zero: true,
    lines: &[Line::of("limit", |step| limits(step).oxygen.value)],
};

/// Carbon dioxide.
pub const CO2: Panel = Panel {
    title: "CO2 in the water",
    traces: &[Trace::Co2],
    least: 25.0,
    from_zero: true,
    lines: &[],
};

/// pH, whose axis begins where it is.
pub const PH: Panel = Panel {
    title: "pH",
    traces: &[Trace::Ph],
    least: 0.0,
    from_zero: false,
    lines: &[],
};
