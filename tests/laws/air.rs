//! Oxygen between the air and the water.

use firstfill::base::clock::{DAY, HOUR, TimeOfDay, Window};
use firstfill::engine::event::{Event, EventKind};
use firstfill::engine::input::{ModelInput, TimerLine};
use firstfill::engine::result::RunResult;

use super::*;

const OXYGEN: fn(&Reading) -> f64 = |r| r.oxygen_mg_per_l;
/// A usual content of oxygen, mg/L.
const MUCH: f64 = 8.0;
/// Under this the default step is off by as much as fish make, mg/L.
const NEARLY_GONE: f64 = 0.1;

#[test]
fn higher_up_the_water_holds_less_oxygen() {
    law(80, 90, |number| {
        let mut low = tank(number, 2);
        low.tank.altitude_m = 0.0;
        let mut high = low.clone();
        high.tank.altitude_m = Lot::new(number).between(20.0, 2500.0);
        let (low, high) = (live(&low), live(&high));
        all(side_by_side(&low, &high)
            .map(|(low, high)| at_least(saturation(low), saturation(high), MUCH)))
    });
}

/// Kept full: a tank that has lost water to the air cools faster, warm ones first.
#[test]
fn warmer_water_holds_less_oxygen() {
    law(80, 90, |number| {
        let mut cool = topped_up(tank(number, 2));
        cool.heating.set_c = Some(cool.heating.start_c);
        let mut warm = cool.clone();
        let more = Lot::new(number).between(0.5, 5.0);
        warm.heating.start_c += more;
        warm.heating.set_c = Some(warm.heating.start_c);
        let (cool, warm) = (live(&cool), live(&warm));
        all(side_by_side(&cool, &warm)
            .map(|(cool, warm)| at_least(saturation(cool), saturation(warm), MUCH)))
    });
}

/// Air from dusk on for so many hours, on day 1.
fn aired(mut input: ModelInput, dusk: u32, hours: u32, flow: f64) -> ModelInput {
    let window = Window {
        on: TimeOfDay(dusk),
        off: TimeOfDay((dusk + hours * HOUR) % DAY),
    };
    let from_day = 1;
    input.air = vec![TimerLine {
        from_day,
        window,
        value: flow,
    }];
    input
}

/// One night, alike at dusk and under saturation throughout. What stands above it (what plants have
/// stored by day, or water that warms up) is let out by air: a tank aired just long enough to
/// lose its store can be worse off at dawn than one that was hardly aired. Air of the night before
/// costs oxygen too: less carbon dioxide is left for the plants.
#[test]
fn longer_night_air_never_lowers_the_nights_lowest_oxygen() {
    // a night within one day of the clock, so that no air ran before it
    let (dusk, dawn) = (10 * HOUR, 22 * HOUR);
    law(125, 30, |number| {
        let mut lot = Lot::new(number);
        let mut input = left_alone(tank(number, 3));
        input.light.iter_mut().for_each(|lamp| {
            lamp.window = Window {
                on: TimeOfDay(dawn),
                off: TimeOfDay(dusk),
            };
        });
        input.power_cuts.clear();
        let short = 1 + lot.below(5);
        let long = short + 1 + lot.below(12 - short);
        let flow = lot.decades(0.2, 4.0);
        let [short, long] =
            [short, long].map(|hours| live(&aired(input.clone(), dusk, hours, flow)));
        let night = |run: &RunResult| -> Vec<Reading> {
            let night = DAY + dusk..=DAY + dawn;
            run.readings
                .iter()
                .filter(|r| night.contains(&r.minute))
                .copied()
                .collect()
        };
        let (short, long) = (night(&short), night(&long));
        if short.iter().any(|r| r.oxygen_saturation_percent > 100.0) {
            return Said::Equal;
        }
        let least = |night: &[Reading]| night.iter().map(OXYGEN).fold(f64::INFINITY, f64::min);
        at_least(least(&long), least(&short), MUCH)
    });
}

/// In the dark, so that nothing makes oxygen. Water can bring more than the air would give, and
/// cold water holds more than warm: the ceiling is the most of what came in or could dissolve.
#[test]
fn in_the_dark_oxygen_never_rises_above_what_air_and_waters_bring() {
    law(100, 50, |number| {
        let input = in_the_dark(tank(number, 3));
        let run = live(&input);
        let brought = input.fill.oxygen_mg_per_l.max(input.refill.oxygen_mg_per_l);
        at_least(
            brought.max(highest(&run, saturation)),
            highest(&run, OXYGEN),
            MUCH,
        )
    });
    // and with light it does
    let lit = (0..40).map(|number| live(&tank(number, 3)));
    assert!(
        lit.filter(|run| highest(run, |r| r.oxygen_saturation_percent) > 120.0)
            .count()
            > 3
    );
}

/// In the dark: there the carbon dioxide of the fish would feed the plants.
#[test]
fn fish_never_raise_oxygen_in_the_dark() {
    law(100, 80, |number| {
        let mut few = without_nitrifiers(in_the_dark(tank(number, 3)));
        few.events.retain(|event| !event.kind.is_about_animals());
        let mut many = few.clone();
        let animals = Lot::new(number).animals(many.tank.volume_l);
        let minute = few.filled_at;
        // an empty stock in the other, so that both have the same events
        few.events.push(Event {
            minute,
            name: "fish".into(),
            kind: EventKind::Stock(firstfill::engine::event::Animals {
                mass_g: 0.0,
                feed_g_per_day: 0.0,
                ..animals
            }),
        });
        many.events.push(Event {
            minute,
            name: "fish".into(),
            kind: EventKind::Stock(animals),
        });
        let (few, many) = (live(&few), live(&many));
        all(side_by_side(&few, &many)
            .filter(|(few, _)| OXYGEN(few) > NEARLY_GONE)
            .map(|(few, many)| at_least(OXYGEN(few), OXYGEN(many), MUCH)))
    });
}

/// In the dark, and until the water first stands at saturation (a cold filling that warms up does): above
/// it a livelier surface lets oxygen out, which is missed when the water cools again.
#[test]
fn a_livelier_surface_never_lowers_oxygen_that_is_under_saturation() {
    law(100, 60, |number| {
        let mut calm = without_nitrifiers(in_the_dark(left_alone(tank(number, 3))));
        calm.fill.oxygen_mg_per_l = 4.0;
        let mut lively = calm.clone();
        let speed = calm.parameters.get("k_600") * Lot::new(number).between(1.1, 3.0);
        lively.parameters = lively.parameters.with("k_600", speed);
        let (calm, lively) = (live(&calm), live(&lively));
        all(side_by_side(&calm, &lively)
            .take_while(|(_, lively)| lively.oxygen_saturation_percent < 100.0)
            .map(|(calm, lively)| at_least(OXYGEN(lively), OXYGEN(calm), MUCH)))
    });
}
