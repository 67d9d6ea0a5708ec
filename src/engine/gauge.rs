//! Reads a tank: everything a person could want to know of it at one instant.

use crate::base::real::Real;
use crate::base::units::CO2_G_PER_MOL;
use crate::model::pool::MAX_STANDS;
use crate::model::pool::Pool;
use crate::model::processes;
use crate::model::setup::Setup;
use crate::model::tank_model::TankModel;
use crate::model::water::Water;

use super::result::{Reading, Side};

/// Reads tanks of one setup.
#[derive(Debug, Clone)]
pub struct Gauge<R = f64> {
    lit_m2: R,
    covers: Vec<R>,
    algae_nitrogen_mg_per_g: R,
    emersed_nitrogen_mg_per_g: R,
    mg_per_h_and_mmol_per_day: R,
    cut_band_mmol_per_l: R,
    gas_row: usize,
    gas_g_per_mmol: R,
}

impl<R: Real> Gauge<R> {
    /// Prepares to read tanks of a setup and its model.
    pub fn new(setup: &Setup<'_, R>, model: &TankModel<R>) -> Gauge<R> {
        Gauge {
            lit_m2: setup.lit_m2(),
            covers: setup.stands.iter().map(|stand| stand.cover_frac).collect(),
            algae_nitrogen_mg_per_g: setup.get("q_NG"),
            emersed_nitrogen_mg_per_g: setup.get("Q0"),
            mg_per_h_and_mmol_per_day: R::of(CO2_G_PER_MOL) / (R::of(24.0) * setup.get("eta_CO2")),
            cut_band_mmol_per_l: setup.get("cut_band"),
            gas_row: gas_row(model),
            gas_g_per_mmol: R::of(CO2_G_PER_MOL / 1000.0) / setup.get("eta_CO2"),
        }
    }

    /// Reads a tank that has been looked at. What it has used up since filling is left at nothing; see
    /// [`Gauge::gas_used_g`].
    #[inline(always)]
    pub fn read(
        &self,
        model: &TankModel<R>,
        water: &Water<R>,
        minute: u32,
        side: Side,
    ) -> Reading<R> {
        let state = &water.state;
        let per_l = R::one() / water.volume();
        let saturation = model.processes().gas_exchange.oxygen_saturation(water);
        let [ammonia_capacity, nitrite_capacity] = model.capacity(water);
        let plants = self.plants(model, water);
        Reading {
            minute,
            side,
            tan_mg_n_per_l: water.tan,
            free_ammonia_mg_n_per_l: water.free_ammonia,
            nitrite_mg_n_per_l: water.nitrite,
            nitrous_acid_mg_n_per_l: water.nitrous_acid,
            nitrate_mg_n_per_l: water.nitrate,
            phosphate_mg_p_per_l: water.phosphate,
            potassium_mg_per_l: water.potassium,
            iron_mg_per_l: water.iron,
            oxygen_mg_per_l: water.oxygen,
            oxygen_saturation_percent: R::of(100.0) * water.oxygen / saturation,
            co2_mg_per_l: water.co2_mg_per_l(),
            indicator_co2_mg_per_l: state[Pool::Indicator],
            ph: -(water.hydrogen.ln() * R::of(std::f64::consts::LOG10_E)),
            alkalinity_meq_per_l: water.alkalinity,
            inorganic_carbon_mmol_per_l: water.carbon,
            hardness_meq_per_l: state[Pool::Hardness] * per_l,
            chloride_mg_per_l: state[Pool::Chloride] * per_l,
            chlorine_mg_cl2_per_l: state[Pool::Chlorine] * per_l,
            chloramine_mg_cl2_per_l: state[Pool::Chloramine] * per_l,
            volume_l: water.volume(),
            temperature_c: water.temperature(),
            light_umol_per_m2_s: water.held.light_umol_per_m2_s,
            gas_mg_per_h: self.gas(water),
            gas_used_g: R::zero(),
            air_l_per_min: water.held.air_l_per_min,
            ammonia_oxidisers_mg_cod: state[Pool::AmmoniaOxidisers],
            nitrite_oxidisers_mg_cod: state[Pool::NitriteOxidisers],
            complete_oxidisers_mg_cod: state[Pool::CompleteOxidisers],
            ammonia_capacity_mg_n_per_day: ammonia_capacity,
            nitrite_capacity_mg_n_per_day: nitrite_capacity,
            nitrite_oxidiser_speed_frac: model.processes().nitrite_oxidation.ease(water),
            soil_ammonium_mg_n: state[Pool::SoilAmmonium],
            soil_organic_n_mg: state[Pool::SoilOrganicN],
            soil_phosphorus_mg_p: state[Pool::SoilPhosphorus],
            soil_acid_meq: state[Pool::SoilAcid],
            pore_water_ammonium_mg_n_per_l: water.pore_tan,
            detritus_g: state[Pool::FastDetritus] + state[Pool::SlowDetritus],
            detritus_mg_n: state[Pool::FastDetritusN] + state[Pool::SlowDetritusN],
            algae_g_per_m2: state[Pool::Algae] / self.lit_m2,
            algae_mg_n: state[Pool::Algae] * self.algae_nitrogen_mg_per_g,
            plants_g: plants.grams,
            plants_mg_n: plants.mg_n,
            stands_g: plants.stands_g,
            canopy_frac: plants.shade,
        }
    }

    /// Gas that has left the cylinder, g, by the extents of all rows since filling.
    #[inline(always)]
    pub fn gas_used_g(&self, extents: &[R]) -> R {
        extents[self.gas_row] * self.gas_g_per_mmol
    }

    #[inline(always)]
    fn plants(&self, model: &TankModel<R>, water: &Water<R>) -> Plants<R> {
        let canopies = model.canopies(&water.state);
        let mut plants = Plants {
            grams: R::zero(),
            mg_n: R::zero(),
            stands_g: [R::zero(); MAX_STANDS],
            shade: R::zero(),
        };
        for (stand, cover) in self.covers.iter().enumerate() {
            let emersed = water.state[Pool::Emersed(stand)];
            let grams = water.state[Pool::Biomass(stand)] + emersed;
            plants.stands_g[stand] = grams;
            plants.grams += grams;
            plants.mg_n +=
                water.state[Pool::TissueN(stand)] + emersed * self.emersed_nitrogen_mg_per_g;
            plants.shade += *cover * (R::one() - canopies[stand].passed);
        }
        plants
    }

    /// Gas leaving the cylinder, mg/h, a controller's share counted.
    #[inline(always)]
    fn gas(&self, water: &Water<R>) -> R {
        let open = match water.held.cut_off_mmol_per_l {
            None => R::one(),
            Some(cut_off) => ((cut_off - water.co2) / self.cut_band_mmol_per_l).unit(),
        };
        water.held.gas_mmol_per_day * open * self.mg_per_h_and_mmol_per_day
    }
}

/// The row by which gas comes in.
fn gas_row<R: Real>(model: &TankModel<R>) -> usize {
    let gas = |(process, _): &(usize, _)| processes::IDS[*process] == "co2_injection";
    (model.rows().iter().position(gas)).expect("gas comes in by a row of its own")
}

struct Plants<R> {
    grams: R,
    mg_n: R,
    stands_g: [R; MAX_STANDS],
    shade: R,
}
