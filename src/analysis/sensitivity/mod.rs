//! Which unknowns matter: designs of many runs, and what is worked out from their outputs. Knows nothing of tanks:
//! inputs are coordinates between 0 and 1, outputs are numbers.
//!
//! ```text
//! saltelli       the design for variances: two clouds of points, and one input at a time taken from the other
//! variance       first, total and second order shares of the variance
//! trajectories   Morris' design: one step at a time along levels
//! effects        his elementary effects: µ, µ* and σ
//! latin          Latin hypercubes
//! rank           partial rank correlation
//! distance       how far two samples lie apart, for the two below
//! pawn           how much an input changes the distribution of the output
//! regional       what runs that meet a condition have in common
//! bootstrap      how sure all that is
//! ```
//!
//! What is summed is summed run by run, so that memory does not grow with their number; only ranks and distances
//! need the runs themselves.

pub mod bootstrap;
pub mod distance;
pub mod effects;
pub mod latin;
pub mod pawn;
pub mod rank;
pub mod regional;
pub mod saltelli;
pub mod trajectories;
pub mod variance;
