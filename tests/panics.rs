//! A fault of the program itself: what is said, how it ends, and what is left behind.
//!
//! A test starts this very binary again as a child of its own, in which a command panics while its
//! folder is half filled.

use std::path::Path;
use std::process::{Command, Output};

use firstfill::cli::panics;
use firstfill::output::files::Draft;
use firstfill::output::place::Place;

const TARGET: &str = "FIRSTFILL_TEST_TARGET";

#[test]
#[ignore = "a child of the other tests: it ends its process"]
fn child() {
    let Some(target) = std::env::var_os(TARGET) else {
        return; // asked for by somebody who runs every ignored test
    };
    let exit = panics::catch(|| {
        let draft = Draft::open(Place::Over(target.into())).expect("a place to write to");
        draft.put("half.csv", b"day,pH\n1,").expect("half a file");
        panic!("two and two gave five");
    });
    std::process::exit(exit as i32);
}

fn panicking(target: &Path) -> Output {
    Command::new(std::env::current_exe().expect("this test"))
        .args(["--exact", "child", "--ignored", "--nocapture"])
        .env(TARGET, target)
        .output()
        .expect("a child")
}

#[test]
fn a_panic_asks_to_be_reported_and_ends_with_70() {
    let room = tempfile::tempdir().unwrap();
    let output = panicking(&room.path().join("run"));
    let words = String::from_utf8(output.stderr).unwrap();
    assert_eq!(output.status.code(), Some(70), "{words}");
    let line = "This is a fault of firstfill, not of your file; no half-written folder is left.\n\
                Please report it with the scenario and this line: two and two gave five (tests/panics.rs:";
    assert!(words.starts_with(line), "{words}");
    assert!(words.ends_with(", version 0.1.0)\n"), "{words}");
}

#[test]
fn a_panic_leaves_nothing_half_written() {
    let room = tempfile::tempdir().unwrap();
    panicking(&room.path().join("made/on/the/way"));
    assert_eq!(std::fs::read_dir(room.path()).unwrap().count(), 0);
}

#[test]
fn a_panic_leaves_an_earlier_result_as_it_was() {
    let room = tempfile::tempdir().unwrap();
    let earlier = Draft::open(Place::Exactly(room.path().join("run"))).unwrap();
    earlier.put("manifest.json", b"{}").unwrap();
    earlier.publish().unwrap();
    panicking(&room.path().join("run"));
    let names = |folder: &Path| -> Vec<String> {
        let entries = std::fs::read_dir(folder).unwrap();
        entries
            .map(|entry| entry.unwrap().file_name().into_string().unwrap())
            .collect()
    };
    assert_eq!(names(room.path()), ["run"]);
    assert_eq!(names(&room.path().join("run")), ["manifest.json"]);
}
