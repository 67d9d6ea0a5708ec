//! How long runs take on one core: alone, and side by side.
//!
//! `cargo bench --bench speed` prints the table.

#[path = "../tests/support/many.rs"]
mod many;
#[path = "../tests/support/mod.rs"]
mod support;

use firstfill::base::real::Real;
use firstfill::engine::event::Event;
use firstfill::engine::many::{ABREAST, Abreast};
use firstfill::engine::plan::Plan;
use firstfill::engine::result::{Reading, Side};
use firstfill::engine::run::run;
use firstfill::engine::simulation::{Simulation, Watcher};
use firstfill::engine::valve::Valves;

fn main() {
    divan::main();
}

struct Nobody;
impl<R: Real> Watcher<R> for Nobody {
    fn wants(&self, _: u32, _: Side) -> bool {
        false
    }
    fn see(&mut self, _: &Reading<R>, _: &Simulation<'_, R>) {}
    fn happened(&mut self, _: &Event, _: R, _: &Reading<R>, _: &Reading<R>) {}
}

fn go<R: Real>(plan: &Plan<R>) -> f64 {
    let mut tank = Simulation::filled(plan);
    let mut valves = Valves::new(plan);
    while tank.minute < plan.input.end_minute() {
        let day = tank.minute / 1440;
        tank.keeping.gas = valves.set_for(day, &tank).unwrap();
        tank.advance((day + 1) * 1440, &mut Nobody).unwrap();
    }
    tank.state.0[0].lane(0)
}

/// 56 days with plants, gas and water changes, everything written down.
#[divan::bench(args = ["bare_no_change", "base", "dense"])]
fn one_run_written_down(bencher: divan::Bencher<'_, '_>, name: &str) {
    let input = support::reference::input(name);
    bencher.bench_local(|| run(divan::black_box(&input)).unwrap());
}

/// The model only.
#[divan::bench(args = ["bare_no_change", "base", "dense"])]
fn one_run(bencher: divan::Bencher<'_, '_>, name: &str) {
    let input = support::reference::input(name);
    let plan = Plan::new(&input);
    bencher.bench_local(|| go(divan::black_box(&plan)));
}

/// Building the model.
#[divan::bench(args = ["base"])]
fn building(bencher: divan::Bencher<'_, '_>, name: &str) {
    let input = support::reference::input(name);
    bencher.bench_local(|| Plan::new(divan::black_box(&input)));
}

/// Four tanks side by side, the model only.
#[divan::bench(args = ["base", "dense"])]
fn four_abreast(bencher: divan::Bencher<'_, '_>, name: &str) {
    let input = support::reference::input(name);
    let plan = Plan::<Abreast>::abreast(&[&input; ABREAST]).unwrap();
    bencher.bench_local(|| go(divan::black_box(&plan)));
}

/// Building four models at once.
#[divan::bench(args = ["base"])]
fn building_four(bencher: divan::Bencher<'_, '_>, name: &str) {
    let input = support::reference::input(name);
    bencher.bench_local(|| Plan::<Abreast>::abreast(&[divan::black_box(&input); ABREAST]).unwrap());
}

/// A thousand different tanks with streaming statistics, on one thread and on two; divide by a thousand.
#[divan::bench(args = [1, 2], sample_count = 10, sample_size = 1)]
fn a_thousand_runs(bencher: divan::Bencher<'_, '_>, threads: usize) {
    let base = support::reference::input("base");
    let pool = rayon::ThreadPoolBuilder::new().num_threads(threads).build();
    let pool = pool.unwrap();
    bencher.bench_local(|| pool.install(|| many::peaks(divan::black_box(&base), 1000)));
}
