//! Judges calendars on the same members, each calendar once.

use std::collections::BTreeMap;
use std::ops::Range;

use crate::analysis::ensemble::EnsembleError;
use crate::analysis::ensemble::member::Member;
use crate::analysis::levers::trials::{Progress, Trials};
use crate::engine::event::EventKind;
use crate::engine::input::ModelInput;

use super::days::Days;
use super::hopeless;
use super::score::Score;
use super::search::{Halt, Judging};
use super::wish::{CalendarWish, Least, Terms, Trying, added_up};

/// A calendar that is hopeless after so many members is not looked at further (a judgement, no source: a quarter of
/// the usual members).
const HOPELESS_AFTER: usize = 16;
/// Calendars whose few members are kept at hand: some more than a calendar of eight weeks has neighbours with one change
/// less or smaller.
const MOST_GLIMPSED: usize = 128;

/// Members of a case, with one calendar or another.
pub struct Judge<'a, 'p> {
    trials: &'a Trials<'a>,
    wish: &'a CalendarWish,
    terms: Terms,
    least: Least,
    /// First of the members, and how many.
    from: usize,
    members: usize,
    /// Runs that are left, and how many of them are kept for later.
    left: usize,
    kept_back: usize,
    done: Progress<'p>,
    known: BTreeMap<Days, Score>,
    /// Members of calendars that only few were run of.
    glimpsed: BTreeMap<Days, Vec<Member>>,
    /// The best that keeps what must hold.
    reference: Option<Score>,
}

impl<'a, 'p> Judge<'a, 'p> {
    /// For a search, which may take so many runs.
    pub fn new(
        trials: &'a Trials<'a>,
        wish: &'a CalendarWish,
        terms: Terms,
        trying: Trying,
        done: Progress<'p>,
    ) -> Self {
        Judge {
            trials,
            wish,
            terms,
            least: trying.least,
            from: 0,
            members: trying.members,
            left: trying.most_runs,
            kept_back: 0,
            done,
            known: BTreeMap::new(),
            glimpsed: BTreeMap::new(),
            reference: None,
        }
    }

    /// On other members than those of a search.
    pub fn on(
        members: Range<usize>,
        trials: &'a Trials<'a>,
        wish: &'a CalendarWish,
        terms: Terms,
        trying: Trying,
        done: Progress<'p>,
    ) -> Self {
        Judge {
            from: members.start,
            members: members.len(),
            ..Judge::new(trials, wish, terms, trying, done)
        }
    }

    /// The same members under another wish.
    pub fn allowing<'b>(&'b mut self, wish: &'b CalendarWish) -> Judge<'b, 'b> {
        Judge {
            trials: self.trials,
            wish,
            done: &mut *self.done,
            known: BTreeMap::new(),
            glimpsed: BTreeMap::new(),
            reference: None,
            ..*self
        }
    }

    /// Asks for something else from now on, and of what is known.
    pub fn ask(&mut self, terms: Terms) {
        self.terms = terms;
        self.reference = None;
        for (days, mut score) in std::mem::take(&mut self.known) {
            score.is_kept = !score.is_dropped && terms.are_kept_by(&score);
            self.remember(&days, score);
        }
    }

    /// What is asked for.
    pub fn terms(&self) -> Terms {
        self.terms
    }

    /// The last day of the plan.
    pub fn last_day(&self) -> u32 {
        self.trials.case.input.last_day
    }

    /// Calendars that were tried.
    pub fn tried(&self) -> usize {
        self.known.len()
    }

    /// Every calendar that was tried, and its score.
    pub fn scores(&self) -> impl Iterator<Item = (&Days, &Score)> + Clone {
        self.known.iter()
    }

    /// The best that was tried.
    pub fn best(&self) -> Option<(Days, Score)> {
        let best = (self.known.iter()).min_by(|(_, a), (_, b)| a.order(b, self.least))?;
        Some((best.0.clone(), best.1.clone()))
    }

    /// The score of a calendar on all members, hopeless or not.
    ///
    /// # Errors
    /// When somebody wishes to stop, or too many members fail.
    pub fn score_of(&mut self, days: &Days) -> Result<Score, EnsembleError> {
        let members = self.run(days, 0, self.members)?;
        Ok(self.scored(days, &members))
    }

    /// The score of members with the changes as the file has them.
    pub fn score_of_planned(&self, members: &[Member]) -> Score {
        let amount = planned(&self.trials.case.input);
        Score::of(members, &self.terms, self.last_day(), amount)
    }

    /// The score of the changes as the file has them.
    ///
    /// # Errors
    /// When somebody wishes to stop, or too many members fail.
    pub fn as_planned(&mut self) -> Result<Score, EnsembleError> {
        let all = self.from..self.from + self.members;
        let members = (self.trials).some(all, |input| input, self.done)?;
        Ok(self.score_of_planned(&members))
    }

    /// Notes a score.
    fn remember(&mut self, days: &Days, score: Score) {
        let is_best = |best: &Score| score.order(best, self.least).is_lt();
        if score.is_kept && self.reference.as_ref().is_none_or(is_best) {
            self.reference = Some(score.clone());
        }
        self.known.insert(days.clone(), score);
    }

    /// Whether there are so many runs left.
    fn may_run(&self, runs: usize) -> Result<(), Halt<EnsembleError>> {
        if self.left < runs {
            return Err(Halt::Spent);
        }
        match self.left < self.kept_back + runs {
            true => Err(Halt::PartSpent),
            false => Ok(()),
        }
    }

    /// Runs some members of a search's own.
    fn take(
        &mut self,
        days: &Days,
        from: usize,
        until: usize,
    ) -> Result<Vec<Member>, Halt<EnsembleError>> {
        let members = self.run(days, from, until).map_err(Halt::Ended)?;
        self.left -= until - from;
        Ok(members)
    }

    /// Whether a calendar is not looked at further, given its first members.
    fn is_hopeless(&self, few: &Score) -> bool {
        let best = self.reference.as_ref();
        let is_later = |best: &Score| best.is_sooner_than_few(few);
        hopeless::falls_short(few, best, &self.terms, self.members)
            || self.least == Least::ReadyDay && best.is_some_and(is_later)
    }

    fn run(
        &mut self,
        days: &Days,
        from: usize,
        until: usize,
    ) -> Result<Vec<Member>, EnsembleError> {
        let wish = self.wish;
        let some = self.from + from..self.from + until;
        (self.trials).some(some, |input| days.put_into(input, wish), self.done)
    }

    fn scored(&self, days: &Days, members: &[Member]) -> Score {
        let amount = (days.tankfuls(self.wish), days.visits());
        let last_day = self.last_day();
        Score::of(members, &self.terms, last_day, amount)
    }
}

/// Shares and changes of a plan within its judged days.
fn planned(input: &ModelInput) -> (f64, usize) {
    let end = input.end_minute();
    let within = input.events.iter().filter(|event| event.minute < end);
    let shares: Vec<f64> = within
        .filter_map(|event| match event.kind {
            EventKind::Change { share } => Some(share),
            _ => None,
        })
        .collect();
    (added_up(shares.iter().copied()), shares.len())
}

impl Judging for Judge<'_, '_> {
    type Error = EnsembleError;

    fn score(&mut self, days: &Days) -> Result<Score, Halt<EnsembleError>> {
        if let Some(score) = self.known.get(days) {
            return Ok(score.clone());
        }
        self.may_run(self.members)?;
        let few = HOPELESS_AFTER.min(self.members);
        let mut members = match self.glimpsed.remove(days) {
            Some(members) => members,
            None => self.take(days, 0, few)?,
        };
        let mut score = self.scored(days, &members);
        score.is_dropped = few < self.members && self.is_hopeless(&score);
        if !score.is_dropped && few < self.members {
            members.extend(self.take(days, few, self.members)?);
            score = self.scored(days, &members);
        }
        score.is_kept &= !score.is_dropped;
        self.remember(days, score.clone());
        Ok(score)
    }

    fn affords(&self) -> usize {
        self.left / self.members
    }

    fn glimpse(&mut self, days: &Days) -> Result<Score, Halt<EnsembleError>> {
        if let Some(score) = self.known.get(days) {
            return Ok(score.clone());
        }
        let few = HOPELESS_AFTER.min(self.members);
        if !self.glimpsed.contains_key(days) {
            self.may_run(few)?;
            let members = self.take(days, 0, few)?;
            if self.glimpsed.len() >= MOST_GLIMPSED {
                self.glimpsed.clear();
            }
            self.glimpsed.insert(days.clone(), members);
        }
        Ok(self.scored(days, &self.glimpsed[days]))
    }

    fn order(&self, a: &Score, b: &Score) -> std::cmp::Ordering {
        a.order(b, self.least)
    }
    fn could_beat(&self, days: &Days, score: &Score) -> bool {
        let tankfuls = days.tankfuls(self.wish);
        match self.least {
            Least::Litres => !score.is_kept || tankfuls <= score.tankfuls,
            Least::Visits => !score.is_kept || days.visits() <= score.visits,
            Least::ReadyDay => true,
        }
    }

    fn take_part(&mut self, of: usize) {
        self.kept_back = self.left - self.left / of;
    }
}
