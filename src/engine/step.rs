//! One step of time.
//!
//! The scheme is Heun's (explicit trapezoid, second order): rates at the start, a trial step with
//! them, rates at its end, and the mean of both for the step itself. Source: any text on ordinary
//! differential equations, for example Ascher & Petzold 1998. Nothing in the model is stiff at a
//! few minutes: the fastest part is the gas exchange of a strong air stone.
//!
//! In this order:
//! 1. Shorten: the step is cut into equal parts so that (gas exchange + air + valve controller)
//!    per day times the part is at most `dt_stiff` (0.3). What decides is the tank's own state at
//!    the start of the step and what is switched, nothing else. To measure the error of a step,
//!    every part can be cut further (see [`ShorteningRule::finer`]).
//! 2. Step processes, not pools: each row gets an extent (rate × time), and pools change by rows ×
//!    extents, so that whatever a row conserves is conserved.
//! 3. If a pool would fall below zero, the part is done again with processes held back: each by
//!    the scarcest pool it takes from. No pool is ever clipped.
//! 4. Extents are added up; the ledger is made of them.

use crate::base::real::Real;
use crate::model::held::Held;
use crate::model::matrix::{MAX_ROWS, PerRow};
use crate::model::pool::{POOLS, Pool};
use crate::model::state::State;
use crate::model::tank_model::TankModel;
use crate::model::water::Water;

use super::result::Work;

/// Room for one step; nothing is allocated while stepping.
#[derive(Debug, Clone)]
pub struct Stepper<R> {
    rows: usize,
    water: Water<R>,
    trial_water: Water<R>,
    /// How much H+ changed within the last part, as a factor: a guess for the next.
    drift: R,
    first: PerRow<R>,
    second: PerRow<R>,
    extents: PerRow<R>,
}

/// A length of time with what is switched during it.
#[derive(Debug, Clone, Copy)]
pub struct Stretch<R> {
    /// Start, days since midnight of day 0.
    pub from_days: f64,
    /// Length, days.
    pub days: f64,
    /// What is switched.
    pub held: Held<R>,
}

impl<R: Real> Stepper<R> {
    /// Room for the rows of a model.
    pub fn new(model: &TankModel<R>) -> Self {
        let none = [R::zero(); MAX_ROWS];
        Stepper {
            rows: model.matrix().rows(),
            water: Water::blank(),
            trial_water: Water::blank(),
            drift: R::one(),
            first: none,
            second: none,
            extents: none,
        }
    }

    /// Looks at a state, without stepping.
    pub fn look(
        &mut self,
        model: &TankModel<R>,
        state: &State<R>,
        held: &Held<R>,
        days: f64,
    ) -> &Water<R> {
        // where the last trial ended is the best guess for where this step begins
        self.water.hydrogen = self.trial_water.hydrogen;
        model.look(state, held, days, &mut self.water);
        &self.water
    }

    /// The water as it was last looked at.
    pub fn water(&self) -> &Water<R> {
        &self.water
    }

    /// Advances a state over a stretch, in `parts` equal parts, and adds the extents to `totals`.
    /// The state must have been looked at (see [`Stepper::look`]) under what the stretch holds.
    #[inline]
    pub fn advance(
        &mut self,
        model: &TankModel<R>,
        state: &mut State<R>,
        stretch: &Stretch<R>,
        parts: u32,
        totals: &mut [R],
        work: &mut Work,
    ) {
        let part_days = stretch.days / f64::from(parts);
        for part in 0..parts {
            let from_days = stretch.from_days + f64::from(part) * part_days;
            if part > 0 {
                self.look(model, state, &stretch.held, from_days);
            }
            let part = Stretch {
                from_days,
                days: part_days,
                held: stretch.held,
            };
            self.part(model, state, &part, work);
            for (total, extent) in totals.iter_mut().zip(&self.extents) {
                *total += *extent;
            }
        }
    }

    #[inline]
    fn part(
        &mut self,
        model: &TankModel<R>,
        state: &mut State<R>,
        part: &Stretch<R>,
        work: &mut Work,
    ) {
        let length = R::of(part.days);
        let rows = self.rows;
        model.rates(&self.water, &mut self.first[..rows]);
        for (extent, rate) in self.extents[..rows].iter_mut().zip(&self.first) {
            *extent = *rate * length;
        }
        let mut trial = *state;
        model.matrix().apply(&self.extents, &mut trial);
        let short = in_debt(&trial);
        if R::any(short) {
            model.matrix().hold_back(state, &mut self.extents, short);
            trial = *state;
            model.matrix().apply(&self.extents, &mut trial);
        }
        self.trial_water.hydrogen = self.water.hydrogen * self.drift;
        model.look(
            &trial,
            &part.held,
            part.from_days + part.days,
            &mut self.trial_water,
        );
        self.drift = self.trial_water.hydrogen * self.water.inverse_hydrogen;
        model.rates(&self.trial_water, &mut self.second[..rows]);
        let half = R::of(0.5) * length;
        for ((extent, first), second) in self.extents[..rows]
            .iter_mut()
            .zip(&self.first)
            .zip(&self.second)
        {
            *extent = (*first + *second) * half;
        }
        let before = *state;
        model.matrix().apply(&self.extents, state);
        let short_again = in_debt(state);
        if R::any(short_again) {
            model
                .matrix()
                .hold_back(&before, &mut self.extents, short_again);
            *state = before;
            model.matrix().apply(&self.extents, state);
        }
        work.steps += 1;
        work.evaluations += 2;
        work.held_back += u64::from(R::any(short) || R::any(short_again));
    }

    /// The first row whose rate is not an ordinary number, in either evaluation of the last part.
    pub fn impossible_row(&self) -> Option<usize> {
        let bad = |rates: &[R]| rates.iter().position(|rate| !rate.is_finite());
        bad(&self.first).or_else(|| bad(&self.second))
    }
}

/// Nothing for pools that must not be negative; more than any debt for those that may.
const ALLOWED_DEBT: [f64; POOLS] = {
    assert!(
        POOLS.is_multiple_of(4),
        "pools are looked through four abreast"
    );
    let mut allowed = [0.0; POOLS];
    allowed[Pool::Alkalinity.index()] = f64::MAX;
    allowed[Pool::Temperature.index()] = f64::MAX;
    allowed[Pool::Indicator.index()] = f64::MAX;
    allowed
};

/// Whether a pool that must not be negative is.
#[inline]
fn in_debt<R: Real>(state: &State<R>) -> R::Mask {
    const ABREAST: usize = 4;
    let mut least = [R::zero(); ABREAST];
    for (amounts, allowed) in state
        .0
        .as_chunks::<ABREAST>()
        .0
        .iter()
        .zip(ALLOWED_DEBT.as_chunks::<ABREAST>().0)
    {
        for lane in 0..ABREAST {
            least[lane] = least[lane].least(amounts[lane] + R::of(allowed[lane]));
        }
    }
    least[0]
        .least(least[1])
        .least(least[2].least(least[3]))
        .below(R::zero())
}

/// How many parts a stretch is cut into: see the head of this file.
#[inline]
pub fn parts(
    model: &TankModel<f64>,
    water: &Water<f64>,
    days: f64,
    limits: &ShorteningRule,
) -> u32 {
    let transfer = model.processes().gas_exchange.transfer(water);
    let gas = transfer.oxygen_l_per_day.max(transfer.co2_l_per_day);
    let controller = match water.held.cut_off_mmol_per_l {
        Some(_) => water.held.gas_mmol_per_day / limits.cut_band_mmol_per_l,
        None => 0.0,
    };
    let per_day = (gas + controller) / water.volume();
    let parts = (per_day * days / limits.most_per_part).ceil();
    let needed = if parts.is_finite() {
        (parts as u32).clamp(1, MOST_PARTS)
    } else {
        1
    };
    needed * limits.finer
}

/// Most parts the rule asks for.
const MOST_PARTS: u32 = 10_000;

/// What the shortening rule needs to know of the parameters.
#[derive(Debug, Clone, Copy)]
pub struct ShorteningRule {
    /// `dt_stiff`.
    pub most_per_part: f64,
    /// `cut_band`, mmol/L.
    pub cut_band_mmol_per_l: f64,
    /// Every part is cut into this many equal ones; 1 but where the error of a step is measured.
    pub finer: u32,
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_pools_that_may_be_negative_may_owe() {
        for (index, allowed) in ALLOWED_DEBT.iter().enumerate() {
            assert_eq!(
                *allowed > 0.0,
                Pool::at(index).may_be_negative(),
                "{:?}",
                Pool::at(index)
            );
        }
    }
}
