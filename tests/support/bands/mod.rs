//! Observables with their bands, in the two files below.

pub mod gases;
pub mod nitrogen;

/// One figure of the table.
pub struct Check {
    pub number: u32,
    pub what: &'static str,
    pub observed: f64,
    pub accept: (f64, f64),
    pub source: &'static str,
}

impl Check {
    /// Whether the figure lies in its band.
    pub fn is_met(&self) -> bool {
        (self.accept.0..=self.accept.1).contains(&self.observed)
    }
}

pub const PRACTICE: &str = "common practice, no source";
pub const DERIVED: &str = "derived";
pub const NONE: f64 = f64::INFINITY;

/// Gathers the table.
#[derive(Default)]
pub struct Checks(pub Vec<Check>);

impl Checks {
    /// Adds a figure: number, what it is, its value, the band, the source of the band.
    pub fn see(
        &mut self,
        number: u32,
        what: &'static str,
        observed: f64,
        accept: (f64, f64),
        source: &'static str,
    ) {
        self.0.push(Check {
            number,
            what,
            observed,
            accept,
            source,
        });
    }
}
