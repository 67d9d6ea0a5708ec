//! Watches four tanks for what the milestones of a study need, and for nothing else.

use crate::analysis::figures::FigureWatch;
use crate::analysis::limits::Limits;
use crate::analysis::running::first_shrimp;
use crate::analysis::{feed, ripening};
use crate::base::real::Real;
use crate::engine::event::Event;
use crate::engine::input::ModelInput;
use crate::engine::many::{ABREAST, Abreast};
use crate::engine::result::{Reading, Side};
use crate::engine::simulation::{Simulation, Watcher};

use super::milestone::Seen;

/// Watches tanks as planned and tanks without animals, which are one where none are planned.
#[derive(Debug, Clone)]
pub struct Watch {
    figures: FigureWatch<Abreast>,
    ripening: ripening::RipeningWatch<Abreast>,
    /// Which of the two are looked at.
    pub wants: Wants,
}

/// What is looked at.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Wants {
    /// The figures of tanks as planned.
    pub figures: bool,
    /// From when on tanks without animals are ripe.
    pub ripening: bool,
}

impl Watch {
    /// Watches four tanks.
    pub fn new(four: &[&ModelInput; ABREAST], limits: &Limits, wants: Wants) -> Watch {
        let input = four[0];
        let all = |number: fn(&ModelInput) -> f64| Abreast::gather(|lane| number(four[lane]));
        let shrimp_from = all(|input| first_shrimp(input).map_or(f64::INFINITY, f64::from));
        let needed = all(|input| feed::planned(input).mg_n_per_day);
        Watch {
            figures: FigureWatch::new(input.end_minute(), limits, shrimp_from),
            ripening: ripening::RipeningWatch::new(
                limits,
                input.filled_at..input.end_minute(),
                needed,
            ),
            wants,
        }
    }

    /// Whether nothing counts that happens to the tank of one lane so many days after midnight of day 0.
    pub fn is_settled(&self, days: f64, lane: usize) -> bool {
        self.wants.ripening && self.ripening.is_settled(days, lane)
    }

    /// What was seen of one lane.
    pub fn lane(&self, lane: usize, last_day: u32) -> Seen {
        let held = self.ripening.lane(lane);
        Seen {
            figures: self.figures.lane(lane),
            ready_day: held.candidate(last_day),
            quiet_from: Some(held.quiet_from().0).filter(|&day| day <= last_day),
        }
    }
}

impl Watcher<Abreast> for Watch {
    #[inline(always)]
    fn wants(&self, _: u32, _: Side) -> bool {
        true
    }
    #[inline(always)]
    fn see(&mut self, reading: &Reading<Abreast>, _: &Simulation<'_, Abreast>) {
        if self.wants.figures {
            self.figures.see(reading);
        }
        if self.wants.ripening {
            self.ripening.see(reading);
        }
    }
    fn has_seen_enough(&self, midnight: u32) -> bool {
        (!self.wants.figures || self.figures.is_over(midnight))
            && (!self.wants.ripening || self.ripening.all_are_settled(midnight))
    }
    fn happened(
        &mut self,
        _: &Event,
        litres: Abreast,
        before: &Reading<Abreast>,
        after: &Reading<Abreast>,
    ) {
        if self.wants.figures {
            self.figures.happened(litres, before, after);
        }
    }
}
