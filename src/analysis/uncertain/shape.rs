//! How an uncertain value is spread.

use crate::base::{maths, normal};

/// Share of cases below the low point of a spread; as many lie above the high one.
pub const BELOW_LOW: f64 = 0.05;
/// Φ⁻¹(0.95): how many standard deviations the high point lies above the middle.
const HIGH_IN_DEVIATIONS: f64 = 1.644_853_626_951_471_5;

/// How an uncertain value is spread. The bounds cut the far ends off.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shape {
    /// The form.
    pub form: Form,
    /// 5 % point of a normal or log-normal form, lower end of a triangular one.
    pub low: f64,
    /// Median of a normal or log-normal form, mode of a triangular one: the value of the central run.
    pub middle: f64,
    /// 95 % point of a normal or log-normal form, upper end of a triangular one.
    pub high: f64,
    /// What nature or the scenario allows.
    pub bounds: (f64, f64),
}

/// Form of a spread.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Form {
    /// Each half of a log-normal distribution of its own width: for free positive numbers.
    SplitLogNormal,
    /// Each half of a normal distribution of its own width: for numbers whose zero means nothing
    /// (temperatures in °C) and for those that are logarithms already (pK).
    SplitNormal,
    /// Each half of a normal distribution of its own width on the scale of the log of the odds: for shares, which it
    /// leaves between 0 and 1 without cutting anything off.
    SplitLogitNormal,
    /// Between two ends that nature sets.
    Triangular,
}

/// What the numbers of a range are, which says how it is spread.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Measure {
    /// Amounts: twice as much means something.
    Amount,
    /// Shares, which have two ends.
    Share,
    /// Temperatures, logarithms and the like, whose zero means nothing.
    Level,
}

impl Form {
    /// The word printed for it.
    pub fn word(self) -> &'static str {
        match self {
            Form::SplitLogNormal => "log-normal",
            Form::SplitNormal => "normal",
            Form::SplitLogitNormal => "logit-normal",
            Form::Triangular => "triangular",
        }
    }
}

impl Shape {
    /// A split log-normal spread by 5 % point, median and 95 % point, all positive.
    pub fn log_normal(low: f64, median: f64, high: f64) -> Shape {
        Shape::free(Form::SplitLogNormal, low, median, high)
    }
    /// A split normal spread by 5 % point, median and 95 % point.
    pub fn normal(low: f64, median: f64, high: f64) -> Shape {
        Shape::free(Form::SplitNormal, low, median, high)
    }
    /// A split logit-normal spread of a share by 5 % point, median and 95 % point, all between 0 and 1.
    pub fn logit_normal(low: f64, median: f64, high: f64) -> Shape {
        Shape::free(Form::SplitLogitNormal, low, median, high)
    }
    /// A triangular spread between two ends.
    pub fn triangular(low: f64, mode: f64, high: f64) -> Shape {
        Shape::free(Form::Triangular, low, mode, high)
    }
    fn free(form: Form, low: f64, middle: f64, high: f64) -> Shape {
        Shape {
            form,
            low,
            middle,
            high,
            bounds: (f64::NEG_INFINITY, f64::INFINITY),
        }
    }
    /// What `"low..high"` of a scenario means, with its middle.
    ///
    /// ```text
    /// amounts  log-normal about √(low·high)                 levels   normal about (low + high)/2
    /// shares   logit-normal about (low + high)/2
    /// from 0, or of shares up to 1: triangular with that end, its mode at (low + high)/2
    /// ```
    pub fn of_range(low: f64, high: f64, measure: Measure) -> Shape {
        let middle = 0.5 * (low + high);
        match measure {
            Measure::Amount if low > 0.0 => Shape::log_normal(low, (low * high).sqrt(), high),
            Measure::Amount if low == 0.0 => {
                Shape::triangular(0.0, middle, end_beyond(0.0, middle, high))
            }
            Measure::Share => Shape::of_share(low, middle, high),
            Measure::Amount | Measure::Level => Shape::normal(low, middle, high),
        }
    }
    fn of_share(low: f64, middle: f64, high: f64) -> Shape {
        match (low <= 0.0, high >= 1.0) {
            (false, false) => Shape::logit_normal(low, middle, high),
            (true, true) => Shape::triangular(0.0, middle, 1.0),
            (true, false) => Shape::triangular(0.0, middle, end_beyond(0.0, middle, high).min(1.0)),
            (false, true) => Shape::triangular(end_beyond(1.0, middle, low).max(0.0), middle, 1.0),
        }
    }
    /// The same within bounds.
    #[must_use]
    pub fn within(self, bounds: (f64, f64)) -> Shape {
        Shape { bounds, ..self }
    }
    /// The same for a multiple of the value.
    #[must_use]
    pub fn times(self, factor: f64) -> Shape {
        Shape {
            low: factor * self.low,
            middle: factor * self.middle,
            high: factor * self.high,
            ..self
        }
    }
    /// The value below which a share `u` of all cases lies.
    ///
    /// ```text
    /// z = Φ⁻¹(u)/Φ⁻¹(0.95)
    /// log-normal  m·(m/low)^z for z < 0, m·(high/m)^z above      normal  m + z·(m − low), m + z·(high − m)
    /// logit-normal  1/(1 + e^(−y)), y as of a normal one of ln(x/(1 − x))
    /// triangular  low + √(u·(high − low)(m − low)) below the mode, mirrored above
    /// ```
    pub fn at(&self, u: f64) -> f64 {
        let free = match self.form {
            Form::Triangular => self.triangular_at(u),
            Form::SplitLogNormal => self.middle * maths::exp(self.widths_off(u, maths::ln)),
            Form::SplitNormal => self.middle + self.widths_off(u, |x| x),
            Form::SplitLogitNormal => {
                let odds = logit(self.middle) + self.widths_off(u, logit);
                1.0 / (1.0 + maths::exp(-odds))
            }
        };
        free.clamp(self.bounds.0, self.bounds.1)
    }
    /// How far the value lies from the middle on a scale on which each half is normal.
    fn widths_off(&self, u: f64, scale: fn(f64) -> f64) -> f64 {
        let z = normal::quantile(u) / HIGH_IN_DEVIATIONS;
        let end = if z < 0.0 { self.low } else { self.high };
        z.abs() * (scale(end) - scale(self.middle))
    }
    fn triangular_at(&self, u: f64) -> f64 {
        let (below, above) = (self.middle - self.low, self.high - self.middle);
        let width = below + above;
        if u * width < below {
            self.low + (u * width * below).sqrt()
        } else {
            self.high - ((1.0 - u) * width * above).sqrt()
        }
    }
    /// The 5 % and the 95 % point.
    pub fn points(&self) -> (f64, f64) {
        (self.at(BELOW_LOW), self.at(1.0 - BELOW_LOW))
    }
}

/// The log of the odds of a share.
fn logit(share: f64) -> f64 {
    maths::ln(share / (1.0 - share))
}

/// The far end of a triangular spread that begins at one end, so that of 100 cases 5 lie beyond a point.
///
/// ```text
/// (e − p)² = 0.05·(e − end)(e − mode), solved for e beyond p, with lengths from the end
/// 0.95·e² − (2·p − 0.05·mode)·e + p² = 0
/// ```
fn end_beyond(end: f64, mode: f64, point: f64) -> f64 {
    let (to_mode, to_point) = ((mode - end).abs(), (point - end).abs());
    let (a, b) = (1.0 - BELOW_LOW, 2.0 * to_point - BELOW_LOW * to_mode);
    let length = (b + (b * b - 4.0 * a * to_point * to_point).sqrt()) / (2.0 * a);
    end + length.copysign(point - end)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Rounding of a logarithm and an exponential.
    fn near(found: f64, expected: f64) {
        assert!(
            (found - expected).abs() <= 1e-13 * expected.abs(),
            "{found} {expected}"
        );
    }

    #[test]
    fn the_high_point_lies_where_the_normal_distribution_has_it() {
        near(normal::quantile(1.0 - BELOW_LOW), HIGH_IN_DEVIATIONS);
    }

    #[test]
    fn free_spreads_have_the_points_they_are_made_of() {
        for shape in [
            Shape::log_normal(40.0, 90.0, 250.0),
            Shape::normal(5.8, 6.3, 6.8),
        ] {
            near(shape.at(0.05), shape.low);
            near(shape.at(0.5), shape.middle);
            near(shape.at(0.95), shape.high);
        }
    }

    #[test]
    fn a_triangle_has_the_quantiles_of_its_area() {
        // by hand: on [0, 1] with the mode at 1 the area below x is x²; at 0 it is 1 − (1 − x)²
        let (up, down) = (
            Shape::triangular(0.0, 1.0, 1.0),
            Shape::triangular(0.0, 0.0, 1.0),
        );
        near(up.at(0.25), 0.5);
        near(down.at(0.75), 0.5);
        near(Shape::triangular(2.0, 3.0, 4.0).at(0.5), 3.0);
        near(Shape::triangular(2.0, 3.0, 4.0).at(0.02), 2.2);
        assert_eq!((up.at(0.0), up.at(1.0)), (0.0, 1.0));
    }

    #[test]
    fn ranges_of_amounts_are_log_normal_about_their_geometric_middle_and_of_levels_normal() {
        near(Shape::of_range(2.0, 8.0, Measure::Amount).at(0.5), 4.0);
        near(Shape::of_range(18.0, 22.0, Measure::Level).at(0.5), 20.0);
    }

    #[test]
    fn a_range_of_a_share_has_its_points_and_never_meets_its_ends() {
        let shape = Shape::of_range(0.1, 0.6, Measure::Share);
        for (place, point) in [(0.05, 0.1), (0.5, 0.35), (0.95, 0.6)] {
            near(shape.at(place), point);
        }
        let tails = [1e-6, 1.0 - 1e-6].map(|place| shape.at(place));
        assert!(tails[0] > 0.001 && tails[1] < 0.999, "{tails:?}");
    }

    #[test]
    fn a_range_that_begins_at_an_end_keeps_it_without_cutting_anything_off() {
        // nothing at 0, and of 100 cases 5 above the upper end
        for (measure, high) in [(Measure::Amount, 9.0), (Measure::Share, 0.2)] {
            let shape = Shape::of_range(0.0, high, measure);
            assert_eq!((shape.form, shape.at(0.0)), (Form::Triangular, 0.0));
            assert!(shape.at(0.001) > 0.0);
            near(shape.at(0.95), high);
        }
        let nearly_all = Shape::of_range(0.8, 1.0, Measure::Share);
        assert_eq!(nearly_all.at(1.0), 1.0);
        near(nearly_all.at(0.05), 0.8);
        let any = Shape::of_range(0.0, 1.0, Measure::Share);
        assert_eq!((any.at(0.0), any.at(0.5), any.at(1.0)), (0.0, 0.5, 1.0));
    }
}
