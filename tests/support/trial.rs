//! One spoiled scenario after the other put to the program, and a watch on how long each takes.

use std::fmt;
use std::ops::Range;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::sync::mpsc::{self, RecvTimeoutError};
use std::time::{Duration, Instant};

use firstfill::analysis::case::Case;
use firstfill::analysis::outcome::Outcome;
use firstfill::base::stop::Stop;
use firstfill::engine::error::RunError;
use firstfill::engine::run;
use firstfill::output::folder::{self, Wanted};
use firstfill::output::manifest;
use firstfill::output::text::{self, Page, understood};
use firstfill::scenario::{self, Loaded, Problems};

use crate::spoil::{self, Corpus, Spoiled};

/// Longest wait for one answer: a thousand times the usual one, so that a busy machine is no find.
const LONGEST_WAIT: Duration = Duration::from_secs(20);
/// Largest answer, bytes: twenty problems of a few kB each fit many times.
const LARGEST_ANSWER: usize = 200_000;

/// How far an accepted scenario is taken.
#[derive(Clone, Copy)]
pub enum Depth {
    /// Read and shown.
    Read,
    /// Run for two days as well.
    TwoDays,
    /// Run to its end, judged, and all tables made.
    Folder,
    /// The charts drawn too.
    Charts,
}

/// What came of many inputs.
#[derive(Default)]
pub struct Tally {
    pub read: u64,
    pub accepted: u64,
    pub run: u64,
    /// Runs that ended with an impossible number, said in words.
    pub impossible: Vec<u64>,
    /// Inputs at which the program panicked.
    pub finds: Vec<u64>,
    pub slowest: (Duration, u64),
}

impl fmt::Display for Tally {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "{} read, {} accepted, {} run, impossible numbers in {:?}, finds {:?}, slowest {:?} (number {})",
            self.read,
            self.accepted,
            self.run,
            self.impossible,
            self.finds,
            self.slowest.0,
            self.slowest.1
        )
    }
}

impl Tally {
    fn add(&mut self, number: u64, answer: &Answer, took: Duration) {
        self.read += 1;
        self.slowest = self.slowest.max((took, number));
        self.accepted += u64::from(!matches!(answer, Answer::Refused));
        match answer {
            Answer::Ran => self.run += 1,
            Answer::Impossible => {
                self.run += 1;
                self.impossible.push(number);
            }
            Answer::Refused | Answer::Accepted => {}
        }
    }
}

enum Answer {
    Refused,
    Accepted,
    Ran,
    Impossible,
}

/// Puts inputs to the program; the first panic ends it.
pub fn each(
    corpus: &Corpus,
    seed: u64,
    numbers: Range<u64>,
    depth: impl Fn(u64) -> Depth,
) -> Tally {
    let mut tally = Tally::default();
    for number in numbers {
        let spoiled = spoil::input(corpus, seed, number);
        let began = Instant::now();
        let answer = answer(&spoiled, depth(number));
        let took = began.elapsed();
        assert!(took < LONGEST_WAIT, "number {number} took {took:?}");
        tally.add(number, &answer, took);
    }
    tally
}

/// Puts inputs to the program; a panic is noted and it goes on, a wait without end ends it.
pub fn watched(
    seed: u64,
    numbers: Range<u64>,
    depth: impl Fn(u64) -> Depth + Send + 'static,
) -> Tally {
    let (tell, told) = mpsc::channel();
    let worker = std::thread::spawn(move || {
        let corpus = Corpus::of_the_project();
        let mut tally = Tally::default();
        for number in numbers {
            tell.send(number).expect("somebody watches");
            let spoiled = spoil::input(&corpus, seed, number);
            let began = Instant::now();
            match catch_unwind(AssertUnwindSafe(|| answer(&spoiled, depth(number)))) {
                Ok(answer) => tally.add(number, &answer, began.elapsed()),
                Err(_) => tally.finds.push(number),
            }
        }
        tally
    });
    let mut last = 0;
    loop {
        match told.recv_timeout(LONGEST_WAIT) {
            Ok(number) => {
                last = number;
                if number.is_multiple_of(50_000) {
                    println!("at number {number}");
                }
            }
            Err(RecvTimeoutError::Timeout) => panic!("no answer to number {last} of seed {seed}"),
            Err(RecvTimeoutError::Disconnected) => break,
        }
    }
    worker.join().expect("the worker counts its finds")
}

fn answer(spoiled: &Spoiled, depth: Depth) -> Answer {
    match read(spoiled) {
        Ok(loaded) => {
            is_plain(&loaded.case.name);
            is_plain(&uncoloured(&understood::page(&loaded.case)));
            match depth {
                Depth::Read => Answer::Accepted,
                Depth::TwoDays => two_days(&loaded.case),
                Depth::Folder => whole(&loaded, false),
                Depth::Charts => whole(&loaded, true),
            }
        }
        Err(problems) => {
            is_in_words(&problems);
            Answer::Refused
        }
    }
}

fn read(spoiled: &Spoiled) -> Result<Loaded, Problems> {
    if let Ok(text) = std::str::from_utf8(&spoiled.bytes) {
        return scenario::read_text(&spoiled.name, text);
    }
    let room = tempfile::tempdir().expect("a temporary folder");
    let file = room.path().join("spoiled.toml");
    std::fs::write(&file, &spoiled.bytes).expect("a spoiled file");
    scenario::load(&file)
}

fn is_in_words(problems: &Problems) {
    assert!(!problems.list.is_empty(), "refused without a word");
    let words = problems.render(false);
    is_plain(&words);
    for answer in [words, problems.render(true)] {
        assert!(answer.len() < LARGEST_ANSWER, "{} bytes", answer.len());
    }
}

/// Words for a terminal hold nothing that a terminal would obey.
fn is_plain(words: &str) {
    let obeyed = |sign: char| sign != '\n' && sign.is_control();
    assert!(!words.contains(obeyed), "{words:?}");
}

fn uncoloured(page: &Page) -> String {
    let words = anstream::adapter::strip_str(&page.render(text::WIDEST)).to_string();
    assert!(!words.is_empty());
    words
}

fn two_days(case: &Case) -> Answer {
    let mut input = case.input.clone();
    (input.last_day, input.lookahead_days) = (input.last_day.min(1), 0);
    ended(run::run(&input))
}

fn ended<T>(run: Result<T, RunError>) -> Answer {
    match run {
        Ok(_) => Answer::Ran,
        Err(RunError::Impossible { .. }) => Answer::Impossible,
        Err(other) => panic!("{other}"),
    }
}

fn whole(loaded: &Loaded, charts: bool) -> Answer {
    let case = &loaded.case;
    let wanted = Wanted {
        every_minutes: 5,
        charts,
        days: Vec::new(),
    };
    let looked_at = Outcome::of(case).and_then(|mut outcome| {
        outcome.look_closely(case, &wanted.closely(&outcome))?;
        Ok(outcome)
    });
    let outcome = match looked_at {
        Ok(outcome) => outcome,
        failed => return ended(failed),
    };
    let story = manifest::Story {
        case,
        outcome: &outcome,
        forecast: None,
        files: &[],
        options: &[],
    };
    let entries = folder::entries(&story, &wanted, &Stop::default()).expect("a folder");
    assert!(entries.iter().all(|entry| !entry.bytes.is_empty()));
    let report = text::Story {
        length: text::Length::Full,
        file: None,
        case,
        outcome: &outcome,
        forecast: None,
    };
    is_plain(&uncoloured(&text::report(&report)));
    Answer::Ran
}
