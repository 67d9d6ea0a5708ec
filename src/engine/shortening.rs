//! The rule that cuts steps into parts where gas exchange or a controller is fast.

use crate::base::real::Real;
use crate::model::tank_model::TankModel;
use crate::model::water::Water;

/// How many parts a stretch is cut into, in each lane: see the head of `step`.
#[inline(always)]
pub fn parts<R: Real>(
    model: &TankModel<R>,
    water: &Water<R>,
    days: f64,
    limits: &ShorteningRule<R>,
) -> R {
    let transfer = model.processes().gas_exchange.transfer(water);
    let gas = transfer.oxygen_l_per_day.most(transfer.co2_l_per_day);
    let controller = match water.held.cut_off_mmol_per_l {
        Some(_) => water.held.gas_mmol_per_day / limits.cut_band_mmol_per_l,
        None => R::zero(),
    };
    let exchange = (gas + controller) / water.volume();
    let thermostat = thermostat(model, water, days);
    let per_day = exchange.most(thermostat);
    let needed = (per_day * R::of(days) / limits.most_per_part).ceil();
    // in this order, so that what is not a number counts as one part
    let needed = R::one().most(needed).least(R::of(MOST_PARTS));
    needed * R::of(f64::from(limits.finer))
}

/// The speed of the thermostat, per day, as far as it counts: half of it while the temperature hardly moves,
/// when little can be missed, else all of it. Below its band it is at rest, but a step that enters the band
/// crosses a kink, whose place a step misses by part of its length.
#[inline(always)]
fn thermostat<R: Real>(model: &TankModel<R>, water: &Water<R>, days: f64) -> R {
    let heat = &model.processes().heat;
    let (temperature, edge) = (water.temperature(), heat.full_power_below_c());
    let k_per_day = heat.k_per_day(water);
    let moves = R::of(CALM_K_PER_DAY).below(k_per_day.abs());
    let within = R::pick(moves, R::one(), R::of(0.5));
    let enters = edge.below(temperature + k_per_day * R::of(days));
    let colder = R::pick(enters, R::of(AT_A_KINK), R::zero());
    heat.thermostat_per_day(water) * R::pick(temperature.below(edge), colder, within)
}

/// How many times the speed of the thermostat counts in a step that enters its band.
const AT_A_KINK: f64 = 4.0;

/// Temperature hardly moves below this: in an hour a thermostat of usual speed then misses a ten-thousandth
/// of a degree.
const CALM_K_PER_DAY: f64 = 1.0;

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
