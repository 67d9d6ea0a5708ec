//! Storey 4: what a run means. Milestones, limits, the ready day; nothing here reads or writes files.

pub mod alkalinity;
pub mod arrivals;
pub mod beyond;
pub mod case;
pub mod cost;
pub mod criteria;
#[cfg(test)]
pub mod example;
pub mod feed;
mod jumps;
pub mod levels;
pub mod limits;
pub mod milestones;
pub mod outcome;
pub mod ready;
pub mod running;
pub mod testing;
pub mod uncertain;
