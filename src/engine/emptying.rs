//! Pools that their eaters would empty within a part of a step.
//!
//! Where leaves and films take total ammonia or nitrite down to what comes after, or everything that breathes does so
//! with oxygen, the pool turns over within minutes: what is taken goes straight with what is there, and the scheme
//! would step over nothing. What the eaters take is therefore fitted to the exponential that it is: the looks
//! are taken where the pool has come to by then (exponential time differencing, the scheme of Cox & Matthews 2002,
//! J. Comput. Phys. 176: 430), and the extents of the rows that take from it get the weights of [`Fading`].
//!
//! ```text
//! λ = taken/pool at the start      z = λ·Δt      n = dpool/dt + λ·pool, at each look
//! pool at the looks   y₁ = y₀·e^(−z/2) + g·n₀           g = (1 − e^(−z/2))/λ
//!                     y₂ = y₀·e^(−z) + G·(2·n₁ − n₀)    G = (1 − e^(−z))/λ
//! ```
//! Pools still change by rows × extents alone, so that every budget closes as it does elsewhere. A row that takes from
//! two such pools is fitted to the last of them.

use crate::base::real::Real;
use crate::model::matrix::PerRow;
use crate::model::pool::Pool;
use crate::model::state::State;
use crate::model::tank_model::TankModel;

use super::fading::Fading;

/// Pools that turn over more often than this in a part are fitted: below, the scheme is off by less than
/// half a percent of what is left (0.604 for e^(−1/2)).
const TURNS: f64 = 0.5;

/// A pool that is emptied within a part, in some lanes; symbols as in the head of this file.
#[derive(Debug, Clone, Copy)]
pub(super) struct Emptying<R: Real> {
    pool: Pool,
    /// The lanes.
    here: R::Mask,
    /// λ, per day.
    per_day: R,
    fading: Fading<R>,
    /// g, days.
    gain: R,
    /// y₀, and where the present look was taken.
    start: R,
    now: R,
}

impl<R: Real> Emptying<R> {
    /// Of a pool, from the rates at the start of a part; none where no lane empties it.
    #[inline(always)]
    pub(super) fn of(
        model: &TankModel<R>,
        pool: Pool,
        state: &State<R>,
        rates: &PerRow<R>,
        days: R,
    ) -> Option<Self> {
        let start = state[pool];
        let takers = model.matrix().takers(pool).iter();
        let taken = takers.fold(R::zero(), |sum, (row, amount)| {
            sum - *amount * rates[usize::from(*row)]
        });
        // a product, so that an empty pool divides nothing
        let here = (R::of(TURNS) * start).below(taken * days);
        let here = R::both(here, R::zero().below(start));
        if !R::any(here) {
            return None;
        }
        let per_day = R::pick(here, taken / start, R::one());
        let fading = Fading::new(per_day * days);
        Some(Emptying {
            pool,
            here,
            per_day,
            fading,
            gain: (R::one() - fading.left_in_half()) / per_day,
            start,
            now: start,
        })
    }

    /// Puts the pool where it has come to at the next look, given where the rates of this one lead in so many days.
    #[inline(always)]
    pub(super) fn lead(&mut self, look: usize, ahead: R, state: &mut State<R>) {
        let straight = state[self.pool];
        let left_in_half = self.fading.left_in_half();
        // what the rates that lead to the end were looked at with: twice the middle less the start
        let (left, gain, looked_at) = match look {
            0 => (left_in_half, self.gain, self.now),
            _ => (
                left_in_half * left_in_half,
                self.gain * (R::one() + left_in_half),
                self.now + self.now - self.start,
            ),
        };
        let n = (straight - self.start) / ahead + self.per_day * looked_at;
        let next = self.start * left + gain * n;
        self.now = R::pick(self.here, next, straight);
        state[self.pool] = self.now;
    }

    /// Leaves the pool to the scheme in some lanes.
    #[inline(always)]
    pub(super) fn give_up(&mut self, lanes: R::Mask) {
        self.here = R::both(self.here, R::not(lanes));
    }

    /// Fits the extents of the rows that take from the pool; `rates` are those at the start, in the middle and at
    /// the end.
    #[inline(always)]
    pub(super) fn fit(
        &self,
        model: &TankModel<R>,
        rates: &[PerRow<R>; 3],
        days: R,
        extents: &mut PerRow<R>,
    ) {
        self.each_taker(model, rates, extents, |looks| {
            days * self.fading.mean(looks)
        });
    }

    /// The same up to a share of the part.
    pub(super) fn fit_inside(
        &self,
        model: &TankModel<R>,
        rates: &[PerRow<R>; 3],
        (days, share): (R, R),
        extents: &mut PerRow<R>,
    ) {
        let until = |looks| days * self.fading.mean_until(share, looks);
        self.each_taker(model, rates, extents, until);
    }

    #[inline(always)]
    fn each_taker(
        &self,
        model: &TankModel<R>,
        rates: &[PerRow<R>; 3],
        extents: &mut PerRow<R>,
        extent: impl Fn([R; 3]) -> R,
    ) {
        for (row, _) in model.matrix().takers(self.pool) {
            let row = usize::from(*row);
            let fitted = extent(rates.each_ref().map(|rates| rates[row]));
            extents[row] = R::pick(self.here, fitted, extents[row]);
        }
    }
}
