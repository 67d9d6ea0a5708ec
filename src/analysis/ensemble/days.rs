//! What bands are made of, gathered from tanks as they go: each day's lowest, highest and mean, and the
//! hours of the days that are drawn.
//!
//! Kept as `f32`: seven figures are more than any band is printed or drawn with, and a thousand members then
//! take 12 MB.

use crate::analysis::charted::{QUANTITIES, all_of};
use crate::analysis::day_of::DayOf;
use crate::base::clock::{DAY, HOUR};
use crate::base::real::Real;
use crate::engine::result::{Reading, Side};

/// Which number of a day.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Of {
    /// The lowest.
    Lowest,
    /// The highest.
    Highest,
    /// The mean by time.
    Mean,
}

impl Of {
    /// All of them.
    pub const ALL: [Of; 3] = [Of::Lowest, Of::Highest, Of::Mean];
    /// The ending of the name of a column, as in `daily.csv`.
    pub fn ending(self) -> &'static str {
        match self {
            Of::Lowest => "min",
            Of::Highest => "max",
            Of::Mean => "mean",
        }
    }
}

/// Full hours of a day, both midnights included.
pub const HOURS: usize = 25;

type All<T> = [T; QUANTITIES.len()];

/// Gathers days and hours.
#[derive(Debug, Clone)]
pub struct DayWatch<R> {
    end_minute: u32,
    under_way: Option<All<DayOf<R>>>,
    days: Vec<All<[R; Of::ALL.len()]>>,
    drawn: Vec<(u32, [All<R>; HOURS])>,
}

impl<R: Real> DayWatch<R> {
    /// Gathers the days up to the last, and the hours of those drawn.
    pub fn new(last_day: u32, drawn: &[u32]) -> Self {
        let none = [[R::of(f64::NAN); QUANTITIES.len()]; HOURS];
        DayWatch {
            end_minute: (last_day + 1) * DAY,
            under_way: None,
            days: Vec::with_capacity(last_day as usize + 1),
            drawn: drawn.iter().map(|&day| (day, none)).collect(),
        }
    }

    /// Sees the tanks. A midnight belongs to the day that closes, up to its events, and to the day that
    /// opens, after them.
    #[inline(always)]
    pub fn see(&mut self, reading: &Reading<R>) {
        let (minute, side) = (reading.minute, reading.side);
        if minute > self.end_minute || (minute == self.end_minute && side == Side::After) {
            return;
        }
        let values = all_of(reading);
        let midnight = minute.is_multiple_of(DAY);
        let opens = midnight && side != Side::Before;
        match &mut self.under_way {
            Some(days) if !(midnight && side == Side::After) => {
                for (day, value) in days.iter_mut().zip(values) {
                    day.see(minute, value);
                }
            }
            _ => {}
        }
        if midnight && side != Side::After {
            self.close();
        }
        if opens || self.under_way.is_none() && !midnight {
            self.under_way = Some(values.map(|value| DayOf::opening(minute, value)));
        }
        self.see_hour(minute, side, &values);
    }

    fn close(&mut self) {
        if let Some(days) = self.under_way.take() {
            self.days
                .push(days.map(|day| [day.low, day.high, day.mean()]));
        }
    }

    #[inline(always)]
    fn see_hour(&mut self, minute: u32, side: Side, values: &All<R>) {
        for (day, hours) in &mut self.drawn {
            let (opens, closes) = (*day * DAY, (*day + 1) * DAY);
            let outside = (minute == opens && side == Side::Before)
                || (minute == closes && side == Side::After);
            if minute.is_multiple_of(HOUR) && (opens..=closes).contains(&minute) && !outside {
                hours[((minute - opens) / HOUR) as usize] = *values;
            }
        }
    }

    /// What was gathered in one lane, day by day and then hour by hour of the drawn days: all quantities of
    /// each, with all numbers of a day together.
    pub fn lane(&self, lane: usize) -> Vec<f32> {
        let number = |value: &R| value.lane(lane) as f32;
        let days = self.days.as_flattened().as_flattened().iter();
        let hours = self.drawn.iter();
        let hours = hours.flat_map(|(_, hours)| hours.as_flattened());
        days.map(number).chain(hours.map(number)).collect()
    }
}
