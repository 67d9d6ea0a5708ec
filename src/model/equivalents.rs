//! Equivalents: charge, oxygen and carbon per mass, all from atomic masses.

use crate::base::units::{
    CARBON_G_PER_MOL, NITROGEN_G_PER_MOL, OXYGEN_G_PER_MOL, PHOSPHORUS_G_PER_MOL,
    POTASSIUM_G_PER_MOL,
};

/// Milliequivalents per milligram of nitrogen.
pub const MEQ_PER_MG_N: f64 = 1.0 / NITROGEN_G_PER_MOL;
/// Milliequivalents per milligram of phosphorus (one charge per phosphate, as in alkalinity).
pub const MEQ_PER_MG_P: f64 = 1.0 / PHOSPHORUS_G_PER_MOL;
/// Milliequivalents per milligram of potassium.
pub const MEQ_PER_MG_K: f64 = 1.0 / POTASSIUM_G_PER_MOL;
/// Oxygen to nitrite, mg O2 per mg N.
pub const O2_PER_N_TO_NITRITE: f64 = 1.5 * OXYGEN_G_PER_MOL / NITROGEN_G_PER_MOL;
/// Oxygen from nitrite to nitrate, mg O2 per mg N.
pub const O2_PER_N_NITRITE_TO_NITRATE: f64 = O2_PER_N_TO_NITRITE / 3.0;
/// Oxygen to nitrate, mg O2 per mg N.
pub const O2_PER_N_TO_NITRATE: f64 = O2_PER_N_TO_NITRITE + O2_PER_N_NITRITE_TO_NITRATE;
/// Oxygen demand of organic carbon (CH2O), mg O2 per mg C.
pub const O2_PER_C: f64 = OXYGEN_G_PER_MOL / CARBON_G_PER_MOL;
/// Carbon of nitrifier cells (C5H7NO2: 5 mol C per 5 mol O2), mmol C per mg COD.
pub const MMOL_C_PER_MG_COD: f64 = 1.0 / OXYGEN_G_PER_MOL;
