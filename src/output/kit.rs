//! Values as drop-test kits and water reports print them: by the mass of the ion.

use crate::analysis::kit::Step;
use crate::analysis::margin::{Stand, margin};
use crate::base::units::Kind;
use crate::base::units::everyday::{AMMONIA, NITRATE, NITRITE};

use super::number::six_digits;
use super::text::words::short;

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

/// Where card steps from the lower to the higher stand against a limit in mg N/L, with the margin where close.
pub fn stands_between(low: &Step, high: &Step, limit: f64) -> String {
    let [from, to] = [low, high].map(|step| Stand::under(step.mg_n_per_l, limit));
    let to_word = match to {
        Stand::Close => {
            let printed = margin(high.mg_n_per_l, limit) * high.printed / high.mg_n_per_l;
            format!("close (margin {})", short(printed))
        }
        _ => to.word().to_string(),
    };
    match from == to {
        true => to_word,
        false => format!("{} to {to_word}", from.word()),
    }
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
    fn steps_stand_against_a_limit_and_a_close_one_tells_its_margin() {
        let step = |printed: f64| Step {
            printed,
            mg_n_per_l: printed / 2.0,
        };
        let told = |low, high| stands_between(&step(low), &step(high), 0.2);
        assert_eq!(told(0.0, 0.2), "inside");
        assert_eq!(told(0.2, 0.5), "inside to outside");
        // 0.36 as printed is 0.18, and the limit 0.4
        assert_eq!(told(0.0, 0.36), "inside to close (margin 0.040)");
        assert_eq!(told(0.5, 1.0), "outside");
    }

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
