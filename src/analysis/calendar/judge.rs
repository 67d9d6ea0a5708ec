//! Judges calendars on the same members, each calendar once.

use std::collections::BTreeMap;

use crate::analysis::ensemble::EnsembleError;
use crate::analysis::ensemble::member::Member;
use crate::analysis::levers::trials::{Progress, Trials};
use crate::engine::event::EventKind;
use crate::engine::input::ModelInput;

use super::days::Days;
use super::score::Score;
use super::search::{Halt, Judging};
use super::wish::{CalendarWish, Least, Terms, Trying};

/// A calendar that cannot keep what must hold any more after so many members is not looked at further (a
/// judgement, no source: a quarter of the usual members).
const HOPELESS_AFTER: usize = 16;

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
        }
    }

    /// On members behind those of a search.
    pub fn fresh(
        trials: &'a Trials<'a>,
        wish: &'a CalendarWish,
        terms: Terms,
        trying: Trying,
        done: Progress<'p>,
    ) -> Self {
        Judge {
            from: trying.members,
            members: trying.fresh,
            ..Judge::new(trials, wish, terms, trying, done)
        }
    }

    /// Asks for something else from now on.
    pub fn ask(&mut self, terms: Terms) {
        self.terms = terms;
    }

    /// Calendars that were tried.
    pub fn tried(&self) -> usize {
        self.known.len()
    }

    /// Every calendar that was tried, and its score.
    pub fn scores(&self) -> impl Iterator<Item = (&Days, &Score)> {
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

    /// The score of the changes as the file has them.
    ///
    /// # Errors
    /// When somebody wishes to stop, or too many members fail.
    pub fn as_planned(&mut self) -> Result<Score, EnsembleError> {
        let all = self.from..self.from + self.members;
        let members = (self.trials).some(all, |input| input, self.done)?;
        let input = &self.trials.case.input;
        let (tankfuls, visits) = planned(input);
        let last_day = input.last_day;
        Ok(Score::of(
            &members,
            &self.terms,
            last_day,
            (tankfuls, visits),
        ))
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
        let last_day = self.trials.case.input.last_day;
        Score::of(members, &self.terms, last_day, amount)
    }
}

/// Shares and changes of a plan within its judged days.
fn planned(input: &ModelInput) -> (f64, usize) {
    let end = input.end_minute();
    let within = input.events.iter().filter(|event| event.minute < end);
    within.fold((0.0, 0), |(shares, visits), event| match event.kind {
        EventKind::Change { share } => (shares + share, visits + 1),
        _ => (shares, visits),
    })
}

impl Judging for Judge<'_, '_> {
    type Error = EnsembleError;

    fn score(&mut self, days: &Days) -> Result<Score, Halt<EnsembleError>> {
        if let Some(score) = self.known.get(days) {
            return Ok(score.clone());
        }
        if self.left < self.members {
            return Err(Halt::Spent);
        }
        if self.left < self.kept_back + self.members {
            return Err(Halt::PartSpent);
        }
        let few = HOPELESS_AFTER.min(self.members);
        let mut members = self.run(days, 0, few).map_err(Halt::Ended)?;
        let mut score = self.scored(days, &members);
        let at_best = score.hold + self.members - few;
        let is_hopeless = 100 * at_best < self.terms.keep_of_100 * self.members;
        if !is_hopeless && few < self.members {
            members.extend(self.run(days, few, self.members).map_err(Halt::Ended)?);
            score = self.scored(days, &members);
        }
        self.left -= members.len();
        score.is_kept &= !is_hopeless;
        score.is_dropped = is_hopeless && few < self.members;
        self.known.insert(days.clone(), score.clone());
        Ok(score)
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
