//! Several tanks side by side: a number with one value per lane.
//!
//! The model is written once, generic over [`Real`]; with `Lanes<4>` one evaluation looks at four
//! tanks, and the processor can work on them abreast. Every operation is the one of `f64`, lane by
//! lane, so a lane holds the same bits as the tank would alone (tested in `tests/lanes.rs`).

#![allow(clippy::needless_range_loop)] // plain loops over lanes are what the compiler widens

use std::array;
use std::ops::{Add, AddAssign, Div, Mul, MulAssign, Neg, Sub, SubAssign};

use super::real::Real;

/// One number per lane. Aligned so that no wide load straddles two lines of the cache.
#[derive(Debug, Clone, Copy, PartialEq)]
#[repr(align(32))]
pub struct Lanes<const N: usize>(pub [f64; N]);

impl<const N: usize> Lanes<N> {
    // plain loops over whole arrays, which the compiler turns into wide instructions
    #[inline(always)]
    fn each(self, change: impl Fn(f64) -> f64) -> Self {
        let mut out = [0.0; N];
        for lane in 0..N {
            out[lane] = change(self.0[lane]);
        }
        Lanes(out)
    }
    #[inline(always)]
    fn joined(self, other: Self, join: impl Fn(f64, f64) -> f64) -> Self {
        let mut out = [0.0; N];
        for lane in 0..N {
            out[lane] = join(self.0[lane], other.0[lane]);
        }
        Lanes(out)
    }
}

/// A truth value per lane: all bits set, or none. Whole words, so that they stay in the processor's
/// wide registers.
pub type LaneMask<const N: usize> = [u64; N];

impl<const N: usize> Add for Lanes<N> {
    type Output = Self;
    #[inline(always)]
    fn add(self, other: Self) -> Self {
        self.joined(other, |a, b| a + b)
    }
}

impl<const N: usize> Sub for Lanes<N> {
    type Output = Self;
    #[inline(always)]
    fn sub(self, other: Self) -> Self {
        self.joined(other, |a, b| a - b)
    }
}

impl<const N: usize> Mul for Lanes<N> {
    type Output = Self;
    #[inline(always)]
    fn mul(self, other: Self) -> Self {
        self.joined(other, |a, b| a * b)
    }
}

impl<const N: usize> Div for Lanes<N> {
    type Output = Self;
    #[inline(always)]
    fn div(self, other: Self) -> Self {
        self.joined(other, |a, b| a / b)
    }
}

impl<const N: usize> Neg for Lanes<N> {
    type Output = Self;
    #[inline(always)]
    fn neg(self) -> Self {
        self.each(|a| -a)
    }
}

impl<const N: usize> AddAssign for Lanes<N> {
    #[inline(always)]
    fn add_assign(&mut self, other: Self) {
        *self = *self + other;
    }
}

impl<const N: usize> SubAssign for Lanes<N> {
    #[inline(always)]
    fn sub_assign(&mut self, other: Self) {
        *self = *self - other;
    }
}

impl<const N: usize> MulAssign for Lanes<N> {
    #[inline(always)]
    fn mul_assign(&mut self, other: Self) {
        *self = *self * other;
    }
}

impl<const N: usize> Real for Lanes<N> {
    type Mask = LaneMask<N>;
    const LANES: usize = N;

    #[inline(always)]
    fn gather(number: impl FnMut(usize) -> f64) -> Self {
        Lanes(array::from_fn(number))
    }
    #[inline(always)]
    fn lane(self, lane: usize) -> f64 {
        self.0[lane]
    }
    #[inline(always)]
    fn set_lane(&mut self, lane: usize, value: f64) {
        self.0[lane] = value;
    }

    #[inline(always)]
    fn of(value: f64) -> Self {
        Lanes([value; N])
    }
    #[inline(always)]
    fn with_bits(self, change: impl Fn(u64) -> u64) -> Self {
        self.each(|number| number.with_bits(&change))
    }
    #[inline]
    fn exp10(self) -> Self {
        self.each(Real::exp10)
    }
    #[inline(always)]
    fn sqrt(self) -> Self {
        self.each(Real::sqrt)
    }
    #[inline(always)]
    fn abs(self) -> Self {
        self.each(Real::abs)
    }
    #[inline(always)]
    fn ceil(self) -> Self {
        self.each(Real::ceil)
    }
    #[inline(always)]
    fn both(a: LaneMask<N>, b: LaneMask<N>) -> LaneMask<N> {
        let mut mask = [0; N];
        for lane in 0..N {
            mask[lane] = a[lane] & b[lane];
        }
        mask
    }
    #[inline(always)]
    fn not(mask: LaneMask<N>) -> LaneMask<N> {
        mask.map(|holds| !holds)
    }
    #[inline(always)]
    fn either(a: LaneMask<N>, b: LaneMask<N>) -> LaneMask<N> {
        let mut mask = [0; N];
        for lane in 0..N {
            mask[lane] = a[lane] | b[lane];
        }
        mask
    }
    #[inline(always)]
    fn least(self, other: Self) -> Self {
        self.joined(other, Real::least)
    }
    #[inline(always)]
    fn most(self, other: Self) -> Self {
        self.joined(other, Real::most)
    }
    #[inline(always)]
    fn below(self, other: Self) -> LaneMask<N> {
        let mut mask = [0; N];
        for lane in 0..N {
            mask[lane] = if self.0[lane] < other.0[lane] {
                u64::MAX
            } else {
                0
            };
        }
        mask
    }
    #[inline(always)]
    fn pick(mask: LaneMask<N>, yes: Self, no: Self) -> Self {
        let mut out = [0.0; N];
        for lane in 0..N {
            let bits = (yes.0[lane].to_bits() & mask[lane]) | (no.0[lane].to_bits() & !mask[lane]);
            out[lane] = f64::from_bits(bits);
        }
        Lanes(out)
    }
    #[inline(always)]
    fn any(mask: LaneMask<N>) -> bool {
        mask.iter().fold(0, |any, lane| any | lane) != 0
    }
    #[inline(always)]
    fn all(mask: LaneMask<N>) -> bool {
        mask.iter().fold(u64::MAX, |all, lane| all & lane) != 0
    }
    #[inline(always)]
    fn lone(mask: LaneMask<N>) -> Option<usize> {
        let count = mask.iter().fold(0, |count, lane| count + (lane & 1));
        (count == 1).then(|| mask.iter().position(|&lane| lane != 0).unwrap_or(0))
    }
    #[inline(always)]
    fn is_finite(self) -> bool {
        self.0
            .iter()
            .fold(true, |all, number| all & number.is_finite())
    }
}
