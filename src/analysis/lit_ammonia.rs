//! How long bright light falls on ammonia: light is held from one reading to the next, ammonia moves straight.

use crate::base::real::Real;

use super::beyond::HoursUnder;

/// Hours of bright light on ammonia in each of several tanks, gathered reading by reading.
#[derive(Debug, Clone)]
pub struct LitAmmonia<R> {
    bright_umol_per_m2_s: f64,
    /// Counted downwards, and at nothing while it is dark.
    hours: HoursUnder<R>,
    last: Option<(u32, R, R)>,
}

impl<R: Real> LitAmmonia<R> {
    /// Light over one bound while total ammonia is over another, mg N/L.
    pub fn over(bright_umol_per_m2_s: f64, tan_mg_n_per_l: f64) -> Self {
        LitAmmonia {
            bright_umol_per_m2_s,
            hours: HoursUnder::of(-tan_mg_n_per_l),
            last: None,
        }
    }
    /// Sees the light from a minute on, and total ammonia at it.
    #[inline(always)]
    pub fn see(&mut self, minute: u32, light_umol_per_m2_s: R, tan_mg_n_per_l: R) {
        if let Some((before, light, tan)) = self.last {
            let is_bright = R::of(self.bright_umol_per_m2_s).below(light);
            let lit = |tan: R| R::pick(is_bright, -tan, R::zero());
            self.hours.see(before, lit(tan));
            self.hours.see(minute, lit(tan_mg_n_per_l));
        }
        self.last = Some((minute, light_umol_per_m2_s, tan_mg_n_per_l));
    }
    /// Hours so far in one lane.
    pub fn lane(&self, lane: usize) -> f64 {
        self.hours.lane(lane)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn light_counts_from_its_switch_and_ammonia_from_where_it_crosses() {
        let mut hours = LitAmmonia::<f64>::over(50.0, 0.5);
        // dark from 09:00, lit from 10:00 to 13:00; ammonia falls from 1 to 0 between 11:00 and 13:00
        for (minute, light, tan) in [
            (540, 0.0, 1.0),
            (600, 60.0, 1.0),
            (660, 60.0, 1.0),
            (780, 0.0, 0.0),
            (840, 0.0, 1.0),
            (900, 50.0, 1.0),
            (960, 50.0, 1.0),
        ] {
            hours.see(minute, light, tan);
        }
        // one hour, then half of two; light of just the bound does not count; 1e-9 is rounding
        assert!((hours.lane(0) - 2.0).abs() < 1e-9, "{}", hours.lane(0));
    }
}
