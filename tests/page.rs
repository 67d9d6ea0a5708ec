//! The page of outside checks, `tests/README.md`, and the tests it names keep in step.
//!
//! * Every row names a test that exists and is not ignored.
//! * Every test of a file that the page names has a row.
//! * Every test file is named, or listed in the paragraph on what is not on the page.
//! * A row with a number is read by its test: its words stand in the test's file. The test then holds
//!   what it finds against both numbers of the row (`support::check`).

mod support;

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use support::check;
use support::page::{self, Line, Measure, lines, rounded_up};

/// What stands for a tolerance, and for what was found, where a check has no number.
const RELATION: (&str, &str) = ("yes or no", "holds");
/// How the paragraph on files that are not on the page begins.
const NOT_HERE: &str = "Not on this page:";

/// A test of a file.
struct Test<'a> {
    name: &'a str,
    ignored: bool,
}

/// The tests of a text: functions under `#[test]`, and the names that the macro of a file lists with
/// their words, as `reference_runs.rs` does.
fn tests(text: &str) -> Vec<Test<'_>> {
    let mut found = Vec::new();
    let mut attributes: Option<Vec<&str>> = None;
    for line in text.lines().map(str::trim) {
        match (&mut attributes, line.strip_prefix("fn ")) {
            (Some(seen), Some(function)) => {
                let name = function.split('(').next().unwrap_or_default();
                let ignored = seen.iter().any(|a| a.starts_with("#[ignore"));
                if !name.starts_with('$') {
                    found.push(Test { name, ignored });
                }
                attributes = None;
            }
            (Some(seen), None) if line.starts_with("#[") => seen.push(line),
            (Some(_), None) => attributes = None,
            (None, _) if line.ends_with("#[test]") => attributes = Some(Vec::new()),
            (None, _) => {}
        }
    }
    found.extend(listed(text));
    found
}

/// Names in lines such as `base: "Reference run: …",`.
fn listed(text: &str) -> impl Iterator<Item = Test<'_>> {
    text.lines().filter_map(|line| {
        let (name, words) = line.strip_prefix("    ")?.split_once(": \"")?;
        let is_name = name
            .chars()
            .all(|c| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '_');
        (is_name && words.ends_with("\",")).then_some(Test {
            name,
            ignored: false,
        })
    })
}

/// Test files by name, with their texts.
type Files = BTreeMap<String, String>;

/// What is wrong between a page and the test files; nothing when they are in step.
fn faults(page: &str, files: &Files) -> Vec<String> {
    let lines = lines(page);
    let mut faults: Vec<String> = lines.iter().flat_map(|line| of_row(line, files)).collect();
    let mut seen = BTreeSet::new();
    let again = lines.iter().filter(|line| !seen.insert(&line.compared));
    faults.extend(again.map(|line| format!("\"{}\" stands twice", line.compared)));
    let named: BTreeSet<&str> = lines.iter().map(|line| line.file.as_str()).collect();
    let elsewhere = not_here(page);
    for (file, text) in files {
        if elsewhere.contains(file.as_str()) == named.contains(file.as_str()) {
            faults.push(format!("{file} is named neither here nor there, or both"));
        }
        if named.contains(file.as_str()) {
            let rows = || lines.iter().filter(|line| line.file == *file);
            let missing = tests(text)
                .into_iter()
                .filter(|t| rows().all(|r| r.test != t.name));
            faults.extend(missing.map(|test| format!("{file}::{} has no row", test.name)));
        }
    }
    faults.extend(
        elsewhere
            .iter()
            .filter(|file| !files.contains_key(**file))
            .map(|file| format!("there is no {file}")),
    );
    faults
}

/// Files that the page says are not on it.
fn not_here(page: &str) -> BTreeSet<&str> {
    let from = page.find(NOT_HERE).unwrap_or(page.len());
    let paragraph = page[from..].split("\n\n").next().unwrap_or_default();
    let quoted = paragraph.split('`').skip(1).step_by(2);
    quoted.filter(|word| word.ends_with(".rs")).collect()
}

fn of_row(line: &Line, files: &Files) -> Vec<String> {
    let what = &line.compared;
    let mut faults = Vec::new();
    let mut fault = |words: &str| faults.push(format!("\"{what}\": {words}"));
    if line.against.is_empty() || line.why.is_empty() {
        fault("says not against what, or why so far");
    }
    let Some(text) = files.get(&line.file) else {
        fault("its file is not there");
        return faults;
    };
    match tests(text).iter().find(|test| test.name == line.test) {
        None => fault("its test is not there"),
        Some(test) if test.ignored => fault("its test is ignored"),
        Some(_) => {}
    }
    match (&line.tolerance, &line.found) {
        (Measure::Number(_), Measure::Number(_)) => {
            if !text.contains(&format!("\"{what}\"")) {
                fault("no test reads it");
            }
        }
        (Measure::Words(one), Measure::Words(other))
            if (one.as_str(), other.as_str()) == RELATION => {}
        _ => fault("has neither two numbers nor \"yes or no\" and \"holds\""),
    }
    faults
}

fn files() -> Files {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests");
    std::fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.extension().is_some_and(|end| end == "rs"))
        .map(|path| {
            let name = path.file_name().unwrap().to_str().unwrap().to_string();
            (name, std::fs::read_to_string(path).unwrap())
        })
        .collect()
}

#[test]
fn the_page_and_the_tests_are_in_step() {
    let (page, files) = (page::text(), files());
    let faults = faults(&page, &files);
    assert!(faults.is_empty(), "\n{}", faults.join("\n"));
    assert!(lines(&page).len() > 100, "{} rows", lines(&page).len());
}

#[test]
fn every_line_of_a_table_is_a_row_that_can_be_read() {
    let page = page::text();
    let table = page.lines().filter(|line| line.starts_with('|'));
    let heads = |line: &&str| line.starts_with("| Compared |") || line.starts_with("|---");
    let rows = table.filter(|line| !heads(line)).count();
    assert_eq!(rows, lines(&page).len());
}

/// A page of two rows and the files it speaks of.
fn small() -> (String, Files) {
    let page = "\
        | Compared | Held against | Tolerance | Why that far | Came within | Test |\n\
        |---|---|---|---|---|---|\n\
        | Weight | a scale | 0.5 % | its dial | 0.2 % | `scale.rs::weighs` |\n\
        | It tips | by eye | yes or no | one sees it | holds | `scale.rs::tips` |\n\
        \n\
        Not on this page: `paint.rs`.\n";
    let scale = "#[test]\nfn weighs() { \"Weight\" }\n\n#[test]\nfn tips() {}\n";
    let texts = [
        ("scale.rs", scale),
        ("paint.rs", "#[test]\nfn dries() {}\n"),
    ];
    let files = texts.map(|(name, text)| (name.to_string(), text.to_string()));
    (page.to_string(), files.into())
}

/// Faults after one word of the page or of `scale.rs` was replaced.
fn after(old: &str, new: &str) -> Vec<String> {
    let (page, mut files) = small();
    let scale = files["scale.rs"].replace(old, new);
    files.insert("scale.rs".into(), scale);
    faults(&page.replace(old, new), &files)
}

#[test]
fn a_page_out_of_step_is_found_out() {
    assert_eq!(after("x", "x"), Vec::<String>::new());
    let first = |old: &str, new: &str| after(old, new).swap_remove(0);
    assert!(first("fn weighs", "fn weighed").contains("not there"));
    assert!(first("#[test]\nfn tips", "#[test]\n#[ignore]\nfn tips").contains("ignored"));
    assert!(
        first("fn tips() {}", "fn tips() {}\n\n#[test]\nfn rusts() {}")
            .contains("rusts has no row")
    );
    assert!(first("{ \"Weight\" }", "{}").contains("no test reads it"));
    assert!(first("| It tips |", "| Weight |").contains("twice"));
    assert!(first("0.2 %", "little").contains("neither two numbers"));
    assert!(first("`paint.rs`", "`glue.rs`").contains("paint.rs"));
    assert!(first("| its dial |", "|  |").contains("why"));
}

#[test]
fn sizes_are_printed_rounded_up_to_two_digits() {
    let printed = [
        0.0, 3.1e-16, 4.9049e-7, 0.0013, 0.001301, 0.4471, 2.0622, 30.0, 3e-5,
    ];
    let words = [
        "1e-12", "1e-12", "5e-7", "0.0013", "0.0014", "0.45", "2.1", "30", "3e-5",
    ];
    assert_eq!(printed.map(rounded_up), words);
    assert_eq!(check::digits_apart(4.18, "4.2").round_to_hundredths(), -0.2);
    assert_eq!(check::half_a_digit("1.2e-3"), 0.5e-4);
}

trait Hundredths {
    fn round_to_hundredths(self) -> f64;
}

impl Hundredths for f64 {
    fn round_to_hundredths(self) -> f64 {
        (100.0 * self).round() / 100.0
    }
}

#[test]
fn a_row_that_says_what_was_not_found_is_found_out() {
    let row = |found: &str| lines(&small().0.replace("0.2 %", found)).remove(0);
    let untrue = |found: &str, worst: f64| check::untrue(&row(found), worst).is_some();
    assert!(!untrue("0.2 %", 0.002) && !untrue("0.2 %", 0.0015));
    assert!(untrue("0.2 %", 0.0021), "more than stated");
    assert!(untrue("0.2 %", 0.0009), "much less than stated");
    assert!(untrue("0.2 %", f64::NAN), "no number");
    assert!(!untrue("1e-12", 0.0) && untrue("1e-12", 2e-12), "rounding");
}

#[test]
#[should_panic(expected = "allowed")]
fn a_difference_beyond_the_tolerance_fails() {
    let mut check = check::Check::of("Gas constant");
    check.see(1.0, "a whole gas constant");
    check.holds(1);
}

#[test]
#[should_panic(expected = "values compared")]
fn a_check_that_compared_too_little_fails() {
    check::Check::of("Gas constant").holds(1);
}
