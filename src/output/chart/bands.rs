//! Bands of many plausible tanks, as pale areas behind the curve of the central run.

use crate::analysis::charted::Quantity;
use crate::analysis::ensemble::bands::Band;
use crate::analysis::ensemble::days::Of;
use crate::base::clock::days;

use super::Story;
use super::figure::Area;
use super::key::Key;
use super::style::{Colour, MUTED, Pen};

/// How much the band of 90 of 100 covers.
pub const OUTER: f64 = 0.15;
/// How much the band of 50 of 100 covers, over the other one.
pub const INNER: f64 = 0.22;

/// The points of a [`Band`] between which so many of 100 lie, with their cover.
const BANDS: [(&str, usize, usize, f64); 2] = [("90", 0, 4, OUTER), ("50", 1, 3, INNER)];

/// Where a band stands: place along the panel, what bounds it below and above.
#[derive(Debug, Clone, Copy)]
pub struct At {
    /// Place along the panel.
    pub x: f64,
    /// The lower edges are taken from here.
    pub low: Band,
    /// The upper edges are taken from here.
    pub high: Band,
}

/// Both bands of a quantity. Places at which it is not known are left out.
pub fn areas(name: &str, colour: Colour, places: &[At]) -> Vec<Area> {
    let known = |at: &&At| at.low.iter().chain(&at.high).all(|value| value.is_finite());
    let places: Vec<At> = places.iter().filter(known).copied().collect();
    if places.is_empty() {
        return Vec::new();
    }
    let edge = |value: fn(&At) -> &Band, point: usize| {
        let along = places.iter();
        along
            .map(move |at| (at.x, f64::from(value(at)[point])))
            .collect()
    };
    let area = |(of_100, low, high, alpha)| Area {
        name: format!("{name} in {of_100} of 100 plausible tanks spans"),
        upper: edge(|at| &at.high, high),
        lower: edge(|at| &at.low, low),
        colour,
        alpha,
        edge: None,
    };
    BANDS.map(area).into()
}

/// Every height of some areas.
pub fn heights(areas: &[Area]) -> impl Iterator<Item = f64> {
    areas
        .iter()
        .flat_map(|a| a.upper.iter().chain(&a.lower))
        .map(|p| p.1)
}

/// A sentence after a colon: without its capital, unless the first word is a name such as KH.
fn lower(words: &str) -> String {
    let mut letters = words.chars();
    match (letters.next(), letters.next()) {
        (Some(first), Some(second)) if second.is_lowercase() => {
            let rest = &words[first.len_utf8()..];
            format!("{}{rest}", first.to_lowercase())
        }
        _ => words.to_string(),
    }
}

impl Story<'_> {
    /// The key of curves, and of the bands where there are some.
    pub fn curve_keys(&self) -> Vec<Key> {
        let pen = Pen::curve(MUTED);
        match self.forecast {
            None => vec![Key::Line(pen, "central forecast")],
            Some(_) => vec![
                Key::Line(pen, "central run"),
                Key::Bands("50 and 90 of 100 plausible tanks"),
            ],
        }
    }
    /// Sentences of a chart without bands: beside charts that have some, they say what it shows.
    pub fn said_of_central(&self, sentences: Vec<String>) -> Vec<String> {
        match self.forecast {
            None => sentences,
            Some(_) => sentences
                .iter()
                .map(|words| format!("Central run: {}", lower(words)))
                .collect(),
        }
    }
    /// Bands of one number a day, at noon of each day.
    pub fn bands_of_days(
        &self,
        quantity: Quantity,
        of: Of,
        name: &str,
        colour: Colour,
    ) -> Vec<Area> {
        areas(name, colour, &self.noons(quantity, [of, of]))
    }
    /// Bands about a curve that is drawn hour by hour: from the lowest of each day to its highest, so that so
    /// many of 100 tanks or more stay inside all day.
    pub fn bands_all_day(&self, quantity: Quantity, name: &str, colour: Colour) -> Vec<Area> {
        let mut places = self.noons(quantity, [Of::Lowest, Of::Highest]);
        let from = days(self.run.input.filled_at);
        for at in &mut places {
            at.x = at.x.max(from);
        }
        let ends = (places.first().copied(), places.last().copied());
        if let (Some(first), Some(last)) = ends {
            places.insert(0, At { x: from, ..first });
            let x = days(self.run.input.end_minute());
            places.push(At { x, ..last });
        }
        areas(name, colour, &places)
    }
    /// The same at noon of each day, for bars from lowest to highest.
    pub fn bands_of_bars(&self, quantity: Quantity, name: &str, colour: Colour) -> Vec<Area> {
        areas(
            name,
            colour,
            &self.noons(quantity, [Of::Lowest, Of::Highest]),
        )
    }
    fn noons(&self, quantity: Quantity, [low, high]: [Of; 2]) -> Vec<At> {
        let Some(forecast) = self.forecast else {
            return Vec::new();
        };
        let bands = &forecast.ensemble.bands;
        let noon = |day: u32| {
            Some(At {
                x: f64::from(day) + 0.5,
                low: *bands.of_day(day, quantity, low)?,
                high: *bands.of_day(day, quantity, high)?,
            })
        };
        bands.days().filter_map(noon).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::output::chart::style::OXYGEN;

    fn at(x: f64, low: f32) -> At {
        At {
            x,
            low: [low, 1.0, 2.0, 3.0, 4.0],
            high: [10.0, 11.0, 12.0, 13.0, 14.0],
        }
    }

    #[test]
    fn a_band_reaches_from_the_low_points_to_the_high_ones() {
        let bands = areas("oxygen", OXYGEN, &[at(0.5, 0.0), at(1.5, 0.25)]);
        assert_eq!(bands[0].lower, [(0.5, 0.0), (1.5, 0.25)]);
        assert_eq!(bands[0].upper, [(0.5, 14.0), (1.5, 14.0)]);
        assert_eq!(bands[1].lower, [(0.5, 1.0), (1.5, 1.0)]);
        assert_eq!(bands[1].upper, [(0.5, 13.0), (1.5, 13.0)]);
    }

    #[test]
    fn what_is_not_known_is_not_drawn() {
        let bands = areas("oxygen", OXYGEN, &[at(0.5, f32::NAN), at(1.5, 0.25)]);
        assert_eq!(bands[0].upper, [(1.5, 14.0)]);
        assert_eq!(areas("oxygen", OXYGEN, &[at(0.5, f32::NAN)]), []);
    }
}
