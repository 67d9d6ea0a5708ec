//! `[stock]` and `[uneaten]`: animals, their feed, and feed nobody eats.

use crate::base::clock::HOUR;
use crate::base::units::{digits, everyday};
use crate::engine::event::{Animals, EventKind};
use crate::scenario::draft::Draft;
use crate::scenario::problem::Problem;
use crate::scenario::reader::Reader;
use crate::scenario::repeats;

const NOON: u32 = 12 * HOUR;
const KINDS: [&str; 2] = ["fish", "shrimp"];

/// Reads `[stock]` and `[uneaten]`.
pub fn read(file: &Reader<'_>, draft: &mut Draft<'_>) {
    for entry in file.section("stock").named("NAME") {
        stock(&entry, draft);
    }
    for entry in file.section("uneaten").named("NAME") {
        let when = repeats::when(&entry, draft);
        let amount = entry.quantity("amount", &everyday::MASS, (0.001, 1000.0));
        if amount.is_absent() {
            entry.missing("amount");
        }
        let protein_frac = protein(&entry, draft);
        entry.close();
        if let (Some(when), Some(feed_g)) = (when, amount.value()) {
            let kind = EventKind::Uneaten {
                feed_g,
                protein_frac,
            };
            draft.schedule(&entry.path, &when, &kind);
        }
    }
}

fn stock(entry: &Reader<'_>, draft: &mut Draft<'_>) {
    let day = repeats::one_day(entry, &draft.calendar, None);
    let own = repeats::time(entry, draft);
    let kind = KINDS[entry.choice_or_default("kind", &KINDS)];
    let mass_g = mass_g(entry);
    let feed = feed(entry, draft, mass_g);
    let protein_frac = protein(entry, draft);
    entry.close();
    let (Some(day), Some(mass_g), Some(feed_g_per_day)) = (day, mass_g, feed) else {
        return;
    };
    let Some(time) = repeats::at(entry, draft, &own, day, NOON) else {
        return;
    };
    draft.mind_absence(&entry.path, day);
    let (mass, feed) = (digits(mass_g), digits(feed_g_per_day));
    let words = format!("{mass} g of {kind} on day {day}, {feed} g feed a day");
    draft.fact("Animals", words);
    let animals = Animals {
        mass_g,
        feed_g_per_day,
        protein_frac,
        shrimp: kind == "shrimp",
    };
    draft.happen(&entry.path, day, time, EventKind::Stock(animals));
}

/// Live mass of all of them, g.
fn mass_g(entry: &Reader<'_>) -> Option<f64> {
    let count = entry.count("count", (0, 100_000));
    let each = entry.quantity("each", &everyday::MASS, (0.0, 10_000.0));
    let nobody = count.is_absent() && each.is_absent() || count.seen() == Some(&0);
    if nobody && let Some(feed) = entry.wanted("feed") {
        entry.desk.problem(
            Problem::at(
                &feed.key_place,
                format!("{} gives feed, but there are no animals", entry.path),
            )
            .label("feed for nobody")
            .help("add count = 12 and each = \"0.5 g\"")
            .help("for feed that only rots, use [uneaten]"),
        );
        return None;
    }
    for (is_absent, key) in [(count.is_absent(), "count"), (each.is_absent(), "each")] {
        if is_absent {
            entry.missing(key);
        }
    }
    Some(f64::from(count.value()?) * each.value()?)
}

/// Dry feed, g/day: a share of the live mass, or grams.
fn feed(entry: &Reader<'_>, draft: &Draft<'_>, mass_g: Option<f64>) -> Option<f64> {
    let unit = entry.unit_of("feed");
    if everyday::PER_DAY.spelled(&unit).is_some() {
        let share = entry
            .quantity("feed", &everyday::PER_DAY, (0.0, 0.5))
            .value();
        return Some(share? * mass_g?);
    }
    if everyday::FEED_RATE.spelled(&unit).is_some() {
        return entry
            .quantity("feed", &everyday::FEED_RATE, (0.0, 1000.0))
            .value();
    }
    let Some(written) = entry.wanted("feed") else {
        let share = draft.parameter("feed");
        let value = format!("{} %/day", digits(100.0 * share));
        entry.assumed("feed", value, "parameter feed");
        return Some(share * mass_g?);
    };
    let (path, found) = (entry.path_of("feed"), written.node.value.words());
    entry.desk.problem(
        Problem::at(
            &written.node.place,
            format!("{path} needs feed per day, but this is {found}"),
        )
        .help("write it like \"2 %/day\" (of the live mass) or \"0.1 g/day\""),
    );
    None
}

fn protein(entry: &Reader<'_>, draft: &Draft<'_>) -> f64 {
    let protein = entry.quantity("protein", &everyday::SHARE, (0.0, 1.0));
    let usual = draft.parameter("protein");
    if protein.is_absent() {
        let value = format!("{} %", digits(100.0 * usual));
        entry.assumed("protein", value, "parameter protein");
    }
    protein.or(usual)
}
