//! Storey 4: what a run means. Milestones, limits, the ready day; nothing here reads or writes files.

pub mod case;
pub mod limits;
pub mod milestones;
pub mod ready;
