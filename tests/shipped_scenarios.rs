//! The scenarios in `scenarios/`: they load, share one tank, say what to watch for, and show it.
//!
//! The stories are our own: relations between two runs of the same model, no outside figures.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::sync::LazyLock;

use firstfill::analysis::outcome::Outcome;
use firstfill::analysis::ready::Ready;
use firstfill::engine::result::Reading;
use firstfill::scenario::{Loaded, load};

const BASE: &str = "sixty";

fn home() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

fn files() -> BTreeMap<String, PathBuf> {
    std::fs::read_dir(home().join("scenarios"))
        .expect("the folder of scenarios")
        .map(|entry| entry.expect("an entry").path())
        .filter(|path| path.extension().is_some_and(|end| end == "toml"))
        .map(|path| {
            (
                path.file_stem().unwrap().to_string_lossy().into_owned(),
                path,
            )
        })
        .collect()
}

fn loaded(path: &Path) -> Loaded {
    load(path).unwrap_or_else(|problems| panic!("{}", problems.render(false)))
}

/// Every scenario, run once for all tests.
static OUTCOMES: LazyLock<BTreeMap<String, Outcome>> = LazyLock::new(|| {
    let run = |path: &PathBuf| Outcome::of(&loaded(path).case).expect("a run that ends");
    files()
        .iter()
        .map(|(name, path)| (name.clone(), run(path)))
        .collect()
});

fn outcome(name: &str) -> &'static Outcome {
    OUTCOMES
        .get(name)
        .unwrap_or_else(|| panic!("no scenarios/{name}.toml"))
}

fn ready_day(name: &str) -> u32 {
    outcome(name)
        .verdict
        .day()
        .unwrap_or_else(|| panic!("{name} is never ready"))
}

fn at_lights_on(name: &str, day: u32) -> Reading {
    let run = &outcome(name).run;
    let lights_on = day * 1440 + 11 * 60 + 30;
    *run.readings
        .iter()
        .find(|r| r.minute == lights_on)
        .expect("a reading at 11:30")
}

#[test]
fn every_scenario_opens_with_what_it_is_and_three_things_to_watch_for() {
    for (name, path) in files() {
        let text = std::fs::read_to_string(path).unwrap();
        let lines: Vec<&str> = text.lines().collect();
        assert!(
            lines[0].starts_with("# ") && lines[0].ends_with("An invented tank."),
            "{name}"
        );
        for line in &lines[1..4] {
            assert!(
                line.starts_with("# Watch for: ") && line.ends_with('.'),
                "{name}: {line}"
            );
            assert!(line.chars().count() <= 125, "{name}: too long: {line}");
        }
        assert!(
            !lines[4].starts_with('#'),
            "{name} has a fourth thing to watch for"
        );
    }
}

#[test]
fn at_least_eight_scenarios_share_one_tank_through_based_on() {
    let files = files();
    let base = loaded(&files[BASE]).case.input;
    let others: Vec<&String> = files.keys().filter(|name| *name != BASE).collect();
    assert!(others.len() >= 8, "{others:?}");
    for name in others {
        let case = loaded(&files[name]);
        let chain: Vec<&Path> = case.files.iter().map(|(path, _)| path.as_path()).collect();
        assert!(
            chain.iter().any(|path| path.ends_with("sixty.toml")),
            "{name}: {chain:?}"
        );
        let (tank, its) = (&base.tank, &case.case.input.tank);
        assert_eq!(tank.volume_l, its.volume_l, "{name} is another tank");
        assert_eq!(tank.surface_m2, its.surface_m2, "{name} is another tank");
    }
}

#[test]
fn every_name_is_given_once_and_no_scenario_warns_at_the_door() {
    let mut names = BTreeMap::new();
    for (stem, path) in files() {
        let case = loaded(&path).case;
        let meant: &[&str] = match stem.as_str() {
            "no-changes-at-all" => &["no water changes planned"],
            _ => &[],
        };
        assert_eq!(case.notices, meant, "{stem}");
        if let Some(other) = names.insert(case.name.clone(), stem.clone()) {
            panic!("{stem} and {other} are both called {}", case.name);
        }
    }
}

#[test]
fn the_readme_names_every_scenario() {
    let readme = std::fs::read_to_string(home().join("README.md")).unwrap();
    for name in files().keys() {
        assert!(
            readme.contains(&format!("{name}.toml")),
            "README.md does not name {name}.toml"
        );
    }
}

#[test]
fn heavy_early_changes_lower_the_peaks_and_not_the_ready_day() {
    let (base, heavy) = (
        &outcome(BASE).milestones,
        &outcome("heavy-early-changes").milestones,
    );
    assert!(heavy.tan_peak.value < 2.0);
    assert!(heavy.nitrite_peak.value < base.nitrite_peak.value / 1.5);
    assert!(ready_day("heavy-early-changes") >= ready_day(BASE));
    assert!(heavy.kh_low.value > 1.0);
}

#[test]
fn no_changes_for_two_weeks_makes_worse_water_and_hardly_a_later_day() {
    let (base, none) = (outcome(BASE), outcome("no-changes-for-two-weeks"));
    let twice = 1.8 * base.milestones.tan_peak.value;
    assert!(none.milestones.tan_peak.value > twice);
    assert!(none.milestones.free_ammonia_peak.value > 0.02);
    assert!((25..35).contains(&none.milestones.nitrite_peak.day()));
    assert!(ready_day("no-changes-for-two-weeks").abs_diff(ready_day(BASE)) <= 3);
}

#[test]
fn weekly_changes_save_a_third_of_the_litres_for_the_same_day() {
    let (base, weekly) = (
        &outcome(BASE).milestones,
        &outcome("weekly-changes").milestones,
    );
    assert!((0.6..0.75).contains(&(weekly.litres_changed / base.litres_changed)));
    assert!(weekly.nitrite_peak.value > base.nitrite_peak.value);
    assert!(ready_day("weekly-changes").abs_diff(ready_day(BASE)) <= 1);
}

#[test]
fn night_air_lifts_the_nights_of_a_still_surface_and_costs_gas() {
    let (still, aired) = (outcome("dense-still"), outcome("dense-still-night-air"));
    assert!(still.milestones.oxygen_low.value < 5.0);
    assert!((14..28).contains(&still.milestones.oxygen_low.day()));
    assert!(aired.milestones.oxygen_low.value > 6.0);
    let gas = aired.milestones.gas_g / still.milestones.gas_g;
    assert!((1.6..2.5).contains(&gas), "{gas} times the gas");
    assert!((0.25..0.4).contains(&(still.milestones.gas_g / outcome(BASE).milestones.gas_g)));
    let [left, driven_out] =
        ["dense-still", "dense-still-night-air"].map(|name| at_lights_on(name, 40).co2_mg_per_l);
    assert!(
        (0.4..0.6).contains(&(driven_out / left)),
        "{driven_out} of {left} mg/L"
    );
}

#[test]
fn without_gas_the_ph_stays_over_7_and_more_ammonia_is_free() {
    let plain = outcome("gas-off-few-plants");
    assert!(plain.run.readings.iter().all(|r| r.ph > 7.0));
    let base = &outcome(BASE).milestones;
    assert!(plain.milestones.free_ammonia_peak.value > 1.5 * base.free_ammonia_peak.value);
    assert!(ready_day("gas-off-few-plants") < ready_day(BASE));
}

#[test]
fn soft_water_on_a_soil_that_only_takes_sticks() {
    let stuck = outcome("soft-water-stuck");
    assert!(
        matches!(stuck.verdict.ready, Ready::LaterThan(56)),
        "{:?}",
        stuck.verdict.ready
    );
    let after_a_week = at_lights_on("soft-water-stuck", 7).alkalinity_meq_per_l;
    assert!(
        after_a_week < 0.45 * 0.35665,
        "KH after a week: {after_a_week} meq/L"
    );
    assert!(stuck.milestones.end.tan_mg_n_per_l > 1.0);
}

#[test]
fn mature_sponge_buys_weeks() {
    let seeded = outcome("seeded-with-mature-sponge");
    assert!(seeded.milestones.nitrite_peak.day() < 9);
    assert!(
        seeded.milestones.nitrite_peak.value < 0.5 * outcome(BASE).milestones.nitrite_peak.value
    );
    assert!(ready_day("seeded-with-mature-sponge") + 20 <= ready_day(BASE));
    assert!((7..14).contains(&seeded.milestones.oxygen_low.day()));
}

#[test]
fn a_dark_start_saves_work_and_no_days() {
    let (base, dark) = (&outcome(BASE).milestones, &outcome("dark-start").milestones);
    assert!(dark.nitrite_peak.value > 10.0 && dark.nitrite_peak.day() == 27);
    assert!(ready_day("dark-start") >= ready_day(BASE));
    assert!(dark.litres_changed < 0.5 * base.litres_changed && dark.visits < base.visits);
}

#[test]
fn the_handover_is_ripe_long_before_its_fish() {
    let handover = outcome("handover-in-may");
    assert!(ready_day("handover-in-may") < 28);
    assert!(
        (14..20).contains(&handover.milestones.kh_low.day()),
        "lowest KH outside the trip"
    );
    assert!(handover.milestones.free_ammonia_peak.day() < 9);
    assert_eq!(handover.arrivals.len(), 1);
}

#[test]
fn a_battery_pump_carries_the_fish_through_the_night() {
    let path = &files()["power-cut"];
    let text = std::fs::read_to_string(path).unwrap();
    let without = text.replace(", battery_air = \"0.3 L/min\"", "");
    assert_ne!(text, without);
    let name = path.with_file_name("power-cut-without-pump.toml");
    let case = firstfill::scenario::read_text(&name.to_string_lossy(), &without)
        .unwrap_or_else(|problems| panic!("{}", problems.render(false)))
        .case;
    let without = Outcome::of(&case).unwrap();
    let with = outcome("power-cut");
    assert!(with.milestones.oxygen_low.value > without.milestones.oxygen_low.value + 0.5);
    assert!(without.milestones.co2_high.value > 30.0 && without.milestones.co2_high.day() == 45);
    assert!(with.milestones.co2_high.value < 30.0);
}

#[test]
fn no_scenario_takes_more_work_unseen() {
    // a count of looks is the same on every machine, as time is not
    let mut table = String::from("scenario: steps, parts, looks, held back\n");
    for name in files().keys() {
        let work = &outcome(name).run.work;
        table += &format!(
            "{name}: {}, {}, {}, {}\n",
            work.steps, work.parts, work.evaluations, work.held_back
        );
    }
    insta::assert_snapshot!("work_of_scenarios", table);
}
