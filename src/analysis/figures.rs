//! The figures of one tank as planned, gathered as it goes: alone, or side by side with others.

use crate::base::clock::DAY;
use crate::base::real::Real;
use crate::base::units::MEQ_PER_DKH;
use crate::engine::result::{Reading, Side};

use super::beyond::HoursUnder;
use super::broken::{Broken, RunningWatch};
use super::jumps;
use super::limits::Limits;
use super::lit_ammonia::LitAmmonia;
use super::milestones::Extreme;
use super::peak::Peak;

/// Days in a week.
const WEEK: u32 = 7;

/// The figures of one tank as planned, the look-ahead left out.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Figures {
    /// Highest total ammonia, mg N/L.
    pub tan_peak: Extreme,
    /// Highest free ammonia, mg N/L.
    pub free_ammonia_peak: Extreme,
    /// Highest nitrite, mg N/L.
    pub nitrite_peak: Extreme,
    /// Highest nitrate, mg N/L.
    pub nitrate_peak: Extreme,
    /// Lowest oxygen, mg/L: the worst night.
    pub oxygen_low: Extreme,
    /// Highest carbon dioxide, mg/L.
    pub co2_high: Extreme,
    /// Lowest KH, dKH.
    pub kh_low: Extreme,
    /// Hours beyond limits.
    pub hours: HoursBeyond,
    /// Largest change of temperature at a water change, °C; none without a change.
    pub temperature_jump: Option<Extreme>,
    /// Largest change of pH at a water change.
    pub ph_jump: Option<Extreme>,
    /// Water taken out by changes, L.
    pub litres_changed: f64,
    /// Water taken out in the heaviest of the weeks (days 0 to 6, 7 to 13, and so on), L.
    pub heaviest_week_l: f64,
    /// Gas that left the cylinder, g.
    pub gas_g: f64,
    /// Plants at the end, g dry weight.
    pub plants_g: f64,
    /// Algae at the end, g dry weight per m² of lit surface; only to be compared.
    pub algae_g_per_m2: f64,
    /// Nitrate at the end, mg N/L.
    pub nitrate_end: f64,
    /// Running limits that were broken.
    pub broken: Broken,
}

/// Hours beyond limits, with straight lines between readings.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HoursBeyond {
    /// Total ammonia over its limit.
    pub tan: f64,
    /// Free ammonia over its limit.
    pub free_ammonia: f64,
    /// Nitrite over its limit, which little chloride lowers.
    pub nitrite: f64,
    /// Oxygen under its limit.
    pub oxygen: f64,
    /// Carbon dioxide over its limit.
    pub co2: f64,
    /// Bright light on total ammonia: both over what counts (`[limits]` `bright_light`, `ammonia_in_light`).
    pub light_with_ammonia: f64,
}

/// Gathers figures reading by reading.
#[derive(Debug, Clone)]
pub struct FigureWatch<R = f64> {
    end_minute: u32,
    limits: Limits,
    tan: Peak<R>,
    free_ammonia: Peak<R>,
    nitrite: Peak<R>,
    nitrate: Peak<R>,
    oxygen: Peak<R>,
    co2: Peak<R>,
    kh: Peak<R>,
    hours: [HoursUnder<R>; 5],
    lit_ammonia: LitAmmonia<R>,
    temperature_jump: Peak<R>,
    ph_jump: Peak<R>,
    litres: R,
    litres_of_weeks: Vec<R>,
    end: End<R>,
    running: RunningWatch<R>,
}

/// What the last reading shows.
#[derive(Debug, Clone, Copy)]
struct End<R> {
    gas_g: R,
    plants_g: R,
    algae_g_per_m2: R,
    nitrate: R,
}

impl<R: Real> FigureWatch<R> {
    /// Whether nothing from a midnight on counts.
    pub fn is_over(&self, midnight: u32) -> bool {
        self.end_minute <= midnight
    }
    /// Watches up to the end of the judged run, with shrimp from a minute on in each lane.
    pub fn new(end_minute: u32, limits: &Limits, shrimp_from: R) -> Self {
        let none = R::zero();
        // nitrite has a bound that moves: how far it is under that is held against nothing
        let bounds = [
            -limits.total_ammonia.value,
            -limits.free_ammonia.value,
            0.0,
            limits.oxygen.value,
            -limits.co2.value,
        ];
        FigureWatch {
            end_minute,
            limits: *limits,
            tan: Peak::highest(),
            free_ammonia: Peak::highest(),
            nitrite: Peak::highest(),
            nitrate: Peak::highest(),
            oxygen: Peak::lowest(),
            co2: Peak::highest(),
            kh: Peak::lowest(),
            hours: bounds.map(HoursUnder::of),
            lit_ammonia: LitAmmonia::over(limits.bright_light.value, limits.ammonia_in_light.value),
            temperature_jump: Peak::highest(),
            ph_jump: Peak::highest(),
            litres: none,
            litres_of_weeks: vec![none; end_minute.div_ceil(WEEK * DAY) as usize],
            end: End {
                gas_g: none,
                plants_g: none,
                algae_g_per_m2: none,
                nitrate: none,
            },
            running: RunningWatch::new(limits, shrimp_from),
        }
    }

    /// Sees the tanks; the look-ahead is passed over.
    #[inline(always)]
    pub fn see(&mut self, r: &Reading<R>) {
        let minute = r.minute;
        if minute > self.end_minute || (minute == self.end_minute && r.side == Side::After) {
            return;
        }
        self.tan.see(minute, r.tan_mg_n_per_l);
        self.free_ammonia.see(minute, r.free_ammonia_mg_n_per_l);
        self.nitrite.see(minute, r.nitrite_mg_n_per_l);
        self.nitrate.see(minute, r.nitrate_mg_n_per_l);
        self.oxygen.see(minute, r.oxygen_mg_per_l);
        self.co2.see(minute, r.co2_mg_per_l);
        self.kh.see(minute, kh_dkh(r));
        self.see_hours(r);
        self.running.see(r);
        self.end = End {
            gas_g: r.gas_used_g,
            plants_g: r.plants_g,
            algae_g_per_m2: r.algae_g_per_m2,
            nitrate: r.nitrate_mg_n_per_l,
        };
    }

    #[inline(always)]
    fn see_hours(&mut self, r: &Reading<R>) {
        let room = self.limits.nitrite_with(r.chloride_mg_per_l) - r.nitrite_mg_n_per_l;
        let counted_downwards = [
            -r.tan_mg_n_per_l,
            -r.free_ammonia_mg_n_per_l,
            room,
            r.oxygen_mg_per_l,
            -r.co2_mg_per_l,
        ];
        for (hours, value) in self.hours.iter_mut().zip(counted_downwards) {
            hours.see(r.minute, value);
        }
        self.lit_ammonia
            .see(r.minute, r.light_umol_per_m2_s, r.tan_mg_n_per_l);
    }

    /// Sees an event; only water changes take out water.
    pub fn happened(&mut self, litres: R, before: &Reading<R>, after: &Reading<R>) {
        let minute = before.minute;
        if minute >= self.end_minute {
            return;
        }
        self.litres += litres;
        self.litres_of_weeks[(minute / DAY / WEEK) as usize] += litres;
        let is_change = R::zero().below(litres);
        let jump = |before: R, after: R| {
            let none = R::of(f64::NEG_INFINITY);
            R::pick(is_change, jumps::size(before, after), none)
        };
        self.temperature_jump
            .see(minute, jump(before.temperature_c, after.temperature_c));
        self.ph_jump.see(minute, jump(before.ph, after.ph));
        self.running.happened(litres, before, after);
    }

    /// The figures of one lane.
    pub fn lane(&self, lane: usize) -> Figures {
        let [tan, free_ammonia, nitrite, oxygen, co2] =
            self.hours.each_ref().map(|hours| hours.lane(lane));
        let weeks = self.litres_of_weeks.iter().map(|litres| litres.lane(lane));
        let jump = |peak: &Peak<R>| Some(peak.lane(lane)).filter(|jump| jump.value.is_finite());
        Figures {
            tan_peak: self.tan.lane(lane),
            free_ammonia_peak: self.free_ammonia.lane(lane),
            nitrite_peak: self.nitrite.lane(lane),
            nitrate_peak: self.nitrate.lane(lane),
            oxygen_low: self.oxygen.lane(lane),
            co2_high: self.co2.lane(lane),
            kh_low: self.kh.lane(lane),
            hours: HoursBeyond {
                tan,
                free_ammonia,
                nitrite,
                oxygen,
                co2,
                light_with_ammonia: self.lit_ammonia.lane(lane),
            },
            temperature_jump: jump(&self.temperature_jump),
            ph_jump: jump(&self.ph_jump),
            litres_changed: self.litres.lane(lane),
            heaviest_week_l: weeks.fold(0.0, f64::max),
            gas_g: self.end.gas_g.lane(lane),
            plants_g: self.end.plants_g.lane(lane),
            algae_g_per_m2: self.end.algae_g_per_m2.lane(lane),
            nitrate_end: self.end.nitrate.lane(lane),
            broken: self.running.lane(lane),
        }
    }
}

/// KH as kits read it, dKH.
#[inline(always)]
pub fn kh_dkh<R: Real>(reading: &Reading<R>) -> R {
    reading.alkalinity_meq_per_l / R::of(MEQ_PER_DKH)
}
