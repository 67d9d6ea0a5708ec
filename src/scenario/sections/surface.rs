//! `[surface]`: how the surface moves, and whether a film lies on it.

use crate::base::units::everyday;
use crate::scenario::draft::Draft;
use crate::scenario::keys;
use crate::scenario::problem::Problem;
use crate::scenario::reader::{Read, Reader};

const WORDS: [&str; 5] = [
    "still",
    "gentle ripple",
    "ripple",
    "strong ripple",
    "splash",
];
const VELOCITIES: [&str; 5] = [
    "k_600_still",
    "k_600_gentle",
    "k_600_ripple",
    "k_600_strong",
    "k_600_splash",
];

/// Reads `[surface]`; what it says goes into the parameters.
pub fn read(file: &Reader<'_>, draft: &mut Draft<'_>) {
    let section = file.section("surface");
    let kind = section.choice("kind", &WORDS);
    let transfer = section.said("transfer", &everyday::VELOCITY, (0.05, 10.0));
    film(&section, draft);
    section.close();
    if let (Some(kind), Some(transfer)) = (kind.place(), transfer.place()) {
        section.desk.problem(
            Problem::at(transfer, "[surface] has both kind and transfer")
                .label("one of the two")
                .also(kind, "and here"),
        );
    }
    if kind.is_absent() && transfer.is_absent() {
        section.note_default("kind");
    }
    let usual = keys::key("surface.kind").map_or("", |key| key.default);
    let word = kind.seen().map_or(usual, |&at| WORDS[at]);
    match transfer {
        Read::Given(velocity, _) => {
            draft.set_said("k_600", velocity, "surface.transfer");
            draft.fact("Surface", everyday::VELOCITY.print(velocity.value));
        }
        _ => {
            let at = WORDS.iter().position(|w| *w == word).unwrap_or(0);
            let said = format!("surface.kind = \"{word}\"");
            draft.set_by_word("k_600", VELOCITIES[at], &said);
            draft.fact("Surface", word);
        }
    }
}

/// `none`, `seen`, or the share of the exchange that is left.
fn film(section: &Reader<'_>, draft: &mut Draft<'_>) {
    if section.is_word("film") {
        let value = |_: &str| draft.parameter("film_seen");
        let seen = section.word("film", &["seen"], value, |v| everyday::SHARE.print(v));
        if seen.value().is_some() {
            draft.set_by_word("film", "film_seen", "surface.film");
        }
        return;
    }
    match section.said("film", &everyday::SHARE, (0.05, 1.0)) {
        Read::Given(share, _) => draft.set_said("film", share, "surface.film"),
        Read::Absent => section.note_default("film"),
        Read::Bad(_) => {}
    }
}
