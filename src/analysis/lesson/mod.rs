//! Lessons: one question, one input moved in a few steps, and what the runs say to it.
//!
//! ```text
//! scenarios/KEY.toml, list/KEY.rs    one lesson: scenario; steps, what is drawn, claims, notes           ── a plain value
//! taught         its steps run, each on the same plausible tanks                     ── Taught
//! fact           a number read off a step        trace, course   a curve over time
//! nitrogen       one account of nitrogen, for curves, table and words
//! behind         what microbes, soil and pH did: the numbers that causes hang on
//! claim          a sentence in as many variants as its numbers can have outcomes
//! ```
//!
//! Nothing a lesson says of an effect is written down as true: a [`Claim`] holds two numbers of the runs
//! against each other, picks the variant they support, and fails where there is none. A cause in a sentence is a claim
//! of its own, about a number that lies between the input and the effect; where that does not bear it, no cause is told.

mod behind;
pub mod claim;
pub mod course;
pub mod fact;
mod list;
pub mod nitrogen;
pub mod note;
pub mod taught;
pub mod trace;

use std::ops::RangeInclusive;

use crate::base::clock::DAY;

use claim::Claim;
use fact::Fact;
use note::Note;
use trace::Panel;

pub use list::LESSONS;

/// One lesson, before anything is run.
#[derive(Debug)]
pub struct Lesson {
    /// Its name as it is typed.
    pub key: &'static str,
    /// Its name as it is read.
    pub title: &'static str,
    /// The question it answers.
    pub question: &'static str,
    /// Words that need saying first.
    pub terms: &'static [Term],
    /// The scenario that all steps start from.
    pub scenario: &'static str,
    /// What the steps move, in words, with its unit.
    pub input: &'static str,
    /// The steps, in the order of the input.
    pub steps: &'static [Step],
    /// The step that the others are held against.
    pub base: usize,
    /// The step that is drawn and told first.
    pub shown: usize,
    /// Which days are drawn.
    pub window: Window,
    /// The day that is looked at closely.
    pub day: u32,
    /// What is drawn.
    pub panels: &'static [Panel],
    /// The numbers that are put into a table, a column per step.
    pub facts: &'static [Fact],
    /// The result in one line.
    pub headline: Claim,
    /// What the runs show, sentence by sentence.
    pub claims: &'static [Claim],
    /// What is written beside the curves.
    pub notes: &'static [Note],
    /// One thing to try next.
    pub to_try: &'static str,
    /// What the model cannot show here.
    pub cannot: &'static [&'static str],
}

/// A word and what it means.
#[derive(Debug, Clone, Copy)]
pub struct Term {
    /// The word.
    pub word: &'static str,
    /// What it means, in one sentence.
    pub meaning: &'static str,
}

/// One setting of the input.
#[derive(Debug, Clone, Copy)]
pub struct Step {
    /// Stem of its scenario file.
    pub key: &'static str,
    /// The setting in words, as they stand in a sentence.
    pub label: &'static str,
    /// What its scenario says otherwise; nothing where it is the scenario as it stands.
    pub lines: &'static str,
}

/// The days that are drawn, and how closely.
#[derive(Debug, Clone, Copy)]
pub struct Window {
    /// The first day.
    pub first_day: u32,
    /// The last day.
    pub last_day: u32,
    /// Minutes between two points of a curve.
    pub every_minutes: u32,
}

/// Most days that are drawn hour by hour.
const FEW_DAYS: u32 = 3;

impl Window {
    /// Whether hours are drawn, not weeks.
    pub fn is_by_the_hour(&self) -> bool {
        self.last_day + 1 - self.first_day <= FEW_DAYS
    }
    /// The minutes in which the highest and the lowest of a curve are looked for: of hours those of the day that the
    /// sentences tell of, else all that is drawn.
    pub fn noted(&self, day: u32) -> RangeInclusive<u32> {
        match self.is_by_the_hour() {
            // the closing midnight is the next day's
            true => day * DAY..=(day + 1) * DAY - 1,
            false => self.first_day * DAY..=(self.last_day + 1) * DAY,
        }
    }
}

/// Eight weeks, four points a day: between two changes of water a curve has no corner.
pub const EIGHT_WEEKS: Window = Window {
    first_day: 0,
    last_day: 56,
    every_minutes: 360,
};

/// The tank that the scenarios of all lessons are based on.
pub const TANK: &str = include_str!("scenarios/tank.toml");

/// The lesson of a name.
pub fn find(key: &str) -> Option<&'static Lesson> {
    LESSONS.iter().find(|lesson| lesson.key == key)
}
