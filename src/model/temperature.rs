//! Everything that depends on temperature alone, tabulated where a run comes by and interpolated.
//!
//! Rate laws ask for a factor when they are built and get a [`Factor`], a place in the table;
//! during a step all factors are interpolated together (see `model::nodes`).
//! Held factors (photosynthesis, uptake, nitrifiers) see min(T, `T_hold`).

use std::sync::Arc;

use crate::base::real::Real;

use super::nodes::{Cell, Function, Nodes, Place, ROOM};

/// Place of a factor among the [`Factors`].
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Factor(usize);

/// Collects the factors that processes ask for; one name is one factor, however often asked for.
pub struct FactorList<R> {
    free: Vec<(String, Function<R>)>,
    held: Vec<(String, Function<R>)>,
    hold_c: R,
}

impl<R: Real> FactorList<R> {
    /// An empty list; held factors see no temperature above `hold_c`.
    pub fn new(hold_c: R) -> Self {
        FactorList {
            free: Vec::new(),
            held: Vec::new(),
            hold_c,
        }
    }
    /// A factor that follows the temperature: any smooth function of °C.
    pub fn free(
        &mut self,
        name: &str,
        function: impl Fn(f64) -> R + Send + Sync + 'static,
    ) -> Factor {
        Factor(place(&mut self.free, name, function))
    }
    /// A factor that stays flat above the hold.
    pub fn held(
        &mut self,
        name: &str,
        function: impl Fn(f64) -> R + Send + Sync + 'static,
    ) -> Factor {
        Factor(ROOM + place(&mut self.held, name, function))
    }
    /// The table, still empty.
    pub fn table(self) -> TemperatureTable<R> {
        TemperatureTable {
            free: nodes(self.free),
            held: nodes(self.held),
            hold_c: self.hold_c,
        }
    }
}

fn nodes<R: Real>(functions: Vec<(String, Function<R>)>) -> Arc<Nodes<R>> {
    let functions = functions.into_iter().map(|(_, function)| function);
    Arc::new(Nodes::of(functions.collect()))
}

fn place<R>(
    functions: &mut Vec<(String, Function<R>)>,
    name: &str,
    function: impl Fn(f64) -> R + Send + Sync + 'static,
) -> usize {
    let known = functions.iter().position(|(known, _)| known == name);
    known.unwrap_or_else(|| {
        assert!(
            functions.len() < ROOM,
            "raise ROOM for more temperature factors"
        );
        functions.push((name.to_string(), Box::new(function)));
        functions.len() - 1
    })
}

/// θ^(T − reference), as a function of temperature.
pub fn theta<R: Real>(theta: R, reference_c: R) -> impl Fn(f64) -> R + Send + Sync + 'static {
    let slope = theta.ln();
    move |t| (slope * (R::of(t) - reference_c)).exp()
}

/// All factors over temperature.
#[derive(Debug, Clone)]
pub struct TemperatureTable<R> {
    free: Arc<Nodes<R>>,
    held: Arc<Nodes<R>>,
    hold_c: R,
}

impl<R: Real> TemperatureTable<R> {
    /// Works out all factors at a temperature.
    #[inline(always)]
    pub fn at(&self, t_c: R, factors: &mut Factors<R>) {
        let (free, held) = factors.values.split_at_mut(ROOM);
        let place = Place::of(t_c);
        factors.free.at(&self.free, &place, free);
        if R::any(self.hold_c.below(t_c)) {
            let place = Place::of(t_c.least(self.hold_c));
            factors.held.at(&self.held, &place, held);
        } else {
            factors.held.at(&self.held, &place, held);
        }
    }
}

/// Factors at the present temperature.
#[derive(Debug, Clone, Copy)]
pub struct Factors<R> {
    free: Cell<R>,
    held: Cell<R>,
    values: [R; 2 * ROOM],
}

impl<R: Real> Default for Factors<R> {
    fn default() -> Self {
        Factors {
            free: Cell::nowhere(),
            held: Cell::nowhere(),
            values: [R::one(); 2 * ROOM],
        }
    }
}

impl<R: Real> Factors<R> {
    /// The value of a factor.
    #[inline(always)]
    pub fn get(&self, factor: Factor) -> R {
        self.values[factor.0 % (2 * ROOM)] // a power of two: no check is needed
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::base::maths;
    use crate::chemistry::{carbonate::Carbonate, schmidt, solubility};

    #[test]
    fn interpolation_is_exact_to_2e_8_between_5_and_35_degrees() {
        let mut list = FactorList::<f64>::new(30.0);
        let functions: [fn(f64) -> f64; 4] = [
            |t| maths::exp(0.117 * (t - 20.0)),
            |t| Carbonate::at(t, 0.004).k12,
            |t| solubility::oxygen_saturation_mg_per_l(t, 1.0),
            |t| 1.0 / schmidt::oxygen(t).sqrt(),
        ];
        let places: Vec<Factor> = functions
            .iter()
            .enumerate()
            .map(|(i, f)| list.free(&i.to_string(), *f))
            .collect();
        let table = list.table();
        let mut factors = Factors::default();
        for step in 0..3001 {
            let t = 5.0 + f64::from(step) * 0.01;
            table.at(t, &mut factors);
            for (place, function) in places.iter().zip(functions) {
                let error = factors.get(*place) / function(t) - 1.0;
                assert!(error.abs() < 2e-8, "{t} °C: {error:e}");
            }
        }
    }

    #[test]
    fn a_held_factor_stays_flat_above_30_degrees() {
        let mut list = FactorList::<f64>::new(30.0);
        let factor = list.held("th", theta(1.1, 20.0));
        let table = list.table();
        let mut factors = Factors::default();
        // 2e-8 of a value of 2.6
        let mut at = |t| {
            table.at(t, &mut factors);
            factors.get(factor)
        };
        assert_eq!(at(30.0), at(33.3));
        assert!((at(29.9) - maths::exp(9.9 * maths::ln(1.1))).abs() < 5e-8);
    }
}
