//! Storey 4: what a run means. Milestones, limits, the ready day; nothing here reads or writes files.

pub mod alkalinity;
pub mod arrivals;
pub mod beyond;
pub mod branch;
pub mod broken;
pub mod case;
pub mod change_worth;
pub mod charted;
pub mod compare;
pub mod cost;
pub mod criteria;
pub mod day_of;
pub mod ensemble;
#[cfg(test)]
pub mod example;
pub mod feed;
pub mod figure_list;
pub mod figures;
pub mod forecast;
mod jumps;
pub mod kit;
pub mod latest_fill;
pub mod levels;
pub mod levers;
pub mod limits;
pub mod lit_ammonia;
pub mod margin;
pub mod milestones;
pub mod outcome;
pub mod peak;
pub mod ready;
pub mod ripening;
pub mod running;
pub mod stocking;
pub mod testing;
pub mod uncertain;
pub mod uncovered;
