//! Free ammonia as a share of total ammonia.

/// Acidity of ammonium, NH4+ = NH3 + H+, as pK.
///
/// ```text
/// pKa = 0.09018 + 2729.92/(t + 273.2)
/// ```
/// Source: Emerson et al. 1975, with the fit's own 273.2. Valid 0 to 30 °C; within 0.15 % of a
/// geochemical database to 35 °C. Check value: 9.2448 at 25 °C.
pub fn pka(t_c: f64) -> f64 {
    0.09018 + 2729.92 / (t_c + 273.2)
}

/// Share of total ammonia that is free NH3; pH is −log of the activity of H+.
///
/// ```text
/// share = 1/(1 + 10^(pKa − pH))
/// ```
/// Check values at 25 °C: 0.001796 at pH 6.5, 0.005658 at 7.0, 0.01768 at 7.5, 0.05384 at 8.0.
pub fn free_share(t_c: f64, ph: f64) -> f64 {
    1.0 / (1.0 + crate::base::maths::exp10(pka(t_c) - ph))
}
