//! `[soil]`: what kind, how much, how old.

use crate::analysis::uncertain::moves::Place as To;
use crate::base::maths;
use crate::base::units::{digits, everyday};
use crate::model::parameter_set::Origin;
use crate::scenario::desk::Desk;
use crate::scenario::draft::Draft;
use crate::scenario::reader::{Read, Reader, Said};

/// Words for the kind, richest last; the last is sand or gravel.
const KINDS: [&str; 4] = ["mild", "medium", "rich", "inert"];
/// The bag that is taken where none is given, as the documentation says, L.
const USUAL_BAG_L: f64 = 3.0;
/// What an active soil holds in store, by parameter.
const STORES: [&str; 4] = ["q0", "N_o0", "P0", "E_H0"];

/// The bed.
pub struct Soil {
    /// Bulk volume of the bed, L; none when it could not be read.
    pub bulk_l: Option<f64>,
    /// Size of its bags, L.
    pub bag_l: f64,
    /// Whether it gives and takes (not sand or gravel).
    pub is_active: bool,
    /// The volume as it was said.
    amount: Option<Said>,
}

impl Soil {
    /// Notes what a range of its amount moves.
    pub fn tell_moves(&self, desk: &Desk, displaces: bool) {
        if let Some(amount) = self.amount {
            let place = To::Soil {
                central_l: amount.value,
                is_active: self.is_active,
                displaces,
            };
            amount.moves(desk, place);
        }
    }
}

/// Reads `[soil]`; the stores of the soil go into the parameters.
pub fn soil(file: &Reader<'_>, draft: &mut Draft<'_>) -> Soil {
    let section = file.section("soil");
    if !section.is_there() {
        draft.fact("Soil", "none");
        return Soil {
            bulk_l: section.place.is_none().then_some(0.0),
            bag_l: USUAL_BAG_L,
            is_active: false,
            amount: None,
        };
    }
    let word = KINDS[section.choice_or_default("kind", &KINDS)];
    let amount = section.said("amount", &everyday::VOLUME, (0.0, 10_000.0));
    if amount.is_absent() {
        section.missing("amount");
    }
    let bag = section.quantity("bag", &everyday::VOLUME, (0.1, 1000.0));
    if bag.is_absent() && word != "inert" {
        section.note_default("bag");
    }
    let age = section.quantity("age", &everyday::DURATION, (0.0, 3660.0));
    section.close();
    fill_stores(draft, word);
    if let Read::Given(days, _) = age {
        let words = format!("soil.age = {}", everyday::DURATION.print(days));
        wear(draft, days, &words);
    }
    let amount = amount.value();
    let bulk_l = amount.map(|said| said.value);
    draft.fact(
        "Soil",
        in_words(word, bulk_l.unwrap_or(0.0), bag.seen().copied()),
    );
    Soil {
        bulk_l,
        bag_l: bag.or(USUAL_BAG_L),
        is_active: word != "inert",
        amount,
    }
}

/// Mild and rich soils hold a multiple of the medium one.
fn fill_stores(draft: &mut Draft<'_>, word: &str) {
    let factor = match word {
        "mild" => draft.parameter("soil_mild"),
        "rich" => draft.parameter("soil_rich"),
        _ => return,
    };
    let words = format!("soil.kind = \"{word}\"");
    for id in STORES {
        let value = factor * draft.parameters.get(id);
        draft.parameters.set(id, value, Origin::Word(words.clone()));
    }
}

/// Soil that stood under water before has given part of its stores away.
///
/// ```text
/// share left = exp(−k_min · days)
/// ```
///
/// with the mineralisation rate of the model; a judgement, no source.
fn wear(draft: &mut Draft<'_>, days: f64, words: &str) {
    let left = maths::exp(-draft.parameter("k_min") * days);
    for id in STORES {
        let value = left * draft.parameters.get(id);
        draft
            .parameters
            .set(id, value, Origin::Word(words.to_string()));
    }
    draft.desk.notice(format!(
        "{words}: the soil starts with {:.0} % of what a new one holds (exp(-k_min * age); a judgement, no source)",
        100.0 * left
    ));
}

fn in_words(kind: &str, litres: f64, bag_l: Option<f64>) -> String {
    let bags = bag_l.map_or(String::new(), |bag| {
        let count = (litres / bag - 1e-9).ceil();
        format!(", {count:.0} bags of {} L", digits(bag))
    });
    format!("{} L, {kind}{bags}", digits(litres))
}
