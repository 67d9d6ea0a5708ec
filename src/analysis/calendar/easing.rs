//! What would have to be asked less of, for a calendar to keep it.

use super::score::Score;
use super::wish::Terms;

/// For each thing that is asked for, how far it would have to give way alone; none where that alone does not do, or
/// where it is not asked for. Read off the members of the calendar that comes nearest, so each of these was run.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Easing {
    /// Total ammonia that must be borne, mg N/L.
    pub peak_tan_mg_n_per_l: Option<f64>,
    /// Nitrite that must be borne, mg N/L.
    pub peak_nitrite_mg_n_per_l: Option<f64>,
    /// Day by which they must be ready.
    pub ready_by: Option<u32>,
    /// So many of 100 that may be kept at most.
    pub keep_of_100: usize,
}

impl Easing {
    /// Of the calendar with this score.
    pub fn of(score: &Score, terms: &Terms, last_day: u32) -> Easing {
        let [tan, nitrite] = &score.member_peaks;
        let (most_tan, most_nitrite) = (terms.peak_tan_mg_n_per_l, terms.peak_nitrite_mg_n_per_l);
        let is_in_time = |at: usize| score.ready_days[at] <= Some(f64::from(terms.ready_by));
        let is_under = |peaks: &[Option<f64>], at: usize, most: f64| peaks[at] <= Some(most);
        let asked = |most: f64| most.is_finite().then_some(());
        let least = |values: &[Option<f64>], keeps_the_rest: &dyn Fn(usize) -> bool| {
            let told = values.iter().enumerate();
            let kept = told.filter(|&(at, value)| value.is_some() && keeps_the_rest(at));
            least_that_holds(kept.filter_map(|(_, value)| *value).collect(), terms, score)
        };
        let peak_tan = || {
            least(tan, &|at| {
                is_in_time(at) && is_under(nitrite, at, most_nitrite)
            })
        };
        let peak_nitrite = || least(nitrite, &|at| is_in_time(at) && is_under(tan, at, most_tan));
        let day = least(&score.ready_days, &|at| {
            is_under(tan, at, most_tan) && is_under(nitrite, at, most_nitrite)
        });
        Easing {
            peak_tan_mg_n_per_l: asked(most_tan).and_then(|()| peak_tan()),
            peak_nitrite_mg_n_per_l: asked(most_nitrite).and_then(|()| peak_nitrite()),
            ready_by: day.map(|day| day as u32).filter(|&day| day <= last_day),
            keep_of_100: score.of_100().floor() as usize,
        }
    }
}

/// The least bound under which so many values lie as must; none where there are too few.
fn least_that_holds(mut values: Vec<f64>, terms: &Terms, score: &Score) -> Option<f64> {
    values.sort_by(f64::total_cmp);
    let needed = (terms.keep_of_100 * score.members).div_ceil(100);
    values.get(needed.checked_sub(1)?).copied()
}
