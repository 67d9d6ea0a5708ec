//! Takes tanks through their days without the rest of a run, and keeps what they leave as bits.

use firstfill::base::clock::DAY;
use firstfill::base::real::Real;
use firstfill::engine::error::RunError;
use firstfill::engine::event::Event;
use firstfill::engine::input::ModelInput;
use firstfill::engine::plan::Plan;
use firstfill::engine::result::{Reading, Side};
use firstfill::engine::simulation::{Simulation, Watcher};
use firstfill::engine::valve::Valves;
use firstfill::model::pool::POOLS;
use firstfill::model::state::State;

/// Takes tanks to a midnight, their gas as planned.
pub fn go_on<R: Real>(
    tank: &mut Simulation<'_, R>,
    until_day: u32,
    watcher: &mut impl Watcher<R>,
) -> Result<(), RunError> {
    Valves::new(tank.plan).take(tank, until_day * DAY, watcher)
}

/// Takes tanks that have just been filled to their end, unseen.
pub fn through<R: Real>(plan: &Plan<R>) -> State<R> {
    let mut tank = Simulation::filled(plan);
    go_on(&mut tank, plan.input.last_day + 1, &mut Nobody).unwrap();
    tank.state
}

/// Looks at nothing.
pub struct Nobody;

impl<R: Real> Watcher<R> for Nobody {
    fn wants(&self, _: u32, _: Side) -> bool {
        false
    }
    fn see(&mut self, _: &Reading<R>, _: &Simulation<'_, R>) {}
    fn happened(&mut self, _: &Event, _: R, _: &Reading<R>, _: &Reading<R>) {}
}

/// How far each pool ranges in a run, and how large it gets.
pub struct Reach {
    low: [f64; POOLS],
    high: [f64; POOLS],
}

impl Reach {
    /// Of a whole run.
    pub fn of(plan: &Plan) -> Reach {
        let mut tank = Simulation::filled(plan);
        let mut reach = Reach {
            low: tank.state.0,
            high: tank.state.0,
        };
        go_on(&mut tank, plan.input.last_day + 1, &mut reach).unwrap();
        reach
    }
    /// From the lowest to the highest amount of each pool.
    pub fn ranges(&self) -> [f64; POOLS] {
        std::array::from_fn(|pool| self.high[pool] - self.low[pool])
    }
    /// The largest amount of each pool.
    pub fn sizes(&self) -> [f64; POOLS] {
        std::array::from_fn(|pool| self.high[pool].abs().max(self.low[pool].abs()))
    }
}

impl Watcher for Reach {
    fn wants(&self, _: u32, _: Side) -> bool {
        true
    }
    fn see(&mut self, _: &Reading, tank: &Simulation<'_>) {
        for (pool, &amount) in tank.state.0.iter().enumerate() {
            self.low[pool] = self.low[pool].min(amount);
            self.high[pool] = self.high[pool].max(amount);
        }
    }
    fn happened(&mut self, _: &Event, _: f64, _: &Reading, _: &Reading) {}
}

/// Whatever a run leaves behind, as bits.
#[derive(PartialEq)]
pub struct Left {
    state: Vec<u64>,
    extents: Vec<u64>,
    crossed: Vec<u64>,
}

impl Left {
    /// What a tank has left behind so far.
    pub fn by(tank: &Simulation<'_>) -> Left {
        let bits = |numbers: &[f64]| numbers.iter().map(|number| number.to_bits()).collect();
        Left {
            state: bits(&tank.state.0),
            extents: bits(&tank.extents),
            crossed: bits(&tank.crossed.concat()),
        }
    }
}

/// Runs a whole input without looking.
pub fn left_by(input: &ModelInput) -> Left {
    let plan = Plan::new(input);
    let mut tank = Simulation::filled(&plan);
    go_on(&mut tank, input.last_day + 1, &mut Nobody).unwrap();
    Left::by(&tank)
}
