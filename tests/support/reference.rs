//! Reads `tests/reference/runs.json` into engine inputs.

use firstfill::base::clock::{DAY, TimeOfDay, Window};
use firstfill::base::units::MEQ_PER_DKH;
use firstfill::chemistry::still_water::StillWater;
use firstfill::engine::event::{Animals, Dose, Event, EventKind};
use firstfill::engine::input::{GasPlan, Heating, ModelInput, PowerCut, Room, TimerLine, TopUp};
use firstfill::model::composition::Composition;
use firstfill::model::group::{GROUPS, Group};
use firstfill::model::parameter_set::ParameterSet;
use firstfill::model::setup::{StandPlan, Tank};
use serde_json::Value;

/// Names of the runs, in the order of the file.
pub fn names() -> Vec<String> {
    runs().as_object().unwrap().keys().cloned().collect()
}

fn runs() -> Value {
    serde_json::from_str(include_str!("../reference/runs.json")).unwrap()
}

/// The input of a reference run.
pub fn input(name: &str) -> ModelInput {
    let runs = runs();
    let run = &runs[name]["scenario"];
    let number = |section: &str, key: &str| run[section][key].as_f64().unwrap();
    let mut parameters = ParameterSet::default();
    for (id, value) in run["params"].as_object().unwrap() {
        parameters = parameters.with(id, value.as_f64().unwrap());
    }
    if run["surface"] == "still" {
        parameters = parameters.with("k_600", 0.3);
    }
    parameters = parameters
        .with("lid", number("room", "lid"))
        .with("co2_room", number("room", "co2_ppm"));
    let eta = parameters.get("eta_CO2");
    let water = tap(run);
    let stands = stands(run, &parameters);
    let gas = lines(&run["co2"], 1.0 / eta);
    ModelInput {
        filled_at: 0,
        last_day: run["days"].as_f64().unwrap() as u32 - 1,
        lookahead_days: 0,
        step_minutes: 60,
        tank: Tank {
            volume_l: number("tank", "V"),
            surface_m2: number("tank", "A"),
            bed_m2: number("tank", "A"),
            wall_m2: number("tank", "wall"),
            soil_l: number("tank", "soil_L"),
            film_m2: None,
            altitude_m: 0.0,
        },
        room: Room {
            temperature_c: number("room", "T"),
            humidity_frac: number("room", "RH"),
        },
        heating: Heating {
            set_c: Some(number("heater", "T")),
            start_c: number("heater", "T"),
        },
        fill: water,
        refill: water,
        top_up: TopUp::Automatic(Composition::PURE),
        parameters,
        seed_level: run["seed_level"].as_f64().unwrap(),
        dry_days: run["dry_days"].as_f64().unwrap(),
        light: lines(&run["light"], 1.0),
        gas: if gas.iter().all(|line| line.value == 0.0) {
            GasPlan::None
        } else {
            GasPlan::Rate {
                lines: gas,
                cut_off_mg_per_l: None,
            }
        },
        air: lines(&run["air"], 1.0),
        power_cuts: power_cuts(run),
        unfed: Vec::new(),
        events: events(run, &stands),
        stands,
    }
}

fn array(value: &Value) -> &[Value] {
    value.as_array().map_or(&[], Vec::as_slice)
}

fn minute(days: &Value) -> u32 {
    (days.as_f64().unwrap() * f64::from(DAY)).round() as u32
}

fn tap(run: &Value) -> Composition {
    let tap = |key: &str| run["tap"][key].as_f64().unwrap();
    let water = Composition {
        tan_mg_n_per_l: tap("TAN"),
        nitrate_mg_n_per_l: tap("NO3"),
        phosphate_mg_p_per_l: tap("PO4"),
        potassium_mg_per_l: tap("K"),
        iron_mg_per_l: tap("Fe"),
        oxygen_mg_per_l: tap("O2"),
        alkalinity_meq_per_l: MEQ_PER_DKH * tap("KH"),
        hardness_meq_per_l: MEQ_PER_DKH * tap("GH"),
        chloride_mg_per_l: tap("Cl"),
        chlorine_mg_cl2_per_l: tap("chlorine"),
        chloramine_mg_cl2_per_l: tap("chloramine"),
        temperature_c: tap("T"),
        ..Composition::PURE
    };
    let still = StillWater {
        t_c: water.temperature_c,
        ionic_strength_mol_per_l: water.ionic_strength_mol_per_l(),
        alkalinity_meq_per_l: water.alkalinity_meq_per_l,
    };
    let carbon = still.carbon_at_co2(tap("CO2"));
    Composition {
        inorganic_carbon_mmol_per_l: carbon,
        ..water
    }
    .dechlorinated()
}

fn lines(table: &Value, factor: f64) -> Vec<TimerLine> {
    let time = |hours: &Value| TimeOfDay((hours.as_f64().unwrap() * 60.0).round() as u32);
    let line = |row: &Value| TimerLine {
        from_day: row[0].as_f64().unwrap() as u32,
        window: Window {
            on: time(&row[1]),
            off: time(&row[2]),
        },
        value: row[3].as_f64().unwrap() * factor,
    };
    array(table).iter().map(line).collect()
}

fn group(word: &str) -> Group {
    GROUPS
        .into_iter()
        .find(|group| group.word() == word)
        .unwrap()
}

fn stands(run: &Value, parameters: &ParameterSet) -> Vec<StandPlan> {
    let stand = |row: &Value| {
        let group = group(row[1].as_str().unwrap());
        let emersed = row[4].as_f64().unwrap() > 0.0;
        StandPlan {
            name: group.word().into(),
            group,
            cover_frac: row[2].as_f64().unwrap(),
            density_g_per_m2: row[3].as_f64().unwrap(),
            melt_frac: if emersed {
                parameters.get(&group.id("melt"))
            } else {
                0.0
            },
            acclimates: emersed,
            uses_bicarbonate: false,
            planted_at: minute(&row[0]),
        }
    };
    array(&run["plants"]).iter().map(stand).collect()
}

fn power_cuts(run: &Value) -> Vec<PowerCut> {
    let cut = |row: &Value| PowerCut {
        from: minute(&row[0]),
        until: minute(&row[1]),
        battery_air_l_per_min: 0.0,
    };
    array(&run["power"]).iter().map(cut).collect()
}

fn events(run: &Value, stands: &[StandPlan]) -> Vec<Event> {
    let mut events = Vec::new();
    let mut push = |minute: u32, name: &str, kind: EventKind| {
        events.push(Event {
            minute,
            name: name.into(),
            kind,
        })
    };
    for row in array(&run["change"]) {
        push(
            minute(&row[0]),
            "change",
            EventKind::Change {
                share: row[1].as_f64().unwrap(),
            },
        );
    }
    for row in array(&run["dose"]) {
        let dose = |key: &str| row[1][key].as_f64().unwrap_or(0.0);
        let dose = Dose {
            potassium_mg_per_l: dose("K"),
            iron_mg_per_l: dose("Fe"),
            ..Dose::default()
        };
        push(minute(&row[0]), "dose", EventKind::Dose(dose));
    }
    for row in array(&run["stock"]) {
        let value = |at: usize| row[at].as_f64().unwrap();
        let animals = Animals {
            mass_g: value(1),
            feed_g_per_day: value(2),
            protein_frac: value(3),
            shrimp: false,
        };
        push(minute(&row[0]), "stock", EventKind::Stock(animals));
    }
    for (stand, plan) in stands.iter().enumerate() {
        push(plan.planted_at, &plan.name, EventKind::Plant { stand });
    }
    events
}
