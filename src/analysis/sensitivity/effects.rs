//! Elementary effects: how much the output changes per range of an input, step by step.
//!
//! ```text
//! d_j = (y(x + Δ e_j) − y(x)) / Δ           µ = mean d     µ* = mean |d|     σ = standard deviation of d
//! ```
//!
//! µ* ranks (Campolongo et al. 2007, Environ. Model. Softw. 22: 1509); a large σ beside it tells of bends or of inputs
//! that work together (Morris 1991).

use crate::base::moments::Moments;

/// Effects of one input, one by one.
#[derive(Debug, Clone, Copy, Default)]
pub struct EffectSums {
    effects: Moments,
    sizes: Moments,
}

/// What the effects of an input come to.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Measures {
    /// Their mean.
    pub mu: f64,
    /// The mean of their sizes.
    pub mu_star: f64,
    /// Their standard deviation, as of a sample; none of one.
    pub sigma: Option<f64>,
}

impl EffectSums {
    /// Takes in a step: the output before and after, and by how much of its range the input went up.
    pub fn take(&mut self, before: f64, after: f64, up_by: f64) {
        let effect = (after - before) / up_by;
        self.effects.add(effect);
        self.sizes.add(effect.abs());
    }

    /// What they come to.
    pub fn measures(&self) -> Measures {
        Measures {
            mu: self.effects.mean(),
            mu_star: self.sizes.mean(),
            sigma: self.effects.deviation(),
        }
    }
}
