//! The search for calendars: against every calendar where they are few, within its constraints, and what it
//! writes.

#[path = "support/apart.rs"]
mod apart;

use std::cmp::Ordering;
use std::convert::Infallible;

use apart::apart;
use assert_cmd::Command;
use firstfill::analysis::calendar::broken::Broken;
use firstfill::analysis::calendar::choice::told_apart;
use firstfill::analysis::calendar::days::Days;
use firstfill::analysis::calendar::forbidden::Forbidden;
use firstfill::analysis::calendar::judge::Judge;
use firstfill::analysis::calendar::score::Score;
use firstfill::analysis::calendar::search::{Halt, Judging, search};
use firstfill::analysis::calendar::wish::{CalendarWish, Least, Terms, Trying};
use firstfill::analysis::calendar::{Ended, Found};
use firstfill::analysis::case::Case;
use firstfill::analysis::ensemble::curve::ReadyCurve;
use firstfill::analysis::levers::trials::Trials;
use firstfill::analysis::outcome::Outcome;
use firstfill::base::clock::DAY;
use firstfill::base::stop::Stop;
use firstfill::base::streams::stream;
use firstfill::engine::event::EventKind;
use firstfill::output::chart::Figure;
use firstfill::output::chart::calendar::figure;
use firstfill::output::chart::figure::Label;
use firstfill::output::manifest;
use firstfill::output::text::WIDEST;
use firstfill::output::text::find_calendar::page;
use firstfill::scenario;
use rand::RngExt;
use tempfile::TempDir;

/// A small tank of our own, run for some days, with a calendar to be found.
fn text(length: u32, calendar: &str) -> String {
    format!(
        "start = \"2027-03-06\"\nlength = {length}\n\
         [tank]\ninside = \"60 x 30 x 35 cm\"\nwater_line = \"32 cm\"\ntemperature = \"25 °C\"\n\
         [soil]\namount = \"6 L\"\n\
         [water.tap]\nalkalinity = \"6 dKH\"\n\
         [seed]\nsponge = {{ day = 0, amount = \"100 mL\" }}\n\
         [changes]\nearly = {{ days = \"1..6\", every = 1, share = \"50 %\" }}\n\
         [calendar]\n{calendar}\n"
    )
}

fn tank(length: u32, calendar: &str) -> Case {
    match scenario::read_text("tank.toml", &text(length, calendar)) {
        Ok(loaded) => loaded.case,
        Err(problems) => panic!("{}", problems.render(false)),
    }
}

fn wish(case: &Case) -> &CalendarWish {
    case.calendar.as_ref().expect("it has a calendar")
}

/// On few members, so that a search is quick.
fn quick(least: Least) -> Trying {
    Trying {
        least,
        members: 8,
        fresh: 16,
        most_runs: 100_000,
        ..Trying::default()
    }
}

/// Every calendar of a wish.
fn every(wish: &CalendarWish) -> Vec<Days> {
    let sizes = wish.shares.len() as u8;
    let mut all = vec![Days(Vec::new())];
    for _ in &wish.free_days {
        all = (all.iter())
            .flat_map(|days| (0..=sizes).map(|size| Days([&days.0[..], &[size]].concat())))
            .collect();
    }
    all
}

/// The search ends where a look at every calendar does.
fn equals_enumeration(case: &Case, count: usize, least: Least) {
    // for half of the calendars, so that they cannot all be looked at
    let trying = Trying {
        most_runs: count / 2 * quick(least).members,
        ..quick(least)
    };
    let (wish, stop) = (wish(case), Stop::default());
    let trials = Trials::of(case, trying.seed, &stop);
    let planned = trials.plan(trying.members, &mut || {}).unwrap();
    let terms = Terms::of(wish, &planned, case.input.last_day);
    let mut none = || {};
    let mut judge = Judge::new(&trials, wish, terms, trying, &mut none);
    let first = Days::planned(&case.input, wish);
    let ended = search(&mut judge, wish, &first, trying.seed);
    assert!(matches!(ended, Ok(Ended::Settled) | Err(Halt::Spent)));
    let (days, found) = judge.best().unwrap();
    let tried = judge.tried();
    let all = every(wish);
    assert_eq!(all.len(), count);
    assert!(tried <= count / 2, "{tried} of {count}");
    // the same members, and runs for all
    let all_runs = Trying {
        most_runs: usize::MAX,
        ..trying
    };
    let mut none = || {};
    let mut judge = Judge::new(&trials, wish, terms, all_runs, &mut none);
    for other in &all {
        judge.score(other).unwrap();
    }
    let (best_days, best) = judge.best().unwrap();
    assert!(
        best.is_kept,
        "{terms:?}: a case in which nothing holds shows little"
    );
    assert!(
        best_days.visits() > 0,
        "a case in which no change is best shows little"
    );
    assert_eq!(
        found.order(&best, least),
        Ordering::Equal,
        "{days:?} {:?} {} {} and {best_days:?} {:?} {} {} {tried}",
        found.mean_ready_day,
        found.hold,
        found.is_kept,
        best.mean_ready_day,
        best.hold,
        best.is_kept
    );
}

#[test]
fn of_256_calendars_the_search_finds_the_best() {
    let case = tank(
        28,
        "free = [\"Tue\", \"Sat\"]\nsizes = 1\npeak_tan = \"3 mg N/L\"\nkeep = 60",
    );
    equals_enumeration(&case, 256, Least::Litres);
    // without a peak to keep: with one, two islands of calendars lie an eighth of a day apart on eight tanks
    let case = tank(28, "free = [\"Tue\", \"Sat\"]\nsizes = 1\nkeep = 60");
    equals_enumeration(&case, 256, Least::ReadyDay);
}

#[test]
fn of_1024_calendars_the_search_finds_the_best() {
    let case = tank(
        35,
        "free = [\"Tue\", \"Sat\"]\nsizes = 1\npeak_tan = \"3 mg N/L\"\nkeep = 60",
    );
    equals_enumeration(&case, 1024, Least::Visits);
}

#[test]
fn where_all_calendars_can_be_looked_at_the_best_of_all_is_known_and_it_is_said() {
    // two islands of calendars, an eighth of a day apart on eight tanks
    let case = tank(
        28,
        "free = [\"Tue\", \"Sat\"]\nsizes = 1\npeak_tan = \"3 mg N/L\"\nkeep = 60",
    );
    let trying = quick(Least::ReadyDay);
    let (wish, stop) = (wish(&case), Stop::default());
    let trials = Trials::of(&case, trying.seed, &stop);
    let planned = trials.plan(trying.members, &mut || {}).unwrap();
    let terms = Terms::of(wish, &planned, case.input.last_day);
    let first = Days::planned(&case.input, wish);
    let mut none = || {};
    let mut judge = Judge::new(&trials, wish, terms, trying, &mut none);
    let ended = search(&mut judge, wish, &first, trying.seed).unwrap();
    assert_eq!(ended, Ended::All);
    let (_, found) = judge.best().unwrap();
    for days in every(wish) {
        let score = judge.score(&days).unwrap();
        assert!(
            score.order(&found, Least::ReadyDay).is_ge(),
            "{days:?} {score:?}"
        );
    }
    let found = Found::of(&case, wish, trying, &stop, |_, _| {}).unwrap();
    let words = anstream::adapter::strip_str(&page(&case, &found).render(WIDEST)).to_string();
    let words = words.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(words.contains("no other that [calendar] allows"), "{words}");
}

/// A judge of its own making: a calendar holds when its changes come to so many sizes; best at the end.
struct Toy {
    needed: u32,
    seen: usize,
    most: usize,
}

impl Judging for Toy {
    type Error = Infallible;

    fn score(&mut self, days: &Days) -> Result<Score, Halt<Infallible>> {
        self.seen += 1;
        if self.seen > self.most {
            return Err(Halt::Spent);
        }
        let sum: u32 = days.0.iter().map(|&size| u32::from(size)).sum();
        let places = (0..).zip(&days.0);
        let early: u32 = places
            .map(|(place, &size)| (100 - place) * u32::from(size))
            .sum();
        Ok(Score {
            members: 100,
            hold: sum as usize,
            holds: vec![],
            late: 0,
            tan: 0,
            nitrite: 0,
            curve: ReadyCurve::of(&[], 1),
            mean_ready_day: f64::from(early),
            ready_days: vec![],
            peaks: [[0.0; 3]; 2],
            member_peaks: [vec![], vec![]],
            tankfuls: f64::from(sum),
            litres: f64::from(sum),
            visits: days.visits(),
            is_kept: sum >= self.needed,
            is_dropped: false,
        })
    }

    fn order(&self, a: &Score, b: &Score) -> Ordering {
        a.order(b, Least::Litres)
    }
}

#[test]
fn what_must_count_in_a_search_is_more_by_the_standard_error_of_its_members() {
    let terms = Terms {
        keep_of_100: 70,
        keep_is_own: true,
        ready_by: 40,
        ready_by_is_own: true,
        peak_tan_mg_n_per_l: f64::INFINITY,
        peak_nitrite_mg_n_per_l: f64::INFINITY,
    };
    // 100 · √(0.7 · 0.3 / 64) = 5.7; of all tanks there is no more to ask
    assert_eq!(terms.with_a_margin(64, 100.0).keep_of_100, 76);
    // where much water keeps 75, half of the way there; where it keeps no more, none
    assert_eq!(terms.with_a_margin(64, 75.0).keep_of_100, 72);
    assert_eq!(terms.with_a_margin(64, 60.0).keep_of_100, 70);
    let all = Terms {
        keep_of_100: 100,
        ..terms
    };
    assert_eq!(all.with_a_margin(64, 100.0), all);
}

/// A judge that hands out its runs in parts, and notes from which calendar on each part began.
struct Parted {
    toy: Toy,
    kept_back: usize,
    begun: Vec<usize>,
}

impl Judging for Parted {
    type Error = Infallible;

    fn score(&mut self, days: &Days) -> Result<Score, Halt<Infallible>> {
        if self.toy.most - self.toy.seen <= self.kept_back {
            return Err(Halt::PartSpent);
        }
        self.toy.score(days)
    }

    fn order(&self, a: &Score, b: &Score) -> Ordering {
        self.toy.order(a, b)
    }

    fn take_part(&mut self, of: usize) {
        let left = self.toy.most - self.toy.seen;
        self.kept_back = left - left / of;
        self.begun.push(self.toy.seen);
    }
}

#[test]
fn every_beginning_of_a_search_gets_its_part_of_the_runs() {
    let wish = days_of(40, 2);
    let toy = Toy {
        needed: 6,
        seen: 0,
        most: 600,
    };
    let mut judge = Parted {
        toy,
        kept_back: 0,
        begun: Vec::new(),
    };
    let ended = search(&mut judge, &wish, &Days::all(&wish, 1), 1);
    assert!(matches!(ended, Err(Halt::PartSpent)));
    // eight beginnings of fifty runs each, and the best again with a third of all
    assert_eq!(judge.begun, [0, 50, 100, 150, 200, 250, 300, 350, 400]);
    assert_eq!(judge.toy.seen, 600);
}

/// A wish of so many days.
fn days_of(count: u32, sizes: u32) -> CalendarWish {
    CalendarWish {
        free_days: (1..=count).collect(),
        minute: 600,
        shares: (1..=sizes).map(|size| f64::from(size) / 10.0).collect(),
        keep_of_100: None,
        ready_by: None,
        peak_tan_mg_n_per_l: None,
        peak_nitrite_mg_n_per_l: None,
    }
}

#[test]
fn a_search_takes_away_what_is_not_needed_and_moves_the_rest_to_where_it_does_best() {
    // least sizes, then fewest changes, then as late as may be: the last days at the largest size
    struct Best(Toy, Option<(Days, Score)>);
    impl Judging for Best {
        type Error = Infallible;
        fn score(&mut self, days: &Days) -> Result<Score, Halt<Infallible>> {
            let score = self.0.score(days)?;
            let is_best = self
                .1
                .as_ref()
                .is_none_or(|(_, best)| self.0.order(&score, best).is_lt());
            if is_best {
                self.1 = Some((days.clone(), score.clone()));
            }
            Ok(score)
        }
        fn order(&self, a: &Score, b: &Score) -> Ordering {
            self.0.order(a, b)
        }
    }
    let toy = Toy {
        needed: 6,
        seen: 0,
        most: usize::MAX,
    };
    let (wish, mut judge) = (days_of(10, 2), Best(toy, None));
    search(&mut judge, &wish, &Days::all(&wish, 1), 1).unwrap();
    let (days, _) = judge.1.unwrap();
    assert_eq!(days.0, [0, 0, 0, 0, 0, 0, 0, 2, 2, 2]);
}

#[test]
fn a_search_ends_when_its_runs_are_spent() {
    let wish = days_of(10, 2);
    let mut toy = Toy {
        needed: 6,
        seen: 0,
        most: 5,
    };
    let ended = search(&mut toy, &wish, &Days::all(&wish, 1), 1);
    assert!(matches!(ended, Err(Halt::Spent)));
    assert_eq!(toy.seen, 6);
}

#[test]
fn days_are_free_on_the_named_weekdays_while_somebody_is_there() {
    let case = tank(
        20,
        "free = [\"Tue\", \"Sat\"]\nmost_litres = \"10 L\"\nsizes = 2",
    );
    // day 0 is a Saturday; tuesdays are 3, 10, 17, saturdays 7 and 14
    assert_eq!(wish(&case).free_days, [3, 7, 10, 14, 17]);
    let full = case.input.tank.volume_l;
    let [half, whole] = wish(&case).shares[..] else {
        panic!("two sizes");
    };
    assert!((whole * full - 10.0).abs() < 1e-9 && (2.0 * half - whole).abs() < 1e-12);
}

fn found(case: &Case, least: Least) -> Found {
    Found::of(case, wish(case), quick(least), &Stop::default(), |_, _| {}).unwrap()
}

#[test]
fn every_choice_keeps_to_its_constraints_and_scores_as_its_own_file_does() {
    let asked = "free = [\"Mon\", \"Thu\"]\nmost_share = \"40 %\"\npeak_tan = \"4 mg N/L\"\nkeep = 25\ntime = \"18:30\"";
    let case = tank(28, asked);
    let (wish, stop) = (wish(&case), Stop::default());
    let found = found(&case, Least::Litres);
    assert!(!found.choices.is_empty());
    assert_eq!(
        found.planned.is_kept,
        found.terms.are_kept_by(&found.planned)
    );
    for choice in &found.choices {
        let days = Days(
            (wish.free_days.iter())
                .map(|free| {
                    let own = choice.changes.iter().find(|(day, _)| day == free);
                    own.map_or(0, |(_, share)| {
                        wish.shares.iter().position(|one| one == share).unwrap() as u8 + 1
                    })
                })
                .collect(),
        );
        assert_eq!(
            days.changes(wish),
            choice.changes,
            "only on free days, in sizes allowed"
        );
        let input = days.put_into(case.input.clone(), wish);
        for event in &input.events {
            if let EventKind::Change { share } = event.kind {
                assert_eq!(event.minute % DAY, 18 * 60 + 30);
                assert!(share <= 0.4);
            }
        }
        // members that neither the search nor the choice has seen, by themselves
        let trials = Trials::of(&case, found.trying.seed, &stop);
        let members = trials
            .some(40..56, |input| days.put_into(input, wish), &mut || {})
            .unwrap();
        let amount = (days.tankfuls(wish), days.visits());
        let alone = Score::of(&members, &found.terms, case.input.last_day, amount);
        assert_eq!(alone, choice.score);
        assert_eq!(alone.is_kept, 100 * alone.hold >= 25 * alone.members);
    }
}

#[test]
fn the_shares_of_a_plan_are_among_those_of_the_search_where_they_are_allowed() {
    let shares = |asked: &str| {
        let case = tank(14, asked);
        wish(&case).clone().with_shares_of(&case.input).shares
    };
    // the plan changes a half; a change of more than is allowed stays out, one that is known comes once
    assert_eq!(shares("most_share = \"80 %\"\nsizes = 1"), [0.5, 0.8]);
    assert_eq!(shares("most_share = \"50 %\"\nsizes = 1"), [0.5]);
    assert_eq!(shares("most_share = \"40 %\"\nsizes = 1"), [0.4]);
}

#[test]
fn a_plan_that_is_allowed_is_a_choice_where_the_search_finds_nothing_with_less() {
    // a judge with runs for one calendar only, so that nothing better can be found
    let case = tank(21, "most_share = \"80 %\"\nsizes = 1\nkeep = 1");
    let poor = Trying {
        most_runs: 8,
        ..quick(Least::Litres)
    };
    let search =
        |case: &Case| Found::of(case, wish(case), poor, &Stop::default(), |_, _| {}).unwrap();
    let found = search(&case);
    assert!(found.plan_is_best(&case.input), "{:?}", found.choices);
    assert_eq!(found.choices[0].score, found.planned);
    // day 4 is a Wednesday: a plan with changes on other days cannot stand as it is
    let case = tank(
        21,
        "free = [\"Wed\"]\nmost_share = \"80 %\"\nsizes = 1\nkeep = 1",
    );
    let found = search(&case);
    assert!(!found.plan_is_best(&case.input), "{:?}", found.choices);
}

#[test]
fn a_plan_on_free_days_of_shares_that_are_allowed_is_not_told_to_use_others() {
    let case = tank(21, "most_share = \"50 %\"\nsizes = 1");
    assert!(Forbidden::of(&case.input, wish(&case)).is_nothing());
    let case = tank(21, "free = [\"Tue\"]\nmost_share = \"40 %\"\nsizes = 1");
    let forbidden = Forbidden::of(&case.input, wish(&case));
    assert_eq!(forbidden.days, [1, 2, 4, 5, 6], "day 3 is a Tuesday");
    assert_eq!(forbidden.too_much, [1, 2, 3, 4, 5, 6]);
}

#[test]
fn choices_that_nobody_could_tell_apart_are_offered_once() {
    let case = tank(21, "most_share = \"80 %\"\nsizes = 1\nkeep = 1");
    let mut first = found(&case, Least::Litres).choices.swap_remove(0);
    first.score.litres = 100.0; // of nothing, a share is nothing
    let with = |change: &dyn Fn(&mut Score)| {
        let mut other = first.clone();
        change(&mut other.score);
        let mut both = vec![first.clone(), other];
        told_apart(&mut both);
        both.len()
    };
    assert_eq!(with(&|_| ()), 1);
    assert_eq!(with(&|score| score.litres *= 1.01), 1);
    assert_eq!(with(&|score| score.litres *= 1.05), 2);
    assert_eq!(with(&|score| score.visits += 1), 2);
    // a tank in two a day later and a day earlier is chance, all of them a day later is none
    let days = |by: &dyn Fn(usize) -> f64| {
        with(&|score| {
            let days = score.ready_days.iter_mut().enumerate();
            days.for_each(|(at, day)| *day = day.map(|day| day + by(at)));
        })
    };
    assert_eq!(days(&|at| [1.0, -1.0][at % 2]), 1);
    assert_eq!(days(&|_| 1.0), 2);
}

#[test]
fn the_chart_has_a_row_and_a_disc_for_the_plan_and_every_choice() {
    let case = tank(
        28,
        "free = [\"Mon\", \"Thu\"]\npeak_tan = \"4 mg N/L\"\nkeep = 25",
    );
    let outcome = Outcome::of(&case).unwrap();
    let mut found = found(&case, Least::Litres);
    let plan = manifest::Story {
        case: &case,
        outcome: &outcome,
        forecast: None,
        files: &[],
        options: &[],
    };
    let chart = figure(&plan, &found);
    apart(&chart);
    let rows = &chart.panels[1..];
    assert_eq!(rows.len(), 1 + found.choices.len());
    assert_eq!(chart.panels[0].marks.len(), rows.len());
    assert_eq!(rows[0].lines.len(), 6, "six changes as written");
    for (row, choice) in rows[1..].iter().zip(&found.choices) {
        assert_eq!(row.lines.len(), choice.changes.len());
        let tops: Vec<f64> = row.lines.iter().map(|bar| bar.points[1].1).collect();
        let shares: Vec<f64> = choice
            .changes
            .iter()
            .map(|(_, share)| 100.0 * share)
            .collect();
        assert_eq!(tops, shares);
    }
    // a first choice that holds in fewer tanks than asked for only may be enough
    let whole = found.clone();
    found.choices.truncate(1);
    found.choices[0].score.litres = found.planned.litres - 10.0;
    found.choices[0].score.is_kept = true;
    found.choices[0].score.hold = found.planned.members;
    assert!(figure(&plan, &found).title.contains("L are enough"));
    found.choices[0].score.hold = 0;
    assert!(figure(&plan, &found).title.contains("L may be enough"));
    let mut found = whole;
    // words follow the scores
    let raised = |chart: &Figure| {
        let labels = chart.labels.iter().map(|label| label.words());
        labels.filter(|words| words.contains("raised to")).count()
    };
    let planned = found.planned.clone();
    for choice in &mut found.choices {
        choice.score.peaks = planned.peaks;
        choice.score.member_peaks = planned.member_peaks.clone();
    }
    assert_eq!(raised(&figure(&plan, &found)), 0);
    let peak = &mut found.choices[0].score;
    peak.peaks[0][1] += 3.0;
    let tanks = peak.member_peaks[0].iter_mut();
    tanks.for_each(|tank| *tank = tank.map(|highest| highest + 3.0));
    let told = format!("ammonia raised to {:.1}", peak.peaks[0][1]);
    let chart = figure(&plan, &found);
    assert_eq!(raised(&chart), 1);
    let is_told = |label: &Label| label.words().contains(&told);
    assert!(chart.labels.iter().any(is_told), "{told}");
    found.choices[0].score.is_kept = true;
    found.planned.is_kept = false;
    let chart = figure(&plan, &found);
    let litres = found.choices[0].score.litres;
    assert_eq!(chart.panels[0].marks[1].at.0, litres);
    assert!(
        chart.title.contains(&format!("{litres:.0} L are enough")),
        "{}",
        chart.title
    );
    found.planned.is_kept = true;
    found.planned.litres = litres - 1.0;
    assert!(!found.forbidden.is_nothing());
    let title = figure(&plan, &found).title;
    assert!(title.contains("what [calendar] does not allow"), "{title}");
    let mut free = found.clone();
    free.forbidden = Forbidden {
        days: Vec::new(),
        too_much: Vec::new(),
    };
    assert!(figure(&plan, &free).title.contains("no choice beats them"));
    let minds = |found: &Found| {
        let words = page(&case, found).render(WIDEST);
        words.split_whitespace().collect::<Vec<_>>().join(" ")
    };
    // the plan changes water on every day of week 1, of which Mondays and Thursdays alone are free
    assert!(minds(&found).contains("with less water, but use what [calendar] does not allow"));
    found.forbidden = Forbidden::default();
    assert!(minds(&found).contains("with less water: no choice beats them"));
    found.choices[0].score.is_kept = false;
    assert!(figure(&plan, &found).title.contains("fresh tanks"));
}

#[test]
fn what_nothing_can_keep_is_said_with_what_stands_against_it() {
    let case = tank(
        21,
        "free = [\"Tue\"]\nready_by = 1\nkeep = 100\nmost_share = \"20 %\"",
    );
    let found = found(&case, Least::Litres);
    assert!(found.choices.is_empty());
    let conflict = found.conflict.expect("nothing holds");
    assert_eq!(conflict.limit, Broken::Late);
    assert!(conflict.score.of_100() < 100.0 && !conflict.score.is_kept);
}

#[test]
fn a_wish_to_stop_keeps_the_best_so_far() {
    // nothing like this holds with little water; the fullest calendar is looked at first of all
    let case = tank(28, "free = [\"Tue\", \"Sat\"]\nkeep = 80\nready_by = 28");
    for after in [24, 40, 60] {
        let stop = Stop::default();
        let mut runs = 0;
        let found = Found::of(&case, wish(&case), quick(Least::Litres), &stop, |_, _| {
            runs += 1;
            if runs == after {
                stop.ask();
            }
        });
        let found = found.unwrap();
        assert_eq!(found.ended, Ended::Stopped);
        assert!(!found.choices.is_empty(), "after {after} runs");
    }
}

#[test]
fn what_would_do_is_read_off_tanks_that_were_run_and_does() {
    let asked = "free = [\"Tue\"]\nmost_share = \"20 %\"\nkeep = 60\nready_by = 28\npeak_tan = \"0.05 mg N/L\"";
    let conflict = found(&tank(28, asked), Least::Litres)
        .conflict
        .expect("so little ammonia has no soil");
    assert_eq!(conflict.limit, Broken::Tan);
    let peak = conflict.easing.alone[1].as_ref().expect("more would do").to;
    assert!(peak > 0.05);
    let score = &conflict.score;
    let holds = |peak: f64| {
        let tanks = score.ready_days.iter().zip(&score.member_peaks[0]);
        let held = tanks.filter(|&(day, tan)| *day <= Some(28.0) && *tan <= Some(peak));
        100 * held.count() >= 60 * score.members
    };
    assert!(holds(peak) && !holds(peak - 1e-9), "the least that does");
    assert!(conflict.easing.keep_of_100 < 60);
}

#[test]
fn where_nothing_does_alone_what_would_do_together_does() {
    let asked = |ready_by: u32, peak: f64| {
        let ask = "free = [\"Tue\"]\nmost_share = \"20 %\"\nkeep = 50";
        tank(
            28,
            &format!("{ask}\nready_by = {ready_by}\npeak_tan = \"{peak} mg N/L\""),
        )
    };
    let conflict = found(&asked(3, 0.05), Least::Litres).conflict;
    let easing = conflict
        .expect("no soil is so mild, no tank so soon")
        .easing;
    assert!(easing.alone.iter().all(Option::is_none), "{easing:?}");
    let together = easing.together.expect("a peak was asked for");
    let peak = together.peak_tan_mg_n_per_l.unwrap();
    assert!(peak > 0.05 && together.peak_nitrite_mg_n_per_l.is_none());
    let eased = found(&asked(28, (100.0 * peak).ceil() / 100.0), Least::Litres);
    assert!(!eased.choices.is_empty(), "{peak}");
}

#[test]
fn other_tanks_are_asked_for_as_many_more_as_the_plan_keeps_there() {
    let case = tank(21, "free = [\"Tue\"]");
    let stop = Stop::default();
    let trials = Trials::of(&case, 1, &stop);
    let planned = trials.plan(8, &mut || {}).unwrap();
    let terms = Terms::of(wish(&case), &planned, 21);
    let score = |hold: usize| Score {
        hold,
        members: 50,
        ..Score::of(&planned, &terms, 21, (0.0, 0))
    };
    let own = Terms {
        keep_of_100: 60,
        ..terms
    };
    assert!(own.ready_by_is_own);
    assert_eq!(own.as_on(&score(20), &score(30)).keep_of_100, 40);
    assert_eq!(own.as_on(&score(33), &score(30)).keep_of_100, 66);
    let asked = Terms {
        keep_is_own: false,
        ready_by_is_own: false,
        ..own
    };
    assert_eq!(
        asked.as_on(&score(20), &score(30)),
        asked,
        "nothing is the plan's own"
    );
    // half of 50 hold: a standard error of 7 of 100
    assert!(own.may_be_kept_by(&score(27)) && !own.may_be_kept_by(&score(25)));
}

#[test]
fn every_constraint_is_honoured_in_random_trials() {
    let mut seen = [0; 2];
    for number in 0..12 {
        let mut chance = stream(7, "constraints", number);
        let mut one_of = |words: &[&str]| words[chance.random_range(0..words.len())].to_string();
        let asked = [
            one_of(&["free = [\"Tue\", \"Fri\"]", "free = [\"Sun\"]", ""]),
            one_of(&[
                "most_share = \"30 %\"",
                "most_share = \"70 %\"",
                "most_litres = \"12 L\"",
            ]),
            one_of(&["sizes = 1", "sizes = 2", "sizes = 3"]),
            one_of(&["keep = 40", "keep = 75", "keep = 100"]),
            one_of(&["ready_by = 14", "ready_by = 18", ""]),
            one_of(&["peak_tan = \"3 mg N/L\"", "peak_nitrite = \"2 mg N/L\"", ""]),
            one_of(&["away = [\"2027-03-11..2027-03-15\"]", ""]),
        ];
        let text = text(18, &asked[..6].join("\n"));
        let text = text.replace("[calendar]", &format!("{}\n[calendar]", asked[6]));
        let read = scenario::read_text("tank.toml", &text);
        let case = read
            .map_err(|problems| problems.render(false))
            .unwrap()
            .case;
        let least = [Least::Litres, Least::Visits, Least::ReadyDay][number as usize % 3];
        let trying = Trying {
            members: 4,
            fresh: 8,
            most_runs: 160,
            ..quick(least)
        };
        let wish = wish(&case);
        let found = Found::of(&case, wish, trying, &Stop::default(), |_, _| {}).unwrap();
        let volume_l = case.input.tank.volume_l;
        assert_eq!(
            found.choices.is_empty(),
            found.conflict.is_some(),
            "{asked:?}"
        );
        for choice in &found.choices {
            seen[0] += 1;
            seen[1] += choice.changes.len();
            for &(day, share) in &choice.changes {
                assert!(wish.free_days.contains(&day), "{asked:?}: day {day}");
                let away = asked[6].starts_with("away") && (5..=9).contains(&day);
                let weekday = (day + 6) % 7; // day 0 is a Saturday; Sunday is 0
                let free = match &asked[0] {
                    tue if tue.contains("Tue") => weekday == 2 || weekday == 5,
                    sun if sun.contains("Sun") => weekday == 0,
                    _ => true,
                };
                assert!(!away && free && day <= 18, "{asked:?}: day {day}");
                let most = match &asked[1] {
                    third if third.contains("30") => 0.3,
                    most if most.contains("70") => 0.7,
                    _ => 12.0 / volume_l,
                };
                assert!(share > 0.0 && share <= most + 1e-12, "{asked:?}: {share}");
            }
            let score = &choice.score;
            let held = 100.0 * score.hold as f64 / score.members as f64;
            let error = (held * (100.0 - held) / score.members as f64).sqrt();
            let missing = found.terms.keep_of_100 as f64 - held;
            assert!(
                score.is_kept && missing <= error + 1e-9,
                "{asked:?}: {missing}"
            ); // rounding
        }
    }
    assert!(seen[0] > 4 && seen[1] > 12, "choices and changes: {seen:?}");
}

#[test]
fn the_number_of_threads_changes_nothing() {
    let case = tank(21, "free = [\"Tue\", \"Sat\"]\nkeep = 50");
    let on = |threads: usize| {
        let pool = rayon::ThreadPoolBuilder::new().num_threads(threads).build();
        pool.unwrap().install(|| found(&case, Least::ReadyDay))
    };
    assert_eq!(on(1), on(3));
}

/// The command in a folder of its own, in which `tank.toml` stands.
fn command(room: &TempDir, tank: &str, words: &[&str]) -> assert_cmd::assert::Assert {
    std::fs::write(room.path().join("tank.toml"), tank).unwrap();
    let mut command = Command::cargo_bin("firstfill").unwrap();
    command.current_dir(room.path()).args(words).assert()
}

const FIND: [&str; 6] = [
    "find-calendar",
    "tank.toml",
    "--least",
    "visits",
    "--members",
    "20",
];

#[test]
fn a_choice_is_a_scenario_file_with_the_changes_that_were_found() {
    let room = tempfile::tempdir().unwrap();
    let asked = "free = [\"Tue\", \"Sat\"]\nkeep = 20\nready_by = 20\nsizes = 1";
    let tank = text(21, asked);
    let said = command(&room, &tank, &FIND)
        .success()
        .get_output()
        .stdout
        .clone();
    let said = String::from_utf8(said).unwrap();
    let folder = room.path().join("output/find-calendar-tank");
    let table = std::fs::read_to_string(folder.join("choices.csv")).unwrap();
    let loaded = scenario::load(&folder.join("choice-1.toml"))
        .map_err(|p| p.render(false))
        .unwrap();
    let changes = loaded.case.input.changes();
    let mut own: Vec<String> = (changes.iter())
        .map(|(day, share)| format!("{day} ({} %)", 100.0 * share))
        .collect();
    own.sort_by_key(|change| {
        change
            .split(' ')
            .next()
            .map(|day| day.parse::<u32>().unwrap())
    });
    let row = table
        .lines()
        .find(|line| line.starts_with("choice-1,"))
        .unwrap();
    assert!(
        row.ends_with(&own.join("; ")) || row.contains(&own.join("; ")),
        "{row}\n{own:?}"
    );
    assert!(
        said.contains("Choice 1") && said.contains("had seen"),
        "{said}"
    );
}

#[test]
fn a_calendar_goes_on_beyond_the_end_as_its_scenario_file_does_and_as_the_plan_it_stands_for() {
    let changes = |case: &Case| {
        let mut changes: Vec<(u32, String)> = (case.input.events.iter())
            .filter(|event| event.kind.is_change())
            .map(|event| (event.minute, format!("{:?}", event.kind)))
            .collect();
        changes.sort();
        changes
    };
    let asked = "most_share = \"50 %\"\nsizes = 1";
    let weekly =
        text(21, asked).replace("days = \"1..6\", every = 1", "days = \"3..21\", every = 7");
    let weekly = scenario::read_text("tank.toml", &weekly).map_err(|p| p.render(false));
    let plan = weekly.unwrap().case;
    let days = Days::planned(&plan.input, wish(&plan));
    let mut found = plan.clone();
    found.input = days.put_into(plan.input.clone(), wish(&plan));
    assert_eq!(changes(&found), changes(&plan));
    assert_eq!(
        changes(&plan).len(),
        5,
        "days 3, 10, 17, and 24, 31 beyond the end"
    );
    let listed = text(21, asked).replace("days = \"1..6\", every = 1", "days = [3, 10, 17]");
    let listed = scenario::read_text("tank.toml", &listed).map_err(|p| p.render(false));
    assert_eq!(changes(&listed.unwrap().case), changes(&plan));
}

#[test]
fn without_a_calendar_there_is_help_and_without_a_solution_the_nearest() {
    let room = tempfile::tempdir().unwrap();
    let tank = text(21, "");
    let without = tank.replace("[calendar]", "");
    let refused = command(&room, &without, &FIND)
        .code(2)
        .get_output()
        .stderr
        .clone();
    let refused = String::from_utf8(refused).unwrap();
    assert!(
        refused.contains("[calendar]") && refused.contains("free = "),
        "{refused}"
    );
    let never = text(
        21,
        "ready_by = 1\nkeep = 100\nfree = [\"Tue\"]\nmost_share = \"20 %\"",
    );
    let said = command(&room, &never, &FIND).code(3).get_output().clone();
    let [page, refused] = [said.stdout, said.stderr].map(|text| String::from_utf8(text).unwrap());
    // the verdict stands once; day 3 is the only Tuesday of the plan, and half of the water is more than a fifth
    assert!(!page.contains("no calendar"), "{page}");
    let page = page.split_whitespace().collect::<Vec<_>>().join(" ");
    for word in [
        "it uses days 1, 2, 4, 5 and 6, which are not free",
        "more at once than may be on days 1, 2, 3, 4, 5 and 6",
    ] {
        assert!(page.contains(word), "{word}: {page}");
    }
    assert_eq!(refused.matches("no calendar").count(), 1, "{refused}");
    for word in [
        "no calendar was found that keeps this",
        "stands against it most",
        "The nearest has",
        "Asking less of one thing does not do",
        "every day free",
    ] {
        assert!(refused.contains(word), "{word}: {refused}");
    }
    let table = command(&room, &never, &[&FIND[..], &["--format", "csv"]].concat())
        .code(3)
        .get_output()
        .clone();
    let lines = String::from_utf8(table.stdout).unwrap();
    let lines: Vec<&str> = lines.lines().collect();
    assert!(
        lines.len() == 2 && lines[1].starts_with("as written,"),
        "the plan alone, as a table: {lines:?}"
    );
    assert!(
        !room.path().join("output/find-calendar-tank").exists(),
        "nothing is written"
    );
}
