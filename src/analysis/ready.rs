//! The ready day: from which day on the tank holds its ripening limits, and whether that is ripe.

/// The answer to "when could fish go in".
#[derive(Debug, Clone, PartialEq)]
pub enum Ready {
    /// From the midnight that opens this day all ripening limits hold, and both steps can oxidise
    /// the planned feed.
    Day(u32),
    /// The limits hold from this day on, but a step is not shown to be able to oxidise the feed.
    QuietNotRipe {
        /// The day from which the limits hold.
        day: u32,
        /// The step that falls short.
        step: OxidationStep,
        /// Its lowest capacity from that day on, mg N/day.
        capacity_mg_n_per_day: f64,
        /// What the planned feed brings, mg N/day.
        needed_mg_n_per_day: f64,
    },
    /// Not within the run.
    LaterThan(u32),
}

/// One of the two steps of nitrification.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum OxidationStep {
    /// Ammonia to nitrite.
    Ammonia,
    /// Nitrite to nitrate.
    Nitrite,
}

/// Which ripening limit was the last to be met.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Waiting {
    /// Total ammonia.
    TotalAmmonia,
    /// Nitrite.
    Nitrite,
    /// Free ammonia.
    FreeAmmonia,
    /// The capacity of a step, with the limits already met.
    Capacity(OxidationStep),
}

/// The ready day with its reason.
#[derive(Debug, Clone, PartialEq)]
pub struct Verdict {
    /// The answer.
    pub ready: Ready,
    /// What the last days waited for; none when it is ready from the first day.
    pub waited_for: Option<Waiting>,
    /// Nitrogen the planned feed brings, mg N/day.
    pub feed_mg_n_per_day: f64,
    /// Whether that feed was planned in the scenario (else the stated default stands in).
    pub feed_is_planned: bool,
    /// First day from which each step's capacity covers the feed to the end, if any.
    pub capacity_covers_from: [Option<u32>; 2],
}
