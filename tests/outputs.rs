//! The files of a run, held against each other and against what they promise.

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

use firstfill::analysis::case::Case;
use firstfill::analysis::outcome::Outcome;
use firstfill::base::clock::{DAY, TimeOfDay};
use firstfill::base::stop::Stop;
use firstfill::engine::close_ups::CloseUps;
use firstfill::engine::result::Reading;
use firstfill::output::folder::{Entry, Wanted, entries};
use firstfill::output::manifest::Story;
use firstfill::scenario;

/// An invented tank, twelve days long, with animals.
const TANK: &str = r#"
start = "2027-03-06 10:00"
length = 12
[tank]
inside = "60 x 30 x 36 cm"
water_line = "33 cm"
[soil]
kind = "medium"
amount = "9 L"
[changes]
early = { days = "1..7", every = 2, share = "50 %" }
[light]
on = "11:00..18:00"
[gas]
on = "10:00..17:00"
rate = "2 g/day"
[plants]
stems = { cover = "40 %" }
front = { group = "carpet", cover = "20 %" }
[doses]
weekly = { days = "1..12", every = 7, potassium = "3 mg K/L" }
[stock]
first = { day = 8, kind = "fish", count = 6, each = "0.5 g", feed = "2 %/day" }
"#;

fn case() -> Case {
    let room = tempfile::tempdir().expect("a temporary folder");
    let file = room.path().join("tank.toml");
    fs::write(&file, TANK).expect("a scenario");
    match scenario::load(&file) {
        Ok(loaded) => loaded.case,
        Err(problems) => panic!("{}", problems.render(false)),
    }
}

fn written(case: &Case, outcome: &Outcome, every_minutes: u32) -> Vec<Entry> {
    filled(case, outcome, every_minutes, false)
}

fn drawn(case: &Case, outcome: &Outcome) -> Vec<Entry> {
    filled(case, outcome, 60, true)
}

fn filled(case: &Case, outcome: &Outcome, every_minutes: u32, charts: bool) -> Vec<Entry> {
    let story = Story {
        case,
        outcome,
        forecast: None,
        files: &[("tank.toml".into(), TANK.into())],
        options: &[],
    };
    let wanted = Wanted {
        every_minutes,
        charts,
        days: vec![],
    };
    entries(&story, &wanted, &Stop::default()).expect("files")
}

fn csv(entries: &[Entry], name: &str) -> (Vec<String>, Vec<Vec<String>>) {
    let entry = entries
        .iter()
        .find(|entry| entry.name == name)
        .expect("the file");
    let mut reader = csv::Reader::from_reader(entry.bytes.as_slice());
    let heads = reader
        .headers()
        .expect("heads")
        .iter()
        .map(str::to_string)
        .collect();
    let rows = reader
        .records()
        .map(|row| row.expect("a row").iter().map(str::to_string).collect())
        .collect();
    (heads, rows)
}

fn column<'a>(table: &'a (Vec<String>, Vec<Vec<String>>), name: &str) -> Vec<&'a str> {
    let place = table
        .0
        .iter()
        .position(|head| head == name)
        .unwrap_or_else(|| panic!("{name}"));
    table.1.iter().map(|row| row[place].as_str()).collect()
}

#[test]
fn columns_csv_explains_every_column_of_every_file_once() {
    let case = case();
    let entries = written(&case, &Outcome::of(&case).expect("a run"), 60);
    let guide = csv(&entries, "columns.csv");
    let explained: Vec<(&str, &str)> = column(&guide, "file")
        .into_iter()
        .zip(column(&guide, "column"))
        .collect();
    let mut heads = Vec::new();
    for entry in entries
        .iter()
        .filter(|entry| entry.name.ends_with(".csv") && entry.name != "columns.csv")
    {
        for head in csv(&entries, &entry.name).0 {
            heads.push((entry.name.clone(), head));
        }
    }
    for (file, head) in &heads {
        let times = explained
            .iter()
            .filter(|e| **e == (file.as_str(), head.as_str()))
            .count();
        assert_eq!(times, 1, "{file}: {head}");
    }
    assert_eq!(explained.len(), heads.len() + guide.0.len());
    assert!(
        column(&guide, "meaning")
            .iter()
            .all(|words| !words.is_empty())
    );
}

#[test]
fn columns_with_a_unit_hold_numbers_of_six_digits_at_most_and_nothing_else() {
    let case = case();
    let entries = written(&case, &Outcome::of(&case).expect("a run"), 60);
    let guide = csv(&entries, "columns.csv");
    for row in &guide.1 {
        let (file, head, unit) = (&row[0], &row[1], &row[2]);
        if unit.is_empty() {
            continue;
        }
        for cell in column(&csv(&entries, file), head) {
            let number: f64 = cell
                .parse()
                .unwrap_or_else(|_| panic!("{file}: {head} holds {cell}"));
            assert!(number.is_finite(), "{file}: {head} holds {cell}");
            let digits = cell.split('e').next().unwrap_or(cell);
            let significant = digits.trim_start_matches(['-', '0', '.']);
            let figures = significant
                .chars()
                .filter(char::is_ascii_digit)
                .collect::<String>();
            // zeros at the end of a large number only hold its place
            assert!(
                figures.trim_end_matches('0').len() <= 6,
                "{file}: {head} holds {cell}"
            );
        }
    }
}

#[test]
fn the_interval_of_rows_does_not_change_what_they_say() {
    let case = case();
    let mut outcome = Outcome::of(&case).expect("a run");
    let hourly = csv(&written(&case, &outcome, 60), "series.csv");
    let closely = CloseUps::none().throughout(10);
    outcome.look_closely(&case, &closely).expect("a run");
    let finer = csv(&written(&case, &outcome, 10), "series.csv");
    let lines: BTreeSet<&Vec<String>> = finer.1.iter().collect();
    assert!(finer.1.len() > 5 * hourly.1.len());
    for row in &hourly.1 {
        assert!(lines.contains(row), "day {} differs", row[0]);
    }
}

#[test]
fn the_first_row_is_the_moment_of_filling_and_the_last_the_closing_midnight() {
    let case = case();
    let entries = written(&case, &Outcome::of(&case).expect("a run"), 60);
    let series = csv(&entries, "series.csv");
    assert_eq!(series.0[..2], ["day", "time"]);
    assert_eq!(series.1[0][..2], ["0.4167", "2027-03-06T10:00"]);
    assert_eq!(
        series.1.last().expect("rows")[..2],
        ["13", "2027-03-19T00:00"]
    );
}

#[test]
fn the_look_ahead_appears_in_no_file() {
    let case = case();
    let entries = written(&case, &Outcome::of(&case).expect("a run"), 60);
    for file in ["series.csv", "daily.csv", "events.csv", "plan.csv"] {
        let last = csv(&entries, file).1.last().expect("rows")[0]
            .parse::<f64>()
            .expect("a day");
        assert!(last <= 13.0, "{file} ends with day {last}");
    }
}

#[test]
fn a_change_halves_what_only_mixes_and_counts_its_litres() {
    let case = case();
    let entries = written(&case, &Outcome::of(&case).expect("a run"), 60);
    let events = csv(&entries, "events.csv");
    let litres: f64 = column(&events, "water_out_l")
        .iter()
        .map(|l| l.parse::<f64>().expect("litres"))
        .sum();
    let daily = csv(&entries, "plan.csv");
    let planned: f64 = column(&daily, "water_out_l")
        .iter()
        .map(|l| l.parse::<f64>().expect("litres"))
        .sum();
    // four changes of half of a full tank, written with six digits each
    let expected = 4.0 * 0.5 * case.input.tank.volume_l;
    assert!(
        (litres - expected).abs() < 1e-3,
        "{litres} against {expected}"
    );
    assert!(
        (planned - litres).abs() < 1e-3,
        "{planned} against {litres}"
    );
}

#[test]
fn animals_go_in_on_the_written_day_and_the_ready_day_is_judged_without_them() {
    let case = case();
    let outcome = Outcome::of(&case).expect("a run");
    assert_eq!(outcome.arrivals.len(), 1);
    assert_eq!(outcome.arrivals[0].day, 8);
    assert!(
        !outcome.arrivals[0].ripe,
        "a tank of eight days is not ripe"
    );
    let mut quiet = case.clone();
    quiet.input = case.input.without_animals();
    let alone = Outcome::of(&quiet).expect("a run");
    assert_eq!(alone.verdict.ready, outcome.verdict.ready);
}

#[test]
fn the_account_of_nitrogen_closes_in_the_ledger_file() {
    let case = case();
    let entries = written(&case, &Outcome::of(&case).expect("a run"), 60);
    let ledger = csv(&entries, "ledger.csv");
    for relative in column(&ledger, "relative_error") {
        // rounding of some thousand steps; a wrong coefficient shows at 1e-6
        assert!(
            relative.parse::<f64>().expect("a number") < 1e-9,
            "{relative}"
        );
    }
}

/// The text of a chart.
fn svg(entries: &[Entry], start: &str) -> String {
    let is_it = |entry: &&Entry| entry.name.starts_with(start) && entry.name.ends_with(".svg");
    let entry = entries.iter().find(is_it).expect("a chart");
    String::from_utf8(entry.bytes.clone()).expect("text")
}

#[test]
fn the_chart_of_a_day_tells_the_hour_that_the_report_and_the_nights_tell() {
    // in this tank oxygen is lowest between the ends of two steps
    let case = scenario::load(Path::new("scenarios/gas-off-few-plants.toml"))
        .expect("a shipped scenario")
        .case;
    let mut outcome = Outcome::of(&case).expect("a run");
    let told = outcome.milestones.oxygen_low.minute;
    let closely = CloseUps::none().of_days(&[told / DAY], 5);
    outcome.look_closely(&case, &closely).expect("a run");
    let order = |a: &&&Reading, b: &&&Reading| a.oxygen_mg_per_l.total_cmp(&b.oxygen_mg_per_l);
    let within = outcome.run.seen(told / DAY * DAY, (told / DAY + 1) * DAY);
    let lowest = within.iter().min_by(order).expect("readings").minute;
    assert_ne!(lowest, told, "else this shows nothing");
    let entries = drawn(&case, &outcome);
    let hour = format!("at {}", TimeOfDay::of(told));
    assert!(svg(&entries, "day-").contains(&hour), "{hour}");
}
