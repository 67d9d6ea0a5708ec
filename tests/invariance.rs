//! What must not matter: order of the list, hour of filling, recording, a pause.
//!
//! Where a run must be the same it must be the same to the last bit.

mod support;

use firstfill::base::clock::{DAY, HOUR};
use firstfill::engine::close_ups::CloseUps;
use firstfill::engine::event::{Dose, Event, EventKind};
use firstfill::engine::plan::Plan;
use firstfill::engine::recorder::Recorder;
use firstfill::engine::result::{Reading, RunResult};
use firstfill::engine::run::run;
use firstfill::engine::simulation::Simulation;
use support::drive::{Left, Nobody, go_on, left_by};
use support::planted_tank::Draws;
use support::reference;

#[test]
fn the_order_of_events_in_the_list_does_not_matter() {
    let mut input = reference::input("base_fish");
    // three things in one instant, with names as a scenario gives them: each its own
    let here = 10 * DAY + 9 * HOUR;
    let nitrate = Dose {
        nitrate_mg_n_per_l: 1.0,
        ..Dose::default()
    };
    for (name, kind) in [
        ("doses.extra", EventKind::Dose(nitrate)),
        ("changes.extra", EventKind::Change { share: 0.3 }),
        ("care.siphon", EventKind::Siphon { share: 0.5 }),
    ] {
        input.events.push(Event {
            minute: here,
            name: name.into(),
            kind,
        });
    }
    let in_order = left_by(&input);
    let mut shuffled = input.clone();
    let mut draws = Draws(7);
    for last in (1..shuffled.events.len()).rev() {
        let other = draws.between(0.0, last as f64 + 1.0) as usize;
        shuffled.events.swap(last, other);
    }
    assert_ne!(shuffled.events, input.events);
    assert!(left_by(&shuffled) == in_order, "the same bits");
    // and the order in an instant does matter, so it must be fixed: a dose before the change is less
    let mut swapped = input.clone();
    swapped.events.retain(|event| event.name != "doses.extra");
    assert!(left_by(&swapped) != in_order);
}

/// What is compared: name and reading.
type Compared = (&'static str, fn(&Reading) -> f64);

const VALUES: [Compared; 4] = [
    ("TAN", |r| r.tan_mg_n_per_l),
    ("nitrite", |r| r.nitrite_mg_n_per_l),
    ("oxygen", |r| r.oxygen_mg_per_l),
    ("pH", |r| r.ph),
];

#[test]
fn a_tank_without_timers_does_not_care_at_which_hour_it_is_filled() {
    let at_midnight = reference::input("bare_no_change");
    let mut at_ten = at_midnight.clone();
    at_ten.filled_at = 10 * HOUR;
    let (first, second) = (run(&at_midnight).unwrap(), run(&at_ten).unwrap());
    assert_eq!(second.readings[0].minute, 10 * HOUR);
    assert_eq!(second.readings.last().unwrap().minute, 56 * DAY);
    let of_age = |result: &RunResult, minute: u32| {
        *result.readings.iter().find(|r| r.minute == minute).unwrap()
    };
    for age in [HOUR, 3 * DAY, 20 * DAY, 55 * DAY] {
        let (a, b) = (of_age(&first, age), of_age(&second, 10 * HOUR + age));
        for (quantity, value) in VALUES {
            assert_eq!(
                value(&a).to_bits(),
                value(&b).to_bits(),
                "{quantity} at age {age}"
            );
        }
    }
}

#[test]
fn a_planted_tank_filled_in_the_morning_runs_and_keeps_its_timers() {
    let mut input = reference::input("base");
    input.filled_at = 9 * HOUR + 37;
    for stand in &mut input.stands {
        stand.planted_at = input.filled_at;
    }
    for event in &mut input.events {
        event.minute = event.minute.max(input.filled_at);
    }
    let result = run(&input).unwrap();
    assert_eq!(result.readings[0].minute, input.filled_at);
    // steps end on the clock's own grid, and the lamp goes on at ten
    let second = result.readings.iter().find(|r| r.minute > input.filled_at);
    assert_eq!(second.unwrap().minute % 30, 0);
    let lit = result.readings.iter().find(|r| r.light_umol_per_m2_s > 0.0);
    assert_eq!(lit.unwrap().minute, 10 * HOUR);
    assert!(result.ledger.worst() < 1e-9);
}

#[test]
fn looking_inside_steps_does_not_change_the_run() {
    let input = reference::input("base_power_cut");
    let plan = Plan::new(&input);
    let recorded = |closely: CloseUps| {
        let mut tank = Simulation::filled(&plan);
        let mut recorder = Recorder::new(&plan, closely);
        go_on(&mut tank, 56, &mut recorder).unwrap();
        (Left::by(&tank), recorder)
    };
    let (far, from_afar) = recorded(CloseUps::none());
    let (near, closely) = recorded(CloseUps::none().throughout(5));
    assert!(far == near && far == left_by(&input), "the same bits");
    assert!(from_afar.close_ups.is_empty());
    assert!(closely.close_ups.len() > 5 * closely.readings.len() / 2);
    assert_eq!(
        format!("{:?}", from_afar.readings),
        format!("{:?}", closely.readings)
    );
}

#[test]
fn a_copy_of_a_tank_under_way_goes_on_with_the_same_bits() {
    let input = reference::input("base_night_air");
    let plan = Plan::new(&input);
    let mut tank = Simulation::filled(&plan);
    go_on(&mut tank, 20, &mut Nobody).unwrap();
    let mut copy = tank.clone();
    go_on(&mut tank, 56, &mut Nobody).unwrap();
    // the copy is put aside in between, and looked at
    let mut looks = Recorder::new(&plan, CloseUps::none().throughout(5));
    copy.show(&mut looks);
    go_on(&mut copy, 56, &mut looks).unwrap();
    assert!(Left::by(&tank) == Left::by(&copy));
    assert!(Left::by(&copy) == left_by(&input));
}
