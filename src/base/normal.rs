//! Quantiles of the standard normal distribution, the same bits on every machine.

use super::maths;

/// Where the middle piece ends: |p − ½| up to this.
const MIDDLE: f64 = 0.425;
/// Its square.
const MIDDLE_SQUARED: f64 = 0.180_625;
/// √(−ln p) at which the far tails begin: p below 1.4e-11.
const FAR: f64 = 5.0;
/// Where the near tails are developed about.
const NEAR: f64 = 1.6;

/// A ratio of two polynomials of the seventh degree, coefficients from the highest down.
type Ratio = ([f64; 8], [f64; 8]);

/// The middle.
const CENTRE: Ratio = (
    [
        2_509.080_928_730_122_7,
        33_430.575_583_588_13,
        67_265.770_927_008_7,
        45_921.953_931_549_87,
        13_731.693_765_509_46,
        1_971.590_950_306_551_3,
        133.141_667_891_784_38,
        3.387_132_872_796_366_5,
    ],
    [
        5_226.495_278_852_854,
        28_729.085_735_721_943,
        39_307.895_800_092_71,
        21_213.794_301_586_597,
        5_394.196_021_424_751,
        687.187_007_492_057_9,
        42.313_330_701_600_91,
        1.0,
    ],
);
/// The tails.
const TAILS: Ratio = (
    [
        0.000_774_545_014_278_341_4,
        0.022_723_844_989_269_184,
        0.241_780_725_177_450_6,
        1.270_458_252_452_368_4,
        3.647_848_324_763_204_5,
        5.769_497_221_460_691,
        4.630_337_846_156_546,
        1.423_437_110_749_683_5,
    ],
    [
        1.050_750_071_644_416_9e-09,
        0.000_547_593_808_499_534_5,
        0.015_198_666_563_616_457,
        0.148_103_976_427_480_08,
        0.689_767_334_985_1,
        1.676_384_830_183_803_8,
        2.053_191_626_637_759,
        1.0,
    ],
);
/// The far tails.
const FAR_TAILS: Ratio = (
    [
        2.010_334_399_292_288_1e-07,
        2.711_555_568_743_487_6e-05,
        0.001_242_660_947_388_078_4,
        0.026_532_189_526_576_124,
        0.296_560_571_828_504_87,
        1.784_826_539_917_291_3,
        5.463_784_911_164_114,
        6.657_904_643_501_103,
    ],
    [
        2.044_263_103_389_939_7e-15,
        1.421_511_758_316_446e-07,
        1.846_318_317_510_054_8e-05,
        0.000_786_869_131_145_613_3,
        0.014_875_361_290_850_615,
        0.136_929_880_922_735_8,
        0.599_832_206_555_888,
        1.0,
    ],
);
/// The number below which a share `p` of a standard normal distribution lies; infinite at 0 and 1, not a
/// number outside.
///
/// ```text
/// |p − ½| ≤ 0.425:  q·R(0.425² − q²), q = p − ½       else, r = √(−ln of the smaller tail):  ±R(r − 1.6), ±R(r − 5)
/// ```
///
/// Source: Wichura 1988, Applied Statistics 37:477, algorithm AS 241 (PPND16); relative error about 1e-16.
///
/// ```
/// # use firstfill::base::normal::quantile;
/// assert!((quantile(0.95) - 1.6448536269514715).abs() < 1e-15);
/// ```
pub fn quantile(p: f64) -> f64 {
    if !(0.0..=1.0).contains(&p) {
        return f64::NAN;
    }
    let q = p - 0.5;
    if q.abs() <= MIDDLE {
        return q * at(&CENTRE, MIDDLE_SQUARED - q * q);
    }
    let tail = if q < 0.0 { p } else { 1.0 - p };
    if tail == 0.0 {
        return f64::INFINITY.copysign(q);
    }
    let r = (-maths::ln(tail)).sqrt();
    let size = if r <= FAR {
        at(&TAILS, r - NEAR)
    } else {
        at(&FAR_TAILS, r - FAR)
    };
    size.copysign(q)
}

fn at((above, below): &Ratio, r: f64) -> f64 {
    let polynomial = |c: &[f64; 8]| c[1..].iter().fold(c[0], |sum, next| sum * r + next);
    polynomial(above) / polynomial(below)
}
