//! `[limits]`: what counts as ripe, and what animals bear.

use crate::analysis::case::SetBy;
use crate::analysis::limits::{Limit, Limits};
use crate::base::units::{self, Kind, everyday};
use crate::scenario::reader::Reader;

/// Reads `[limits]`.
pub fn read(file: &Reader<'_>) -> Limits {
    let section = file.section("limits");
    let mut limits = Limits::default();
    for limit in limits.all_mut() {
        let given = match kind(limit.key) {
            Some(kind) => section.quantity(limit.key, kind, (0.0, 1000.0)).value(),
            None => section.number(limit.key, (0.0, 1000.0)).value(),
        };
        if let Some(value) = given {
            limit.value = value;
            limit.given = true;
        } else {
            note(&section, limit);
        }
    }
    section.close();
    limits
}

/// The kind of a limit; none for plain numbers.
fn kind(key: &str) -> Option<&'static Kind> {
    match key {
        "total_ammonia" | "free_ammonia" | "ammonia_in_light" => Some(&everyday::AMMONIA),
        "nitrite" => Some(&everyday::NITRITE),
        "shrimp_nitrate" => Some(&everyday::NITRATE),
        "oxygen" => Some(&everyday::OXYGEN),
        "co2" => Some(&everyday::CO2),
        "bright_light" => Some(&everyday::LIGHT),
        "temperature_jump" => Some(&everyday::TEMPERATURE_DIFFERENCE),
        _ => None,
    }
}

fn note(section: &Reader<'_>, limit: &Limit) {
    let unit = if limit.unit == "1" { "" } else { limit.unit };
    let value = format!("{} {unit}", units::digits(limit.value));
    section.desk.resolve(
        section.path_of(limit.key),
        value.trim(),
        SetBy::Default(limit.source.line()),
    );
}
