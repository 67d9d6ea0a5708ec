//! What a calendar may be, and what it must keep.

use std::ops::Range;

use crate::analysis::ensemble::curve::ReadyCurve;
use crate::analysis::ensemble::member::Member;
use crate::engine::event::EventKind;
use crate::engine::input::ModelInput;

use super::broken::Broken;
use super::score::Score;

/// What `[calendar]` allows and asks for.
#[derive(Debug, Clone, PartialEq)]
pub struct CalendarWish {
    /// Days of the run on which water may be changed, in order.
    pub free_days: Vec<u32>,
    /// Time of day of a change, minutes.
    pub minute: u32,
    /// Shares of the water that may be changed at once, the least first.
    pub shares: Vec<f64>,
    /// So many of 100 plausible tanks must keep the limits; none where the file's own changes say.
    pub keep_of_100: Option<usize>,
    /// Last day by which a tank must be ready; none where the file's own changes say.
    pub ready_by: Option<u32>,
    /// Highest total ammonia, mg N/L, if it matters.
    pub peak_tan_mg_n_per_l: Option<f64>,
    /// Highest nitrite, mg N/L, if it matters.
    pub peak_nitrite_mg_n_per_l: Option<f64>,
}

/// Two shares are the same when they are closer than this: a quarter, and 25 % as it was read.
const SAME_SHARE: f64 = 1e-9;

/// Whether two shares of the water are the same.
pub fn is_same_share(one: f64, other: f64) -> bool {
    (one - other).abs() < SAME_SHARE
}

/// The sum of some shares, to the same digit whichever comes first: a sixth, a third and a half are as much as two halves.
pub fn added_up(shares: impl Iterator<Item = f64>) -> f64 {
    let sum = shares.fold(0.0, |sum, share| sum + share);
    (sum / SAME_SHARE).round() * SAME_SHARE
}

impl CalendarWish {
    /// The same with the shares of a plan's own changes among those a search may use, where they are allowed.
    #[must_use]
    pub fn with_shares_of(mut self, input: &ModelInput) -> CalendarWish {
        let most = self.shares.last().copied().unwrap_or(0.0);
        for event in &input.events {
            let EventKind::Change { share } = event.kind else {
                continue;
            };
            let mut own = self.shares.iter();
            let is_known = own.any(|&own| is_same_share(own, share));
            if share > 0.0 && share <= most && !is_known {
                self.shares.push(share);
            }
        }
        self.shares.sort_by(f64::total_cmp);
        self
    }
}

/// What a calendar should have least of.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Least {
    /// Litres changed.
    Litres,
    /// Changes.
    Visits,
    /// Days until ready, on the mean of all tanks.
    ReadyDay,
}

/// How calendars are to be tried.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Trying {
    /// What there should be least of.
    pub least: Least,
    /// Members that the search looks at.
    pub members: usize,
    /// Members that neither a search nor a choice has seen, on which choices are scored; twice as many others are those
    /// on which they are made.
    pub fresh: usize,
    /// Where chance begins.
    pub seed: u64,
    /// The search ends after so many runs of members.
    pub most_runs: usize,
}

/// Members that a search looks at when nothing else is said.
pub const USUAL_MEMBERS: usize = 64;
/// Members on which choices are scored.
pub const FRESH_MEMBERS: usize = 256;
/// Choices are made on so many times the members on which they are scored: the best of a dozen owes something to those,
/// too, and the more they are the less (a judgement, no source).
pub const CHOOSING: usize = 2;
/// Runs after which a search ends: half a minute to a minute on two cores.
pub const MOST_RUNS: usize = 48_000;

impl Trying {
    /// Members on which choices are made.
    pub fn choosing(&self) -> Range<usize> {
        self.members..self.members + CHOOSING * self.fresh
    }

    /// Members whose scores are shown.
    pub fn shown(&self) -> Range<usize> {
        let from = self.choosing().end;
        from..from + self.fresh
    }
}

impl Default for Trying {
    fn default() -> Self {
        Trying {
            least: Least::Litres,
            members: USUAL_MEMBERS,
            fresh: FRESH_MEMBERS,
            seed: crate::analysis::forecast::USUAL_SEED,
            most_runs: MOST_RUNS,
        }
    }
}

/// What must hold for a tank to count.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Terms {
    /// So many of 100 tanks must count.
    pub keep_of_100: usize,
    /// Whether that is what the file's own changes keep, fewer than usual.
    pub keep_is_own: bool,
    /// Ready by this day.
    pub ready_by: u32,
    /// Whether that day is the file's own, and not asked for.
    pub ready_by_is_own: bool,
    /// Total ammonia never above this, mg N/L.
    pub peak_tan_mg_n_per_l: f64,
    /// Nitrite never above this, mg N/L.
    pub peak_nitrite_mg_n_per_l: f64,
}

/// So many of 100 must count when nothing else is said.
pub const USUAL_KEEP: usize = 90;

impl Terms {
    /// What a wish means for a tank, given members with the changes of the file. Without a day of its own, tanks must be
    /// ready by the day on which so many of 100 are with these changes, or by the last day if they never are. Without a
    /// number of its own, [`USUAL_KEEP`] of 100 must count, or as many as with these changes where those are fewer, but
    /// for none: that is nothing to keep.
    pub fn of(wish: &CalendarWish, planned: &[Member], last_day: u32) -> Terms {
        let keep_of_100 = wish.keep_of_100.unwrap_or(USUAL_KEEP);
        let own = ReadyCurve::of(planned, last_day).day_of(keep_of_100);
        let mut terms = Terms {
            keep_of_100,
            keep_is_own: false,
            ready_by: wish.ready_by.or(own).unwrap_or(last_day),
            ready_by_is_own: wish.ready_by.is_none(),
            peak_tan_mg_n_per_l: wish.peak_tan_mg_n_per_l.unwrap_or(f64::INFINITY),
            peak_nitrite_mg_n_per_l: wish.peak_nitrite_mg_n_per_l.unwrap_or(f64::INFINITY),
        };
        let kept = Score::of(planned, &terms, last_day, (0.0, 0)).of_100() as usize;
        if wish.keep_of_100.is_none() && (1..keep_of_100).contains(&kept) {
            (terms.keep_of_100, terms.keep_is_own) = (kept, true);
        }
        terms
    }

    /// The most of something that is borne: a day, or mg N/L.
    pub fn most_of(&self, what: Broken) -> f64 {
        match what {
            Broken::Late => f64::from(self.ready_by),
            Broken::Tan => self.peak_tan_mg_n_per_l,
            Broken::Nitrite => self.peak_nitrite_mg_n_per_l,
        }
    }

    /// Whether a peak must be kept.
    pub fn has_peaks(&self) -> bool {
        self.peak_tan_mg_n_per_l.is_finite() || self.peak_nitrite_mg_n_per_l.is_finite()
    }

    /// Whether so many of the members are enough.
    pub fn are_kept_in(&self, hold: usize, members: usize) -> bool {
        100 * hold >= self.keep_of_100 * members
    }

    /// Whether a calendar with that score keeps what must hold.
    pub fn are_kept_by(&self, score: &Score) -> bool {
        self.are_kept_in(score.hold, score.members)
    }

    /// The same with more that must count, by the standard error of a share of so many members: the best of
    /// hundreds of calendars owes some of its tanks to chance, and would fall short on others. Where even much water
    /// keeps hardly more (`most_of_100`), half of the way there, since a search that nothing satisfies saves nothing.
    ///
    /// ```text
    /// margin = min(100 · √(p · (1 − p) / members), (most − keep)/2)        p = keep_of_100 / 100
    /// ```
    #[must_use]
    pub fn with_a_margin(self, members: usize, most_of_100: f64) -> Terms {
        let keep = self.keep_of_100 as f64;
        let kept = keep / 100.0;
        let error = 100.0 * (kept * (1.0 - kept) / members.max(1) as f64).sqrt();
        let half_way = ((most_of_100 - keep) / 2.0).max(0.0).floor();
        let margin = error.round().min(half_way);
        Terms {
            keep_of_100: (self.keep_of_100 + margin as usize).min(100),
            ..self
        }
    }

    /// The same on other members. Where the file's own changes say what must hold, as many more or fewer must count as
    /// hold there with them: some lot of tanks is easier than another.
    #[must_use]
    pub fn as_on(self, here: &Score, shown: &Score) -> Terms {
        if !self.keep_is_own && !self.ready_by_is_own {
            return self;
        }
        let keep = self.keep_of_100 as f64 + here.of_100() - shown.of_100();
        Terms {
            keep_of_100: keep.floor().clamp(0.0, 100.0) as usize,
            ..self
        }
    }

    /// Whether a calendar with that score keeps what must hold, or falls short by no more than the standard error of a
    /// share of so many members.
    pub fn may_be_kept_by(&self, score: &Score) -> bool {
        self.keep_of_100 as f64 - score.of_100() <= score.error_of_100()
    }
}
