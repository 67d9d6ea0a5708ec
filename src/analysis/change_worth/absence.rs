//! What an absence costs, the best day to double up, and a plan with less to do.

use crate::analysis::case::Case;
use crate::analysis::ensemble::EnsembleError;
use crate::analysis::levers::lever::Lever;
use crate::base::clock::{DAY, TimeOfDay};

use super::doubling::best_to_double;
use super::drop::{DropList, all_out};
use super::effects::Effects;
use super::one_more::usual_share;
use super::planned::{Change, doubled, with};
use super::rounds::Rounds;

/// With one change doubled, so many of those that are missed least are tried to go.
const TRIED: usize = 6;

/// An absence, and what can be done about it.
#[derive(Debug, Clone)]
pub struct Absence {
    /// Changes the plan has on days on which nobody is there.
    pub missed: Vec<Change>,
    /// What staying at home would do: all of them done after all; none where none is missed.
    pub at_home: Option<Effects>,
    /// The best change to double, by its place in the plan, with what that does; none where there is none near.
    pub doubled: Option<(usize, Effects)>,
    /// With less to do.
    pub reduced: Option<Reduced>,
}

/// A plan with less to do: what may go is gone, and one change is doubled if that helps.
#[derive(Debug, Clone)]
pub struct Reduced {
    /// The changes that stay, by their places in the plan.
    pub stay: Vec<usize>,
    /// The one of them that is doubled.
    pub doubled: Option<usize>,
    /// What the plan does, against the plan as written.
    pub effects: Effects,
}

impl Absence {
    /// Looks at the absences of a case; none where there is none.
    ///
    /// # Errors
    /// When somebody wishes to stop, or too many members fail.
    pub fn of(
        rounds: &mut Rounds<'_, '_>,
        changes: &[Change],
        drop: &DropList,
    ) -> Result<Option<Absence>, EnsembleError> {
        if rounds.case.away.is_empty() {
            return Ok(None);
        }
        let missed = missed(rounds.case, changes);
        let at_home = match missed.is_empty() {
            true => None,
            false => Some(rounds.effect(with(&missed))?),
        };
        let doubled = best_to_double(rounds, changes)?;
        Ok(Some(Absence {
            missed,
            at_home,
            reduced: reduced(rounds, changes, drop, doubled.as_ref())?,
            doubled,
        }))
    }
}

/// The changes that fall on away days, as the other days of their entries are.
fn missed(case: &Case, changes: &[Change]) -> Vec<Change> {
    let away = |day: u32| (case.away.iter()).any(|&(from, last)| (from..=last).contains(&day));
    let entries = case.left_out.iter().filter(|(day, _)| away(*day));
    let is_of_changes = |name: &str| name.starts_with("changes.");
    let entries = entries.filter(|(_, name)| is_of_changes(name));
    entries
        .filter_map(|(day, name)| {
            let like = changes.iter().find(|change| change.name == *name);
            let like = like.or(changes.first())?;
            let share = match like.name == *name {
                true => like.share,
                false => usual_share(changes)?,
            };
            Some(Change {
                minute: day * DAY + TimeOfDay::of(like.minute).0,
                name: name.clone(),
                share,
            })
        })
        .collect()
}

/// Without what may go, with one change doubled, and without what may go then, the least missed first; none where
/// nothing may go even so.
fn reduced(
    rounds: &mut Rounds<'_, '_>,
    changes: &[Change],
    drop: &DropList,
    best: Option<&(usize, Effects)>,
) -> Result<Option<Reduced>, EnsembleError> {
    let harmless = best.filter(|(_, effects)| effects.loss().is_none());
    let doubled = harmless.map(|(place, _)| *place);
    let mut out: Vec<usize> = drop.dropped().map(|tried| tried.change).collect();
    out.retain(|&change| Some(change) != doubled);
    let order = drop.order();
    let next = order
        .iter()
        .filter(|&change| !out.contains(change) && Some(*change) != doubled);
    let next: Vec<usize> = next.copied().take(TRIED).collect();
    rounds.expect((next.len() + 1) * rounds.common.members);
    let mut kept = None;
    for change in std::iter::once(None).chain(next.into_iter().map(Some)) {
        out.extend(change);
        let effects = rounds.effect(less_to_do(changes, &out, doubled))?;
        match effects.loss() {
            None => kept = Some(effects),
            Some(_) => out.truncate(out.len() - usize::from(change.is_some())),
        }
    }
    let places = 0..changes.len();
    Ok(kept.filter(|_| !out.is_empty()).map(|effects| Reduced {
        stay: places.filter(|place| !out.contains(place)).collect(),
        doubled,
        effects,
    }))
}

/// The plan without some changes, and with one doubled.
fn less_to_do(changes: &[Change], out: &[usize], twice: Option<usize>) -> Lever {
    let gone = all_out(changes, out);
    let twice = twice.map(|place| doubled(&changes[place]));
    Lever::of("less_to_do", "less to do", move |input| {
        *input = gone.pulled(input.clone());
        if let Some(twice) = &twice {
            *input = twice.pulled(input.clone());
        }
    })
}
