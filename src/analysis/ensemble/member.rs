//! One member of many plausible tanks: what came of it.

use crate::analysis::broken::Broken;
use crate::analysis::figures::Figures;
use crate::analysis::ready::Waiting;
use crate::engine::error::RunError;

/// One member: its figures, or why its run failed.
#[derive(Debug, Clone, PartialEq)]
pub struct Member {
    /// Its number, counted from 0.
    pub number: usize,
    /// What came of it.
    pub told: Result<Told, RunError>,
}

/// What a member tells.
#[derive(Debug, Clone, PartialEq)]
pub struct Told {
    /// Its figures, as planned.
    pub figures: Figures,
    /// Its ready day.
    pub ready: MemberReady,
    /// Its evening readings, without animals.
    pub evenings: Evenings,
}

/// The ready day of a member and its reason.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct MemberReady {
    /// The ready day; none when it is later than the last day of the run.
    pub day: Option<u32>,
    /// First day from whose midnight the limits and the capacity hold without animals; none when there is
    /// none within the run.
    pub candidate: Option<u32>,
    /// First day from which the limits alone hold without animals, whatever the capacity.
    pub quiet_from: Option<u32>,
    /// What the last days before waited for; none when ready from the first day.
    pub waited_for: Option<Waiting>,
    /// Running limits broken in the two weeks from the ready day on; none without a ready day.
    pub broken_after: Option<Broken>,
}

/// What a kit would have in the water each evening, without animals.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Evenings {
    /// The first day with an evening.
    pub first_day: u32,
    /// Total ammonia and nitrite of each day from then on, mg N/L.
    pub readings: Vec<Evening>,
}

/// Total ammonia and nitrite of one evening, mg N/L.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Evening {
    /// Total ammonia, mg N/L.
    pub tan: f32,
    /// Nitrite, mg N/L.
    pub nitrite: f32,
}

impl Evenings {
    /// The evening of a day, if it was seen.
    pub fn of_day(&self, day: u32) -> Option<Evening> {
        let place = day.checked_sub(self.first_day)? as usize;
        self.readings.get(place).copied()
    }
}
