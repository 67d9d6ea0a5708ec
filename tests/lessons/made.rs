//! Lessons made for tests: as they are, and of a model that was changed on purpose.

use std::path::PathBuf;

use firstfill::analysis::case::Case;
use firstfill::analysis::compare::Common;
use firstfill::analysis::lesson::claim::Stands;
use firstfill::analysis::lesson::taught::Taught;
use firstfill::analysis::lesson::{Lesson, find};
use firstfill::base::stop::Stop;
use firstfill::output::lesson::words::told;
use firstfill::scenario;

/// Few tanks are enough where the words are judged, not the means.
pub const FEW: Common = Common {
    members: 8,
    seed: 1,
};

pub fn cases(lesson: &Lesson) -> Vec<Case> {
    let loaded = scenario::lesson::read(lesson, None);
    let loaded = loaded.unwrap_or_else(|problems| panic!("{}", problems.render(false)));
    loaded.into_iter().map(|one| one.case).collect()
}

/// The cases of a lesson, each with some lines laid over its scenario.
pub fn altered(lesson: &Lesson, lines: &str) -> Vec<Case> {
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

pub fn taught<'a>(lesson: &'static Lesson, cases: &'a [Case]) -> Taught<'a> {
    Taught::of(lesson, cases, FEW, &Stop::default(), |_, _| {})
        .unwrap_or_else(|error| panic!("{}: {error}", lesson.key))
}

pub fn lesson(key: &str) -> &'static Lesson {
    find(key).unwrap()
}

/// How a claim of a step stands, the headline among them.
pub fn stands(taught: &Taught<'_>, step: usize, claim: &str) -> Stands {
    let claims = taught.claims(step).unwrap();
    let headline = taught.headline(step).unwrap();
    let mut all = claims.iter().chain([&headline]);
    let found = all.find(|decided| decided.claim.key == claim);
    found.unwrap_or_else(|| panic!("no claim {claim}")).stands
}

/// The sentence of a step that begins or goes on with some words; all of them in the message where there is none.
pub fn sentence(taught: &Taught<'_>, step: usize, part: &str) -> String {
    let (headline, sentences) = told(taught, step).unwrap();
    let mut all = sentences.iter().chain([&headline]);
    let found = all.find(|sentence| sentence.contains(part)).cloned();
    found.unwrap_or_else(|| panic!("nobody says \"{part}\": {headline}; {sentences:#?}"))
}
