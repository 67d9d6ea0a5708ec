//! Size: a tank twice as large in everything has the same concentrations.

use firstfill::base::clock::DAY;
use firstfill::engine::event::EventKind;
use firstfill::engine::input::{GasPlan, ModelInput};
use firstfill::engine::run::run;

use crate::support::random_tank;
use crate::support::step_error::CHARTED;

/// Everything that is an amount, an area or a flow, twice.
fn doubled(mut input: ModelInput) -> ModelInput {
    let tank = &mut input.tank;
    for size in [
        &mut tank.volume_l,
        &mut tank.surface_m2,
        &mut tank.bed_m2,
        &mut tank.wall_m2,
        &mut tank.soil_l,
    ] {
        *size *= 2.0;
    }
    input.air.iter_mut().for_each(|line| line.value *= 2.0);
    input
        .power_cuts
        .iter_mut()
        .for_each(|cut| cut.battery_air_l_per_min *= 2.0);
    if let GasPlan::Rate { lines, .. } = &mut input.gas {
        lines.iter_mut().for_each(|line| line.value *= 2.0);
    }
    for event in &mut input.events {
        match &mut event.kind {
            EventKind::Seed { mg_cod } => mg_cod.iter_mut().for_each(|amount| *amount *= 2.0),
            EventKind::Stock(animals) => {
                animals.mass_g *= 2.0;
                animals.feed_g_per_day *= 2.0;
            }
            EventKind::Uneaten { feed_g, .. } => *feed_g *= 2.0,
            _ => {}
        }
    }
    input
}

/// Whether a charted quantity is an amount of the whole tank and not a concentration.
fn is_of_the_whole_tank(name: &str) -> bool {
    name.starts_with("nitrogen in") || name.ends_with("capacity")
}

/// To the bit, since doubling changes no digit of a number.
#[test]
fn a_tank_twice_as_large_in_everything_has_the_same_concentrations() {
    let mut checked = 0;
    for number in 0..100 {
        let input = random_tank::tank(number, 3);
        if matches!(input.gas, GasPlan::Hold { .. }) {
            continue; // the search for a setting ends at a fixed number of mg/h
        }
        let (one, two) = (run(&input).unwrap(), run(&doubled(input)).unwrap());
        for (a, b) in one.readings.iter().zip(&two.readings) {
            for (name, value) in CHARTED {
                let factor = if is_of_the_whole_tank(name) { 2.0 } else { 1.0 };
                let same = (factor * value(a)).to_bits() == value(b).to_bits();
                let day = f64::from(a.minute) / f64::from(DAY);
                assert!(
                    same,
                    "tank {number}, {name} on day {day:.2}: {} {}",
                    value(a),
                    value(b)
                );
            }
        }
        checked += 1;
    }
    assert!(checked > 80);
}
