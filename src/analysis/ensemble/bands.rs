//! Bands: between which values a share of all members lies, by day and by hour.

use rayon::prelude::*;

use crate::analysis::charted::{QUANTITIES, Quantity};
use crate::base::quantiles::quantile;

use super::days::{HOURS, Of};

/// The quantiles of a band, as shares: the outer band, the inner band and the middle.
pub const SHARES: [f64; 5] = [0.05, 0.25, 0.5, 0.75, 0.95];

/// The 5, 25, 50, 75 and 95 % points of a quantity over all members.
pub type Band = [f32; SHARES.len()];

/// Bands of all quantities.
#[derive(Debug, Clone, PartialEq)]
pub struct Bands {
    /// How many members they are made of.
    pub members: usize,
    first_day: u32,
    last_day: u32,
    drawn: Vec<u32>,
    bands: Vec<Band>,
}

/// Gathers the rows of members, column by column.
pub(super) struct Gathered {
    first_day: u32,
    last_day: u32,
    drawn: Vec<u32>,
    rows: Vec<Vec<f32>>,
}

impl Gathered {
    /// Nothing yet, of a run from its first day to its last, with the hours of some days.
    pub(super) fn new(first_day: u32, last_day: u32, drawn: &[u32]) -> Self {
        Gathered {
            first_day,
            last_day,
            drawn: drawn.to_vec(),
            rows: Vec::new(),
        }
    }
    /// Takes what [`DayWatch::lane`](super::days::DayWatch::lane) gave.
    pub(super) fn take(&mut self, row: Vec<f32>) {
        self.rows.push(row);
    }
    /// The bands.
    pub(super) fn bands(self) -> Bands {
        let columns = self.rows.first().map_or(0, Vec::len);
        let rows = &self.rows;
        let band = |column: usize| {
            let mut values: Vec<f64> = rows.iter().map(|row| f64::from(row[column])).collect();
            values.sort_unstable_by(f64::total_cmp);
            SHARES.map(|share| quantile(&values, share) as f32)
        };
        Bands {
            members: rows.len(),
            first_day: self.first_day,
            last_day: self.last_day,
            drawn: self.drawn,
            bands: (0..columns).into_par_iter().map(band).collect(),
        }
    }
}

impl Bands {
    /// The days that have bands.
    pub fn days(&self) -> std::ops::RangeInclusive<u32> {
        self.first_day..=self.last_day
    }
    /// The days that have bands by the hour.
    pub fn drawn_days(&self) -> &[u32] {
        &self.drawn
    }
    /// The band of a quantity on a day; none for a day outside the run.
    pub fn of_day(&self, day: u32, quantity: Quantity, of: Of) -> Option<&Band> {
        let row = day.checked_sub(self.first_day)? as usize;
        if day > self.last_day {
            return None;
        }
        let column = (row * QUANTITIES.len() + quantity.place) * Of::ALL.len() + of as usize;
        self.bands.get(column)
    }
    /// The bands of a quantity at the full hours of a drawn day, from midnight to midnight; at an hour with
    /// events, after them. Not a number before the tank was full.
    pub fn of_hours(&self, day: u32, quantity: Quantity) -> Option<[Band; HOURS]> {
        let place = self.drawn.iter().position(|&drawn| drawn == day)?;
        let days = (self.last_day - self.first_day + 1) as usize;
        let first = days * QUANTITIES.len() * Of::ALL.len() + place * HOURS * QUANTITIES.len();
        let at = |hour: usize| {
            self.bands
                .get(first + hour * QUANTITIES.len() + quantity.place)
        };
        at(HOURS - 1)?;
        Some(std::array::from_fn(|hour| {
            self.bands[first + hour * QUANTITIES.len() + quantity.place]
        }))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::analysis::charted::{CO2, PH};

    /// Members whose every number is their own and that of its column.
    fn gathered(members: &[f32]) -> Bands {
        let mut gathered = Gathered::new(1, 2, &[2]);
        let columns = 2 * QUANTITIES.len() * 3 + HOURS * QUANTITIES.len();
        for member in members {
            let row = (0..columns).map(|column| member + 1000.0 * column as f32);
            gathered.take(row.collect());
        }
        gathered.bands()
    }

    #[test]
    fn a_band_holds_the_quantiles_of_its_own_column() {
        let bands = gathered(&[20.0, 0.0, 10.0, 30.0, 40.0]);
        // type 7 of 0, 10, 20, 30, 40: p05 at 0.2 of the first step
        let day = bands.of_day(2, PH, Of::Mean).unwrap();
        let column = ((QUANTITIES.len() + PH.place) * 3 + 2) as f32 * 1000.0;
        assert_eq!(
            day.map(|value| value - column),
            [2.0, 10.0, 20.0, 30.0, 38.0]
        );
        let hours = bands.of_hours(2, CO2).unwrap();
        let column = (2 * QUANTITIES.len() * 3 + 7 * QUANTITIES.len() + CO2.place) as f32;
        assert_eq!(hours[7][2], 20.0 + 1000.0 * column);
        assert_eq!(bands.members, 5);
    }

    #[test]
    fn days_outside_the_run_and_days_not_drawn_have_no_band() {
        let bands = gathered(&[1.0]);
        assert_eq!(bands.days(), 1..=2);
        assert!(bands.of_day(0, PH, Of::Mean).is_none());
        assert!(bands.of_day(3, PH, Of::Mean).is_none());
        assert!(bands.of_hours(1, PH).is_none());
    }

    #[test]
    fn no_member_gives_no_band() {
        let bands = gathered(&[]);
        assert!(bands.of_day(1, PH, Of::Mean).is_none());
        assert!(bands.of_hours(2, PH).is_none());
    }
}
