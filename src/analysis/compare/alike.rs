//! Which plans differ in a figure by no more than chance may make of the same tanks.

use crate::analysis::ensemble::member::Told;
use crate::analysis::levers::paired::Paired;

use super::effect::Effect;
use super::strategy::Strategy;

/// Pairs of plans whose difference is within two of its standard errors, the lower place first.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Alike(Vec<(usize, usize)>);

impl Alike {
    /// The given pairs, the lower place first.
    pub fn pairs(pairs: &[(usize, usize)]) -> Alike {
        Alike(pairs.to_vec())
    }
    /// Plans that are alike in a figure of their tanks, pair by pair.
    pub fn of(
        strategies: &[Strategy<'_>],
        figure: impl Fn(&Strategy<'_>, &Told) -> Option<f64>,
    ) -> Alike {
        Alike::where_of(strategies, |one, other| {
            let all = one.members.iter().zip(&other.members);
            let differences = all.filter_map(|(here, there)| {
                let (here, there) = (here.told.as_ref().ok()?, there.told.as_ref().ok()?);
                Some(figure(other, there)? - figure(one, here)?)
            });
            Effect::of_differences(differences.collect()).is_some_and(|effect| !effect.is_clear())
        })
    }
    /// Plans that are alike in the ready day, pair by pair.
    pub fn of_days(strategies: &[Strategy<'_>]) -> Alike {
        Alike::where_of(strategies, |one, other| {
            let last_day = one.case.input.last_day;
            !Paired::of(&one.members, &other.members, last_day).is_clear()
        })
    }
    /// Whether two plans are.
    pub fn are(&self, one: usize, other: usize) -> bool {
        self.0.contains(&(one.min(other), one.max(other)))
    }
    fn where_of(
        strategies: &[Strategy<'_>],
        is_alike: impl Fn(&Strategy<'_>, &Strategy<'_>) -> bool,
    ) -> Alike {
        let places = 0..strategies.len();
        let pairs =
            places.flat_map(|one| (one + 1..strategies.len()).map(move |other| (one, other)));
        Alike(
            pairs
                .filter(|&(one, other)| is_alike(&strategies[one], &strategies[other]))
                .collect(),
        )
    }
}
