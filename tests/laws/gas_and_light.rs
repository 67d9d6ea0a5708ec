//! Carbon dioxide, pH and the light.

use firstfill::base::clock::{DAY, HOUR, TimeOfDay, Window};
use firstfill::engine::input::TimerLine;

use super::*;

/// The size of a usual content of carbon dioxide, mg/L.
const MUCH_CO2: f64 = 10.0;

/// In the dark, without nitrifiers: they are slow in sour water, and so spare alkalinity.
fn in_the_dark_with_less_and_more_gas(number: u64) -> [RunResult; 2] {
    let input = without_nitrifiers(in_the_dark(tank(number, 3)));
    let rate = Lot::new(number).between(0.0, 5.0);
    [rate, 1.2 * rate + 0.1].map(|rate| live(&with_gas(input.clone(), rate)))
}

#[test]
fn more_gas_never_raises_ph_in_the_dark() {
    law(100, 90, |number| {
        let [less, more] = in_the_dark_with_less_and_more_gas(number);
        all(side_by_side(&less, &more).map(|(less, more)| at_least(less.ph, more.ph, 1.0)))
    });
}

#[test]
fn more_gas_never_lowers_carbon_dioxide_in_the_dark() {
    law(100, 90, |number| {
        let [less, more] = in_the_dark_with_less_and_more_gas(number);
        all(side_by_side(&less, &more)
            .map(|(less, more)| at_least(more.co2_mg_per_l, less.co2_mg_per_l, MUCH_CO2)))
    });
}

#[test]
fn more_light_is_never_less_oxygen_at_noon() {
    law(100, 50, |number| {
        let mut input = tank(number, 2);
        let window = Window {
            on: TimeOfDay(9 * HOUR),
            off: TimeOfDay(17 * HOUR),
        };
        let light = Lot::new(number).between(15.0, 150.0);
        // dark on the day of filling
        input.light = vec![TimerLine {
            from_day: 1,
            window,
            value: light,
        }];
        let mut brighter = input.clone();
        brighter.light[0].value *= 1.3;
        let (dim, bright) = (live(&input), live(&brighter));
        all(side_by_side(&dim, &bright)
            .filter(|(dim, _)| dim.minute == DAY + 12 * HOUR)
            .map(|(dim, bright)| at_least(bright.oxygen_mg_per_l, dim.oxygen_mg_per_l, 8.0)))
    });
}
