//! The shapes of limitation shared by rate laws.

use crate::base::real::Real;

/// Monod: 0 without the resource, ½ at `half`, towards 1 in plenty. A negative stock counts as none.
///
/// ```text
/// S/(K + S)
/// ```
#[inline(always)]
pub fn monod<R: Real>(stock: R, half: R) -> R {
    let stock = stock.floor_zero();
    stock / (half + stock)
}

/// Inhibition: 1 without the inhibitor, ½ at `half`, towards 0.
///
/// ```text
/// K/(K + S)
/// ```
#[inline(always)]
pub fn inhibition<R: Real>(stock: R, half: R) -> R {
    half / (half + stock.floor_zero())
}

/// Bell over pH between two limits, with H+ as −log activity.
///
/// ```text
/// 1/(1 + 10^(pK1 − pH) + 10^(pH − pK2))  =  1/(1 + H·10^pK1 + 10^−pK2/H)
/// ```
#[inline(always)]
pub fn ph_bell<R: Real>(hydrogen: R, inverse_hydrogen: R, ten_to_pk1: R, ten_to_minus_pk2: R) -> R {
    R::one() / (R::one() + hydrogen * ten_to_pk1 + ten_to_minus_pk2 * inverse_hydrogen)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn half_saturation_is_half_and_debts_count_as_nothing() {
        assert_eq!(monod(0.5, 0.5), 0.5);
        assert_eq!(monod(-0.1, 0.5), 0.0);
        assert_eq!(inhibition(0.2, 0.2), 0.5);
        assert_eq!(inhibition(-0.1, 0.2), 1.0);
    }

    #[test]
    fn the_ph_bell_has_the_shares_of_the_literature_range() {
        // pK1 6.3, pK2 9.5: 0.93 at pH 7.5, 0.61 at 6.5, 0.14 at 5.5 (rounded to two digits)
        for (ph, share) in [
            (7.5, 0.93),
            (7.0, 0.83),
            (6.5, 0.61),
            (6.0, 0.33),
            (5.5, 0.14),
        ] {
            let h = crate::base::maths::exp10(-ph);
            let found = ph_bell(
                h,
                1.0 / h,
                crate::base::maths::exp10(6.3),
                crate::base::maths::exp10(-9.5),
            );
            assert!((found - share).abs() < 6e-3, "pH {ph}: {found}");
        }
    }
}
