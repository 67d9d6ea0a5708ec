//! Tanks side by side in lanes are the same tanks as alone, to the last bit.

mod support;

use firstfill::base::lanes::Lanes;
use firstfill::base::real::Real;
use firstfill::chemistry::carbonate::Carbonate;
use firstfill::engine::memory::Memory;
use firstfill::engine::step::{Books, Stepper, Stretch};
use firstfill::engine::work::Counts;
use firstfill::model::held::Held;
use firstfill::model::matrix::MAX_ROWS;
use firstfill::model::parameter_set::ParameterSet;
use firstfill::model::pool::{POOLS, Pool};
use firstfill::model::state::State;
use firstfill::model::tank_model::TankModel;
use firstfill::model::water::Water;
use support::planted_tank::{self, Draws};

const DAYS: f64 = 10.5;

fn abreast(one: &State<f64>, other: &State<f64>) -> State<Lanes<2>> {
    let mut state = State::default();
    for pool in 0..POOLS {
        state.0[pool] = Lanes([one.0[pool], other.0[pool]]);
    }
    state
}

/// Rates, pH and the state after running every row by its rate for a hundredth of a day.
fn look_and_apply<R: Real>(
    model: &TankModel<R>,
    state: &State<R>,
    held: &Held<R>,
) -> (Vec<R>, Vec<R>) {
    let mut water = Water::blank();
    model.look(state, held, R::of(DAYS), &mut water);
    let mut rates = [R::zero(); MAX_ROWS];
    let rows = model.matrix().rows();
    model.rates(&water, &mut rates[..rows]);
    let mut after = *state;
    for rate in &mut rates {
        *rate *= R::of(0.01);
    }
    model.matrix().apply(&mut rates, &mut after);
    let seen = vec![
        water.hydrogen,
        water.co2,
        water.bicarbonate,
        water.free_ammonia,
        water.nitrous_acid,
        water.pore_tan,
        water.oxic,
    ];
    (
        seen,
        rates[..rows].iter().chain(&after.0).copied().collect(),
    )
}

fn assert_same_bits(what: &str, alone: &[f64], abreast: &[Lanes<2>], lane: usize) {
    assert_eq!(alone.len(), abreast.len());
    for (place, (a, b)) in alone.iter().zip(abreast).enumerate() {
        assert_eq!(
            a.to_bits(),
            b.lane(lane).to_bits(),
            "{what} {place} in lane {lane}: {a} alone, {} abreast",
            b.lane(lane)
        );
    }
}

#[test]
fn ph_rates_and_changes_have_the_same_bits_in_lanes_as_alone() {
    let mut draws = Draws(3);
    for set in 0..12 {
        let parameters = if set == 0 {
            ParameterSet::default()
        } else {
            draws.parameters()
        };
        let one = planted_tank::model::<f64>(&parameters);
        let two = planted_tank::model::<Lanes<2>>(&parameters);
        let (left, mut right) = (
            planted_tank::state(&mut draws),
            planted_tank::state(&mut draws),
        );
        // far apart, so that each lane takes its own branches
        right[Pool::Alkalinity] = -2.0;
        right[Pool::Tan] = 0.0;
        right[Pool::Temperature] = 33.0;
        right[Pool::Biomass(1)] = 0.0;
        right[Pool::Oxygen] = 900.0;
        let both = abreast(&left, &right);
        let (seen, changed) = look_and_apply(&two, &both, &planted_tank::busy());
        for (lane, alone) in [left, right].iter().enumerate() {
            let (one_seen, one_changed) = look_and_apply(&one, alone, &planted_tank::busy());
            assert_same_bits("water", &one_seen, &seen, lane);
            assert_same_bits("rate or pool", &one_changed, &changed, lane);
        }
    }
}

#[test]
fn the_ph_solver_keeps_lanes_apart_however_many_trials_each_needs() {
    let one = Carbonate::<f64>::at(25.0, 0.004);
    let four = Carbonate::<Lanes<4>>::at(25.0, Lanes([0.004; 4]));
    let carbon = [2e-3, 1e-6, 8e-3, 5e-4];
    let alkalinity = [1e-3, -0.2e-3, 5.35e-3, 0.0];
    let guess = [1e-7, 1e-2, 1e-12, 3e-9];
    let together = four.hydrogen(Lanes(carbon), Lanes(alkalinity), Lanes(guess));
    for lane in 0..4 {
        let alone = one.hydrogen(carbon[lane], alkalinity[lane], guess[lane]);
        assert_eq!(
            alone.to_bits(),
            together.lane(lane).to_bits(),
            "lane {lane}"
        );
    }
}

/// A day in steps of half an hour, each in so many parts.
fn a_day<R: Real>(model: &TankModel<R>, start: &State<R>, parts: R) -> (Vec<R>, Counts<R>) {
    let (mut state, mut counts) = (*start, Counts::default());
    let mut stepper = Stepper::new(model);
    let mut totals = vec![R::zero(); model.matrix().rows()];
    let days = 30.0 / 1440.0;
    for step in 0..48 {
        let stretch = Stretch {
            from_days: DAYS + f64::from(step) * days,
            days,
            held: &planted_tank::busy(),
        };
        stepper.look(model, &state, stretch.held, R::of(stretch.from_days));
        let books = Books {
            state: &mut state,
            totals: &mut totals,
            counts: &mut counts,
        };
        stepper.advance((model, None), &stretch, parts, books, |_, _| {});
    }
    let Memory {
        hydrogen,
        drift,
        closer,
        stirred,
    } = stepper.memory();
    let left = totals
        .into_iter()
        .chain(state.0)
        .chain([hydrogen, drift, closer, stirred]);
    (left.collect(), counts)
}

#[test]
fn a_day_of_steps_has_the_same_bits_even_when_one_lane_is_held_back() {
    let mut draws = Draws(5);
    let greedy = ParameterSet::default().with("k_Cl", 5000.0);
    let one = planted_tank::model::<f64>(&greedy);
    let two = planted_tank::model::<Lanes<2>>(&greedy);
    let (mut left, right) = (
        planted_tank::state(&mut draws),
        planted_tank::state(&mut draws),
    );
    // the left lane has nothing a greedy process could empty
    left[Pool::Chlorine] = 0.0;
    left[Pool::Chloramine] = 0.0;
    let (together, _) = a_day(&two, &abreast(&left, &right), Lanes([2.0; 2]));
    let mut held_back = Vec::new();
    for (lane, alone) in [left, right].iter().enumerate() {
        let (changed, counts) = a_day(&one, alone, 2.0);
        assert_same_bits("total or pool", &changed, &together, lane);
        held_back.push(counts.lane(0).held_back);
    }
    assert_eq!(held_back[0], 0, "the left lane alone never needs the guard");
    assert!(held_back[1] > 0, "the right lane does: {}", held_back[1]);
}

#[test]
fn a_lane_that_needs_fewer_parts_waits_untouched_for_the_other() {
    let mut draws = Draws(7);
    let parameters = ParameterSet::default();
    let one = planted_tank::model::<f64>(&parameters);
    let two = planted_tank::model::<Lanes<2>>(&parameters);
    let states = [
        planted_tank::state(&mut draws),
        planted_tank::state(&mut draws),
    ];
    let parts = [1.0, 7.0];
    let (together, counts) = a_day(&two, &abreast(&states[0], &states[1]), Lanes(parts));
    for lane in 0..2 {
        let (changed, own) = a_day(&one, &states[lane], parts[lane]);
        assert_same_bits("total, pool or memory", &changed, &together, lane);
        assert_eq!(own.lane(0), counts.lane(lane), "lane {lane}");
    }
}
