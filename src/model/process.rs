//! What a process is: rows of stoichiometry and one rate law for each.

use crate::base::real::Real;

use super::content::Contents;
use super::parameter::ParameterSpec;
use super::row::Row;
use super::setup::Setup;
use super::temperature::{Factor, FactorList, theta};
use super::water::Water;

/// What a process is built from: the tank, the composition of everything, the temperature table.
pub struct Builder<'a, R> {
    /// The tank and its parameters.
    pub setup: &'a Setup<'a, R>,
    /// What each pool contains.
    pub contents: &'a Contents<R>,
    /// Temperature factors, to which a process adds its own.
    pub factors: &'a mut FactorList<R>,
}

impl<R: Real> Builder<'_, R> {
    /// The value of a parameter.
    pub fn get(&self, id: &str) -> R {
        self.setup.get(id)
    }
    /// The factor θ^(T − reference), both given by their parameter ids.
    pub fn theta(&mut self, theta_id: &str, reference_id: &str) -> Factor {
        self.factors.free(
            theta_id,
            theta(self.setup.get(theta_id), self.setup.get(reference_id)),
        )
    }
    /// The same, flat above `T_hold`.
    pub fn held_theta(&mut self, theta_id: &str, reference_id: &str) -> Factor {
        self.factors.held(
            theta_id,
            theta(self.setup.get(theta_id), self.setup.get(reference_id)),
        )
    }
}

/// One process: what happens, as rows that are constant in time, and how fast.
///
/// A process may have several rows (growth on ammonium and on nitrate, say, or one per stand).
/// They share one fate when a pool runs dry: the engine slows them together.
pub trait Process<R: Real>: Sized {
    /// Name of the process: its file and the column in tables.
    const ID: &'static str;
    /// One line in plain words.
    const WHAT: &'static str;
    /// Parameters declared by this process.
    const PARAMETERS: &'static [ParameterSpec];

    /// Builds the process and its rows for one tank.
    fn new(builder: &mut Builder<'_, R>) -> (Self, Vec<Row<R>>);

    /// Writes the rate of each row, in units of the row per day, never negative for rows that
    /// take from pools.
    fn rates(&self, water: &Water<R>, rates: &mut [R]);
}
