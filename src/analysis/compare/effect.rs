//! What a plan does to a figure, pair by pair: the same member with it and without.

use crate::analysis::ensemble::member::{Member, Told};
use crate::analysis::levers::paired::CLEAR_ERRORS;
use crate::base::moments::Moments;
use crate::base::quantiles::quantiles;
use crate::base::rounding::beyond_rounding;

/// Shares of the pairs between which the bands run, with the middle.
pub const SHARES: [f64; 5] = [0.05, 0.25, 0.5, 0.75, 0.95];

/// Differences of a figure, pair by pair.
///
/// ```text
/// d = with − plan        mean of d ± sd(d)/√pairs        and the 5, 25, 50, 75 and 95 % points of d
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Effect {
    /// Pairs that have the figure both ways.
    pub pairs: usize,
    /// Mean of the differences.
    pub mean: f64,
    /// Its standard error; 0 of fewer than two pairs.
    pub standard_error: f64,
    /// The points of [`SHARES`].
    pub points: [f64; SHARES.len()],
}

impl Effect {
    /// The members of one plan against the same ones of another; none where no pair has the figure.
    pub fn of(
        plan: &[Member],
        with: &[Member],
        figure: impl Fn(&Told) -> Option<f64>,
    ) -> Option<Effect> {
        let of_member = |member: &Member| figure(member.told.as_ref().ok()?);
        let pairs = plan.iter().zip(with);
        let differences =
            pairs.filter_map(|(plan, with)| Some(of_member(with)? - of_member(plan)?));
        Effect::of_differences(differences.collect())
    }
    /// Differences that are known already, one per tank; none where there is no tank.
    pub fn of_differences(mut differences: Vec<f64>) -> Option<Effect> {
        if differences.is_empty() {
            return None;
        }
        let mut moments = Moments::default();
        differences.iter().for_each(|&one| moments.add(one));
        let size = moments.most().abs().max(moments.least().abs());
        let deviation = moments.deviation().unwrap_or(0.0);
        Some(Effect {
            pairs: differences.len(),
            mean: beyond_rounding(moments.mean(), size),
            standard_error: deviation / (differences.len() as f64).sqrt(),
            points: quantiles(&mut differences, &SHARES),
        })
    }
    /// Whether the mean is at least two of its standard errors away from nothing.
    pub fn is_clear(&self) -> bool {
        self.mean.abs() >= CLEAR_ERRORS * self.standard_error
    }
}
