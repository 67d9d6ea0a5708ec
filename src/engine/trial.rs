//! One trial of a day with a setting of the valve: the highest CO2 that came of it.

use crate::base::clock::{DAY, HOUR};
use crate::base::real::Real;
use crate::model::water::Water;

use super::error::RunError;
use super::event::Event;
use super::input::TimerLine;
use super::result::{Reading, Side};
use super::simulation::Simulation;
use super::watcher::{Eyes, Watcher};

/// Once the gas is off and carbon dioxide has fallen to this share of its highest, the day's highest is
/// behind (a judgement: it falls by gas exchange from then on, and nothing but gas brings it back).
const FALLEN_FRAC: f64 = 0.9;

/// What one trial of a day gave in one tank.
#[derive(Debug, Clone, Copy)]
pub(super) struct Trial {
    pub(super) gas_mg_per_h: f64,
    pub(super) highest: f64,
    pub(super) at_lights_on: Option<f64>,
}

/// Watches a day for its highest carbon dioxide from the gas coming on, and for that at lights-on.
/// What the night before left over is not the valve's doing: counted in, it would hide how little
/// or how much today's setting gives.
struct Watch<R> {
    lanes: Vec<Lane>,
    lights_on: Option<u32>,
    at_lights_on: Option<R>,
    midnight: u32,
}

/// What is watched in one tank.
#[derive(Clone, Copy)]
struct Lane {
    on: u32,
    off: u32,
    highest: f64,
    over: bool,
}

impl Lane {
    /// Watches the gas of a day.
    fn new(day: u32, line: &TimerLine) -> Self {
        let passes_midnight = line.window.on > line.window.off;
        Lane {
            on: first_minute(day, line),
            off: day * DAY
                + if passes_midnight {
                    DAY
                } else {
                    line.window.off.0
                },
            highest: 0.0,
            over: false,
        }
    }

    #[inline(always)]
    fn see(&mut self, minute: u32, co2_mg_per_l: f64) {
        if minute < self.on || self.over {
            return;
        }
        self.highest = self.highest.max(co2_mg_per_l);
        self.over = minute > self.off && co2_mg_per_l <= FALLEN_FRAC * self.highest;
    }
}

/// The first minute of a day at which its gas is on.
pub(super) fn first_minute(day: u32, line: &TimerLine) -> u32 {
    let passes_midnight = line.window.on > line.window.off;
    day * DAY + if passes_midnight { 0 } else { line.window.on.0 }
}

/// Tries a gas in each tank, from where they stand to the end of the day, or until its highest is behind
/// in all of them.
///
/// # Errors
/// Those of a run.
pub(super) fn try_day<R: Real>(
    lines: &[TimerLine],
    lights_on: Option<u32>,
    tanks: &Simulation<'_, R>,
) -> Result<Vec<Trial>, RunError> {
    let mut copy = tanks.clone();
    copy.keeping.gas = lines.iter().copied().map(Some).collect();
    let day = tanks.minute / DAY;
    let midnight = (day + 1) * DAY;
    let mut watch = Watch::<R> {
        lanes: lines.iter().map(|line| Lane::new(day, line)).collect(),
        lights_on,
        at_lights_on: None,
        midnight,
    };
    while copy.minute < midnight && !watch.is_over() {
        let hour = (copy.minute / HOUR + 1) * HOUR; // where a step ends in any case
        copy.advance(hour, &mut Eyes(&mut [&mut watch]))?;
    }
    if copy.minute == midnight {
        copy.show(&mut watch);
    }
    Ok((lines.iter().enumerate())
        .map(|(lane, line)| watch.trial(lane, line.value))
        .collect())
}

impl<R: Real> Watch<R> {
    /// Whether nothing is left to be seen in any tank.
    fn is_over(&self) -> bool {
        self.lanes.iter().all(|lane| lane.over)
    }

    /// What came of the day in one lane.
    fn trial(&self, lane: usize, gas_mg_per_h: f64) -> Trial {
        Trial {
            gas_mg_per_h,
            highest: self.lanes[lane].highest,
            at_lights_on: self.at_lights_on.map(|co2| co2.lane(lane)),
        }
    }

    #[inline(always)]
    fn note(&mut self, minute: u32, co2_mg_per_l: R) {
        for (place, lane) in self.lanes.iter_mut().enumerate() {
            lane.see(minute, co2_mg_per_l.lane(place));
        }
        if Some(minute) == self.lights_on {
            self.at_lights_on = Some(co2_mg_per_l);
        }
    }
}

impl<R: Real> Watcher<R> for Watch<R> {
    #[inline(always)]
    fn glance(&mut self, minute: u32, water: &Water<R>) {
        self.note(minute, water.co2_mg_per_l());
    }
    #[inline(always)]
    fn wants(&self, minute: u32, _: Side) -> bool {
        minute == self.midnight
    }
    /// The end of the day, and both sides of what happens in it.
    #[inline(always)]
    fn see(&mut self, reading: &Reading<R>, _: &Simulation<'_, R>) {
        self.note(reading.minute, reading.co2_mg_per_l);
    }
    fn happened(&mut self, _: &Event, _: R, _: &Reading<R>, _: &Reading<R>) {}
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::base::clock::{TimeOfDay, Window};

    fn of_gas_from_ten_to_five() -> Lane {
        let window = Window {
            on: TimeOfDay(10 * HOUR),
            off: TimeOfDay(17 * HOUR),
        };
        let line = TimerLine {
            from_day: 3,
            window,
            value: 100.0,
        };
        Lane::new(3, &line)
    }

    #[test]
    fn what_the_night_left_over_is_not_counted() {
        let mut lane = of_gas_from_ten_to_five();
        lane.see(3 * DAY + 9 * HOUR, 40.0);
        lane.see(3 * DAY + 10 * HOUR, 20.0);
        assert_eq!(lane.highest, 20.0);
    }

    #[test]
    fn a_day_is_over_when_the_gas_is_off_and_a_tenth_has_gone() {
        let mut lane = of_gas_from_ten_to_five();
        lane.see(3 * DAY + 12 * HOUR, 30.0);
        lane.see(3 * DAY + 14 * HOUR, 20.0); // a change of water
        assert!(!lane.over, "the gas is still on");
        lane.see(3 * DAY + 18 * HOUR, 28.0);
        assert!(!lane.over, "too little has gone");
        lane.see(3 * DAY + 19 * HOUR, 31.0); // still water may gain from what breathes
        assert_eq!(lane.highest, 31.0);
        lane.see(3 * DAY + 20 * HOUR, 27.8);
        assert!(lane.over);
        lane.see(3 * DAY + 21 * HOUR, 50.0);
        assert_eq!(lane.highest, 31.0);
    }
}
