//! Where one more change would help most: one of the usual share, tried on each day without a change.

use crate::analysis::case::Case;
use crate::analysis::ensemble::EnsembleError;
use crate::analysis::levers::lever::Lever;
use crate::base::clock::{DAY, TimeOfDay};

use super::effects::{Effects, MOST_DELAY_DAYS};
use super::planned::{Change, with};
use super::rounds::Rounds;

/// Plausible tanks on which each day is tried.
pub const MEMBERS: usize = 64;

/// One more change.
#[derive(Debug, Clone, PartialEq)]
pub struct OneMore {
    /// The usual share, 0 to 1: the middle one of the plan.
    pub share: f64,
    /// On how many plausible tanks each day was tried.
    pub members: usize,
    /// Every day that was tried, and what a change on it does.
    pub tried: Vec<(Change, Effects)>,
    /// The one that gains most days, run again on all tanks.
    pub best: (Change, Effects),
}

impl OneMore {
    /// Tries every day on which somebody is there and no water is changed; none where there is no such day.
    ///
    /// # Errors
    /// When somebody wishes to stop, or too many members fail.
    pub fn of(
        rounds: &mut Rounds<'_, '_>,
        changes: &[Change],
    ) -> Result<Option<OneMore>, EnsembleError> {
        let candidates = candidates(rounds.case, changes);
        if candidates.is_empty() {
            return Ok(None);
        }
        let members = MEMBERS.min(rounds.common.members);
        let each: Vec<Lever> = candidates
            .iter()
            .map(|change| with(std::slice::from_ref(change)))
            .collect();
        let effects = rounds.effects(&each, members)?;
        let tried: Vec<(Change, Effects)> = candidates.into_iter().zip(effects).collect();
        let gained = |(_, effects): &&(Change, Effects)| effects.ready.mean_days;
        // the first of several that gain as much
        let best = (tried.iter().rev()).max_by(|a, b| gained(a).total_cmp(&gained(b)));
        let best = best.expect("there is one").0.clone();
        let effects = rounds.effect(with(std::slice::from_ref(&best)))?;
        Ok(Some(OneMore {
            share: best.share,
            members,
            tried,
            best: (best, effects),
        }))
    }
    /// Whether the best one brings the ready day half a day nearer, beyond chance.
    pub fn helps(&self) -> bool {
        let ready = &self.best.1.ready;
        ready.mean_days >= MOST_DELAY_DAYS && ready.is_clear()
    }
    /// The change that betters a judged figure most, and by how much, in its unit; none where none does by as
    /// much as is told of it, beyond chance.
    pub fn betters_most(&self, name: &str) -> Option<(&Change, f64)> {
        let by = |effects: &Effects| {
            let on = effects.judged.iter().find(|on| on.figure.name == name)?;
            let is_told = -on.worse_by() >= on.figure.told_from && on.effect.is_clear();
            is_told.then(|| -on.worse_by())
        };
        let tried = self.tried.iter().rev();
        let better = tried.filter_map(|(change, effects)| Some((change, by(effects)?)));
        better.max_by(|a, b| a.1.total_cmp(&b.1))
    }
}

/// How many days there are to try.
pub fn count(case: &Case, changes: &[Change]) -> usize {
    candidates(case, changes).len()
}

/// A change of the usual share, at the hour of the nearest one, on each day that is free for it.
fn candidates(case: &Case, changes: &[Change]) -> Vec<Change> {
    let Some(share) = usual_share(changes) else {
        return Vec::new();
    };
    let away = |day: u32| (case.away.iter()).any(|&(from, last)| (from..=last).contains(&day));
    let missed = |day: u32| case.left_out.iter().any(|&(out, _)| out == day);
    let taken = |day: u32| changes.iter().any(|change| change.day() == day);
    let first = case.input.filled_at / DAY + 1;
    let days =
        (first..=case.input.last_day).filter(|&day| !away(day) && !missed(day) && !taken(day));
    days.filter_map(|day| {
        let nearest = changes.iter().min_by_key(|one| one.day().abs_diff(day))?;
        let time = TimeOfDay::of(nearest.minute);
        Some(Change::on_trial(day * DAY + time.0, share))
    })
    .collect()
}

/// The middle share of a plan, the smaller of two.
pub fn usual_share(changes: &[Change]) -> Option<f64> {
    let mut shares: Vec<f64> = changes.iter().map(|change| change.share).collect();
    shares.sort_by(f64::total_cmp);
    shares.get(shares.len().checked_sub(1)? / 2).copied()
}
