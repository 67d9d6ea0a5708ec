//! Our scheme against a general-purpose library on the same model at the same error.
//!
//! The model is the reference tank "base": 56 days, three stands, gas at a fixed rate, water changes.
//! The library (crate `ivp`) asks the same code for the rates and chooses its own steps between the
//! same switches and events (`tests/support/peer`). Each of its explicit methods is tried with each
//! kind of tolerance (see [`Kind`]), from loose to tight, until it is
//! * as close as our default step in the worst quantity that charts draw, or
//! * as close as that in every one of them;
//!
//! and the fastest of these is the peer. Errors are shares of the range of a quantity, against our run
//! with steps 16 times finer. Both sides run the model only, on one thread; building it is not counted.
//!
//! `cargo bench --bench peer` prints what was tried, the ratios, and then the table of the bench. The
//! fastest sample is the one to read: whatever else the machine does comes on top.

#[path = "../tests/support/mod.rs"]
mod support;

use std::sync::LazyLock;
use std::time::Instant;

use divan::{Bencher, black_box};
use firstfill::engine::input::ModelInput;
use firstfill::engine::many::{ABREAST, Abreast};
use firstfill::engine::plan::Plan;
use support::drive::{Reach, through};
use support::peer::{Asked, Method, Peer};
use support::step_error::{FINEST, Shares, Track, worst};

fn main() {
    let found = &*FOUND;
    let (quantity, error) = worst(&found.ours);
    println!("ours: off by {error:.1e} ({quantity})");
    let [ours, four, theirs @ ..] = side_by_side();
    println!("ours: {ours:.2} ms alone, {four:.2} ms each of four abreast");
    let both = [Close::InTheWorst, Close::InEvery].into_iter().zip(theirs);
    for ((close, ms), tried) in both.zip(&found.tried) {
        println!("\nthe library, {close:?}:");
        for tried in tried {
            println!("{tried}");
        }
        println!("{}: the fastest, here {ms:.2} ms", fastest(tried));
        let (alone, abreast) = (ms / ours, ms / four);
        println!("ratio: {alone:.2} alone, {abreast:.2} four abreast, per run");
    }
    println!();
    divan::main();
}

/// How close the library is to be.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Close {
    /// Its largest error over all quantities no larger than our largest.
    InTheWorst,
    /// Its error in each quantity no larger than ours in the same.
    InEvery,
}

impl Close {
    fn enough(self, theirs: &Shares, ours: &Shares) -> bool {
        match self {
            Close::InTheWorst => worst(theirs).1 <= worst(ours).1,
            Close::InEvery => theirs.iter().zip(ours).all(|(one, other)| one <= other),
        }
    }
}

/// What one number of tolerance means to the library.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Kind {
    /// The relative tolerance, and the absolute one in the unit of every pool.
    OneNumber,
    /// The relative tolerance, and the absolute one as a share of the largest amount of each pool.
    BySize,
    /// The absolute tolerance alone, as a share of the range of each pool: known only after a run.
    ByRange,
}

/// In the unit of a pool, for those that stay where they are.
const NEXT_TO_NOTHING: f64 = 1e-12;

impl Kind {
    fn asked(self, method: Method, number: f64, reach: &Reach) -> Asked {
        let share = |of: f64| (number * of).max(NEXT_TO_NOTHING);
        let (relative, absolute) = match self {
            Kind::OneNumber => (number, reach.sizes().map(|_| number)),
            Kind::BySize => (number, reach.sizes().map(share)),
            Kind::ByRange => (0.0, reach.ranges().map(share)),
        };
        Asked {
            method,
            relative,
            absolute,
        }
    }
}

/// A way of asking the library that is close enough.
struct Tried {
    asked: Asked,
    kind: Kind,
    number: f64,
    error: f64,
    looks: usize,
    ms: f64,
}

impl std::fmt::Display for Tried {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let Tried {
            asked,
            kind,
            number,
            error,
            looks,
            ms,
        } = self;
        let name = format!("{:?}", asked.method);
        let kind = format!("{kind:?}");
        write!(
            f,
            "  {name:17} {kind:10} {number:.1e}: off by {error:.1e}, {looks:5} looks, {ms:.2} ms"
        )
    }
}

fn fastest(tried: &[Tried]) -> &Tried {
    let by_time = |one: &&Tried, other: &&Tried| one.ms.total_cmp(&other.ms);
    tried
        .iter()
        .min_by(by_time)
        .expect("the library can be as close")
}

fn input() -> ModelInput {
    support::reference::input("base")
}

/// What the search finds, once.
struct Found {
    ours: Shares,
    /// In the order of [`Close`].
    tried: [Vec<Tried>; 2],
}

static FOUND: LazyLock<Found> = LazyLock::new(|| {
    let input = input();
    let exact = Track::of(&input, FINEST);
    let ours = Track::of(&input, 1).apart(&exact);
    let plan = Plan::new(&input);
    let search = Search {
        peer: Peer::new(&plan),
        reach: Reach::of(&plan),
        minutes: exact.minutes(),
        exact,
    };
    let tried = [Close::InTheWorst, Close::InEvery].map(|close| search.every(close, &ours));
    Found { ours, tried }
});

struct Search<'p> {
    peer: Peer<'p>,
    reach: Reach,
    minutes: Vec<u32>,
    exact: Track,
}

/// Tolerances are tried from a tenth down to a hundred-millionth, so many to a power of ten.
const LOOSEST: i32 = 1;
const TIGHTEST: i32 = 8;
const STEPS: i32 = 8;

impl Search<'_> {
    fn every(&self, close: Close, ours: &Shares) -> Vec<Tried> {
        let methods = [
            Method::BogackiShampine3,
            Method::DormandPrince5,
            Method::DormandPrince8,
        ];
        let kinds = [Kind::OneNumber, Kind::BySize, Kind::ByRange];
        let both = methods
            .into_iter()
            .flat_map(|m| kinds.map(|kind| (m, kind)));
        both.filter_map(|(m, kind)| self.loosest(m, kind, |theirs| close.enough(theirs, ours)))
            .collect()
    }

    fn loosest(
        &self,
        method: Method,
        kind: Kind,
        enough: impl Fn(&Shares) -> bool,
    ) -> Option<Tried> {
        (LOOSEST * STEPS..=TIGHTEST * STEPS).find_map(|step| {
            let number = 10f64.powf(-f64::from(step) / f64::from(STEPS));
            let asked = kind.asked(method, number, &self.reach);
            let theirs = self.peer.track(&asked, &self.minutes).apart(&self.exact);
            enough(&theirs).then(|| Tried {
                looks: self.peer.run(&asked).1,
                ms: (0..ROUNDS)
                    .map(|_| ms(|| self.peer.run(&asked)))
                    .fold(f64::MAX, f64::min),
                error: worst(&theirs).1,
                asked,
                kind,
                number,
            })
        })
    }
}

/// Rounds of which the fastest counts: in the search, and where the ratio comes from.
const ROUNDS: usize = 20;
const MANY_ROUNDS: usize = 300;

fn ms<T>(what: impl Fn() -> T) -> f64 {
    let began = Instant::now();
    black_box(what());
    began.elapsed().as_secs_f64() * 1e3
}

/// The least times per run, ms, taken in turns so that all meet the same noise: ours alone, ours of
/// four abreast, the library in the order of [`Close`].
fn side_by_side() -> [f64; 4] {
    let input = input();
    let plan = Plan::new(&input);
    let four = Plan::<Abreast>::abreast(&[&input; ABREAST]).unwrap();
    let peer = Peer::new(&plan);
    let [worst, every] = (FOUND.tried.each_ref()).map(|tried| &fastest(tried).asked);
    (0..MANY_ROUNDS).fold([f64::MAX; 4], |least, _| {
        let round = [
            ms(|| through(&plan)),
            ms(|| through(&four)) / ABREAST as f64,
            ms(|| peer.run(worst)),
            ms(|| peer.run(every)),
        ];
        std::array::from_fn(|place| least[place].min(round[place]))
    })
}

fn by_the_library(bencher: Bencher<'_, '_>, tried: &[Tried]) {
    let plan = Plan::new(&input());
    let peer = Peer::new(&plan);
    let asked = &fastest(tried).asked;
    bencher.bench_local(|| peer.run(black_box(asked)));
}

/// The library, as close as we are in the worst quantity.
#[divan::bench]
fn library_as_close_in_the_worst(bencher: Bencher<'_, '_>) {
    by_the_library(bencher, &FOUND.tried[0]);
}

/// The library, as close as we are in every quantity.
#[divan::bench]
fn library_as_close_in_every(bencher: Bencher<'_, '_>) {
    by_the_library(bencher, &FOUND.tried[1]);
}

/// Ours, alone.
#[divan::bench]
fn ours_alone(bencher: Bencher<'_, '_>) {
    let plan = Plan::new(&input());
    bencher.bench_local(|| through(black_box(&plan)));
}

/// Ours, four side by side: four runs in the time printed.
#[divan::bench]
fn ours_four_abreast(bencher: Bencher<'_, '_>) {
    let input = input();
    let plan = Plan::<Abreast>::abreast(&[&input; ABREAST]).unwrap();
    bencher.bench_local(|| through(black_box(&plan)));
}
