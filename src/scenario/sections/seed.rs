//! `[seed]`: the first films, and mature filter medium brought in.

use crate::base::units::{digits, everyday};
use crate::engine::event::EventKind;
use crate::scenario::draft::Draft;
use crate::scenario::reader::Reader;
use crate::scenario::repeats;
use crate::scenario::tree::Value;

const WORDS: [&str; 3] = ["nothing extra", "a little", "live medium"];

/// Reads `[seed]`; the level comes back, the media become events.
pub fn read(file: &Reader<'_>, draft: &mut Draft<'_>) -> f64 {
    let section = file.section("seed");
    let level = level(&section, draft);
    for entry in section.named("NAME") {
        let day = repeats::one_day(&entry, &draft.calendar, None);
        let own = repeats::time(&entry, draft);
        let amount = entry.quantity("amount", &everyday::VOLUME, (0.001, 1000.0));
        if amount.is_absent() {
            entry.missing("amount");
        }
        entry.close();
        let time = day.and_then(|day| repeats::at(&entry, draft, &own, day, draft.usual_time));
        if let (Some(day), Some(time), Some(litres)) = (day, time, amount.value()) {
            let per_litre = ["seed_XA", "seed_XN", "seed_XK"].map(|id| draft.parameter(id));
            let mg_cod = per_litre.map(|mg| mg * litres);
            draft.mind_absence(&entry.path, day);
            draft.happen(&entry.path, day, time, EventKind::Seed { mg_cod });
            draft.fact(
                "Seed",
                format!("{} L of mature medium on day {day}", digits(litres)),
            );
        }
    }
    level
}

/// First films as a multiple of a new tank's.
fn level(section: &Reader<'_>, draft: &Draft<'_>) -> f64 {
    let value = |word: &str| match word {
        "a little" => draft.parameter("seed_little"),
        "live medium" => draft.parameter("seed_live"),
        _ => 1.0,
    };
    let is_number = section
        .wanted("level")
        .is_some_and(|entry| matches!(entry.node.value, Value::Whole(_) | Value::Number(_)));
    let level = if is_number {
        section.number("level", (0.0, 1e6))
    } else {
        section.word("level", &WORDS, value, digits)
    };
    if level.is_absent() {
        section.note_default("level");
    }
    level.or(1.0)
}
