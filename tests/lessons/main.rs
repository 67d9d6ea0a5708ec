//! Lessons: every sentence is supported by its run, turns when the model is changed on purpose, and fails where no
//! number supports it; no words lie over others on any step.

mod claims;
mod made;

use std::collections::BTreeSet;

use assert_cmd::Command;
use firstfill::analysis::compare::Common;
use firstfill::analysis::lesson::LESSONS;
use firstfill::analysis::lesson::claim::Stands;
use firstfill::analysis::lesson::fact;
use firstfill::analysis::lesson::taught::{MEMBERS, Taught};
use firstfill::analysis::lesson::trace::Trace;
use firstfill::base::clock::DAY;
use firstfill::base::stop::Stop;
use firstfill::output::chart::lesson::figure;
use firstfill::output::chart::rect::Rect;
use firstfill::output::lesson::words::told;
use firstfill::output::text;

use made::{FEW, cases, taught};

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
            assert!(!figure.title.contains('…'), "{name}: {}", figure.title);
            let cut = figure
                .labels
                .iter()
                .find(|label| label.words().contains('…'));
            assert!(cut.is_none(), "{name}: {}", cut.unwrap().words());
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

/// The numbers of a text that say something: decimals, and whole ones of two digits or more; no days, no settings.
fn numbers(words: &str, settings: [&str; 2]) -> BTreeSet<String> {
    let bare = settings.iter().fold(words.to_string(), |words, setting| {
        words.replace(setting, "")
    });
    let bare = bare.replace(" of 100", "").replace("Of 100", "");
    let parts: Vec<&str> = bare.split_whitespace().collect();
    let is_day = |place: usize| {
        let is_length = parts[place..]
            .get(1)
            .is_some_and(|next| next.starts_with("days"));
        place > 0 && parts[place - 1] == "day" || is_length && !parts[place].contains('.')
    };
    let numbers = parts.iter().enumerate().filter(|&(at, _)| !is_day(at));
    let numbers = numbers.map(|(_, part)| part.trim_matches(|c: char| !c.is_ascii_digit()));
    let numbers = numbers.filter(|part| part.len() >= 2 && part.parse::<f64>().is_ok());
    numbers.map(String::from).collect()
}

#[test]
fn nothing_is_told_twice_two_numbers_are_never_held_against_each_other_again() {
    // as many tanks as a lesson runs: with few, sentences on clear differences are never told
    let all = Common {
        members: MEMBERS,
        ..FEW
    };
    for lesson in &LESSONS {
        let cases = cases(lesson);
        let taught = Taught::of(lesson, &cases, all, &Stop::default(), |_, _| {}).unwrap();
        for (place, step) in lesson.steps.iter().enumerate() {
            let (headline, sentences) = told(&taught, place).unwrap();
            let settings = [step.label, lesson.steps[lesson.base].label];
            let mut said: Vec<(BTreeSet<String>, String)> = Vec::new();
            for words in [headline].into_iter().chain(sentences) {
                let own = numbers(&words, settings);
                for (before, earlier) in &said {
                    assert!(
                        own.intersection(before).count() < 2,
                        "{}: {earlier} / {words}",
                        lesson.key
                    );
                }
                assert!(said.iter().all(|(_, earlier)| *earlier != words), "{words}");
                said.push((own, words));
            }
        }
    }
}

#[test]
fn the_first_count_of_100_says_how_many_tanks_it_is_made_from() {
    let mut counted = 0;
    for lesson in &LESSONS {
        let cases = cases(lesson);
        let taught = taught(lesson, &cases);
        for step in 0..lesson.steps.len() {
            let (headline, sentences) = told(&taught, step).unwrap();
            let whole = format!("{headline}. {}", sentences.join(" "));
            let mut counts = whole.split("100 plausible tanks").skip(1);
            if let Some(after) = counts.next() {
                counted += 1;
                assert!(after.starts_with(" (8 were run)"), "{whole}");
                assert!(counts.all(|after| !after.starts_with(" (")), "{whole}");
            }
        }
    }
    assert!(counted > 0, "no lesson counts tanks");
}

#[test]
fn the_lesson_on_gas_opens_with_an_answer_and_compares_tanks_that_are_equally_far() {
    let lesson = made::lesson("gas-timer");
    let cases = cases(lesson);
    let taught = taught(lesson, &cases);
    for step in (0..lesson.steps.len()).filter(|&step| step != lesson.base) {
        let (headline, _) = told(&taught, step).unwrap();
        assert!(headline.starts_with("Yes, it saves gas: "), "{headline}");
        for part in [
            "instead of 125",
            "the price is free ammonia",
            "plants change by −",
        ] {
            assert!(headline.contains(part), "no {part}: {headline}");
        }
        assert_eq!(
            made::stands(&taught, step, "gas timer, stage"),
            Stands::Alike
        );
    }
}

#[test]
fn every_mean_of_days_says_how_sure_it_is_and_what_tanks_that_are_not_ready_count_as() {
    let mut means = 0;
    for lesson in &LESSONS {
        let cases = cases(lesson);
        let taught = taught(lesson, &cases);
        for step in 0..lesson.steps.len() {
            let (headline, sentences) = told(&taught, step).unwrap();
            let all: Vec<&String> = [&headline].into_iter().chain(&sentences).collect();
            let is_mean = |words: &&&String| words.contains("on the mean of 8 plausible ones");
            for words in all.iter().filter(is_mean) {
                means += 1;
                assert!(words.contains(" ± "), "{words}");
            }
            let place = all.iter().position(|words| words.contains(" ± "));
            if let Some(place) = place {
                let next = all[place + 1];
                assert!(next.starts_with("In that mean, ± is"), "{next}");
            }
        }
    }
    assert!(means > 20, "{means} means of days");
}

#[test]
fn the_title_of_every_chart_is_its_result_not_the_name_of_its_lesson() {
    let mut untold = Vec::new();
    for lesson in &LESSONS {
        let cases = cases(lesson);
        let taught = taught(lesson, &cases);
        for step in 0..lesson.steps.len() {
            if figure(&taught, step).unwrap().title == lesson.title {
                untold.push(told(&taught, step).unwrap().0);
            }
        }
    }
    assert_eq!(untold, Vec::<String>::new());
}

#[test]
fn the_parts_of_the_nitrogen_are_the_whole_and_the_ends_of_the_curves() {
    let lesson = made::lesson("nitrogen");
    let cases = cases(lesson);
    let taught = taught(lesson, &cases);
    for step in 0..lesson.steps.len() {
        let seen = taught.seen(step);
        let of = |key: &str| fact::find(key).unwrap().of(&seen).unwrap().value;
        let whole = of("nitrogen_whole");
        let parts = [
            (Trace::CarriedOut, "n_changes"),
            (Trace::InWater, "n_water"),
            (Trace::InPlants, "n_plants"),
            (Trace::GoneAsGas, "n_gas"),
            (Trace::InDetritus, "n_detritus"),
        ];
        let sum: f64 = parts.iter().map(|(_, key)| of(key)).sum();
        assert!((sum - whole).abs() < 1e-6 * whole, "{sum} of {whole}");
        let traces = lesson.traces();
        let curve = |trace| {
            let at = traces.iter().position(|&t| t == trace).unwrap();
            &taught.courses[step].values[at]
        };
        for (trace, key) in parts {
            let end = *curve(trace).last().unwrap();
            assert!((end - of(key)).abs() < 0.01 * whole, "{key}: {end}");
        }
        // what the full tank held, what the soil gave and what refills brought is all there was
        let filled = taught.steps[step].case.input.filled_at;
        let minutes = &taught.courses[step].minutes;
        let full = minutes
            .iter()
            .rposition(|&minute| minute <= filled)
            .unwrap();
        let held = [Trace::InWater, Trace::InPlants, Trace::InDetritus];
        let held: f64 = held.iter().map(|&trace| curve(trace)[full]).sum();
        let came = held + of("from_soil") + of("refilled");
        assert!((came - whole).abs() < 1e-3 * whole, "{came} of {whole}");
        // at a change curves rise at once, not at the next midnight
        for two in 1..minutes.len() {
            let rise = curve(Trace::CarriedOut)[two] - curve(Trace::CarriedOut)[two - 1];
            assert!(
                rise == 0.0 || minutes[two] == minutes[two - 1],
                "a slope of {rise}"
            );
        }
    }
}

#[test]
fn the_lesson_on_starving_counts_oxidisers_by_what_they_weigh() {
    let lesson = made::lesson("starving");
    let cases = cases(lesson);
    let taught = taught(lesson, &cases);
    let of = |step: usize| {
        let run = &taught.steps[step].outcome.run;
        let midnight = 21 * DAY;
        let at = run.readings.iter().find(|r| r.minute == midnight).unwrap();
        at.ammonia_oxidisers_mg_cod + at.complete_oxidisers_mg_cod
    };
    for step in 1..lesson.steps.len() {
        assert!(of(step) < of(step - 1));
        let (headline, _) = told(&taught, step).unwrap();
        let counted = format!("{:.1} mg COD on day 21 instead of {:.1}", of(step), of(0));
        assert!(headline.contains(&counted), "{headline}");
    }
}

#[test]
fn the_table_of_every_lesson_fits_the_screen_and_its_terms_are_told_before_they_are_used() {
    for lesson in &LESSONS {
        let cases = cases(lesson);
        let taught = taught(lesson, &cases);
        let page = text::lesson::page(&taught).unwrap();
        let rows: Vec<String> = page
            .blocks()
            .into_iter()
            .filter(|(label, _)| *label == "Steps")
            .flat_map(|(_, lines)| lines.into_iter().map(|(_, line)| line.to_string()))
            .collect();
        for step in lesson.steps {
            let row = rows.iter().find(|row| row.starts_with(step.label));
            let wide = row.map_or(usize::MAX, |row| row.chars().count());
            // what a screen of 100 columns leaves beside the labels
            assert!(wide <= 88, "{}, {}: {wide} columns", lesson.key, step.label);
        }
        let (headline, sentences) = told(&taught, lesson.shown).unwrap();
        let said = format!("{headline} {}", sentences.join(" "));
        for word in [
            "limit",
            "plausible tanks",
            "KH",
            "free ammonia",
            "oxidisers",
        ] {
            let term = if word == "oxidisers" {
                "nitrifiers"
            } else {
                word
            };
            let is_told = lesson.terms.iter().any(|known| known.word == term);
            assert!(
                is_told || !said.contains(word),
                "{}: {word}: {said}",
                lesson.key
            );
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
