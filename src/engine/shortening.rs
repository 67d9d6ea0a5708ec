//! The rule that cuts steps into parts where gas exchange or a controller is fast.

use crate::base::real::Real;
use crate::model::tank_model::TankModel;
use crate::model::water::Water;

/// How many parts a stretch is cut into, in each lane: see the head of `step`. Where things were `stirred` not long ago
/// gas exchange is cut so many times finer.
#[inline(always)]
pub fn parts<R: Real>(
    model: &TankModel<R>,
    water: &Water<R>,
    days: f64,
    (stirred, limits): (R, &ShorteningRule<R>),
) -> R {
    let transfer = model.processes().gas_exchange.transfer(water);
    let gas = transfer.oxygen_l_per_day.most(transfer.co2_l_per_day);
    let controller = match water.held.cut_off_mmol_per_l {
        Some(_) => water.held.gas_mmol_per_day / limits.cut_band_mmol_per_l,
        None => R::zero(),
    };
    let per_volume = R::of(days) / (water.volume() * limits.most_per_part);
    // a controller closes at a kink, and wants to be cut twice as finely as what only fades
    let settled = (gas + controller + controller) * per_volume;
    let fades = gas * per_volume;
    let stirred = fades * stirred.least(R::of(STEEPLY) * fades);
    let needed = settled.most(stirred).ceil();
    // in this order, so that what is not a number counts as one part
    let needed = R::one().most(needed).least(R::of(MOST_PARTS));
    needed * R::of(f64::from(limits.finer))
}

/// Where things were stirred, slow exchange is cut by the square: what a step errs by rises by more than its length
/// (judgement: exchange below a third in the hour is not cut at all).
const STEEPLY: f64 = 7.0;

/// Most parts the rule asks for.
const MOST_PARTS: f64 = 10_000.0;

/// What the shortening rule needs to know of the parameters.
#[derive(Debug, Clone, Copy)]
pub struct ShorteningRule<R = f64> {
    /// `dt_stiff`.
    pub most_per_part: R,
    /// `cut_band`, mmol/L.
    pub cut_band_mmol_per_l: R,
    /// Every part is cut into this many equal ones; 1 but where the error of a step is measured.
    pub finer: u32,
}
