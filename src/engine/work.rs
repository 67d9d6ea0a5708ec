//! How much work a run was: counted per lane, and part of every result.

use crate::base::real::Real;

use super::scheme::LOOKS;

/// Work of a run.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Work {
    /// Steps, cut at every switch and event.
    pub steps: u64,
    /// Parts that these were cut into where gas exchange is fast; one per step elsewhere.
    pub parts: u64,
    /// Times all rates were worked out.
    pub evaluations: u64,
    /// Parts in which processes were held back so that no pool falls below zero.
    pub held_back: u64,
}

/// The same, per lane. Counts are numbers of the run, exact up to 9e15.
#[derive(Debug, Clone, Copy)]
pub struct Counts<R> {
    steps: u64,
    parts: R,
    held_back: R,
}

impl<R: Real> Default for Counts<R> {
    fn default() -> Self {
        Counts {
            steps: 0,
            parts: R::zero(),
            held_back: R::zero(),
        }
    }
}

impl<R: Real> Counts<R> {
    /// The counts of work done before, alike in every lane.
    pub fn of(work: Work) -> Self {
        Counts {
            steps: work.steps,
            parts: R::of(work.parts as f64),
            held_back: R::of(work.held_back as f64),
        }
    }
    /// Counts a part in the lanes that did it.
    #[inline(always)]
    pub fn part(&mut self, did: R::Mask, held_back: R::Mask) {
        let one = R::pick(did, R::one(), R::zero());
        self.parts += one;
        self.held_back += R::pick(held_back, one, R::zero());
    }
    /// Counts a step.
    #[inline(always)]
    pub fn step(&mut self) {
        self.steps += 1;
    }
    /// Adds the parts that one lane did alone.
    pub(super) fn add(&mut self, lane: usize, alone: &Counts<f64>) {
        let (parts, held_back) = (self.parts.lane(lane), self.held_back.lane(lane));
        self.parts.set_lane(lane, parts + alone.parts);
        self.held_back.set_lane(lane, held_back + alone.held_back);
    }
    /// What one lane did.
    pub fn lane(&self, lane: usize) -> Work {
        let parts = self.parts.lane(lane) as u64;
        Work {
            steps: self.steps,
            parts,
            evaluations: parts * LOOKS as u64,
            held_back: self.held_back.lane(lane) as u64,
        }
    }
}
