//! Many plausible tanks of one scenario: each is what it would be alone, and bands hold what they say.

#[path = "support/varied.rs"]
mod varied;

use std::path::Path;

use firstfill::analysis::branch::Noons;
use firstfill::analysis::broken::{Broken, Running};
use firstfill::analysis::case::Case;
use firstfill::analysis::charted::{QUANTITIES, all_of};
use firstfill::analysis::day_of::DayOf;
use firstfill::analysis::ensemble::bands::SHARES;
use firstfill::analysis::ensemble::curve::ReadyCurve;
use firstfill::analysis::ensemble::days::Of;
use firstfill::analysis::ensemble::member::{Member, Told};
use firstfill::analysis::ensemble::{self, Ask, Ensemble, EnsembleError, confirm, soil};
use firstfill::analysis::milestones::{figures, readings_of};
use firstfill::analysis::outcome::Outcome;
use firstfill::analysis::ready::{Ready, Waiting};
use firstfill::base::clock::{DAY, HOUR};
use firstfill::base::stop::{Stop, Stopped};
use firstfill::engine::event::{Event, EventKind};
use firstfill::engine::input::ModelInput;
use firstfill::engine::plan::Plan;
use firstfill::engine::result::{Reading, RunResult, Side};
use firstfill::engine::run::run;
use firstfill::engine::simulation::Simulation;
use firstfill::engine::valve::Valves;
use firstfill::engine::watcher::Eyes;
use firstfill::scenario;
use varied::member;

fn shipped(name: &str) -> Case {
    let path = format!("scenarios/{name}.toml");
    match scenario::load(Path::new(&path)) {
        Ok(loaded) => loaded.case,
        Err(problems) => panic!("{problems:?}"),
    }
}

/// A heavy load of fish planned for a tank that is quiet before its microbes are many.
fn crowded() -> Case {
    let mut case = shipped("power-cut");
    case.input.power_cuts.clear();
    for event in &mut case.input.events {
        if let EventKind::Stock(animals) = &mut event.kind {
            animals.feed_g_per_day *= 5.0;
            animals.mass_g *= 5.0;
        }
    }
    case
}

fn ran(case: &Case, count: usize, input: impl Fn(usize) -> ModelInput + Sync) -> Ensemble {
    let ask = Ask {
        case,
        members: count,
        drawn_days: &[3],
    };
    ensemble::run(ask, input, &Stop::default(), |_, _| {}).unwrap()
}

fn told(member: &Member) -> &Told {
    member.told.as_ref().unwrap()
}

/// What a single run of an input says of the ready day and the figures.
fn alone(case: &Case, input: ModelInput) -> (Outcome, Case) {
    let case = Case {
        input,
        ..case.clone()
    };
    (Outcome::of(&case).unwrap(), case)
}

fn agrees(told: &Told, case: &Case, input: ModelInput, what: &str) {
    let (outcome, case) = alone(case, input);
    assert_eq!(told.figures, figures(&outcome.run, &case.limits), "{what}");
    assert_eq!(told.ready.day, outcome.verdict.day(), "{what}");
    assert_eq!(told.ready.waited_for, outcome.verdict.waited_for, "{what}");
    let quiet = match outcome.verdict.ready {
        Ready::QuietNotRipe { day, .. } => Some(day),
        _ => told.ready.quiet_from,
    };
    assert_eq!(told.ready.quiet_from, quiet, "{what}");
    if outcome.verdict.broken_after.is_some() {
        assert_eq!(told.ready.broken_after, outcome.verdict.broken_after);
    }
    let broken: Vec<&str> = told.figures.broken.each().map(Running::key).collect();
    let found = outcome.findings.iter().filter(|finding| !finding.kept);
    assert_eq!(broken, found.map(|f| f.key).collect::<Vec<_>>(), "{what}");
    for finding in &outcome.findings {
        match finding.key {
            "oxygen" => assert_eq!(finding.hours, told.figures.hours.oxygen, "{what}"),
            "co2" => assert_eq!(finding.hours, told.figures.hours.co2, "{what}"),
            "ph_jump" => assert_eq!(Some(finding.worst), told.figures.ph_jump, "{what}"),
            _ => {}
        }
    }
}

#[test]
fn a_member_of_the_central_input_has_the_bits_of_the_central_run() {
    let names = [
        "sixty",
        "heavy-early-changes",
        "dense-still",
        "soft-water-stuck",
        "dark-start",
        "handover-in-may",
        "power-cut",
    ];
    for name in names {
        let case = shipped(name);
        let ensemble = ran(&case, 1, |_| case.input.clone());
        agrees(told(&ensemble.members[0]), &case, case.input.clone(), name);
    }
}

#[test]
fn members_side_by_side_are_each_what_they_are_alone_their_valves_tuned() {
    for case in [shipped("handover-in-may"), crowded()] {
        let ensemble = ran(&case, 6, |number| member(&case.input, number));
        for (number, one) in ensemble.members.iter().enumerate() {
            let what = format!("{}, member {number}", case.name);
            agrees(told(one), &case, member(&case.input, number), &what);
        }
        let gas: Vec<f64> = ensemble
            .members
            .iter()
            .map(|m| told(m).figures.gas_g)
            .collect();
        assert!(gas.windows(2).all(|two| two[0] != two[1]), "{gas:?}");
    }
}

#[test]
fn members_hang_on_nothing_but_their_input() {
    const COUNT: usize = 21; // five groups and one alone
    let case = crowded();
    let on = |threads: usize, count: usize, input: &(dyn Fn(usize) -> ModelInput + Sync)| {
        let pool = rayon::ThreadPoolBuilder::new().num_threads(threads);
        pool.build().unwrap().install(|| ran(&case, count, input))
    };
    let plain = on(1, COUNT, &|number| member(&case.input, number));
    for threads in [2, 3] {
        let again = on(threads, COUNT, &|number| member(&case.input, number));
        assert_eq!(again, plain, "{threads} threads");
    }
    let backwards = on(2, COUNT, &|number| member(&case.input, COUNT - 1 - number));
    for (one, other) in plain.members.iter().zip(backwards.members.iter().rev()) {
        assert_eq!(one.told, other.told, "other neighbours, another lane");
    }
    assert_eq!(backwards.bands, plain.bands, "the order does not matter");
    let fewer = on(1, 5, &|number| member(&case.input, number));
    assert_eq!(fewer.members, plain.members[..5]);
    let one = on(1, 1, &|_| member(&case.input, 17));
    assert_eq!(one.members[0].told, plain.members[17].told);
}

#[test]
fn identical_members_have_bands_of_no_width_and_those_are_the_run() {
    let mut case = shipped("handover-in-may");
    // what happens at a midnight parts two days, and at a full hour two values
    changed_at(&mut case.input, &[3 * DAY, 3 * DAY + 7 * HOUR, 20 * DAY]);
    let bands = ran(&case, 5, |_| case.input.clone()).bands;
    let run = run(&case.input).unwrap();
    for day in bands.days() {
        let readings = readings_of(&run, day);
        for quantity in QUANTITIES {
            let value = |r: &Reading| all_of(r)[quantity.place];
            let mut of_day = DayOf::opening(readings[0].minute, value(readings[0]));
            readings[1..]
                .iter()
                .for_each(|r| of_day.see(r.minute, value(r)));
            for (of, number) in Of::ALL
                .into_iter()
                .zip([of_day.low, of_day.high, of_day.mean()])
            {
                let band = bands.of_day(day, quantity, of).unwrap();
                assert_eq!(
                    *band,
                    [number as f32; SHARES.len()],
                    "day {day}, {}",
                    quantity.name
                );
            }
        }
    }
    for quantity in QUANTITIES {
        for (hour, band) in bands.of_hours(3, quantity).unwrap().iter().enumerate() {
            let minute = 3 * DAY + hour as u32 * HOUR;
            let side = if hour == 24 {
                Side::After
            } else {
                Side::Before
            };
            let last = run
                .readings
                .iter()
                .rfind(|r| r.minute == minute && r.side != side);
            let value = all_of(last.unwrap())[quantity.place];
            assert_eq!(
                *band,
                [value as f32; SHARES.len()],
                "{hour} h, {}",
                quantity.name
            );
        }
    }
}

#[test]
fn bands_hold_the_stated_share_of_fresh_members() {
    const COUNT: usize = 256;
    let case = shipped("sixty");
    let bands = ran(&case, COUNT, |number| member(&case.input, number)).bands;
    let fresh = ran(&case, COUNT, |number| member(&case.input, COUNT + number));
    let peak_day = |told: &Told| told.figures.tan_peak.minute / DAY;
    // the highest of the day is that of the run on the day of the peak, which each member has of its own
    let (mut outer, mut inner) = (0, 0);
    for one in &fresh.members {
        let one = told(one);
        let highest = one.figures.tan_peak.value as f32;
        let band = bands
            .of_day(peak_day(one), QUANTITIES[0], Of::Highest)
            .unwrap();
        outer += usize::from((band[0]..=band[4]).contains(&highest));
        inner += usize::from((band[1]..=band[3]).contains(&highest));
    }
    let of_100 = |count: usize| 100.0 * count as f64 / COUNT as f64;
    // both samples are spread evenly, far better than by chance; three standard errors of chance are 6 and 9
    assert!((of_100(outer) - 90.0).abs() < 6.0, "{}", of_100(outer));
    assert!((of_100(inner) - 50.0).abs() < 9.0, "{}", of_100(inner));
}

/// Adds water changes at some minutes.
fn changed_at(input: &mut ModelInput, minutes: &[u32]) {
    input.events.extend(minutes.iter().map(|&minute| Event {
        minute,
        name: "changes.more".into(),
        kind: EventKind::Change { share: 0.3 },
    }));
}

#[test]
fn a_branch_in_which_nothing_is_done_otherwise_has_the_bits_of_the_run() {
    const UNTIL: u32 = 32 * DAY;
    let mut case = shipped("handover-in-may");
    changed_at(&mut case.input, &[12 * DAY + 12 * HOUR]);
    let plan = Plan::new(&case.input);
    let (mut tank, mut noons) = (Simulation::filled(&plan), Noons::default());
    let ended = Valves::new(&plan).take(&mut tank, UNTIL, &mut Eyes(&mut [&mut noons]));
    ended.unwrap();
    // day 12 with an event at noon, day 19 a day of tuning, day 28 before the next one
    for day in [3, 12, 19, 27] {
        let mut branch = noons.of_day(day).unwrap().branch(&plan);
        branch.take(UNTIL, &mut Eyes(&mut [])).unwrap();
        assert_eq!(branch.tanks.state.0, tank.state.0, "from day {day}");
    }
}

#[test]
fn animals_that_are_fed_only_a_week_later_are_watched_for_two() {
    let case = crowded();
    let candidate = ran(&case, 1, |_| case.input.clone());
    let candidate = told(&candidate.members[0]).ready.candidate.unwrap();
    let mut input = case.input.clone();
    input.unfed = vec![(candidate, candidate + 6)];
    assert!(breaks_within_two_weeks(
        &case,
        &run(&stocked_on(&input, candidate)).unwrap(),
        candidate
    ));
    let ready = alone(&case, input).0.verdict.ready;
    assert!(
        matches!(ready, Ready::Day(day) if day > candidate),
        "{ready:?}"
    );
}

/// An input with all planned animals put in at noon of a day, by the plan.
fn stocked_on(input: &ModelInput, day: u32) -> ModelInput {
    let mut stocked = input.without_animals();
    let animals = input
        .events
        .iter()
        .filter(|e| matches!(e.kind, EventKind::Stock(_)));
    stocked.events.extend(animals.map(|event| Event {
        minute: day * DAY + 12 * HOUR,
        ..event.clone()
    }));
    stocked
}

/// Whether a plan breaks a ripening limit in the two weeks from noon of a day on.
fn breaks_within_two_weeks(case: &Case, run: &RunResult, day: u32) -> bool {
    let noon = day * DAY + 12 * HOUR;
    let limits = &case.limits;
    let mut readings = run
        .readings
        .iter()
        .filter(|r| (noon..=noon + 14 * DAY).contains(&r.minute));
    readings.any(|r| {
        r.tan_mg_n_per_l > limits.total_ammonia.value
            || r.nitrite_mg_n_per_l > limits.nitrite_with(r.chloride_mg_per_l)
            || r.free_ammonia_mg_n_per_l > limits.free_ammonia.value
    })
}

#[test]
fn the_ready_day_is_the_first_on_which_the_planned_animals_do_no_harm() {
    let case = crowded();
    let ensemble = ran(&case, 8, |number| member(&case.input, number));
    let mut later = 0;
    for one in &ensemble.members {
        let input = member(&case.input, one.number);
        let ready = told(one).ready;
        let Some(day) = ready.day else { continue };
        let harms =
            |day| breaks_within_two_weeks(&case, &run(&stocked_on(&input, day)).unwrap(), day);
        assert!(!harms(day), "member {} on day {day}", one.number);
        let candidate = ready.candidate.unwrap();
        if day > candidate {
            later += 1;
            assert!(
                (candidate..day).all(harms),
                "member {} before day {day}",
                one.number
            );
            assert!(matches!(ready.waited_for, Some(Waiting::WithAnimals(_))));
        }
    }
    assert!(later > 0, "no member lost its limits with the animals in");
}

#[test]
fn the_days_of_the_stocking_do_not_move_the_ready_day() {
    let case = crowded();
    let ready = |shift: u32| {
        let mut input = case.input.clone();
        for event in &mut input.events {
            if event.kind.is_about_animals() {
                event.minute -= shift * DAY;
            }
        }
        alone(&case, input).0.verdict.ready
    };
    assert_eq!(ready(0), ready(13));
    assert!(matches!(ready(0), Ready::Day(_)), "{:?}", ready(0));
}

#[test]
fn a_failed_member_is_a_row_with_its_reason_and_too_many_are_refused() {
    let mut case = shipped("sixty");
    case.input.last_day = 6;
    case.input.lookahead_days = 0;
    let failing = |which: &'static [usize]| {
        let input = case.input.clone();
        move |number: usize| {
            let mut input = member(&input, number);
            if which.contains(&number) {
                input.parameters = input.parameters.with("k_Fe", f64::NAN);
            }
            input
        }
    };
    let one = ran(&case, 20, failing(&[7]));
    assert_eq!(one.members.len(), 20);
    assert_eq!((one.bands.members, one.members[7].number), (19, 7));
    let why = one.members[7].told.as_ref().unwrap_err();
    assert!(why.to_string().contains("iron_loss"), "{why}");
    let sound = ran(&case, 20, failing(&[]));
    for number in (0..20).filter(|number| *number != 7) {
        assert_eq!(one.members[number], sound.members[number]);
    }
    let ask = Ask {
        case: &case,
        members: 20,
        drawn_days: &[],
    };
    let two = ensemble::run(ask, failing(&[7, 9]), &Stop::default(), |_, _| {}).unwrap_err();
    assert!(
        two.to_string()
            .starts_with("2 of 20 members failed, the first (member 7) with: "),
        "{two}"
    );
}

#[test]
fn a_wish_to_stop_leaves_nothing() {
    let mut case = shipped("sixty");
    case.input.last_day = 3;
    case.input.lookahead_days = 0;
    let ask = Ask {
        case: &case,
        members: 100_000,
        drawn_days: &[],
    };
    let stop = Stop::default();
    let mut heard = Vec::new();
    let ended = ensemble::run(
        ask,
        |number| member(&case.input, number),
        &stop,
        |done, of| {
            heard.push((done, of));
            stop.ask();
        },
    );
    assert_eq!(ended, Err(EnsembleError::Stopped(Stopped)));
    assert_eq!(heard[..2], [(1, 100_000), (2, 100_000)], "in order");
    assert!(heard.len() < 1000, "{}", heard.len());
}

#[test]
fn the_curve_the_soil_and_the_tests_tell_what_the_members_tell() {
    let case = crowded();
    let ensemble = ran(&case, 32, |number| member(&case.input, number));
    let curve = ReadyCurve::of(&ensemble.members, case.input.last_day);
    let days: Vec<u32> = ensemble
        .members
        .iter()
        .filter_map(|m| told(m).ready.day)
        .collect();
    assert_eq!(curve.ever_ready(), days.len());
    let half = curve.day_of(50).unwrap();
    let by = |day: u32| days.iter().filter(|ready| **ready <= day).count();
    assert!(by(half) >= 16 && by(half - 1) < 16, "day {half}");
    assert_eq!(
        curve
            .waited_for
            .iter()
            .map(|(_, count)| count)
            .sum::<usize>(),
        32
    );
    let breaks = |limit: Running| {
        let after = ensemble
            .members
            .iter()
            .filter_map(|m| told(m).ready.broken_after);
        after.filter(|broken: &Broken| broken.has(limit)).count()
    };
    assert!(
        curve
            .break_after
            .iter()
            .all(|(limit, count)| *count == breaks(*limit))
    );

    let tests = confirm::confirming(&ensemble.members, &case.kit);
    assert_eq!(
        tests.iter().map(|t| t.days_before).collect::<Vec<_>>(),
        [2, 1]
    );
    for test in &tests {
        let printed = test.nitrite.map(|step| step.printed);
        assert!(printed.is_sorted(), "{printed:?}");
        let known = |printed: &f64| case.kit.nitrite.steps.iter().any(|s| s.printed == *printed);
        assert!(printed.iter().all(known), "{printed:?}");
    }
}

#[test]
fn the_first_weeks_alone_show_the_ammonia_of_the_whole_run_and_a_bag_less_shows_less() {
    let case = shipped("sixty");
    let input = |number| member(&case.input, number);
    let whole = soil::shown(&ran(&case, 12, input).members);
    let first = soil::expected(12, input, &Stop::default()).unwrap();
    assert_eq!(whole, first);
    let less = |number| soil::one_bag_less(&input(number), 3.0).unwrap();
    let less = soil::expected(12, less, &Stop::default()).unwrap();
    for (less, all) in less.iter().zip(&first) {
        assert!(less.unwrap()[2] < all.unwrap()[2], "{less:?} {all:?}");
    }
    let (old, new) = (
        &case.input.tank,
        soil::one_bag_less(&case.input, 3.0).unwrap().tank,
    );
    let room = |soil_l: f64, water_l: f64| soil_l + water_l;
    assert_eq!(
        room(old.soil_l, old.volume_l),
        room(new.soil_l, new.volume_l)
    );
    assert!(soil::one_bag_less(&case.input, 100.0).is_none());
}
