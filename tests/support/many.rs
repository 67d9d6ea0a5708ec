//! Many different tanks with streaming statistics: what an ensemble is made of.

#[path = "varied.rs"]
mod varied;

use firstfill::base::moments::Moments;
use firstfill::base::real::Real;
use firstfill::base::stop::Stop;
use firstfill::engine::event::Event;
use firstfill::engine::input::ModelInput;
use firstfill::engine::many::{Abreast, Survey, Tanks, run_many};
use firstfill::engine::plan::Plan;
use firstfill::engine::result::{Reading, Side};
use firstfill::engine::simulation::{Simulation, Watcher};
use firstfill::model::water::Water;
pub use varied::member;

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
