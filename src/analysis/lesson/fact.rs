//! Facts: numbers read off one step of a lesson, each with its name and unit.

use crate::analysis::compare::strategy::Strategy;
use crate::analysis::ensemble::member::Told;
use crate::analysis::figures::kh_dkh;
use crate::analysis::levers::paired::Paired;
use crate::analysis::limits::Limits;
use crate::analysis::milestones::{DayFigures, readings_of};
use crate::base::units::MEQ_PER_DKH;
use crate::engine::result::{Reading, RunResult};
use crate::model::conserved::Flux;

use super::{behind, nitrogen};

/// One step of a lesson beside the one it is held against.
#[derive(Debug, Clone, Copy)]
pub struct Seen<'a> {
    /// The step.
    pub step: &'a Strategy<'a>,
    /// The step others are held against.
    pub base: &'a Strategy<'a>,
    /// The day that is looked at closely.
    pub day: u32,
}

impl<'a> Seen<'a> {
    /// The other step in place of this one.
    pub fn at_base(&self) -> Seen<'a> {
        Seen {
            step: self.base,
            ..*self
        }
    }
    /// Whether this is the step that others are held against.
    pub fn is_base(&self) -> bool {
        std::ptr::eq(self.step, self.base)
    }
    fn last_day(&self) -> u32 {
        self.step.case.input.last_day
    }
    fn day_figures(&self) -> Option<&DayFigures> {
        let days = &self.step.outcome.milestones.days;
        days.iter().find(|figures| figures.day == self.day)
    }
    /// The readings of the day; none where it lies behind the run, in its look-ahead.
    fn readings(&self) -> Vec<&Reading> {
        match self.day <= self.last_day() {
            true => readings_of(self.run(), self.day),
            false => Vec::new(),
        }
    }
    /// The reading at lights-on of the day.
    fn at_lights_on(&self) -> Option<&Reading> {
        let lit = |r: &&&Reading| r.light_umol_per_m2_s > 0.0;
        self.readings().iter().find(lit).copied()
    }
    fn midnight(&self) -> Option<&Reading> {
        behind::midnight(self.run(), self.day)
    }
    fn run(&self) -> &RunResult {
        &self.step.outcome.run
    }
}

/// A number with its standard error.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Read {
    /// The number.
    pub value: f64,
    /// Its standard error; 0 of a number of one run.
    pub error: f64,
}

impl Read {
    /// A number of one run.
    pub const fn exact(value: f64) -> Read {
        Read { value, error: 0.0 }
    }
}

/// A number that can be read off a step.
#[derive(Debug, Clone, Copy)]
pub struct Fact {
    /// Its name in templates and tables.
    pub key: &'static str,
    /// What it is, in words.
    pub name: &'static str,
    /// Its unit; empty for pH, counts and days.
    pub unit: &'static str,
    /// Digits after the point.
    pub digits: usize,
    read: fn(&Seen<'_>) -> Option<Read>,
}

impl Fact {
    /// The number at a step; none where there is none.
    pub fn of(&self, seen: &Seen<'_>) -> Option<Read> {
        (self.read)(seen)
    }
    /// Whether it is a mean over plausible tanks, which has a standard error.
    pub fn is_mean(&self) -> bool {
        self.key == DAYS_SOONER.key
    }
}

/// The fact of a key.
pub fn find(key: &str) -> Option<&'static Fact> {
    FACTS.iter().find(|fact| fact.key == key)
}

fn some(value: f64) -> Option<Read> {
    Some(Read::exact(value))
}

/// How many of 100 plausible tanks keep to something.
fn kept(seen: &Seen<'_>, keeps: fn(&Told, &Limits) -> bool) -> Option<Read> {
    let told: Vec<&Told> = seen.step.told().collect();
    let limits = &seen.step.case.limits;
    let count = told.iter().filter(|told| keeps(told, limits)).count();
    (!told.is_empty()).then(|| Read::exact(100.0 * count as f64 / told.len() as f64))
}

fn sooner(seen: &Seen<'_>) -> Option<Read> {
    let paired = Paired::of(&seen.base.members, &seen.step.members, seen.last_day());
    (paired.pairs > 0).then_some(Read {
        value: paired.mean_days,
        error: paired.standard_error_days,
    })
}

macro_rules! facts {
    ($($name:ident $key:literal $words:literal $unit:literal $digits:literal $read:expr;)*) => {
        $(
            #[doc = concat!($words, ", ", $unit)]
            pub const $name: Fact = Fact { key: $key, name: $words, unit: $unit, digits: $digits, read: $read };
        )*
        /// All facts.
        pub const FACTS: &[Fact] = &[$($name),*];
    };
}

facts! {
    TAN_PEAK "tan_peak" "peak total ammonia" "mg N/L" 2 |s| some(s.step.outcome.milestones.tan_peak.value);
    TAN_PEAK_DAY "tan_peak_day" "day of that peak" "" 0 |s| some(f64::from(s.step.outcome.milestones.tan_peak.day()));
    TAN_LIMIT "tan_limit" "limit of total ammonia" "mg N/L" 1 |s| some(s.step.case.limits.total_ammonia.value);
    NITRITE_PEAK "nitrite_peak" "peak nitrite" "mg N/L" 2 |s| some(s.step.outcome.milestones.nitrite_peak.value);
    NITRITE_PEAK_DAY "nitrite_peak_day" "day of that peak" "" 0 |s| some(f64::from(s.step.outcome.milestones.nitrite_peak.day()));
    FREE_PEAK "free_peak" "peak free ammonia" "mg N/L" 3 |s| some(s.step.outcome.milestones.free_ammonia_peak.value);
    FREE_LIMIT "free_limit" "limit of free ammonia" "mg N/L" 2 |s| some(s.step.case.limits.free_ammonia.value);
    OXYGEN_LOW "oxygen_low" "lowest oxygen" "mg/L" 1 |s| some(s.step.outcome.milestones.oxygen_low.value);
    OXYGEN_LIMIT "oxygen_limit" "limit of oxygen" "mg/L" 0 |s| some(s.step.case.limits.oxygen.value);
    OXYGEN_KEPT "oxygen_kept" "keep the limit of oxygen in every night, of 100 plausible tanks" "" 0 |s| kept(s, |told, limits| told.figures.oxygen_low.value >= limits.oxygen.value);
    KH_LOW "kh_low" "lowest KH" "dKH" 2 |s| some(s.step.outcome.milestones.kh_low.value);
    KH_THAT_DAY "kh_that_day" "KH on that day" "dKH" 2 |s| Some(Read::exact(kh_dkh(s.midnight()?)));
    NITRATE_END "nitrate_end" "nitrate at the end" "mg N/L" 1 |s| some(s.step.outcome.milestones.nitrate_end);
    LITRES "litres" "water changed" "L" 0 |s| some(s.step.outcome.milestones.litres_changed);
    GAS "gas" "gas used" "g" 0 |s| some(s.step.outcome.milestones.gas_g);
    LAST_DAY "last_day" "last day of the run" "" 0 |s| some(f64::from(s.last_day()));
    READY_DAY "ready_day" "ready day of the central run alone" "" 0 |s| s.step.outcome.verdict.day().map(|day| Read::exact(f64::from(day)));
    READY_OF_100 "ready_of_100" "ready by the last day, of 100 plausible tanks" "" 0 |s| some(s.step.curve.of_100_by(s.last_day()));
    AMMONIA_OXIDISERS "ammonia_oxidisers" "ammonia oxidisers on that day, complete ones among them" "mg COD" 1 |s| s.midnight().map(|r| Read::exact(r.ammonia_oxidisers_mg_cod + r.complete_oxidisers_mg_cod));
    NITRITE_OXIDISERS "nitrite_oxidisers" "nitrite oxidisers on that day, complete ones not counted" "mg COD" 4 |s| some(s.midnight()?.nitrite_oxidisers_mg_cod);
    COMPLETE_OXIDISERS "complete_oxidisers" "complete oxidisers on that day, which do both steps" "mg COD" 2 |s| some(s.midnight()?.complete_oxidisers_mg_cod);
    KH_BROUGHT "kh_brought" "KH that changes have brought by that day, less what they took" "dKH" 1 |s| some(behind::changes_brought_dkh(s.run(), s.day));
    DAYS_SOONER "days_sooner" "ready sooner than the tank it is held against, mean of the pairs" "days" 1 sooner;
    FEED "feed" "what the planned feed brings" "mg N/day" 1 |s| some(s.step.outcome.verdict.feed_mg_n_per_day);
    FEED_PER_L "feed_per_l" "what the feed brings to a litre in a day" "mg N/L" 2 |s| some(s.step.outcome.verdict.feed_mg_n_per_day / s.midnight()?.volume_l);
    CAPACITY "capacity" "what the ammonia oxidisers could turn over" "mg N/day" 1 |s| some(s.midnight()?.ammonia_capacity_mg_n_per_day);
    NITRITE_CAPACITY "nitrite_capacity" "what the nitrite oxidisers could turn over" "mg N/day" 1 |s| some(s.midnight()?.nitrite_capacity_mg_n_per_day);
    TAN_THAT_DAY "tan_that_day" "total ammonia on that day" "mg N/L" 2 |s| some(s.midnight()?.tan_mg_n_per_l);
    OXYGEN_THAT_DAY "oxygen_that_day" "lowest oxygen of that day" "mg/L" 1 |s| some(s.day_figures()?.oxygen_low.value);
    CO2_THAT_DAY "co2_that_day" "highest CO2 of that day" "mg/L" 0 |s| some(s.day_figures()?.co2_high.value);
    CO2_AT_DAWN "co2_at_dawn" "CO2 at lights-on" "mg/L" 0 |s| some(s.at_lights_on()?.co2_mg_per_l);
    PH_LOW "ph_low" "lowest pH of that day" "" 2 |s| some(s.day_figures()?.ph_low.value);
    PH_HIGH "ph_high" "highest pH of that day" "" 2 |s| some(s.day_figures()?.ph_high.value);
    PH_SWING "ph_swing" "swing of pH on that day" "" 2 |s| s.day_figures().map(|d| Read::exact(d.ph_high.value - d.ph_low.value));
    FREE_SHARE "free_share" "free ammonia, of 100 parts of the total" "" 2 |s| s.midnight().map(|r| Read::exact(100.0 * r.free_ammonia_mg_n_per_l / r.tan_mg_n_per_l));
    FREE_THAT_DAY "free_that_day" "free ammonia on that day" "mg N/L" 3 |s| some(s.midnight()?.free_ammonia_mg_n_per_l);
    FREE_HIGH "free_high" "highest free ammonia of that day" "mg N/L" 3 |s| some(s.day_figures()?.free_ammonia_high.value);
    PH_THAT_DAY "ph_that_day" "pH on that day" "" 1 |s| some(s.midnight()?.ph);
    FREE_STEP_UP "free_step_up" "times as much free ammonia, one step of pH higher" "" 0 |s| some(behind::per_step_of_ph(s.midnight()?));
    FREE_IN_THE_EVENING "free_in_the_evening" "free ammonia of the same total at pH 8.5" "mg N/L" 3 |s| some(behind::free_in_the_evening(s.midnight()?));
    CAME_IN "came_in" "total ammonia that has come in by that day" "mg N/L" 2 |s| behind::came_in_mg_n_per_l(s.run(), s.day).map(Read::exact);
    DOUBLING "doubling" "the ammonia oxidisers doubled in, over the week before that day" "days" 1 |s| behind::doubling_days(s.run(), s.day).map(Read::exact);
    TAP_KH "tap_kh" "KH of the tap" "dKH" 1 |s| some(s.run().input.fill.alkalinity_meq_per_l / MEQ_PER_DKH);
    SOIL_TOOK "soil_took" "KH that the soil has taken by that day" "dKH" 1 |s| behind::soil_took_dkh(s.run(), s.day).map(Read::exact);
    NITRIFIERS_TOOK "nitrifiers_took" "KH that the ammonia oxidisers have used by that day" "dKH" 1 |s| behind::nitrifiers_took_dkh(s.run(), s.day).map(Read::exact);
    SPEED "speed" "mean share of full speed that their water leaves the nitrite oxidisers" "%" 0 |s| some(100.0 * behind::mean_speed_frac(s.run())?);
    CO2_LIMIT "co2_limit" "limit of CO2" "mg/L" 0 |s| some(s.step.case.limits.co2.value);
    PLANTS_END "plants_end" "plants at the end, dry" "g" 2 |s| some(s.step.outcome.milestones.end.plants_g);
    PLANTS_FIRST "plants_first" "plants on day 1, dry" "g" 2 |s| some(behind::midnight(s.run(), 1)?.plants_g);
    PLANTS_GAINED "plants_gained" "what the plants gained from day 1 to the end, dry" "g" 2 |s| some(s.step.outcome.milestones.end.plants_g - behind::midnight(s.run(), 1)?.plants_g);
    CAUGHT_UP_DAY "caught_up_day" "day, from that day on, on which the ammonia oxidisers can turn over the planned feed" "" 0 |s| behind::day_of_capacity(s.run(), s.day, s.step.outcome.verdict.feed_mg_n_per_day).map(|day| Read::exact(f64::from(day)));
    NITRITE_LIMIT "nitrite_limit" "limit of nitrite" "mg N/L" 2 |s| some(s.step.case.limits.nitrite.value);
    NITRITE_END "nitrite_end" "nitrite at the end" "mg N/L" 2 |s| some(s.run().shown().last()?.nitrite_mg_n_per_l);
    REFILLED "refilled" "of it brought by refills" "mg N" 0 |s| some(-nitrogen::gone(s.run(), Flux::SuppliedByRefills));
    FROM_SOIL "from_soil" "of it given off by the soil" "mg N" 0 |s| nitrogen::given_by_soil(s.run()).map(Read::exact);
    NITROGEN_WHOLE "nitrogen_whole" "nitrogen in all" "mg N" 0 |s| nitrogen::whole(s.run()).map(Read::exact);
    N_CHANGES "n_changes" "carried out with changed water" "mg N" 0 |s| some(nitrogen::gone(s.run(), Flux::RemovedByChanges));
    N_GAS "n_gas" "gone as nitrogen gas" "mg N" 0 |s| some(nitrogen::gone(s.run(), Flux::NitrogenGas));
    N_PLANTS "n_plants" "in plants and algae at the end" "mg N" 0 |s| some(nitrogen::in_plants(s.run().shown().last()?));
    N_WATER "n_water" "in the water at the end" "mg N" 0 |s| some(nitrogen::in_water(s.run().shown().last()?));
    N_DETRITUS "n_detritus" "in detritus and microbes at the end" "mg N" 0 |s| some(nitrogen::in_detritus(s.run(), s.run().shown().last()?));
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    #[test]
    fn every_fact_has_a_key_of_its_own() {
        let keys: BTreeSet<&str> = FACTS.iter().map(|fact| fact.key).collect();
        assert_eq!(keys.len(), FACTS.len());
    }
}
