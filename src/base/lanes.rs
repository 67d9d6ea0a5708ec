//! Several tanks side by side: a number with one value per lane.
//!
//! The model is written once, generic over [`Real`]; with `Lanes<4>` one evaluation looks at four
//! tanks, and the processor can work on them abreast. Every operation is the one of `f64`, lane by
//! lane, so a lane holds the same bits as the tank would alone (tested in `tests/lanes.rs`).

use std::array;
use std::ops::{Add, AddAssign, Div, Mul, MulAssign, Neg, Sub, SubAssign};

use super::real::Real;

/// One number per lane.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Lanes<const N: usize>(pub [f64; N]);

impl<const N: usize> Lanes<N> {
    #[inline(always)]
    fn each(self, change: impl Fn(f64) -> f64) -> Self {
        Lanes(self.0.map(change))
    }
    #[inline(always)]
    fn both(self, other: Self, join: impl Fn(f64, f64) -> f64) -> Self {
        Lanes(array::from_fn(|lane| join(self.0[lane], other.0[lane])))
    }
}

impl<const N: usize> Add for Lanes<N> {
    type Output = Self;
    #[inline(always)]
    fn add(self, other: Self) -> Self {
        self.both(other, |a, b| a + b)
    }
}

impl<const N: usize> Sub for Lanes<N> {
    type Output = Self;
    #[inline(always)]
    fn sub(self, other: Self) -> Self {
        self.both(other, |a, b| a - b)
    }
}

impl<const N: usize> Mul for Lanes<N> {
    type Output = Self;
    #[inline(always)]
    fn mul(self, other: Self) -> Self {
        self.both(other, |a, b| a * b)
    }
}

impl<const N: usize> Div for Lanes<N> {
    type Output = Self;
    #[inline(always)]
    fn div(self, other: Self) -> Self {
        self.both(other, |a, b| a / b)
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
    type Mask = [bool; N];
    type Rows = [usize; N];
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
    #[inline]
    fn exp(self) -> Self {
        self.each(Real::exp)
    }
    #[inline]
    fn ln(self) -> Self {
        self.each(Real::ln)
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
    fn either(a: [bool; N], b: [bool; N]) -> [bool; N] {
        array::from_fn(|lane| a[lane] | b[lane])
    }
    #[inline(always)]
    fn least(self, other: Self) -> Self {
        self.both(other, Real::least)
    }
    #[inline(always)]
    fn most(self, other: Self) -> Self {
        self.both(other, Real::most)
    }
    #[inline(always)]
    fn below(self, other: Self) -> [bool; N] {
        array::from_fn(|lane| self.0[lane] < other.0[lane])
    }
    #[inline(always)]
    fn pick(mask: [bool; N], yes: Self, no: Self) -> Self {
        Lanes(array::from_fn(|lane| {
            Real::pick(mask[lane], yes.0[lane], no.0[lane])
        }))
    }
    #[inline(always)]
    fn any(mask: [bool; N]) -> bool {
        mask.contains(&true)
    }
    #[inline(always)]
    fn all(mask: [bool; N]) -> bool {
        !mask.contains(&false)
    }
    #[inline(always)]
    fn is_finite(self) -> bool {
        self.0.iter().all(|number| number.is_finite())
    }
    #[inline(always)]
    fn table_row(self, last: usize) -> ([usize; N], Self) {
        let rows = self.0.map(|number| number.table_row(last));
        (rows.map(|(row, _)| row), Lanes(rows.map(|(_, rest)| rest)))
    }
    #[inline(always)]
    fn table_entry(
        table: &[Self],
        rows: [usize; N],
        ahead: usize,
        width: usize,
        column: usize,
    ) -> Self {
        Lanes(array::from_fn(|lane| {
            table[(rows[lane] + ahead) * width + column].0[lane]
        }))
    }
}
