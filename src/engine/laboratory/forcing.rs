//! What is done to a vessel from outside: light, gas, air, mains, and everything of one instant.

use crate::base::clock::{DAY, Window};
use crate::engine::event::{Event, EventKind};
use crate::engine::input::{PowerCut, TimerLine};
use crate::model::pool::{MAX_STANDS, Pool};
use crate::model::setup::StandPlan;

use super::{Laboratory, LaboratoryError};

impl Laboratory {
    /// Light in a daily window, µmol/m²/s ([`Window::ALL_DAY`] for always).
    #[must_use]
    pub fn light(mut self, window: Window, umol_per_m2_s: f64) -> Self {
        self.not_below_zero("light, µmol/m²/s", umol_per_m2_s);
        self.light = vec![line(window, umol_per_m2_s)];
        self
    }

    /// Carbon dioxide leaving the cylinder in a daily window, mg/h (`eta_CO2` of it dissolves).
    #[must_use]
    pub fn gas(mut self, window: Window, mg_per_h: f64) -> Self {
        self.not_below_zero("gas, mg/h", mg_per_h);
        self.gas = vec![line(window, mg_per_h)];
        self
    }

    /// Air through the stone in a daily window, L/min.
    #[must_use]
    pub fn air(mut self, window: Window, l_per_min: f64) -> Self {
        self.not_below_zero("air, L/min", l_per_min);
        self.air = vec![line(window, l_per_min)];
        self
    }

    /// No mains (light, gas, air, flow through the filter) from one day of the test to another.
    #[must_use]
    pub fn without_power(mut self, from_days: f64, until_days: f64) -> Self {
        let (from, until) = (self.minute(from_days), self.minute(until_days));
        self.power_cuts.push(PowerCut {
            from,
            until,
            battery_air_l_per_min: 0.0,
        });
        self
    }

    /// Something that happens at one instant, days from the beginning (to the nearest minute): a dose,
    /// a water change, seeding, planting, a trim.
    #[must_use]
    pub fn at(mut self, days: f64, kind: EventKind) -> Self {
        let minute = self.minute(days);
        self.events.push(Event {
            minute,
            name: "laboratory".into(),
            kind,
        });
        self
    }

    /// What a litre of the water of water changes holds of something, where it differs from the water
    /// put in at first.
    #[must_use]
    pub fn refilled_with(mut self, pool: Pool, per_l: f64) -> Self {
        self.amount_of(pool, per_l);
        match self.fill.with(pool, per_l) {
            Some(_) => self.refill.push((pool, per_l)),
            None => self.refuse(LaboratoryError::NotDissolved { pool }),
        }
        self
    }

    /// A place for plants; they are put in as amounts of its pools, or by [`EventKind::Plant`].
    #[must_use]
    pub fn stand(mut self, stand: StandPlan) -> Self {
        if self.stands.len() < MAX_STANDS {
            self.stands.push(stand);
        } else {
            let one_more = (MAX_STANDS + 1) as f64;
            self.refuse(LaboratoryError::impossible(
                "the number of stands",
                one_more,
            ));
        }
        self
    }

    /// Whole minutes of a time in days.
    pub(super) fn minute(&mut self, days: f64) -> u32 {
        self.not_below_zero("a time, days", days);
        (days * f64::from(DAY)).round() as u32
    }
    fn not_below_zero(&mut self, what: &str, value: f64) {
        if !(value.is_finite() && value >= 0.0) {
            self.refuse(LaboratoryError::impossible(what, value));
        }
    }
}

/// A timer that runs the same every day.
fn line(window: Window, value: f64) -> TimerLine {
    TimerLine {
        from_day: 0,
        window,
        value,
    }
}
