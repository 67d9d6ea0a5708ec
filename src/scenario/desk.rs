//! Where everything found while reading a scenario is gathered: problems, values, notices.

use std::cell::RefCell;

use crate::analysis::case::{Resolved, SetBy};
use crate::analysis::uncertain::moves::Move;
use crate::analysis::uncertain::unsure::{Known, Unsure};

use super::problem::Problem;

/// The desk at which a scenario is read.
#[derive(Default)]
pub struct Desk {
    problems: RefCell<Vec<Problem>>,
    resolved: RefCell<Vec<Resolved>>,
    notices: RefCell<Vec<String>>,
    unsure: RefCell<Vec<Unsure>>,
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
    /// A value that is not known exactly; the number goes to [`Desk::moves`].
    pub fn unsure(&self, path: impl Into<String>, known: Known) -> usize {
        let mut unsure = self.unsure.borrow_mut();
        unsure.push(Unsure {
            path: path.into(),
            known,
            moves: Vec::new(),
        });
        unsure.len() - 1
    }
    /// What such a value moves.
    pub fn moves(&self, unsure: usize, to: Move) {
        self.unsure.borrow_mut()[unsure].moves.push(to);
    }
    /// A word that stands for a parameter, and what that moves.
    pub fn word(&self, path: impl Into<String>, parameter: &'static str, to: Move) {
        let unsure = self.unsure(path, Known::Word(parameter));
        self.moves(unsure, to);
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
    /// Everything that is not known exactly, in the order of reading.
    pub fn take_unsure(&self) -> Vec<Unsure> {
        self.unsure.take()
    }
    /// Everything the user should know.
    pub fn take_notices(&self) -> Vec<String> {
        self.notices.take()
    }
}
