//! Looking, pausing, putting aside and going on.

use firstfill::base::clock::DAY;
use firstfill::engine::close_ups::CloseUps;
use firstfill::engine::input::ModelInput;
use firstfill::engine::plan::Plan;
use firstfill::engine::recorder::Recorder;
use firstfill::engine::saved::{OfAnotherPlan, SavedRun};
use firstfill::engine::simulation::Simulation;
use firstfill::engine::valve::Valves;

use crate::support::diary;
use crate::support::drive::{Left, Nobody, go_on, left_by};
use crate::support::planted_tank::Draws;
use crate::support::random_tank;
use crate::support::reference;

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

/// Stops a run at some minutes, puts it into a text each time, and goes on from the text alone.
fn with_pauses(input: &ModelInput, stops: &[u32]) -> Left {
    let plan = Plan::new(input);
    let (mut tank, mut valves) = (Simulation::filled(&plan), Valves::new(&plan));
    while tank.minute < input.end_minute() {
        let day = tank.minute / DAY;
        tank.keeping.gas = valves.set_for(day, &tank).unwrap();
        for &stop in stops
            .iter()
            .filter(|&&stop| stop / DAY == day && stop > day * DAY)
        {
            if stop <= tank.minute {
                continue;
            }
            tank.advance(stop, &mut Nobody).unwrap();
            let text = serde_json::to_string(&SavedRun::of(&tank, &valves)).unwrap();
            let saved: SavedRun = serde_json::from_str(&text).unwrap();
            (tank, valves) = saved.resume(&plan).unwrap();
        }
        tank.advance((day + 1) * DAY, &mut Nobody).unwrap();
        // and at midnight, before the valve is set for the day
        (tank, valves) = SavedRun::of(&tank, &valves).resume(&plan).unwrap();
    }
    Left::by(&tank)
}

#[test]
fn a_run_put_aside_as_text_goes_on_with_the_same_bits_from_any_step() {
    let mut draws = Draws(5);
    let mut inputs: Vec<ModelInput> = (0..60).map(|number| random_tank::tank(number, 4)).collect();
    inputs.push(diary::input("held_at_30"));
    for (number, input) in inputs.iter().enumerate() {
        let steps = input.end_minute() / input.step_minutes;
        let mut stops: Vec<u32> = (0..12)
            .map(|_| draws.between(0.0, f64::from(steps)) as u32 * input.step_minutes)
            .collect();
        // and at events, which are still to come when the run goes on
        stops.extend(input.events.iter().map(|event| event.minute));
        stops.sort_unstable();
        assert!(
            with_pauses(input, &stops) == left_by(input),
            "tank {number}"
        );
    }
}

#[test]
fn a_saved_run_does_not_go_on_with_a_plan_of_other_processes() {
    let plan = Plan::new(&reference::input("base"));
    let other = Plan::new(&reference::input("bare_std"));
    let (tank, valves) = (Simulation::filled(&plan), Valves::new(&plan));
    let saved = SavedRun::of(&tank, &valves);
    assert!(saved.resume(&plan).is_ok());
    assert_eq!(saved.resume(&other).map(|_| ()).unwrap_err(), OfAnotherPlan);
}
