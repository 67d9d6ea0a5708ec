//! How long a search for a calendar takes, and that it ends where a look at all 4,096 calendars does.
//!
//! `cargo bench --bench calendar` prints the table. Floor on two free cores: eight weeks with three free weekdays
//! 60 s. On a busy machine look at the fastest column.

use firstfill::analysis::calendar::days::Days;
use firstfill::analysis::calendar::judge::Judge;
use firstfill::analysis::calendar::search::{Halt, Judging, search};
use firstfill::analysis::calendar::wish::{Least, Terms, Trying};
use firstfill::analysis::calendar::{Ended, Found};
use firstfill::analysis::case::Case;
use firstfill::analysis::levers::trials::Trials;
use firstfill::base::stop::Stop;
use firstfill::scenario;

fn main() {
    equals_enumeration(Least::Litres);
    equals_enumeration(Least::ReadyDay);
    divan::main();
}

/// The shared tank with a calendar to be found.
fn case(length: u32, calendar: &str) -> Case {
    let text =
        format!("based_on = \"scenarios/sixty.toml\"\nlength = {length}\n[calendar]\n{calendar}\n");
    let read = scenario::read_text("bench.toml", &text);
    read.map_err(|problems| problems.render(false))
        .unwrap()
        .case
}

/// Calendars of the case, and members on which each is judged.
const COUNT: usize = 4096;
const MEMBERS: usize = 8;

fn equals_enumeration(least: Least) {
    let case = case(
        42,
        "free = [\"Tue\"]\nsizes = 3\npeak_tan = \"5 mg N/L\"\nkeep = 20\nready_by = 42",
    );
    let (wish, stop) = (case.calendar.as_ref().unwrap(), Stop::default());
    // for a quarter of the calendars, so that they cannot all be looked at
    let trying = Trying {
        least,
        members: MEMBERS,
        most_runs: MEMBERS * COUNT / 4,
        ..Trying::default()
    };
    let trials = Trials::of(&case, trying.seed, &stop);
    let planned = trials.plan(trying.members, &mut || {}).unwrap();
    let terms = Terms::of(wish, &planned, case.input.last_day);
    let mut none = || {};
    let mut judge = Judge::new(&trials, wish, terms, trying, &mut none);
    let first = Days::planned(&case.input, wish);
    let ended = search(&mut judge, wish, &first, trying.seed);
    assert!(matches!(ended, Ok(Ended::Settled) | Err(Halt::Spent)));
    let (tried, (_, found)) = (judge.tried(), judge.best().unwrap());
    // all of them take more runs than a search is given
    let all = Trying {
        most_runs: usize::MAX,
        ..trying
    };
    let mut none = || {};
    let mut judge = Judge::new(&trials, wish, terms, all, &mut none);
    let sizes = wish.shares.len() as u32 + 1;
    for number in 0..COUNT as u32 {
        let place = |at: usize| (number / sizes.pow(at as u32) % sizes) as u8;
        let days = Days((0..wish.free_days.len()).map(place).collect());
        judge.score(&days).unwrap();
    }
    let (_, best) = judge.best().unwrap();
    assert_eq!(judge.tried(), COUNT);
    assert!(found.order(&best, least).is_eq(), "{found:?} and {best:?}");
    println!("{least:?}: the best of {COUNT} calendars, found by trying {tried}");
}

/// Eight weeks with three free weekdays.
#[divan::bench(sample_count = 1, sample_size = 1)]
fn three_free_weekdays(bencher: divan::Bencher<'_, '_>) {
    let case = case(56, "free = [\"Tue\", \"Thu\", \"Sat\"]");
    let (wish, stop) = (case.calendar.as_ref().unwrap(), Stop::default());
    bencher.bench_local(|| Found::of(&case, wish, Trying::default(), &stop, |_, _| {}).unwrap());
}
