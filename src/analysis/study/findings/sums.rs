//! The sums a method needs, milestone by milestone.

use super::index::Index;
use super::members::Member;
use super::one_at_a_time::Steps;
use super::sizes::{Size, is_told_at};
use super::{effects, factor, variance};
use crate::analysis::sensitivity::bootstrap;
use crate::analysis::study::Study;
use crate::analysis::study::method::Method;

/// How many replicates an interval is made of.
const REPLICATES: usize = 100;

/// The sums a method needs; one for each milestone.
#[derive(Debug, Clone)]
pub enum Sums {
    /// Of two clouds of points.
    Variance(Vec<Told<variance::Sums>>),
    /// Of trajectories.
    Effects(Vec<Told<effects::Sums>>),
    /// Of steps of each input alone.
    Steps(Vec<Steps>),
    /// None: points are looked at by their ranks alone.
    Nothing,
}

/// Sums, and how sure they were at growing numbers of members.
#[derive(Debug, Clone)]
pub struct Told<S> {
    sums: S,
    sizes: Vec<Size>,
}

/// What sums of either kind tell.
pub trait Tells {
    /// Takes in a member, and each replicate as often as it says.
    fn take(&mut self, member: &Member, milestone: usize, times: &[u8]);
    /// All that is worked out.
    fn indices(&self) -> Vec<Index>;
    /// How sure that is, at so many members.
    fn size(&self, members: u64) -> Option<Size>;
}

impl<S: Tells + Clone> Told<S> {
    fn all(sums: S, milestones: usize) -> Vec<Told<S>> {
        let sizes = Vec::new();
        vec![Told { sums, sizes }; milestones]
    }

    fn take(&mut self, member: &Member, milestone: usize, times: &[u8], members: u64) {
        self.sums.take(member, milestone, times);
        if is_told_at(members) {
            self.sizes.extend(self.sums.size(members));
        }
    }

    fn sizes(&self, members: u64) -> Vec<Size> {
        let mut sizes = self.sizes.clone();
        if sizes.last().is_none_or(|last| last.members != members) {
            sizes.extend(self.sums.size(members));
        }
        sizes
    }
}

impl Sums {
    /// Nothing yet.
    pub fn new(study: &Study) -> Sums {
        let (inputs, milestones) = (study.inputs.len(), study.milestones.len());
        match study.method {
            Method::Variance { second_order, .. } => {
                let (design, first) = (study.design(second_order), factor::first_of_shares(study));
                let sums = variance::Sums::new(design, first, REPLICATES);
                Sums::Variance(Told::all(sums, milestones))
            }
            Method::Trajectories { .. } => Sums::Effects(Told::all(
                effects::Sums::new(inputs, REPLICATES),
                milestones,
            )),
            Method::OneAtATime => {
                let steps = Steps::new(inputs, study.members as u64);
                Sums::Steps(vec![steps; milestones])
            }
            Method::Points | Method::Latin => Sums::Nothing,
        }
    }

    /// Whether a member counts though one of its rows failed: where each row tells of an input alone.
    pub fn takes_parts(&self) -> bool {
        matches!(self, Sums::Steps(_))
    }

    /// Takes in a member that counts, the so-manieth of all.
    pub fn take(&mut self, member: &Member, seed: u64, members: u64) {
        let times = || bootstrap::times(seed, member.number, REPLICATES);
        match self {
            Sums::Variance(all) => each(all, member, &times(), members),
            Sums::Effects(all) => each(all, member, &times(), members),
            Sums::Steps(all) => {
                for (milestone, steps) in all.iter_mut().enumerate() {
                    steps.take(member.number, member.told(milestone));
                }
            }
            Sums::Nothing => {}
        }
    }

    /// All that is worked out of a milestone.
    pub fn indices(&self, milestone: usize) -> Vec<Index> {
        match self {
            Sums::Variance(all) => all[milestone].sums.indices(),
            Sums::Effects(all) => all[milestone].sums.indices(),
            Sums::Steps(all) => all[milestone].indices(),
            Sums::Nothing => Vec::new(),
        }
    }

    /// How sure it was at growing numbers of members, and is at so many.
    pub fn sizes(&self, milestone: usize, members: u64) -> Vec<Size> {
        match self {
            Sums::Variance(all) => all[milestone].sizes(members),
            Sums::Effects(all) => all[milestone].sizes(members),
            Sums::Steps(_) | Sums::Nothing => Vec::new(),
        }
    }
}

fn each<S: Tells + Clone>(all: &mut [Told<S>], member: &Member, times: &[u8], members: u64) {
    for (milestone, told) in all.iter_mut().enumerate() {
        told.take(member, milestone, times, members);
    }
}
