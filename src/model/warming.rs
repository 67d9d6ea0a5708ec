//! The course of temperature within a part of a step.
//!
//! A thermostat is the fastest thing in most tanks, with a kink at either end of its band, and nothing else
//! acts on the temperature within the hour: so it is worked out ahead, in a few finer steps of its own, and
//! the tank's steps need not be cut for it.
//!
//! ```text
//! dT/dt = c₀ + c₁·d + c₂·d² + heater·clamp(k₀ + k₁·d, 0, 1)        d = T − T₀
//! ```
//! Losses go straight with the temperature but for evaporation, of which the square is the last term
//! worth taking: a degree away the cube is 3e-5 of it. The water volume is taken as it stands.

use crate::base::real::Real;

/// Finer steps in half a part.
const IN_HALF_A_PART: usize = 2;

/// The course of temperature over a part of a step.
#[derive(Debug, Clone, Copy)]
pub struct Course<R> {
    /// In the middle and at the end, °C.
    pub looks_c: [R; 2],
    /// How fast the water warms at the start, K/day.
    pub first_k_per_day: R,
    /// On the whole.
    pub k_per_day: R,
    /// At the end.
    pub last_k_per_day: R,
}

/// How a tank warms from some temperature on: see the head of this file.
#[derive(Debug, Clone, Copy)]
pub struct Warming<R> {
    /// T₀, °C.
    pub from_c: R,
    /// All but the heater: c₀, c₁ and c₂, K/day and so on.
    pub calm: [R; 3],
    /// The heater at full power, K/day.
    pub heater: R,
    /// What the thermostat calls for: k₀, k₁. Full power from 1 on, nothing below 0.
    pub call: [R; 2],
}

impl<R: Real> Warming<R> {
    /// How fast the water warms at T₀, K/day.
    #[inline(always)]
    pub fn now(&self) -> R {
        self.at(R::zero())
    }

    /// Where the temperature comes to in so many days.
    #[inline(always)]
    pub fn course(&self, days: R) -> Course<R> {
        let step = days * R::of(0.5 / IN_HALF_A_PART as f64);
        let middle = self.go_on(R::zero(), step);
        let end = self.go_on(middle, step);
        Course {
            looks_c: [middle, end].map(|above| self.from_c + above),
            first_k_per_day: self.now(),
            k_per_day: end / days,
            last_k_per_day: self.at(end),
        }
    }

    /// K/day, so many degrees above T₀.
    #[inline(always)]
    fn at(&self, above_k: R) -> R {
        let ([c0, c1, c2], [k0, k1]) = (self.calm, self.call);
        let call = (k0 + k1 * above_k).unit();
        (c0 + (c1 + c2 * above_k) * above_k) + self.heater * call
    }

    /// From so many degrees above T₀ to where the finer steps of half a part lead: Runge and Kutta's
    /// classical scheme.
    #[inline(always)]
    fn go_on(&self, mut above_k: R, days: R) -> R {
        let half = R::of(0.5) * days;
        for _ in 0..IN_HALF_A_PART {
            let first = self.at(above_k);
            let second = self.at(above_k + half * first);
            let third = self.at(above_k + half * second);
            let last = self.at(above_k + days * third);
            let middle = second + third;
            above_k += (first + (middle + middle) + last) * days * R::of(1.0 / 6.0);
        }
        above_k
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::base::maths;

    const CALM: Warming<f64> = Warming {
        from_c: 25.0,
        calm: [-6.0, -2.0, 0.0],
        heater: 0.0,
        call: [0.0, -1.0],
    };

    /// dT/dt = a − b·T: T₀ + a/b·(1 − exp(−b·t)).
    fn exactly(a: f64, b: f64, days: f64) -> f64 {
        25.0 + a / b * (1.0 - maths::exp(-b * days))
    }

    #[test]
    fn without_a_heater_water_cools_exponentially() {
        let hour = 1.0 / 24.0;
        let course = CALM.course(hour);
        // the error of the scheme, (2/96)^5/120 of three degrees, is 1e-10
        let [middle_c, end_c] = course.looks_c;
        assert!((middle_c - exactly(-6.0, 2.0, hour / 2.0)).abs() < 1e-9);
        assert!((end_c - exactly(-6.0, 2.0, hour)).abs() < 1e-9);
        assert_eq!(course.first_k_per_day, -6.0);
        assert!((course.last_k_per_day - (-6.0 - 2.0 * (end_c - 25.0))).abs() < 1e-9);
    }

    #[test]
    fn inside_its_band_a_thermostat_ends_a_difference_exponentially() {
        let inside = Warming {
            heater: 20.0,
            call: [0.5, -1.0],
            ..CALM
        };
        let hour = 1.0 / 24.0;
        // 4 K/day, less 22 per degree; (22/96)^5/120 of 0.2 K in each of four finer steps
        assert!((inside.course(hour).looks_c[1] - exactly(4.0, 22.0, hour)).abs() < 5e-6);
    }

    #[test]
    fn from_the_cold_a_tank_warms_at_full_power_to_its_band_and_settles_there() {
        let cold = Warming {
            calm: [-1.0, 0.0, 0.0],
            heater: 20.0,
            call: [1.2, -1.0],
            ..CALM
        };
        let days = 0.25 / 19.0;
        let [middle_c, end_c] = cold.course(days).looks_c;
        // 0.2 K below the band, 19 K/day: within it, in the last fifth of the part
        assert!((middle_c - 25.125).abs() < 1e-12);
        assert!(25.24 < end_c && end_c < 25.25, "{end_c}");
        let settled = (0..200).fold(cold, |now, _| {
            let above = now.course(1.0 / 24.0).looks_c[1] - now.from_c;
            Warming {
                from_c: now.from_c + above,
                call: [now.call[0] - above, -1.0],
                ..now
            }
        });
        // where the heater makes good what is lost: a call of 1/20
        assert!((settled.from_c - (25.0 + 1.2 - 0.05)).abs() < 1e-9);
    }
}
