//! Curves read off a run.

use crate::base::clock::{DAY, HOUR, TimeOfDay, days};
use crate::engine::result::{Reading, RunResult, Side};

use super::rect::Point;

/// Readings at every full hour and on both sides of every event: enough for a curve over weeks.
pub fn hourly(run: &RunResult) -> impl Iterator<Item = &Reading> {
    let first = run.readings.first().map_or(0, |r| r.minute);
    run.shown()
        .iter()
        .filter(move |r| r.minute % HOUR == 0 || r.side != Side::Plain || r.minute == first)
}

/// A quantity over the weeks: day and value.
pub fn over_weeks(run: &RunResult, value: impl Fn(&Reading) -> f64) -> Vec<Point> {
    hourly(run).map(|r| (days(r.minute), value(r))).collect()
}

/// The last value of a curve; zero for one without points.
pub fn last(points: &[Point]) -> f64 {
    points.last().map_or(0.0, |p| p.1)
}

/// The readings that belong to one day, those inside steps too: from its opening midnight to the closing one, without
/// what the events of either midnight did to the neighbour.
pub fn of_day(run: &RunResult, day: u32) -> Vec<&Reading> {
    let mut seen = run.seen(day * DAY, (day + 1) * DAY);
    seen.retain(|reading| belongs(reading, day));
    seen
}

/// The same without those inside steps.
pub fn ends_of_steps(run: &RunResult, day: u32) -> Vec<&Reading> {
    let of_day = run.day(day).iter();
    of_day.filter(|reading| belongs(reading, day)).collect()
}

fn belongs(reading: &Reading, day: u32) -> bool {
    match reading.side {
        Side::Before => reading.minute > day * DAY,
        Side::After => reading.minute < (day + 1) * DAY,
        Side::Plain => true,
    }
}

/// A stretch of one day, minutes since its midnight.
pub type Stretch = (u32, u32);

/// When something holds in a day: each reading speaks for the time until the next.
pub fn stretches(
    readings: &[&Reading],
    day: u32,
    holds: impl Fn(&Reading) -> bool,
) -> Vec<Stretch> {
    let mut found: Vec<Stretch> = Vec::new();
    for two in readings.windows(2) {
        let (from, until) = (two[0].minute - day * DAY, two[1].minute - day * DAY);
        if from == until || !holds(two[0]) {
            continue;
        }
        match found.last_mut() {
            Some(last) if last.1 == from => last.1 = until,
            _ => found.push((from, until)),
        }
    }
    found
}

/// When a day is dark.
pub fn dark(run: &RunResult, day: u32) -> Vec<Stretch> {
    stretches(&of_day(run, day), day, |r| r.light_umol_per_m2_s <= 0.0)
}

/// A stretch in words, `06:10 until 09:30`.
pub fn in_words((from, until): Stretch) -> String {
    format!("{} until {}", TimeOfDay(from), TimeOfDay(until))
}

/// The reading with the smallest value.
pub fn lowest<'a>(
    readings: &[&'a Reading],
    value: impl Fn(&Reading) -> f64,
) -> Option<&'a Reading> {
    let order = |a: &&&Reading, b: &&&Reading| value(a).total_cmp(&value(b));
    readings.iter().min_by(order).copied()
}
