//! Tanks drawn at random: every parameter inside its declared range, hardware and plan inside what a
//! scenario may say and a shop may sell. A file of its own, also for `#[path]` from an example.
//!
//! Tank number *n* is always the same tank: each has its own stream of numbers, so that no tank
//! hangs on how many were drawn before it.

use firstfill::base::clock::{DAY, HOUR, TimeOfDay, Window};
use firstfill::base::maths::pow;
use firstfill::base::units::MEQ_PER_DKH;
use firstfill::chemistry::still_water::StillWater;
use firstfill::engine::event::{Animals, Dose, Event, EventKind};
use firstfill::engine::input::{
    GasHours, GasPlan, Heating, ModelInput, PowerCut, Room, TimerLine, TopUp,
};
use firstfill::model::composition::Composition;
use firstfill::model::group::GROUPS;
use firstfill::model::parameter_set::ParameterSet;
use firstfill::model::parameters;
use firstfill::model::pool::MAX_STANDS;
use firstfill::model::setup::{StandPlan, Tank};
use rand::rngs::ChaCha8Rng;
use rand::{RngExt, SeedableRng};

/// Steps of the engine, minutes: those of a scenario.
pub const STEP_MINUTES: u32 = 60;
/// What belongs to the stepping and not to the tank: left as it is.
const OF_THE_STEP: [&str; 1] = ["dt_stiff"];
/// From this ratio of its ends on, a range is drawn evenly in decades.
const WIDE: f64 = 20.0;

/// A tank of so many days (the last one included), by its number.
pub fn tank(number: u64, days: u32) -> ModelInput {
    let mut lot = Lot::new(number);
    let parameters = parameters(number);
    let size = lot.size();
    let filled_at = lot.minute(20 * HOUR);
    let water = lot.water();
    let refill = if lot.tosses(0.7) { water } else { lot.water() };
    let stands = lot.stands(&parameters, filled_at, days);
    let warm = lot.between(18.0, 29.0);
    let mut input = ModelInput {
        filled_at,
        last_day: days - 1,
        lookahead_days: 0,
        step_minutes: STEP_MINUTES,
        tank: size,
        room: Room {
            temperature_c: lot.between(15.0, 30.0),
            humidity_frac: lot.between(0.2, 0.9),
        },
        heating: Heating {
            set_c: lot.tosses(0.8).then_some(warm),
            start_c: if lot.tosses(0.7) {
                warm
            } else {
                lot.between(8.0, 30.0)
            },
        },
        fill: water,
        refill,
        top_up: match lot.tosses(0.7) {
            true => TopUp::Automatic(if lot.tosses(0.7) {
                Composition::PURE
            } else {
                water
            }),
            false => TopUp::None,
        },
        parameters,
        // the ranges of XA0, XN0 and XK0 span all seedings
        seed_level: 1.0,
        dry_days: if lot.tosses(0.15) {
            lot.between(1.0, 40.0)
        } else {
            0.0
        },
        light: lot.sometimes(0.85, |lot| lot.lamp()),
        gas: GasPlan::None,
        air: lot.sometimes(0.4, |lot| lot.stone()),
        power_cuts: lot.sometimes(0.15, |lot| lot.cut(filled_at, days)),
        unfed: lot.sometimes(0.1, |lot| (lot.below(days), days)),
        events: Vec::new(),
        stands,
    };
    input.gas = lot.gas(&input);
    input.events = lot.events(&input);
    input
}

/// A value for every parameter. Each has its own stream, so that a parameter which comes or goes leaves
/// the others, and the tank, as they were.
fn parameters(number: u64) -> ParameterSet {
    let mut set = ParameterSet::default();
    for spec in parameters::all() {
        if OF_THE_STEP.contains(&spec.id) {
            continue;
        }
        let mut lot = Lot::new(number ^ fnv1a(spec.id));
        let wide = spec.low > 0.0 && spec.high / spec.low > WIDE;
        let value = if wide {
            lot.decades(spec.low, spec.high)
        } else {
            lot.between(spec.low, spec.high)
        };
        set = set.with(spec.id, value);
    }
    set
}

/// The hash of Fowler, Noll and Vo (FNV-1a, 64 bits): the same for ever, unlike that of a library.
fn fnv1a(text: &str) -> u64 {
    text.bytes().fold(0xCBF2_9CE4_8422_2325, |hash, byte| {
        (hash ^ u64::from(byte)).wrapping_mul(0x0000_0100_0000_01B3)
    })
}

/// A stream of numbers.
pub struct Lot(ChaCha8Rng);

impl Lot {
    /// The stream of a tank.
    pub fn new(number: u64) -> Lot {
        Lot(ChaCha8Rng::seed_from_u64(number))
    }
    /// Evenly between two numbers.
    pub fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.0.random::<f64>()
    }
    /// Between two numbers, each decade alike.
    pub fn decades(&mut self, low: f64, high: f64) -> f64 {
        low * pow(high / low, self.between(0.0, 1.0))
    }
    /// Yes with this chance.
    pub fn tosses(&mut self, chance: f64) -> bool {
        self.between(0.0, 1.0) < chance
    }
    /// A whole number below another.
    pub fn below(&mut self, end: u32) -> u32 {
        self.0.random_range(0..end.max(1))
    }
    fn minute(&mut self, before: u32) -> u32 {
        if self.tosses(0.5) {
            self.below(before)
        } else {
            self.below(before / HOUR) * HOUR
        }
    }
    fn sometimes<T>(&mut self, chance: f64, make: impl FnOnce(&mut Lot) -> T) -> Vec<T> {
        if self.tosses(chance) {
            vec![make(self)]
        } else {
            Vec::new()
        }
    }

    fn size(&mut self) -> Tank {
        let (long, wide, deep) = (
            self.between(0.25, 1.5),
            self.between(0.2, 0.6),
            self.between(0.15, 0.6),
        );
        let bed = long * wide;
        let soil = if self.tosses(0.8) {
            self.between(0.02, 0.08) * bed * 1000.0
        } else {
            0.0
        };
        Tank {
            volume_l: 1000.0 * bed * deep,
            surface_m2: bed,
            bed_m2: bed,
            wall_m2: bed + 2.0 * deep * (long + wide),
            soil_l: soil,
            film_m2: None,
            altitude_m: if self.tosses(0.5) {
                0.0
            } else {
                self.between(0.0, 2500.0)
            },
        }
    }

    /// Something in a share of tanks, nothing in the others.
    fn perhaps(&mut self, share: f64, low: f64, high: f64) -> f64 {
        if self.tosses(share) {
            self.between(low, high)
        } else {
            0.0
        }
    }

    fn water(&mut self) -> Composition {
        let alkalinity = MEQ_PER_DKH * self.decades(0.3, 15.0);
        let water = Composition {
            tan_mg_n_per_l: self.perhaps(0.2, 0.0, 0.5),
            nitrite_mg_n_per_l: self.perhaps(0.1, 0.0, 0.1),
            nitrate_mg_n_per_l: self.between(0.0, 11.0),
            phosphate_mg_p_per_l: self.between(0.0, 0.7),
            potassium_mg_per_l: self.between(0.0, 10.0),
            iron_mg_per_l: self.perhaps(0.3, 0.0, 0.1),
            oxygen_mg_per_l: self.between(3.0, 11.0),
            alkalinity_meq_per_l: alkalinity,
            hardness_meq_per_l: MEQ_PER_DKH * self.between(0.0, 20.0),
            chloride_mg_per_l: self.between(0.0, 80.0),
            chlorine_mg_cl2_per_l: self.between(0.0, 0.6),
            chloramine_mg_cl2_per_l: self.perhaps(0.3, 0.0, 2.0),
            temperature_c: self.between(8.0, 28.0),
            ..Composition::PURE
        };
        let still = StillWater {
            t_c: water.temperature_c,
            ionic_strength_mol_per_l: water.ionic_strength_mol_per_l(),
            alkalinity_meq_per_l: alkalinity,
        };
        let carbon = still.carbon_at_co2(self.decades(0.5, 40.0));
        let water = Composition {
            inorganic_carbon_mmol_per_l: carbon,
            ..water
        };
        if self.tosses(0.8) {
            water.dechlorinated()
        } else {
            water
        }
    }

    fn stands(&mut self, parameters: &ParameterSet, filled_at: u32, days: u32) -> Vec<StandPlan> {
        let count = if self.tosses(0.8) {
            1 + self.below(MAX_STANDS as u32)
        } else {
            0
        };
        let covers: Vec<f64> = (0..count).map(|_| self.between(0.02, 0.5)).collect();
        let most = covers.iter().sum::<f64>().max(1.0);
        let stand = |(place, cover): (usize, &f64)| {
            let group = GROUPS[self.below(GROUPS.len() as u32) as usize];
            let emersed = self.tosses(0.6);
            let melt = if emersed {
                parameters.get(&group.id("melt"))
            } else {
                0.0
            };
            let late = self.tosses(0.2);
            StandPlan {
                name: format!("{} {place}", group.word()),
                group,
                cover_frac: cover / most,
                density_g_per_m2: self.decades(3.0, 150.0),
                melt_frac: melt,
                acclimates: emersed,
                uses_bicarbonate: self.tosses(0.3),
                planted_at: filled_at
                    + if late {
                        self.below((days - 1) * DAY)
                    } else {
                        0
                    },
            }
        };
        covers.iter().enumerate().map(stand).collect()
    }

    fn window(&mut self, from: u32, least: u32, most: u32) -> Window {
        let on = (from + self.minute(6 * HOUR)) % DAY;
        let length = least + self.below(most - least);
        Window {
            on: TimeOfDay(on),
            off: TimeOfDay((on + length) % DAY),
        }
    }

    fn lamp(&mut self) -> TimerLine {
        let window = self.window(7 * HOUR, 5 * HOUR, 12 * HOUR);
        TimerLine {
            from_day: 0,
            window,
            value: self.between(15.0, 200.0),
        }
    }

    fn stone(&mut self) -> TimerLine {
        let window = self.window(18 * HOUR, 2 * HOUR, 20 * HOUR);
        TimerLine {
            from_day: 0,
            window,
            value: self.decades(0.2, 6.0),
        }
    }

    fn cut(&mut self, filled_at: u32, days: u32) -> PowerCut {
        let from = filled_at + 1 + self.below((days - 1) * DAY);
        let until = from + 1 + self.below(DAY);
        let battery = self.perhaps(0.5, 0.1, 1.0);
        PowerCut {
            from,
            until,
            battery_air_l_per_min: battery,
        }
    }

    /// Gas for half of the tanks; a tuned valve, which takes many trials, for few.
    fn gas(&mut self, input: &ModelInput) -> GasPlan {
        let window = self.window(6 * HOUR, 4 * HOUR, 10 * HOUR);
        let value = input.tank.volume_l * self.between(0.5, 10.0);
        let lines = vec![TimerLine {
            from_day: self.below(3),
            window,
            value,
        }];
        match self.between(0.0, 1.0) {
            x if x < 0.5 => GasPlan::None,
            x if x < 0.93 => GasPlan::Rate {
                lines,
                cut_off_mg_per_l: self.tosses(0.3).then(|| self.between(10.0, 40.0)),
            },
            _ => GasPlan::Hold {
                target_mg_per_l: self.between(12.0, 35.0),
                tuned_on: vec![1],
                hours: GasHours::Given(lines),
            },
        }
    }

    fn events(&mut self, input: &ModelInput) -> Vec<Event> {
        let days = input.last_day + 1;
        let mut events = Vec::new();
        let mut add = |minute: u32, kind: EventKind| {
            let minute = minute.max(input.filled_at);
            events.push(Event {
                minute,
                name: format!("event {}", events.len()),
                kind,
            });
        };
        for (stand, plan) in input.stands.iter().enumerate() {
            add(plan.planted_at, EventKind::Plant { stand });
        }
        if self.tosses(0.8) {
            let (every, share) = (1 + self.below(7), self.between(0.1, 0.95));
            let time = self.minute(DAY);
            for day in (1..days).step_by(every as usize) {
                add(day * DAY + time, EventKind::Change { share });
            }
        }
        for _ in 0..self.below(6) {
            let minute = self.below(days * DAY);
            add(minute, self.deed(input));
        }
        if self.tosses(0.3) {
            let minute = self.below(days * DAY);
            add(minute, EventKind::Stock(self.animals(input.tank.volume_l)));
        }
        events
    }

    /// Something a keeper might do on any day.
    fn deed(&mut self, input: &ModelInput) -> EventKind {
        let share = self.between(0.05, 1.0);
        match self.below(7) {
            0 => EventKind::Trim { stand: None, share },
            1 => EventKind::Siphon { share },
            2 => EventKind::Wipe { share },
            3 => EventKind::CleanFilter { share },
            4 => EventKind::Dose(self.dose()),
            5 => EventKind::Seed {
                mg_cod: [5.0, 2.0, 5.0].map(|most| share * most),
            },
            _ => EventKind::Uneaten {
                feed_g: share * 0.01 * input.tank.volume_l,
                protein_frac: self.between(0.25, 0.6),
            },
        }
    }

    fn dose(&mut self) -> Dose {
        Dose {
            ammonium_mg_n_per_l: self.perhaps(0.3, 0.0, 2.0),
            ammonia_mg_n_per_l: self.perhaps(0.3, 0.0, 2.0),
            nitrate_mg_n_per_l: self.between(0.0, 3.0),
            phosphate_mg_p_per_l: self.between(0.0, 0.5),
            potassium_mg_per_l: self.between(0.0, 10.0),
            iron_mg_per_l: self.between(0.0, 0.2),
            bicarbonate_meq_per_l: self.between(0.0, 1.0),
            hardness_meq_per_l: self.between(0.0, 2.0),
            chloride_mg_per_l: self.between(0.0, 20.0),
        }
    }

    /// Animals of up to 0.3 g a litre (a full community tank), feed as in its range.
    pub fn animals(&mut self, litres: f64) -> Animals {
        let mass_g = litres * self.between(0.01, 0.3);
        Animals {
            mass_g,
            feed_g_per_day: mass_g * self.between(0.01, 0.03),
            protein_frac: self.between(0.25, 0.6),
            shrimp: self.tosses(0.2),
        }
    }
}
