//! A number of one unit as a number of another of the same kind.

use super::{Unit, all_kinds};

/// From one unit to another of the same kind.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Converted {
    from: &'static Unit,
    to: &'static Unit,
}

impl Converted {
    /// From a unit by its symbol to one as somebody spells it; none where no kind has both.
    pub fn between(symbol: &str, spelling: &str) -> Option<Converted> {
        all_kinds().find_map(|kind| {
            let (from, to) = (kind.unit(symbol)?, kind.spelled(spelling)?);
            Some(Converted { from, to })
        })
    }

    /// A number of the first unit in the second.
    pub fn of(&self, number: f64) -> f64 {
        self.to.from_base(self.from.to_base(number))
    }

    /// The symbol of the second unit.
    pub fn symbol(&self) -> &'static str {
        self.to.symbol
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::base::units::MEQ_PER_DKH;

    #[test]
    fn numbers_go_to_the_unit_in_which_somebody_thinks() {
        let to_kh = Converted::between("meq/L", "dKH").expect("both are alkalinities");
        assert!(
            (to_kh.of(2.0 * MEQ_PER_DKH) - 2.0).abs() < 1e-12,
            "rounding"
        );
        let to_percent = Converted::between("1", "percent").expect("both are shares");
        assert_eq!((to_percent.of(0.35), to_percent.symbol()), (35.0, "%"));
        assert_eq!(Converted::between("meq/L", "cm"), None);
    }
}
