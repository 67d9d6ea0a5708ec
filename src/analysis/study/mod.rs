//! Studies: which unknowns matter, over many runs of one family of tanks.
//!
//! A study says what is varied ([`input`]), what is looked at ([`milestone`]), and how the runs are laid out
//! ([`method`]). Its rows are numbered; what a row is run with hangs on the study and that number alone, so rows can
//! be run in any order, by any thread, on any machine, and put together again ([`mod@slice`]). The tanks it is about are a
//! [`family`]; [`run`] runs them.

pub mod family;
pub mod findings;
pub mod group;
pub mod input;
pub mod method;
pub mod milestone;
pub mod run;
pub mod slice;
pub mod tied;
mod watch;

use super::sensitivity::saltelli::Design;
use group::Group;
use input::Input;
use method::{By, Method};
use milestone::Milestone;

/// What a study asks.
#[derive(Debug, Clone, PartialEq)]
pub struct Study {
    /// What is varied, in the order of the columns.
    pub inputs: Vec<Input>,
    /// What is looked at, in the order of the columns.
    pub milestones: Vec<Milestone>,
    /// How the runs are laid out.
    pub method: Method,
    /// How many members: points, trajectories, or steps of each input, as the method counts.
    pub members: usize,
    /// Where chance begins.
    pub seed: u64,
    /// The last day of a run; a ready day beyond it is not known.
    pub last_day: u32,
    /// The day of the milestone `ready_by`, and of the question what the tanks ready by then have in common.
    pub ready_by: u32,
}

/// One run of a study: the values of its inputs and what came of it.
#[derive(Debug, Clone, PartialEq)]
pub struct Row {
    /// Its number, from 0.
    pub number: u64,
    /// The inputs' places between 0 and 1.
    pub places: Vec<f64>,
    /// The milestones in their order; none when the run failed.
    pub outputs: Option<Vec<f64>>,
}

impl Study {
    /// How many rows, which are runs, a member takes.
    pub fn rows_per_member(&self) -> usize {
        self.method.rows_per_member(self)
    }

    /// How many rows there are in all.
    pub fn rows(&self) -> u64 {
        self.members as u64 * self.rows_per_member() as u64
    }

    /// Where the inputs of a row stand, each between 0 and 1.
    pub fn places(&self, row: u64) -> Vec<f64> {
        let per_member = self.rows_per_member() as u64;
        let (member, place) = (row / per_member, (row % per_member) as usize);
        self.method.places(self, member, place)
    }

    /// The value of an input at a place between 0 and 1, as far as the method goes: of settings, its number.
    pub fn value(&self, input: usize, place: f64) -> f64 {
        self.inputs[input].spread.at(place, self.method.reach())
    }

    /// Whether an output tells of a ready day that lies beyond the run.
    pub fn is_beyond(&self, milestone: &Milestone, output: f64) -> bool {
        milestone.is_a_ready_day() && output > f64::from(self.last_day)
    }

    /// The groups of inputs, each once, in order.
    pub fn groups(&self) -> Vec<Group> {
        let mut groups: Vec<Group> = self.inputs.iter().map(|input| input.group).collect();
        groups.sort_unstable();
        groups.dedup();
        groups
    }

    /// The block each input belongs to: of shares by group the number of its group, else its own number.
    pub fn blocks(&self) -> Vec<usize> {
        let by_group = matches!(self.method, Method::Variance { by: By::Group, .. });
        if !by_group {
            return (0..self.inputs.len()).collect();
        }
        let groups = self.groups();
        let number = |input: &Input| groups.partition_point(|group| *group < input.group);
        self.inputs.iter().map(number).collect()
    }

    /// The design for shares of variance, over its blocks.
    pub fn design(&self, second_order: bool) -> Design {
        let blocks = self.blocks();
        Design {
            inputs: blocks.iter().max().map_or(0, |last| last + 1),
            second_order,
        }
    }
}
