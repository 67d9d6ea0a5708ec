//! Claims turn when the model is changed on purpose, and fail where no number supports them.

use firstfill::analysis::compare::Common;
use firstfill::analysis::lesson::claim::{Number, Stands};
use firstfill::analysis::lesson::find;
use firstfill::analysis::lesson::taught::{LessonError, MEMBERS, Taught};
use firstfill::base::stop::Stop;
use firstfill::output::lesson::words::told;

use crate::made::{FEW, altered, cases, lesson, sentence, stands, taught};

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
    sentence(&turned, daily, "They raise the peak");
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
    // too few on day 7, and still no ammonia: that is told with its reason
    for step in [3, 4] {
        assert_eq!(stands(&taught, step, "zero, capacity"), Stands::Lower);
        let words = sentence(&taught, step, "With the fish in, ammonia stays at");
        assert!(
            words.contains("the nitrifiers keep growing, and by day"),
            "{words}"
        );
    }
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

/// Lines that give every step of a lesson the same setting.
const ALL_THE_SAME: [(&str, &str); 9] = [
    ("early-changes", "[changes]\nearly = \"none\"\n"),
    ("test-reads-zero", "seed = \"none\"\n"),
    ("starving", "[changes]\nearly = \"none\"\n"),
    ("seeding", "seed = \"none\"\n"),
    ("free-ammonia", "[water.tap]\nalkalinity = \"1 dKH\"\n"),
    ("soft-water", "[water.tap]\nalkalinity = \"4 dKH\"\n"),
    ("gas-timer", "[gas]\non = \"08:30..17:30\"\n"),
    ("air-at-night", "air = \"none\"\n"),
    ("nitrogen", "[changes]\nlate = \"none\"\n"),
];

#[test]
fn where_the_input_does_nothing_no_claim_of_any_lesson_says_that_it_does() {
    for (key, lines) in ALL_THE_SAME {
        let lesson = lesson(key);
        let same = altered(lesson, lines);
        let taught = taught(lesson, &same);
        let mut held_against = 0;
        for step in (0..lesson.steps.len()).filter(|&step| step != lesson.base) {
            let headline = taught.headline(step).unwrap();
            for decided in taught.claims(step).unwrap().into_iter().chain([headline]) {
                let (left, right) = (decided.claim.left, decided.claim.right);
                // days gained against the base are held against none
                let days = matches!((left, right), (Number::Here(fact), Number::Fixed(0.0, _)) if fact.key == "days_sooner");
                if days || matches!(right, Number::Base(_)) {
                    held_against += 1;
                    let name = decided.claim.key;
                    assert_eq!(decided.stands, Stands::Alike, "{key}, step {step}: {name}");
                }
            }
        }
        assert!(held_against > 1, "{key}");
    }
}

/// A model changed on purpose, and what becomes of one claim of one step: as the lesson stands, and with the change.
struct Turn {
    lesson: &'static str,
    step: usize,
    claim: &'static str,
    usual: Stands,
    lines: &'static str,
    turned: Stands,
}

/// Full from the beginning of what turns ammonia over.
const FULL: &str = "[parameters]\n\
    XA0 = { value = \"0.06 mg COD/L\", why = \"a tank that begins with plenty\" }\n\
    XN0 = { value = \"0.02 mg COD/L\", why = \"a tank that begins with plenty\" }\n\
    XK0 = { value = \"0.006 mg COD/L\", why = \"a tank that begins with plenty\" }\n";
const MILD_AND_HUNGRY: &str = "[soil]\nkind = \"mild\"\n[parameters]\n\
    K_NH = { value = \"1 mg N/L\", why = \"oxidisers that need much to live well\" }\n";
const SOUR: &str = "[gas]\non = \"00:00..24:00\"\nhold = \"100 mg/L\"\ntuned_on = [1]\n";
const BICARBONATE: &str = "[doses]\nkh = { days = \"1..56\", every = 1, alkalinity = \"2 dKH\" }\n";
const NO_GAS: &str = "[gas]\nhold = \"2.5 mg/L\"\n";
const SPLASH: &str = "[surface]\nkind = \"splash\"\nfilm = \"none\"\n";
const BARE: &str = "plants = \"none\"\n[parameters]\n\
    k_den = { value = \"7 mg N/m²/day\", why = \"much that breathes nitrate\" }\n";

#[rustfmt::skip]
const TURNS: [Turn; 7] = [
    Turn { lesson: "test-reads-zero", step: 0, claim: "zero, capacity", usual: Stands::Lower, lines: FULL, turned: Stands::Higher },
    Turn { lesson: "starving", step: 4, claim: "starving, enough", usual: Stands::Higher, lines: MILD_AND_HUNGRY, turned: Stands::Lower },
    Turn { lesson: "free-ammonia", step: 6, claim: "free ammonia, harm", usual: Stands::Higher, lines: SOUR, turned: Stands::Lower },
    Turn { lesson: "soft-water", step: 1, claim: "soft water, speed", usual: Stands::Lower, lines: BICARBONATE, turned: Stands::Alike },
    Turn { lesson: "gas-timer", step: 2, claim: "gas timer, swing", usual: Stands::Higher, lines: NO_GAS, turned: Stands::Alike },
    Turn { lesson: "air-at-night", step: 6, claim: "night air, oxygen", usual: Stands::Higher, lines: SPLASH, turned: Stands::Alike },
    Turn { lesson: "nitrogen", step: 0, claim: "nitrogen, plants", usual: Stands::Higher, lines: BARE, turned: Stands::Lower },
];

#[test]
fn a_claim_of_every_other_lesson_turns_when_the_model_is_changed_on_purpose() {
    for turn in TURNS {
        let lesson = lesson(turn.lesson);
        let (usual, changed) = (cases(lesson), altered(lesson, turn.lines));
        let of = |cases| stands(&taught(lesson, cases), turn.step, turn.claim);
        assert_eq!(of(&usual), turn.usual, "{}", turn.claim);
        assert_eq!(of(&changed), turn.turned, "{}, changed", turn.claim);
    }
}

/// What all steps of a lesson say.
fn all_that_is_said(taught: &Taught<'_>) -> String {
    let steps = 0..taught.steps.len();
    let said = steps.map(|step| told(taught, step).unwrap().1.join(" "));
    said.collect::<Vec<_>>().join(" ")
}

#[test]
fn a_cause_is_told_only_where_a_number_between_the_input_and_the_effect_bears_it() {
    let gone = [
        (
            "test-reads-zero",
            "days only ",
            "[doses]\nonce = { day = 1, ammonium = \"0.5 mg N/L\" }\n",
        ),
        ("gas-timer", "times as much CO2 when", NO_GAS),
        (
            "nitrogen",
            "refills carried in",
            "[water.tap]\nnitrate = \"0 mg NO3/L\"\n",
        ),
        ("seeding", "both kinds of nitrifiers", "seed = \"none\"\n"),
        (
            "starving",
            "There was less to eat",
            "[changes]\nearly = \"none\"\n",
        ),
        (
            "free-ammonia",
            "At pH 8.5 the same total would hold",
            "[water.tap]\nalkalinity = \"12 dKH\"\n",
        ),
    ];
    for (key, cause, lines) in gone {
        let lesson = lesson(key);
        let (usual, changed) = (cases(lesson), altered(lesson, lines));
        let said = all_that_is_said(&taught(lesson, &usual));
        assert!(said.contains(cause), "{key}: {said}");
        let said = all_that_is_said(&taught(lesson, &changed));
        assert!(!said.contains(cause), "{key}, changed: {said}");
    }
}

#[test]
fn what_is_gained_by_early_changes_is_laid_to_growth_that_is_no_faster() {
    let lesson = lesson("early-changes");
    let usual = cases(lesson);
    // as many tanks as a lesson runs: eight do not tell three days from a week
    let all = Common {
        members: MEMBERS,
        ..FEW
    };
    let taught = Taught::of(lesson, &usual, all, &Stop::default(), |_, _| {}).unwrap();
    let words = sentence(&taught, 4, "spare the waiting");
    assert!(
        words.contains("nitrifiers grow no faster. In the week before day 12 they double every "),
        "{words}"
    );
}
