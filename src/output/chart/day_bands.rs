//! Bands of many plausible tanks over the hours of one day.

use crate::analysis::charted::{Quantity, all_of};
use crate::analysis::ensemble::bands::Band;

use super::bands::{At, areas};
use super::day::Day;
use super::figure::Area;
use super::rect::Point;
use super::style::Colour;

impl Day<'_> {
    /// Both bands of a quantity, straight from hour to hour; none for a day that was not drawn by the hour.
    pub fn bands(&self, quantity: Quantity, name: &str, colour: Colour) -> Vec<Area> {
        let forecast = self.story.forecast;
        let hours = forecast.and_then(|f| f.ensemble.bands.of_hours(self.day, quantity));
        let Some(hours) = hours else {
            return Vec::new();
        };
        let steps = self.steps();
        let changes: Vec<f64> = steps
            .iter()
            .filter(|step| step.is_change)
            .map(|step| self.hour(step.minute))
            .collect();
        let central = self.curve(|reading| all_of(reading)[quantity.place]);
        areas(name, colour, &hour_by_hour(&hours, &changes, &central))
    }
}

/// Straight from hour to hour. Bands are known at full hours alone, so in an hour with a water change they
/// move as the central run does: up to the change with the hour before it, from it on with the hour after.
fn hour_by_hour(hours: &[Band], changes: &[f64], central: &[Point]) -> Vec<At> {
    let mut places: Vec<At> = Vec::new();
    for (hour, &band) in hours.iter().enumerate() {
        let x = hour as f64;
        let change = changes.iter().find(|c| x - 1.0 < **c && **c <= x);
        if let (Some(&change), Some(last)) = (change, hour.checked_sub(1)) {
            let (before, after) = sides(central, change);
            let opening = before - sides(central, x - 1.0).1;
            let closing = after - sides(central, x).1;
            places.push(at(change, moved(hours[last], opening)));
            places.push(at(change, moved(band, closing)));
        }
        places.push(at(x, band));
    }
    places
}

fn at(x: f64, band: Band) -> At {
    At {
        x,
        low: band,
        high: band,
    }
}

/// A band moved by so much, never under zero.
fn moved(band: Band, by: f64) -> Band {
    band.map(|value| (value + by as f32).max(0.0))
}

/// The height of a curve just before and just after a place; they differ where it jumps.
fn sides(curve: &[Point], x: f64) -> (f64, f64) {
    let before = curve.partition_point(|p| p.0 < x);
    let after = curve.partition_point(|p| p.0 <= x);
    let exact = |n: usize| curve.get(n).filter(|p| p.0 == x).map(|p| p.1);
    let between = || straight(curve, before, x);
    (
        exact(before).unwrap_or_else(between),
        exact(after.saturating_sub(1)).unwrap_or_else(between),
    )
}

/// The height between the point `next` and the one before it; beyond the ends that of the end.
fn straight(curve: &[Point], next: usize, x: f64) -> f64 {
    let before = next.checked_sub(1).and_then(|n| curve.get(n));
    match (before, curve.get(next)) {
        (Some(a), Some(b)) => a.1 + (x - a.0) / (b.0 - a.0) * (b.1 - a.1),
        (Some(only), None) | (None, Some(only)) => only.1,
        (None, None) => 0.0,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_band_jumps_with_the_central_run_where_the_water_is_changed() {
        let hours = [[4.0; 5], [3.0; 5], [9.0; 5]];
        let central = [(0.0, 5.0), (1.0, 4.0), (1.5, 3.5), (1.5, 8.0), (2.0, 7.0)];
        let places = hour_by_hour(&hours, &[1.5], &central);
        let told: Vec<(f64, f32)> = places.iter().map(|at| (at.x, at.low[0])).collect();
        let expected = [(0.0, 4.0), (1.0, 3.0), (1.5, 2.5), (1.5, 10.0), (2.0, 9.0)];
        assert_eq!(told, expected);
    }

    #[test]
    fn a_change_on_the_hour_closes_the_hour_before_it() {
        let hours = [[4.0; 5], [9.0; 5]];
        let central = [(0.0, 5.0), (1.0, 4.0), (1.0, 8.0)];
        let places = hour_by_hour(&hours, &[1.0], &central);
        let told: Vec<(f64, f32)> = places.iter().map(|at| (at.x, at.low[0])).collect();
        assert_eq!(told, [(0.0, 4.0), (1.0, 3.0), (1.0, 9.0), (1.0, 9.0)]);
    }

    #[test]
    fn between_its_points_a_curve_is_straight() {
        let curve = [(0.0, 1.0), (2.0, 3.0)];
        assert_eq!(sides(&curve, 1.0), (2.0, 2.0));
        assert_eq!(sides(&curve, -1.0), (1.0, 1.0));
        assert_eq!(sides(&curve, 9.0), (3.0, 3.0));
    }
}
