//! What the README and the demo data tell people to write and to type is right.

use std::fs;
use std::path::{Path, PathBuf};

use clap::Parser;
use firstfill::analysis::outcome::Outcome;
use firstfill::cli::args::Line;
use firstfill::scenario::{Loaded, load, study};

fn home() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

fn text_of(name: &str) -> String {
    fs::read_to_string(home().join(name)).unwrap_or_else(|error| panic!("{name}: {error}"))
}

/// The fenced blocks of a language, in order.
fn blocks(text: &str, language: &str) -> Vec<String> {
    let opening = format!("\n```{language}\n");
    let parts = text.split(&opening).skip(1);
    parts
        .map(|part| part.split("\n```").next().unwrap_or_default().to_string() + "\n")
        .collect()
}

fn loaded(path: &Path) -> Loaded {
    load(path).unwrap_or_else(|problems| panic!("{}", problems.render(false)))
}

/// The two files of "Your own tank in five minutes", as a newcomer would save them, and lines to be added.
fn five_minutes(room: &Path) -> [PathBuf; 2] {
    let files = ["my-tank.toml", "my-tank-weekly.toml"].map(|name| room.join(name));
    let texts = blocks(&text_of("README.md"), "toml");
    assert_eq!(texts.len(), files.len() + 2);
    for (file, text) in files.iter().zip(texts) {
        fs::write(file, text).unwrap();
    }
    files
}

#[test]
fn the_tank_of_five_minutes_runs_and_so_does_its_variant() {
    let room = tempfile::tempdir().unwrap();
    let [first, second] = five_minutes(room.path()).map(|file| {
        let loaded = loaded(&file);
        assert_eq!(loaded.case.notices, Vec::<String>::new());
        Outcome::of(&loaded.case).unwrap()
    });
    assert!(first.verdict.day().is_some());
    assert!(second.milestones.litres_changed < first.milestones.litres_changed);
}

#[test]
fn the_study_asks_of_the_tank_of_five_minutes_what_the_text_says() {
    let room = tempfile::tempdir().unwrap();
    let [first, _] = five_minutes(room.path());
    let text = &blocks(&text_of("README.md"), "toml")[2];
    let path = first.with_file_name("my-study.toml");
    let loaded = study::read_text(&path, text, study::Asking::default());
    let study = loaded
        .unwrap_or_else(|problems| panic!("{}", problems.render(false)))
        .study;
    let has = |name: &str| study.inputs.iter().any(|input| input.name == name);
    assert!(
        has("water.tap.alkalinity") && has("changes.early.share") && has("seed.level") && has("q0")
    );
    assert_eq!(study.rows(), 1024 * (study.inputs.len() as u64 + 2));
}

#[test]
fn the_tank_of_five_minutes_takes_the_calendar_that_is_to_be_found() {
    let room = tempfile::tempdir().unwrap();
    let [first, _] = five_minutes(room.path());
    let [_, _, _, calendar] = &blocks(&text_of("README.md"), "toml")[..] else {
        panic!("three pieces of a scenario, and a study");
    };
    let file = first.with_file_name("found.toml");
    let head = "start = \"2027-03-06\"\nbased_on = \"my-tank.toml\"\n";
    fs::write(&file, format!("{head}{calendar}")).unwrap();
    let wish = loaded(&file).case.calendar.unwrap();
    // three weekdays in eight weeks from a Saturday; half of half a tank, and half of it
    assert_eq!((wish.free_days.len(), wish.shares), (24, vec![0.25, 0.5]));
    assert_eq!((wish.ready_by, wish.keep_of_100), (Some(50), Some(55)));
}

#[test]
fn the_tank_of_five_minutes_takes_dates_and_night_air_as_the_text_says() {
    let room = tempfile::tempdir().unwrap();
    let [first, _] = five_minutes(room.path());
    let more = "start = \"2027-03-06 10:00\"\nbased_on = \"my-tank.toml\"\n\
        [changes]\nlate = { days = \"8..56\", every = \"none\", on = [\"Wed\", \"Sun\"], share = \"40 %\" }\n\
        [air]\non = \"20:00..08:00\"\nflow = \"1 L/min\"\n";
    let file = first.with_file_name("more.toml");
    fs::write(&file, more).unwrap();
    let input = loaded(&file).case.input;
    assert_eq!(input.air.len(), 1);
    for part in [
        "start = \"2027-03-06 10:00\"",
        "on = \"20:00..08:00\"",
        "flow = \"1 L/min\"",
    ] {
        assert!(
            text_of("README.md").contains(part),
            "{part} is no longer in the README"
        );
    }
}

#[test]
fn the_lines_made_of_the_water_report_are_understood() {
    let room = tempfile::tempdir().unwrap();
    let [first, _] = five_minutes(room.path());
    let tap = &blocks(&text_of("demo-data/README.md"), "toml")[0];
    let file = first.with_file_name("report.toml");
    fs::write(&file, format!("based_on = \"my-tank.toml\"\n{tap}")).unwrap();
    let case = loaded(&file).case;
    let value = |path: &str| {
        let found = case.resolved.iter().find(|resolved| resolved.path == path);
        found
            .unwrap_or_else(|| panic!("nothing set {path}"))
            .value
            .clone()
    };
    for (key, written) in [
        ("alkalinity", "96 mg CaCO3/L"),
        ("nitrate", "14.6 mg NO3/L"),
        ("ph", "7.62"),
    ] {
        assert_eq!(value(&format!("water.tap.{key}")), written);
    }
    // 96 mg CaCO3/L over 17.85 mg CaCO3/L per degree: the table says 5.4 dKH
    assert!((case.input.refill.alkalinity_meq_per_l / 0.35665 - 5.4).abs() < 0.05);
    assert!((case.input.refill.hardness_meq_per_l / 0.35665 - 10.3).abs() < 0.05);
}

#[test]
fn every_command_of_the_readme_is_understood() {
    let readme = text_of("README.md");
    let spans = readme.split('`').skip(1).step_by(2);
    let typed = spans.filter(|span| span.starts_with("firstfill "));
    let mut count = 0;
    for command in typed {
        let command = command.split(['|', '>', '\\']).next().unwrap_or_default();
        let words: Vec<&str> = command.split_whitespace().collect();
        if let Err(refusal) = Line::try_parse_from(&words) {
            assert!(!refusal.use_stderr(), "{command}: {refusal}");
        }
        count += 1;
    }
    assert!(count >= 15, "only {count} commands were found");
}

#[test]
fn every_file_the_readme_points_to_is_there() {
    for name in ["README.md", "demo-data/README.md"] {
        let text = text_of(name);
        let links = text
            .split("](")
            .skip(1)
            .filter_map(|part| part.split(')').next());
        for link in links.filter(|link| !link.starts_with("http")) {
            assert!(home().join(link).exists(), "{name} points to {link}");
        }
    }
}

#[test]
fn the_readings_have_the_columns_their_readme_names() {
    for name in [
        "readings-heavy-early-changes.csv",
        "readings-soft-water-stuck.csv",
    ] {
        let mut file = csv::Reader::from_path(home().join("demo-data").join(name)).unwrap();
        let heads = file
            .headers()
            .unwrap()
            .iter()
            .collect::<Vec<_>>()
            .join(", ");
        assert!(text_of("demo-data/README.md").contains(&heads), "{heads}");
        let rows: Vec<csv::StringRecord> = file.records().map(|row| row.unwrap()).collect();
        assert!(rows.len() > 50, "{name} has {} rows", rows.len());
        assert!(
            rows.windows(2).all(|pair| pair[0][0] <= pair[1][0]),
            "{name} is not in order"
        );
    }
}
