//! What can be wrong with a test.

use thiserror::Error;

use crate::engine::error::RunError;
use crate::model::parameters;
use crate::model::pool::Pool;
use crate::model::processes;

/// A test that makes no sense, or that could not be run to its end.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum LaboratoryError {
    /// A process that does not exist.
    #[error("there is no process {id:?}; the nearest is {nearest:?}")]
    UnknownProcess {
        /// What was asked for.
        id: String,
        /// The known one most like it.
        nearest: &'static str,
    },
    /// A parameter that does not exist.
    #[error("there is no parameter {id:?}; the nearest is {nearest:?}")]
    UnknownParameter {
        /// What was asked for.
        id: String,
        /// The known one most like it.
        nearest: &'static str,
    },
    /// A value that cannot be.
    #[error("{what} cannot be {value}")]
    Impossible {
        /// What was set.
        what: String,
        /// To what.
        value: f64,
    },
    /// A content per litre of something that is not dissolved.
    #[error("{pool:?} is not dissolved: put it in as an amount")]
    NotDissolved {
        /// What was put in.
        pool: Pool,
    },
    /// The run itself went wrong.
    #[error(transparent)]
    Run(#[from] RunError),
}

impl LaboratoryError {
    pub(super) fn unknown_process(id: &str) -> Self {
        LaboratoryError::UnknownProcess {
            id: id.into(),
            nearest: nearest(id, processes::IDS.iter().copied()),
        }
    }
    pub(super) fn unknown_parameter(id: &str) -> Self {
        LaboratoryError::UnknownParameter {
            id: id.into(),
            nearest: nearest(id, parameters::all().iter().map(|spec| spec.id)),
        }
    }
    pub(super) fn impossible(what: &str, value: f64) -> Self {
        LaboratoryError::Impossible {
            what: what.into(),
            value,
        }
    }
}

fn nearest(id: &str, known: impl Iterator<Item = &'static str>) -> &'static str {
    known
        .min_by_key(|candidate| strsim::damerau_levenshtein(id, candidate))
        .unwrap_or_default()
}
