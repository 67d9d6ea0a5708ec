//! Litter: how dead tissue splits into leachable and slow detritus.

use crate::base::real::Real;
use crate::base::sources::memory;

use super::parameter::{ParameterSpec, parameter};
use super::pool::Pool;
use super::process::Builder;
use super::row::Row;

/// The split of dead tissue.
pub const PARAMETERS: &[ParameterSpec] = &[parameter(
    "phi_l",
    "leachable share of dead plant tissue",
    "1",
    0.20,
    (0.15, 0.30),
    memory(&[], "cell contents"),
)];

/// Puts dead tissue into detritus.
#[derive(Debug, Clone, Copy)]
pub struct Litter<R> {
    leachable: R,
}

impl<R: Real> Litter<R> {
    /// Reads the split.
    pub fn new(builder: &Builder<'_, R>) -> Self {
        Litter {
            leachable: builder.get("phi_l"),
        }
    }
    /// Adds dry weight (g per unit of the row) to both kinds of detritus.
    pub fn tissue(self, row: Row<R>, grams: R) -> Row<R> {
        row.put(Pool::FastDetritus, grams * self.leachable)
            .put(Pool::SlowDetritus, grams * (R::one() - self.leachable))
    }
    /// Adds its nitrogen (mg N per unit of the row) alike.
    pub fn nitrogen(self, row: Row<R>, mg_n: R) -> Row<R> {
        row.put(Pool::FastDetritusN, mg_n * self.leachable)
            .put(Pool::SlowDetritusN, mg_n * (R::one() - self.leachable))
    }
}
