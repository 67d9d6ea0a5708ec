//! Which changes may go: dropped one after the other, each time run again together with those dropped before.

use crate::analysis::ensemble::EnsembleError;
use crate::analysis::levers::lever::Lever;

use super::effects::{Effects, Loss};
use super::planned::{Change, without};
use super::rounds::Rounds;

/// In which order changes may go, and where to stop.
#[derive(Debug, Clone)]
pub struct DropList {
    /// What was tried, in order: those that lose nothing alone, the one that delays the ready day least first.
    pub tried: Vec<Tried>,
    /// Those that lose something even alone, the one that delays the ready day least first.
    pub kept_alone: Vec<(usize, Loss)>,
}

/// One change left out together with all that were dropped before it.
#[derive(Debug, Clone)]
pub struct Tried {
    /// Which change, by its place in the plan.
    pub change: usize,
    /// What all of them together do.
    pub together: Effects,
    /// What would be lost; none where nothing is, and it goes.
    pub loss: Option<Loss>,
}

impl DropList {
    /// Drops what may go.
    ///
    /// # Errors
    /// When somebody wishes to stop, or too many members fail.
    pub fn of(
        rounds: &mut Rounds<'_, '_>,
        changes: &[Change],
        alone: &[Effects],
    ) -> Result<DropList, EnsembleError> {
        let mut order: Vec<usize> = (0..changes.len()).collect();
        order.sort_by(|&a, &b| alone[a].days_later().total_cmp(&alone[b].days_later()));
        let (harmless, kept): (Vec<usize>, Vec<usize>) = order
            .into_iter()
            .partition(|&change| alone[change].loss().is_none());
        rounds.expect(harmless.len().saturating_sub(1) * rounds.common.members);
        let (mut dropped, mut tried) = (Vec::new(), Vec::new());
        for change in harmless {
            dropped.push(change);
            let together = match dropped.as_slice() {
                // it has been tried alone
                [only] => alone[*only].clone(),
                several => rounds.effect(all_out(changes, several))?,
            };
            let loss = together.loss();
            if loss.is_some() {
                dropped.pop();
            }
            tried.push(Tried {
                change,
                together,
                loss,
            });
        }
        let kept = kept.into_iter();
        let kept_alone = kept.filter_map(|change| Some((change, alone[change].loss()?)));
        Ok(DropList {
            tried,
            kept_alone: kept_alone.collect(),
        })
    }
    /// Those that go, in order.
    pub fn dropped(&self) -> impl DoubleEndedIterator<Item = &Tried> {
        self.tried.iter().filter(|tried| tried.loss.is_none())
    }
    /// The plan without all that go; none where none does.
    pub fn last(&self) -> Option<&Tried> {
        self.dropped().next_back()
    }
    /// Whether a change goes.
    pub fn drops(&self, change: usize) -> bool {
        self.dropped().any(|tried| tried.change == change)
    }
    /// All changes: those that go, then those that are missed together with them, then those missed alone.
    pub fn order(&self) -> Vec<usize> {
        let goes = self.dropped().map(|tried| tried.change);
        let stays = self.tried.iter().filter(|tried| tried.loss.is_some());
        let alone = self.kept_alone.iter().map(|(change, _)| *change);
        goes.chain(stays.map(|tried| tried.change))
            .chain(alone)
            .collect()
    }
}

/// The plan without some changes.
pub fn all_out(changes: &[Change], out: &[usize]) -> Lever {
    let out: Vec<&Change> = out.iter().map(|&change| &changes[change]).collect();
    without(&out)
}
