//! Storey 2: what can change. Pools, stoichiometric rows, parameters and processes.

pub mod component;
pub mod composition;
pub mod parameter;
pub mod parameters;
pub mod setup;
pub mod stand;
