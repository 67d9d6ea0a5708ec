//! Plant groups and their numbers.

use crate::base::sources::{BEST_1986, VAN_1976, calibrated, derived, memory, practice, published};

use super::parameter::{ParameterSpec, parameter};

/// A group of plants that shares its numbers.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Group {
    /// Fast stems.
    Stems,
    /// Carpet plants.
    Carpet,
    /// Slow rosettes, rooted.
    Rosette,
    /// Slow rhizome plants tied to wood or stone.
    TiedRhizome,
    /// Mosses and liverworts.
    Moss,
}

/// All groups.
pub const GROUPS: [Group; 5] = [
    Group::Stems,
    Group::Carpet,
    Group::Rosette,
    Group::TiedRhizome,
    Group::Moss,
];

impl Group {
    /// Word used in scenarios.
    pub fn word(self) -> &'static str {
        match self {
            Group::Stems => "stems",
            Group::Carpet => "carpet",
            Group::Rosette => "rosette",
            Group::TiedRhizome => "tied rhizome",
            Group::Moss => "moss",
        }
    }
    /// Ending of its parameter ids and of its column name, for example `P_max_stems`.
    pub fn suffix(self) -> &'static str {
        match self {
            Group::TiedRhizome => "tied_rhizome",
            other => other.word(),
        }
    }
    /// Id of one of the group's parameters, for example `P_max_stems`.
    pub fn id(self, stem: &str) -> String {
        format!("{stem}_{}", self.suffix())
    }
}

macro_rules! group {
    ($suffix:literal, P_max $pm:expr, K_I $ki:expr, k_B $kb:expr, R_d $rd:expr, K_CO2 $kc:expr, V_NH $vh:expr, V_NO $vo:expr,
     f_root $fr:expr, melt $me:expr, m_loss $ml:expr, w $ws:literal $wn:literal $wd:literal) => {
        [
            parameter(
                concat!("P_max_", $suffix),
                concat!("fastest photosynthesis of ", $suffix, " at 25 °C"),
                "mg O2/g/h",
                $pm.0,
                ($pm.1, $pm.2),
                calibrated(
                    &[VAN_1976, BEST_1986],
                    "stems measured; others scaled as shade plants, no measurement found",
                ),
            ),
            parameter(
                concat!("K_I_", $suffix),
                concat!("light at half speed of ", $suffix),
                "µmol/m²/s",
                $ki.0,
                ($ki.1, $ki.2),
                memory(&[], ""),
            ),
            parameter(
                concat!("k_B_", $suffix),
                concat!("shading of ", $suffix, " by their own dry weight"),
                "m²/g",
                $kb.0,
                ($kb.1, $kb.2),
                memory(&[], ""),
            ),
            parameter(
                concat!("R_d_", $suffix),
                concat!("respiration of ", $suffix, " at 25 °C"),
                "mg O2/g/h",
                $rd.0,
                ($rd.1, $rd.2),
                memory(&[], ""),
            ),
            parameter(
                concat!("K_CO2_", $suffix),
                concat!("CO2 at half speed of ", $suffix),
                "mmol/L",
                $kc.0,
                ($kc.1, $kc.2),
                published(&[VAN_1976], "0.075 to 0.17"),
            ),
            parameter(
                concat!("V_NH_", $suffix),
                concat!("fastest ammonium uptake of ", $suffix),
                "mg N/g/h",
                $vh.0,
                ($vh.1, $vh.2),
                published(
                    &[],
                    "thesis abstract on a pondweed, per fresh weight; range derived",
                ),
            ),
            parameter(
                concat!("V_NO_", $suffix),
                concat!("fastest nitrate uptake of ", $suffix),
                "mg N/g/h",
                $vo.0,
                ($vo.1, $vo.2),
                memory(&[], "a third of ammonium"),
            ),
            parameter(
                concat!("f_root_", $suffix),
                concat!("share that roots can take of the uptake of ", $suffix),
                "1",
                $fr.0,
                ($fr.1, $fr.2),
                memory(&[], ""),
            ),
            parameter(
                concat!("melt_", $suffix),
                concat!("share that is shed of the out-of-water tissue of ", $suffix),
                "1",
                $me.0,
                ($me.1, $me.2),
                practice("no measured loss rate found"),
            ),
            parameter(
                concat!("m_loss_", $suffix),
                concat!("background loss of ", $suffix),
                "/day",
                $ml.0,
                ($ml.1, $ml.2),
                memory(&[], ""),
            ),
            parameter(
                concat!("w_sparse_", $suffix),
                concat!("dry weight of a sparse planting of ", $suffix),
                "g/m²",
                $ws,
                ($ws * 0.5, $ws * 2.0),
                practice(""),
            ),
            parameter(
                concat!("w_normal_", $suffix),
                concat!("dry weight of a normal planting of ", $suffix),
                "g/m²",
                $wn,
                ($wn * 0.5, $wn * 2.0),
                practice(""),
            ),
            parameter(
                concat!("w_dense_", $suffix),
                concat!("dry weight of a dense planting of ", $suffix),
                "g/m²",
                $wd,
                ($wd * 0.5, $wd * 2.0),
                practice(""),
            ),
        ]
    };
}

/// Numbers of fast stems.
pub const STEMS: [ParameterSpec; 13] = group!("stems", P_max(16.5, 6.0, 22.0), K_I(70.0, 30.0, 120.0), k_B(0.030, 0.015, 0.05),
    R_d(0.6, 0.3, 2.0), K_CO2(0.10, 0.03, 0.17), V_NH(0.30, 0.1, 0.6), V_NO(0.10, 0.03, 0.2), f_root(0.5, 0.0, 0.8),
    melt(0.25, 0.0, 0.7), m_loss(0.005, 0.002, 0.01), w 10.0 30.0 80.0);
/// Numbers of carpet plants.
pub const CARPET: [ParameterSpec; 13] = group!("carpet", P_max(10.0, 5.0, 16.0), K_I(70.0, 30.0, 120.0), k_B(0.025, 0.012, 0.04),
    R_d(0.5, 0.25, 1.5), K_CO2(0.12, 0.04, 0.2), V_NH(0.20, 0.07, 0.4), V_NO(0.07, 0.02, 0.14), f_root(0.7, 0.2, 0.9),
    melt(0.30, 0.0, 0.7), m_loss(0.005, 0.002, 0.01), w 5.0 15.0 40.0);
/// Numbers of rooted rosettes.
pub const ROSETTE: [ParameterSpec; 13] = group!("rosette", P_max(4.0, 1.5, 6.0), K_I(25.0, 10.0, 50.0), k_B(0.025, 0.012, 0.04),
    R_d(0.2, 0.1, 0.5), K_CO2(0.08, 0.03, 0.15), V_NH(0.08, 0.03, 0.16), V_NO(0.03, 0.01, 0.06), f_root(0.5, 0.0, 0.8),
    melt(0.60, 0.2, 0.9), m_loss(0.003, 0.001, 0.006), w 10.0 25.0 60.0);
/// Numbers of rhizome plants tied to wood.
pub const TIED_RHIZOME: [ParameterSpec; 13] = group!("tied_rhizome", P_max(4.0, 1.5, 6.0), K_I(25.0, 10.0, 50.0), k_B(0.025, 0.012, 0.04),
    R_d(0.2, 0.1, 0.5), K_CO2(0.08, 0.03, 0.15), V_NH(0.08, 0.03, 0.16), V_NO(0.03, 0.01, 0.06), f_root(0.0, 0.0, 0.2),
    melt(0.10, 0.0, 0.4), m_loss(0.003, 0.001, 0.006), w 10.0 25.0 60.0);
/// Numbers of mosses and liverworts.
pub const MOSS: [ParameterSpec; 13] = group!("moss", P_max(5.0, 2.0, 8.0), K_I(35.0, 15.0, 60.0), k_B(0.022, 0.01, 0.04),
    R_d(0.25, 0.1, 0.6), K_CO2(0.15, 0.05, 0.25), V_NH(0.12, 0.04, 0.24), V_NO(0.04, 0.01, 0.08), f_root(0.0, 0.0, 0.1),
    melt(0.10, 0.0, 0.4), m_loss(0.003, 0.001, 0.006), w 5.0 15.0 40.0);

/// Numbers shared by all plants that belong to no single process.
pub const PARAMETERS: &[ParameterSpec] = &[
    parameter(
        "melt_tissue",
        "share of tissue-culture tissue that is shed",
        "1",
        0.15,
        (0.0, 0.4),
        practice(""),
    ),
    parameter(
        "th_P",
        "temperature factor of photosynthesis and uptake",
        "1",
        1.05,
        (1.03, 1.07),
        memory(&[], ""),
    ),
    parameter(
        "I_low",
        "light at the soil called low",
        "µmol/m²/s",
        30.0,
        (15.0, 40.0),
        practice(""),
    ),
    parameter(
        "I_medium",
        "light at the soil called medium",
        "µmol/m²/s",
        60.0,
        (40.0, 80.0),
        practice(""),
    ),
    parameter(
        "I_high",
        "light at the soil called high",
        "µmol/m²/s",
        110.0,
        (80.0, 200.0),
        practice(""),
    ),
    parameter(
        "phi_max",
        "greatest oxygen per light a user's plant may show (plausibility)",
        "1",
        0.08,
        (0.06, 0.1),
        derived("mol O2 per mol photons"),
    ),
];
