//! Laws of nature that hold between two tanks which differ in one thing.
//!
//! Each law is tried on many pairs of random tanks. A law that is true of nature only under a
//! condition names it, and why. Each also asks that the difference be seen in most pairs: a law
//! between equal numbers would hold by accident.
//!
//! `TIMES=20 cargo test --release --test laws` tries twenty times as many pairs.

#[path = "../support/random_tank.rs"]
#[allow(dead_code)]
mod random_tank;

mod air;
mod gas_and_light;
mod life;
mod nitrogen;
mod water;

use std::cell::Cell;

use firstfill::base::clock::DAY;
use firstfill::engine::event::EventKind;
use firstfill::engine::input::{GasPlan, ModelInput, TopUp};
use firstfill::engine::result::{Reading, RunResult};
use firstfill::engine::run::run;
use firstfill::model::composition::Composition;

pub use random_tank::{Lot, tank};

/// How far a law may seem broken where its two sides are equal, as a share of the quantity's size:
/// the two runs step alike, so that the errors of their steps (1e-3 of the range and less) all but
/// cancel.
pub const TIE: f64 = 1e-5;

/// What one pair of tanks said of a law.
pub enum Said {
    /// It holds, and the difference can be seen.
    Seen,
    /// It holds, and both sides are equal to the eye.
    Equal,
    /// It does not hold.
    Broken(String),
}

/// Whether `more` is at least `less`, on quantities of a size.
pub fn at_least(more: f64, less: f64, size: f64) -> Said {
    if more < less - TIE * size || (more - less).is_nan() {
        return Said::Broken(format!("{more} is below {less}"));
    }
    if more > less + TIE * size {
        Said::Seen
    } else {
        Said::Equal
    }
}

/// The worst of many sayings.
pub fn all(sayings: impl Iterator<Item = Said>) -> Said {
    let mut sum = Said::Equal;
    for said in sayings {
        match said {
            Said::Broken(why) => return Said::Broken(why),
            Said::Seen => sum = Said::Seen,
            Said::Equal => {}
        }
    }
    sum
}

/// Tries a law on so many tanks, `TIMES` as many if that is set. In at least `seen_in` of a hundred the
/// difference must be seen.
pub fn law(count: u64, seen_in: u64, of: impl Fn(u64) -> Said) {
    let times = std::env::var("TIMES").map_or(1, |text| text.parse().unwrap());
    let (mut seen, mut aside, mut broken) = (0, 0, Vec::new());
    let count = count * times;
    for number in 0..count {
        TOO_COARSE.set(false);
        match of(number) {
            _ if TOO_COARSE.get() => aside += 1,
            Said::Seen => seen += 1,
            Said::Equal => {}
            Said::Broken(_) if holds_in_finer_steps(number, &of) => aside += 1,
            Said::Broken(why) => broken.push(format!("tank {number}: {why}")),
        }
    }
    println!("seen in {seen} of {count} pairs, {aside} set aside");
    assert!(20 * aside <= count, "{aside} of {count} set aside");
    let list = broken.join("\n");
    assert!(broken.is_empty(), "{} of {count}:\n{list}", broken.len());
    assert!(
        100 * seen >= seen_in * count,
        "seen in {seen} of {count} only"
    );
}

/// Whether a law that is broken holds when steps are a quarter as long: then it was the step's doing.
fn holds_in_finer_steps(number: u64, of: impl Fn(u64) -> Said) -> bool {
    FINER.set(true);
    let said = of(number);
    FINER.set(false);
    !matches!(said, Said::Broken(_))
}

thread_local! {
    /// Whether steps are a quarter as long.
    static FINER: Cell<bool> = const { Cell::new(false) };
    /// Whether a run of the present pair says itself that its steps were too long for it: processes were
    /// held back in some. Such a pair is set aside; what it shows may be the step's doing.
    static TOO_COARSE: Cell<bool> = const { Cell::new(false) };
}

/// Runs a tank that is known to run.
pub fn live(input: &ModelInput) -> RunResult {
    let result = match FINER.get() {
        true => run(&ModelInput {
            step_minutes: input.step_minutes / 4,
            ..input.clone()
        })
        .unwrap(),
        false => run(input).unwrap(),
    };
    if result.work.held_back > 0 {
        TOO_COARSE.set(true);
    }
    result
}

/// Both tanks' readings, minute by minute. Events of both fall on the same minutes.
pub fn side_by_side<'a>(
    a: &'a RunResult,
    b: &'a RunResult,
) -> impl Iterator<Item = (&'a Reading, &'a Reading)> {
    let together = |(a, b): (&'a Reading, &'a Reading)| {
        assert_eq!((a.minute, a.side), (b.minute, b.side));
        (a, b)
    };
    assert_eq!(a.readings.len(), b.readings.len());
    a.readings.iter().zip(&b.readings).map(together)
}

/// Moves everything that happens at one instant to the moment of filling.
pub fn all_at_filling(input: &mut ModelInput) {
    for stand in &mut input.stands {
        stand.planted_at = input.filled_at;
    }
    for event in &mut input.events {
        event.minute = input.filled_at;
    }
}

/// The highest value of a run.
pub fn highest(run: &RunResult, value: fn(&Reading) -> f64) -> f64 {
    run.readings
        .iter()
        .map(value)
        .fold(f64::NEG_INFINITY, f64::max)
}

/// The lowest value of a run.
pub fn lowest(run: &RunResult, value: fn(&Reading) -> f64) -> f64 {
    run.readings.iter().map(value).fold(f64::INFINITY, f64::min)
}

/// Oxygen in equilibrium with the air, mg/L.
pub fn saturation(r: &Reading) -> f64 {
    100.0 * r.oxygen_mg_per_l / r.oxygen_saturation_percent
}

/// The tank without lamp: nothing grows.
pub fn in_the_dark(mut input: ModelInput) -> ModelInput {
    input.light.clear();
    input
}

/// The tank without microbes that turn ammonia over, and without any that would come later.
pub fn without_nitrifiers(mut input: ModelInput) -> ModelInput {
    input.seed_level = 0.0;
    input.dry_days = 0.0;
    input
        .events
        .retain(|event| !matches!(event.kind, EventKind::Seed { .. }));
    input
}

/// The tank with nobody's hand in it after planting.
pub fn left_alone(mut input: ModelInput) -> ModelInput {
    input
        .events
        .retain(|event| matches!(event.kind, EventKind::Plant { .. }));
    input
}

/// The tank without plants and without algae.
pub fn without_green(mut input: ModelInput) -> ModelInput {
    input.stands.clear();
    input
        .events
        .retain(|event| !matches!(event.kind, EventKind::Plant { .. } | EventKind::Trim { .. }));
    input.parameters = input.parameters.with("G0", 0.0);
    input
}

/// The tank kept full with pure water.
pub fn topped_up(mut input: ModelInput) -> ModelInput {
    input.top_up = TopUp::Automatic(Composition::PURE);
    input
}

/// The tank with its gas at a rate per litre all day, or none.
pub fn with_gas(mut input: ModelInput, mg_per_h_and_l: f64) -> ModelInput {
    use firstfill::base::clock::{TimeOfDay, Window};
    use firstfill::engine::input::TimerLine;
    let line = TimerLine {
        from_day: 0,
        window: Window {
            on: TimeOfDay(0),
            off: TimeOfDay(DAY),
        },
        value: mg_per_h_and_l * input.tank.volume_l,
    };
    input.gas = match mg_per_h_and_l > 0.0 {
        true => GasPlan::Rate {
            lines: vec![line],
            cut_off_mg_per_l: None,
        },
        false => GasPlan::None,
    };
    input
}
