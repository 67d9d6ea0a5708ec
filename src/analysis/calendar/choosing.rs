//! Choices among the calendars that a search has found, on members that it has not seen.

use crate::analysis::ensemble::EnsembleError;

use super::choice::{self, Choice};
use super::days::Days;
use super::judge::Judge;
use super::score::Score;
use super::search::Judging;
use super::wish::{CalendarWish, Least, Terms};

/// So many of the best are scored anew until some hold, and so many of these are kept at hand
/// (judgements, no source).
pub(super) const BEST_TRIED: usize = 12;
const BEST_HELD: usize = 3;

/// The one of some calendars that comes nearest.
pub(super) fn nearest_of(
    shown: &mut Judge<'_, '_>,
    wish: &CalendarWish,
    near: Vec<Days>,
) -> Result<Choice, EnsembleError> {
    let mut nearest: Option<Choice> = None;
    for days in near {
        let choice = Choice::of(shown.score_of(&days)?, days, wish);
        let comes_first = |best: &Choice| choice.score.harm(&best.score).is_lt();
        if nearest.as_ref().is_none_or(comes_first) {
            nearest = Some(choice);
        }
    }
    match nearest {
        Some(nearest) => Ok(nearest),
        None => {
            let none = Days::all(wish, 0);
            Ok(Choice::of(shown.score_of(&none)?, none, wish))
        }
    }
}

/// The choices, with the fullest calendar and the plan's own among them where they come first.
pub(super) fn offered(
    choosing: &mut Judge<'_, '_>,
    wish: &CalendarWish,
    kept: &[(Days, Score)],
    (first, least): (Days, Least),
) -> Result<Vec<Choice>, EnsembleError> {
    let mut choices = chosen(choosing, wish, kept)?;
    let full = Days::all(wish, wish.shares.len() as u8);
    for days in [full, first] {
        let own = Choice::of(choosing.score_of(&days)?, days, wish);
        choice::offer(&mut choices, own, least);
    }
    Ok(choices)
}

/// The best calendars that hold on other members too, of some ever surer ones; then some along the trade-off that do.
/// Where none of them does, the best all the same: its score says how far it falls short.
fn chosen(
    choosing: &mut Judge<'_, '_>,
    wish: &CalendarWish,
    kept: &[(Days, Score)],
) -> Result<Vec<Choice>, EnsembleError> {
    let mut choices: Vec<Choice> = Vec::new();
    for (days, _) in choice::surer_and_surer(kept).take(BEST_TRIED) {
        let choice = Choice::of(choosing.score_of(days)?, days.clone(), wish);
        match (choices.first(), choice.score.is_kept) {
            (Some(best), true) if best.score.is_kept => choices.push(choice),
            (_, true) | (None, _) => choices = vec![choice],
            (Some(_), false) => {}
        }
        if choices.len() == BEST_HELD {
            break;
        }
    }
    for days in choice::along(kept) {
        let choice = Choice::of(choosing.score_of(&days)?, days, wish);
        let is_new = !choices.iter().any(|other| other.changes == choice.changes);
        if choice.score.is_kept && is_new {
            choices.push(choice);
        }
    }
    // a calendar along the trade-off may hold, and do with less, where the best of the search does not
    if choices.iter().any(|choice| choice.score.is_kept) {
        choices.retain(|choice| choice.score.is_kept);
    }
    choices.sort_by(|a, b| choosing.order(&a.score, &b.score));
    Ok(choices)
}

/// Scores choices on the members that are shown, and leaves out those that fall short there if others do not.
pub(super) fn score_anew(
    shown: &mut Judge<'_, '_>,
    terms: &Terms,
    choices: &mut Vec<Choice>,
) -> Result<(), EnsembleError> {
    for choice in choices.iter_mut() {
        let was_kept = choice.score.is_kept;
        choice.score = shown.score_of(&choice.days)?;
        choice.score.is_kept = was_kept && terms.may_be_kept_by(&choice.score);
    }
    if choices.iter().any(|choice| choice.score.is_kept) {
        choices.retain(|choice| choice.score.is_kept);
    }
    choices.sort_by(|a, b| shown.order(&a.score, &b.score));
    choice::told_apart(choices);
    // the second and third best are at hand in case the first falls short
    while choices.len() > choice::MOST {
        choices.remove(1);
    }
    Ok(())
}
