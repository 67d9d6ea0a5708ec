//! Lessons: every sentence is supported by its run, turns when the model is changed on purpose, and fails where no
//! number supports it; no words lie over others on any step.

mod claims;
mod made;

use assert_cmd::Command;
use firstfill::analysis::lesson::LESSONS;
use firstfill::output::chart::lesson::figure;
use firstfill::output::chart::rect::Rect;
use firstfill::output::lesson::words::told;

use made::{cases, taught};

#[test]
fn every_sentence_of_every_step_is_filled_and_no_words_of_a_chart_lie_over_others() {
    for lesson in &LESSONS {
        let cases = cases(lesson);
        let taught = taught(lesson, &cases);
        for step in 0..lesson.steps.len() {
            let name = format!("{}, {}", lesson.key, lesson.steps[step].label);
            let (headline, sentences) = told(&taught, step).unwrap();
            for words in sentences.iter().chain([&headline]) {
                assert!(!words.contains(['{', '}']), "{name}: {words}");
            }
            let figure = figure(&taught, step).unwrap();
            assert_eq!(figure.left_out, Vec::<String>::new(), "{name}");
            let page = Rect::new(0.0, 0.0, 1200.0, 900.0);
            for (place, label) in figure.labels.iter().enumerate() {
                assert!(
                    page.holds(&label.space),
                    "{name}: {} leaves the page",
                    label.words()
                );
                let later = &figure.labels[place + 1..];
                let over = later
                    .iter()
                    .find(|other| other.space.overlaps(&label.space));
                assert!(
                    over.is_none(),
                    "{name}: {} and {}",
                    label.words(),
                    over.unwrap().words()
                );
            }
        }
    }
}

#[test]
fn every_lesson_has_words_for_its_terms_one_thing_to_try_and_what_it_cannot_show() {
    for lesson in &LESSONS {
        assert!(
            lesson.terms.len() >= 2 && !lesson.cannot.is_empty(),
            "{}",
            lesson.key
        );
        assert!(
            lesson.to_try.len() > 40 && lesson.steps.len() >= 5,
            "{}",
            lesson.key
        );
        for claim in lesson.claims {
            // a claim that knows one outcome only is no claim
            assert!(
                claim.all_words().count() >= 3,
                "{}: {}",
                lesson.key,
                claim.key
            );
        }
    }
}

fn firstfill() -> Command {
    Command::cargo_bin("firstfill").expect("the program")
}

#[test]
fn a_lesson_is_repeated_from_its_own_scenarios_and_fails_with_one_where_they_support_nothing() {
    let room = tempfile::tempdir().unwrap();
    let run = |arguments: &[&str]| {
        let mut command = firstfill();
        command
            .current_dir(room.path())
            .arg("lesson")
            .args(arguments);
        command.assert()
    };
    let listed = run(&[]).success();
    let listed = String::from_utf8_lossy(&listed.get_output().stdout).into_owned();
    for lesson in &LESSONS {
        assert!(listed.contains(lesson.key), "{listed}");
    }
    run(&["free-ammonia", "--scenarios", "--out", "mine"]).success();
    run(&["free-ammonia", "--from", "mine", "--out", "again"]).success();
    for name in ["lesson.html", "curves.csv", "steps.csv", "lesson.svg"] {
        let read = |folder: &str| std::fs::read(room.path().join(folder).join(name)).unwrap();
        assert!(read("mine") == read("again"), "{name} differs");
    }
    let file = room.path().join("mine/free-ammonia.toml");
    let text = std::fs::read_to_string(&file).unwrap();
    std::fs::write(&file, text.replace("length = 7", "length = 1")).unwrap();
    let refused = run(&["free-ammonia", "--from", "mine", "--out", "third"]).code(1);
    let words = String::from_utf8_lossy(&refused.get_output().stderr).into_owned();
    assert!(words.contains("no sentence of"), "{words}");
    assert!(!room.path().join("third").exists());
    run(&["no-such-lesson"]).code(2);
}

#[test]
fn a_folder_of_scenarios_that_is_not_there_is_told_with_how_to_write_it() {
    let room = tempfile::tempdir().unwrap();
    let mut command = firstfill();
    command.current_dir(room.path());
    let words = ["lesson", "seeding", "--from", "mine", "--out", "never"];
    let refused = command.args(words).assert().code(2);
    let said = String::from_utf8_lossy(&refused.get_output().stderr).into_owned();
    for part in [
        "there is no folder mine",
        "firstfill lesson seeding --scenarios --out mine",
    ] {
        assert!(said.contains(part), "{said}");
    }
    assert!(!room.path().join("never").exists());
}
