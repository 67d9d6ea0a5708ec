//! What a calendar does, and which of two does better.

use std::cmp::Ordering;

use crate::analysis::compare::effect::Effect;
use crate::analysis::ensemble::curve::ReadyCurve;
use crate::analysis::ensemble::member::{Member, Told};
use crate::base::quantiles::quantiles;

use super::broken::Broken;
use super::wish::{Least, Terms};

/// What comes of a calendar on some members.
#[derive(Debug, Clone, PartialEq)]
pub struct Score {
    /// Members that were run; fewer than asked for where a calendar was hopeless after some.
    pub members: usize,
    /// Members in which everything that must hold does.
    pub hold: usize,
    /// Whether everything that must hold does, member by member.
    pub holds: Vec<bool>,
    /// Members that are ready too late, and in which a peak is passed.
    pub late: usize,
    /// Members with too much total ammonia.
    pub tan: usize,
    /// Members with too much nitrite.
    pub nitrite: usize,
    /// When members are ready.
    pub curve: ReadyCurve,
    /// Mean of the ready days, those that are later than the last day counted as the day after it.
    pub mean_ready_day: f64,
    /// The ready day of each member, counted the same way; none of one that failed.
    pub ready_days: Vec<Option<f64>>,
    /// Highest total ammonia and nitrite, mg N/L: 5, 50 and 95 of 100 members stay below.
    pub peaks: [[f64; 3]; 2],
    /// Both peaks of each member; none of one that failed.
    pub member_peaks: [Vec<Option<f64>>; 2],
    /// Tankfuls of water changed.
    pub tankfuls: f64,
    /// Litres changed, mean of the members.
    pub litres: f64,
    /// Changes.
    pub visits: usize,
    /// Whether so many of 100 hold as must.
    pub is_kept: bool,
    /// Whether it was dropped as hopeless after a few members.
    pub is_dropped: bool,
}

/// Shares of the members between which peaks are told.
const TOLD: [f64; 3] = [0.05, 0.5, 0.95];

impl Score {
    /// Scores the members of a calendar.
    pub fn of(
        members: &[Member],
        terms: &Terms,
        last_day: u32,
        (tankfuls, visits): (f64, usize),
    ) -> Score {
        let told: Vec<&Told> = (members.iter())
            .filter_map(|member| member.told.as_ref().ok())
            .collect();
        let count = |is: &dyn Fn(&Told) -> bool| told.iter().filter(|told| is(told)).count();
        let late = |told: &Told| told.ready.day.is_none_or(|day| day > terms.ready_by);
        let tan = |told: &Told| told.figures.tan_peak.value > terms.peak_tan_mg_n_per_l;
        let nitrite = |told: &Told| told.figures.nitrite_peak.value > terms.peak_nitrite_mg_n_per_l;
        let day = |told: &&Told| f64::from(told.ready.day.unwrap_or(last_day + 1));
        let mean = |number: &dyn Fn(&&Told) -> f64| {
            told.iter().map(number).sum::<f64>() / told.len().max(1) as f64
        };
        let peaks = |peak: &dyn Fn(&&Told) -> f64| {
            let mut all: Vec<f64> = told.iter().map(peak).collect();
            quantiles(&mut all, &TOLD)
        };
        let is_held = |told: &Told| !late(told) && !tan(told) && !nitrite(told);
        let tells = |member: &Member| member.told.as_ref().is_ok_and(is_held);
        let holds: Vec<bool> = members.iter().map(tells).collect();
        let hold = count(&is_held);
        Score {
            members: told.len(),
            hold,
            holds,
            late: count(&late),
            tan: count(&tan),
            nitrite: count(&nitrite),
            curve: ReadyCurve::of(members, last_day),
            mean_ready_day: mean(&day),
            ready_days: each(members, &day),
            peaks: [
                peaks(&|told| told.figures.tan_peak.value),
                peaks(&|told| told.figures.nitrite_peak.value),
            ],
            member_peaks: [
                each(members, &|told| told.figures.tan_peak.value),
                each(members, &|told| told.figures.nitrite_peak.value),
            ],
            tankfuls,
            litres: mean(&|told| told.figures.litres_changed),
            visits,
            is_kept: terms.are_kept_in(hold, told.len()),
            is_dropped: false,
        }
    }

    /// Ready days or peaks of each member; none of one that failed.
    pub fn numbers_of(&self, what: Broken) -> &[Option<f64>] {
        match what {
            Broken::Late => &self.ready_days,
            Broken::Tan => &self.member_peaks[0],
            Broken::Nitrite => &self.member_peaks[1],
        }
    }

    /// So many of 100 members hold.
    pub fn of_100(&self) -> f64 {
        100.0 * self.hold as f64 / self.members.max(1) as f64
    }

    /// Standard error of that share.
    ///
    /// ```text
    /// 100 · √(p · (1 − p) / members)        p = hold / members
    /// ```
    pub fn error_of_100(&self) -> f64 {
        let held = self.of_100() / 100.0;
        100.0 * (held * (1.0 - held) / self.members.max(1) as f64).sqrt()
    }

    /// Whether members are ready sooner with this calendar than with another, beyond what chance may make of the
    /// same tanks.
    pub fn is_sooner_than(&self, other: &Score) -> bool {
        is_clearly_less(&self.ready_days, &other.ready_days)
    }

    /// The same on those members alone that the other was run on.
    pub fn is_sooner_than_few(&self, few: &Score) -> bool {
        let own = self.ready_days.get(..few.ready_days.len());
        own.is_some_and(|own| is_clearly_less(own, &few.ready_days))
    }

    /// Whether a peak, the first or the second of [`Score::peaks`], is higher than with another calendar beyond
    /// what chance may make of the same tanks.
    pub fn raises(&self, peak: usize, other: &Score) -> bool {
        is_clearly_less(&other.member_peaks[peak], &self.member_peaks[peak])
    }

    /// Which of two calendars does less harm, whatever it takes: the one in which more tanks hold, then the one that
    /// is ready earlier.
    pub fn harm(&self, other: &Score) -> Ordering {
        let hold = other.of_100().total_cmp(&self.of_100());
        hold.then(self.mean_ready_day.total_cmp(&other.mean_ready_day))
    }

    /// Whether this calendar comes before another: one that keeps what must hold before one that does not;
    /// of two that do, the one with less; of two that do not, the one in which more tanks hold.
    pub fn order(&self, other: &Score, least: Least) -> Ordering {
        let kept = other.is_kept.cmp(&self.is_kept);
        kept.then_with(|| match self.is_kept {
            true => self.less(other, least),
            false => self.harm(other),
        })
    }

    /// Which of two that keep what must hold has less.
    pub fn less(&self, other: &Score, least: Least) -> Ordering {
        let litres = self.tankfuls.total_cmp(&other.tankfuls);
        let visits = self.visits.cmp(&other.visits);
        let days = self.mean_ready_day.total_cmp(&other.mean_ready_day);
        match least {
            Least::Litres => litres.then(visits).then(days),
            Least::Visits => visits.then(litres).then(days),
            Least::ReadyDay => days.then(litres).then(visits),
        }
    }
}

/// A number of each member; none of one that failed.
fn each(members: &[Member], number: &dyn Fn(&&Told) -> f64) -> Vec<Option<f64>> {
    let told = members.iter().map(|member| member.told.as_ref().ok());
    told.map(|told| told.as_ref().map(number)).collect()
}

/// Whether members have less of something than the same members have otherwise, beyond chance.
fn is_clearly_less(own: &[Option<f64>], its: &[Option<f64>]) -> bool {
    let pairs = own.iter().zip(its);
    let less = pairs.filter_map(|(own, its)| Some((*its)? - (*own)?));
    let effect = Effect::of_differences(less.collect());
    effect.is_some_and(|effect| effect.mean > 0.0 && effect.is_clear())
}
