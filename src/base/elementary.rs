//! e^x and ln x, written once for one number and for numbers in lanes.
//!
//! Plain arithmetic and bits only, no branch and no table, so that a processor can work on lanes
//! abreast and every machine gives the same bits. Off by at most 2 units of the last place (tested
//! against `libm`). Reductions and the polynomial of the logarithm: Cody & Waite 1980, and the
//! widely used form of Ng (fdlibm, 1993); constants of that source.

use super::real::Real;

const LOG2_E: f64 = std::f64::consts::LOG2_E;
/// ln 2 in two parts; the first has zeros at its end, so that its multiples are exact.
const LN2: (f64, f64) = (0.693_147_180_369_123_8, 1.908_214_929_270_587_7e-10);
/// 1.5·2^52: added to a number, it leaves the nearest whole number in the last bits.
const ROUNDING: f64 = 6_755_399_441_055_744.0;
/// Bits of the exponent begin here.
const EXPONENT: u32 = 52;
/// What the exponent of 1 is written as.
const BIAS: u64 = 1023;
/// Where e^x would leave the range of numbers.
const EXP_RANGE: (f64, f64) = (-708.0, 709.0);
/// 1/n!, from n = 13 down to 2.
const INVERSE_FACTORIALS: [f64; 12] = [
    1.0 / 6_227_020_800.0,
    1.0 / 479_001_600.0,
    1.0 / 39_916_800.0,
    1.0 / 3_628_800.0,
    1.0 / 362_880.0,
    1.0 / 40_320.0,
    1.0 / 5_040.0,
    1.0 / 720.0,
    1.0 / 120.0,
    1.0 / 24.0,
    1.0 / 6.0,
    0.5,
];

/// e to the power x; beyond ±708 it stays at the value there.
///
/// ```text
/// x = k·ln 2 + r, |r| ≤ ½ ln 2       e^x = 2^k · Σ r^n/n!
/// ```
#[inline(always)]
pub fn exp<R: Real>(x: R) -> R {
    let x = x.most(R::of(EXP_RANGE.0)).least(R::of(EXP_RANGE.1));
    let shifted = x * R::of(LOG2_E) + R::of(ROUNDING);
    let k = shifted - R::of(ROUNDING);
    let r = (x - k * R::of(LN2.0)) - k * R::of(LN2.1);
    let mut sum = R::of(INVERSE_FACTORIALS[0]);
    for factor in &INVERSE_FACTORIALS[1..] {
        sum = sum * r + R::of(*factor);
    }
    let power = shifted.with_bits(|bits| bits.wrapping_add(BIAS) << EXPONENT);
    (R::one() + (r + r * r * sum)) * power
}

/// The nearest whole number, of two the even one; of numbers below 2^51 either way.
#[inline(always)]
pub fn nearest<R: Real>(x: R) -> R {
    (x + R::of(ROUNDING)) - R::of(ROUNDING)
}

/// Coefficients of the logarithm, from the highest down.
const LOG: [f64; 7] = [
    0.147_981_986_051_165_86,
    0.153_138_376_992_093_73,
    0.181_835_721_616_180_5,
    0.222_221_984_321_497_84,
    0.285_714_287_436_623_9,
    0.399_999_999_994_094_2,
    0.666_666_666_666_673_5,
];
/// Bits of √½ without those of its last half.
const ROOT_HALF: u64 = 0x3fe6_a09e_0000_0000;
/// Bits of 1.
const ONE: u64 = 0x3ff0_0000_0000_0000;
/// Bits of 2^52; a whole number put into its last bits is that much more.
const TWO_52: u64 = 0x4330_0000_0000_0000;

/// The natural logarithm of a positive number; not a number for any other.
///
/// ```text
/// x = 2^k·m, √½ ≤ m < √2       f = m − 1, s = f/(2 + f)       ln m = f − ½f² + s·(½f² + Σ L_n s^(2n))
/// ```
#[inline(always)]
pub fn ln<R: Real>(x: R) -> R {
    let biased = x.with_bits(|bits| (bits.wrapping_add(ONE - ROOT_HALF) >> EXPONENT) | TWO_52);
    let k = biased - R::of(4_503_599_627_370_496.0 + BIAS as f64);
    let m = x.with_bits(|bits| {
        let moved = bits.wrapping_add(ONE - ROOT_HALF);
        (moved & ((1 << EXPONENT) - 1)).wrapping_add(ROOT_HALF)
    });
    let f = m - R::one();
    let s = f / (R::of(2.0) + f);
    let z = s * s;
    let mut sum = R::of(LOG[0]);
    for factor in &LOG[1..] {
        sum = sum * z + R::of(*factor);
    }
    let half_square = R::of(0.5) * f * f;
    let small = s * (half_square + sum * z) + k * R::of(LN2.1);
    let ln = k * R::of(LN2.0) - ((half_square - small) - f);
    // 0/0 where there is no logarithm, else nothing: a choice would be made lane by lane
    ln + R::zero() / x.most(R::zero())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::base::lanes::Lanes;

    fn units_off(found: f64, exact: f64) -> f64 {
        let unit = f64::from_bits(exact.to_bits() + 1) - exact;
        (found - exact).abs() / unit.abs()
    }

    #[test]
    fn exp_is_within_2_units_of_the_last_place_of_libm() {
        let mut worst: f64 = 0.0;
        for step in -700_000..700_000 {
            let x = f64::from(step) * 0.001_000_31;
            worst = worst.max(units_off(exp(x), libm::exp(x)));
        }
        assert!(worst <= 2.0, "{worst}");
        assert_eq!((exp(0.0), exp(-1e4)), (1.0, exp(-708.0)));
        assert!(exp(f64::NAN).is_nan());
    }

    #[test]
    fn ln_is_within_2_units_of_the_last_place_of_libm() {
        let mut worst: f64 = 0.0;
        for step in -700_000..700_000 {
            let x = libm::exp(f64::from(step) * 0.001_000_31);
            worst = worst.max(units_off(ln(x), libm::log(x)));
        }
        assert!(worst <= 2.0, "{worst}");
        assert_eq!(ln(1.0), 0.0);
        for none in [0.0, -1.0, f64::NAN] {
            assert!(ln(none).is_nan(), "{none}");
        }
    }

    #[test]
    fn nearest_is_that_of_the_processor() {
        for x in [0.0, 0.5, 1.5, 2.4999, -0.5, -1.5, 196.7, 1e15] {
            assert_eq!(nearest(x), f64::round_ties_even(x), "{x}");
        }
    }

    #[test]
    fn lanes_hold_the_bits_of_numbers_alone() {
        for step in -3000..3000 {
            let x = [0.1, -3.0, 7.7, 1e-9].map(|by| by * f64::from(step));
            let (together, y) = (exp(Lanes(x)), x.map(f64::abs));
            let logarithms = ln(Lanes(y));
            for lane in 0..4 {
                assert_eq!(together.0[lane].to_bits(), exp(x[lane]).to_bits());
                assert_eq!(logarithms.0[lane].to_bits(), ln(y[lane]).to_bits());
            }
        }
    }
}
