//! Asking a section for values of one type.

use crate::base::units::{Kind, quantity};

use crate::scenario::keys;
use crate::scenario::problem::Problem;
use crate::scenario::tree::Value;

use super::node::{choice_of, quantity_of};
use super::{Read, Reader};

impl Reader<'_> {
    /// A quantity, in the base unit of its kind and within bounds of that unit.
    pub fn quantity(
        &self,
        key: &'static str,
        kind: &'static Kind,
        bounds: (f64, f64),
    ) -> Read<f64> {
        let Some(entry) = self.wanted(key) else {
            return Read::Absent;
        };
        let path = self.path_of(key);
        match quantity_of(self.desk, &path, &entry.node, kind, bounds) {
            Some(value) => {
                self.given(key, &entry.node);
                Read::Given(value, entry.node.place.clone())
            }
            None => Read::Bad(entry.node.place.clone()),
        }
    }
    /// A quantity, or its documented default.
    pub fn quantity_or_default(
        &self,
        key: &'static str,
        kind: &'static Kind,
        bounds: (f64, f64),
    ) -> f64 {
        match self.quantity(key, kind, bounds) {
            Read::Given(value, _) => value,
            Read::Bad(_) => default_quantity(&self.pattern_of(key), kind),
            Read::Absent => {
                self.note_default(key);
                default_quantity(&self.pattern_of(key), kind)
            }
        }
    }
    /// The unit of a quantity as it is written; empty when there is none.
    pub fn unit_of(&self, key: &'static str) -> String {
        let unit = self.wanted(key).and_then(|entry| match &entry.node.value {
            Value::Text(text) => {
                let last = quantity::ends(text).map_or(text.clone(), |(_, last)| last);
                let split = quantity::split(&last).ok();
                split.map(|split| split.unit.to_string())
            }
            _ => None,
        });
        unit.unwrap_or_default()
    }
    /// Whether a value is a word rather than a quantity.
    pub fn is_word(&self, key: &'static str) -> bool {
        let starts_with_letter = |text: &str| text.chars().next().is_some_and(char::is_alphabetic);
        self.wanted(key).is_some_and(
            |entry| matches!(&entry.node.value, Value::Text(text) if starts_with_letter(text)),
        )
    }
    /// One of some words that stand for a number; the number is noted beside the word.
    pub fn word(
        &self,
        key: &'static str,
        words: &[&str],
        value: impl Fn(&str) -> f64,
        print: impl Fn(f64) -> String,
    ) -> Read<f64> {
        self.word_of(key, words, &value, print)
            .map(|at| value(words[at]))
    }
    /// The same; the number is the place of the word in the list.
    pub fn word_of(
        &self,
        key: &'static str,
        words: &[&str],
        value: impl Fn(&str) -> f64,
        print: impl Fn(f64) -> String,
    ) -> Read<usize> {
        let Some(entry) = self.wanted(key) else {
            return Read::Absent;
        };
        match choice_of(self.desk, &self.path_of(key), &entry.node, words) {
            Some(at) => {
                self.by_word(key, &entry.node, print(value(words[at])));
                Read::Given(at, entry.node.place.clone())
            }
            None => Read::Bad(entry.node.place.clone()),
        }
    }
    /// A whole number within bounds.
    pub fn count(&self, key: &'static str, bounds: (i64, i64)) -> Read<u32> {
        let Some(entry) = self.wanted(key) else {
            return Read::Absent;
        };
        let place = &entry.node.place;
        let Value::Whole(number) = entry.node.value else {
            return self.wrong_type(key, &entry.node, "a whole number");
        };
        if !(bounds.0..=bounds.1).contains(&number) {
            self.desk.problem(
                Problem::at(place, format!("{} is {number}", self.path_of(key)))
                    .label(format!("allowed: {} to {}", bounds.0, bounds.1))
                    .help(format!(
                        "the nearest is {key} = {}",
                        number.clamp(bounds.0, bounds.1)
                    )),
            );
            return Read::Bad(place.clone());
        }
        self.given(key, &entry.node);
        Read::Given(number as u32, place.clone())
    }
    /// A whole number within bounds, or its documented default.
    pub fn count_or_default(&self, key: &'static str, bounds: (i64, i64)) -> u32 {
        let read = self.count(key, bounds);
        if read.is_absent() {
            self.note_default(key);
        }
        let usual = keys::key(&self.pattern_of(key)).and_then(|key| key.default.parse().ok());
        read.or(usual.unwrap_or(0))
    }
    /// A plain number within bounds.
    pub fn number(&self, key: &'static str, bounds: (f64, f64)) -> Read<f64> {
        let Some(entry) = self.wanted(key) else {
            return Read::Absent;
        };
        let place = &entry.node.place;
        let number = match entry.node.value {
            Value::Whole(number) => number as f64,
            Value::Number(number) => number,
            _ => return self.wrong_type(key, &entry.node, "a plain number"),
        };
        if !(bounds.0..=bounds.1).contains(&number) {
            self.desk.problem(
                Problem::at(place, format!("{} is {number}", self.path_of(key)))
                    .label(format!("allowed: {} to {}", bounds.0, bounds.1)),
            );
            return Read::Bad(place.clone());
        }
        self.given(key, &entry.node);
        Read::Given(number, place.clone())
    }
    /// True or false.
    pub fn truth(&self, key: &'static str) -> Read<bool> {
        let Some(entry) = self.wanted(key) else {
            return Read::Absent;
        };
        match entry.node.value {
            Value::Truth(truth) => {
                self.given(key, &entry.node);
                Read::Given(truth, entry.node.place.clone())
            }
            _ => self.wrong_type(key, &entry.node, "true or false (without quotes)"),
        }
    }
    /// True or false, or the documented default.
    pub fn truth_or_default(&self, key: &'static str) -> bool {
        let read = self.truth(key);
        if read.is_absent() {
            self.note_default(key);
        }
        let usual = keys::key(&self.pattern_of(key)).is_some_and(|key| key.default == "true");
        read.or(usual)
    }
    /// A text.
    pub fn text(&self, key: &'static str) -> Read<String> {
        let Some(entry) = self.entry(key) else {
            return Read::Absent;
        };
        match &entry.node.value {
            Value::Text(text) => {
                self.given(key, &entry.node);
                Read::Given(text.clone(), entry.node.place.clone())
            }
            _ => self.wrong_type(key, &entry.node, "a text in quotes"),
        }
    }
    /// One of some words; the number is its place in the list.
    pub fn choice(&self, key: &'static str, words: &[&str]) -> Read<usize> {
        let entry = if words.contains(&"none") {
            self.entry(key)
        } else {
            self.wanted(key)
        };
        let Some(entry) = entry else {
            return Read::Absent;
        };
        match choice_of(self.desk, &self.path_of(key), &entry.node, words) {
            Some(at) => {
                self.given(key, &entry.node);
                Read::Given(at, entry.node.place.clone())
            }
            None => Read::Bad(entry.node.place.clone()),
        }
    }
    /// One of some words, or the documented default.
    pub fn choice_or_default(&self, key: &'static str, words: &[&str]) -> usize {
        let read = self.choice(key, words);
        if read.is_absent() {
            self.note_default(key);
        }
        let usual = keys::key(&self.pattern_of(key)).map_or("", |key| key.default);
        let at = words.iter().position(|word| *word == usual);
        read.or(at.unwrap_or(0))
    }
}

pub(super) fn default_quantity(pattern: &str, kind: &'static Kind) -> f64 {
    let text = keys::key(pattern).map_or("", |key| key.default);
    quantity::read(text, kind).unwrap_or(0.0)
}
