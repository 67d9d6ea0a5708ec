//! Lessons: every sentence is supported by its run, turns when the model is changed on purpose, and fails where no
//! number supports it; no words lie over others on any step.

use std::path::PathBuf;

use assert_cmd::Command;
use firstfill::analysis::case::Case;
use firstfill::analysis::compare::Common;
use firstfill::analysis::lesson::claim::Stands;
use firstfill::analysis::lesson::taught::{LessonError, Taught};
use firstfill::analysis::lesson::{LESSONS, Lesson, find};
use firstfill::base::stop::Stop;
use firstfill::output::chart::lesson::figure;
use firstfill::output::chart::rect::Rect;
use firstfill::output::lesson::words::told;
use firstfill::scenario;

/// Few tanks are enough where the words are judged, not the means.
const FEW: Common = Common {
    members: 8,
    seed: 1,
};

fn cases(lesson: &Lesson) -> Vec<Case> {
    let loaded = scenario::lesson::read(lesson, None);
    let loaded = loaded.unwrap_or_else(|problems| panic!("{}", problems.render(false)));
    loaded.into_iter().map(|one| one.case).collect()
}

/// The cases of a lesson, each with some lines laid over its scenario.
fn altered(lesson: &Lesson, lines: &str) -> Vec<Case> {
    let of_step = |(name, text): (String, String)| {
        let files = scenario::lesson::files(lesson);
        let mut kept: Vec<(PathBuf, String)> = files
            .into_iter()
            .map(|(name, text)| (PathBuf::from(name), text))
            .collect();
        let over = format!("based_on = \"{name}\"\n{lines}");
        kept.insert(0, (PathBuf::from("altered.toml"), over));
        assert!(!text.is_empty());
        let loaded = scenario::load_kept(kept);
        loaded
            .unwrap_or_else(|problems| panic!("{}", problems.render(false)))
            .case
    };
    let files = scenario::lesson::files(lesson);
    let steps = files.into_iter().skip(2);
    steps.map(of_step).collect()
}

fn taught<'a>(lesson: &'static Lesson, cases: &'a [Case]) -> Taught<'a> {
    Taught::of(lesson, cases, FEW, &Stop::default(), |_, _| {})
        .unwrap_or_else(|error| panic!("{}: {error}", lesson.key))
}

fn lesson(key: &str) -> &'static Lesson {
    find(key).unwrap()
}

/// How a claim of a step stands.
fn stands(taught: &Taught<'_>, step: usize, claim: &str) -> Stands {
    let claims = taught.claims(step).unwrap();
    let found = claims.iter().find(|decided| decided.claim.key == claim);
    found.unwrap_or_else(|| panic!("no claim {claim}")).stands
}

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

#[test]
fn early_changes_lower_the_peak_and_raise_it_when_the_tap_brings_the_ammonia() {
    let lesson = lesson("early-changes");
    let (usual, dirty) = (
        cases(lesson),
        altered(
            lesson,
            "[water.tap]\nammonia = \"9 mg N/L\"\n[fill]\nblend = { clean = \"100 %\" }\n[water.clean]\nalkalinity = \"4 dKH\"\n",
        ),
    );
    let claim = "early changes, ammonia";
    let daily = lesson.steps.len() - 1;
    let run = taught(lesson, &usual);
    assert_eq!(stands(&run, daily, claim), Stands::Lower);
    let turned = taught(lesson, &dirty);
    assert_eq!(stands(&turned, daily, claim), Stands::Higher);
    let (_, sentences) = told(&turned, daily).unwrap();
    assert!(
        sentences[0].starts_with("They raise the peak"),
        "{sentences:?}"
    );
}

#[test]
fn a_sponge_gains_weeks_and_nothing_where_the_tank_begins_with_as_many_nitrifiers() {
    let lesson = lesson("seeding");
    let full = "[parameters]\n\
        XA0 = { value = \"0.06 mg COD/L\", why = \"a tank that begins with plenty\" }\n\
        XN0 = { value = \"0.02 mg COD/L\", why = \"a tank that begins with plenty\" }\n\
        XK0 = { value = \"0.006 mg COD/L\", why = \"a tank that begins with plenty\" }\n\
        seed_XA = { value = \"0.5 mg COD/L\", why = \"a poor sponge\" }\n\
        seed_XN = { value = \"0.2 mg COD/L\", why = \"a poor sponge\" }\n\
        seed_XK = { value = \"0.5 mg COD/L\", why = \"a poor sponge\" }\n";
    let (usual, full) = (cases(lesson), altered(lesson, full));
    let claim = "seeding, days";
    assert_eq!(stands(&taught(lesson, &usual), 3, claim), Stands::Higher);
    assert_eq!(stands(&taught(lesson, &full), 1, claim), Stands::Alike);
}

#[test]
fn a_zero_of_a_seeded_tank_is_told_apart_from_that_of_a_bare_one() {
    let lesson = lesson("test-reads-zero");
    let cases = cases(lesson);
    let taught = taught(lesson, &cases);
    let last = lesson.steps.len() - 1;
    assert_eq!(stands(&taught, 0, "zero, the card"), Stands::Lower);
    assert_eq!(stands(&taught, last, "zero, the card"), Stands::Lower);
    assert_eq!(stands(&taught, 0, "zero, capacity"), Stands::Lower);
    assert_eq!(stands(&taught, last, "zero, capacity"), Stands::Higher);
}

#[test]
fn a_total_of_one_is_harmless_at_ph_6_and_dangerous_at_8_5() {
    let lesson = lesson("free-ammonia");
    let cases = cases(lesson);
    let taught = taught(lesson, &cases);
    let last = lesson.steps.len() - 1;
    assert_eq!(stands(&taught, last, "free ammonia, total"), Stands::Alike);
    assert_eq!(stands(&taught, 0, "free ammonia, harm"), Stands::Lower);
    assert_eq!(stands(&taught, last, "free ammonia, harm"), Stands::Higher);
}

#[test]
fn numbers_that_support_no_sentence_fail_loudly() {
    // the day that is looked at is not in the run
    let free = find("free-ammonia").unwrap();
    let none = altered(free, "length = 1\n");
    let error = Taught::of(free, &none, FEW, &Stop::default(), |_, _| {});
    let refused = matches!(error, Err(LessonError::Unsupported(_)));
    assert!(refused, "a lesson tells of a day that is not in its run");
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
