//! The number type of the model: one tank (`f64`), or several tanks side by side in lanes.
//!
//! Chemistry and rate laws are written once, generic over [`Real`]. An `if` on a value of the
//! state is written as [`Real::pick`], so that each lane takes its own branch.

use std::fmt::Debug;
use std::ops::{Add, AddAssign, Div, Mul, MulAssign, Neg, Sub, SubAssign};

use super::{elementary, maths};

/// A number the model can compute with.
///
/// Lane types keep lanes apart: what one lane holds never changes the bits of another.
pub trait Real:
    Copy
    + Debug
    + Send
    + Sync
    + 'static
    + Add<Output = Self>
    + Sub<Output = Self>
    + Mul<Output = Self>
    + Div<Output = Self>
    + Neg<Output = Self>
    + AddAssign
    + SubAssign
    + MulAssign
{
    /// A truth value per lane.
    type Mask: Copy + Debug;
    /// How many tanks stand side by side.
    const LANES: usize;

    /// A number per lane.
    fn gather(number: impl FnMut(usize) -> f64) -> Self;
    /// The number of one lane.
    fn lane(self, lane: usize) -> f64;
    /// Puts a number into one lane.
    fn set_lane(&mut self, lane: usize, value: f64);

    /// The same number in every lane.
    fn of(value: f64) -> Self;
    /// The number with other bits, lane by lane.
    fn with_bits(self, change: impl Fn(u64) -> u64) -> Self;
    /// e to the power of the number.
    #[inline(always)]
    fn exp(self) -> Self {
        elementary::exp(self)
    }
    /// Natural logarithm; not a number where the number is not positive.
    #[inline(always)]
    fn ln(self) -> Self {
        elementary::ln(self)
    }
    /// 10 to the power of the number.
    fn exp10(self) -> Self;
    /// Square root.
    fn sqrt(self) -> Self;
    /// The next whole number that is not smaller.
    fn ceil(self) -> Self;
    /// Absolute value.
    fn abs(self) -> Self;
    /// The smaller of two.
    fn least(self, other: Self) -> Self;
    /// The larger of two.
    fn most(self, other: Self) -> Self;
    /// Whether the number is smaller than the other.
    fn below(self, other: Self) -> Self::Mask;
    /// `yes` where the mask holds, else `no`.
    fn pick(mask: Self::Mask, yes: Self, no: Self) -> Self;
    /// Where either mask holds.
    fn either(a: Self::Mask, b: Self::Mask) -> Self::Mask;
    /// Where both masks hold.
    fn both(a: Self::Mask, b: Self::Mask) -> Self::Mask;
    /// Where the mask does not hold.
    fn not(mask: Self::Mask) -> Self::Mask;
    /// Whether the mask holds in any lane.
    fn any(mask: Self::Mask) -> bool;
    /// Whether the mask holds in every lane.
    fn all(mask: Self::Mask) -> bool;
    /// The one lane of several in which the mask holds, if it is one alone.
    fn lone(mask: Self::Mask) -> Option<usize>;
    /// Whether every lane is an ordinary number.
    fn is_finite(self) -> bool;
    /// Zero.
    #[inline]
    fn zero() -> Self {
        Self::of(0.0)
    }
    /// One.
    #[inline]
    fn one() -> Self {
        Self::of(1.0)
    }
    /// The number, or zero where it is negative.
    #[inline]
    fn floor_zero(self) -> Self {
        self.most(Self::zero())
    }
    /// The number kept between 0 and 1.
    #[inline]
    fn unit(self) -> Self {
        self.most(Self::zero()).least(Self::one())
    }
}

impl Real for f64 {
    type Mask = bool;
    const LANES: usize = 1;

    #[inline(always)]
    fn gather(mut number: impl FnMut(usize) -> f64) -> f64 {
        number(0)
    }
    #[inline(always)]
    fn lane(self, _: usize) -> f64 {
        self
    }
    #[inline(always)]
    fn set_lane(&mut self, _: usize, value: f64) {
        *self = value;
    }

    #[inline(always)]
    fn of(value: f64) -> f64 {
        value
    }
    #[inline(always)]
    fn with_bits(self, change: impl Fn(u64) -> u64) -> f64 {
        f64::from_bits(change(self.to_bits()))
    }
    #[inline]
    fn exp10(self) -> f64 {
        maths::exp10(self)
    }
    #[inline(always)]
    fn sqrt(self) -> f64 {
        f64::sqrt(self)
    }
    #[inline(always)]
    fn abs(self) -> f64 {
        f64::abs(self)
    }
    #[inline(always)]
    fn ceil(self) -> f64 {
        f64::ceil(self)
    }
    #[inline(always)]
    fn either(a: bool, b: bool) -> bool {
        a | b
    }
    #[inline(always)]
    fn both(a: bool, b: bool) -> bool {
        a & b
    }
    #[inline(always)]
    fn not(mask: bool) -> bool {
        !mask
    }
    #[inline(always)]
    fn least(self, other: f64) -> f64 {
        if other < self { other } else { self }
    }
    #[inline(always)]
    fn most(self, other: f64) -> f64 {
        if other > self { other } else { self }
    }
    #[inline(always)]
    fn below(self, other: f64) -> bool {
        self < other
    }
    #[inline(always)]
    fn pick(mask: bool, yes: f64, no: f64) -> f64 {
        if mask { yes } else { no }
    }
    #[inline(always)]
    fn any(mask: bool) -> bool {
        mask
    }
    #[inline(always)]
    fn all(mask: bool) -> bool {
        mask
    }
    #[inline(always)]
    fn lone(_: bool) -> Option<usize> {
        None
    }
    #[inline(always)]
    fn is_finite(self) -> bool {
        f64::is_finite(self)
    }
}
