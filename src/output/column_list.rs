//! The list of columns every tank has.
//!
//! One entry is: name, unit, whether `daily.csv` follows it and `events.csv` shows it, how it is
//! read off, what it is, how it is worked out.

use super::columns::{Column, Read};
use crate::analysis::criteria;
use crate::base::units::MEQ_PER_DKH;
use crate::engine::result::Reading;

/// Chloride over nitrite is written as this where there is next to no nitrite.
pub const CHLORIDE_TO_NITRITE_TOP: f64 = 10_000.0;

macro_rules! columns {
    ($($name:ident $unit:literal [$($shown:ident)*] $kind:ident($read:expr) $meaning:literal $derived:literal;)*) => {
        /// The columns every tank has, in the order of the file.
        pub fn fixed() -> Vec<Column> {
            vec![$(Column {
                name: stringify!($name).into(),
                unit: $unit,
                meaning: $meaning.into(),
                derived: $derived,
                daily: <[&str]>::contains(&[$(stringify!($shown)),*], &"daily"),
                at_events: <[&str]>::contains(&[$(stringify!($shown)),*], &"at_events"),
                read: Read::$kind($read),
            }),*]
        }
    };
}

columns! {
    // Nitrogen in the water
    tan_mg_n_per_l "mg N/L" [daily at_events] Reading(|r| r.tan_mg_n_per_l)
        "total ammonia (ammonium and ammonia together)" "pool of the model over the water volume";
    free_ammonia_mg_n_per_l "mg N/L" [daily at_events] Reading(|r| r.free_ammonia_mg_n_per_l)
        "free (un-ionised) ammonia" "total ammonia, pH and temperature (Emerson 1975)";
    nitrite_mg_n_per_l "mg N/L" [daily at_events] Reading(|r| r.nitrite_mg_n_per_l)
        "nitrite" "pool of the model over the water volume";
    nitrous_acid_mg_n_per_l "mg N/L" [] Reading(|r| r.nitrous_acid_mg_n_per_l)
        "nitrous acid" "nitrite, pH and temperature (Anthonisen 1976)";
    nitrate_mg_n_per_l "mg N/L" [daily at_events] Reading(|r| r.nitrate_mg_n_per_l)
        "nitrate" "pool of the model over the water volume";
    chronic_criterion_mg_n_per_l "mg N/L" [] Reading(|r| criteria::chronic_mg_n_per_l(r.ph, r.temperature_c))
        "total ammonia that may stand for a month" "pH and temperature (EPA 2013)";
    acute_criterion_mg_n_per_l "mg N/L" [] Reading(|r| criteria::acute_mg_n_per_l(r.ph, r.temperature_c, false))
        "total ammonia that may stand for an hour, no salmonids" "pH and temperature (EPA 2013)";
    chloride_mg_per_l "mg/L" [] Reading(|r| r.chloride_mg_per_l)
        "chloride" "pool of the model over the water volume";
    chloride_to_nitrite_ratio "g/g" [] Reading(chloride_to_nitrite)
        "chloride over nitrite nitrogen, by mass" "ratio of the two; 10000 stands for that much or more";
    // Nutrients
    phosphate_mg_p_per_l "mg P/L" [daily at_events] Reading(|r| r.phosphate_mg_p_per_l)
        "phosphate" "pool of the model over the water volume";
    potassium_mg_per_l "mg/L" [daily at_events] Reading(|r| r.potassium_mg_per_l)
        "potassium" "pool of the model over the water volume";
    iron_mg_per_l "mg/L" [daily at_events] Reading(|r| r.iron_mg_per_l)
        "chelated iron" "pool of the model over the water volume";
    // Gases
    oxygen_mg_per_l "mg/L" [daily at_events] Reading(|r| r.oxygen_mg_per_l)
        "oxygen" "pool of the model over the water volume";
    oxygen_saturation_percent "%" [daily] Reading(|r| r.oxygen_saturation_percent)
        "oxygen as a share of what air would give" "oxygen over saturation (Benson & Krause 1984)";
    co2_mg_per_l "mg/L" [daily at_events] Reading(|r| r.co2_mg_per_l)
        "dissolved carbon dioxide" "inorganic carbon, alkalinity and temperature";
    indicator_co2_mg_per_l "mg/L" [daily] Reading(|r| r.indicator_co2_mg_per_l)
        "carbon dioxide the drop checker has caught up with" "pool of the model, lags the water by tau_ind";
    indicator_ph "1" [] Reading(|r| r.indicator_ph())
        "pH of the drop checker's 4 dKH liquid" "from what it has caught up with";
    // Alkalinity, hardness and residuals
    ph "1" [daily at_events] Reading(|r| r.ph)
        "pH" "inorganic carbon, alkalinity and temperature";
    alkalinity_meq_per_l "meq/L" [] Reading(|r| r.alkalinity_meq_per_l)
        "alkalinity; may be negative" "pool of the model over the water volume";
    kh_dkh "dKH" [daily at_events] Reading(|r| r.alkalinity_meq_per_l / MEQ_PER_DKH)
        "alkalinity in German degrees, as kits read it" "alkalinity over 0.35665 meq/L";
    inorganic_carbon_mmol_per_l "mmol/L" [] Reading(|r| r.inorganic_carbon_mmol_per_l)
        "inorganic carbon in all forms" "pool of the model over the water volume";
    gh_dgh "dGH" [] Reading(|r| r.hardness_meq_per_l / MEQ_PER_DKH)
        "calcium and magnesium in German degrees" "hardness over 0.35665 meq/L";
    chlorine_mg_cl2_per_l "mg Cl2/L" [] Reading(|r| r.chlorine_mg_cl2_per_l)
        "free chlorine" "pool of the model over the water volume";
    chloramine_mg_cl2_per_l "mg Cl2/L" [] Reading(|r| r.chloramine_mg_cl2_per_l)
        "chloramine" "pool of the model over the water volume";
    // Heat, water and settings
    temperature_c "°C" [daily at_events] Reading(|r| r.temperature_c)
        "temperature of the water" "pool of the model";
    volume_l "L" [at_events] Reading(|r| r.volume_l)
        "water above the soil" "pool of the model";
    light_umol_per_m2_s "µmol/m²/s" [] Reading(|r| r.light_umol_per_m2_s)
        "light at the soil" "timer";
    gas_mg_per_h "mg/h" [] Reading(|r| r.gas_mg_per_h)
        "carbon dioxide leaving the cylinder" "timer, or the valve as tuned";
    air_l_per_min "L/min" [] Reading(|r| r.air_l_per_min)
        "air through the stone" "timer";
    water_changed_l "L" [] Sample(|s| s.water_changed_l)
        "water taken out by changes since filling" "running sum";
    gas_used_g "g" [] Reading(|r| r.gas_used_g)
        "gas that left the cylinder since filling" "running sum";
    // Microbes
    ammonia_oxidisers_mg_cod "mg COD" [] Reading(|r| r.ammonia_oxidisers_mg_cod)
        "microbes that oxidise ammonia to nitrite" "pool of the model";
    nitrite_oxidisers_mg_cod "mg COD" [] Reading(|r| r.nitrite_oxidisers_mg_cod)
        "microbes that oxidise nitrite to nitrate" "pool of the model";
    complete_oxidisers_mg_cod "mg COD" [] Reading(|r| r.complete_oxidisers_mg_cod)
        "microbes that oxidise ammonia to nitrate" "pool of the model";
    ammonia_capacity_mg_n_per_day "mg N/day" [] Reading(|r| r.ammonia_capacity_mg_n_per_day)
        "what the microbes could oxidise of ammonia" "their numbers at this pH, temperature and oxygen, with food in plenty";
    nitrite_capacity_mg_n_per_day "mg N/day" [] Reading(|r| r.nitrite_capacity_mg_n_per_day)
        "what the microbes could oxidise of nitrite" "their numbers at this pH, temperature and oxygen, with food in plenty";
    nitrite_oxidiser_speed_frac "1" [] Reading(|r| r.nitrite_oxidiser_speed_frac)
        "share of full speed left to the nitrite oxidisers" "pH, inorganic carbon and inhibition";
    // Soil
    soil_ammonium_mg_n "mg N" [] Reading(|r| r.soil_ammonium_mg_n)
        "exchangeable and pore-water ammonium of the soil" "pool of the model";
    soil_organic_n_mg_n "mg N" [] Reading(|r| r.soil_organic_n_mg)
        "slow organic nitrogen of the soil" "pool of the model";
    soil_phosphorus_mg_p "mg P" [] Reading(|r| r.soil_phosphorus_mg_p)
        "exchangeable phosphorus of the soil" "pool of the model";
    soil_acid_meq "meq" [] Reading(|r| r.soil_acid_meq)
        "acid-exchange capacity left in the soil" "pool of the model";
    pore_water_ammonium_mg_n_per_l "mg N/L" [] Reading(|r| r.pore_water_ammonium_mg_n_per_l)
        "ammonium in the pore water of the soil" "linear exchange (Kd)";
    // Plants, algae and what is dead
    detritus_g "g dry weight" [] Reading(|r| r.detritus_g)
        "dead plant matter, faeces and uneaten feed" "pool of the model";
    detritus_mg_n "mg N" [] Reading(|r| r.detritus_mg_n)
        "nitrogen of the detritus" "pool of the model";
    algae_g_per_m2 "g dry weight/m²" [] Reading(|r| r.algae_g_per_m2)
        "attached algae; only to be compared between runs" "pool of the model over the lit area";
    algae_mg_n "mg N" [] Reading(|r| r.algae_mg_n)
        "nitrogen of the algae" "algae times their nitrogen share";
    canopy_percent "%" [] Reading(|r| 100.0 * r.canopy_frac)
        "share of the bed shaded by plants" "1 − e^(−k_B·W), weighted by cover";
    plants_mg_n "mg N" [] Reading(|r| r.plants_mg_n)
        "nitrogen of the plants" "pool of the model";
    plants_g "g dry weight" [] Reading(|r| r.plants_g)
        "all plants, out-of-water tissue included" "pool of the model";
}

/// Chloride over nitrite nitrogen, by mass; never infinite.
fn chloride_to_nitrite(r: &Reading) -> f64 {
    let enough_to_divide = r.nitrite_mg_n_per_l * CHLORIDE_TO_NITRITE_TOP > r.chloride_mg_per_l;
    if enough_to_divide {
        r.chloride_mg_per_l / r.nitrite_mg_n_per_l
    } else {
        CHLORIDE_TO_NITRITE_TOP
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::analysis::charted::{QUANTITIES, all_of};
    use crate::analysis::example::Example;
    use crate::engine::result::Side;

    #[test]
    fn bands_are_drawn_of_columns_and_of_every_one_that_has_a_day() {
        let reading = Example::default().reading(0, Side::Plain);
        let columns = fixed();
        for quantity in QUANTITIES {
            let column = columns.iter().find(|column| column.name == quantity.name);
            let column = column.unwrap_or_else(|| panic!("no column {}", quantity.name));
            assert_eq!(column.unit, quantity.unit, "{}", quantity.name);
            assert_eq!(column.of(&reading), all_of(&reading)[quantity.place]);
        }
        for column in columns.iter().filter(|column| column.daily) {
            assert!(
                QUANTITIES.iter().any(|q| q.name == column.name),
                "{}",
                column.name
            );
        }
    }

    #[test]
    fn a_water_without_nitrite_still_has_a_number_for_its_chloride_ratio() {
        let mut reading = Example::default().reading(0, Side::Plain);
        reading.nitrite_mg_n_per_l = 0.0;
        assert_eq!(chloride_to_nitrite(&reading), CHLORIDE_TO_NITRITE_TOP);
        reading.chloride_mg_per_l = 0.0;
        assert!(chloride_to_nitrite(&reading).is_finite());
        reading.nitrite_mg_n_per_l = 2.0;
        reading.chloride_mg_per_l = 20.0;
        assert_eq!(chloride_to_nitrite(&reading), 10.0);
    }
}
