//! Values as drop-test kits and water reports print them: by the mass of the ion.

use crate::base::units::Kind;
use crate::base::units::everyday::{AMMONIA, NITRATE, NITRITE};

use super::number::six_digits;

/// Total ammonia as ammonium.
pub fn ammonium(mg_n_per_l: f64) -> String {
    in_unit(&AMMONIA, "mg NH4/L", mg_n_per_l)
}
/// Free ammonia by its own mass.
pub fn ammonia(mg_n_per_l: f64) -> String {
    in_unit(&AMMONIA, "mg NH3/L", mg_n_per_l)
}
/// Nitrite by the mass of the ion.
pub fn nitrite(mg_n_per_l: f64) -> String {
    in_unit(&NITRITE, "mg NO2/L", mg_n_per_l)
}
/// Nitrate by the mass of the ion.
pub fn nitrate(mg_n_per_l: f64) -> String {
    in_unit(&NITRATE, "mg NO3/L", mg_n_per_l)
}

/// Two figures are more than any colour card tells apart.
fn in_unit(kind: &Kind, symbol: &str, base: f64) -> String {
    let value = kind.unit(symbol).map_or(base, |unit| unit.from_base(base));
    let two_figures: f64 = format!("{value:.1e}").parse().unwrap_or(value);
    format!("{} {symbol}", six_digits(two_figures))
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
