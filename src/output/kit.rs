//! Values as drop-test kits and water reports print them: by the mass of the ion.

use crate::base::units::NITROGEN_G_PER_MOL;

use super::number::six_digits;

const HYDROGEN_G_PER_MOL: f64 = 1.008;
const OXYGEN_ATOM_G_PER_MOL: f64 = 15.999;

/// Total ammonia as ammonium.
pub fn ammonium(mg_n_per_l: f64) -> String {
    as_ion(mg_n_per_l, 4.0 * HYDROGEN_G_PER_MOL, "NH4")
}
/// Free ammonia by its own mass.
pub fn ammonia(mg_n_per_l: f64) -> String {
    as_ion(mg_n_per_l, 3.0 * HYDROGEN_G_PER_MOL, "NH3")
}
/// Nitrite by the mass of the ion.
pub fn nitrite(mg_n_per_l: f64) -> String {
    as_ion(mg_n_per_l, 2.0 * OXYGEN_ATOM_G_PER_MOL, "NO2")
}
/// Nitrate by the mass of the ion.
pub fn nitrate(mg_n_per_l: f64) -> String {
    as_ion(mg_n_per_l, 3.0 * OXYGEN_ATOM_G_PER_MOL, "NO3")
}

fn as_ion(mg_n_per_l: f64, others_g_per_mol: f64, ion: &str) -> String {
    let value = mg_n_per_l * (NITROGEN_G_PER_MOL + others_g_per_mol) / NITROGEN_G_PER_MOL;
    let two_figures: f64 = format!("{value:.1e}").parse().unwrap_or(value);
    format!("{} mg {ion}/L", six_digits(two_figures))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_milligram_of_nitrogen_reads_as_its_ion() {
        // by atomic masses: 1.288 NH4, 1.216 NH3, 3.284 NO2, 4.427 NO3 per N
        let read = [ammonium(1.0), ammonia(1.0), nitrite(1.0), nitrate(1.0)];
        assert_eq!(
            read,
            [
                "1.3 mg NH4/L",
                "1.2 mg NH3/L",
                "3.3 mg NO2/L",
                "4.4 mg NO3/L"
            ]
        );
    }
}
