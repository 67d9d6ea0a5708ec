//! What the ranking of changes leaves behind: tables, a chart, a manifest, and words.

pub mod entries;
mod lists;
mod numbers;
pub mod table;
pub mod words;
