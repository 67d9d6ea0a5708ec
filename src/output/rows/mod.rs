//! The rows of a study on the disk.
//!
//! ```text
//! results    results.csv: a line a row, written as they come and read back
//! manifest   what the rows belong to, and in what two of them differ
//! slices     folders that hold slices of one study, checked and put in order
//! size       how much room they take
//! ```

pub mod manifest;
pub mod results;
pub mod size;
pub mod slices;
