//! `[stock]` and `[uneaten]`: animals, their feed, and feed nobody eats.

use crate::base::clock::HOUR;
use crate::base::units::{digits, everyday, quantity};
use crate::engine::event::{Animals, EventKind};
use crate::scenario::draft::Draft;
use crate::scenario::problem::Problem;
use crate::scenario::reader::{Read, Reader, quantity_of};
use crate::scenario::repeats;
use crate::scenario::tree::Value;

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
    let time = match own {
        Read::Absent => Some(NOON.max(if day == 0 {
            draft.calendar.filled_at
        } else {
            0
        })),
        _ => repeats::at(entry, draft, &own, day),
    };
    let Some(time) = time else { return };
    if draft.is_away(day) {
        draft.desk.notice(format!(
            "{} goes in on day {day}, a day on which nobody is there",
            entry.path
        ));
    }
    draft.fact(
        "Animals",
        format!(
            "{} g of {} on day {day}, {} g feed a day",
            digits(mass_g),
            kind,
            digits(feed_g_per_day)
        ),
    );
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
    let Some(written) = entry.wanted("feed") else {
        let share = draft.parameter("feed");
        let value = format!("{} %/day", digits(100.0 * share));
        entry.assumed("feed", value, "parameter feed");
        return Some(share * mass_g?);
    };
    let path = entry.path_of("feed");
    let unit = match &written.node.value {
        Value::Text(text) => quantity::split(text).map_or("", |split| split.unit),
        _ => "",
    };
    let value = if everyday::PER_DAY.spelled(unit).is_some() {
        let share = quantity_of(
            entry.desk,
            &path,
            &written.node,
            &everyday::PER_DAY,
            (0.0, 0.5),
        )?;
        share * mass_g?
    } else if everyday::FEED_RATE.spelled(unit).is_some() {
        quantity_of(
            entry.desk,
            &path,
            &written.node,
            &everyday::FEED_RATE,
            (0.0, 1000.0),
        )?
    } else {
        entry.desk.problem(
            Problem::at(
                &written.node.place,
                format!(
                    "{path} needs feed per day, but this is {}",
                    written.node.value.words()
                ),
            )
            .help("write it like \"2 %/day\" (of the live mass) or \"0.1 g/day\""),
        );
        return None;
    };
    entry.given("feed", &written.node);
    Some(value)
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
