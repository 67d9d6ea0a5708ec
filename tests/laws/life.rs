//! Plants and algae.

use firstfill::engine::event::Event;
use firstfill::engine::plan::Plan;
use firstfill::engine::result::Side;
use firstfill::engine::simulation::{Simulation, Watcher};
use firstfill::model::pool::{MAX_STANDS, Pool};

use super::*;

/// Sees submersed tissue, its nitrogen, tissue still to be shed, and algae, at every step.
#[derive(Default)]
struct Green {
    submersed_g: Vec<f64>,
    all: Vec<f64>,
    algae_g: Vec<f64>,
}

impl Watcher for Green {
    fn wants(&self, _: u32, _: Side) -> bool {
        true
    }
    fn see(&mut self, _: &Reading, tank: &Simulation<'_>) {
        let stands = 0..MAX_STANDS;
        let sum = |pools: &dyn Fn(usize) -> Pool| {
            stands
                .clone()
                .map(|stand| tank.state[pools(stand)])
                .sum::<f64>()
        };
        let (b, n, e) = (
            sum(&Pool::Biomass),
            sum(&Pool::TissueN),
            sum(&Pool::Emersed),
        );
        self.submersed_g.push(b);
        self.all.push(b + n + e);
        self.algae_g.push(tank.state[Pool::Algae]);
    }
    fn happened(&mut self, _: &Event, _: f64, _: &Reading, _: &Reading) {}
}

fn watched(input: &ModelInput) -> Green {
    let plan = Plan::new(input);
    let (mut tank, mut green) = (Simulation::filled(&plan), Green::default());
    for day in 1..=input.last_day + 1 {
        tank.advance(day * DAY, &mut green).unwrap();
    }
    green
}

#[test]
fn where_nothing_is_planted_no_plant_pool_ever_holds_anything() {
    law(100, 60, |number| {
        let mut input = tank(number, 3);
        input.gas = GasPlan::None;
        let planted = watched(&input);
        input.stands.clear();
        input.events.retain(|event| {
            !matches!(event.kind, EventKind::Plant { .. } | EventKind::Trim { .. })
        });
        let bare = watched(&input);
        if bare.all.iter().any(|&amount| amount != 0.0) {
            return Said::Broken("plants from nothing".into());
        }
        at_least(
            planted.all.iter().fold(0.0, |most, &x| f64::max(most, x)),
            0.0,
            1.0,
        )
    });
}

/// Left alone after planting: planting adds, and happens at once.
#[test]
fn in_the_dark_neither_plants_nor_algae_ever_grow() {
    law(100, 60, |number| {
        let mut input = in_the_dark(left_alone(tank(number, 3)));
        input.gas = GasPlan::None;
        all_at_filling(&mut input);
        let green = watched(&input);
        // the first look is before planting
        if grows(&green.submersed_g[1..]) || grows(&green.algae_g) {
            return Said::Broken("something grew".into());
        }
        at_least(
            green.algae_g[0],
            green.algae_g[green.algae_g.len() - 1],
            green.algae_g[0],
        )
    });
    // and in the light something does, in many tanks
    let grew = (0..40).filter(|&number| {
        let mut input = left_alone(tank(number, 3));
        input.gas = GasPlan::None;
        grows(&watched(&input).algae_g)
    });
    let grew = grew.count();
    println!("algae grew in {grew} of 40 lit tanks");
    assert!(grew > 10);
}

/// Whether anything is ever more than just before.
fn grows(course: &[f64]) -> bool {
    course.windows(2).any(|pair| pair[1] > pair[0])
}
