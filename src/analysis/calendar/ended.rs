//! How a search came to its end.

use crate::analysis::ensemble::EnsembleError;
use crate::base::stop::Stop;

use super::search::Halt;

/// How a search came to its end.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Ended {
    /// Every calendar was looked at, or could not have come before the best.
    All,
    /// Nothing better is near, nor where many rounds from calendars drawn anew led.
    Settled,
    /// All runs that a search is given were taken.
    Spent,
    /// Somebody stopped it.
    Stopped,
}

impl Ended {
    /// What may still stop the work: nothing any more once somebody has.
    pub(super) fn still<'a>(self, stop: &'a Stop, never: &'a Stop) -> &'a Stop {
        match self {
            Ended::Stopped => never,
            Ended::All | Ended::Settled | Ended::Spent => stop,
        }
    }

    /// How one ended that may have been halted.
    pub(super) fn of(ended: Result<Ended, Halt<EnsembleError>>) -> Result<Ended, EnsembleError> {
        match ended {
            Ok(ended) => Ok(ended),
            Err(Halt::Spent | Halt::PartSpent) => Ok(Ended::Spent),
            Err(Halt::Ended(EnsembleError::Stopped(_))) => Ok(Ended::Stopped),
            Err(Halt::Ended(other)) => Err(other),
        }
    }
}
