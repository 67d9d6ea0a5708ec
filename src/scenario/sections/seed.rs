//! `[seed]`: the first films, and mature filter medium brought in.

use crate::base::units::{digits, everyday};
use crate::engine::event::EventKind;
use crate::scenario::draft::Draft;
use crate::scenario::problem::Problem;
use crate::scenario::reader::{Reader, choice_of};
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
        let time = day.and_then(|day| repeats::at(&entry, draft, &own, day));
        if let (Some(day), Some(time), Some(litres)) = (day, time, amount.value()) {
            let per_litre = ["seed_XA", "seed_XN", "seed_XK"].map(|id| draft.parameter(id));
            let mg_cod = per_litre.map(|mg| mg * litres);
            draft.happen(&entry.path, day, time, EventKind::Seed { mg_cod });
            draft.fact(
                "Seed",
                format!("{} L of mature medium on day {day}", digits(litres)),
            );
        }
    }
    level
}

fn level(section: &Reader<'_>, draft: &Draft<'_>) -> f64 {
    let Some(entry) = section.wanted("level") else {
        section.note_default("level");
        return 1.0;
    };
    let path = section.path_of("level");
    let level = match &entry.node.value {
        Value::Whole(number) => Some(*number as f64),
        Value::Number(number) => Some(*number),
        _ => choice_of(section.desk, &path, &entry.node, &WORDS).map(|at| match at {
            0 => 1.0,
            1 => draft.parameter("seed_little"),
            _ => draft.parameter("seed_live"),
        }),
    };
    match level {
        Some(level) if (0.0..=1e6).contains(&level) => {
            match &entry.node.value {
                Value::Text(_) => section.by_word("level", &entry.node, digits(level)),
                _ => section.given("level", &entry.node),
            }
            level
        }
        Some(level) => {
            section.desk.problem(
                Problem::at(&entry.node.place, format!("{path} is {level}"))
                    .label("allowed: 0 to 1000000, as a multiple of a new tank"),
            );
            1.0
        }
        None => 1.0,
    }
}
