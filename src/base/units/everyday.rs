//! The kinds of quantities people write in a scenario, each with its units.
//!
//! The first unit of a kind is its base unit: the one the model computes in.

use super::{
    BICARBONATE_G_PER_MOL, CALCIUM_CARBONATE_G_PER_MOL, CALCIUM_G_PER_MOL, CHLORINE_G_PER_MOL,
    CO2_G_PER_MOL, HYDROGEN_G_PER_MOL, KELVIN_AT_0_C, Kind, MEQ_PER_DKH, NITROGEN_G_PER_MOL,
    OXYGEN_G_PER_MOL, PHOSPHORUS_G_PER_MOL, POTASSIUM_G_PER_MOL, Unclear, Unit, unit,
};

const LITRES_PER_US_GALLON: f64 = 3.785411784;
const LITRES_PER_IMPERIAL_GALLON: f64 = 4.54609;
const GRAMS_PER_OUNCE: f64 = 28.349523125;
const METRES_PER_INCH: f64 = 0.0254;
const MG_PER_GRAIN: f64 = 64.79891;
const OXYGEN_ATOM: f64 = 0.5 * OXYGEN_G_PER_MOL;
const MEQ_PER_MG_CALCIUM_CARBONATE: f64 = 2.0 / CALCIUM_CARBONATE_G_PER_MOL;
const NO3: f64 = NITROGEN_G_PER_MOL + 3.0 * OXYGEN_ATOM;
const NO2: f64 = NITROGEN_G_PER_MOL + 2.0 * OXYGEN_ATOM;
const NH4: f64 = NITROGEN_G_PER_MOL + 4.0 * HYDROGEN_G_PER_MOL;
const NH3: f64 = NITROGEN_G_PER_MOL + 3.0 * HYDROGEN_G_PER_MOL;
const PO4: f64 = PHOSPHORUS_G_PER_MOL + 4.0 * OXYGEN_ATOM;
const P2O5: f64 = 2.0 * PHOSPHORUS_G_PER_MOL + 5.0 * OXYGEN_ATOM;
const K2O: f64 = 2.0 * POTASSIUM_G_PER_MOL + OXYGEN_ATOM;
const MINUTES_PER_DAY: f64 = 1440.0;

macro_rules! kinds {
    ($($(#[$doc:meta])* $id:ident = $name:literal, examples $examples:expr, unclear $unclear:expr, units $units:expr;)*) => {
        $($(#[$doc])* pub static $id: Kind = Kind {
            name: $name, units: &$units, examples: &$examples, unclear: &$unclear,
        };)*
        /// Every everyday kind.
        pub static KINDS: &[&Kind] = &[$(&$id),*];
    };
}

kinds! {
    /// A plain number or a percentage; base: the number itself.
    SHARE = "a share", examples ["50 %", "33.3 %"], unclear [], units [
        unit("1", &[], 1.0),
        unit("%", &["percent", "per cent", "pct"], 0.01),
    ];
    /// Base: m.
    LENGTH = "a length", examples ["60 cm", "0.6 m", "24 in"], unclear [], units [
        unit("m", &["metre", "metres", "meter", "meters"], 1.0),
        unit("cm", &["centimetres", "centimeters"], 0.01),
        unit("mm", &["millimetres", "millimeters"], 0.001),
        unit("in", &["inch", "inches", "\""], METRES_PER_INCH),
        unit("ft", &["foot", "feet"], 12.0 * METRES_PER_INCH),
    ];
    /// Base: L.
    VOLUME = "a volume", examples ["54 L", "14 US gal", "12 imp gal"],
    unclear [Unclear { spellings: &["gal", "gals", "gallon", "gallons"], open: "which gallon", meant: &["imp gal", "US gal"], shown_in: "L" }],
    units [
        unit("L", &[], 1.0),
        unit("mL", &[], 0.001),
        unit("m³", &[], 1000.0),
        unit("cm³", &["cc"], 0.001),
        unit("US gal", &["US gallons", "US gallon", "usgal"], LITRES_PER_US_GALLON),
        unit("imp gal", &["imperial gallons", "imperial gallon", "UK gal", "imp. gal"], LITRES_PER_IMPERIAL_GALLON),
    ];
    /// Base: m².
    AREA = "an area", examples ["0.18 m²", "1800 cm²"], unclear [], units [
        unit("m²", &["sqm", "sq m"], 1.0),
        unit("cm²", &["sq cm"], 1e-4),
        unit("dm²", &["sq dm"], 0.01),
        unit("in²", &["sq in"], METRES_PER_INCH * METRES_PER_INCH),
        unit("ft²", &["sq ft"], 144.0 * METRES_PER_INCH * METRES_PER_INCH),
    ];
    /// Base: g.
    MASS = "a mass", examples ["0.5 g", "500 mg", "2 kg"], unclear [], units [
        unit("g", &["gram", "grams"], 1.0),
        unit("mg", &[], 0.001),
        unit("kg", &[], 1000.0),
        unit("oz", &["ounce", "ounces"], GRAMS_PER_OUNCE),
        unit("lb", &["lbs", "pound", "pounds"], 16.0 * GRAMS_PER_OUNCE),
    ];
    /// Base: °C.
    TEMPERATURE = "a temperature", examples ["24.5 °C", "76 °F"], unclear [], units [
        unit("°C", &["C", "deg C", "degC", "celsius", "° C"], 1.0),
        Unit { symbol: "°F", spellings: &["F", "deg F", "degF", "fahrenheit", "° F"], factor: 5.0 / 9.0, shift: -32.0 },
        Unit { symbol: "K", spellings: &["kelvin"], factor: 1.0, shift: -KELVIN_AT_0_C },
    ];
    /// Base: K.
    TEMPERATURE_DIFFERENCE = "a difference of temperature", examples ["2 K", "2 °C", "4 °F"], unclear [], units [
        unit("K", &["kelvin", "°C", "C", "deg C"], 1.0),
        unit("°F", &["F", "deg F"], 5.0 / 9.0),
    ];
    /// Base: day.
    DURATION = "a length of time", examples ["12 h", "3 days", "2 weeks"], unclear [], units [
        unit("day", &[], 1.0),
        unit("h", &[], 1.0 / 24.0),
        unit("min", &[], 1.0 / MINUTES_PER_DAY),
        unit("week", &["weeks", "wk"], 7.0),
        unit("months", &["month"], 365.25 / 12.0),
        unit("years", &["year"], 365.25),
    ];
    /// Base: µmol/m²/s.
    LIGHT = "a light intensity", examples ["60 µmol/m²/s", "60 PAR"], unclear [], units [
        unit("µmol/m²/s", &["µmol", "PAR", "µmol/m²s", "µmol/s/m²", "PPFD"], 1.0),
    ];
    /// Base: L/min.
    FLOW = "a flow", examples ["1 L/min", "600 L/h", "150 US gal/h"],
    unclear [Unclear { spellings: &["gph", "gal/h"], open: "which gallon", meant: &["imp gal/h", "US gal/h"], shown_in: "L/h" }],
    units [
        unit("L/min", &["lpm", "L/m"], 1.0),
        unit("L/h", &["lph"], 1.0 / 60.0),
        unit("mL/min", &[], 0.001),
        unit("US gal/h", &["US gph", "US gallons/h"], LITRES_PER_US_GALLON / 60.0),
        unit("imp gal/h", &["imp gph", "UK gph", "imperial gallons/h"], LITRES_PER_IMPERIAL_GALLON / 60.0),
    ];
    /// Base: mg/h.
    GAS_RATE = "a rate of gas", examples ["300 mg/h", "0.3 g/h"], unclear [], units [
        unit("mg/h", &[], 1.0),
        unit("g/h", &[], 1000.0),
        unit("mg/min", &[], 60.0),
    ];
    /// Base: mg/day, whatever the hours of the gas.
    GAS_PER_DAY = "an amount of gas per day", examples ["2.4 g/day"], unclear [], units [
        unit("mg/day", &[], 1.0),
        unit("g/day", &["g a day"], 1000.0),
    ];
    /// Base: bubbles/s.
    BUBBLE_RATE = "a rate of bubbles", examples ["1.5 bubbles/s", "90 bubbles/min"], unclear [], units [
        unit("bubbles/s", &["bps"], 1.0),
        unit("bubbles/min", &["bpm"], 1.0 / 60.0),
    ];
    /// Base: g/day.
    FEED_RATE = "an amount of feed per day", examples ["0.1 g/day"], unclear [], units [
        unit("g/day", &["g a day"], 1.0),
        unit("mg/day", &["mg a day"], 0.001),
    ];
    /// Base: 1/day.
    PER_DAY = "a rate per day", examples ["0.7 /day", "2 %/day"], unclear [], units [
        unit("/day", &[], 1.0),
        unit("/h", &[], 24.0),
        unit("%/day", &["% a day", "percent/day"], 0.01),
    ];
    /// Base: m/day.
    VELOCITY = "a transfer velocity", examples ["0.75 m/day", "3.1 cm/h"], unclear [], units [
        unit("m/day", &[], 1.0),
        unit("cm/h", &[], 0.24),
        unit("cm/day", &[], 0.01),
    ];
    /// Base: g/m².
    DENSITY = "a planting density (dry weight)", examples ["30 g/m²", "3 mg/cm²"], unclear [], units [
        unit("g/m²", &["g DW/m²"], 1.0),
        unit("mg/cm²", &[], 10.0),
    ];
    /// Total ammonia; base: mg N/L.
    AMMONIA = "a concentration of total ammonia", examples ["0.2 mg N/L", "0.3 mg NH4/L", "0.3 mg NH3/L"],
    unclear [Unclear { spellings: &["mg/L", "ppm"], open: "of what", meant: &["mg N/L", "mg NH3/L", "mg NH4/L"], shown_in: "mg NH4/L" }],
    units [
        unit("mg N/L", &["mg NH4-N/L", "mg NH3-N/L", "mg TAN/L", "mg NH₄⁺-N/L"], 1.0),
        unit("mg NH4/L", &["mg NH4+/L", "mg NH₄⁺/L"], NITROGEN_G_PER_MOL / NH4),
        unit("mg NH3/L", &[], NITROGEN_G_PER_MOL / NH3),
        unit("µg N/L", &[], 0.001),
        unit("mmol/L", &["mM"], NITROGEN_G_PER_MOL),
    ];
    /// Base: mg N/L.
    NITRITE = "a concentration of nitrite", examples ["0.08 mg N/L", "0.25 mg NO2/L"],
    unclear [Unclear { spellings: &["mg/L", "ppm"], open: "of what", meant: &["mg N/L", "mg NO2/L"], shown_in: "mg NO2/L" }],
    units [
        unit("mg N/L", &["mg NO2-N/L", "mg NO₂⁻-N/L"], 1.0),
        unit("mg NO2/L", &["mg NO2-/L", "mg NO₂⁻/L"], NITROGEN_G_PER_MOL / NO2),
        unit("µg N/L", &[], 0.001),
        unit("mmol/L", &["mM"], NITROGEN_G_PER_MOL),
    ];
    /// Base: mg N/L.
    NITRATE = "a concentration of nitrate", examples ["10 mg NO3/L", "2.3 mg N/L"],
    unclear [Unclear { spellings: &["mg/L", "ppm"], open: "of what", meant: &["mg N/L", "mg NO3/L"], shown_in: "mg NO3/L" }],
    units [
        unit("mg N/L", &["mg NO3-N/L", "mg NO₃⁻-N/L"], 1.0),
        unit("mg NO3/L", &["mg NO3-/L", "mg NO₃⁻/L"], NITROGEN_G_PER_MOL / NO3),
        unit("µg N/L", &[], 0.001),
        unit("mmol/L", &["mM"], NITROGEN_G_PER_MOL),
    ];
    /// Base: mg P/L.
    PHOSPHATE = "a concentration of phosphate", examples ["0.3 mg PO4/L", "0.1 mg P/L"],
    unclear [Unclear { spellings: &["mg/L", "ppm"], open: "of what", meant: &["mg P/L", "mg P2O5/L", "mg PO4/L"], shown_in: "mg PO4/L" }],
    units [
        unit("mg P/L", &["mg PO4-P/L"], 1.0),
        unit("mg PO4/L", &["mg PO4---/L", "mg PO₄³⁻/L"], PHOSPHORUS_G_PER_MOL / PO4),
        unit("mg P2O5/L", &[], 2.0 * PHOSPHORUS_G_PER_MOL / P2O5),
        unit("µg P/L", &[], 0.001),
    ];
    /// Base: mg K/L.
    POTASSIUM = "a concentration of potassium", examples ["3 mg K/L", "3.6 mg K2O/L"],
    unclear [Unclear { spellings: &["mg/L", "ppm"], open: "of what", meant: &["mg K2O/L", "mg K/L"], shown_in: "mg K/L" }],
    units [
        unit("mg K/L", &["mg K+/L", "mg K⁺/L"], 1.0),
        unit("mg K2O/L", &[], 2.0 * POTASSIUM_G_PER_MOL / K2O),
        unit("mmol/L", &["mM"], POTASSIUM_G_PER_MOL),
    ];
    /// Base: mg/L.
    IRON = "a concentration of iron", examples ["0.05 mg/L", "50 µg/L"], unclear [], units [
        unit("mg/L", &["mg Fe/L", "ppm"], 1.0),
        unit("µg/L", &["µg Fe/L", "ppb"], 0.001),
    ];
    /// Base: mg/L.
    OXYGEN = "a concentration of oxygen", examples ["8 mg/L"], unclear [], units [
        unit("mg/L", &["mg O2/L", "ppm"], 1.0),
        unit("mmol/L", &["mM"], OXYGEN_G_PER_MOL),
    ];
    /// Carbon dioxide in water; base: mg/L.
    CO2 = "a concentration of carbon dioxide", examples ["28 mg/L"], unclear [], units [
        unit("mg/L", &["mg CO2/L", "ppm"], 1.0),
        unit("mmol/L", &["mM"], CO2_G_PER_MOL),
    ];
    /// Carbon dioxide in air; base: ppm by volume.
    AIR_CO2 = "a share of carbon dioxide in air", examples ["600 ppm", "0.06 %"], unclear [], units [
        unit("ppm", &["ppmv", "µmol/mol"], 1.0),
        unit("%", &["percent"], 10_000.0),
    ];
    /// Base: mg/L.
    CHLORIDE = "a concentration of chloride", examples ["20 mg/L"], unclear [], units [
        unit("mg/L", &["mg Cl/L", "mg Cl-/L", "mg Cl⁻/L", "ppm"], 1.0),
        unit("mmol/L", &["mM"], 0.5 * CHLORINE_G_PER_MOL),
    ];
    /// Free chlorine or chloramine; base: mg Cl2/L.
    RESIDUAL = "a concentration of chlorine", examples ["0.3 mg Cl2/L"], unclear [], units [
        unit("mg Cl2/L", &["mg/L", "ppm"], 1.0),
    ];
    /// Base: meq/L.
    ALKALINITY = "an alkalinity", examples ["4 dKH", "71 mg CaCO3/L", "1.4 meq/L"],
    unclear [
        Unclear { spellings: &["mg/L", "ppm"], open: "of what", meant: &["mg CaCO3/L", "mg HCO3/L"], shown_in: "dKH" },
        Unclear { spellings: &["degrees", "°", "deg"], open: "which degree", meant: &["°fH", "°Clark", "dKH"], shown_in: "dKH" },
    ],
    units [
        unit("meq/L", &["mval/L"], 1.0),
        unit("dKH", &["°dKH", "°KH", "KH", "°dH", "dH"], MEQ_PER_DKH),
        unit("mg CaCO3/L", &[], MEQ_PER_MG_CALCIUM_CARBONATE),
        unit("mg HCO3/L", &["mg HCO3-/L", "mg HCO₃⁻/L"], 1.0 / BICARBONATE_G_PER_MOL),
        unit("mmol/L", &["mM", "mmol HCO3/L"], 1.0),
        unit("°fH", &["fH", "°f"], 10.0 * MEQ_PER_MG_CALCIUM_CARBONATE),
        unit("°Clark", &["°e", "Clark", "gr/imp gal"], MG_PER_GRAIN / LITRES_PER_IMPERIAL_GALLON * MEQ_PER_MG_CALCIUM_CARBONATE),
        unit("gr/US gal", &["gpg", "grains/US gal"], MG_PER_GRAIN / LITRES_PER_US_GALLON * MEQ_PER_MG_CALCIUM_CARBONATE),
    ];
    /// Calcium and magnesium; base: meq/L.
    HARDNESS = "a hardness", examples ["8 dGH", "143 mg CaCO3/L", "1.4 mmol/L"],
    unclear [
        Unclear { spellings: &["mg/L", "ppm"], open: "of what", meant: &["mg CaCO3/L", "mg Ca/L"], shown_in: "dGH" },
        Unclear { spellings: &["degrees", "°", "deg"], open: "which degree", meant: &["°fH", "°Clark", "dGH"], shown_in: "dGH" },
    ],
    units [
        unit("meq/L", &["mval/L"], 1.0),
        unit("dGH", &["°dGH", "°GH", "GH", "°dH", "dH"], MEQ_PER_DKH),
        unit("mg CaCO3/L", &[], MEQ_PER_MG_CALCIUM_CARBONATE),
        unit("mg Ca/L", &[], 2.0 / CALCIUM_G_PER_MOL),
        unit("mmol/L", &["mM"], 2.0),
        unit("°fH", &["fH", "°f"], 10.0 * MEQ_PER_MG_CALCIUM_CARBONATE),
        unit("°Clark", &["°e", "Clark", "gr/imp gal"], MG_PER_GRAIN / LITRES_PER_IMPERIAL_GALLON * MEQ_PER_MG_CALCIUM_CARBONATE),
        unit("gr/US gal", &["gpg", "grains/US gal"], MG_PER_GRAIN / LITRES_PER_US_GALLON * MEQ_PER_MG_CALCIUM_CARBONATE),
    ];
    /// Base: money per L.
    PRICE_PER_VOLUME = "a price of water", examples ["0.004 /L", "4 /m³"], unclear [], units [
        unit("/L", &[], 1.0),
        unit("/m³", &[], 0.001),
    ];
    /// Base: money per g.
    PRICE_PER_MASS = "a price of gas", examples ["0.012 /g", "12 /kg"], unclear [], units [
        unit("/g", &[], 1.0),
        unit("/kg", &[], 0.001),
    ];
}
