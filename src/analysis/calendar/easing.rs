//! What would have to be asked less of, for a calendar to keep it.

use super::broken::Broken;
use super::score::Score;
use super::wish::Terms;

/// Something asked for that gives way, and a calendar that does with it.
#[derive(Debug, Clone, PartialEq)]
pub struct Eased {
    /// To this, a day or mg N/L.
    pub to: f64,
    /// Changes of the calendar.
    pub visits: usize,
    /// Litres they take.
    pub litres: f64,
}

/// Peaks that must be borne where tanks may be ready on the last day.
#[derive(Debug, Clone, PartialEq)]
pub struct Together {
    /// Total ammonia, mg N/L, where it was asked for.
    pub peak_tan_mg_n_per_l: Option<f64>,
    /// Nitrite, mg N/L, where it was asked for.
    pub peak_nitrite_mg_n_per_l: Option<f64>,
}

/// What would do, each read off members that were run.
#[derive(Debug, Clone, PartialEq)]
pub struct Easing {
    /// What would do if it alone gave way, in the order of [`Broken::ALL`].
    pub alone: [Option<Eased>; 3],
    /// What would do together, where nothing does alone.
    pub together: Option<Together>,
    /// So many of 100 that the nearest calendar keeps.
    pub keep_of_100: usize,
}

impl Easing {
    /// The least that would do, given the scores of some calendars, the nearest first.
    pub fn of(scores: &[Score], terms: &Terms, last_day: u32) -> Easing {
        let alone = Broken::ALL.map(|what| {
            let all = scores.iter();
            let eased = all.filter_map(|score| {
                Some(Eased {
                    to: alone(what, score, terms, last_day)?,
                    visits: score.visits,
                    litres: score.litres,
                })
            });
            eased.min_by(|a, b| a.to.total_cmp(&b.to))
        });
        let both = scores
            .iter()
            .filter_map(|score| together(score, terms, last_day));
        let together = both.min_by(|a, b| highest(a).total_cmp(&highest(b)));
        Easing {
            together: together.filter(|_| alone.iter().all(Option::is_none)),
            alone,
            keep_of_100: scores
                .first()
                .map_or(0, |nearest| nearest.of_100().floor() as usize),
        }
    }
}

/// How far one thing would have to give way alone with a calendar; none where that does not do, or where it is not
/// asked for.
pub fn alone(what: Broken, score: &Score, terms: &Terms, last_day: u32) -> Option<f64> {
    let asked = terms.most_of(what);
    let numbers = score.numbers_of(what);
    let keeps_the_rest = |member: usize| {
        let others = Broken::ALL.into_iter().filter(|&other| other != what);
        others
            .into_iter()
            .all(|other| score.numbers_of(other)[member] <= Some(terms.most_of(other)))
    };
    let kept = numbers
        .iter()
        .enumerate()
        .filter(|&(at, _)| keeps_the_rest(at));
    let mut kept: Vec<f64> = kept.filter_map(|(_, number)| *number).collect();
    kept.sort_by(f64::total_cmp);
    let to = kept.get(needed(score, terms)?).copied();
    let most = match what {
        Broken::Late => f64::from(last_day),
        Broken::Tan | Broken::Nitrite => f64::INFINITY,
    };
    to.filter(|&to| asked.is_finite() && to <= most)
}

/// The peaks that would do with a calendar where tanks may be ready on the last day; none where no peak was asked for,
/// or where too few are ready even then.
pub fn together(score: &Score, terms: &Terms, last_day: u32) -> Option<Together> {
    if !terms.has_peaks() {
        return None;
    }
    let peaks = |at: usize| [Broken::Tan, Broken::Nitrite].map(|what| score.numbers_of(what)[at]);
    // how far a tank passes the peaks that are asked for, as a share of them
    let excess = |[tan, nitrite]: [f64; 2]| {
        (tan / terms.peak_tan_mg_n_per_l).max(nitrite / terms.peak_nitrite_mg_n_per_l)
    };
    let days = score.ready_days.iter().enumerate();
    let ready = days.filter(|(_, day)| **day <= Some(f64::from(last_day)) && day.is_some());
    let mut ready: Vec<[f64; 2]> = ready
        .filter_map(|(at, _)| {
            let [tan, nitrite] = peaks(at);
            Some([tan?, nitrite?])
        })
        .collect();
    ready.sort_by(|a, b| excess(*a).total_cmp(&excess(*b)));
    let most = needed(score, terms)?;
    let kept = ready.get(..=most)?;
    let highest = |at: usize| kept.iter().map(|peaks| peaks[at]).fold(0.0, f64::max);
    let asked = |peak: f64, at: usize| peak.is_finite().then(|| highest(at).max(peak));
    Some(Together {
        peak_tan_mg_n_per_l: asked(terms.peak_tan_mg_n_per_l, 0),
        peak_nitrite_mg_n_per_l: asked(terms.peak_nitrite_mg_n_per_l, 1),
    })
}

/// The higher of the peaks that must be borne.
fn highest(both: &Together) -> f64 {
    let peaks = [both.peak_tan_mg_n_per_l, both.peak_nitrite_mg_n_per_l];
    peaks.into_iter().flatten().fold(0.0, f64::max)
}

/// Place of the last of those that must count, from the least on.
fn needed(score: &Score, terms: &Terms) -> Option<usize> {
    (terms.keep_of_100 * score.members)
        .div_ceil(100)
        .checked_sub(1)
}
