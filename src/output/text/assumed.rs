//! What was assumed, and what the user should know.

use crate::analysis::case::{Case, Resolved, SetBy};
use crate::model::parameter_set::Origin;

use super::words::counted;
use super::{Page, Tone};

/// Entries whose default changes the answer most, the most telling first.
const TELLING: [&str; 9] = [
    "soil.kind",
    "water.tap.alkalinity",
    "tank.temperature",
    "surface.kind",
    "seed.level",
    "light.at_soil",
    "water.tap.nitrate",
    "room.temperature",
    "soil.amount",
];
const SHOWN_DEFAULTS: usize = 4;
const SHOWN_NOTICES: usize = 6;

/// How many values were assumed, the most telling of them, and every override.
pub fn defaults(page: &mut Page, case: &Case) {
    let assumed: Vec<&Resolved> = case
        .resolved
        .iter()
        .filter(|value| matches!(value.set_by, SetBy::Default(_)))
        .collect();
    let telling: Vec<String> = TELLING
        .iter()
        .filter_map(|path| assumed.iter().find(|value| value.path == *path))
        .take(SHOWN_DEFAULTS)
        .map(|value| format!("{} = {}", value.path, value.value))
        .collect();
    let shown = if telling.is_empty() {
        String::new()
    } else {
        format!(", among them {}", telling.join(", "))
    };
    page.block(
        "Assumed",
        Tone::Plain,
        format!(
            "{} by default{shown}; all in manifest.json",
            counted(assumed.len(), "value")
        ),
    );
    for (spec, value, origin) in case.input.parameters.iter() {
        if let Origin::Given { why } = origin {
            page.line(
                Tone::Plain,
                format!("{} = {value} {} given: {why}", spec.id, spec.unit),
            );
        }
    }
}

/// Notices, the first few in full.
pub fn notices(page: &mut Page, notices: &[String]) {
    for (at, notice) in notices.iter().take(SHOWN_NOTICES).enumerate() {
        page.block(
            if at == 0 { "Notices" } else { "" },
            Tone::Warn,
            notice.as_str(),
        );
    }
    if notices.len() > SHOWN_NOTICES {
        let more = notices.len() - SHOWN_NOTICES;
        page.line(Tone::Faint, format!("and {more} more in manifest.json"));
    }
}
