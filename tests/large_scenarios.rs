//! Files made to cost time or memory: each is answered soon, in little room, with few words.
//!
//! Each was found slow, greedy or wordy once, by fuzzing or by hand, or lies near one that was.
#![cfg(unix)]

use std::fmt::Write;
use std::fs;
use std::path::Path;
use std::process::Output;
use std::time::Duration;

use assert_cmd::Command;
use tempfile::TempDir;

/// Largest file that is read (`scenario::files`), bytes.
const LARGEST: usize = 100_000;
/// Longest wait for an answer, however busy the machine.
const LONGEST_WAIT: Duration = Duration::from_secs(60);
/// Most work for an answer, and for a run, seconds of the processor: five times what the slowest
/// takes unoptimised. One that takes more is ended by the system.
const MOST_SECONDS: [(&str, u32); 2] = [("check", 2), ("run", 5)];
/// Most memory the program may ask for, kB: ten times what it needs for the longest plan. One that
/// asks for more is refused it by the system, and dies of that.
const MOST_MEMORY_KB: u32 = 400_000;
/// Most words of an answer that is all problems, bytes: twenty of them, with long lists of units.
const MOST_WORDS: usize = 50_000;

const TANK: &str = "[tank]\ninside = \"60 x 30 x 36 cm\"\nwater_line = \"33 cm\"\n";
const NO_CHARTS: [&str; 4] = ["run", "tank.toml", "--single", "--no-charts"];
const LIGHT: &str = "[light]\non = \"11:00..18:00\"\nat_soil = \"medium\"\n";

fn room(files: &[(&str, String)]) -> TempDir {
    let room = tempfile::tempdir().unwrap();
    for (name, text) in files {
        fs::write(room.path().join(name), text).unwrap();
    }
    room
}

/// `firstfill …` in a room, with little memory and not for ever.
fn firstfill(room: &Path, arguments: &[&str]) -> Output {
    let mut command = Command::new("sh");
    let seconds = MOST_SECONDS.iter().find(|(of, _)| *of == arguments[0]);
    let (_, seconds) = seconds.expect("a command with a limit");
    let limited = format!("ulimit -v {MOST_MEMORY_KB}; ulimit -t {seconds}; exec \"$0\" \"$@\"");
    command.args(["-c", &limited]);
    command.arg(assert_cmd::cargo::cargo_bin("firstfill"));
    command
        .args(arguments)
        .current_dir(room)
        .timeout(LONGEST_WAIT);
    command.output().expect("an answer in time")
}

fn check(text: String) -> Output {
    let room = room(&[("tank.toml", text)]);
    firstfill(room.path(), &["check", "tank.toml"])
}

fn said(output: &Output) -> String {
    String::from_utf8(output.stderr.clone()).expect("words")
}

/// A text as long as may be: a head, as many pieces as fit, and a tail.
fn long(head: &str, piece: impl Fn(usize) -> String, tail: &str) -> String {
    let mut text = head.to_string();
    for number in 0.. {
        let piece = piece(number);
        if text.len() + piece.len() + tail.len() > LARGEST {
            break;
        }
        text += &piece;
    }
    text + tail
}

fn repeated(head: &str, piece: &str, tail: &str) -> String {
    long(head, |_| piece.to_string(), tail)
}

fn section(name: &str, entry: impl Fn(usize) -> String) -> String {
    long(&format!("{TANK}[{name}]\n"), entry, "")
}

#[test]
fn files_as_large_as_may_be_are_answered_soon_and_shortly() {
    let cases = [
        ("brackets in brackets", repeated("x = ", "[", "")),
        ("tables in tables", repeated("x = ", "{a=", "")),
        ("a key in a key", repeated(TANK, "a.", "b = 1\n")),
        ("a section in a section", repeated("[", "a.", "b]\n")),
        ("one key", repeated(TANK, "a", " = 1\n")),
        (
            "one key of a section",
            repeated(&format!("{TANK}[doses]\n"), "a", " = 1\n"),
        ),
        (
            "one unit",
            repeated("[tank]\ninside = \"60 x 30 x 36 ", "cm", "\"\n"),
        ),
        (
            "one number",
            repeated("[tank]\ninside = \"", "9", " x 1 x 1 cm\"\n"),
        ),
        (
            "many lengths",
            repeated("[tank]\ninside = \"", "1 x ", "1 cm\"\n"),
        ),
        (
            "one word",
            repeated(&format!("{TANK}[surface]\nkind = \""), "x", "\"\n"),
        ),
        ("nothing but NUL", repeated("", "\0", "")),
        ("nothing but quotes", repeated("", "\"", "")),
        ("many unknown keys", long(TANK, |n| format!("k{n}=1\n"), "")),
        ("one key many times", repeated("", "a=1\n", "")),
        ("one line", long("z={", |n| format!("k{n}=1,"), "}\n")),
        (
            "changes at one time",
            section("changes", |n| {
                format!("c{n}={{day={},share=\"1 %\"}}\n", n % 56)
            }),
        ),
        (
            "many plantings",
            section("plants", |n| {
                format!("p{n}={{group=\"stems\",cover=\"1 %\"}}\n")
            }),
        ),
        (
            "many wrong days",
            repeated(&format!("{TANK}[changes]\nmissed=["), "\"x\",", "]\n"),
        ),
        (
            "steps of one day",
            long(
                &format!("{TANK}{LIGHT}[light.steps]\n"),
                |n| format!("s{n}={{day=1}}\n"),
                "",
            ),
        ),
    ];
    for (what, text) in cases {
        let output = check(text);
        assert_eq!(output.status.code(), Some(2), "{what}: {output:?}");
        assert!(
            output.stderr.len() < MOST_WORDS,
            "{what}: {} bytes",
            output.stderr.len()
        );
        assert!(
            said(&output).ends_with("nothing was run\n"),
            "{what}: {}",
            said(&output)
        );
    }
}

#[test]
fn a_plan_of_a_million_doses_is_refused_before_it_is_made() {
    let dose = |n| format!("c{n}={{days=\"1..366\",every=1,iron=\"0.05 mg/L\"}}\n");
    let output = check(format!(
        "length=366\n{}",
        section("doses", dose).replace("c0={", "first={")
    ));
    assert_eq!(output.status.code(), Some(2), "{}", said(&output));
    let words = "the plan holds too many changes, doses and the like";
    assert!(said(&output).contains(words), "{}", said(&output));
    assert!(
        said(&output).contains("at most 10000, and doses.c26 is one more"),
        "{}",
        said(&output)
    );
}

#[test]
fn plans_as_large_as_may_be_run() {
    let ranges = |key| {
        let head =
            format!("{TANK}[changes]\nfirst={{days=\"1..56\",every=1,share=\"5 %\"}}\n{key}=[");
        repeated(&head, "\"0..9999\",", "]\n")
    };
    let fish = |n| {
        format!(
            "s{n}={{day={},kind=\"fish\",count=1,each=\"0.1 g\",feed=\"1 %/day\"}}\n",
            n % 57
        )
    };
    let cases = [
        // with charts, which shade every spell of absence
        (
            "days away",
            ranges("away"),
            &["run", "tank.toml", "--single"][..],
        ),
        ("missed changes", ranges("missed"), &NO_CHARTS),
        ("kinds of fish", section("stock", fish), &NO_CHARTS),
        (
            "waters",
            long(TANK, |n| format!("[water.w{n}]\n"), ""),
            &NO_CHARTS,
        ),
    ];
    for (what, text, command) in cases {
        let room = room(&[("tank.toml", text)]);
        let output = firstfill(room.path(), command);
        assert!(output.status.success(), "{what}: {}", said(&output));
    }
}

#[test]
fn a_file_of_more_than_may_be_is_refused_unread() {
    let text = repeated(TANK, "# remark\n", "") + "# a few more\n";
    let output = check(text);
    assert_eq!(output.status.code(), Some(2));
    let words = "tank.toml is over 100 kB; a scenario is a few kB of text";
    assert!(said(&output).contains(words), "{}", said(&output));
}

#[test]
fn a_chain_without_an_end_is_cut() {
    let link = |n: usize| format!("based_on = \"chain{}.toml\"\n", n + 1);
    let names: Vec<String> = (0..400).map(|n| format!("chain{n}.toml")).collect();
    let files: Vec<(&str, String)> = names
        .iter()
        .enumerate()
        .map(|(n, name)| (name.as_str(), link(n)))
        .collect();
    let room = room(&files);
    let output = firstfill(room.path(), &["check", "chain0.toml"]);
    assert_eq!(output.status.code(), Some(2));
    assert!(
        said(&output).contains("based_on leads on and on"),
        "{}",
        said(&output)
    );
    assert!(
        said(&output).contains("chain19.toml:1:12"),
        "{}",
        said(&output)
    );
}

#[test]
fn a_long_chain_of_large_files_is_laid_together_soon() {
    let mut files = Vec::new();
    let names: Vec<String> = (0..20).map(|n| format!("layer{n}.toml")).collect();
    for (n, name) in names.iter().enumerate() {
        let mut head = String::new();
        if n + 1 < names.len() {
            writeln!(head, "based_on = \"layer{}.toml\"", n + 1).unwrap();
        }
        files.push((name.as_str(), long(&head, |n| format!("k{n}=1\n"), "")));
    }
    let room = room(&files);
    let output = firstfill(room.path(), &["check", "layer0.toml"]);
    assert_eq!(output.status.code(), Some(2), "{output:?}");
    assert!(output.stderr.len() < MOST_WORDS);
}

#[test]
fn a_pipe_below_a_scenario_is_not_waited_for() {
    let room = room(&[("tank.toml", format!("based_on = \"pipe\"\n{TANK}"))]);
    let pipe = Command::new("mkfifo")
        .arg("pipe")
        .current_dir(room.path())
        .output();
    assert!(pipe.is_ok_and(|made| made.status.success()), "a pipe");
    let output = firstfill(room.path(), &["check", "tank.toml"]);
    assert_eq!(output.status.code(), Some(2), "{}", said(&output));
    assert!(
        said(&output).contains("pipe is no file on a disk"),
        "{}",
        said(&output)
    );
}

#[test]
fn control_signs_reach_neither_the_terminal_nor_the_charts() {
    let name = "name = \"a\\u001b[31m\\u0000\\uFFFEb\"\nlength = 2\n";
    let room = room(&[("tank.toml", format!("{name}{TANK}"))]);
    let output = firstfill(room.path(), &["run", "tank.toml", "--single"]);
    assert!(output.status.success(), "{}", said(&output));
    let heard = String::from_utf8(output.stdout).unwrap();
    assert!(heard.contains("a [31m  b"), "{heard}");
    assert!(
        !heard.contains(|sign: char| sign.is_control() && sign != '\n'),
        "{heard:?}"
    );
    let wrong = check(format!("{TANK}color = \"\u{9b}31m\"\n"));
    assert!(
        !said(&wrong).contains(|sign: char| sign.is_control() && sign != '\n'),
        "{wrong:?}"
    );
}
