//! Everything that can be read off a tank at one instant.

use crate::base::real::Real;
use crate::chemistry::indicator;
use crate::model::pool::MAX_STANDS;

/// Which side of the events of its minute a reading was taken on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Side {
    /// Nothing happened at this minute.
    Plain,
    /// Just before the events of this minute.
    Before,
    /// Just after them.
    After,
}

/// Everything that can be read off a tank at one instant.
#[derive(Debug, Clone, Copy)]
pub struct Reading<R = f64> {
    /// Minutes since midnight of day 0.
    pub minute: u32,
    /// Side of the events of this minute.
    pub side: Side,
    /// Total ammonia, mg N/L.
    pub tan_mg_n_per_l: R,
    /// Free ammonia, mg N/L.
    pub free_ammonia_mg_n_per_l: R,
    /// Nitrite, mg N/L.
    pub nitrite_mg_n_per_l: R,
    /// Nitrous acid, mg N/L.
    pub nitrous_acid_mg_n_per_l: R,
    /// Nitrate, mg N/L.
    pub nitrate_mg_n_per_l: R,
    /// Phosphate, mg P/L.
    pub phosphate_mg_p_per_l: R,
    /// Potassium, mg/L.
    pub potassium_mg_per_l: R,
    /// Chelated iron, mg/L.
    pub iron_mg_per_l: R,
    /// Oxygen, mg/L.
    pub oxygen_mg_per_l: R,
    /// Oxygen, % of saturation.
    pub oxygen_saturation_percent: R,
    /// Carbon dioxide, mg/L.
    pub co2_mg_per_l: R,
    /// Carbon dioxide as the indicator shows it, mg/L.
    pub indicator_co2_mg_per_l: R,
    /// pH.
    pub ph: R,
    /// Alkalinity, meq/L.
    pub alkalinity_meq_per_l: R,
    /// Inorganic carbon, mmol/L.
    pub inorganic_carbon_mmol_per_l: R,
    /// Hardness, meq/L.
    pub hardness_meq_per_l: R,
    /// Chloride, mg/L.
    pub chloride_mg_per_l: R,
    /// Free chlorine, mg Cl2/L.
    pub chlorine_mg_cl2_per_l: R,
    /// Monochloramine, mg Cl2/L.
    pub chloramine_mg_cl2_per_l: R,
    /// Water above the soil, L.
    pub volume_l: R,
    /// Temperature, °C.
    pub temperature_c: R,
    /// Light at the soil, µmol/m²/s.
    pub light_umol_per_m2_s: R,
    /// Gas leaving the cylinder, mg/h.
    pub gas_mg_per_h: R,
    /// Gas that has left the cylinder since filling, g.
    pub gas_used_g: R,
    /// Air through the stone, L/min.
    pub air_l_per_min: R,
    /// Ammonia oxidisers, mg COD.
    pub ammonia_oxidisers_mg_cod: R,
    /// Nitrite oxidisers, mg COD.
    pub nitrite_oxidisers_mg_cod: R,
    /// Complete oxidisers, mg COD.
    pub complete_oxidisers_mg_cod: R,
    /// What the microbes could turn to nitrite and beyond with food in plenty, mg N/day.
    pub ammonia_capacity_mg_n_per_day: R,
    /// What the microbes could turn from nitrite to nitrate with food in plenty, mg N/day.
    pub nitrite_capacity_mg_n_per_day: R,
    /// Share of full speed that pH, carbon and inhibition leave the nitrite oxidisers, 0 to 1.
    pub nitrite_oxidiser_speed_frac: R,
    /// Exchangeable ammonium of the soil, mg N.
    pub soil_ammonium_mg_n: R,
    /// Slow organic nitrogen of the soil, mg N.
    pub soil_organic_n_mg: R,
    /// Exchangeable phosphorus of the soil, mg P.
    pub soil_phosphorus_mg_p: R,
    /// Acid-exchange capacity left, meq.
    pub soil_acid_meq: R,
    /// Ammonium in the pore water of the soil, mg N/L.
    pub pore_water_ammonium_mg_n_per_l: R,
    /// Detritus, g dry weight.
    pub detritus_g: R,
    /// Nitrogen of the detritus, mg N.
    pub detritus_mg_n: R,
    /// Algae, g dry weight per m² of lit surface.
    pub algae_g_per_m2: R,
    /// Nitrogen of the algae, mg N.
    pub algae_mg_n: R,
    /// Plants, g dry weight (submersed and out-of-water tissue).
    pub plants_g: R,
    /// Nitrogen of the plants, mg N.
    pub plants_mg_n: R,
    /// Each stand, g dry weight.
    pub stands_g: [R; MAX_STANDS],
    /// Share of the bed shaded by plants, 0 to 1.
    pub canopy_frac: R,
}

impl<R: Real> Reading<R> {
    /// What was read in one lane.
    pub fn lane(&self, lane: usize) -> Reading {
        let of = |number: R| number.lane(lane);
        Reading {
            minute: self.minute,
            side: self.side,
            tan_mg_n_per_l: of(self.tan_mg_n_per_l),
            free_ammonia_mg_n_per_l: of(self.free_ammonia_mg_n_per_l),
            nitrite_mg_n_per_l: of(self.nitrite_mg_n_per_l),
            nitrous_acid_mg_n_per_l: of(self.nitrous_acid_mg_n_per_l),
            nitrate_mg_n_per_l: of(self.nitrate_mg_n_per_l),
            phosphate_mg_p_per_l: of(self.phosphate_mg_p_per_l),
            potassium_mg_per_l: of(self.potassium_mg_per_l),
            iron_mg_per_l: of(self.iron_mg_per_l),
            oxygen_mg_per_l: of(self.oxygen_mg_per_l),
            oxygen_saturation_percent: of(self.oxygen_saturation_percent),
            co2_mg_per_l: of(self.co2_mg_per_l),
            indicator_co2_mg_per_l: of(self.indicator_co2_mg_per_l),
            ph: of(self.ph),
            alkalinity_meq_per_l: of(self.alkalinity_meq_per_l),
            inorganic_carbon_mmol_per_l: of(self.inorganic_carbon_mmol_per_l),
            hardness_meq_per_l: of(self.hardness_meq_per_l),
            chloride_mg_per_l: of(self.chloride_mg_per_l),
            chlorine_mg_cl2_per_l: of(self.chlorine_mg_cl2_per_l),
            chloramine_mg_cl2_per_l: of(self.chloramine_mg_cl2_per_l),
            volume_l: of(self.volume_l),
            temperature_c: of(self.temperature_c),
            light_umol_per_m2_s: of(self.light_umol_per_m2_s),
            gas_mg_per_h: of(self.gas_mg_per_h),
            gas_used_g: of(self.gas_used_g),
            air_l_per_min: of(self.air_l_per_min),
            ammonia_oxidisers_mg_cod: of(self.ammonia_oxidisers_mg_cod),
            nitrite_oxidisers_mg_cod: of(self.nitrite_oxidisers_mg_cod),
            complete_oxidisers_mg_cod: of(self.complete_oxidisers_mg_cod),
            ammonia_capacity_mg_n_per_day: of(self.ammonia_capacity_mg_n_per_day),
            nitrite_capacity_mg_n_per_day: of(self.nitrite_capacity_mg_n_per_day),
            nitrite_oxidiser_speed_frac: of(self.nitrite_oxidiser_speed_frac),
            soil_ammonium_mg_n: of(self.soil_ammonium_mg_n),
            soil_organic_n_mg: of(self.soil_organic_n_mg),
            soil_phosphorus_mg_p: of(self.soil_phosphorus_mg_p),
            soil_acid_meq: of(self.soil_acid_meq),
            pore_water_ammonium_mg_n_per_l: of(self.pore_water_ammonium_mg_n_per_l),
            detritus_g: of(self.detritus_g),
            detritus_mg_n: of(self.detritus_mg_n),
            algae_g_per_m2: of(self.algae_g_per_m2),
            algae_mg_n: of(self.algae_mg_n),
            plants_g: of(self.plants_g),
            plants_mg_n: of(self.plants_mg_n),
            stands_g: self.stands_g.map(of),
            canopy_frac: of(self.canopy_frac),
        }
    }
}

impl Reading {
    /// pH of the indicator's reference liquid, which gives it its colour.
    pub fn indicator_ph(&self) -> f64 {
        indicator::reference_ph(self.indicator_co2_mg_per_l, self.temperature_c)
    }
}
