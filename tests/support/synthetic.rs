//! Invented runs for looking at charts: the shapes of a start-up, made without the model.
//!
//! Nothing here is a result. The curves rise, fall and jump where a real run's would, so that every
//! part of a chart is exercised; knobs turn parts off or to extremes.

use firstfill::analysis::case::{Case, PlanStep};
use firstfill::analysis::limits::Limits;
use firstfill::analysis::milestones::{DayFigures, Extreme, Milestones};
use firstfill::analysis::ready::{OxidationStep, Ready, Ripening, Verdict, Waiting};
use firstfill::base::clock::{DAY, TimeOfDay, Window, days};
use firstfill::base::maths::{exp, log10};
use firstfill::engine::event::{Animals, Event, EventKind};
use firstfill::engine::input::{GasHours, GasPlan, Heating, ModelInput, Room, TimerLine, TopUp};
use firstfill::engine::ledger::Ledger;
use firstfill::engine::result::{EventRecord, Reading, RunResult, Side, Tally, Tuning, Work};
use firstfill::model::composition::Composition;
use firstfill::model::conserved::{FLUXES, Flux, QUANTITIES, Quantity};
use firstfill::model::group::Group;
use firstfill::model::parameter_set::ParameterSet;
use firstfill::model::pool::MAX_STANDS;
use firstfill::model::setup::{StandPlan, Tank};

/// What to invent.
#[derive(Debug, Clone)]
pub struct Knobs {
    pub last_day: u32,
    pub filled_at: u32,
    pub dated: bool,
    pub changes: Vec<(u32, f64)>,
    pub away: Vec<(u32, u32)>,
    pub soil: bool,
    pub plants: bool,
    pub lit: bool,
    pub gas: bool,
    pub air_from: Option<u32>,
    pub growth: f64,
    pub scale: f64,
    pub kh: f64,
    pub steps: bool,
    pub still: f64,
    pub step_name: &'static str,
}

impl Default for Knobs {
    fn default() -> Self {
        let mut changes: Vec<(u32, f64)> = (1..=8).map(|d| (d, 0.5)).collect();
        changes.extend([10, 12, 20, 22, 29, 36, 43, 50].map(|d| (d, 0.4)));
        Knobs {
            last_day: 56,
            filled_at: 600,
            dated: true,
            changes,
            away: vec![(14, 18)],
            soil: true,
            plants: true,
            lit: true,
            gas: true,
            air_from: Some(42),
            growth: 0.55,
            scale: 1.0,
            kh: 2.8,
            steps: true,
            still: 0.18,
            step_name: "light.steps.brighter",
        }
    }
}

/// An invented run with what it means.
pub struct Invented {
    pub run: RunResult,
    pub case: Case,
    pub milestones: Milestones,
    pub verdict: Verdict,
}

const VOLUME: f64 = 48.0;
const PROCESSES: [&str; 9] = [
    "soil_exchange",
    "acid_exchange",
    "ammonia_oxidation",
    "nitrite_oxidation",
    "complete_oxidation",
    "nitrifier_loss",
    "leaf_uptake",
    "mineralisation",
    "denitrification",
];

/// The state that is stepped: amounts per tank.
#[derive(Clone, Copy, Default)]
struct State {
    tan: f64,
    nitrite: f64,
    nitrate: f64,
    alk: f64,
    oxygen: f64,
    co2: f64,
    indicator: f64,
    soil: f64,
    plants: f64,
    detritus: f64,
    xa: f64,
    xn: f64,
    crossed_n: [f64; FLUXES.len()],
    tan_by: [f64; PROCESSES.len()],
    alk_by: [f64; PROCESSES.len()],
}

impl Knobs {
    pub fn invent(self) -> Invented {
        let input = self.input();
        let (readings, tallies, events) = self.readings(&input);
        let run = RunResult {
            close_ups: vec![],
            processes: PROCESSES.to_vec(),
            tunings: self.tunings(),
            ledger: Ledger {
                accounts: Vec::new(),
            },
            notices: Vec::new(),
            work: Work::default(),
            input,
            readings,
            tallies,
            events,
        };
        let limits = Limits::default();
        let milestones = milestones(&run);
        let verdict = verdict(&run, &limits);
        Invented {
            case: self.case(&run.input, limits),
            run,
            milestones,
            verdict,
        }
    }

    fn case(&self, input: &ModelInput, limits: Limits) -> Case {
        let step = |day, name: &str, what: &str| PlanStep {
            day,
            name: name.into(),
            what: what.into(),
        };
        let switches = if self.steps {
            vec![
                step(0, "light", "light 11:30..18:30"),
                step(21, self.step_name, "light 11:30..19:00"),
            ]
        } else {
            Vec::new()
        };
        Case {
            name: "invented".into(),
            filled_on: self.dated.then(|| jiff::civil::date(2027, 3, 6)),
            input: input.clone(),
            limits,
            away: self.away.clone(),
            left_out: Vec::new(),
            switches,
            facts: Vec::new(),
            resolved: Vec::new(),
            notices: Vec::new(),
            prices: firstfill::analysis::cost::Prices::default(),
            kit: firstfill::analysis::kit::TestKit::default(),
            calendar: None,
            soil_bag_l: 3.0,
            unsure: Vec::new(),
            waters: Default::default(),
        }
    }

    fn window(on: u32, off: u32) -> Window {
        Window {
            on: TimeOfDay(on),
            off: TimeOfDay(off),
        }
    }

    fn input(&self) -> ModelInput {
        let event = |minute, name: &str, kind| Event {
            minute,
            name: name.into(),
            kind,
        };
        let mut events: Vec<Event> = self
            .changes
            .iter()
            .filter(|c| c.0 <= self.last_day)
            .map(|&(day, share)| {
                event(
                    day * DAY + 570,
                    "changes.early",
                    EventKind::Change { share },
                )
            })
            .collect();
        if self.plants {
            let kind = EventKind::Plant { stand: 0 };
            events.push(event(self.filled_at, "plants.stems", kind));
        }
        if self.steps {
            let mg_cod = [5.0, 5.0, 0.0];
            events.push(event(DAY + 570, "seed.sponge", EventKind::Seed { mg_cod }));
            let animals = Animals {
                mass_g: 6.0,
                feed_g_per_day: 0.12,
                protein_frac: 0.4,
                shrimp: false,
            };
            events.push(event(
                42 * DAY + 720,
                "stock.first",
                EventKind::Stock(animals),
            ));
        }
        let lines = |on: bool, from_day, window, value| match on {
            true => vec![TimerLine {
                from_day,
                window,
                value,
            }],
            false => Vec::new(),
        };
        let light = lines(self.lit, 0, Knobs::window(690, 1110), 60.0);
        let gas_hours = lines(true, 0, Knobs::window(600, 1050), 0.0);
        let air_from = self.air_from.unwrap_or(0);
        let air = lines(
            self.air_from.is_some(),
            air_from,
            Knobs::window(1200, 480),
            1.0,
        );
        ModelInput {
            filled_at: self.filled_at,
            last_day: self.last_day,
            lookahead_days: 2,
            step_minutes: 60,
            tank: Tank {
                volume_l: VOLUME,
                surface_m2: 0.18,
                bed_m2: 0.18,
                wall_m2: 0.83,
                soil_l: if self.soil { 9.0 } else { 0.0 },
                film_m2: None,
                altitude_m: 0.0,
            },
            room: Room {
                temperature_c: 21.0,
                humidity_frac: 0.5,
            },
            heating: Heating {
                set_c: Some(24.5),
                start_c: 24.5,
            },
            fill: self.water(),
            refill: self.water(),
            top_up: TopUp::None,
            parameters: ParameterSet::default(),
            seed_level: 1.0,
            dry_days: 0.0,
            stands: vec![StandPlan {
                name: "stems".into(),
                group: Group::Stems,
                cover_frac: 0.5,
                density_g_per_m2: 100.0,
                melt_frac: 0.1,
                acclimates: true,
                uses_bicarbonate: false,
                planted_at: self.filled_at,
            }],
            light,
            gas: match self.gas {
                false => GasPlan::None,
                true => GasPlan::Hold {
                    target_mg_per_l: 28.0,
                    tuned_on: vec![2, 13, 28],
                    hours: GasHours::Given(gas_hours),
                },
            },
            air,
            power_cuts: Vec::new(),
            unfed: Vec::new(),
            events,
        }
    }

    fn water(&self) -> Composition {
        Composition {
            nitrate_mg_n_per_l: 1.4 * self.scale,
            alkalinity_meq_per_l: 0.35665 * self.kh,
            oxygen_mg_per_l: 9.0,
            chloride_mg_per_l: 20.0,
            temperature_c: 20.0,
            ..Composition::PURE
        }
    }

    fn tunings(&self) -> Vec<Tuning> {
        let tuned = |day| Tuning {
            day,
            window: Knobs::window(600, 1050),
            gas_mg_per_h: 300.0,
            highest_mg_per_l: 28.0,
            at_lights_on_mg_per_l: Some(20.0),
            trials: 4,
            reached: true,
            start_found: true,
        };
        let days = if self.gas {
            vec![0, 2, 13, 28]
        } else {
            Vec::new()
        };
        days.into_iter()
            .filter(|&d| d <= self.last_day)
            .map(tuned)
            .collect()
    }

    fn start(&self) -> State {
        let water = self.water();
        State {
            nitrate: water.nitrate_mg_n_per_l * VOLUME,
            alk: water.alkalinity_meq_per_l * VOLUME,
            oxygen: 8.0 * VOLUME,
            co2: 2.0,
            indicator: 2.0,
            soil: if self.soil { 2200.0 * self.scale } else { 0.0 },
            plants: if self.plants { 260.0 } else { 0.0 },
            xa: 2.0 * self.growth,
            xn: 1.0 * self.growth,
            ..State::default()
        }
    }

    fn readings(&self, input: &ModelInput) -> (Vec<Reading>, Vec<Tally>, Vec<EventRecord>) {
        let (mut readings, mut tallies, mut events) = (Vec::new(), Vec::new(), Vec::new());
        let mut s = self.start();
        let mut minute = self.filled_at;
        while minute <= input.final_minute() {
            let now: Vec<&Event> = input.events.iter().filter(|e| e.minute == minute).collect();
            if now.is_empty() {
                readings.push(self.reading(input, &s, minute, Side::Plain));
            } else {
                let before = self.reading(input, &s, minute, Side::Before);
                readings.push(before);
                tallies.push(tally(&s, minute, Side::Before));
                for event in now {
                    events.push(self.happen(input, &mut s, event, before));
                }
                readings.push(self.reading(input, &s, minute, Side::After));
                tallies.push(tally(&s, minute, Side::After));
            }
            if minute.is_multiple_of(60) {
                tallies.push(tally(&s, minute, Side::Plain));
            }
            self.step(input, &mut s, minute);
            minute += 5;
        }
        tallies.dedup_by_key(|t| (t.minute, t.side != Side::Before));
        (readings, tallies, events)
    }

    fn happen(
        &self,
        input: &ModelInput,
        s: &mut State,
        event: &Event,
        before: Reading,
    ) -> EventRecord {
        let mut litres = 0.0;
        if let EventKind::Change { share } = event.kind {
            litres = share * VOLUME;
            let water = self.water();
            let gone = share * (s.tan + s.nitrite + s.nitrate);
            s.crossed_n[Flux::RemovedByChanges.index()] -= gone;
            s.crossed_n[Flux::SuppliedByRefills.index()] += litres * water.nitrate_mg_n_per_l;
            s.tan *= 1.0 - share;
            s.nitrite *= 1.0 - share;
            s.nitrate += share * (water.nitrate_mg_n_per_l * VOLUME - s.nitrate);
            s.alk += share * (water.alkalinity_meq_per_l * VOLUME - s.alk);
            s.oxygen += share * (9.0 * VOLUME - s.oxygen);
            s.co2 += share * (2.0 - s.co2);
        }
        EventRecord {
            minute: event.minute,
            name: event.name.clone(),
            what: "invented".into(),
            litres,
            before,
            after: self.reading(input, s, event.minute, Side::After),
        }
    }

    fn light(&self, minute: u32) -> f64 {
        let lit = self.lit && Knobs::window(690, 1110).holds(TimeOfDay::of(minute));
        if lit { 60.0 } else { 0.0 }
    }
    fn gas(&self, minute: u32) -> f64 {
        let on = self.gas && Knobs::window(600, 1050).holds(TimeOfDay::of(minute));
        if on { 320.0 } else { 0.0 }
    }
    fn air(&self, minute: u32) -> f64 {
        let from = self.air_from.map_or(u32::MAX, |d| d.saturating_mul(DAY));
        let on = minute >= from && Knobs::window(1200, 480).holds(TimeOfDay::of(minute));
        if on { 1.0 } else { 0.0 }
    }

    /// Five minutes of invented life.
    fn step(&self, _input: &ModelInput, s: &mut State, minute: u32) {
        let (dt, day) = (5.0 / 1440.0, days(minute));
        let leach = if self.soil {
            s.soil * 0.04 * exp(-day / 15.0) * dt
        } else {
            0.0
        };
        let (tan, nitrite) = (s.tan / VOLUME, s.nitrite / VOLUME);
        let ox_a = (s.xa * 9.0 * tan / (0.5 + tan) * dt).min(s.tan + leach);
        let ox_n = (s.xn * 12.0 * nitrite / (0.3 + nitrite) * dt).min(s.nitrite + ox_a);
        let uptake = if self.plants {
            (0.2 * s.plants * 0.02 * dt).min(s.nitrate)
        } else {
            0.0
        };
        let gone = (0.6 * dt).min(s.nitrate - uptake);
        s.soil -= leach;
        s.tan += leach - ox_a;
        s.nitrite += ox_a - ox_n;
        s.nitrate += ox_n - uptake - gone;
        s.plants += uptake * 0.9;
        s.detritus += uptake * 0.1;
        s.xa = (s.xa * exp(self.growth * dt * tan / (0.5 + tan))).min(14.0);
        s.xn = (s.xn * exp(0.8 * self.growth * dt * nitrite / (0.2 + nitrite))).min(12.0);
        s.crossed_n[Flux::NitrogenGas.index()] -= gone;
        let acid = if self.soil { 0.06 * s.alk * dt } else { 0.0 };
        let used = 2.0 / 14.007 * ox_a;
        let back = (uptake + gone) / 14.007;
        s.alk += back - acid - used;
        for (n, t, a) in [
            (0, leach, 0.0),
            (1, 0.0, -acid),
            (2, -ox_a, -used),
            (8, 0.0, gone / 14.007),
        ] {
            s.tan_by[n] += t;
            s.alk_by[n] += a;
        }
        let light = self.light(minute);
        let exchange = self.still + 2.0 * self.air(minute);
        let made = if self.plants { light / 60.0 * 0.9 } else { 0.0 };
        let burnt = 0.45 + 0.25 * exp(-day / 8.0);
        let hours = 5.0 / 60.0;
        s.oxygen += hours * VOLUME * (exchange * (8.3 - s.oxygen / VOLUME) + made - burnt);
        s.oxygen = s.oxygen.max(0.0);
        s.co2 += hours
            * (0.9 * exchange * (0.6 - s.co2) + self.gas(minute) * 0.6 / VOLUME - made + burnt);
        s.co2 = s.co2.max(0.2);
        s.indicator += hours * (s.co2 - s.indicator) / 1.5;
    }

    fn reading(&self, input: &ModelInput, s: &State, minute: u32, side: Side) -> Reading {
        let kh = s.alk / VOLUME / 0.35665;
        let ph = 7.0 + log10(3.5 * kh.max(0.02) / s.co2);
        let tan = s.tan / VOLUME;
        let speed = kh.max(0.0) / (0.3 + kh.max(0.0));
        Reading {
            minute,
            side,
            tan_mg_n_per_l: tan,
            free_ammonia_mg_n_per_l: tan / (1.0 + firstfill::base::maths::exp10(9.25 - ph)),
            nitrite_mg_n_per_l: s.nitrite / VOLUME,
            nitrous_acid_mg_n_per_l: 0.0,
            nitrate_mg_n_per_l: s.nitrate / VOLUME,
            phosphate_mg_p_per_l: 0.1,
            potassium_mg_per_l: 5.0,
            iron_mg_per_l: 0.01,
            oxygen_mg_per_l: s.oxygen / VOLUME,
            oxygen_saturation_percent: 12.0 * s.oxygen / VOLUME,
            co2_mg_per_l: s.co2,
            indicator_co2_mg_per_l: s.indicator,
            ph,
            alkalinity_meq_per_l: s.alk / VOLUME,
            inorganic_carbon_mmol_per_l: s.alk / VOLUME + s.co2 / 44.0,
            hardness_meq_per_l: 2.0,
            chloride_mg_per_l: 20.0,
            chlorine_mg_cl2_per_l: 0.0,
            chloramine_mg_cl2_per_l: 0.0,
            volume_l: VOLUME,
            temperature_c: 24.5,
            light_umol_per_m2_s: self.light(minute),
            gas_used_g: 0.0,
            gas_mg_per_h: self.gas(minute),
            air_l_per_min: self.air(minute),
            ammonia_oxidisers_mg_cod: 10.0 * s.xa,
            nitrite_oxidisers_mg_cod: 10.0 * s.xn,
            complete_oxidisers_mg_cod: 0.0,
            ammonia_capacity_mg_n_per_day: 9.0 * s.xa,
            nitrite_capacity_mg_n_per_day: 12.0 * s.xn * speed,
            nitrite_oxidiser_speed_frac: speed,
            soil_ammonium_mg_n: 0.3 * s.soil,
            soil_organic_n_mg: 0.7 * s.soil,
            soil_phosphorus_mg_p: 100.0,
            soil_acid_meq: 200.0,
            pore_water_ammonium_mg_n_per_l: 10.0,
            detritus_g: s.detritus / 30.0,
            detritus_mg_n: s.detritus,
            algae_g_per_m2: 1.0,
            algae_mg_n: 0.0,
            plants_g: s.plants / 30.0,
            plants_mg_n: s.plants,
            stands_g: [0.0; MAX_STANDS],
            canopy_frac: if input.stands.is_empty() { 0.0 } else { 0.5 },
        }
    }
}

fn tally(s: &State, minute: u32, side: Side) -> Tally {
    let mut crossed = [[0.0; QUANTITIES.len()]; FLUXES.len()];
    for (flux, amount) in crossed.iter_mut().zip(s.crossed_n) {
        let nitrogen = QUANTITIES.iter().position(|&q| q == Quantity::Nitrogen);
        flux[nitrogen.unwrap()] = amount;
    }
    Tally {
        minute,
        side,
        crossed,
        alkalinity_meq: s.alk_by.to_vec(),
        tan_mg_n: s.tan_by.to_vec(),
    }
}

fn extreme(readings: &[Reading], sign: f64, value: fn(&Reading) -> f64) -> Extreme {
    let best = readings
        .iter()
        .max_by(|a, b| (sign * value(a)).total_cmp(&(sign * value(b))))
        .unwrap();
    Extreme {
        value: value(best),
        minute: best.minute,
    }
}

fn milestones(run: &RunResult) -> Milestones {
    let shown = run.shown();
    let figures = |day: u32| {
        let of_day: Vec<Reading> = shown
            .iter()
            .filter(|r| r.minute / DAY == day)
            .copied()
            .collect();
        (!of_day.is_empty()).then(|| DayFigures {
            day,
            oxygen_low: extreme(&of_day, -1.0, |r| r.oxygen_mg_per_l),
            oxygen_high: extreme(&of_day, 1.0, |r| r.oxygen_mg_per_l),
            co2_high: extreme(&of_day, 1.0, |r| r.co2_mg_per_l),
            co2_low: extreme(&of_day, -1.0, |r| r.co2_mg_per_l),
            ph_low: extreme(&of_day, -1.0, |r| r.ph),
            ph_high: extreme(&of_day, 1.0, |r| r.ph),
            free_ammonia_high: extreme(&of_day, 1.0, |r| r.free_ammonia_mg_n_per_l),
        })
    };
    let end = *shown.last().unwrap();
    Milestones {
        tan_peak: extreme(shown, 1.0, |r| r.tan_mg_n_per_l),
        nitrite_peak: extreme(shown, 1.0, |r| r.nitrite_mg_n_per_l),
        nitrate_peak: extreme(shown, 1.0, |r| r.nitrate_mg_n_per_l),
        free_ammonia_peak: extreme(shown, 1.0, |r| r.free_ammonia_mg_n_per_l),
        oxygen_low: extreme(shown, -1.0, |r| r.oxygen_mg_per_l),
        co2_high: extreme(shown, 1.0, |r| r.co2_mg_per_l),
        kh_low: extreme(shown, -1.0, |r| r.alkalinity_meq_per_l / 0.35665),
        nitrate_end: end.nitrate_mg_n_per_l,
        days: (0..=run.input.last_day).filter_map(figures).collect(),
        litres_changed: run.events.iter().map(|e| e.litres).sum(),
        litres_filled: VOLUME,
        visits: run.events.len() as u32,
        gas_g: 100.0,
        end,
    }
}

fn verdict(run: &RunResult, limits: &Limits) -> Verdict {
    let feed = 7.7;
    let from = |bad: &dyn Fn(&Reading) -> bool| {
        let last = run
            .readings
            .iter()
            .rev()
            .find(|r| bad(r))
            .map(|r| r.minute / DAY + 1);
        last.unwrap_or(0)
    };
    let tan = from(&|r| r.tan_mg_n_per_l > limits.total_ammonia.value);
    let nitrite = from(&|r| r.nitrite_mg_n_per_l > limits.nitrite.value);
    let step_a = from(&|r| r.ammonia_capacity_mg_n_per_day < feed);
    let step_n = from(&|r| r.nitrite_capacity_mg_n_per_day < feed);
    let quiet = tan.max(nitrite);
    let last_day = run.input.last_day;
    let covers = |day| (day <= last_day).then_some(day);
    let (ready, waited_for) = if quiet > last_day {
        (
            Ready::LaterThan(last_day),
            Some(Waiting::Limit(Ripening::Nitrite)),
        )
    } else if step_n > last_day {
        let ready = Ready::QuietNotRipe {
            day: quiet,
            step: OxidationStep::Nitrite,
            capacity_mg_n_per_day: 2.1,
            needed_mg_n_per_day: feed,
        };
        (ready, Some(Waiting::Capacity(OxidationStep::Nitrite)))
    } else {
        (
            Ready::Day(quiet.max(step_a).max(step_n)),
            Some(Waiting::Limit(Ripening::Nitrite)),
        )
    };
    Verdict {
        ready,
        waited_for,
        feed_mg_n_per_day: feed,
        feed_is_planned: run.input.has_animals(),
        unmet: if quiet > last_day {
            vec![Waiting::Limit(Ripening::Nitrite)]
        } else {
            Vec::new()
        },
        capacity_covers_from: [covers(step_a), covers(step_n)],
        broken_after: None,
    }
}
