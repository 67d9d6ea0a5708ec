//! What a tank waited for, in words, and days past the end of a run.

use crate::analysis::ready::{Ripening, Waiting};
use crate::analysis::ripening::OxidationStep;

/// What a tank waited for, in words.
pub fn waited_words(waiting: Waiting) -> &'static str {
    match waiting {
        Waiting::Limit(Ripening::TotalAmmonia) => "total ammonia",
        Waiting::Limit(Ripening::Nitrite) => "nitrite",
        Waiting::Limit(Ripening::FreeAmmonia) => "free ammonia",
        Waiting::Capacity(OxidationStep::Ammonia) => "the capacity for ammonia",
        Waiting::Capacity(OxidationStep::Nitrite) => "the capacity for nitrite",
        Waiting::WithAnimals(Ripening::TotalAmmonia) => "total ammonia with the animals in",
        Waiting::WithAnimals(Ripening::Nitrite) => "nitrite with the animals in",
        Waiting::WithAnimals(Ripening::FreeAmmonia) => "free ammonia with the animals in",
    }
}

/// The same where room is short.
pub fn waited_words_briefly(waiting: Waiting) -> String {
    waited_words(waiting).replace("with the animals in", "with animals")
}

/// A day past the end of a run.
pub fn later(last_day: u32) -> String {
    format!("later than day {last_day}")
}
