//! Every command end to end, in a folder of its own.

use std::fs;
use std::path::Path;

use assert_cmd::Command;
use predicates::prelude::*;
use tempfile::TempDir;

const TABLES: [&str; 7] = [
    "columns.csv",
    "daily.csv",
    "events.csv",
    "ledger.csv",
    "manifest.json",
    "plan.csv",
    "series.csv",
];

/// An invented tank, ten days long.
const TANK: &str = r#"
name = "a short one"
start = "2027-03-06 10:00"
length = 10
[tank]
inside = "60 x 30 x 36 cm"
water_line = "33 cm"
temperature = "24.5 °C"
[soil]
kind = "medium"
amount = "9 L"
[changes]
early = { days = "1..7", every = 1, share = "50 %" }
[light]
on = "11:00..18:00"
[gas]
on = "10:00..17:00"
rate = "2 g/day"
[plants]
stems = { cover = "40 %" }
"#;

fn room() -> TempDir {
    let room = tempfile::tempdir().expect("a temporary folder");
    fs::write(room.path().join("tank.toml"), TANK).expect("a scenario");
    room
}

fn firstfill(room: &TempDir) -> Command {
    let mut command = Command::cargo_bin("firstfill").expect("the program");
    command.current_dir(room.path()).env_remove("NO_COLOR");
    command
}

fn names_in(folder: &Path) -> Vec<String> {
    let mut names: Vec<String> = fs::read_dir(folder)
        .expect("a folder")
        .map(|entry| {
            entry
                .expect("an entry")
                .file_name()
                .to_string_lossy()
                .into_owned()
        })
        .collect();
    names.sort();
    names
}

#[test]
fn run_writes_charts_and_tables_and_says_when_fish_could_go_in() {
    let room = room();
    firstfill(&room)
        .args(["run", "tank.toml", "--single"])
        .assert()
        .success()
        .stdout(predicate::str::contains("Ready"))
        .stdout(predicate::str::contains("output/tank"))
        .stdout(predicate::str::contains(
            "never replaces a test before animals go in",
        ));
    let names = names_in(&room.path().join("output/tank"));
    let charts = ["weeks", "nights", "alkalinity", "capacity", "nitrogen"];
    for file in TABLES.iter().map(ToString::to_string).chain(
        charts
            .iter()
            .flat_map(|stem| [format!("{stem}.png"), format!("{stem}.svg")]),
    ) {
        assert!(names.contains(&file), "{file} is not among {names:?}");
    }
    assert!(
        names.iter().any(|name| name.starts_with("day-")),
        "{names:?}"
    );
}

#[test]
fn the_report_fits_one_screen() {
    let room = room();
    let output = firstfill(&room)
        .args(["run", "tank.toml", "--single", "--no-charts"])
        .output()
        .expect("a report");
    let text = String::from_utf8(output.stdout).expect("words");
    assert!(text.lines().count() <= 50, "{} lines", text.lines().count());
    assert!(text.lines().all(|line| line.chars().count() <= 100));
    assert!(!text.contains('\u{1b}'), "colour goes to terminals only");
}

#[test]
fn a_second_run_takes_the_next_name_and_is_equal_to_the_byte() {
    let room = room();
    firstfill(&room)
        .args(["run", "tank.toml", "--single", "--no-charts"])
        .assert()
        .success();
    firstfill(&room)
        .args(["run", "tank.toml", "--single", "--no-charts"])
        .assert()
        .success()
        .stdout(predicate::str::contains(
            "output/tank was there already, so this run is in output/tank-2",
        ));
    let (first, second) = (
        room.path().join("output/tank"),
        room.path().join("output/tank-2"),
    );
    assert_eq!(names_in(&first), TABLES);
    for name in TABLES {
        let same = fs::read(first.join(name)).unwrap() == fs::read(second.join(name)).unwrap();
        assert!(same, "{name} differs");
    }
}

#[test]
fn an_explicit_folder_that_exists_is_refused_and_force_replaces_it() {
    let room = room();
    let run = [
        "run",
        "tank.toml",
        "--single",
        "--no-charts",
        "--out",
        "mine",
    ];
    firstfill(&room).args(run).assert().success();
    firstfill(&room)
        .args(run)
        .assert()
        .code(2)
        .stderr("error: mine is already there; name another folder with --out, or replace that one with --force\n");
    firstfill(&room)
        .args(run)
        .args(["--force", "--every", "6h"])
        .assert()
        .success()
        .stdout(predicate::str::contains("mine (replaced)"));
    let series = fs::read_to_string(room.path().join("mine/series.csv")).unwrap();
    // the head, the first reading at 10:00, then 12:00 to the closing midnight of day 10, four a day
    assert_eq!(series.lines().count(), 1 + 1 + 3 + 10 * 4);
    assert_eq!(names_in(room.path()), ["mine", "tank.toml"]);
}

#[test]
fn force_does_not_touch_a_folder_that_is_no_run() {
    let room = room();
    fs::create_dir(room.path().join("photos")).unwrap();
    fs::write(room.path().join("photos/fish.jpg"), "x").unwrap();
    firstfill(&room)
        .args(["run", "tank.toml", "--single", "--out", "photos", "--force"])
        .assert()
        .code(2)
        .stderr(predicate::str::contains("not the output of an earlier run"));
    assert_eq!(names_in(&room.path().join("photos")), ["fish.jpg"]);
}

#[test]
fn a_wrong_scenario_ends_with_2_and_writes_nothing() {
    let room = room();
    fs::write(
        room.path().join("wrong.toml"),
        TANK.replace("length = 10", "lenght = 10"),
    )
    .unwrap();
    for command in ["run", "check"] {
        firstfill(&room)
            .args([command, "wrong.toml"])
            .assert()
            .code(2)
            .stdout("")
            .stderr(
                predicate::str::contains("lenght").and(predicate::str::contains("wrong.toml:4:1")),
            );
    }
    assert_eq!(names_in(room.path()), ["tank.toml", "wrong.toml"]);
}

#[test]
fn a_missing_scenario_ends_with_2() {
    let room = room();
    firstfill(&room)
        .args(["run", "nowhere.toml"])
        .assert()
        .code(2)
        .stderr(predicate::str::contains("nowhere.toml"));
    assert_eq!(names_in(room.path()), ["tank.toml"]);
}

#[test]
fn a_place_that_cannot_be_written_to_ends_with_2_in_words() {
    let room = room();
    firstfill(&room)
        .args(["run", "tank.toml", "--single", "--out", "tank.toml/run"])
        .assert()
        .code(2)
        .stderr(
            "error: cannot write to tank.toml: a file is in the way; check that the folder exists \
             and is yours, or name another with --out\n",
        );
    assert_eq!(names_in(room.path()), ["tank.toml"]);
}

#[test]
fn options_that_make_no_sense_end_with_2_before_any_work() {
    let room = room();
    for (wrong, words) in [
        (["--every", "7min"], "5min, 10min"),
        (["--every", "60"], "lacks its unit"),
        (
            ["--day", "11"],
            "--day 11 is not in the run, whose days are 0 to 10",
        ),
    ] {
        firstfill(&room)
            .args(["run", "tank.toml", "--single"])
            .args(wrong)
            .assert()
            .code(2)
            .stderr(predicate::str::contains(words));
    }
    assert_eq!(names_in(room.path()), ["tank.toml"]);
}

#[test]
fn asked_days_are_drawn_and_no_other() {
    let room = room();
    firstfill(&room)
        .args([
            "run",
            "tank.toml",
            "--single",
            "--day",
            "3",
            "--day",
            "7",
            "--day",
            "3",
        ])
        .assert()
        .success();
    let names = names_in(&room.path().join("output/tank"));
    let days: Vec<&String> = names
        .iter()
        .filter(|name| name.starts_with("day-"))
        .collect();
    assert_eq!(
        days,
        ["day-03.png", "day-03.svg", "day-07.png", "day-07.svg"]
    );
}

#[test]
fn drafts_of_a_killed_run_are_removed_by_the_next() {
    let room = room();
    fs::create_dir_all(room.path().join("output/.firstfill-draft-rest/out")).unwrap();
    firstfill(&room)
        .args(["run", "tank.toml", "--single", "--no-charts"])
        .assert()
        .success();
    assert_eq!(names_in(&room.path().join("output")), ["tank"]);
}

#[test]
fn check_prints_the_tank_as_understood_and_writes_nothing() {
    let room = room();
    firstfill(&room)
        .args(["check", "tank.toml"])
        .assert()
        .success()
        .stdout(predicate::str::contains(
            "changes.early: 7 changes of 50.0 % on days 1 to 7",
        ))
        .stdout(predicate::str::contains(
            "Nothing was run and nothing written.",
        ));
    assert_eq!(names_in(room.path()), ["tank.toml"]);
}

#[test]
fn check_lists_what_is_uncertain_and_keeps_a_plain_value() {
    let room = room();
    firstfill(&room)
        .args(["check", "tank.toml", "--uncertain"])
        .assert()
        .success()
        .stdout(predicate::str::contains("mu_NOB"))
        .stdout(predicate::str::contains("not told apart from"))
        .stdout(predicate::str::contains("fixed by definition"));
    assert_eq!(names_in(room.path()), ["tank.toml"]);
}

#[test]
fn every_topic_is_explained_as_a_table_and_as_csv() {
    let room = room();
    for topic in [
        "processes",
        "parameters",
        "columns",
        "units",
        "sources",
        "limits",
        "keys",
    ] {
        firstfill(&room).args(["explain", topic]).assert().success();
        let output = firstfill(&room)
            .args(["explain", topic, "--csv"])
            .output()
            .unwrap();
        let mut rows = csv::Reader::from_reader(output.stdout.as_slice());
        assert!(rows.records().all(|row| row.is_ok()), "{topic}");
    }
    firstfill(&room)
        .arg("explain")
        .assert()
        .success()
        .stdout(predicate::str::contains("processes"));
    firstfill(&room).args(["explain", "fish"]).assert().code(2);
}

#[test]
fn shells_get_completions_and_man_a_page() {
    let room = room();
    for shell in ["bash", "zsh", "fish", "elvish", "powershell"] {
        firstfill(&room)
            .args(["completions", shell])
            .assert()
            .success()
            .stdout(predicate::str::contains("firstfill"));
    }
    firstfill(&room)
        .arg("manual")
        .assert()
        .success()
        .stdout(predicate::str::contains(".TH firstfill 1"));
}

#[test]
fn every_help_text_teaches_with_examples() {
    let room = room();
    for (command, words) in [
        ("", "day on which fish could go in"),
        ("run", "written whole or not at all"),
        ("check", "Every mistake is shown at once"),
        ("levers", "each thing alone, on the same plausible tanks"),
        ("rank-changes", "run again together before it is said"),
        ("latest-fill", "Where no date does, the exit code is 3"),
        ("explain", "tables made from the code itself"),
        ("completions", "completion script"),
        ("manual", "manual page"),
    ] {
        let asked = [command, "--help"]
            .into_iter()
            .filter(|word| !word.is_empty());
        let output = firstfill(&room).args(asked).output().unwrap();
        let text = String::from_utf8(output.stdout).unwrap();
        assert!(text.contains(words), "{command}: {text}");
        let examples = text.split("Examples:").nth(1).unwrap_or_default();
        let count = examples.matches("  firstfill ").count();
        assert!(count >= 2, "{command}: {text}");
        let widest = text.lines().map(|line| line.chars().count()).max();
        assert!(widest <= Some(100), "{command}: {widest:?} columns");
    }
}

#[test]
fn a_reader_that_stops_reading_is_no_error() {
    let room = room();
    let mut child = std::process::Command::new(assert_cmd::cargo::cargo_bin("firstfill"))
        .args(["explain", "parameters"])
        .current_dir(room.path())
        .stdout(std::process::Stdio::piped())
        .stderr(std::process::Stdio::piped())
        .spawn()
        .unwrap();
    drop(child.stdout.take());
    let output = child.wait_with_output().unwrap();
    assert!(output.status.success(), "{output:?}");
    assert!(output.stderr.is_empty(), "{output:?}");
}

#[test]
fn colour_can_be_asked_for_and_no_color_has_the_last_word() {
    let room = room();
    let run = ["run", "tank.toml", "--single", "--no-charts"];
    let coloured = predicate::str::contains("\u{1b}[");
    firstfill(&room)
        .args(run)
        .env("CLICOLOR_FORCE", "1")
        .assert()
        .success()
        .stdout(coloured.clone());
    firstfill(&room)
        .args(run)
        .env("CLICOLOR_FORCE", "1")
        .env("NO_COLOR", "1")
        .assert()
        .success()
        .stdout(coloured.not());
}

#[test]
fn plausible_tanks_are_the_same_on_any_number_of_threads_and_other_with_another_seed() {
    let room = room();
    let folder = |name: &str, threads: &str, seed: &str| {
        firstfill(&room)
            .args(["run", "tank.toml", "--no-charts", "--members", "24"])
            .args(["--out", name, "--seed", seed])
            .env("RAYON_NUM_THREADS", threads)
            .assert()
            .success()
            .stdout(predicate::str::contains("plausible tanks"));
        ["bands.csv", "members.csv", "ready.csv"]
            .map(|table| fs::read_to_string(room.path().join(name).join(table)).unwrap())
    };
    let first = folder("first", "1", "1");
    assert_eq!(first, folder("again", "2", "1"));
    assert_ne!(first, folder("other", "2", "2"));
    let [bands, members, ready] = first;
    assert_eq!(members.lines().count(), 1 + 24);
    assert!(bands.lines().count() > 3 * 16 && ready.contains("day_of,50 of 100,"));
}

#[test]
fn a_number_of_members_that_is_none_is_told_what_is_allowed() {
    let room = room();
    for command in ["run", "levers"] {
        firstfill(&room)
            .args([command, "tank.toml", "--members", "128k"])
            .assert()
            .code(2)
            .stderr(predicate::str::contains(
                "a whole number from 20 to 10000 is allowed",
            ))
            .stderr(predicate::str::contains("--members 512"));
    }
}

#[test]
fn a_single_run_has_no_bands_and_says_so_where_members_are_asked_for_too() {
    let room = room();
    firstfill(&room)
        .args([
            "run",
            "tank.toml",
            "--no-charts",
            "--single",
            "--out",
            "mine",
        ])
        .assert()
        .success()
        .stdout(predicate::str::contains("plausible tanks").not());
    assert!(!room.path().join("mine/bands.csv").exists());
    for wrong in [&["--single", "--members", "50"][..], &["--members", "3"]] {
        firstfill(&room)
            .args(["run", "tank.toml", "--out", "never"])
            .args(wrong)
            .assert()
            .code(2);
    }
    assert!(!room.path().join("never").exists());
}

#[test]
fn levers_writes_its_table_beside_earlier_ones_and_fits_a_screen() {
    let room = room();
    let again = || {
        let mut command = firstfill(&room);
        command.args(["levers", "tank.toml", "--members", "20"]);
        command.output().expect("a page")
    };
    let first = again();
    assert!(first.status.success(), "{first:?}");
    let text = String::from_utf8(first.stdout).expect("words");
    assert!(text.contains("the plan as written") && text.contains("output/levers-tank"));
    assert!(text.contains("never replaces a test before animals go in"));
    assert!(text.lines().count() <= 50, "{} lines", text.lines().count());
    assert!(text.lines().all(|line| line.chars().count() <= 100));
    let names = names_in(&room.path().join("output/levers-tank"));
    assert_eq!(
        names,
        [
            "columns.csv",
            "levers.csv",
            "levers.png",
            "levers.svg",
            "manifest.json"
        ]
    );
    firstfill(&room)
        .args(["run", "output/levers-tank/manifest.json"])
        .assert()
        .code(2)
        .stderr(predicate::str::contains("is of `firstfill levers`"))
        .stderr(predicate::str::contains(
            "type it again: firstfill levers tank.toml --members",
        ));
    for command in ["levers", "check", "rank-changes"] {
        firstfill(&room)
            .args([command, "output/levers-tank/manifest.json"])
            .assert()
            .code(2)
            .stderr(predicate::str::contains("this command repeats no manifest"));
    }
    again();
    let table =
        |folder: &str| fs::read(room.path().join(folder).join("levers.csv")).expect("a table");
    assert_eq!(table("output/levers-tank"), table("output/levers-tank-2"));
}

#[test]
fn a_wish_that_no_filling_meets_ends_with_3_and_says_how_near_one_comes() {
    let room = room();
    let wish = [
        "latest-fill",
        "tank.toml",
        "--ready-by",
        "2027-03-09",
        "--members",
        "20",
    ];
    firstfill(&room)
        .args(wish)
        .assert()
        .code(3)
        .stderr(predicate::str::contains(
            "no filling from Sat 6 Mar 2027 on makes 90 of 100 plausible tanks like yours ready",
        ))
        // told once, not on both streams
        .stdout(predicate::str::contains("no filling from").not());
    assert_eq!(names_in(room.path()), ["tank.toml"], "nothing is written");
    firstfill(&room)
        .args(["latest-fill", "tank.toml", "--ready-by", "2027-03-01"])
        .assert()
        .code(2)
        .stderr(predicate::str::contains("before 2027-03-06"));
    let without = TANK.replace("start = \"2027-03-06 10:00\"", "");
    fs::write(room.path().join("undated.toml"), without).expect("a scenario");
    firstfill(&room)
        .args(["latest-fill", "undated.toml", "--ready-by", "2027-03-09"])
        .assert()
        .code(2)
        .stderr(predicate::str::contains("has no start"));
}
