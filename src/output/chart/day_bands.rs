//! Bands of many plausible tanks over the hours of one day.

use crate::analysis::charted::Quantity;
use crate::analysis::ensemble::bands::Band;

use super::bands::{At, areas};
use super::day::Day;
use super::figure::Area;
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
        areas(name, colour, &hour_by_hour(&hours, &changes))
    }
}

/// Straight from hour to hour, but for those with a water change: there all of it happens at the change.
fn hour_by_hour(hours: &[Band], changes: &[f64]) -> Vec<At> {
    let at = |x: f64, band: Band| At {
        x,
        low: band,
        high: band,
    };
    let mut places: Vec<At> = Vec::new();
    for (hour, &band) in hours.iter().enumerate() {
        let x = hour as f64;
        let change = changes.iter().find(|c| x - 1.0 < **c && **c <= x);
        if let (Some(&change), Some(&before)) = (change, places.last()) {
            places.push(At {
                x: change,
                ..before
            });
            places.push(at(change, band));
        }
        places.push(at(x, band));
    }
    places
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_band_jumps_where_the_water_is_changed_and_nowhere_else() {
        let hours = [[4.0; 5], [3.0; 5], [9.0; 5]];
        let places = hour_by_hour(&hours, &[1.5]);
        let told: Vec<(f64, f32)> = places.iter().map(|at| (at.x, at.low[0])).collect();
        assert_eq!(
            told,
            [(0.0, 4.0), (1.0, 3.0), (1.5, 3.0), (1.5, 9.0), (2.0, 9.0)]
        );
    }
}
