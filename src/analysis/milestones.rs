//! The figures people ask for first: peaks, the worst night, litres, visits, gas.

use std::collections::BTreeSet;

use crate::base::clock::DAY;
use crate::engine::event::EventKind;
use crate::engine::result::{Reading, RunResult, Side};

use super::case::Case;
use super::figures::{FigureWatch, Figures};
use super::limits::Limits;
use super::running::first_shrimp;

/// The highest or lowest value of something, with when.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Extreme {
    /// The value.
    pub value: f64,
    /// Minutes since midnight of day 0.
    pub minute: u32,
}

/// The figures of one day.
#[derive(Debug, Clone, Copy)]
pub struct DayFigures {
    /// The day.
    pub day: u32,
    /// Lowest oxygen, mg/L.
    pub oxygen_low: Extreme,
    /// Highest oxygen, mg/L.
    pub oxygen_high: Extreme,
    /// Highest carbon dioxide, mg/L.
    pub co2_high: Extreme,
    /// Lowest carbon dioxide, mg/L.
    pub co2_low: Extreme,
    /// Lowest pH.
    pub ph_low: Extreme,
    /// Highest pH.
    pub ph_high: Extreme,
    /// Highest free ammonia, mg N/L.
    pub free_ammonia_high: Extreme,
}

/// The figures of a run.
#[derive(Debug, Clone)]
pub struct Milestones {
    /// Highest total ammonia, mg N/L.
    pub tan_peak: Extreme,
    /// Highest nitrite, mg N/L.
    pub nitrite_peak: Extreme,
    /// Highest free ammonia, mg N/L.
    pub free_ammonia_peak: Extreme,
    /// Lowest oxygen, mg/L.
    pub oxygen_low: Extreme,
    /// Highest carbon dioxide, mg/L.
    pub co2_high: Extreme,
    /// Lowest KH, dKH.
    pub kh_low: Extreme,
    /// Highest nitrate, mg N/L.
    pub nitrate_peak: Extreme,
    /// Nitrate at the end, mg N/L.
    pub nitrate_end: f64,
    /// Each day.
    pub days: Vec<DayFigures>,
    /// Water taken out by changes, L.
    pub litres_changed: f64,
    /// Water of the first filling, L.
    pub litres_filled: f64,
    /// Days on which somebody has to be there.
    pub visits: u32,
    /// Gas that left the cylinder, g.
    pub gas_g: f64,
    /// The last reading of the run.
    pub end: Reading,
}

impl Extreme {
    /// The highest value; the earliest instant on a tie.
    pub fn highest<'a>(
        readings: impl IntoIterator<Item = &'a Reading>,
        value: impl Fn(&Reading) -> f64,
    ) -> Option<Extreme> {
        Self::most(readings, value, |new, old| new > old)
    }
    /// The lowest value; the earliest instant on a tie.
    pub fn lowest<'a>(
        readings: impl IntoIterator<Item = &'a Reading>,
        value: impl Fn(&Reading) -> f64,
    ) -> Option<Extreme> {
        Self::most(readings, value, |new, old| new < old)
    }
    fn most<'a>(
        readings: impl IntoIterator<Item = &'a Reading>,
        value: impl Fn(&Reading) -> f64,
        beats: impl Fn(f64, f64) -> bool,
    ) -> Option<Extreme> {
        let at = |r: &Reading| Extreme {
            value: value(r),
            minute: r.minute,
        };
        let mut readings = readings.into_iter();
        let first = at(readings.next()?);
        Some(readings.map(at).fold(first, |best, new| {
            if beats(new.value, best.value) {
                new
            } else {
                best
            }
        }))
    }
    /// The day of the instant.
    pub fn day(&self) -> u32 {
        self.minute / DAY
    }
}

/// The readings that belong to a day: from its opening midnight (after the events of that
/// instant) to its closing midnight (before them). Both sides of every event in between are there.
pub fn readings_of(run: &RunResult, day: u32) -> Vec<&Reading> {
    let (opens, closes) = (day * DAY, (day + 1) * DAY);
    run.day(day)
        .iter()
        .filter(|r| !(r.minute == opens && r.side == Side::Before))
        .filter(|r| !(r.minute == closes && r.side == Side::After))
        .collect()
}

/// The figures of a run, the look-ahead left out.
///
/// # Panics
/// When the run holds no reading at all, which the engine never returns.
pub fn of(run: &RunResult, case: &Case) -> Milestones {
    let figures = figures(run, &case.limits);
    Milestones {
        tan_peak: figures.tan_peak,
        nitrite_peak: figures.nitrite_peak,
        nitrate_peak: figures.nitrate_peak,
        free_ammonia_peak: figures.free_ammonia_peak,
        oxygen_low: figures.oxygen_low,
        co2_high: figures.co2_high,
        kh_low: figures.kh_low,
        nitrate_end: figures.nitrate_end,
        days: (0..=case.input.last_day)
            .filter_map(|day| figures_of(run, day))
            .collect(),
        litres_changed: figures.litres_changed,
        litres_filled: case.input.tank.volume_l,
        visits: visits(run).len() as u32,
        gas_g: figures.gas_g,
        end: *run.shown().last().expect(A_READING),
    }
}

/// The figures of a finished run, by the same watch that looks at many tanks side by side.
pub fn figures(run: &RunResult, limits: &Limits) -> Figures {
    let shrimp_from = first_shrimp(&run.input).map_or(f64::INFINITY, f64::from);
    let mut watch = FigureWatch::new(run.input.end_minute(), limits, shrimp_from);
    run.readings.iter().for_each(|reading| watch.see(reading));
    for event in &run.events {
        watch.happened(event.litres, &event.before, &event.after);
    }
    watch.lane(0)
}

const A_READING: &str = "a run holds at least one reading";

fn figures_of(run: &RunResult, day: u32) -> Option<DayFigures> {
    let readings = readings_of(run, day);
    let highest = |value: fn(&Reading) -> f64| Extreme::highest(readings.iter().copied(), value);
    let lowest = |value: fn(&Reading) -> f64| Extreme::lowest(readings.iter().copied(), value);
    Some(DayFigures {
        day,
        oxygen_low: lowest(|r| r.oxygen_mg_per_l)?,
        oxygen_high: highest(|r| r.oxygen_mg_per_l)?,
        co2_high: highest(|r| r.co2_mg_per_l)?,
        co2_low: lowest(|r| r.co2_mg_per_l)?,
        ph_low: lowest(|r| r.ph)?,
        ph_high: highest(|r| r.ph)?,
        free_ammonia_high: highest(|r| r.free_ammonia_mg_n_per_l)?,
    })
}

/// Days on which somebody has to be there: a change, dose, planting, trim, wipe, siphon, cleaning,
/// seeding, stocking or gas tuning.
pub fn visits(run: &RunResult) -> BTreeSet<u32> {
    let end = run.input.end_minute();
    let events = run
        .input
        .events
        .iter()
        .filter(|event| event.minute < end && !matches!(event.kind, EventKind::Uneaten { .. }))
        .map(|event| event.minute / DAY);
    let tunings = run
        .tunings
        .iter()
        .map(|tuning| tuning.day)
        .filter(|&day| day <= run.input.last_day);
    events.chain(tunings).collect()
}

/// Days since midnight of day 0 of the end of the last interval in which total ammonia or nitrite
/// was 0.15 mg N/L or more: the "clean after" of the reference runs. None when the run ends so.
pub fn clean_after_days(readings: &[Reading]) -> Option<f64> {
    let dirty = |r: &Reading| r.tan_mg_n_per_l >= 0.15 || r.nitrite_mg_n_per_l >= 0.15;
    match readings.iter().rposition(dirty) {
        None => readings.first(),
        Some(last) => readings.get(last + 1),
    }
    .map(|r| crate::base::clock::days(r.minute))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::analysis::example::{self, Example};

    #[test]
    fn extremes_are_taken_on_both_sides_of_a_change() {
        let example = Example::default();
        let milestones = of(&example.run(), &example.case());
        // the example's change at 09:30 halves 2.0 mg N/L to 1.0, and the hourly grid never sees 2.0
        assert_eq!(milestones.tan_peak.value, example::TAN_BEFORE_A_CHANGE);
        assert_eq!(milestones.tan_peak.minute % DAY, example::CHANGE_MINUTE);
    }

    #[test]
    fn litres_and_visits_leave_the_look_ahead_and_the_filling_out() {
        let example = Example::default();
        let milestones = of(&example.run(), &example.case());
        let changes = f64::from(example.last_day);
        assert_eq!(
            milestones.litres_changed,
            changes * example::LITRES_A_CHANGE
        );
        assert_eq!(milestones.litres_filled, example::VOLUME_L);
        assert_eq!(milestones.visits, example.last_day);
    }

    #[test]
    fn gas_is_what_has_left_the_cylinder_by_the_end() {
        let example = Example::default();
        let hours = f64::from((example.last_day + 1) * example::GAS_HOURS);
        let used = of(&example.run(), &example.case()).gas_g;
        // exact sums of halves of hours; 1e-9 g covers their rounding
        assert!(
            (used - hours * example::GAS_MG_PER_H / 1000.0).abs() < 1e-9,
            "{used}"
        );
    }

    #[test]
    fn every_day_has_its_figures_and_the_closing_midnight_belongs_to_it() {
        let example = Example::default();
        let run = example.run();
        let milestones = of(&run, &example.case());
        assert_eq!(milestones.days.len(), example.last_day as usize + 1);
        assert_eq!(readings_of(&run, 0).last().unwrap().minute, DAY);
    }

    #[test]
    fn a_tank_that_ends_dirty_is_never_clean() {
        let example = Example {
            clean_from_day: 99,
            ..Example::default()
        };
        assert_eq!(clean_after_days(example.run().shown()), None);
        let clean = clean_after_days(Example::default().run().shown());
        assert_eq!(clean, Some(f64::from(Example::default().clean_from_day)));
    }
}
