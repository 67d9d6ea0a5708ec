//! The search for the latest start of the gas that still gives enough at lights-on: by halving.

use super::tuning::Lead;
use super::valve::{START_STEP, USUAL_LEAD};

/// Share of the target wanted at lights-on when the start is found.
const AT_LIGHTS_ON: f64 = 0.9;

/// A search in one tank; leads are counted in steps of [`START_STEP`].
pub(super) struct LeadSearch {
    stage: Stage,
    /// The earliest start possible.
    earliest: u32,
    /// Too short, as far as is known.
    short: u32,
    /// Long enough, as far as is known.
    long: u32,
}

enum Stage {
    /// Tries the earliest start.
    Earliest,
    /// Tries a start with the lights.
    None,
    /// Halves what lies between.
    Between,
    /// Found.
    Done(Lead),
}

impl LeadSearch {
    /// Begins with the earliest start, so many minutes before lights-on; not `searched`, the usual
    /// lead is taken.
    pub(super) fn new(searched: bool, minutes_before: u32) -> Self {
        let earliest = minutes_before / START_STEP;
        LeadSearch {
            stage: if searched {
                Stage::Earliest
            } else {
                Stage::Done(Lead::USUAL)
            },
            earliest,
            short: 0,
            long: earliest,
        }
    }
    /// Whether another lead is to be tried.
    pub(super) fn wants_more(&self) -> bool {
        !matches!(self.stage, Stage::Done(_))
    }
    /// The lead to try, minutes.
    pub(super) fn minutes(&self) -> u32 {
        let steps = match self.stage {
            Stage::Earliest => self.earliest,
            Stage::None => 0,
            Stage::Between => self.short.midpoint(self.long),
            Stage::Done(lead) => return lead.minutes,
        };
        steps * START_STEP
    }
    /// Learns what the lead gave at lights-on, mg/L.
    pub(super) fn learn(&mut self, at_lights_on: f64, target: f64) {
        let enough = at_lights_on >= AT_LIGHTS_ON * target;
        self.stage = match self.stage {
            Stage::Earliest if enough => Stage::None,
            Stage::Earliest => Stage::Done(Lead {
                minutes: USUAL_LEAD.min(self.earliest * START_STEP),
                too_little: Some(at_lights_on),
            }),
            Stage::None if enough => Stage::Done(lead(0)),
            Stage::None => self.narrower(),
            Stage::Between => {
                let middle = self.short.midpoint(self.long);
                if enough {
                    self.long = middle
                } else {
                    self.short = middle
                }
                self.narrower()
            }
            Stage::Done(lead) => Stage::Done(lead),
        };
    }
    fn narrower(&self) -> Stage {
        if self.long - self.short > 1 {
            Stage::Between
        } else {
            Stage::Done(lead(self.long))
        }
    }
    /// What was found.
    pub(super) fn lead(&self) -> Lead {
        match self.stage {
            Stage::Done(lead) => lead,
            _ => Lead::USUAL,
        }
    }
}

fn lead(steps: u32) -> Lead {
    Lead {
        minutes: steps * START_STEP,
        too_little: None,
    }
}
