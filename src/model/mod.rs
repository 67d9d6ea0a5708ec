//! Storey 2: what can change. Pools, stoichiometric rows, parameters and processes.

pub mod component;
pub mod composition;
pub mod content;
pub mod films;
pub mod guild;
pub mod limitation;
pub mod litter;
pub mod matrix;
pub mod parameter;
pub mod parameters;
pub mod process;
pub mod processes;
pub mod row;
pub mod setup;
pub mod stand;
pub mod start;
pub mod state;
pub mod tank_model;
pub mod temperature;
pub mod water;
