//! Tuning the valves: a day is replayed with other settings until its highest CO2 is the target.

use crate::base::clock::{DAY, HOUR, Window};
use crate::base::real::Real;
use crate::model::pool::Pool;

use super::error::RunError;
use super::input::TimerLine;
use super::lead_search::LeadSearch;
use super::notice::Notice;
use super::rate_search::{Found, Guess, RateSearch};
use super::result::Tuning;
use super::simulation::Simulation;
use super::trial::{first_minute, try_day};
use super::valve::{Setting, USUAL_LEAD, Valve, Valves};
use super::watcher::Eyes;

/// How near the target the day's highest must come, mg/L.
pub(super) const NEAR_MG_PER_L: f64 = 0.2;
/// First guess of the gas, mg/h per litre of water (6 mg/h/L keeps 30 mg/L over a ripple).
const FIRST_GUESS_MG_PER_H_AND_L: f64 = 6.0;

impl Valves<'_> {
    /// Tunes the valves that ask for it on a day at whose beginning the tanks stand, and notes what
    /// came of it.
    ///
    /// # Errors
    /// Those of a run.
    pub(super) fn tune<R: Real>(
        &mut self,
        day: u32,
        asks: &[bool],
        tanks: &Simulation<'_, R>,
    ) -> Result<(), RunError> {
        let leads = self.latest_leads(day, asks, tanks)?;
        let minutes: Vec<u32> = leads.iter().map(|lead| lead.minutes).collect();
        let found = self.reach(day, asks, &minutes, tanks)?;
        for (lane, valve) in self.lanes.iter_mut().enumerate() {
            if asks[lane] {
                let found = &found[lane];
                valve.settle(day, &leads[lane], found, tanks.minute);
            }
        }
        Ok(())
    }

    /// The shortest lead of each tank that gives the wanted share of the target at lights-on.
    fn latest_leads<R: Real>(
        &self,
        day: u32,
        asks: &[bool],
        tanks: &Simulation<'_, R>,
    ) -> Result<Vec<Lead>, RunError> {
        let mut searches: Vec<LeadSearch> = (self.lanes.iter().zip(asks))
            .map(|(valve, &asks)| {
                let lights_on = day * DAY + valve.light(day).on.0;
                // filled after lights-on: judged on the next day
                let searched = asks && valve.hours_are_found() && tanks.minute <= lights_on;
                LeadSearch::new(searched, lights_on - tanks.minute.min(lights_on))
            })
            .collect();
        while searches.iter().any(LeadSearch::wants_more) {
            let wants: Vec<bool> = searches.iter().map(LeadSearch::wants_more).collect();
            let leads: Vec<u32> = searches.iter().map(LeadSearch::minutes).collect();
            let found = self.reach(day, &wants, &leads, tanks)?;
            for (lane, search) in searches.iter_mut().enumerate() {
                if wants[lane] {
                    let at_lights_on = found[lane].trial.at_lights_on.unwrap_or(0.0);
                    search.learn(at_lights_on, self.lanes[lane].target());
                }
            }
        }
        Ok(searches.iter().map(LeadSearch::lead).collect())
    }

    /// Finds, in the tanks that want it, the gas whose day's highest is the target.
    fn reach<R: Real>(
        &self,
        day: u32,
        wants: &[bool],
        leads: &[u32],
        tanks: &Simulation<'_, R>,
    ) -> Result<Vec<Found>, RunError> {
        let mut searches: Vec<RateSearch> = (0..R::LANES)
            .map(|lane| self.lanes[lane].rate_search(lane, wants[lane], tanks))
            .collect();
        let lines = |searches: &[RateSearch]| -> Vec<TimerLine> {
            (searches.iter().enumerate())
                .map(|(lane, search)| TimerLine {
                    from_day: day,
                    window: self.lanes[lane].window(day, leads[lane]),
                    value: search.next(),
                })
                .collect()
        };
        let light = self.lanes[0].light(day);
        let lights_on = (light != Window::NEVER).then_some(day * DAY + light.on.0);
        let tanks = until_gas(&lines(&searches), lights_on, tanks)?;
        while searches.iter().any(RateSearch::wants_more) {
            let trials = try_day(&lines(&searches), lights_on, &tanks)?;
            for (search, trial) in searches.iter_mut().zip(trials) {
                if search.wants_more() {
                    search.learn(trial);
                }
            }
        }
        Ok(searches.iter().map(RateSearch::found).collect())
    }
}

/// The tanks as they stand when the gas or the light first comes on: what goes before is the same in every
/// trial.
fn until_gas<'a, R: Real>(
    lines: &[TimerLine],
    lights_on: Option<u32>,
    tanks: &Simulation<'a, R>,
) -> Result<Simulation<'a, R>, RunError> {
    let day = tanks.minute / DAY;
    let on = lines.iter().map(|line| first_minute(day, line));
    let first = on.chain(lights_on).min().unwrap_or(0) / HOUR * HOUR; // where a step ends in any case
    let mut copy = tanks.clone();
    copy.keeping.gas = lines.iter().copied().map(Some).collect();
    if first > copy.minute {
        copy.advance(first, &mut Eyes(&mut []))?;
    }
    Ok(copy)
}

impl Valve<'_> {
    fn rate_search<R: Real>(
        &self,
        lane: usize,
        wanted: bool,
        tanks: &Simulation<'_, R>,
    ) -> RateSearch {
        let litres = tanks.state[Pool::Volume].lane(lane);
        let guess = match self.setting {
            Some(setting) => Guess {
                gas_mg_per_h: setting.gas_mg_per_h,
                mg_per_l_and_mg_per_h: setting.mg_per_l_and_mg_per_h,
            },
            None => Guess {
                gas_mg_per_h: FIRST_GUESS_MG_PER_H_AND_L * litres,
                mg_per_l_and_mg_per_h: None,
            },
        };
        let shown = tanks.state[Pool::Indicator].lane(lane);
        RateSearch::new(wanted, self.target(), shown, guess)
    }

    /// Puts on the valve what was found, and notes it.
    fn settle(&mut self, day: u32, lead: &Lead, found: &Found, minute: u32) {
        let trial = found.trial;
        let target = self.target();
        if let Some(at_lights_on) = lead.too_little {
            self.notices
                .push(Notice::NoStartReaches { day, at_lights_on });
        }
        let reached = (trial.highest - target).abs() <= NEAR_MG_PER_L;
        if !reached {
            self.notices.push(Notice::TargetOutOfReach {
                day,
                target,
                nearest: trial.highest,
            });
        }
        let window = self.window(day, lead.minutes);
        self.first_day_was_short = self.setting.is_none() && minute > day * DAY + window.on.0;
        self.setting = Some(Setting {
            gas_mg_per_h: trial.gas_mg_per_h,
            lead_minutes: lead.minutes,
            mg_per_l_and_mg_per_h: found.mg_per_l_and_mg_per_h,
        });
        self.tunings.push(Tuning {
            day,
            window,
            gas_mg_per_h: trial.gas_mg_per_h,
            highest_mg_per_l: trial.highest,
            at_lights_on_mg_per_l: trial.at_lights_on,
            trials: found.trials,
            reached,
            start_found: lead.too_little.is_none(),
        });
    }
}

/// How long before lights-on the gas comes on.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Lead {
    /// Minutes.
    pub(super) minutes: u32,
    /// CO2 at lights-on with the earliest start, if even that is too little, mg/L.
    pub(super) too_little: Option<f64>,
}

impl Lead {
    /// The usual one, where none is looked for.
    pub(super) const USUAL: Lead = Lead {
        minutes: USUAL_LEAD,
        too_little: None,
    };
}
