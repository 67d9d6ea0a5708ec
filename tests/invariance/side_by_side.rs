//! Whole runs of tanks side by side: each lane ends with the bits of its tank run alone.

use firstfill::base::clock::{TimeOfDay, Window};
use firstfill::base::lanes::Lanes;
use firstfill::base::real::Real;
use firstfill::engine::input::{GasHours, GasPlan, ModelInput, TimerLine, TopUp};
use firstfill::engine::plan::Plan;
use firstfill::engine::result::Work;
use firstfill::engine::simulation::Simulation;
use firstfill::engine::valve::Valves;
use firstfill::model::composition::Composition;
use firstfill::model::parameter_set::ParameterSet;

use crate::support::drive::Nobody;
use crate::support::greedy::let_loose;
use crate::support::random_tank::{self, Lot};

/// How many tanks go side by side.
const ABREAST: usize = 4;
/// Length of a run, days.
const DAYS: u32 = 14;

/// What a tank leaves behind: pools, extents and tunings, and how much work it was.
#[derive(Debug, PartialEq)]
struct End {
    pools: Vec<u64>,
    extents: Vec<u64>,
    tunings: Vec<(u32, u64, u32, u32)>,
    work: Work,
}

/// Runs tanks side by side to their end.
fn ends<R: Real>(plan: &Plan<R>) -> Vec<End> {
    let mut tanks = Simulation::filled(plan);
    let mut valves = Valves::new(plan);
    valves
        .take(&mut tanks, plan.input.end_minute(), &mut Nobody)
        .unwrap();
    assert!(tanks.failed.iter().all(Option::is_none));
    let valves = valves.into_lanes();
    let end = |lane: usize| End {
        pools: tanks.pools(lane).0.map(f64::to_bits).to_vec(),
        extents: (tanks.extents.iter())
            .map(|extent| extent.lane(lane).to_bits())
            .collect(),
        tunings: (valves[lane].tunings.iter())
            .map(|t| (t.day, t.gas_mg_per_h.to_bits(), t.window.on.0, t.trials))
            .collect(),
        work: tanks.work(lane),
    };
    (0..R::LANES).map(end).collect()
}

/// The same tank with other numbers: times and switches are kept.
fn with_other_numbers(tank: &ModelInput, number: u64) -> ModelInput {
    let (mut tank, other) = (tank.clone(), random_tank::tank(number, DAYS));
    let mut lot = Lot::new(number);
    tank.parameters = other.parameters;
    tank.room = other.room;
    (tank.fill, tank.refill) = (other.fill, other.refill);
    if let TopUp::Automatic(water) = &mut tank.top_up {
        *water = other.refill;
    }
    tank.tank.soil_l *= lot.between(0.3, 1.0);
    for stand in &mut tank.stands {
        stand.cover_frac *= lot.between(0.3, 1.0);
        stand.density_g_per_m2 *= lot.between(0.3, 3.0);
    }
    for line in &mut tank.light {
        line.value *= lot.between(0.5, 2.0);
    }
    tank
}

/// Four tanks that share times and switches and differ in numbers: the first as it comes, the second
/// larger, with the usual parameters, pure water topped up and air of 6 L/min, the third warmed and
/// started dry, the last seeded and greedy far beyond any range, so that pools are emptied within a step.
fn alike(first: &ModelInput, number: u64) -> [ModelInput; ABREAST] {
    let mut tanks = [0, 1000, 2000, 3000].map(|other| match other {
        0 => first.clone(),
        _ => with_other_numbers(first, number + other),
    });
    let [_, usual, other, seeded] = &mut tanks;
    usual.parameters = ParameterSet::default();
    usual.tank.volume_l *= 1.5;
    if let TopUp::Automatic(water) = &mut usual.top_up {
        *water = Composition::PURE;
    }
    for line in &mut usual.air {
        line.value = 6.0;
    }
    other.heating.set_c = Some(27.0);
    other.dry_days = 12.0;
    if let GasPlan::Hold {
        target_mg_per_l, ..
    } = &mut other.gas
    {
        *target_mg_per_l += 4.0;
    }
    seeded.seed_level = 3000.0;
    let_loose(seeded);
    tanks
}

/// The random tank of a number with gas that is tuned, its hours found. From day 3 on the light comes on
/// soon after midnight, so that the lead found before reaches back to it in some lanes and not in others.
fn with_found_gas(number: u64) -> ModelInput {
    let mut tank = random_tank::tank(number, DAYS);
    tank.light.extend(tank.light.first().map(|line| TimerLine {
        from_day: 3,
        window: Window {
            on: TimeOfDay::at(2, 15),
            off: TimeOfDay::at(12, 0),
        },
        ..*line
    }));
    tank.gas = GasPlan::Hold {
        target_mg_per_l: 25.0,
        tuned_on: vec![1, 7],
        hours: GasHours::Found { from_day: 1 },
    };
    tank
}

/// Compares four tanks side by side with each alone; gives what each alone left.
fn compared(tanks: &[ModelInput; ABREAST], what: &str) -> Vec<End> {
    let plan = Plan::<Lanes<ABREAST>>::abreast(&tanks.each_ref()).unwrap();
    let together = ends(&plan);
    let alone = tanks.iter().flat_map(|tank| ends(&Plan::new(tank)));
    let mut found = Vec::new();
    for (lane, (own, abreast)) in alone.zip(together).enumerate() {
        assert_eq!(own, abreast, "{what}, lane {lane}: alone, and abreast");
        found.push(own);
    }
    found
}

#[test]
fn whole_runs_side_by_side_leave_the_bits_of_each_tank_alone() {
    let (mut cut_finer, mut held_back, mut tuned) = (0, 0, 0);
    for number in 0..8 {
        let first = match number % 2 {
            0 => with_found_gas(number),
            _ => random_tank::tank(number, DAYS),
        };
        let ends = compared(&alike(&first, number), &format!("tank {number}"));
        let works: Vec<Work> = ends.iter().map(|end| end.work).collect();
        cut_finer += usize::from(works.iter().any(|work| work.parts != works[0].parts));
        held_back += usize::from(works[0].held_back == 0 && works[3].held_back > 0);
        tuned += usize::from(ends.iter().any(|end| end.tunings.len() > 1));
    }
    assert!(
        cut_finer > 4 && held_back > 2 && tuned > 2,
        "steps cut finer in one lane in {cut_finer} sets, held back in {held_back}, tuned in {tuned}"
    );
}
