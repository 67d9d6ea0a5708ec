//! Studies: what a row is run with, that it hangs on its number alone, and that neither kills nor slices nor threads
//! leave a trace in what is written.

#[path = "support/heeding.rs"]
mod heeding;
mod support;

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::time::Duration;

use rand::rngs::ChaCha8Rng;
use rand::{RngExt, SeedableRng};
use tempfile::TempDir;

use firstfill::analysis::ensemble::{self, Ask};
use firstfill::analysis::figure_list::FIGURES;
use firstfill::analysis::study::Study;
use firstfill::analysis::study::findings::factor;
use firstfill::analysis::study::input::Spread;
use firstfill::analysis::study::run::{Ran, run};
use firstfill::analysis::uncertain::Uncertain;
use firstfill::base::stop::Stop;
use firstfill::output::rows::results::Results;
use firstfill::output::study::words::name;
use firstfill::scenario::study::{Asking, LoadedStudy, load, read_text};
use heeding::heeding;
use support::short_tank::TANK;

const INPUTS: &str = r#"
[inputs]
mu_AOB = "usual"
seed.level = "usual"
water.tap.alkalinity = { from = "2 dKH", to = "6 dKH", form = "even" }
changes.early.share = { settings = ["20 %", "50 %", "80 %"] }
"#;

fn room() -> TempDir {
    let room = tempfile::tempdir().unwrap();
    fs::write(room.path().join("tank.toml"), TANK).unwrap();
    fs::write(room.path().join("study.toml"), study("points", 200)).unwrap();
    room
}

fn study(method: &str, members: usize) -> String {
    format!(
        "[study]\nscenario = \"tank.toml\"\nmethod = \"{method}\"\nmembers = {members}\nready_by = 5\nmilestones = [\"ready_day\", \"tan_peak_mg_n_per_l\", \"oxygen_low_mg_per_l\", \"co2_high_mg_per_l\"]\n{INPUTS}"
    )
}

fn loaded(method: &str, members: usize) -> LoadedStudy {
    let room = room();
    let path = room.path().join("study.toml");
    read_text(&path, &study(method, members), Asking::default())
        .unwrap_or_else(|why| panic!("{why}"))
}

fn ran(loaded: &LoadedStudy, rows: std::ops::Range<u64>) -> Vec<Ran> {
    let mut all = Vec::new();
    let stop = Stop::default();
    let take = |batch: &[Ran]| {
        all.extend_from_slice(batch);
        Ok::<(), ()>(())
    };
    run(&loaded.study, &loaded.family, rows, &stop, take).unwrap();
    all
}

#[test]
fn one_at_a_time_walks_each_input_from_end_to_end_and_leaves_the_others_in_their_middle() {
    let study = loaded("one at a time", 5).study;
    assert_eq!((study.rows_per_member(), study.rows()), (4, 20));
    for member in 0..5 {
        for input in 0..4 {
            let mut expected = vec![0.5; 4];
            expected[input] = member as f64 / 4.0;
            assert_eq!(study.places((member * 4 + input) as u64), expected);
        }
    }
    let Spread::Shape(shape) = study.inputs[0].spread else {
        panic!("usual spreads are shapes");
    };
    // rounding of quantiles
    assert!((study.value(0, 0.0) / shape.at(0.05) - 1.0).abs() < 1e-12);
    assert!((study.value(0, 1.0) / shape.at(0.95) - 1.0).abs() < 1e-12);
}

#[test]
fn every_design_stays_between_nothing_and_all_and_repeats_from_the_number_alone() {
    for method in [
        "one at a time",
        "points",
        "latin",
        "trajectories",
        "variance",
    ] {
        let study = loaded(method, 64).study;
        for row in (0..study.rows()).rev() {
            let places = study.places(row);
            assert!(
                places.iter().all(|place| (0.0..=1.0).contains(place)),
                "{method} {places:?}"
            );
            assert_eq!(places, study.places(row));
        }
    }
}

#[test]
fn latin_points_meet_every_stratum_of_every_input_once() {
    let study = loaded("latin", 100).study;
    for input in 0..4 {
        let stratum = |row| (study.places(row)[input] * 100.0) as usize;
        let mut strata: Vec<usize> = (0..100).map(stratum).collect();
        strata.sort_unstable();
        assert!(strata.into_iter().eq(0..100));
    }
}

#[test]
fn a_row_is_the_member_that_the_same_values_make_of_the_same_tank() {
    let loaded = loaded("points", 48);
    let study = &loaded.study;
    let rows = ran(&loaded, 0..study.rows());
    for variant in loaded.family.variants() {
        let case = variant.case();
        let of_variant: Vec<&Ran> = rows
            .iter()
            .filter(|ran| {
                std::ptr::eq(
                    &loaded.family.variants()[loaded.family.variant_at(&ran.row.places)],
                    variant,
                )
            })
            .collect();
        assert!(of_variant.len() > 8, "{}", of_variant.len());
        let ask = Ask {
            case,
            members: of_variant.len(),
            drawn_days: &[],
        };
        let input = |number: usize| variant.input(&of_variant[number].values);
        let ensemble = ensemble::run(ask, input, &Stop::default(), |_, _| {}).unwrap();
        for (ran, member) in of_variant.iter().zip(&ensemble.members) {
            let told = member.told.as_ref().unwrap();
            let outputs = ran.row.outputs.as_ref().unwrap();
            let day = told.ready.day.map_or(7.0, f64::from);
            assert_eq!(outputs[0], day);
            for (output, milestone) in outputs.iter().zip(&study.milestones).skip(1) {
                let figure = FIGURES
                    .iter()
                    .find(|figure| figure.name == milestone.name)
                    .unwrap();
                assert_eq!(
                    Some(*output),
                    (figure.read)(&told.figures),
                    "{}",
                    milestone.name
                );
            }
        }
    }
}

#[test]
fn what_is_not_among_the_inputs_stays_as_in_the_central_run() {
    let loaded = loaded("points", 48);
    let variant = &loaded.family.variants()[1];
    assert_eq!(variant.uncertain().rows().len(), 3);
    let inputs = &loaded.study.inputs;
    let places = [0.5, 0.5, 0.5, 0.5];
    let values = variant.values(inputs, &places, loaded.study.method.reach());
    let input = variant.input(&values);
    // medians of log-normal spreads, and the middle of an even one that the range of the file has not
    let central = Uncertain::nothing().input(variant.case(), &[]);
    assert_eq!(
        input.parameters.get("mu_NOB"),
        central.parameters.get("mu_NOB")
    );
    let off = input.parameters.get("mu_AOB") / central.parameters.get("mu_AOB") - 1.0;
    assert!(off.abs() < 1e-12, "{off}");
}

#[test]
fn a_row_hangs_on_its_number_alone_not_on_lanes_neighbours_or_threads() {
    for method in ["variance", "latin"] {
        let loaded = loaded(method, 40);
        let all = ran(&loaded, 0..loaded.study.rows());
        let some = ran(&loaded, 7..30);
        assert_eq!(some[..], all[7..30], "{method}");
        let alone = ran(&loaded, 11..12);
        assert_eq!(alone[0], all[11], "{method}");
        let pool = rayon::ThreadPoolBuilder::new()
            .num_threads(3)
            .build()
            .unwrap();
        assert_eq!(
            pool.install(|| ran(&loaded, 0..loaded.study.rows())),
            all,
            "{method}"
        );
    }
}

#[test]
fn lines_are_read_back_as_they_were_written_and_a_torn_one_is_seen() {
    let loaded = loaded("points", 48);
    let mut rows = ran(&loaded, 0..3);
    rows[1].row.outputs = None;
    rows[1].failed = Some(firstfill::engine::error::RunError::Refused(
        "a \"reason\", with signs".into(),
    ));
    let results = Results::of(&loaded.study);
    let text = results.header() + &results.lines(&rows);
    let read = |text: &str| {
        let mut found = Vec::new();
        let told = results.read(text.as_bytes(), 0, |row, _| {
            found.push(row);
            Ok(())
        });
        (told.unwrap(), found)
    };
    let ((bytes, next), found) = read(&text);
    assert_eq!((bytes, next), (text.len() as u64, 3));
    assert_eq!(found[1].outputs, None);
    assert_eq!(found[0].places, rows[0].row.places);
    let whole: Vec<u64> = (0..text.len()).map(|end| read(&text[..end]).0.1).collect();
    assert!(
        whole.is_sorted() && whole.iter().max() == Some(&2),
        "the last line has no end"
    );
}

#[test]
fn shipped_studies_are_read_and_run() {
    for (name, members) in [("what-matters", 16), ("start-ups", 600)] {
        let asking = Asking {
            members: Some(members),
            seed: None,
        };
        let loaded = load(
            &PathBuf::from(format!("scenarios/studies/{name}.toml")),
            asking,
        );
        let loaded = loaded.unwrap_or_else(|why| panic!("{why}"));
        let text = fs::read_to_string(format!("scenarios/studies/{name}.toml")).unwrap();
        let comments = text
            .lines()
            .take_while(|line| line.starts_with('#'))
            .count();
        assert!(
            (3..=4).contains(&comments),
            "{name}: one line on what it asks, then what to watch for"
        );
        let rows = ran(&loaded, 0..4);
        assert!(rows.iter().all(|ran| ran.failed.is_none()), "{name}");
    }
    let what_matters = load(
        Path::new("scenarios/studies/what-matters.toml"),
        Asking::default(),
    )
    .unwrap();
    assert!(what_matters.study.inputs.len() >= 20);
}

// the command

type Folder = BTreeMap<String, Vec<u8>>;

fn program(room: &Path, arguments: &[&str]) -> Command {
    let mut command = Command::new(assert_cmd::cargo::cargo_bin("firstfill"));
    command.args(arguments).current_dir(room).env("CI", "1");
    command.stdout(Stdio::null());
    command
}

fn folder(path: &Path) -> Folder {
    let entries = fs::read_dir(path).unwrap_or_else(|why| panic!("{}: {why}", path.display()));
    let named = |entry: fs::DirEntry| {
        (
            entry.file_name().into_string().unwrap(),
            fs::read(entry.path()).unwrap(),
        )
    };
    entries.map(|entry| named(entry.unwrap())).collect()
}

fn done(room: &Path, arguments: &[&str]) {
    let output = program(room, arguments).output().unwrap();
    let words = String::from_utf8_lossy(&output.stderr);
    assert_eq!(output.status.code(), Some(0), "{arguments:?}: {words}");
}

/// What is said on standard error by a command that ends with a code.
fn refused(room: &Path, arguments: &[&str], code: i32) -> String {
    let output = program(room, arguments).output().unwrap();
    assert_eq!(output.status.code(), Some(code), "{arguments:?}");
    String::from_utf8_lossy(&output.stderr).into_owned()
}

const STUDY: [&str; 3] = ["study", "study.toml", "--no-charts"];

fn with<'a>(options: &[&'a str]) -> Vec<&'a str> {
    [&STUDY[..], options].concat()
}

#[test]
fn killed_at_random_moments_and_resumed_it_is_the_same_to_the_byte() {
    let room = room();
    let at = room.path();
    fs::write(at.join("study.toml"), study("points", 6000)).unwrap();
    done(at, &with(&["--out", "at-once"]));
    let chance = &mut ChaCha8Rng::seed_from_u64(5);
    let mut kills = 0;
    for turn in 0..40 {
        let threads = if turn % 2 == 0 { "1" } else { "2" };
        let mut child = program(
            at,
            &with(&["--out", "killed", "--resume", "--threads", threads]),
        )
        .spawn()
        .unwrap();
        std::thread::sleep(Duration::from_millis(chance.random_range(20..400)));
        child.kill().unwrap();
        if child.wait().unwrap().success() || at.join("killed").exists() {
            break;
        }
        kills += 1;
        // a torn line, as a power cut leaves it
        let rows = at.join(".firstfill-part-killed/results.csv");
        if let Ok(mut bytes) = fs::read(&rows) {
            let torn = chance.random_range(0..90).min(bytes.len());
            bytes.truncate(bytes.len() - torn);
            fs::write(&rows, bytes).unwrap();
        }
    }
    done(at, &with(&["--out", "killed", "--resume"]));
    assert!(kills > 1, "nothing has been tried");
    assert_eq!(folder(&at.join("killed")), folder(&at.join("at-once")));
    assert!(!at.join(".firstfill-part-killed").exists());
}

#[test]
fn slices_in_any_order_and_number_are_one_study() {
    let room = room();
    let at = room.path();
    done(at, &with(&["--out", "whole"]));
    for of in [1, 3, 7] {
        let mut folders: Vec<String> = Vec::new();
        for number in (1..=of).rev() {
            let slice = format!("{number}/{of}");
            let out = format!("slice-{number}-of-{of}");
            done(at, &with(&["--shard", &slice, "--out", &out]));
            folders.push(out);
        }
        let joined = format!("joined-{of}");
        let mut arguments = vec!["gather", "--no-charts", "--out", &joined];
        arguments.extend(folders.iter().map(String::as_str));
        done(at, &arguments);
        assert_eq!(
            folder(&at.join(&joined)),
            folder(&at.join("whole")),
            "{of} slices"
        );
    }
}

#[test]
fn a_study_is_repeated_from_its_manifest() {
    let room = room();
    let at = room.path();
    done(
        at,
        &with(&["--members", "40", "--seed", "9", "--out", "first"]),
    );
    fs::remove_file(at.join("tank.toml")).unwrap();
    done(
        at,
        &[
            "study",
            "first/manifest.json",
            "--no-charts",
            "--out",
            "again",
        ],
    );
    assert_eq!(folder(&at.join("first")), folder(&at.join("again")));
}

#[test]
fn ctrl_c_keeps_what_is_done_and_says_how_to_go_on() {
    let room = room();
    let at = room.path();
    fs::write(at.join("study.toml"), study("points", 200_000)).unwrap();
    let rows = at.join(".firstfill-part-mine/results.csv");
    let child = heeding(&program(at, &with(&["--out", "mine"])))
        .stdout(Stdio::null())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    while fs::metadata(&rows).map_or(0, |meta| meta.len()) < 10_000 {
        std::thread::sleep(Duration::from_millis(5));
    }
    let interrupt = Command::new("kill")
        .args(["-INT", &child.id().to_string()])
        .status();
    assert!(interrupt.unwrap().success());
    let output = child.wait_with_output().unwrap();
    assert_eq!(output.status.code(), Some(130));
    let words = String::from_utf8_lossy(&output.stderr);
    assert!(
        words.starts_with("stopped; ") && words.contains("--resume"),
        "{words}"
    );
    let lines = fs::read_to_string(&rows).unwrap().lines().count() - 1;
    assert!(
        words.contains(&format!("stopped; {lines} of 200000 rows")),
        "{words} {lines}"
    );
}

#[test]
fn what_cannot_be_gone_on_with_is_refused_and_the_difference_shown() {
    let room = room();
    let at = room.path();
    done(at, &with(&["--members", "40", "--out", "mine"]));
    let mut said = vec![refused(
        at,
        &with(&["--members", "48", "--out", "mine", "--resume"]),
        2,
    )];
    said.push(refused(
        at,
        &with(&[
            "--members",
            "40",
            "--seed",
            "2",
            "--out",
            "mine",
            "--resume",
        ]),
        2,
    ));
    let other = study("points", 200).replace("20 %", "25 %");
    fs::write(at.join("study.toml"), other).unwrap();
    said.push(refused(
        at,
        &with(&["--members", "40", "--out", "mine", "--resume"]),
        2,
    ));
    let manifest = fs::read_to_string(at.join("mine/manifest.json")).unwrap();
    fs::write(
        at.join("mine/manifest.json"),
        manifest.replacen("0.1.0", "0.0.9", 1),
    )
    .unwrap();
    fs::write(at.join("study.toml"), study("points", 200)).unwrap();
    said.push(refused(
        at,
        &with(&["--members", "40", "--out", "mine", "--resume"]),
        2,
    ));
    fs::create_dir(at.join(".firstfill-part-left")).unwrap();
    fs::write(at.join(".firstfill-part-left/manifest.json"), manifest).unwrap();
    said.push(refused(at, &with(&["--out", "left"]), 2));
    insta::assert_snapshot!(said.join("\n"));
}

#[test]
fn slices_that_do_not_belong_together_are_refused() {
    let room = room();
    let at = room.path();
    for number in ["1", "2", "3"] {
        done(
            at,
            &with(&[
                "--members",
                "40",
                "--shard",
                &format!("{number}/3"),
                "--out",
                number,
            ]),
        );
    }
    done(
        at,
        &with(&["--members", "48", "--shard", "2/3", "--out", "other"]),
    );
    let gather =
        |folders: &[&str]| refused(at, &[&["gather", "--out", "all"], folders].concat(), 2);
    let mut said = vec![
        gather(&["1", "3"]),
        gather(&["1", "2", "3", "2"]),
        gather(&["1", "other", "3"]),
        gather(&["1", "2", "no-such"]),
    ];
    let rows = fs::read_to_string(at.join("2/results.csv")).unwrap();
    fs::write(at.join("2/results.csv"), &rows[..rows.len() - 10]).unwrap();
    said.push(gather(&["1", "2", "3"]));
    assert!(!at.join("all").exists());
    insta::assert_snapshot!(said.join("\n"));
}

#[test]
fn a_study_that_would_fill_the_disk_is_asked_for_twice() {
    let room = room();
    let said = refused(room.path(), &with(&["--members", "90000000"]), 2);
    assert!(
        said.contains("error: 90 million rows take about") && said.contains(" GB"),
        "{said}"
    );
}

#[test]
fn rows_that_are_there_already_take_no_more_room() {
    let room = room();
    let part = room.path().join(".firstfill-part-mine");
    fs::create_dir(&part).unwrap();
    fs::write(part.join("manifest.json"), "{}").unwrap();
    // as long as the rows of the whole study, but for the disk
    let rows = fs::File::create(part.join("results.csv")).unwrap();
    rows.set_len(100_000_000_000).unwrap();
    let large = ["--members", "90000000", "--out", "mine"];
    let anew = refused(room.path(), &with(&[&large[..], &["--force"]].concat()), 2);
    assert!(anew.contains("rows take about"), "{anew}");
    let resumed = refused(room.path(), &with(&[&large[..], &["--resume"]].concat()), 2);
    assert!(resumed.contains("holds another study"), "{resumed}");
}

#[test]
fn a_milestone_of_the_tank_as_planned_needs_no_look_ahead_and_is_the_same_without() {
    let both = loaded("points", 48);
    let mut figures_only = both.clone();
    figures_only.study.milestones.remove(0);
    let (with, without) = (ran(&both, 0..16), ran(&figures_only, 0..16));
    for (with, without) in with.iter().zip(&without) {
        let (with, without): (&[f64], &[f64]) = (
            with.row.outputs.as_deref().unwrap(),
            without.row.outputs.as_deref().unwrap(),
        );
        assert_eq!(with[1..], *without);
    }
}

#[test]
fn inputs_are_called_what_they_are_and_by_their_path_where_no_words_name_them() {
    let room = room();
    let more = "surface.kind = { settings = [\"still\", \"ripple\"] }\nP_max_stems = \"usual\"\n";
    let text = study("points", 60) + more;
    let path = room.path().join("study.toml");
    let loaded = read_text(&path, &text, Asking::default()).unwrap_or_else(|why| panic!("{why}"));
    let names: Vec<String> = factor::all(&loaded.study).iter().map(name).collect();
    let expected = [
        "fastest growth of ammonia oxidisers at 20 °C",
        "first films",
        "alkalinity of the tap water",
        "changes.early.share",
        "surface.kind",
        "fastest photosynthesis of stems at 25 °C",
    ];
    assert_eq!(names, expected);
}

/// The number of inputs and rows of a study, as a check of its words.
#[test]
fn a_study_counts_its_rows() {
    let of = |study: &Study| (study.rows_per_member(), study.rows());
    assert_eq!(of(&loaded("variance", 64).study), (6, 384));
    assert_eq!(of(&loaded("trajectories", 8).study), (5, 40));
    assert_eq!(of(&loaded("latin", 100).study), (1, 100));
}

#[test]
fn inputs_stand_in_the_unit_in_which_their_range_is_written() {
    let loaded = loaded("points", 48);
    let results = Results::of(&loaded.study);
    let at = results.header();
    let at = at
        .split(',')
        .position(|name| name == "water.tap.alkalinity");
    let head = &results.table().heads[at.unwrap()];
    assert_eq!(head.unit, "dKH");
    let values: Vec<f64> = results
        .lines(&ran(&loaded, 0..48))
        .lines()
        .map(|line| line.split(',').nth(at.unwrap()).unwrap().parse().unwrap())
        .collect();
    // from 2 to 6 dKH; in meq/L nothing would lie above 2.2
    let within = values.iter().all(|value| (2.0..=6.0).contains(value));
    assert!(
        within && values.iter().any(|value| *value > 5.0),
        "{values:?}"
    );
}

#[test]
fn every_peak_and_low_has_its_day_and_no_earlier_milestone_has_moved() {
    use firstfill::analysis::study::milestone::{Milestone, all};
    let names: Vec<&str> = all().map(|one| one.name).collect();
    let last = names.iter().position(|name| *name == "nitrite_peak_day");
    assert_eq!(last, Some(2 + FIGURES.len()), "{names:?}");
    for stem in [
        "tan_peak",
        "free_ammonia_peak",
        "nitrite_peak",
        "nitrate_peak",
    ]
    .into_iter()
    .chain([
        "oxygen_low",
        "co2_high",
        "kh_low",
        "temperature_jump",
        "ph_jump",
    ]) {
        let day = Milestone::named(&format!("{stem}_day")).unwrap();
        assert!(day.unit == "1" && !day.is_a_ready_day() && !day.is_of_ripening());
    }
}
