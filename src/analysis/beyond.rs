//! How long something lies under a bound: between two readings it moves straight.

use crate::base::real::Real;
use crate::engine::result::Reading;

/// Minutes in an hour.
const HOUR: f64 = 60.0;

/// Where a curve lies under a bound, gathered point by point.
#[derive(Debug, Clone, Default)]
pub struct Under {
    stretches: Vec<(f64, f64)>,
}

impl Under {
    /// Sees the curve go straight from one point to the next.
    pub fn see(&mut self, (x0, y0): (f64, f64), (x1, y1): (f64, f64), bound: f64) {
        if x1 <= x0 || (y0 >= bound && y1 >= bound) {
            return;
        }
        let crossing = x0 + (bound - y0) / (y1 - y0) * (x1 - x0);
        let from = if y0 < bound { x0 } else { crossing };
        let until = if y1 < bound { x1 } else { crossing };
        match self.stretches.last_mut() {
            Some(last) if (last.1 - from).abs() < 1e-9 => last.1 = until,
            _ => self.stretches.push((from, until)),
        }
    }
}

/// Hours under a bound of a curve in each of several tanks, gathered reading by reading.
#[derive(Debug, Clone)]
pub struct HoursUnder<R> {
    bound: f64,
    last: Option<(f64, R)>,
    lanes: Vec<Under>,
}

impl<R: Real> HoursUnder<R> {
    /// Under this bound.
    pub fn of(bound: f64) -> Self {
        HoursUnder {
            bound,
            last: None,
            lanes: vec![Under::default(); R::LANES],
        }
    }
    /// Sees the curve at a minute.
    #[inline(always)]
    pub fn see(&mut self, minute: u32, value: R) {
        let hours = f64::from(minute) / HOUR;
        if let Some((before, was)) = self.last {
            let lower = was.least(value);
            if R::any(lower.below(R::of(self.bound))) {
                self.gather((before, was), (hours, value));
            }
        }
        self.last = Some((hours, value));
    }
    #[cold]
    fn gather(&mut self, (before, was): (f64, R), (hours, value): (f64, R)) {
        for (lane, under) in self.lanes.iter_mut().enumerate() {
            let now = (hours, value.lane(lane));
            under.see((before, was.lane(lane)), now, self.bound);
        }
    }
    /// Hours so far in one lane.
    pub fn lane(&self, lane: usize) -> f64 {
        together(&self.lanes[lane].stretches)
    }
}

/// Where a curve lies under a bound: from and until, in the unit of its first numbers.
pub fn under(points: &[(f64, f64)], bound: f64) -> Vec<(f64, f64)> {
    let mut found = Under::default();
    for two in points.windows(2) {
        found.see(two[0], two[1], bound);
    }
    found.stretches
}

/// When readings lie under a bound, hours since midnight of day 0.
pub fn hours_under(
    readings: &[Reading],
    value: impl Fn(&Reading) -> f64,
    bound: f64,
) -> Vec<(f64, f64)> {
    let point = |reading: &Reading| (f64::from(reading.minute) / HOUR, value(reading));
    under(&readings.iter().map(point).collect::<Vec<_>>(), bound)
}

/// Length of stretches together.
pub fn together(stretches: &[(f64, f64)]) -> f64 {
    stretches.iter().map(|(from, until)| until - from).sum()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn time_under_a_bound_is_cut_at_the_crossings() {
        let curve = [(0.0, 6.0), (2.0, 4.0), (3.0, 4.0), (4.0, 6.0)];
        assert_eq!(under(&curve, 5.0), [(1.0, 3.5)]);
        assert_eq!(together(&under(&curve, 5.0)), 2.5);
        assert_eq!(under(&curve, 3.0), []);
    }

    #[test]
    fn hours_gathered_point_by_point_are_those_of_the_whole_curve() {
        let curve = [
            (1380, 6.0),
            (1440, 4.0),
            (1500, 4.5),
            (1560, 5.5),
            (1620, 4.5),
        ];
        let mut gathered = HoursUnder::of(5.0);
        curve
            .iter()
            .for_each(|&(minute, value)| gathered.see(minute, value));
        let points = curve.map(|(minute, value)| (f64::from(minute) / HOUR, value));
        assert_eq!(gathered.lane(0), together(&under(&points, 5.0)));
        // half an hour before midnight, one and a half after it, and the last half hour; 1e-9 is rounding
        assert!(
            (gathered.lane(0) - 2.5).abs() < 1e-9,
            "{}",
            gathered.lane(0)
        );
    }

    #[test]
    fn a_jump_at_one_instant_takes_no_time() {
        let jump = [(0.0, 6.0), (1.0, 6.0), (1.0, 4.0), (2.0, 4.0)];
        assert_eq!(under(&jump, 5.0), [(1.0, 2.0)]);
    }
}
