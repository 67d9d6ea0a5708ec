//! Units and every conversion of the project: the only folder with conversion factors.
//!
//! * constants below: atomic and molar masses, the German degree, kelvin at zero;
//! * [`everyday`]: the kinds of quantities people write in a scenario, each with its units;
//! * [`rates`]: the kinds that only parameters of the model need;
//! * [`quantity`]: from a text such as `"10 mg NO3/L"` to a number in the kind's base unit.

pub mod converted;
pub mod everyday;
pub mod quantity;
pub mod rates;
pub mod spelling;

/// Atomic mass of nitrogen, g/mol.
pub const NITROGEN_G_PER_MOL: f64 = 14.007;
/// Atomic mass of phosphorus, g/mol.
pub const PHOSPHORUS_G_PER_MOL: f64 = 30.974;
/// Atomic mass of potassium, g/mol.
pub const POTASSIUM_G_PER_MOL: f64 = 39.098;
/// Atomic mass of carbon, g/mol.
pub const CARBON_G_PER_MOL: f64 = 12.011;
/// Atomic mass of calcium, g/mol.
pub const CALCIUM_G_PER_MOL: f64 = 40.078;
/// Atomic mass of hydrogen, g/mol.
pub const HYDROGEN_G_PER_MOL: f64 = 1.008;
/// Molar mass of O2, g/mol.
pub const OXYGEN_G_PER_MOL: f64 = 31.998;
/// Molar mass of CO2, g/mol.
pub const CO2_G_PER_MOL: f64 = 44.0095;
/// Molar mass of Cl2, g/mol.
pub const CHLORINE_G_PER_MOL: f64 = 70.906;
/// Molar mass of CaCO3, g/mol.
pub const CALCIUM_CARBONATE_G_PER_MOL: f64 =
    CALCIUM_G_PER_MOL + CARBON_G_PER_MOL + 1.5 * OXYGEN_G_PER_MOL;
/// Molar mass of HCO3, g/mol.
pub const BICARBONATE_G_PER_MOL: f64 =
    HYDROGEN_G_PER_MOL + CARBON_G_PER_MOL + 1.5 * OXYGEN_G_PER_MOL;
/// Nitrogen set free per chlorine of monochloramine, mg N per mg Cl2.
pub const N_PER_CL2: f64 = NITROGEN_G_PER_MOL / CHLORINE_G_PER_MOL;
/// Alkalinity of one German degree, meq/L.
pub const MEQ_PER_DKH: f64 = 0.35665;
/// Litres in a cubic metre.
pub const LITRES_PER_CUBIC_METRE: f64 = 1000.0;
/// Kelvin at 0 °C.
pub const KELVIN_AT_0_C: f64 = 273.15;
/// Gas constant, L·atm/(mol·K).
pub const GAS_L_ATM_PER_MOL_K: f64 = 0.082057;

/// One way to write a quantity.
#[derive(Debug, PartialEq)]
pub struct Unit {
    /// As it is printed.
    pub symbol: &'static str,
    /// Other ways people write it.
    pub spellings: &'static [&'static str],
    /// Base units in one of this unit.
    pub factor: f64,
    /// Added before the factor is applied; zero but for temperatures.
    pub shift: f64,
}

impl Unit {
    /// A number of this unit in the base unit of its kind.
    ///
    /// Hundredths and the like are divided, so that `70 %` is the number nearest to 0.7.
    pub fn to_base(&self, number: f64) -> f64 {
        match self.whole_parts() {
            Some(parts) => (number + self.shift) / parts,
            None => (number + self.shift) * self.factor,
        }
    }
    /// A number of the base unit in this unit.
    pub fn from_base(&self, base: f64) -> f64 {
        match self.whole_parts() {
            Some(parts) => base * parts - self.shift,
            None => base / self.factor - self.shift,
        }
    }
    /// How many of this unit make one base unit, if that is a whole number above one.
    fn whole_parts(&self) -> Option<f64> {
        let parts = 1.0 / self.factor;
        (parts > 1.0 && parts == parts.round()).then_some(parts)
    }
}

/// A unit of a kind, without a shift.
pub const fn unit(symbol: &'static str, spellings: &'static [&'static str], factor: f64) -> Unit {
    Unit {
        symbol,
        spellings,
        factor,
        shift: 0.0,
    }
}

/// A way to write a quantity that could mean several things.
#[derive(Debug)]
pub struct Unclear {
    /// The ways to write it.
    pub spellings: &'static [&'static str],
    /// What it leaves open, as in "does not say which gallon".
    pub open: &'static str,
    /// Symbols of the units that could be meant.
    pub meant: &'static [&'static str],
    /// Symbol of the unit in which the answers are compared.
    pub shown_in: &'static str,
}

/// A kind of quantity: what its numbers mean, and all the ways to write them.
#[derive(Debug)]
pub struct Kind {
    /// With its article, as in "a length".
    pub name: &'static str,
    /// All units; the first is the base unit (factor 1).
    pub units: &'static [Unit],
    /// Two or three good ways to write one.
    pub examples: &'static [&'static str],
    /// Spellings that are refused because they could mean several things.
    pub unclear: &'static [Unclear],
}

impl Kind {
    /// The base unit.
    pub fn base(&self) -> &'static Unit {
        &self.units[0]
    }
    /// The unit with this symbol.
    pub fn unit(&self, symbol: &str) -> Option<&'static Unit> {
        self.units.iter().find(|unit| unit.symbol == symbol)
    }
    /// The unit spelled like this, in any way that is understood.
    pub fn spelled(&self, text: &str) -> Option<&'static Unit> {
        self.spelled_exactly(text).or_else(|| {
            let wanted = spelling::plain(text);
            let is = |spelled: &str| spelling::plain(spelled) == wanted;
            self.units
                .iter()
                .find(|unit| is(unit.symbol) || unit.spellings.iter().any(|s| is(s)))
        })
    }
    /// The unit with this symbol or spelling, to the letter: the quick way, tried first.
    fn spelled_exactly(&self, text: &str) -> Option<&'static Unit> {
        self.units
            .iter()
            .find(|unit| unit.symbol == text || unit.spellings.contains(&text))
    }
    /// The unclear spelling that a text is, if it is one.
    pub fn unclear_spelling(&self, text: &str) -> Option<&'static Unclear> {
        let wanted = spelling::plain(text);
        self.unclear.iter().find(|unclear| {
            unclear
                .spellings
                .iter()
                .any(|s| spelling::plain(s) == wanted)
        })
    }
    /// A number of the base unit with its unit, for example `24.5 °C`.
    pub fn print(&self, base: f64) -> String {
        format!("{} {}", digits(base), self.base().symbol)
    }
}

/// Every kind, everyday ones first.
pub fn all_kinds() -> impl Iterator<Item = &'static Kind> {
    everyday::KINDS.iter().chain(rates::KINDS).copied()
}

/// The kind and the unit of a parameter's or a limit's label, for example `mg N/kg`.
pub fn of_label(label: &str) -> Option<(&'static Kind, &'static Unit)> {
    let mut kinds = rates::KINDS.iter().chain(everyday::KINDS).copied();
    let exactly = |kind: &'static Kind| Some((kind, kind.spelled_exactly(label)?));
    let somehow = |kind: &'static Kind| Some((kind, kind.spelled(label)?));
    kinds
        .clone()
        .find_map(exactly)
        .or_else(|| kinds.find_map(somehow))
}

/// A number with at most six significant digits and no idle zeros.
pub fn digits(value: f64) -> String {
    if value == 0.0 {
        return "0".to_string();
    }
    let magnitude = crate::base::maths::log10(value.abs()).floor() as i32;
    if !(-5..9).contains(&magnitude) {
        return format!("{value:e}");
    }
    let decimals = (5 - magnitude).max(0) as usize;
    let text = format!("{value:.decimals$}");
    if text.contains('.') {
        text.trim_end_matches('0').trim_end_matches('.').to_string()
    } else {
        text
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_kind_starts_with_its_base_unit_and_spells_no_unit_twice() {
        for kind in all_kinds() {
            assert_eq!(
                (kind.base().factor, kind.base().shift),
                (1.0, 0.0),
                "{}",
                kind.name
            );
            let mut seen = std::collections::BTreeSet::new();
            for unit in kind.units {
                for spelled in unit.spellings.iter().chain([&unit.symbol]) {
                    assert!(
                        seen.insert(spelling::plain(spelled)),
                        "{}: {spelled} twice",
                        kind.name
                    );
                }
            }
        }
    }

    #[test]
    fn every_example_of_a_kind_can_be_read_and_every_unclear_unit_names_known_ones() {
        for kind in all_kinds() {
            for example in kind.examples {
                assert!(
                    quantity::read(example, kind).is_ok(),
                    "{}: {example}",
                    kind.name
                );
            }
            for unclear in kind.unclear {
                for symbol in unclear.meant.iter().chain([&unclear.shown_in]) {
                    assert!(kind.unit(symbol).is_some(), "{}: {symbol}", kind.name);
                }
            }
        }
    }

    #[test]
    fn the_quick_way_finds_the_same_unit_for_every_symbol() {
        for unit in all_kinds().flat_map(|kind| kind.units) {
            let kinds = rates::KINDS.iter().chain(everyday::KINDS);
            let slowly = kinds.copied().find_map(|kind| kind.spelled(unit.symbol));
            let quickly = of_label(unit.symbol).map(|(_, unit)| unit);
            assert_eq!(quickly, slowly, "{}", unit.symbol);
        }
    }

    #[test]
    fn numbers_are_printed_with_six_digits_at_most() {
        assert_eq!(digits(0.1 + 0.2), "0.3");
        assert_eq!(digits(1234567.0), "1234567");
        assert_eq!(digits(6e-5), "0.00006");
        assert_eq!(digits(6e-6), "6e-6");
        assert_eq!(digits(-24.50), "-24.5");
    }
}
