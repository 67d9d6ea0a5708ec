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

/// Takes a tank to a midnight, its gas as planned.
pub fn go_on(
    tank: &mut Simulation<'_>,
    until_day: u32,
    watcher: &mut impl Watcher,
) -> Result<(), RunError> {
    let mut valves = Valves::new(tank.plan);
    while tank.minute < until_day * DAY {
        let day = tank.minute / DAY;
        tank.keeping.gas = valves.set_for(day, tank)?;
        tank.advance((day + 1) * DAY, watcher)?;
    }
    Ok(())
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
