//! A scenario as the upper storeys talk about it: what to run, and what to say beside the numbers.

use jiff::civil::Date;

use crate::engine::input::ModelInput;

use super::calendar::wish::CalendarWish;
use super::cost::Prices;
use super::kit::TestKit;
use super::limits::Limits;
use super::uncertain::unsure::Unsure;
use super::uncertain::waters::Waters;

/// A checked scenario.
#[derive(Debug, Clone)]
pub struct Case {
    /// Name given by the user, or the file's stem.
    pub name: String,
    /// Date of filling (day 0), if the scenario gives one.
    pub filled_on: Option<Date>,
    /// What to run.
    pub input: ModelInput,
    /// Limits to judge by.
    pub limits: Limits,
    /// First and last day of each absence.
    pub away: Vec<(u32, u32)>,
    /// Entries that fell on an away day and are left out: day and dotted path.
    pub left_out: Vec<(u32, String)>,
    /// Steps of the plan that are not events: changes of light, gas or air, with day and words.
    pub switches: Vec<PlanStep>,
    /// Facts about the tank for the opening of a report, in order (label, value in words).
    pub facts: Vec<(String, String)>,
    /// Every resolved value with where it came from, in the order of the documentation.
    pub resolved: Vec<Resolved>,
    /// What the user should know before the run.
    pub notices: Vec<String>,
    /// What waters and gas cost, if the scenario says so.
    pub prices: Prices,
    /// Cards of the test kit.
    pub kit: TestKit,
    /// What a calendar that is looked for may be and must keep, if the scenario says so.
    pub calendar: Option<CalendarWish>,
    /// Size of a bag of soil, L.
    pub soil_bag_l: f64,
    /// What the scenario is not sure of: ranges, and words that stand for numbers.
    pub unsure: Vec<Unsure>,
    /// The waters, to be blended anew where something in them is uncertain.
    pub waters: Waters,
}

/// A change of the plan that is not an event of its own.
#[derive(Debug, Clone, PartialEq)]
pub struct PlanStep {
    /// The day from which it holds.
    pub day: u32,
    /// Dotted path of the entry.
    pub name: String,
    /// In words, for example `light 11:30..19:00 at 90 µmol/m²/s`.
    pub what: String,
}

/// What set a value.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum SetBy {
    /// Written in the scenario.
    Given,
    /// A word of the scenario, for example `soil.kind = "rich"`.
    Word(String),
    /// Nothing said: the default, with its provenance in words.
    Default(String),
    /// A parameter override, with the reason given.
    Override(String),
    /// Worked out from other values.
    WorkedOut(String),
}

/// One value a run used.
#[derive(Debug, Clone, PartialEq)]
pub struct Resolved {
    /// Dotted path in the scenario.
    pub path: String,
    /// The value with its unit, as it could be written in a scenario.
    pub value: String,
    /// What set it.
    pub set_by: SetBy,
}
