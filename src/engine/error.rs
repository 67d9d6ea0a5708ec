//! What can go wrong in a run.

use thiserror::Error;

/// A run that could not be finished.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum RunError {
    /// A number that is not one. Names what made it and what it was made from.
    #[error(
        "day {day:.4}: {process} gave an impossible number, and so did {pool}. The water then: {inputs}. \
         An extreme parameter or an almost empty tank is the usual cause; check [parameters] and the top-up"
    )]
    Impossible {
        /// The process whose rate is impossible.
        process: String,
        /// The first pool that is.
        pool: String,
        /// Days since midnight of day 0.
        day: f64,
        /// Concentrations and temperature at the time.
        inputs: String,
    },
    /// A conserved quantity does not add up.
    #[error(
        "the ledger of {quantity} does not close on day {day:.4}: {error:e} {unit} are missing. \
         This is a fault of the program, not of the scenario; please report it with the scenario"
    )]
    LedgerBroken {
        /// Which quantity.
        quantity: &'static str,
        /// Its unit.
        unit: &'static str,
        /// What is missing.
        error: f64,
        /// Days since midnight of day 0 at which it was found.
        day: f64,
    },
    /// The input makes no sense to the engine.
    #[error("{0}")]
    Refused(String),
}

impl RunError {
    /// When it happened, days since midnight of day 0; at the very start where the input makes no sense.
    pub fn day(&self) -> f64 {
        match self {
            RunError::Impossible { day, .. } | RunError::LedgerBroken { day, .. } => *day,
            RunError::Refused(_) => 0.0,
        }
    }
}
