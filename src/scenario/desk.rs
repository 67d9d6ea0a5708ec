//! Where everything found while reading a scenario is gathered: problems, values, notices.

use std::cell::RefCell;

use crate::analysis::case::{Resolved, SetBy};

use super::problem::Problem;

/// The desk at which a scenario is read.
#[derive(Default)]
pub struct Desk {
    problems: RefCell<Vec<Problem>>,
    resolved: RefCell<Vec<Resolved>>,
    notices: RefCell<Vec<String>>,
}

impl Desk {
    /// Something is wrong.
    pub fn problem(&self, problem: Problem) {
        self.problems.borrow_mut().push(problem);
    }
    /// Something the user should know.
    pub fn notice(&self, words: impl Into<String>) {
        self.notices.borrow_mut().push(words.into());
    }
    /// A value that will be used, and what set it.
    pub fn resolve(&self, path: impl Into<String>, value: impl Into<String>, set_by: SetBy) {
        self.resolved.borrow_mut().push(Resolved {
            path: path.into(),
            value: value.into(),
            set_by,
        });
    }
    /// Whether anything is wrong so far.
    pub fn has_problems(&self) -> bool {
        !self.problems.borrow().is_empty()
    }
    /// Whether a problem of this title has been told.
    pub fn has_problem(&self, title: &str) -> bool {
        self.problems
            .borrow()
            .iter()
            .any(|told| told.title == title)
    }
    /// Everything that is wrong.
    pub fn take_problems(&self) -> Vec<Problem> {
        self.problems.take()
    }
    /// Every value, in the order of reading.
    pub fn take_resolved(&self) -> Vec<Resolved> {
        self.resolved.take()
    }
    /// Everything the user should know.
    pub fn take_notices(&self) -> Vec<String> {
        self.notices.take()
    }
}
