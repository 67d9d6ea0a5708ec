//! The matrix as a step uses it (kin added up, rows of the light left out in the dark, entries in pairs)
//! does what the table of all rows does.

mod support;

use std::collections::BTreeMap;

use firstfill::engine::input::ModelInput;
use firstfill::engine::plan::Plan;
use firstfill::model::held::Held;
use firstfill::model::matrix::{MAX_ROWS, PerRow};
use firstfill::model::pool::{MAX_STANDS, POOLS, Pool};
use firstfill::model::state::State;
use firstfill::model::tank_model::TankModel;
use firstfill::model::water::Water;
use ndarray::Array1;
use support::planted_tank::{self, Draws};
use support::random_tank;

/// Random tanks with which each property is tried.
const TANKS: u64 = 60;
/// Rounding of some sixty terms, each off by 1e-16 of the largest.
const ROUNDING: f64 = 1e-14;

/// The random tank of a number with as many stands as there is room for, if it has any.
fn full(number: u64) -> ModelInput {
    let mut input = random_tank::tank(number, 3);
    let stands = input.stands.clone();
    for place in stands.len()..MAX_STANDS {
        input
            .stands
            .extend(stands.get(place % stands.len().max(1)).cloned());
    }
    input
}

/// A busy state in which every stand has leaves, and what is switched, all but the light.
fn dark(draws: &mut Draws) -> (State<f64>, Held<f64>) {
    let mut state = planted_tank::state(draws);
    for stand in 0..MAX_STANDS {
        state[Pool::Biomass(stand)] = draws.between(0.1, 3.0);
        state[Pool::TissueN(stand)] = draws.between(1.0, 60.0);
        state[Pool::Emersed(stand)] = draws.between(0.1, 1.0);
    }
    let held = Held {
        lit: false,
        light_umol_per_m2_s: 0.0,
        power: draws.between(0.0, 1.0) < 0.8,
        ..planted_tank::busy()
    };
    (state, held)
}

fn rates(model: &TankModel<f64>, state: &State<f64>, held: &Held<f64>) -> Vec<f64> {
    let mut water = Water::blank();
    model.look(state, held, 10.5, &mut water);
    // what was there before must be written over
    let mut rates = vec![f64::NAN; model.matrix().rows()];
    model.rates(&water, &mut rates);
    rates
}

#[test]
fn rows_of_the_light_stand_still_in_the_dark_and_others_do_not() {
    let mut draws = Draws(11);
    let mut by_day: BTreeMap<String, bool> = BTreeMap::new();
    for number in 0..TANKS {
        let plan = Plan::new(&full(number));
        let (state, dark) = dark(&mut draws);
        let lit = Held {
            lit: true,
            light_umol_per_m2_s: 80.0,
            ..dark
        };
        let [by_night, lit] = [dark, lit].map(|held| rates(&plan.model, &state, &held));
        for (at, (process, row)) in plan.model.rows().iter().enumerate() {
            let name = plan.model.row_name(at);
            if row.in_light {
                assert_eq!(by_night[at], 0.0, "tank {number}: {name} runs in the dark");
                let id = firstfill::model::processes::IDS[*process];
                *by_day.entry(id.to_string()).or_default() |= lit[at] > 0.0;
            }
        }
        let others = plan.model.rows().iter().zip(&by_night);
        let running = others.filter(|((_, row), rate)| !row.in_light && **rate > 0.0);
        assert!(running.count() > 20, "tank {number}: the night is still");
    }
    let by_day: Vec<(String, bool)> = by_day.into_iter().collect();
    let expected = ["algae_growth", "leaf_uptake", "photosynthesis"];
    assert_eq!(
        by_day,
        expected.map(|id| (id.to_string(), true)),
        "all of them run by day"
    );
}

/// What the matrix and the table make of the same extents: the largest difference of a pool, as a share
/// of all that moved it.
fn apart(model: &TankModel<f64>, extents: &[f64], lit: bool, draws: &mut Draws) -> f64 {
    let (from, length) = (planted_tank::state(draws), draws.between(0.01, 0.05));
    // pools of a stand that no row touches are left as they are
    let mut to = from;
    let mut room: PerRow<f64> = [f64::NAN; MAX_ROWS];
    room[..extents.len()].copy_from_slice(extents);
    model
        .matrix()
        .lead(&from, &mut room, (length, lit), &mut to);
    let counted = |(row, extent): (usize, &f64)| match model.rows()[row].1.in_light && !lit {
        true => 0.0,
        false => *extent,
    };
    let counted: Array1<f64> = extents.iter().enumerate().map(counted).collect();
    let table = model.matrix().table();
    let change = counted.dot(&table) * length;
    let moved = counted.abs().dot(&table.abs()) * length;
    (0..POOLS)
        .map(|pool| {
            let off = (to.0[pool] - from.0[pool] - change[pool]).abs();
            off / (from.0[pool].abs() + moved[pool]).max(f64::MIN_POSITIVE)
        })
        .fold(0.0, f64::max)
}

#[test]
fn a_step_changes_pools_as_the_table_of_all_rows_says() {
    let mut draws = Draws(12);
    let mut worst: f64 = 0.0;
    for number in 0..TANKS {
        let model = Plan::new(&random_tank::tank(number, 3)).model;
        for lit in [true, false] {
            let extents: Vec<f64> = (0..model.matrix().rows())
                .map(|_| draws.between(0.0, 30.0))
                .collect();
            let off = apart(&model, &extents, lit, &mut draws);
            assert!(off < ROUNDING, "tank {number}, light {lit}: off by {off:e}");
            worst = worst.max(off);
        }
    }
    println!("off by {worst:.1e} at most");
}

#[test]
fn a_tank_with_all_its_stands_has_room_for_its_rows() {
    let mut draws = Draws(13);
    let plan = Plan::new(&full(1));
    assert_eq!(plan.input.stands.len(), MAX_STANDS);
    let rows = plan.model.matrix().rows();
    assert!((100..MAX_ROWS).contains(&rows), "{rows} rows");
    let extents = vec![1.0; rows];
    for lit in [true, false] {
        assert!(apart(&plan.model, &extents, lit, &mut draws) < ROUNDING);
    }
}
