//! Many different tanks with streaming statistics: what an ensemble is made of.

use firstfill::base::moments::Moments;
use firstfill::base::real::Real;
use firstfill::base::stop::Stop;
use firstfill::engine::event::Event;
use firstfill::engine::input::ModelInput;
use firstfill::engine::many::{Abreast, Survey, Tanks, run_many};
use firstfill::engine::plan::Plan;
use firstfill::engine::result::{Reading, Side};
use firstfill::engine::simulation::{Simulation, Watcher};
use firstfill::model::parameter_set::Origin;
use firstfill::model::water::Water;

/// Highest ammonia, nitrite and CO2, lowest oxygen, at every hour of a run.
pub struct Peaks;

/// The same, of tanks under way.
pub struct Watch([Abreast; 4]);

impl Watcher<Abreast> for Watch {
    #[inline(always)]
    fn glance(&mut self, minute: u32, water: &Water<Abreast>) {
        if !minute.is_multiple_of(60) {
            return;
        }
        let [tan, nitrite, co2, oxygen] = &mut self.0;
        *tan = tan.most(water.tan);
        *nitrite = nitrite.most(water.nitrite);
        *co2 = co2.most(water.co2_mg_per_l());
        *oxygen = oxygen.least(water.oxygen);
    }
    fn wants(&self, _: u32, _: Side) -> bool {
        false
    }
    fn see(&mut self, _: &Reading<Abreast>, _: &Simulation<'_, Abreast>) {}
    fn happened(&mut self, _: &Event, _: Abreast, _: &Reading<Abreast>, _: &Reading<Abreast>) {}
}

impl Survey for Peaks {
    type Watch = Watch;
    type Kept = [f64; 4];

    fn watch(&self, _: &Plan<Abreast>) -> Watch {
        Watch([0.0, 0.0, 0.0, 1e3].map(Abreast::of))
    }
    fn keep(&self, watch: &Watch, _: &Tanks<'_>, lane: usize) -> [f64; 4] {
        watch.0.map(|number| number.lane(lane))
    }
}

/// A tank that differs from the first in what is uncertain of it.
pub fn member(base: &ModelInput, number: usize) -> ModelInput {
    let mut input = base.clone();
    // whole turns of the golden ratio: spread over 0 to 1 without a pattern
    let turn = |by: f64| (number as f64 * by).fract();
    let values = [
        ("q0", 60.0 + 120.0 * turn(0.618_033_988_7)),
        ("mu_NOB", 0.6 + 0.4 * turn(0.754_877_666_2)),
        ("k_600", 0.4 + 0.4 * turn(0.569_840_290_9)),
    ];
    for (id, value) in values {
        input.parameters.set(id, value, Origin::Default);
    }
    input.seed_level = 0.3 + 3.0 * turn(0.732_050_807_6);
    input
}

/// Statistics over so many tanks: ammonia, nitrite, CO2, oxygen.
pub fn peaks(base: &ModelInput, count: usize) -> [Moments; 4] {
    let mut moments = [Moments::default(); 4];
    let ended = run_many(
        &Peaks,
        count,
        |number| member(base, number),
        &Stop::default(),
        |_, kept| {
            for (moments, value) in moments.iter_mut().zip(kept.unwrap()) {
                moments.add(value);
            }
        },
    );
    ended.unwrap();
    moments
}
