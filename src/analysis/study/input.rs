//! One input of a study: what it is, and the values it takes.

use super::group::Group;
use crate::analysis::uncertain::shape::{BELOW_LOW, Shape};
use crate::base::units::converted::Converted;

/// One input of a study.
#[derive(Debug, Clone, PartialEq)]
pub struct Input {
    /// Id of a parameter, or dotted path in the scenario.
    pub name: String,
    /// What it is.
    pub words: String,
    /// Unit of its values.
    pub unit: String,
    /// What it belongs to.
    pub group: Group,
    /// Where its spread is known from, or `judgement: why`.
    pub source: String,
    /// The values it takes.
    pub spread: Spread,
    /// To the unit in which its range is written, where that is another one than its own.
    pub shown: Option<Converted>,
}

/// The values an input takes.
#[derive(Debug, Clone, PartialEq)]
pub enum Spread {
    /// Spread about a middle.
    Shape(Shape),
    /// Anything between two values, each as likely.
    Even {
        /// The lower end.
        low: f64,
        /// The upper end.
        high: f64,
    },
    /// One of some settings, each as likely, written as in a scenario. Their values are their numbers, from 0.
    Settings(Vec<String>),
}

/// How far an input goes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Reach {
    /// As far as it is spread: the place is a quantile.
    All,
    /// From the 5 % to the 95 % point of what has no ends: for designs that go to both ends.
    Walked,
}

impl Input {
    /// The value at a place between 0 and 1: of settings, its number.
    pub fn at(&self, place: f64) -> f64 {
        self.spread.at(place, Reach::All)
    }

    /// A value as its keeper would say it, in [`Input::shown_unit`].
    pub fn shown(&self, value: f64) -> f64 {
        self.shown.map_or(value, |to| to.of(value))
    }

    /// The unit in which its range is written; its own where there is none.
    pub fn shown_unit(&self) -> &str {
        self.shown.as_ref().map_or(&self.unit, |to| to.symbol())
    }
}

impl Spread {
    /// The value at a place between 0 and 1: of settings, its number.
    ///
    /// ```text
    /// all      quantile(place)        walked   quantile(0.05 + 0.9·place), of what is spread about a middle
    /// even     low + place·(high − low)
    /// settings ⌊place·count⌋, the last one at 1
    /// ```
    pub fn at(&self, place: f64, reach: Reach) -> f64 {
        match self {
            Spread::Shape(shape) => shape.at(match reach {
                Reach::All => place,
                Reach::Walked => BELOW_LOW + (1.0 - 2.0 * BELOW_LOW) * place,
            }),
            Spread::Even { low, high } => low + place * (high - low),
            Spread::Settings(settings) => setting(place, settings.len()) as f64,
        }
    }
}

/// The number of the setting at a place, of so many.
pub(super) fn setting(place: f64, count: usize) -> usize {
    ((place * count as f64) as usize).min(count.saturating_sub(1))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn designs_that_go_to_both_ends_stop_at_the_points_that_are_told() {
        let spread = Spread::Shape(Shape::normal(1.0, 2.0, 4.0));
        let walked = [0.0, 0.5, 1.0].map(|place| spread.at(place, Reach::Walked));
        for (found, expected) in walked.into_iter().zip([1.0, 2.0, 4.0]) {
            // rounding of the quantile
            assert!((found - expected).abs() < 1e-12, "{walked:?}");
        }
        assert_eq!(
            spread.at(0.25, Reach::All),
            Shape::normal(1.0, 2.0, 4.0).at(0.25)
        );
    }

    #[test]
    fn settings_share_the_way_evenly() {
        let spread = Spread::Settings(["a", "b", "c"].map(String::from).to_vec());
        let numbers = [0.0, 0.33, 0.34, 0.99, 1.0].map(|place| spread.at(place, Reach::All));
        assert_eq!(numbers, [0.0, 0.0, 1.0, 2.0, 2.0]);
    }
}
