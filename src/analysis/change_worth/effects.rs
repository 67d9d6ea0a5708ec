//! What an altered plan does to the same tanks: the ready day first, then each figure for itself.

use crate::analysis::compare::effect::Effect;
use crate::analysis::ensemble::member::{Member, Told};
use crate::analysis::figure_list::{Better, FIGURES, FigureOf};
use crate::analysis::levers::paired::Paired;
use crate::base::rounding::beyond_rounding;

/// A plan that delays the ready day by more has lost something, days; the mean of the pairs (a judgement).
pub const MOST_DELAY_DAYS: f64 = 0.5;

/// The figures that stand beside the ready day, each for itself.
pub const JUDGED: [&str; 5] = [
    "tan_peak_mg_n_per_l",
    "nitrite_peak_mg_n_per_l",
    "free_ammonia_over_limit_h",
    "light_with_ammonia_h",
    "kh_low_dkh",
];
/// The first of them, peaks and hours over a limit, must not get worse by more than is told of them.
pub const LIMITING: usize = 3;
/// Nitrate at the end is told and judges nothing: plants may want it.
const NITRATE: &str = "nitrate_end_mg_n_per_l";
/// Water of the changes.
const LITRES: &str = "water_changed_l";
const LIST: &[FigureOf] = &FIGURES;

/// What an altered plan does, tank by tank.
#[derive(Debug, Clone, PartialEq)]
pub struct Effects {
    /// The ready day: days gained.
    pub ready: Paired,
    /// The figures of [`JUDGED`], in that order.
    pub judged: Vec<OnFigure>,
    /// Nitrate at the end, mg N/L.
    pub nitrate_end: Option<OnFigure>,
    /// Water of the changes that is saved, L; mean of the tanks.
    pub litres_saved: f64,
}

/// What happens to one figure.
#[derive(Debug, Clone, PartialEq)]
pub struct OnFigure {
    /// Which.
    pub figure: &'static FigureOf,
    /// Altered plan less plan, tank by tank.
    pub effect: Effect,
}

/// What an altered plan loses.
#[derive(Debug, Clone, Copy)]
pub enum Loss {
    /// The ready day comes later by so many days.
    Later(f64),
    /// A figure gets worse by so much, in its unit.
    Worse(&'static FigureOf, f64),
}

impl Effects {
    /// The plan as written against the same members of an altered one.
    pub fn of(plan: &[Member], altered: &[Member], last_day: u32) -> Effects {
        let on = |name: &str| OnFigure::of(name, plan, altered);
        let mut ready = Paired::of(plan, altered, last_day);
        ready.mean_days = beyond_rounding(ready.mean_days, f64::from(last_day));
        Effects {
            ready,
            judged: JUDGED.iter().filter_map(|name| on(name)).collect(),
            nitrate_end: on(NITRATE),
            litres_saved: on(LITRES).map_or(0.0, |litres| 0.0 - litres.effect.mean),
        }
    }
    /// Days by which the ready day comes later, mean of the pairs; less than nothing where it comes sooner.
    pub fn days_later(&self) -> f64 {
        0.0 - self.ready.mean_days
    }
    /// What happens to a judged figure.
    pub fn on(&self, name: &str) -> Option<&Effect> {
        let mut judged = self.judged.iter();
        Some(&judged.find(|on| on.figure.name == name)?.effect)
    }
    /// What is lost: the ready day before all, else the peak or the hours over a limit that get worse by most of
    /// what is told of them; none where nothing is.
    pub fn loss(&self) -> Option<Loss> {
        if self.days_later() > MOST_DELAY_DAYS {
            return Some(Loss::Later(self.days_later()));
        }
        let over = |on: &&OnFigure| on.worse_by() > on.figure.told_from;
        let times = |on: &OnFigure| on.worse_by() / on.figure.told_from;
        let worst = self.judged.iter().take(LIMITING).filter(over);
        let worst = worst.max_by(|a, b| times(a).total_cmp(&times(b)))?;
        Some(Loss::Worse(worst.figure, worst.worse_by()))
    }
}

impl OnFigure {
    fn of(name: &str, plan: &[Member], altered: &[Member]) -> Option<OnFigure> {
        let figure = figure(name);
        let read = |told: &Told| (figure.read)(&told.figures);
        let effect = Effect::of(plan, altered, read)?;
        Some(OnFigure { figure, effect })
    }
    /// By how much the mean gets worse, in the unit of the figure; less than nothing where it gets better.
    pub fn worse_by(&self) -> f64 {
        match self.figure.better {
            Better::More => 0.0 - self.effect.mean,
            _ => self.effect.mean,
        }
    }
}

/// A figure of the list by its name.
pub fn figure(name: &str) -> &'static FigureOf {
    let found = LIST.iter().find(|figure| figure.name == name);
    found.expect("a figure of the list")
}
