//! The figures of a tank as one list: name, unit, meaning, and how they are read off; for tables of members,
//! and to hold plans against each other.

use super::figures::Figures;

/// Which way a figure is better.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Better {
    /// The less the better.
    Less,
    /// The more the better.
    More,
    /// Neither way.
    Neither,
}

/// One figure of a tank.
#[derive(Debug, Clone, Copy)]
pub struct FigureOf {
    /// Name with unit, as in the tables; it stays once published.
    pub name: &'static str,
    /// Unit; `1` for pH and days.
    pub unit: &'static str,
    /// What it is.
    pub what: &'static str,
    /// What it is in a few words.
    pub short: &'static str,
    /// Which way it is better; of plants and nitrate a judgement.
    pub better: Better,
    /// Differences smaller than this are not told: about what a card or a gauge shows (judgement), in the
    /// unit of the figure.
    pub told_from: f64,
    /// Reads it off; none where there is none.
    pub read: fn(&Figures) -> Option<f64>,
}

impl PartialEq for FigureOf {
    fn eq(&self, other: &FigureOf) -> bool {
        self.name == other.name
    }
}

macro_rules! listed {
    ($($name:ident $unit:literal $better:ident $told_from:literal $short:literal $what:literal $read:expr;)*) => {
        /// All figures, in the order of the tables.
        pub const FIGURES: [FigureOf; [$($unit),*].len()] = [$(FigureOf {
            name: stringify!($name),
            unit: $unit,
            what: $what,
            short: $short,
            better: Better::$better,
            told_from: $told_from,
            read: $read,
        }),*];
    };
}

listed! {
    tan_peak_mg_n_per_l "mg N/L" Less 0.05 "peak ammonia" "highest total ammonia" |f| Some(f.tan_peak.value);
    free_ammonia_peak_mg_n_per_l "mg N/L" Less 0.001 "peak free NH3" "highest free ammonia" |f| Some(f.free_ammonia_peak.value);
    nitrite_peak_mg_n_per_l "mg N/L" Less 0.05 "peak nitrite" "highest nitrite" |f| Some(f.nitrite_peak.value);
    nitrate_peak_mg_n_per_l "mg N/L" Less 0.1 "peak nitrate" "highest nitrate" |f| Some(f.nitrate_peak.value);
    nitrate_end_mg_n_per_l "mg N/L" Less 0.1 "end nitrate" "nitrate at the end" |f| Some(f.nitrate_end);
    oxygen_low_mg_per_l "mg/L" More 0.1 "worst night O2" "lowest oxygen: the worst night" |f| Some(f.oxygen_low.value);
    co2_high_mg_per_l "mg/L" Less 0.5 "highest CO2" "highest carbon dioxide" |f| Some(f.co2_high.value);
    kh_low_dkh "dKH" More 0.1 "lowest KH" "lowest KH" |f| Some(f.kh_low.value);
    tan_over_limit_h "h" Less 1.0 "ammonia over limit" "time with total ammonia over its limit" |f| Some(f.hours.tan);
    free_ammonia_over_limit_h "h" Less 1.0 "free NH3 over limit" "time with free ammonia over its limit" |f| Some(f.hours.free_ammonia);
    nitrite_over_limit_h "h" Less 1.0 "nitrite over limit" "time with nitrite over its limit" |f| Some(f.hours.nitrite);
    oxygen_under_limit_h "h" Less 1.0 "oxygen under limit" "time with oxygen under its limit" |f| Some(f.hours.oxygen);
    co2_over_limit_h "h" Less 1.0 "CO2 over limit" "time with carbon dioxide over its limit" |f| Some(f.hours.co2);
    light_with_ammonia_h "h" Less 1.0 "light on ammonia" "time with bright light on ammonia" |f| Some(f.hours.light_with_ammonia);
    temperature_jump_c "°C" Less 0.1 "temperature jump" "largest change of temperature at a water change" |f| f.temperature_jump.map(|jump| jump.value);
    ph_jump "1" Less 0.05 "pH jump" "largest change of pH at a water change" |f| f.ph_jump.map(|jump| jump.value);
    water_changed_l "L" Less 1.0 "water changed" "water taken out by changes" |f| Some(f.litres_changed);
    heaviest_week_l "L" Less 1.0 "heaviest week" "most water taken out within days 0 to 6, 7 to 13 and so on" |f| Some(f.heaviest_week_l);
    gas_used_g "g" Less 1.0 "gas" "gas that left the cylinder" |f| Some(f.gas_g);
    plants_g "g dry weight" More 0.5 "plants (dry)" "plants at the end" |f| Some(f.plants_g);
    algae_g_per_m2 "g dry weight/m²" Less 0.01 "algae (dry)" "algae at the end; only to be compared" |f| Some(f.algae_g_per_m2);
    tan_peak_day "1" Neither 1.0 "day of the ammonia peak" "day of the highest total ammonia" |f| Some(f64::from(f.tan_peak.day()));
    nitrite_peak_day "1" Neither 1.0 "day of the nitrite peak" "day of the highest nitrite" |f| Some(f64::from(f.nitrite_peak.day()));
}
