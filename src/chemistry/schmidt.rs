//! Schmidt numbers in fresh water: how slowly a gas diffuses beside how slowly momentum does.
//!
//! Source: Wanninkhof 2014 (salinity 0), −2 to 40 °C. Check values: CO2 600.3 at 20 °C and 468.7
//! at 25 °C; O2 510.2 and 398.8.

/// Schmidt number of oxygen.
///
/// ```text
/// 1745.1 − 124.34 t + 4.8055 t² − 0.10115 t³ + 0.00086842 t⁴
/// ```
pub fn oxygen(t_c: f64) -> f64 {
    1745.1 + t_c * (-124.34 + t_c * (4.8055 + t_c * (-0.10115 + t_c * 0.00086842)))
}

/// Schmidt number of carbon dioxide.
///
/// ```text
/// 1923.6 − 125.06 t + 4.3773 t² − 0.085681 t³ + 0.00070284 t⁴
/// ```
pub fn carbon_dioxide(t_c: f64) -> f64 {
    1923.6 + t_c * (-125.06 + t_c * (4.3773 + t_c * (-0.085681 + t_c * 0.00070284)))
}
