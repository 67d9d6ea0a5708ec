//! Points that fill a cube evenly (Sobol' 1967), each found by its number alone.
//!
//! Direction numbers of Joe & Kuo 2008, SIAM J. Sci. Comput. 30:2635 (set D6, up to 1000 dimensions),
//! points in the order of Gray's code. A random digital shift moves all points of a dimension alike: it
//! keeps how evenly they lie and gives every seed a cloud of its own.

use std::sync::LazyLock;

use rand::Rng;
use sobol::Sobol;
use sobol::params::JoeKuoD6;

use super::streams::{share, stream};

/// Digits after the point, in base 2.
const DIGITS: usize = 32;
/// How many dimensions there are.
pub const DIMENSIONS: usize = 1000;
/// Name of the streams that shifts are drawn from.
const SHIFT: &str = "digital shift";

/// Direction numbers, dimension by dimension.
static DIRECTIONS: LazyLock<Vec<Vec<u32>>> = LazyLock::new(|| {
    let numbers = JoeKuoD6::standard();
    Sobol::<u32>::init_direction_vals::<u32>(DIMENSIONS, DIGITS, &numbers)
});

/// The digits of one coordinate of a point, unshifted: the first one after the point is the highest bit.
///
/// # Panics
/// When the dimension is not below [`DIMENSIONS`].
pub fn digits(point: u32, dimension: usize) -> u32 {
    let directions = &DIRECTIONS[dimension];
    let mut gray = point ^ (point >> 1);
    let mut digits = 0;
    while gray != 0 {
        digits ^= directions[gray.trailing_zeros() as usize];
        gray &= gray - 1;
    }
    digits
}

/// One dimension of a shifted cloud of points.
#[derive(Debug, Clone, Copy)]
pub struct Shifted {
    dimension: usize,
    shift: u32,
}

impl Shifted {
    /// A dimension of the cloud of a seed.
    pub fn of(seed: u64, dimension: usize) -> Shifted {
        Shifted {
            dimension,
            shift: stream(seed, SHIFT, dimension as u64).next_u32(),
        }
    }
    /// The coordinate of a point, between 0 and 1 and never either of them.
    pub fn at(&self, point: u32) -> f64 {
        share(digits(point, self.dimension) ^ self.shift)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_shifted_dimension_has_one_point_in_each_of_1024_strata() {
        for dimension in [0, 1, 17, 230, DIMENSIONS - 1] {
            let shifted = Shifted::of(7, dimension);
            let mut strata: Vec<u32> = (0..1024)
                .map(|point| (1024.0 * shifted.at(point)) as u32)
                .collect();
            strata.sort_unstable();
            assert!(strata.into_iter().eq(0..1024), "dimension {dimension}");
        }
    }

    #[test]
    fn another_seed_shifts_otherwise() {
        let at = |seed| Shifted::of(seed, 3).at(17);
        assert_eq!(at(1), at(1));
        assert_ne!(at(1), at(2));
    }
}
