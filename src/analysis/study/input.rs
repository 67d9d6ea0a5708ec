//! One input of a study: what it is, and the values it takes.

use super::group::Group;
use crate::analysis::uncertain::shape::Shape;

/// One input of a study.
#[derive(Debug, Clone, PartialEq)]
pub struct Input {
    /// Id of a parameter, or dotted path in the scenario.
    pub name: String,
    /// What it is.
    pub words: String,
    /// Unit of its values.
    pub unit: String,
    /// What it belongs to.
    pub group: Group,
    /// Where its spread is known from, or `judgement: why`.
    pub source: String,
    /// The values it takes.
    pub spread: Spread,
}

/// The values an input takes.
#[derive(Debug, Clone, PartialEq)]
pub enum Spread {
    /// Spread about a middle.
    Shape(Shape),
    /// Anything between two values, each as likely.
    Even {
        /// The lower end.
        low: f64,
        /// The upper end.
        high: f64,
    },
    /// One of some settings, each as likely, written as in a scenario. Their values are their numbers, from 0.
    Settings(Vec<String>),
}

impl Input {
    /// The value at a place between 0 and 1: of settings, its number.
    pub fn at(&self, place: f64) -> f64 {
        match &self.spread {
            Spread::Shape(shape) => shape.at(place),
            Spread::Even { low, high } => low + place * (high - low),
            Spread::Settings(settings) => {
                let last = settings.len().saturating_sub(1) as f64;
                (place * settings.len() as f64).floor().min(last)
            }
        }
    }
}
