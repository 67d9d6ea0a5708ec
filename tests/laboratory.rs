//! The laboratory does what it says: only what is picked acts, and it acts as in a run.

mod support;

use firstfill::base::clock::{TimeOfDay, Window};
use firstfill::base::units::CO2_G_PER_MOL;
use firstfill::engine::event::{Dose, EventKind};
use firstfill::engine::laboratory::{Laboratory, LaboratoryError};
use firstfill::engine::plan::Plan;
use firstfill::engine::simulation::Simulation;
use firstfill::model::group::GROUPS;
use firstfill::model::pool::{DISSOLVED, Pool};
use firstfill::model::processes::IDS;
use firstfill::model::setup::{StandPlan, Tank};
use support::bottle::limited_by_ammonia_alone;
use support::drive::{Nobody, go_on};
use support::reference;

const TEN_TO_TWO: Window = Window {
    on: TimeOfDay::at(10, 0),
    off: TimeOfDay::at(14, 0),
};

#[test]
fn with_all_processes_picked_a_test_has_the_bits_of_a_run() {
    let mut input = reference::input("bare_no_change");
    input.tank.soil_l = 0.0;
    input.events.clear();
    input.heating.set_c = None;
    input.heating.start_c = input.room.temperature_c;
    input.room.humidity_frac = 0.5;
    input.fill.temperature_c = input.heating.start_c;
    input.refill = input.fill;
    input.top_up = firstfill::engine::input::TopUp::Automatic(input.fill);
    let plan = Plan::new(&input);
    let mut tank = Simulation::filled(&plan);
    go_on(&mut tank, 5, &mut Nobody).unwrap();

    let mut laboratory = Laboratory::vessel(input.tank)
        .step_minutes(input.step_minutes)
        .only(IDS)
        .temperature(input.heating.start_c);
    for (spec, value, _) in input.parameters.iter() {
        laboratory = laboratory.parameter(spec.id, value);
    }
    for (pool, per_l) in input.fill.dissolved() {
        laboratory = laboratory.dissolved(pool, per_l);
    }
    let films = [
        Pool::AmmoniaOxidisers,
        Pool::NitriteOxidisers,
        Pool::CompleteOxidisers,
    ];
    let others = [Pool::Algae, Pool::Indicator];
    for pool in films.into_iter().chain(others) {
        laboratory = laboratory.amount(pool, plan.start[pool]);
    }
    let test = laboratory.run(5.0).unwrap();
    assert_eq!(test.last().state, tank.state);
    assert_eq!(test.work, tank.work(0));
    assert_ne!(test.first().state, test.last().state);
}

#[test]
fn what_is_not_picked_does_not_act() {
    let everything = |laboratory: Laboratory| {
        DISSOLVED
            .iter()
            .fold(laboratory, |l, &pool| l.dissolved(pool, 1.0))
            .amount(Pool::AmmoniaOxidisers, 1.0)
            .amount(Pool::FastDetritus, 1.0)
    };
    let nothing = everything(Laboratory::bottle(1.0)).run(1.0).unwrap();
    assert_eq!(nothing.first().state, nothing.last().state);
    let fading = everything(Laboratory::bottle(1.0)).only(&["residual_decay"]);
    let fading = fading.run(1.0).unwrap();
    let moved: Vec<usize> = (0..fading.first().state.0.len())
        .filter(|&at| fading.first().state.0[at] != fading.last().state.0[at])
        .collect();
    let moving = [
        Pool::Tan,
        Pool::Alkalinity,
        Pool::Chlorine,
        Pool::Chloramine,
    ];
    assert_eq!(moved, moving.map(Pool::index));
}

#[test]
fn what_is_held_stays_to_the_bit_while_the_rest_goes_on() {
    let bottle = limited_by_ammonia_alone()
        .only(&["ammonia_oxidation"])
        .dissolved(Pool::Tan, 10.0)
        .amount(Pool::AmmoniaOxidisers, 1.0)
        .hold_ph(7.3);
    let test = bottle.run(2.0).unwrap();
    for pool in [Pool::Oxygen, Pool::Dic, Pool::Alkalinity] {
        let amounts = test.samples().iter().map(|sample| sample.state[pool]);
        assert!(
            amounts
                .into_iter()
                .all(|a| a == test.first().state[pool] && a > 0.0)
        );
    }
    for sample in test.samples() {
        // pH is exact to 1e-12, and so is the carbon it is made from
        assert!(
            (sample.reading.ph - 7.3).abs() < 1e-10,
            "{}",
            sample.reading.ph
        );
    }
    assert!(test.last().state[Pool::Nitrite] > 5.0);
    assert!(test.last().state[Pool::AmmoniaOxidisers] > 1.5);
}

#[test]
fn a_shorter_step_comes_closer() {
    let end = |minutes: u32, finer: u32| {
        let test = limited_by_ammonia_alone()
            .only(&["ammonia_oxidation"])
            .dissolved(Pool::Tan, 10.0)
            .amount(Pool::AmmoniaOxidisers, 1.5)
            .step_minutes(minutes)
            .finer(finer)
            .run(1.0)
            .unwrap();
        test.last().state[Pool::Tan]
    };
    let exact = end(1, 1);
    let off = |tan: f64| (tan - exact).abs();
    // any scheme of second order or better
    assert!(off(end(15, 1)) < 0.3 * off(end(30, 1)));
    assert!(off(end(30, 2)) < 0.3 * off(end(30, 1)));
    assert!(
        off(end(30, 1)) > 1e-9,
        "there is something to come closer to"
    );
}

#[test]
fn gas_and_mains_act_in_their_hours() {
    let bottle = || {
        Laboratory::bottle(2.0)
            .only(&["co2_injection"])
            .parameter("eta_CO2", 1.0)
            .gas(TEN_TO_TWO, CO2_G_PER_MOL)
    };
    // 1 mmol/h for four hours, three of them with power; rounding of a few dozen sums
    let day = bottle().run(1.0).unwrap();
    assert!((day.last().state[Pool::Dic] - 4.0).abs() < 1e-9);
    assert_eq!(day.at(10.0 / 24.0).unwrap().state[Pool::Dic], 0.0);
    let cut = bottle().without_power(11.0 / 24.0, 0.5).run(1.0).unwrap();
    assert!((cut.last().state[Pool::Dic] - 3.0).abs() < 1e-9);
    let always = bottle()
        .gas(Window::ALL_DAY, CO2_G_PER_MOL)
        .run(0.5)
        .unwrap();
    assert!((always.last().state[Pool::Dic] - 12.0).abs() < 1e-9);
}

#[test]
fn doses_and_changes_happen_at_their_minute() {
    let dose = Dose {
        ammonium_mg_n_per_l: 3.0,
        ..Dose::default()
    };
    let test = Laboratory::bottle(2.0)
        .dissolved(Pool::Chloride, 40.0)
        .refilled_with(Pool::Chloride, 10.0)
        .at(0.25, EventKind::Dose(dose))
        .at(0.5, EventKind::Change { share: 0.5 })
        .run(1.0)
        .unwrap();
    assert_eq!(test.at(0.24).unwrap().state[Pool::Tan], 0.0);
    assert_eq!(test.at(0.25).unwrap().state[Pool::Tan], 6.0);
    assert_eq!(test.last().state[Pool::Tan], 3.0, "the refill has none");
    assert_eq!(test.last().reading.chloride_mg_per_l, 25.0);
    let before: Vec<f64> = test.before_events().map(|sample| sample.days).collect();
    assert_eq!(before, [0.25, 0.5]);
}

#[test]
fn plants_make_oxygen_in_the_light_alone() {
    let stand = StandPlan {
        name: "stems".into(),
        group: GROUPS[0],
        cover_frac: 0.5,
        density_g_per_m2: 0.0,
        melt_frac: 0.0,
        acclimates: false,
        uses_bicarbonate: true,
        planted_at: 0,
    };
    let glass = Tank {
        volume_l: 10.0,
        surface_m2: 0.05,
        bed_m2: 0.05,
        wall_m2: 0.0,
        soil_l: 0.0,
        film_m2: None,
        altitude_m: 0.0,
    };
    let test = DISSOLVED
        .iter()
        .filter(|pool| !matches!(pool, Pool::Chlorine | Pool::Chloramine))
        .fold(Laboratory::vessel(glass), |l, &pool| l.dissolved(pool, 2.0))
        .only(&["photosynthesis"])
        .stand(stand)
        .amount(Pool::Biomass(0), 2.0)
        .amount(Pool::TissueN(0), 60.0)
        .light(TEN_TO_TWO, 60.0)
        .run(1.0)
        .unwrap();
    let oxygen = |hour: f64| test.at(hour / 24.0).unwrap().state[Pool::Oxygen];
    assert_eq!(oxygen(0.0), oxygen(10.0));
    assert!(oxygen(14.0) > oxygen(10.0) + 1.0, "{}", oxygen(14.0));
    assert_eq!(oxygen(14.0), oxygen(23.0));
}

/// What a test says that makes no sense.
fn problem(laboratory: Laboratory) -> String {
    laboratory.run(1.0).unwrap_err().to_string()
}

#[test]
fn what_makes_no_sense_is_refused_in_words() {
    let bottle = || Laboratory::bottle(1.0);
    let odd = bottle().only(&["amonia_oxidation"]);
    assert_eq!(
        problem(odd),
        "there is no process \"amonia_oxidation\"; the nearest is \"ammonia_oxidation\""
    );
    let odd = bottle().parameter("mu_AOBB", 1.0);
    assert_eq!(
        problem(odd),
        "there is no parameter \"mu_AOBB\"; the nearest is \"mu_AOB\""
    );
    let odd = bottle().dissolved(Pool::Algae, 1.0);
    assert_eq!(
        problem(odd),
        "Algae is not dissolved: put it in as an amount"
    );
    let odd = bottle().parameter("mu_AOB", -1.0);
    let words = "fastest growth of ammonia oxidisers at 20 °C cannot be -1";
    assert_eq!(problem(odd), words);
    // the first problem is the one that is told
    assert_eq!(
        problem(bottle().parameter("mu_AOB", -1.0).only(&["x"])),
        words
    );
}

#[test]
fn values_out_of_nothing_are_refused() {
    let bottle = || Laboratory::bottle(1.0);
    let nan = f64::NAN;
    for odd in [
        Laboratory::bottle(0.0),
        Laboratory::bottle(nan),
        bottle().dissolved(Pool::Tan, -1.0),
        bottle().dissolved(Pool::Tan, nan),
        bottle().amount(Pool::Algae, f64::INFINITY),
        bottle().refilled_with(Pool::Tan, nan),
        bottle().temperature(nan),
        bottle().hold_ph(nan),
        bottle().hold_ph(12.0),
        bottle().dissolved(Pool::Alkalinity, -1.0).hold_ph(7.0),
        bottle().light(Window::ALL_DAY, -1.0),
        bottle().air(Window::ALL_DAY, nan),
        bottle().gas(Window::ALL_DAY, nan),
        bottle().at(-1.0, EventKind::Change { share: 0.5 }),
        bottle().without_power(0.0, nan),
        bottle().step_minutes(0),
        bottle().finer(0),
    ] {
        let found = odd.run(1.0).unwrap_err();
        assert!(
            matches!(found, LaboratoryError::Impossible { .. }),
            "{found}"
        );
    }
    assert!(bottle().run(0.0).is_err() && bottle().run(nan).is_err());
    assert!(bottle().dissolved(Pool::Alkalinity, -1.0).run(1.0).is_ok());
}
