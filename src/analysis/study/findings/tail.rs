//! How much of a milestone's variance a few runs carry. Shares of such a variance, and means of such effects, hang on
//! which few runs were met, and grow sure only after very many.

/// One of so many runs is looked at.
const ONE_OF: usize = 100;
/// From this share of the variance on, those few carry it (judgement: of a normal distribution they bring 0.08 of it,
/// of an exponential one 0.22).
const HEAVY: f64 = 0.5;

/// What the runs that lie farthest from the mean, one of 100, bring to the variance.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tail {
    /// How many they are.
    pub runs: usize,
    /// Of how many.
    pub of: usize,
    /// Their share of the variance.
    pub share: f64,
}

impl Tail {
    /// The tail of some outputs; none of fewer than a hundred, nor where they are all the same.
    ///
    /// ```text
    /// share = Σ (y − mean)² of the farthest / Σ (y − mean)² of all
    /// ```
    pub fn of(outputs: &[f64]) -> Option<Tail> {
        let (of, runs) = (outputs.len(), outputs.len() / ONE_OF);
        let mean = outputs.iter().sum::<f64>() / of as f64;
        let mut squares: Vec<f64> = outputs.iter().map(|y| (y - mean) * (y - mean)).collect();
        squares.sort_unstable_by(|a, b| b.total_cmp(a));
        let all: f64 = squares.iter().sum();
        let share = squares.iter().take(runs).sum::<f64>() / all;
        (runs > 0 && all > 0.0).then_some(Tail { runs, of, share })
    }

    /// Whether these few carry the variance.
    pub fn is_heavy(&self) -> bool {
        self.share > HEAVY
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::base::maths::ln;

    /// Quantiles of a distribution, evenly spaced.
    fn spaced(quantile: impl Fn(f64) -> f64) -> Vec<f64> {
        (0..100_000)
            .map(|at| quantile((f64::from(at) + 0.5) / 100_000.0))
            .collect()
    }

    #[test]
    fn the_few_bring_what_the_distribution_says() {
        let exponential = spaced(|place| -ln(1.0 - place));
        // ∫ (x − 1)² e⁻ˣ dx from ln 100 on = 0.01·(3.6052² + 2·3.6052 + 2); the last quantile is cut, so a little less
        let found = Tail::of(&exponential).unwrap();
        assert!((found.share - 0.222).abs() < 0.001, "{found:?}");
        assert!(!found.is_heavy());
        // of even ones (0.5³ − 0.495³)/0.5³
        let found = Tail::of(&spaced(|place| place)).unwrap();
        assert!((found.share - 0.0297).abs() < 1e-4, "{found:?}");
    }

    #[test]
    fn one_run_in_a_hundred_may_carry_all() {
        let mut outputs = vec![1.0; 100];
        assert_eq!(Tail::of(&outputs), None, "they are all the same");
        outputs[7] = 3.0;
        let found = Tail::of(&outputs).unwrap();
        // mean 1.02: 1.98² of 1.98² + 99·0.02²
        assert!((found.share - 0.99).abs() < 1e-12, "{found:?}");
        assert!(found.is_heavy() && (found.runs, found.of) == (1, 100));
        assert_eq!(Tail::of(&outputs[..99]), None, "too few to tell");
    }
}
