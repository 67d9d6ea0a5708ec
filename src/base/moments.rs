//! Streaming statistics: mean, spread and extremes of numbers that come one by one and are not kept.

/// Mean, spread and extremes of numbers (Welford 1962, Technometrics 4: 419, from memory).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Moments {
    count: u64,
    mean: f64,
    squares: f64,
    least: f64,
    most: f64,
}

impl Default for Moments {
    fn default() -> Self {
        Moments {
            count: 0,
            mean: 0.0,
            squares: 0.0,
            least: f64::INFINITY,
            most: f64::NEG_INFINITY,
        }
    }
}

impl Moments {
    /// Takes a number in.
    pub fn add(&mut self, number: f64) {
        self.count += 1;
        let from_mean = number - self.mean;
        self.mean += from_mean / self.count as f64;
        self.squares += from_mean * (number - self.mean);
        self.least = self.least.min(number);
        self.most = self.most.max(number);
    }
    /// How many there were.
    pub fn count(&self) -> u64 {
        self.count
    }
    /// Their mean; 0 of none.
    pub fn mean(&self) -> f64 {
        self.mean
    }
    /// Their standard deviation, as of a sample; none of fewer than two.
    pub fn deviation(&self) -> Option<f64> {
        (self.count > 1).then(|| (self.squares / (self.count - 1) as f64).sqrt())
    }
    /// The least; infinity of none.
    pub fn least(&self) -> f64 {
        self.least
    }
    /// The most; minus infinity of none.
    pub fn most(&self) -> f64 {
        self.most
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_handful_of_numbers_far_from_zero_keeps_its_spread() {
        let mut moments = Moments::default();
        for number in [4.0, 7.0, 13.0, 16.0] {
            moments.add(1e9 + number);
        }
        assert_eq!(moments.count(), 4);
        assert_eq!(moments.mean(), 1e9 + 10.0);
        // (36 + 9 + 9 + 36)/3
        assert!((moments.deviation().unwrap() - 30.0_f64.sqrt()).abs() < 1e-6);
        assert_eq!((moments.least(), moments.most()), (1e9 + 4.0, 1e9 + 16.0));
        assert_eq!(Moments::default().deviation(), None);
    }
}
