//! What is true of how many members, told of 100.

use crate::analysis::ensemble::bands::Band;
use crate::analysis::ensemble::member::Told;
use crate::analysis::forecast::Forecast;
use crate::base::quantiles::quantiles;

/// So many of so many members.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Share {
    /// Members of which something is true.
    pub count: usize,
    /// All members that ran.
    pub members: usize,
}

impl Share {
    /// Rounded to 100; a few are never none, and all but a few never all.
    pub fn of_100(self) -> usize {
        match self.count {
            0 => 0,
            all if all >= self.members => 100,
            some => {
                let exact = 100.0 * some as f64 / self.members as f64;
                (exact.round() as usize).clamp(1, 99)
            }
        }
    }
    /// Rounded down: 49.6 of 100 are not called half. A few are never none.
    pub fn reached(self) -> usize {
        match self.count {
            0 => 0,
            some => (100 * some / self.members).max(1),
        }
    }
    /// `80 of 100`, `none of 100` or `all of 100`.
    pub fn words(self) -> String {
        of_100_in_words(self.of_100())
    }
    /// The same rounded down.
    pub fn reached_words(self) -> String {
        of_100_in_words(self.reached())
    }
}

fn of_100_in_words(of_100: usize) -> String {
    match of_100 {
        0 => "none of 100".to_string(),
        100 => "all of 100".to_string(),
        some => format!("{some} of 100"),
    }
}

/// What the members tell that ran to their end.
pub fn told(forecast: &Forecast) -> impl Iterator<Item = &Told> {
    let members = forecast.ensemble.members.iter();
    members.filter_map(|member| member.told.as_ref().ok())
}

/// Of how many members something is true.
pub fn share(forecast: &Forecast, holds: impl Fn(&Told) -> bool) -> Share {
    Share {
        count: told(forecast).filter(|told| holds(told)).count(),
        members: told(forecast).count(),
    }
}

/// Between which values the middle half of all members lies; none without members.
pub fn middle_half(forecast: &Forecast, value: impl Fn(&Told) -> f64) -> Option<[f64; 2]> {
    let mut values: Vec<f64> = told(forecast).map(value).collect();
    (!values.is_empty()).then(|| quantiles(&mut values, &[0.25, 0.75]))
}

/// How many of 100 lie under a bound, as closely as a band can tell.
pub fn how_many_under(band: &Band, bound: f64) -> &'static str {
    let points = band.iter().filter(|point| f64::from(**point) < bound);
    [
        "fewer than 5",
        "5 to 25",
        "25 to 50",
        "50 to 75",
        "75 to 95",
        "more than 95",
    ][points.count()]
}

/// So many squares shared out over counts, by largest remainder; the first of equals gets more.
pub fn shared_out(counts: &[usize], squares: usize) -> Vec<usize> {
    let all: usize = counts.iter().sum();
    if all == 0 {
        return vec![0; counts.len()];
    }
    let mut shares: Vec<usize> = counts.iter().map(|count| count * squares / all).collect();
    let mut order: Vec<usize> = (0..counts.len()).collect();
    order.sort_by_key(|&n| std::cmp::Reverse(counts[n] * squares % all));
    let missing = squares - shares.iter().sum::<usize>();
    for &n in order.iter().take(missing) {
        shares[n] += 1;
    }
    shares
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_few_are_never_told_as_none_and_nearly_all_never_as_all() {
        let words = |count| {
            Share {
                count,
                members: 256,
            }
            .words()
        };
        assert_eq!(
            [0, 1, 128].map(words),
            ["none of 100", "1 of 100", "50 of 100"]
        );
        assert_eq!([255, 256].map(words), ["99 of 100", "all of 100"]);
        let reached = |count| {
            Share {
                count,
                members: 256,
            }
            .reached()
        };
        assert_eq!(
            [0, 1, 127, 128, 255, 256].map(reached),
            [0, 1, 49, 50, 99, 100]
        );
    }

    #[test]
    fn a_band_tells_between_which_of_its_points_a_bound_lies() {
        let band = [1.0, 2.0, 3.0, 4.0, 5.0];
        let told = [0.5, 1.5, 4.5, 9.0].map(|bound| how_many_under(&band, bound));
        assert_eq!(
            told,
            ["fewer than 5", "5 to 25", "75 to 95", "more than 95"]
        );
    }

    #[test]
    fn squares_are_shared_out_by_the_largest_remainder() {
        // exact shares 57.1, 28.6 and 14.3 of 100
        assert_eq!(shared_out(&[4, 2, 1], 100), [57, 29, 14]);
        assert_eq!(shared_out(&[1, 1, 1], 100), [34, 33, 33]);
        assert_eq!(shared_out(&[0, 0], 80), [0, 0]);
    }
}
