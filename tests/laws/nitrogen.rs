//! Nitrogen: where it comes from, and what microbes make of it.

use firstfill::engine::event::Event;
use firstfill::engine::happening::held;
use firstfill::engine::plan::Plan;
use firstfill::engine::result::Side;
use firstfill::engine::simulation::{Simulation, Watcher};
use firstfill::model::conserved::{QUANTITIES, Quantity};
use firstfill::model::parameters;

use super::*;

/// Total ammonia that a test kit can show, mg N/L (common practice, no source).
const SHOWN_BY_A_KIT: f64 = 0.05;
const TAN: fn(&Reading) -> f64 = |r| r.tan_mg_n_per_l;

/// Without a dry start: a richer soil then grows more nitrifiers before the tank is filled.
#[test]
fn a_stronger_soil_never_lowers_the_ammonia_peak() {
    law(80, 60, |number| {
        let mut mild = tank(number, 6);
        mild.dry_days = 0.0;
        let mut rich = mild.clone();
        let strength = mild.parameters.get("q0") * Lot::new(number).between(1.1, 3.0);
        rich.parameters = rich.parameters.with("q0", strength);
        let (mild, rich) = (live(&mild), live(&rich));
        at_least(highest(&rich, TAN), highest(&mild, TAN), 1.0)
    });
}

/// With refills that bring no ammonia (chloramine does) and are as warm as the tank (a cold soil leaches
/// slowly), and without what else hangs on changes: nitrifiers and plants, which starve of what is
/// carried off and then leave more, and waste, which rots faster with the oxygen of a refill.
#[test]
fn bigger_changes_never_raise_the_ammonia_peak() {
    law(80, 40, |number| {
        let mut small = without_nitrifiers(without_green(tank(number, 6)));
        let most = Lot::new(number).between(1.1, 2.0);
        small.refill.tan_mg_n_per_l = 0.0;
        small.refill.chloramine_mg_cl2_per_l = 0.0;
        small.events.retain(|event| !event.kind.is_about_animals());
        let warmth = small.heating.start_c;
        (small.heating.set_c, small.room.temperature_c) = (Some(warmth), warmth);
        small.refill.temperature_c = warmth;
        let mut big = small.clone();
        for event in &mut big.events {
            if let EventKind::Change { share } = &mut event.kind {
                *share = (*share * most).min(1.0);
            }
        }
        let (small, big) = (live(&small), live(&big));
        at_least(highest(&small, TAN), highest(&big, TAN), 1.0)
    });
}

/// A tank left alone, with first films of level 10 to 100; and the same with up to ten times as many. No
/// more: films a hundred thousand times the usual, or killed by chlorine, feed the water as they die.
/// No plants, which would get less ammonia and take up less later. Nothing new comes in: by a second
/// load the tank that began with few may have more, since they had more to eat. And alkalinity for
/// all: the tank with many turns sour first, and then stands still.
fn seeded(number: u64) -> [RunResult; 2] {
    let mut lot = Lot::new(number);
    let mut few = topped_up(without_green(left_alone(tank(number, 14))));
    for id in ["XA0", "XN0", "XK0"] {
        let usual = parameters::spec(id).unwrap().default;
        few.parameters = few.parameters.with(id, usual);
    }
    (
        few.fill.chlorine_mg_cl2_per_l,
        few.fill.chloramine_mg_cl2_per_l,
    ) = (0.0, 0.0);
    few.fill.alkalinity_meq_per_l += 8.0;
    few.fill.inorganic_carbon_mmol_per_l += 8.0;
    few.seed_level = lot.decades(10.0, 100.0);
    let mut many = few.clone();
    many.seed_level *= lot.decades(1.5, 10.0);
    [live(&few), live(&many)]
}

#[test]
fn more_nitrifiers_at_the_start_never_raise_the_ammonia_peak() {
    law(50, 30, |number| {
        let [few, many] = seeded(number);
        if highest(&few, TAN) < SHOWN_BY_A_KIT {
            return Said::Equal; // nothing comes in but what the films themselves give back
        }
        at_least(highest(&few, TAN), highest(&many, TAN), 1.0)
    });
}

#[test]
fn more_nitrifiers_at_the_start_never_bring_ammonia_down_later() {
    // in most of these short runs ammonia has not come down to half at the end
    law(50, 10, |number| {
        let [few, many] = seeded(number);
        // half of the peak of the tank with few
        let limit = 0.5 * highest(&few, TAN);
        let low_from = |run: &RunResult| {
            let above = |r: &Reading| TAN(r) > limit;
            let Some(last) = run.readings.iter().rposition(above) else {
                return 0.0;
            };
            let a = &run.readings[last];
            // on the straight line to the next reading, where there is one
            run.readings.get(last + 1).map_or(f64::from(a.minute), |b| {
                let part = (TAN(a) - limit) / (TAN(a) - TAN(b));
                f64::from(a.minute) + part * f64::from(b.minute - a.minute)
            })
        };
        at_least(low_from(&few), low_from(&many), 1.0)
    });
}

/// Nothing that holds or brings ammonia, or could turn into it.
fn without_ammonia(input: ModelInput) -> ModelInput {
    let mut input = without_nitrifiers(without_green(input));
    input.tank.soil_l = 0.0;
    for water in [&mut input.fill, &mut input.refill] {
        water.tan_mg_n_per_l = 0.0;
        water.chloramine_mg_cl2_per_l = 0.0;
    }
    input.top_up = TopUp::Automatic(Composition::PURE);
    input
        .events
        .retain(|event| matches!(event.kind, EventKind::Change { .. }));
    input
}

#[test]
fn where_nothing_brings_ammonia_there_is_none_ever() {
    law(100, 100, |number| {
        let bare = live(&without_ammonia(tank(number, 3)));
        if highest(&bare, TAN) != 0.0 {
            return Said::Broken(format!("{} mg N/L from nothing", highest(&bare, TAN)));
        }
        // and one source alone is enough
        let mut with_soil = without_ammonia(tank(number, 3));
        with_soil.tank.soil_l = 0.1 * with_soil.tank.volume_l;
        at_least(highest(&live(&with_soil), TAN), 0.01, 0.0)
    });
}

/// Sees the nitrogen of the whole tank at every step.
struct Nitrogen(Vec<f64>);

impl Watcher for Nitrogen {
    fn wants(&self, _: u32, _: Side) -> bool {
        true
    }
    fn see(&mut self, _: &Reading, tank: &Simulation<'_>) {
        let place = QUANTITIES
            .iter()
            .position(|&quantity| quantity == Quantity::Nitrogen);
        self.0
            .push(held(tank.plan.model.contents(), &tank.state)[place.unwrap()]);
    }
    fn happened(&mut self, _: &Event, _: f64, _: &Reading, _: &Reading) {}
}

/// Left alone and kept full with pure water.
#[test]
fn the_nitrogen_of_a_tank_left_alone_never_grows() {
    law(100, 60, |number| {
        let mut input = topped_up(left_alone(tank(number, 3)));
        input.gas = GasPlan::None;
        all_at_filling(&mut input);
        let plan = Plan::new(&input);
        let (mut tank, mut seen) = (Simulation::filled(&plan), Nitrogen(Vec::new()));
        for day in 1..=3 {
            tank.advance(day * DAY, &mut seen).unwrap();
        }
        // the first look is before planting
        let course = &seen.0[1.min(seen.0.len() - 1)..];
        let size = course[0];
        let grew = course
            .windows(2)
            .find(|pair| pair[1] > pair[0] + 1e-12 * size);
        match grew {
            Some(pair) => Said::Broken(format!("{} after {}", pair[1], pair[0])),
            None => at_least(course[0], course[course.len() - 1], size),
        }
    });
}

/// Without soil nothing denitrifies; in the dark nothing takes nitrate up; left alone nobody removes it.
#[test]
fn nitrate_never_falls_in_a_dark_tank_without_soil() {
    law(100, 40, |number| {
        let mut input = in_the_dark(left_alone(tank(number, 3)));
        input.tank.soil_l = 0.0;
        input.fill.tan_mg_n_per_l = 1.0;
        let run = live(&input);
        let amounts: Vec<f64> = run
            .readings
            .iter()
            .map(|r| r.nitrate_mg_n_per_l * r.volume_l)
            .collect();
        let size = amounts[0].max(1.0);
        match amounts
            .windows(2)
            .find(|pair| pair[1] < pair[0] - 1e-12 * size)
        {
            Some(pair) => Said::Broken(format!("{} after {}", pair[1], pair[0])),
            None => at_least(amounts[amounts.len() - 1], amounts[0], size),
        }
    });
}
