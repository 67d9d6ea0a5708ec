//! A case in the making: what the sections of a scenario add to, one after the other.

use crate::analysis::case::PlanStep;
use crate::analysis::uncertain::moves::{Move, Place};
use crate::base::units;
use crate::engine::event::{Event, EventKind};
use crate::model::parameter_set::{Origin, ParameterSet};
use crate::model::parameters;

use super::calendar::Calendar;
use super::desk::Desk;
use super::problem::{Place as Spot, Problem};
use super::reader::Said;
use super::repeats::When;

/// Most things that happen at one instant: 26 a day in the longest run. It bounds the time and the
/// memory of a run, of which each keeps the water before and after.
const MOST_EVENTS: usize = 10_000;
const TOO_MANY: &str = "the plan holds too many changes, doses and the like";

/// A case in the making.
pub struct Draft<'a> {
    /// Where problems go.
    pub desk: &'a Desk,
    /// The days of the run.
    pub calendar: Calendar,
    /// Time of day of events that say none, in minutes since midnight.
    pub usual_time: u32,
    /// First and last day of each absence.
    pub away: Vec<(u32, u32)>,
    /// Days whose changes are missed.
    pub missed: Vec<u32>,
    /// Days of the dark start.
    pub dark_days: u32,
    /// Everything that happens at one instant.
    pub events: Vec<Event>,
    /// Entries that are left out, by day.
    pub left_out: Vec<(u32, String)>,
    /// Switches of light, gas and air.
    pub switches: Vec<PlanStep>,
    /// Facts for the opening of a report.
    pub facts: Vec<(String, String)>,
    /// Parameter values.
    pub parameters: ParameterSet,
}

impl<'a> Draft<'a> {
    /// An empty draft for a calendar.
    pub fn new(desk: &'a Desk, calendar: Calendar) -> Draft<'a> {
        Draft {
            desk,
            calendar,
            usual_time: 0,
            away: Vec::new(),
            missed: Vec::new(),
            dark_days: 0,
            events: Vec::new(),
            left_out: Vec::new(),
            switches: Vec::new(),
            facts: Vec::new(),
            parameters: ParameterSet::default(),
        }
    }
    /// Whether nobody is there on a day.
    pub fn is_away(&self, day: u32) -> bool {
        self.away
            .iter()
            .any(|&(first, last)| (first..=last).contains(&day))
    }
    /// A parameter in the base unit of its kind.
    pub fn parameter(&self, id: &str) -> f64 {
        let value = self.parameters.get(id);
        let label = parameters::spec(id).map_or("1", |spec| spec.unit);
        units::of_label(label).map_or(value, |(_, unit)| unit.to_base(value))
    }
    /// Sets a parameter (from the base unit of its kind), because of a word of the scenario.
    pub fn set(&mut self, id: &str, base: f64, word: &str) {
        let label = parameters::spec(id).map_or("1", |spec| spec.unit);
        let value = units::of_label(label).map_or(base, |(_, unit)| unit.from_base(base));
        self.parameters
            .set(id, value, Origin::Word(word.to_string()));
    }
    /// The same for a value that may be a range.
    pub fn set_said(&mut self, id: &str, said: Said, word: &str) {
        self.set(id, said.value, word);
        self.moved_by(id, said);
    }
    /// Notes that a value which may be a range goes into a parameter.
    fn moved_by(&self, id: &str, said: Said) {
        if let (Some(number), Some(spec)) = (parameters::index(id), parameters::spec(id)) {
            let factor = units::of_label(spec.unit).map_or(1.0, |(_, unit)| unit.from_base(1.0));
            said.moves_times(self.desk, Place::Parameter(number), factor);
        }
    }
    /// Sets a parameter to what a word of the scenario stands for: another parameter.
    pub fn set_by_word(&mut self, id: &str, stands_for: &'static str, word: &str) {
        let value = self.parameter(stands_for);
        self.set(id, value, word);
        if let Some(number) = parameters::index(id) {
            self.desk
                .word(word, stands_for, Move::to(Place::Parameter(number)));
        }
    }
    /// Adds a fact.
    pub fn fact(&mut self, label: &str, value: impl Into<String>) {
        self.facts.push((label.to_string(), value.into()));
    }
    /// Adds an event on each of some days. Somebody has to be there: away days are left out.
    pub fn schedule(&mut self, name: &str, when: &When, kind: &EventKind) {
        for &day in &when.days {
            if !self.has_room(name) {
                return;
            }
            if self.is_away(day) || self.is_missed(day, kind) {
                self.left_out.push((day, name.to_string()));
            } else {
                self.happen(name, day, when.time, kind.clone());
            }
        }
    }
    /// Adds an event that happens even when nobody else comes.
    pub fn happen(&mut self, name: &str, day: u32, time: u32, kind: EventKind) {
        self.events.push(Event {
            minute: self.calendar.minute(day, time),
            name: name.to_string(),
            kind,
        });
    }
    /// Whether the plan is not full yet; the entry that fills it is told.
    fn has_room(&self, name: &str) -> bool {
        let has_room = self.events.len() + self.left_out.len() < MOST_EVENTS;
        if !has_room && !self.desk.has_problem(TOO_MANY) {
            self.desk.problem(
                Problem::at(&Spot::new(0, 0..0), TOO_MANY)
                    .label(format!("at most {MOST_EVENTS}, and {name} is one more"))
                    .help(
                        "let entries happen less often, or make the run shorter with length = 56",
                    ),
            );
        }
        has_room
    }
    /// Notes an event of a day on which nobody is there; it happens all the same.
    pub fn mind_absence(&self, name: &str, day: u32) {
        if self.is_away(day) {
            self.desk.notice(format!(
                "{name} is on day {day}, a day on which nobody is there; it is done all the same"
            ));
        }
    }
    fn is_missed(&self, day: u32, kind: &EventKind) -> bool {
        kind.is_change() && self.missed.contains(&day)
    }
}
