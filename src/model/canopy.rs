//! Light and shade in a planted stand.

use crate::base::real::Real;

use super::pool::{MAX_STANDS, Pool};
use super::setup::Setup;
use super::state::State;

/// Light and shade in one stand.
#[derive(Debug, Clone, Copy)]
pub struct Canopy<R> {
    /// Share of the light that reaches the bed below, 0 to 1.
    pub passed: R,
}

impl<R: Real> Canopy<R> {
    /// A stand without leaves.
    pub fn bare() -> Self {
        Canopy { passed: R::one() }
    }
}

/// Works out the canopies of all stands.
#[derive(Debug, Clone)]
pub struct Canopies<R> {
    count: usize,
    /// Shading per g of dry weight in the whole stand, 1/g.
    shading_per_g: [R; MAX_STANDS],
}

impl<R: Real> Canopies<R> {
    /// Prepares the stands of a tank.
    pub fn new(setup: &Setup<'_, R>) -> Self {
        let mut shading_per_g = [R::zero(); MAX_STANDS];
        for (stand, shading) in setup.stands.iter().zip(&mut shading_per_g) {
            *shading = setup.get(&stand.group.id("k_B")) / (stand.cover_frac * setup.tank.bed_m2);
        }
        Canopies {
            count: setup.stands.len(),
            shading_per_g,
        }
    }

    /// ```text
    /// W = (B + E)/A_i        passed = e^(−k_B·W)
    /// ```
    #[inline(always)]
    pub fn look(&self, state: &State<R>, canopies: &mut [Canopy<R>; MAX_STANDS]) {
        for (stand, canopy) in canopies.iter_mut().enumerate().take(self.count) {
            let mass = state[Pool::Biomass(stand)] + state[Pool::Emersed(stand)];
            canopy.passed = (-self.shading_per_g[stand] * mass).exp();
        }
    }
}
