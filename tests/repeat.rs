//! A run is repeated from its manifest, as a user would: the same bytes, whatever became of the files.

mod support;

use std::fs;
use std::path::Path;

use assert_cmd::Command;
use predicates::prelude::*;
use tempfile::TempDir;

use support::short_tank::TANK;

/// A tank that is laid over the short one from another folder.
const ABOVE: &str = "based_on = \"../below.toml\"\nname = \"above\"\n[gas]\nhold = \"20 mg/L\"\n";

/// A room with both files, and a first run of the upper one in `output/above`.
fn after_a_run(options: &[&str]) -> TempDir {
    let room = tempfile::tempdir().unwrap();
    fs::create_dir(room.path().join("tanks")).unwrap();
    fs::write(room.path().join("below.toml"), TANK).unwrap();
    fs::write(room.path().join("tanks/above.toml"), ABOVE).unwrap();
    let mut line = vec!["run", "tanks/above.toml"];
    line.extend(options);
    firstfill(&room).args(line).assert().success();
    room
}

fn firstfill(room: &TempDir) -> Command {
    let mut command = Command::cargo_bin("firstfill").unwrap();
    command.current_dir(room.path());
    command
}

/// Every file of a folder with its bytes.
fn files(folder: &Path) -> Vec<(String, Vec<u8>)> {
    let mut files: Vec<(String, Vec<u8>)> = fs::read_dir(folder)
        .unwrap()
        .map(|entry| {
            let path = entry.unwrap().path();
            let name = path.file_name().unwrap().to_string_lossy().into_owned();
            (name, fs::read(&path).unwrap())
        })
        .collect();
    files.sort();
    files
}

fn assert_same_bytes(one: &Path, other: &Path) {
    let (one, other) = (files(one), files(other));
    let names = |files: &[(String, Vec<u8>)]| -> Vec<String> {
        files.iter().map(|(name, _)| name.clone()).collect()
    };
    assert_eq!(names(&one), names(&other));
    for (one, other) in one.iter().zip(&other) {
        assert!(one == other, "{} differs", one.0);
    }
}

#[test]
fn a_manifest_repeats_its_run_to_the_byte_though_the_scenario_has_changed_and_its_base_is_gone() {
    let room = after_a_run(&["--single", "--no-charts", "--every", "30min"]);
    let first = room.path().join("output/above");
    let kept = room.path().join("kept.json");
    fs::copy(first.join("manifest.json"), &kept).unwrap();
    fs::write(
        room.path().join("tanks/above.toml"),
        ABOVE.replace("20 mg/L", "30 mg/L"),
    )
    .unwrap();
    fs::remove_file(room.path().join("below.toml")).unwrap();
    firstfill(&room)
        .args(["run", "kept.json"])
        .assert()
        .success()
        .stdout(predicate::str::contains("output/above-2"));
    assert_same_bytes(&first, &room.path().join("output/above-2"));
    // and the file as it stands now is another tank, which cannot even be read
    firstfill(&room)
        .args(["run", "tanks/above.toml"])
        .assert()
        .code(2);
}

#[test]
fn charts_and_days_asked_for_are_repeated_too() {
    let room = after_a_run(&["--day", "3", "--day", "5", "--members", "20", "--seed", "7"]);
    firstfill(&room)
        .args(["run", "output/above/manifest.json", "--out", "again"])
        .assert()
        .success();
    assert_same_bytes(
        &room.path().join("output/above"),
        &room.path().join("again"),
    );
    assert!(room.path().join("again/day-05.svg").exists());
    assert!(room.path().join("again/members.csv").exists());
}

#[test]
fn options_given_beside_a_manifest_stand_over_its_own() {
    let room = after_a_run(&["--single", "--no-charts", "--every", "30min"]);
    firstfill(&room)
        .args([
            "run",
            "output/above/manifest.json",
            "--every",
            "2h",
            "--out",
            "coarse",
        ])
        .assert()
        .success();
    let rows = |folder: &str| {
        let series = fs::read_to_string(room.path().join(folder).join("series.csv")).unwrap();
        series.lines().count()
    };
    assert!(rows("output/above") > 3 * rows("coarse"));
    let daily = |folder: &str| fs::read(room.path().join(folder).join("daily.csv")).unwrap();
    assert_eq!(daily("output/above"), daily("coarse"));
}

#[test]
fn what_is_no_manifest_is_refused_in_words_and_nothing_is_written() {
    let room = after_a_run(&["--single", "--no-charts"]);
    let whole = fs::read_to_string(room.path().join("output/above/manifest.json")).unwrap();
    let without_base = {
        let mut read: serde_json::Value = serde_json::from_str(&whole).unwrap();
        read["scenario"]["files"].as_array_mut().unwrap().pop();
        read.to_string()
    };
    let many = whole.replace("\"single\"", "\"members\"");
    for (text, words) in [
        (
            many.replacen("\"value\": \"true\"", "\"value\": \"99999999\"", 1),
            "members is 99999999\n  = help: a whole number from 20",
        ),
        ("{}".to_string(), "is not the manifest of an earlier run"),
        ("fish".to_string(), "is not the manifest of an earlier run"),
        (
            whole.replace("\"program\": \"firstfill\"", "\"program\": \"other\""),
            "written by \"other\"",
        ),
        (without_base, "was not kept"),
        (
            whole.replace("\"single\"", "\"singel\""),
            "there is no option singel\n  = help: did you mean single?",
        ),
        (
            whole.replace("\"value\": \"true\"", "\"value\": \"perhaps\""),
            "is perhaps",
        ),
    ] {
        fs::write(room.path().join("odd.json"), text).unwrap();
        firstfill(&room)
            .args(["run", "odd.json", "--out", "never"])
            .assert()
            .code(2)
            .stderr(predicate::str::contains(words));
        assert!(!room.path().join("never").exists());
    }
}

#[test]
fn a_manifest_of_another_version_is_repeated_with_a_note() {
    let room = after_a_run(&["--single", "--no-charts"]);
    let path = room.path().join("output/above/manifest.json");
    let own = format!("\"version\": \"{}\"", env!("CARGO_PKG_VERSION"));
    let text = fs::read_to_string(&path).unwrap();
    assert!(text.contains(&own));
    fs::write(
        room.path().join("old.json"),
        text.replace(&own, "\"version\": \"0.0.1\""),
    )
    .unwrap();
    firstfill(&room)
        .args(["run", "old.json", "--out", "again"])
        .assert()
        .success()
        .stderr(
            predicate::str::contains("written by version 0.0.1")
                .and(predicate::str::contains("may differ")),
        );
    firstfill(&room)
        .args(["run", "output/above/manifest.json", "--out", "silent"])
        .assert()
        .success()
        .stderr("");
}

#[test]
fn a_lesson_is_repeated_from_its_manifest_though_its_own_scenarios_have_changed() {
    let room = tempfile::tempdir().unwrap();
    let lesson = |words: &[&str]| firstfill(&room).arg("lesson").args(words).assert();
    lesson(&["free-ammonia", "--scenarios", "--out", "mine"]).success();
    let tank = room.path().join("mine/free-ammonia.toml");
    let text = fs::read_to_string(&tank).unwrap();
    let sweet = text.replace("ammonium = \"1 mg N/L\"", "ammonium = \"2 mg N/L\"");
    assert_ne!(text, sweet);
    fs::write(&tank, sweet).unwrap();
    lesson(&["free-ammonia", "--from", "mine", "--out", "first"]).success();
    fs::remove_dir_all(room.path().join("mine")).unwrap();
    lesson(&["first/manifest.json", "--out", "again"]).success();
    assert_same_bytes(&room.path().join("first"), &room.path().join("again"));
    let steps = fs::read_to_string(room.path().join("again/steps.csv")).unwrap();
    assert!(steps.contains(",2.0"), "the dose was doubled: {steps}");
}

#[test]
fn manifests_that_are_of_no_lesson_and_lessons_that_are_no_run_are_refused_in_words() {
    let room = after_a_run(&["--single", "--no-charts"]);
    let refused = |words: &[&str], told: &str| {
        let refused = firstfill(&room)
            .args(words)
            .args(["--out", "never"])
            .assert();
        refused.code(2).stderr(predicate::str::contains(told));
        assert!(!room.path().join("never").exists());
    };
    refused(
        &["lesson", "output/above/manifest.json"],
        "is not of a lesson",
    );
    let of_lesson = "{\"program\": \"firstfill\", \"version\": \"0\", \"files\": [{\"path\": \"a.toml\", \"text\": \"\"}], \
         \"options\": [{\"name\": \"command\", \"value\": \"lesson\"}, {\"name\": \"lesson\", \"value\": \"seeding\"}]}";
    fs::write(room.path().join("of-lesson.json"), of_lesson).unwrap();
    refused(
        &["run", "of-lesson.json"],
        "`firstfill lesson of-lesson.json` repeats it",
    );
    refused(
        &["lesson", "of-lesson.json"],
        "seeding-none.toml was not kept",
    );
    refused(
        &["lesson", "of-lesson.json", "--from", "tanks"],
        "brings its own scenarios",
    );
}
