//! `[test_kit]`: the steps printed on the cards.

use crate::analysis::kit::{Card, Step, TestKit};
use crate::base::units::everyday::{AMMONIA, NITRITE};
use crate::base::units::{Kind, digits, quantity};
use crate::scenario::problem::{Place, Problem};
use crate::scenario::reader::{Read, Reader};
use crate::scenario::refusal;
use crate::scenario::tree::Value;

/// Most that a card may print, mg N/L: far above any card.
const MOST_MG_N_PER_L: f64 = 1000.0;

/// Reads `[test_kit]`.
pub fn read(file: &Reader<'_>) -> TestKit {
    let section = file.section("test_kit");
    let usual = TestKit::default();
    let kit = TestKit {
        ammonia: card(&section, "ammonia", &AMMONIA).or(usual.ammonia),
        nitrite: card(&section, "nitrite", &NITRITE).or(usual.nitrite),
    };
    section.close();
    kit
}

fn card(section: &Reader<'_>, key: &'static str, kind: &'static Kind) -> Read<Card> {
    let Some(entry) = section.wanted(key) else {
        section.note_default(key);
        return Read::Absent;
    };
    let Value::Text(text) = &entry.node.value else {
        return section.wrong_type(key, &entry.node, "the steps of a card in quotes");
    };
    let place = &entry.node.place;
    match card_of(&section.path_of(key), text, kind, place) {
        Ok(card) => {
            section.given(key, &entry.node);
            Read::Given(card, place.clone())
        }
        Err(problem) => {
            section.desk.problem(*problem);
            Read::Bad(place.clone())
        }
    }
}

/// Rising steps with commas between them; the last has the unit of all.
fn card_of(
    path: &str,
    text: &str,
    kind: &'static Kind,
    place: &Place,
) -> Result<Card, Box<Problem>> {
    let parts: Vec<&str> = text.split(',').map(str::trim).collect();
    let last = parts.last().and_then(|last| quantity::split(last).ok());
    let unit = last.map_or("", |split| split.unit);
    if let Some(last) = parts.last() {
        // what is wrong with the unit is said of the step that has it
        step(path, last, unit, kind, place)?;
    }
    let steps: Vec<Step> = parts
        .iter()
        .map(|part| step(path, part, unit, kind, place))
        .collect::<Result<_, _>>()?;
    let falls = |two: &&[Step]| two[0].mg_n_per_l >= two[1].mg_n_per_l;
    if let Some(two) = steps.windows(2).find(falls) {
        let title = format!("the steps of {path} must rise");
        let label = format!(
            "{} comes after {}",
            digits(two[1].printed),
            digits(two[0].printed)
        );
        return Err(Box::new(Problem::at(place, title).label(label)));
    }
    if steps.len() < 2 {
        let title = format!("{path} has one step; a card has two or more");
        let how = "write them with commas between, like \"0, 0.5, 1, 5 mg N/L\"";
        return Err(Box::new(Problem::at(place, title).help(how)));
    }
    Ok(Card {
        unit: kind.spelled(unit).unwrap_or(kind.base()).symbol.to_string(),
        steps,
    })
}

/// One step; without a unit of its own it has that of the last, and none other.
fn step(
    path: &str,
    part: &str,
    unit: &str,
    kind: &'static Kind,
    place: &Place,
) -> Result<Step, Box<Problem>> {
    let bare = quantity::split(part).is_ok_and(|split| split.unit.is_empty());
    let whole = if bare {
        format!("{part} {unit}")
    } else {
        part.to_string()
    };
    let whole = whole.trim();
    let mg_n_per_l = quantity::read(whole, kind)
        .map_err(|refused| Box::new(refusal::problem(path, whole, kind, &refused, place)))?;
    let printed = quantity::split(whole).map_or(mg_n_per_l, |split| split.number);
    if !bare && quantity::split(part).is_ok_and(|split| split.unit != unit) {
        let title = format!("the steps of {path} have more than one unit");
        let label = "one unit, after the last step";
        return Err(Box::new(Problem::at(place, title).label(label)));
    }
    if !(0.0..=MOST_MG_N_PER_L).contains(&mg_n_per_l) {
        let title = format!("{path} has a step of {whole}");
        let label = format!("allowed: 0 to {} mg N/L", digits(MOST_MG_N_PER_L));
        return Err(Box::new(Problem::at(place, title).label(label)));
    }
    Ok(Step {
        printed,
        mg_n_per_l,
    })
}
