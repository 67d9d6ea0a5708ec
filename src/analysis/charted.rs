//! The quantities that bands are drawn of: one list, for charts, tables and many runs.

use crate::base::real::Real;
use crate::engine::result::Reading;

use super::figures::kh_dkh;

/// A quantity that bands are drawn of.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Quantity {
    /// Name with unit, as in the tables.
    pub name: &'static str,
    /// Unit; `1` for pH.
    pub unit: &'static str,
    /// Place in the list, and in what [`all_of`] gives.
    pub place: usize,
}

macro_rules! charted {
    ($($constant:ident $name:ident $unit:literal $value:expr;)*) => {
        #[allow(non_camel_case_types, clippy::upper_case_acronyms)]
        enum Place { $($constant),* }

        $(
            #[doc = concat!("`", stringify!($name), "`")]
            pub const $constant: Quantity = Quantity {
                name: stringify!($name),
                unit: $unit,
                place: Place::$constant as usize,
            };
        )*

        /// All of them, in the order of the tables.
        pub const QUANTITIES: [Quantity; [$($unit),*].len()] = [$($constant),*];

        /// The values of all of them.
        #[inline(always)]
        pub fn all_of<R: Real>(reading: &Reading<R>) -> [R; QUANTITIES.len()] {
            [$({
                let value: fn(&Reading<R>) -> R = $value;
                value(reading)
            }),*]
        }
    };
}

charted! {
    TAN tan_mg_n_per_l "mg N/L" |r| r.tan_mg_n_per_l;
    FREE_AMMONIA free_ammonia_mg_n_per_l "mg N/L" |r| r.free_ammonia_mg_n_per_l;
    NITRITE nitrite_mg_n_per_l "mg N/L" |r| r.nitrite_mg_n_per_l;
    NITRATE nitrate_mg_n_per_l "mg N/L" |r| r.nitrate_mg_n_per_l;
    PHOSPHATE phosphate_mg_p_per_l "mg P/L" |r| r.phosphate_mg_p_per_l;
    POTASSIUM potassium_mg_per_l "mg/L" |r| r.potassium_mg_per_l;
    IRON iron_mg_per_l "mg/L" |r| r.iron_mg_per_l;
    OXYGEN oxygen_mg_per_l "mg/L" |r| r.oxygen_mg_per_l;
    OXYGEN_SATURATION oxygen_saturation_percent "%" |r| r.oxygen_saturation_percent;
    CO2 co2_mg_per_l "mg/L" |r| r.co2_mg_per_l;
    INDICATOR_CO2 indicator_co2_mg_per_l "mg/L" |r| r.indicator_co2_mg_per_l;
    PH ph "1" |r| r.ph;
    KH kh_dkh "dKH" kh_dkh;
    TEMPERATURE temperature_c "°C" |r| r.temperature_c;
    ALGAE algae_g_per_m2 "g dry weight/m²" |r| r.algae_g_per_m2;
    PLANTS plants_g "g dry weight" |r| r.plants_g;
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::analysis::example::Example;
    use crate::engine::result::Side;

    #[test]
    fn every_quantity_has_the_value_at_its_place() {
        let reading = Example::default().reading(0, Side::Plain);
        let all = all_of(&reading);
        for (place, quantity) in QUANTITIES.iter().enumerate() {
            assert_eq!(quantity.place, place);
        }
        assert_eq!(all[PH.place], reading.ph);
        assert_eq!(all[PLANTS.place], reading.plants_g);
    }
}
