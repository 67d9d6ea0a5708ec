//! A lesson that has been run, as files: page, picture, tables, scenarios.
//!
//! ```text
//! words    templates filled with numbers      notes     where words stand beside curves
//! tables   steps.csv, curves.csv              manifest  what it takes to do it again
//! entries  all of it as names and bytes; the picture is chart::lesson, the page is page::lesson
//! ```

pub mod entries;
mod manifest;
pub mod notes;
pub mod tables;
pub mod words;

/// Name and text of scenario files.
pub type Files = Vec<(String, String)>;
