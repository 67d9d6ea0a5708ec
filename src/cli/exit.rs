//! How a command ends: the exit codes, and failures with their words.

use std::process::ExitCode;

use crate::analysis::compare::CompareError;
use crate::analysis::ensemble::EnsembleError;
use crate::analysis::lesson::claim::Unsupported;
use crate::analysis::lesson::taught::LessonError;
use crate::base::stop::Stopped;
use crate::engine::error::RunError;
use crate::output::folder::FolderError;
use crate::output::lesson::entries::EntriesError;
use crate::output::place::WriteError;

/// How a command ended.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Exit {
    /// Done.
    Done = 0,
    /// The ledger does not close, or the numbers went wrong.
    Failed = 1,
    /// A bad scenario, a bad option, or a place that cannot be used.
    BadInput = 2,
    /// What was asked for has no solution.
    NoSolution = 3,
    /// A fault of the program itself.
    Fault = 70,
    /// Stopped from outside.
    Stopped = 130,
}

impl From<Exit> for ExitCode {
    fn from(exit: Exit) -> ExitCode {
        ExitCode::from(exit as u8)
    }
}

/// Why a command failed, ready to be said.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Failure {
    /// How it ends.
    pub exit: Exit,
    /// What is said, without `error:` unless the words already carry it.
    pub words: String,
}

impl Failure {
    /// A failure of the input or of a place.
    pub fn bad_input(words: impl Into<String>) -> Failure {
        Failure {
            exit: Exit::BadInput,
            words: words.into(),
        }
    }
    /// The same with a few more words.
    pub fn but(mut self, words: &str) -> Failure {
        self.words += &format!("; {words}");
        self
    }
    /// A failure of the numbers.
    pub fn failed(words: impl Into<String>) -> Failure {
        Failure {
            exit: Exit::Failed,
            words: words.into(),
        }
    }
}

impl From<WriteError> for Failure {
    fn from(error: WriteError) -> Failure {
        Failure::bad_input(format!("error: {error}"))
    }
}

impl From<Stopped> for Failure {
    fn from(_: Stopped) -> Failure {
        Failure {
            exit: Exit::Stopped,
            words: "stopped; nothing written".into(),
        }
    }
}

impl From<EnsembleError> for Failure {
    fn from(error: EnsembleError) -> Failure {
        match error {
            EnsembleError::Stopped(stopped) => stopped.into(),
            EnsembleError::TooManyFailed { .. } => {
                Failure::failed(format!("error: {error}. Nothing was written."))
            }
        }
    }
}

impl From<CompareError> for Failure {
    fn from(error: CompareError) -> Failure {
        let words = format!("error: {error}. Nothing was written.");
        match error {
            CompareError::Members { why, .. } => match *why {
                EnsembleError::Stopped(stopped) => stopped.into(),
                EnsembleError::TooManyFailed { .. } => Failure::failed(words),
            },
            CompareError::Central { why, .. } => match *why {
                RunError::Refused(_) => Failure::bad_input(words),
                _ => Failure::failed(words),
            },
        }
    }
}

impl From<Unsupported> for Failure {
    fn from(error: Unsupported) -> Failure {
        Failure::failed(format!("error: {error}. Nothing was written."))
    }
}

impl From<LessonError> for Failure {
    fn from(error: LessonError) -> Failure {
        match error {
            LessonError::Run(why) => why.into(),
            LessonError::Unsupported(why) => why.into(),
        }
    }
}

impl From<EntriesError> for Failure {
    fn from(error: EntriesError) -> Failure {
        match error {
            EntriesError::Folder(why) => why.into(),
            EntriesError::Unsupported(why) => why.into(),
        }
    }
}

impl From<FolderError> for Failure {
    fn from(error: FolderError) -> Failure {
        match error {
            FolderError::Stopped(stopped) => stopped.into(),
            _ => Failure::failed(format!("error: {error}; nothing was written")),
        }
    }
}

impl From<RunError> for Failure {
    fn from(error: RunError) -> Failure {
        let words = format!("error: {error}. Nothing was written.");
        match error {
            RunError::Refused(_) => Failure::bad_input(words),
            _ => Failure::failed(words),
        }
    }
}

/// The codes with their meaning, for the help texts.
pub const CODES: &str = "0 done, 1 the ledger does not close or the numbers went wrong, 2 bad input or place, \
3 no solution exists, 70 a fault of the program, 130 stopped";
