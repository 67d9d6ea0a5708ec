//! A made-up run with figures that can be worked out in the head, for tests above the engine.
//!
//! Ammonia and nitrite stand at 1 mg N/L after a change and double until the next one, every day at
//! 09:30 from day 1 on, until the day from which the tank is clean; oxygen is lowest at 06:00.

use crate::base::clock::{DAY, HOUR, TimeOfDay, Window};
use crate::engine::event::{Animals, Event, EventKind};
use crate::engine::input::{GasPlan, Heating, ModelInput, Room, TimerLine, TopUp};
use crate::engine::ledger::{Account, Ledger};
use crate::engine::result::{EventRecord, Reading, RunResult, Side, Tally, Work};
use crate::model::composition::Composition;
use crate::model::conserved::{FLUXES, QUANTITIES};
use crate::model::group::Group;
use crate::model::parameter_set::ParameterSet;
use crate::model::pool::MAX_STANDS;
use crate::model::setup::{StandPlan, Tank};

use super::case::{Case, PlanStep, Resolved, SetBy};
use super::limits::Limits;
use crate::analysis::cost::Prices;
use crate::analysis::kit::TestKit;

/// Minute of the day of every change.
pub const CHANGE_MINUTE: u32 = 9 * HOUR + 30;
/// Total ammonia just before a change, mg N/L.
pub const TAN_BEFORE_A_CHANGE: f64 = 2.0;
/// Litres of every change.
pub const LITRES_A_CHANGE: f64 = 25.0;
/// Litres of the tank.
pub const VOLUME_L: f64 = 50.0;
/// Hours of gas a day, 10:00 to 18:00.
pub const GAS_HOURS: u32 = 8;
/// Gas while on, mg/h.
pub const GAS_MG_PER_H: f64 = 400.0;
/// Lowest oxygen of every day, at 06:00, mg/L.
pub const OXYGEN_LOW: f64 = 4.6;
/// Capacity of each step from the clean day on, mg N/day.
pub const CAPACITY_MG_N_PER_DAY: f64 = 40.0;

/// What can be chosen of the made-up run.
#[derive(Debug, Clone)]
pub struct Example {
    /// Last day of the run.
    pub last_day: u32,
    /// Midnight from which the tank is clean.
    pub clean_from_day: u32,
    /// Day from which the capacity is there.
    pub able_from_day: u32,
    /// Day on which animals go in, with their feed, g/day.
    pub stocked: Option<(u32, f64)>,
    /// Whether filling has a date.
    pub dated: bool,
}

impl Default for Example {
    fn default() -> Self {
        Example {
            last_day: 10,
            clean_from_day: 6,
            able_from_day: 5,
            stocked: None,
            dated: true,
        }
    }
}

impl Example {
    /// The scenario.
    pub fn case(&self) -> Case {
        Case {
            name: "made up".into(),
            filled_on: self.dated.then(|| jiff::civil::date(2027, 3, 6)),
            input: self.input(),
            limits: Limits::default(),
            away: vec![(8, 9)],
            left_out: vec![(8, "doses.weekly".into())],
            switches: vec![PlanStep {
                day: 3,
                name: "light.steps.brighter".into(),
                what: "light 11:30..19:00 at 90 µmol/m²/s".into(),
            }],
            facts: vec![
                ("Inside".into(), "60 x 30 x 36 cm, 50 L of water".into()),
                ("Soil".into(), "rich, 9 L".into()),
            ],
            resolved: vec![
                resolved("tank.temperature", "24.5 °C", SetBy::Given),
                resolved(
                    "surface.kind",
                    "ripple",
                    SetBy::Default("common practice, no source".into()),
                ),
            ],
            notices: vec!["no water changes planned".into()],
            prices: Prices::default(),
            kit: TestKit::default(),
            calendar: None,
            soil_bag_l: 3.0,
            unsure: Vec::new(),
            waters: Default::default(),
        }
    }

    /// What is run.
    pub fn input(&self) -> ModelInput {
        let gas = TimerLine {
            from_day: 0,
            window: Window {
                on: TimeOfDay::at(10, 0),
                off: TimeOfDay::at(10 + GAS_HOURS, 0),
            },
            value: GAS_MG_PER_H,
        };
        ModelInput {
            filled_at: 0,
            last_day: self.last_day,
            lookahead_days: 4,
            step_minutes: 60,
            tank: Tank {
                volume_l: VOLUME_L,
                surface_m2: 0.18,
                bed_m2: 0.18,
                wall_m2: 0.83,
                soil_l: 9.0,
                film_m2: None,
                altitude_m: 0.0,
            },
            room: Room {
                temperature_c: 22.0,
                humidity_frac: 0.5,
            },
            heating: Heating {
                set_c: Some(24.5),
                start_c: 24.5,
            },
            fill: Composition::PURE,
            refill: Composition::PURE,
            top_up: TopUp::None,
            parameters: ParameterSet::default(),
            seed_level: 1.0,
            dry_days: 0.0,
            stands: vec![stand("stems", Group::Stems), stand("front", Group::Carpet)],
            light: vec![],
            gas: GasPlan::Rate {
                lines: vec![gas],
                cut_off_mg_per_l: None,
            },
            air: vec![],
            power_cuts: vec![],
            unfed: vec![],
            events: self.events(),
        }
    }

    fn events(&self) -> Vec<Event> {
        let mut events: Vec<Event> = (1..=self.last_day + 4)
            .map(|day| Event {
                minute: day * DAY + CHANGE_MINUTE,
                name: "changes.daily".into(),
                kind: EventKind::Change { share: 0.5 },
            })
            .collect();
        if let Some((day, feed_g_per_day)) = self.stocked {
            events.push(Event {
                minute: day * DAY + CHANGE_MINUTE,
                name: "stock.first".into(),
                kind: EventKind::Stock(Animals {
                    mass_g: 6.0,
                    feed_g_per_day,
                    protein_frac: 0.4,
                    shrimp: false,
                }),
            });
        }
        events
    }

    /// The finished run.
    pub fn run(&self) -> RunResult {
        let mut readings = Vec::new();
        for minute in (0..=(self.last_day + 5) * DAY).step_by(30) {
            if minute % DAY == CHANGE_MINUTE && minute >= DAY {
                readings.push(self.reading(minute, Side::Before));
                readings.push(self.reading(minute, Side::After));
            } else if minute % HOUR == 0 {
                readings.push(self.reading(minute, Side::Plain));
            }
        }
        RunResult {
            input: self.input(),
            events: self.records(),
            tallies: vec![Tally {
                minute: 0,
                side: Side::Plain,
                crossed: [[0.0; QUANTITIES.len()]; FLUXES.len()],
                alkalinity_meq: vec![],
                tan_mg_n: vec![],
            }],
            processes: vec![],
            tunings: vec![],
            ledger: Ledger {
                accounts: QUANTITIES
                    .iter()
                    .map(|&quantity| Account {
                        quantity,
                        start: 10.0,
                        crossed: [0.0; FLUXES.len()],
                        now: 10.0,
                    })
                    .collect(),
            },
            notices: vec![],
            work: Work {
                steps: 2_688,
                parts: 2_688,
                evaluations: 10_752,
                held_back: 0,
            },
            close_ups: vec![],
            readings,
        }
    }

    fn records(&self) -> Vec<EventRecord> {
        self.events()
            .iter()
            .filter(|event| event.kind.is_change())
            .map(|event| EventRecord {
                minute: event.minute,
                name: event.name.clone(),
                what: "50 % of the water changed".into(),
                litres: LITRES_A_CHANGE,
                before: self.reading(event.minute, Side::Before),
                after: self.reading(event.minute, Side::After),
            })
            .collect()
    }

    /// The tank at one instant.
    pub fn reading(&self, minute: u32, side: Side) -> Reading {
        let hour = TimeOfDay::of(minute).hours();
        let since_change = (minute + DAY - CHANGE_MINUTE) % DAY;
        let grown = if side == Side::Before {
            1.0
        } else {
            f64::from(since_change) / f64::from(DAY)
        };
        let dirty = minute < self.clean_from_day * DAY;
        let nitrogen = if dirty {
            TAN_BEFORE_A_CHANGE / 2.0 * (1.0 + grown)
        } else {
            0.01
        };
        let capacity = if minute < self.able_from_day * DAY {
            1.0
        } else {
            CAPACITY_MG_N_PER_DAY
        };
        let gas_on = (10.0..10.0 + f64::from(GAS_HOURS)).contains(&hour);
        Reading {
            tan_mg_n_per_l: nitrogen,
            free_ammonia_mg_n_per_l: nitrogen / 1000.0,
            nitrite_mg_n_per_l: nitrogen / 2.0,
            nitrate_mg_n_per_l: 3.0,
            oxygen_mg_per_l: if hour == 6.0 { OXYGEN_LOW } else { 8.0 },
            co2_mg_per_l: if gas_on { 28.0 } else { 6.0 },
            gas_mg_per_h: if gas_on { GAS_MG_PER_H } else { 0.0 },
            gas_used_g: gas_used_g(minute),
            ph: if side == Side::After { 7.4 } else { 6.7 },
            ammonia_capacity_mg_n_per_day: capacity,
            nitrite_capacity_mg_n_per_day: capacity,
            ..plain_reading(minute, side)
        }
    }
}

/// Gas used up since midnight of day 0, g.
fn gas_used_g(minute: u32) -> f64 {
    let today = (TimeOfDay::of(minute).hours() - 10.0).clamp(0.0, f64::from(GAS_HOURS));
    let hours = f64::from(minute / DAY * GAS_HOURS) + today;
    hours * GAS_MG_PER_H / 1000.0
}

fn plain_reading(minute: u32, side: Side) -> Reading {
    Reading {
        minute,
        side,
        tan_mg_n_per_l: 0.0,
        free_ammonia_mg_n_per_l: 0.0,
        nitrite_mg_n_per_l: 0.0,
        nitrous_acid_mg_n_per_l: 0.0001,
        nitrate_mg_n_per_l: 0.0,
        phosphate_mg_p_per_l: 0.1,
        potassium_mg_per_l: 5.0,
        iron_mg_per_l: 0.05,
        oxygen_mg_per_l: 8.0,
        oxygen_saturation_percent: 96.0,
        co2_mg_per_l: 6.0,
        indicator_co2_mg_per_l: 10.0,
        ph: 6.9,
        alkalinity_meq_per_l: 1.0,
        inorganic_carbon_mmol_per_l: 1.2,
        hardness_meq_per_l: 2.9,
        chloride_mg_per_l: 20.0,
        chlorine_mg_cl2_per_l: 0.0,
        chloramine_mg_cl2_per_l: 0.0,
        volume_l: VOLUME_L,
        temperature_c: 24.5,
        light_umol_per_m2_s: 0.0,
        gas_mg_per_h: 0.0,
        gas_used_g: 0.0,
        air_l_per_min: 0.0,
        ammonia_oxidisers_mg_cod: 3.0,
        nitrite_oxidisers_mg_cod: 1.0,
        complete_oxidisers_mg_cod: 0.5,
        ammonia_capacity_mg_n_per_day: 0.0,
        nitrite_capacity_mg_n_per_day: 0.0,
        nitrite_oxidiser_speed_frac: 0.5,
        soil_ammonium_mg_n: 600.0,
        soil_organic_n_mg: 1500.0,
        soil_phosphorus_mg_p: 150.0,
        soil_acid_meq: 400.0,
        pore_water_ammonium_mg_n_per_l: 8.0,
        detritus_g: 1.0,
        detritus_mg_n: 30.0,
        algae_g_per_m2: 0.1,
        algae_mg_n: 2.0,
        plants_g: 5.0,
        plants_mg_n: 150.0,
        stands_g: [2.5; MAX_STANDS],
        canopy_frac: 0.4,
    }
}

fn stand(name: &str, group: Group) -> StandPlan {
    StandPlan {
        name: name.into(),
        group,
        cover_frac: 0.3,
        density_g_per_m2: 30.0,
        melt_frac: 0.25,
        acclimates: true,
        uses_bicarbonate: false,
        planted_at: 0,
    }
}

fn resolved(path: &str, value: &str, set_by: SetBy) -> Resolved {
    Resolved {
        path: path.into(),
        value: value.into(),
        set_by,
    }
}
