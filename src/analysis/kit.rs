//! The cards of a drop-test kit: which step a water would be read as.

use crate::base::units::everyday::{AMMONIA, NITRITE};

/// Steps of the usual cards, mg/L of the ion (common practice, no source).
pub const USUAL_STEPS: [f64; 8] = [0.0, 0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0];

/// The steps of one card.
#[derive(Debug, Clone, PartialEq)]
pub struct Card {
    /// The unit printed on it.
    pub unit: String,
    /// Rising steps: as printed, and in mg N/L.
    pub steps: Vec<Step>,
}

/// One step of a card.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Step {
    /// As printed, in the unit of the card.
    pub printed: f64,
    /// mg N/L.
    pub mg_n_per_l: f64,
}

/// The cards of a kit.
#[derive(Debug, Clone, PartialEq)]
pub struct TestKit {
    /// Total ammonia.
    pub ammonia: Card,
    /// Nitrite.
    pub nitrite: Card,
}

impl Card {
    /// The step nearest to a water; half way between two it is the higher, to be cautious.
    ///
    /// # Panics
    /// When the card has no steps.
    pub fn read(&self, mg_n_per_l: f64) -> Step {
        let apart = |step: &Step| (step.mg_n_per_l - mg_n_per_l).abs();
        let nearest = self.steps.iter().copied();
        nearest
            .reduce(|best, next| {
                if apart(&next) <= apart(&best) {
                    next
                } else {
                    best
                }
            })
            .expect("a card has steps")
    }
}

impl Default for TestKit {
    fn default() -> Self {
        let card = |kind: &crate::base::units::Kind, unit: &str| Card {
            unit: unit.into(),
            steps: USUAL_STEPS
                .map(|printed| Step {
                    printed,
                    mg_n_per_l: kind.unit(unit).map_or(printed, |u| u.to_base(printed)),
                })
                .to_vec(),
        };
        TestKit {
            ammonia: card(&AMMONIA, "mg NH4/L"),
            nitrite: card(&NITRITE, "mg NO2/L"),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_water_reads_as_the_nearest_step_and_half_way_as_the_higher() {
        let kit = TestKit::default();
        // 1 mg N/L is 1.288 mg NH4/L, nearer to 1 than to 2
        assert_eq!(kit.ammonia.read(1.0).printed, 1.0);
        // 1.2 mg N/L is 1.545 mg NH4/L
        assert_eq!(kit.ammonia.read(1.2).printed, 2.0);
        assert_eq!(kit.nitrite.read(0.0).printed, 0.0);
        assert_eq!(kit.nitrite.read(1e3).printed, 10.0);
        let plain = Card {
            unit: String::new(),
            steps: [0.0, 1.0]
                .map(|n| Step {
                    printed: n,
                    mg_n_per_l: n,
                })
                .to_vec(),
        };
        assert_eq!(
            (plain.read(0.5).printed, plain.read(0.49).printed),
            (1.0, 0.0)
        );
    }
}
