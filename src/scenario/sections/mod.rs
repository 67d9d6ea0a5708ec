//! One file per section of a scenario: what its keys mean.

pub mod air;
pub mod animals;
pub mod blend;
pub mod calendar;
mod carbon;
pub mod care;
pub mod changes;
pub mod doses;
pub mod filter;
pub mod gas;
pub mod light;
pub mod limits;
pub mod parameters;
pub mod plants;
pub mod power;
pub mod prices;
pub mod room;
pub mod seed;
pub mod soil;
pub mod start;
pub mod surface;
pub mod tank;
pub mod test_kit;
pub mod volume;
pub mod water;
