//! The latest filling: how a plan moves with it, and that the search finds what looking everywhere finds.

use std::path::Path;

use firstfill::analysis::case::Case;
use firstfill::analysis::ensemble::curve::ReadyCurve;
use firstfill::analysis::latest_fill::{LatestFill, Wish, latest_fill};
use firstfill::analysis::levers::Trying;
use firstfill::analysis::levers::trials::Trials;
use firstfill::base::stop::Stop;
use firstfill::engine::alike::alike;
use firstfill::scenario::{self, Loaded};

fn shipped(name: &str) -> Loaded {
    let loaded = scenario::load(Path::new(&format!("scenarios/{name}.toml")));
    loaded.unwrap_or_else(|problems| panic!("{problems:?}"))
}

fn put_off(loaded: &Loaded, days: u32) -> Case {
    scenario::put_off(loaded, days).unwrap_or_else(|problems| panic!("{problems:?}"))
}

#[test]
fn weekdays_stay_where_they_are_when_the_filling_is_put_off() {
    let loaded = shipped("sixty");
    let plan = |days: u32| put_off(&loaded, days).input;
    let same = |a: u32, b: u32| alike(&[&plan(a), &plan(b)]).is_ok();
    assert_eq!(format!("{:?}", plan(0)), format!("{:?}", loaded.case.input));
    assert!(same(0, 7) && same(3, 10), "a week later is the same plan");
    assert!(!same(0, 1), "Sundays come a day earlier");
    let start = put_off(&loaded, 25).filled_on.unwrap();
    assert_eq!(start.to_string(), "2027-03-31");
}

#[test]
fn a_trip_keeps_its_dates_and_is_over_for_a_late_filling() {
    // full on 6 March, away from the 20th to the 24th
    let loaded = shipped("handover-in-may");
    let away = |days: u32| put_off(&loaded, days).input.unfed;
    assert_eq!(away(0), [(14, 18)]);
    assert_eq!(away(10), [(4, 8)]);
    assert_eq!(away(16), [(0, 2)]);
    assert_eq!(away(18), [(0, 0)]);
    assert!(away(19).is_empty());
}

#[test]
fn a_filling_after_a_planned_date_is_not_possible() {
    let text = "start = \"2027-03-06\"\n[tank]\ninside = \"60 x 30 x 36 cm\"\nwater_line = \"33 cm\"\n\
        [changes]\nfirst = { day = \"2027-03-10\", share = \"50 %\" }\n";
    let loaded = scenario::read_text("tank.toml", text).unwrap();
    assert!(scenario::put_off(&loaded, 4).is_ok());
    assert!(scenario::put_off(&loaded, 5).is_err());
}

fn found(loaded: &Loaded, ready_by_day: u32, of_100: usize, trying: Trying) -> LatestFill {
    let wish = Wish {
        ready_by_day,
        of_100,
        trying,
    };
    let case_of = |days| scenario::put_off(loaded, days).ok();
    latest_fill(wish, case_of, &Stop::default(), |_, _| {}).unwrap()
}

#[test]
fn the_search_finds_what_looking_at_every_day_finds() {
    let loaded = shipped("seeded-with-mature-sponge");
    let trying = Trying {
        members: 8,
        seed: 1,
    };
    let curves: Vec<ReadyCurve> = (0..7)
        .map(|days| curve(&put_off(&loaded, days), trying))
        .collect();
    // deadlines in a row, so that the day of some tank falls on one of them
    for by in 40..48 {
        let in_time = |days: u32| curves[days as usize % 7].of_100_by(by - days);
        let latest = (0..=by).rev().find(|&days| in_time(days) >= 50.0);
        let answer = found(&loaded, by, 50, trying);
        println!("by day {by}: {answer:?}");
        assert_eq!(answer.latest.map(|fill| fill.put_off_days), latest);
        assert!(latest > Some(0), "there is slack");
        assert!(answer.plans <= 7, "weekdays alone make seven plans");
    }
}

fn curve(case: &Case, trying: Trying) -> ReadyCurve {
    let stop = Stop::default();
    let trials = Trials::of(case, trying.seed, &stop);
    let members = trials.plan(trying.members, &mut || {}).unwrap();
    ReadyCurve::of(&members, case.input.last_day)
}

#[test]
fn where_no_filling_does_the_best_is_named_and_never_before_the_start() {
    let loaded = shipped("soft-water-stuck");
    let trying = Trying {
        members: 8,
        seed: 1,
    };
    let answer = found(&loaded, 20, 90, trying);
    assert_eq!(answer.latest, None);
    assert!(answer.best.put_off_days <= 20 && answer.best.of_100 < 90.0);
}
