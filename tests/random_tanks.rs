//! Thousands of tanks drawn at random: what must hold in every one of them, at every step.
//!
//! `TANKS=20000 cargo test --release --test random_tanks` draws more.

mod support;

use std::sync::LazyLock;
use std::sync::atomic::{AtomicU64, Ordering};

use firstfill::base::clock::DAY;
use firstfill::engine::event::Event;
use firstfill::engine::happening::held;
use firstfill::engine::plan::Plan;
use firstfill::engine::recorder::crossed;
use firstfill::engine::result::{Reading, Side};
use firstfill::engine::simulation::{Simulation, Watcher};
use firstfill::model::conserved::QUANTITIES;
use firstfill::model::pool::{POOLS, Pool};
use support::drive::go_on;
use support::greedy::let_loose;
use support::random_tank::{self, STEP_MINUTES};

/// How many tanks, unless `TANKS` says otherwise.
const USUAL: u64 = 2000;

/// Most are short, so that thousands are quick; every twentieth lasts two weeks.
fn days(number: u64) -> u32 {
    if number.is_multiple_of(20) { 14 } else { 3 }
}

/// Steps of the two whole days that even the shortest tank lives, were nothing ever switched.
const FEWEST: u64 = (2 * DAY / STEP_MINUTES) as u64;

/// One tank in so many is seeded far beyond any range, so that films empty their pools within a step.
const OVERSEEDED: u64 = 5;
/// One in so many has greedy processes too, so that the guard of the pools has work.
const GREEDY: u64 = 10;

/// What was seen of one tank.
struct Seen {
    number: u64,
    readings: u64,
    not_a_number: u64,
    below_zero: Option<(Pool, f64, u32)>,
    ph: (f64, f64),
    ledger_error: f64,
    held_back: u64,
    went_wrong: Option<String>,
}

impl Seen {
    fn nothing_of(number: u64) -> Seen {
        Seen {
            number,
            readings: 0,
            not_a_number: 0,
            below_zero: None,
            ph: (f64::INFINITY, f64::NEG_INFINITY),
            ledger_error: f64::NAN,
            held_back: 0,
            went_wrong: None,
        }
    }
    fn note(&mut self, reading: &Reading, tank: &Simulation<'_>) {
        self.readings += 1;
        let all_are_numbers = numbers(reading).iter().all(|number| number.is_finite());
        self.not_a_number += u64::from(!all_are_numbers);
        self.ph = (self.ph.0.min(reading.ph), self.ph.1.max(reading.ph));
        for pool in (0..POOLS).map(Pool::at) {
            let amount = tank.state[pool];
            if amount < 0.0 && !pool.may_be_negative() {
                self.below_zero
                    .get_or_insert((pool, amount, reading.minute));
            }
        }
    }
}

impl Watcher for Seen {
    fn wants(&self, _: u32, _: Side) -> bool {
        true
    }
    fn see(&mut self, reading: &Reading, tank: &Simulation<'_>) {
        self.note(reading, tank);
    }
    fn happened(&mut self, _: &Event, _: f64, before: &Reading, after: &Reading) {
        self.not_a_number += [before, after]
            .into_iter()
            .filter(|reading| !numbers(reading).iter().all(|number| number.is_finite()))
            .count() as u64;
    }
}

/// Everything that can be read off a tank; those that follow from others left out.
fn numbers(r: &Reading) -> [f64; 40] {
    [
        r.tan_mg_n_per_l,
        r.free_ammonia_mg_n_per_l,
        r.nitrite_mg_n_per_l,
        r.nitrous_acid_mg_n_per_l,
        r.nitrate_mg_n_per_l,
        r.phosphate_mg_p_per_l,
        r.potassium_mg_per_l,
        r.iron_mg_per_l,
        r.oxygen_mg_per_l,
        r.oxygen_saturation_percent,
        r.co2_mg_per_l,
        r.indicator_co2_mg_per_l,
        r.ph,
        r.alkalinity_meq_per_l,
        r.inorganic_carbon_mmol_per_l,
        r.hardness_meq_per_l,
        r.chloride_mg_per_l,
        r.chlorine_mg_cl2_per_l,
        r.chloramine_mg_cl2_per_l,
        r.volume_l,
        r.temperature_c,
        r.light_umol_per_m2_s,
        r.gas_mg_per_h,
        r.air_l_per_min,
        r.ammonia_oxidisers_mg_cod,
        r.nitrite_oxidisers_mg_cod,
        r.complete_oxidisers_mg_cod,
        r.ammonia_capacity_mg_n_per_day,
        r.nitrite_capacity_mg_n_per_day,
        r.nitrite_oxidiser_speed_frac,
        r.soil_ammonium_mg_n,
        r.soil_phosphorus_mg_p,
        r.soil_acid_meq,
        r.pore_water_ammonium_mg_n_per_l,
        r.detritus_mg_n,
        r.algae_g_per_m2,
        r.plants_g,
        r.plants_mg_n,
        r.canopy_frac,
        r.indicator_ph(),
    ]
}

/// The largest error of the accounts, as a share of what was there and of all that moved.
fn ledger_error(tank: &Simulation<'_>) -> f64 {
    let contents = tank.plan.model.contents();
    let (start, now) = (
        held(contents, &tank.plan.start),
        held(contents, &tank.state),
    );
    let ways = crossed(tank.plan.model.matrix(), &tank.extents, &tank.crossed);
    let error = |place: usize| {
        let came: f64 = ways.iter().map(|way| way[place]).sum();
        let moved: f64 = ways.iter().map(|way| way[place].abs()).sum();
        let size = start[place].abs() + now[place].abs() + moved;
        // nothing of it in the tank, and none came: the account is empty
        if size == 0.0 {
            0.0
        } else {
            (now[place] - start[place] - came).abs() / size
        }
    };
    (0..QUANTITIES.len()).map(error).fold(0.0, f64::max)
}

fn look_at(number: u64) -> Seen {
    let mut input = random_tank::tank(number, days(number));
    if number.is_multiple_of(OVERSEEDED) {
        input.seed_level = random_tank::Lot::new(number).decades(10.0, 1000.0);
    }
    if number.is_multiple_of(GREEDY) {
        let_loose(&mut input);
    }
    let plan = Plan::new(&input);
    let mut tank = Simulation::filled(&plan);
    let mut seen = Seen::nothing_of(number);
    match go_on(&mut tank, days(number), &mut seen) {
        Ok(()) => {
            tank.show(&mut seen);
            seen.ledger_error = ledger_error(&tank);
            seen.held_back = tank.work(0).held_back;
        }
        Err(why) => seen.went_wrong = Some(why.to_string()),
    }
    seen
}

/// All tanks, each run once for all properties.
static TANKS: LazyLock<Vec<Seen>> = LazyLock::new(|| {
    let count = std::env::var("TANKS").map_or(USUAL, |text| text.parse().unwrap());
    let next = AtomicU64::new(0);
    let work = || {
        let numbers = std::iter::from_fn(|| {
            Some(next.fetch_add(1, Ordering::Relaxed)).filter(|number| *number < count)
        });
        numbers.map(look_at).collect::<Vec<Seen>>()
    };
    let workers = std::thread::available_parallelism().map_or(1, usize::from);
    std::thread::scope(|scope| {
        let workers: Vec<_> = (0..workers).map(|_| scope.spawn(work)).collect();
        workers
            .into_iter()
            .flat_map(|worker| worker.join().unwrap())
            .collect()
    })
});

/// Fails with the tanks of which something bad is to be said.
fn in_no_tank(bad: impl Fn(&Seen) -> Option<String>) {
    let said: Vec<String> = TANKS
        .iter()
        .filter_map(|seen| bad(seen).map(|words| format!("tank {}: {words}", seen.number)))
        .collect();
    assert!(
        said.is_empty(),
        "{} of {}:\n{}",
        said.len(),
        TANKS.len(),
        said.join("\n")
    );
}

#[test]
fn no_tank_ends_in_an_impossible_number() {
    in_no_tank(|seen| seen.went_wrong.clone());
    in_no_tank(|seen| (seen.not_a_number > 0).then(|| format!("{} readings", seen.not_a_number)));
    // a reading at every step, of every tank: two days and more of them
    in_no_tank(|seen| (seen.readings < FEWEST).then(|| format!("only {} readings", seen.readings)));
}

#[test]
fn no_pool_falls_below_zero_unless_it_may() {
    in_no_tank(|seen| {
        let (pool, amount, minute) = seen.below_zero?;
        Some(format!("{pool:?} {amount:e} at minute {minute}"))
    });
    // the guard that holds processes back has work in greedy tanks, and hardly any in the others
    let guarded = |greedy: bool| {
        let of_kind = |seen: &&Seen| seen.number.is_multiple_of(GREEDY) == greedy;
        let of_kind: Vec<&Seen> = TANKS.iter().filter(of_kind).collect();
        let guarded = of_kind.iter().filter(|seen| seen.held_back > 0).count();
        println!("steps held back in {guarded} of {} tanks", of_kind.len());
        guarded as f64 / of_kind.len() as f64
    };
    assert!(guarded(false) < 0.01 && guarded(true) > 0.5);
}

#[test]
fn every_account_closes_to_one_in_a_thousand_million() {
    // rounding alone: some thousand steps of sums of a hundred terms walk to about 1e-12
    in_no_tank(|seen| {
        let closed = seen.ledger_error <= 1e-9;
        (!closed).then(|| format!("{:e}", seen.ledger_error))
    });
    let worst = TANKS
        .iter()
        .map(|seen| seen.ledger_error)
        .fold(0.0, f64::max);
    println!("worst ledger error {worst:.1e}");
}

#[test]
fn ph_stays_between_3_and_11() {
    // under 3 and over 11 no fresh water is found, and the constants of carbonic acid are untried
    in_no_tank(|seen| {
        let (low, high) = seen.ph;
        // greedy algae take all the carbon dioxide there is
        let high = if seen.number.is_multiple_of(GREEDY) {
            low
        } else {
            high
        };
        (low < 3.0 || high > 11.0).then(|| format!("pH {low:.2} to {high:.2}"))
    });
    let (lowest, highest) = TANKS.iter().fold((7.0, 7.0), |(low, high), seen| {
        (f64::min(low, seen.ph.0), f64::max(high, seen.ph.1))
    });
    println!("pH {lowest:.2} to {highest:.2} over {} tanks", TANKS.len());
    assert!(lowest < 6.0 && highest > 8.5, "the tanks are of many kinds");
}
