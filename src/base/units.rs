//! Units and every conversion of the project: the only file with conversion factors.

/// Atomic mass of nitrogen, g/mol.
pub const NITROGEN_G_PER_MOL: f64 = 14.007;
/// Atomic mass of phosphorus, g/mol.
pub const PHOSPHORUS_G_PER_MOL: f64 = 30.974;
/// Atomic mass of potassium, g/mol.
pub const POTASSIUM_G_PER_MOL: f64 = 39.098;
/// Atomic mass of carbon, g/mol.
pub const CARBON_G_PER_MOL: f64 = 12.011;
/// Molar mass of O2, g/mol.
pub const OXYGEN_G_PER_MOL: f64 = 31.998;
/// Molar mass of CO2, g/mol.
pub const CO2_G_PER_MOL: f64 = 44.0095;
/// Molar mass of Cl2, g/mol.
pub const CHLORINE_G_PER_MOL: f64 = 70.906;
/// Nitrogen set free per chlorine of monochloramine, mg N per mg Cl2.
pub const N_PER_CL2: f64 = NITROGEN_G_PER_MOL / CHLORINE_G_PER_MOL;
/// Alkalinity of one German degree, meq/L.
pub const MEQ_PER_DKH: f64 = 0.35665;
/// Kelvin at 0 °C.
pub const KELVIN_AT_0_C: f64 = 273.15;
/// Gas constant, L·atm/(mol·K).
pub const GAS_L_ATM_PER_MOL_K: f64 = 0.082057;
