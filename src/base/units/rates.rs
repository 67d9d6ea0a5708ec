//! The kinds of quantities that only parameters of the model have.
//!
//! A parameter names its unit by a label; a value given in a scenario may use any unit of the
//! same kind. `mg/L` here is a concentration of whatever the parameter speaks of.

use super::{Kind, unit};

macro_rules! kinds {
    ($($name:literal, example $example:literal, units $units:expr;)*) => {
        /// Every kind that only parameters have.
        pub static KINDS: &[&Kind] = &[$(&Kind {
            name: $name, units: &$units, examples: &[$example], unclear: &[],
        }),*];
    };
}

kinds! {
    "a plain number", example "0.5", units [
        unit("1", &["-", "–", "g/g", "mol/mol", "m/m", "g N/g COD", "g COD/g N", "mg COD/mg N", "mg N/mg COD", "mol O2/mol C", "mol CO2/mol O2"], 1.0),
        unit("%", &["percent"], 0.01),
    ];
    "a concentration", example "0.5 mg/L", units [
        unit("mg/L", &["g/m³", "mg O2/L", "mg CO2/L", "mg K/L", "mg Fe/L", "mg Cl2/L", "mg P/L"], 1.0),
        unit("µg/L", &[], 0.001),
    ];
    "a concentration as nitrogen", example "0.5 mg N/L", units [
        unit("mg N/L", &["mg NH3-N/L", "mg NO2-N/L", "mg HNO2-N/L", "g N/m³"], 1.0),
        unit("µg N/L", &[], 0.001),
    ];
    "a concentration in moles", example "0.1 mmol/L", units [
        unit("mmol/L", &["mM", "mol/m³"], 1.0),
        unit("µmol/L", &["µM"], 0.001),
    ];
    "a concentration of charge", example "0.45 meq/L", units [
        unit("meq/L", &[], 1.0),
    ];
    "a concentration of cells", example "5 mg COD/L", units [
        unit("mg COD/L", &[], 1.0),
    ];
    "nitrogen per mass of soil", example "90 mg N/kg", units [
        unit("mg N/kg", &[], 1.0),
        unit("g N/kg", &[], 1000.0),
    ];
    "phosphorus per mass of soil", example "20 mg P/kg", units [
        unit("mg P/kg", &[], 1.0),
    ];
    "charge per mass of soil", example "60 meq/kg", units [
        unit("meq/kg", &[], 1.0),
        unit("cmol/kg", &[], 10.0),
    ];
    "volume per mass", example "10 L/kg", units [
        unit("L/kg", &["mL/g"], 1.0),
    ];
    "mass per volume", example "0.85 kg/L", units [
        unit("kg/L", &["g/cm³", "g/mL"], 1.0),
    ];
    "mass per volume of gas", example "1.8 g/L", units [
        unit("g/L", &["kg/m³", "mg/mL"], 1.0),
    ];
    "mass per area", example "0.015 g/m²", units [
        unit("g/m²", &["g DW/m²"], 1.0),
        unit("mg/m²", &[], 0.001),
    ];
    "area per mass", example "0.03 m²/g", units [
        unit("m²/g", &["m²/g DW"], 1.0),
    ];
    "area per volume", example "0.08 m²/L", units [
        unit("m²/L", &[], 1.0),
        unit("m²/m³", &[], 0.001),
    ];
    "content of dry matter", example "3 mg/g", units [
        unit("mg/g", &["mg P/g", "mg K/g", "mg Fe/g"], 1.0),
    ];
    "nitrogen content of dry matter", example "30 mg N/g", units [
        unit("mg N/g", &[], 1.0),
        unit("% N", &[], 10.0),
    ];
    "a rate of oxygen per mass", example "16.5 mg O2/g/h", units [
        unit("mg O2/g/h", &["mg O2/g DW/h", "mg/g/h"], 1.0),
    ];
    "a rate of nitrogen per mass", example "0.3 mg N/g/h", units [
        unit("mg N/g/h", &["mg N/g DW/h"], 1.0),
    ];
    "a rate of nitrogen per area", example "3 mg N/m²/day", units [
        unit("mg N/m²/day", &[], 1.0),
        unit("g N/m²/day", &[], 1000.0),
    ];
    "a kill rate", example "10 L/mg/day", units [
        unit("L/mg/day", &[], 1.0),
    ];
    "an air-stone factor", example "30 L/h per L/min", units [
        unit("L/h per L/min", &[], 1.0),
    ];
    "a heat loss", example "6 W/m²/K", units [
        unit("W/m²/K", &["W/(m² K)", "W/m² K"], 1.0),
    ];
    "power per volume", example "0.15 W/L", units [
        unit("W/L", &[], 1.0),
    ];
    "heat per volume and degree", example "4.184 kJ/L/K", units [
        unit("kJ/L/K", &[], 1.0),
    ];
    "heat per mass", example "2440 kJ/kg", units [
        unit("kJ/kg", &["J/g"], 1.0),
    ];
    "a flow of heat per vapour pressure", example "0.089 kW/m²/kPa", units [
        unit("kW/m²/kPa", &[], 1.0),
    ];
    "a length of time in hours", example "1.5 h", units [
        unit("h", &[], 1.0),
        unit("min", &[], 1.0 / 60.0),
        unit("day", &[], 24.0),
    ];
    "a diameter", example "4.5 mm", units [
        unit("mm", &[], 1.0),
        unit("cm", &[], 10.0),
    ];
}
