//! Storey 5: what leaves the house. Charts, tables and files made from finished runs.

pub mod chart;
