//! What only mixes, what only decays, and what evaporates.

use firstfill::model::conserved::{Flux, Quantity};

use super::*;

/// Kept full with pure water, nothing dosed: otherwise what evaporates leaves it behind.
#[test]
fn chloride_stays_between_the_waters_poured_in() {
    law(100, 60, |number| {
        let mut input = topped_up(tank(number, 3));
        input
            .events
            .retain(|event| !matches!(event.kind, EventKind::Dose(_)));
        input.refill.chloride_mg_per_l = Lot::new(number).between(0.0, 80.0);
        let (fill, refill) = (input.fill.chloride_mg_per_l, input.refill.chloride_mg_per_l);
        let run = live(&input);
        let chloride: fn(&Reading) -> f64 = |r| r.chloride_mg_per_l;
        all([
            at_least(lowest(&run, chloride), fill.min(refill), 80.0),
            at_least(fill.max(refill), highest(&run, chloride), 80.0),
            // seen where the water is another one at the end
            at_least(
                (run.readings.last().unwrap().chloride_mg_per_l - fill).abs(),
                0.0,
                1.0,
            ),
        ]
        .into_iter())
    });
}

#[test]
fn water_that_evaporates_leaves_its_salt() {
    law(50, 90, |number| {
        let mut input = left_alone(tank(number, 3));
        input.top_up = TopUp::None;
        input.fill.chloride_mg_per_l = 20.0;
        input.room.humidity_frac = 0.3;
        let run = live(&input);
        let amount = |r: &Reading| r.chloride_mg_per_l * r.volume_l;
        let first = amount(&run.readings[0]);
        if run
            .readings
            .iter()
            .any(|r| (amount(r) / first - 1.0).abs() > 1e-12)
        {
            return Said::Broken("salt came or went".into());
        }
        let last = run.readings.last().unwrap();
        at_least(last.chloride_mg_per_l, 20.0, 20.0)
    });
}

#[test]
fn a_damper_room_never_takes_more_water() {
    law(80, 70, |number| {
        let dry = topped_up(tank(number, 3));
        let mut damp = dry.clone();
        damp.room.humidity_frac +=
            (1.0 - dry.room.humidity_frac) * Lot::new(number).between(0.1, 0.9);
        let taken = |run: &RunResult| {
            -RunResult::crossed(
                run.tallies.last().unwrap(),
                Flux::Evaporation,
                Quantity::Water,
            )
        };
        let (dry, damp) = (taken(&live(&dry)), taken(&live(&damp)));
        at_least(dry, damp, dry)
    });
}

/// Between two refills.
#[test]
fn chlorine_only_ever_decays_in_a_tank() {
    law(80, 80, |number| {
        let mut input = left_alone(tank(number, 2));
        input.fill.chlorine_mg_cl2_per_l = 0.5;
        input.fill.chloramine_mg_cl2_per_l = 1.0;
        input.top_up = TopUp::Automatic(Composition::PURE);
        let run = live(&input);
        let course: Vec<f64> = run
            .readings
            .iter()
            .map(|r| r.chlorine_mg_cl2_per_l + r.chloramine_mg_cl2_per_l)
            .collect();
        match course
            .windows(2)
            .find(|pair| pair[1] > pair[0] * (1.0 + 1e-12))
        {
            Some(pair) => Said::Broken(format!("{} after {}", pair[1], pair[0])),
            None => at_least(course[0], course[course.len() - 1], course[0]),
        }
    });
}

#[test]
fn more_alkalinity_in_the_refill_never_lowers_alkalinity() {
    law(100, 50, |number| {
        let soft = without_nitrifiers(tank(number, 5));
        let mut hard = soft.clone();
        let more = Lot::new(number).between(0.1, 3.0);
        hard.refill.alkalinity_meq_per_l += more;
        hard.refill.inorganic_carbon_mmol_per_l += more;
        let (soft, hard) = (live(&soft), live(&hard));
        all(side_by_side(&soft, &hard).map(|(soft, hard)| {
            at_least(hard.alkalinity_meq_per_l, soft.alkalinity_meq_per_l, 1.0)
        }))
    });
}
