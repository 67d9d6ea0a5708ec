//! Parameters: each declared once, with unit, default, range and source.

use crate::base::real::Real;
use crate::base::sources::Source;

/// Everything there is to say about one parameter.
#[derive(Debug, Clone, Copy)]
pub struct ParameterSpec {
    /// The symbol used in the literature; the name in `[parameters]` of a scenario.
    pub id: &'static str,
    /// What it is, in words.
    pub meaning: &'static str,
    /// Unit as written in a scenario; `"1"` for a plain number.
    pub unit: &'static str,
    /// Value used when nothing else is said.
    pub default: f64,
    /// Low end of the range in which the value is plausible.
    pub low: f64,
    /// High end of that range.
    pub high: f64,
    /// Where the numbers come from.
    pub source: Source,
}

/// Declares a parameter.
pub const fn parameter(
    id: &'static str,
    meaning: &'static str,
    unit: &'static str,
    default: f64,
    range: (f64, f64),
    source: Source,
) -> ParameterSpec {
    ParameterSpec {
        id,
        meaning,
        unit,
        default,
        low: range.0,
        high: range.1,
        source,
    }
}

impl ParameterSpec {
    /// Whether the value is a share, bounded by 0 and 1 by nature.
    pub fn is_share(&self) -> bool {
        self.unit == "1" && self.low >= 0.0 && self.high <= 1.0
    }
    /// Whether a value is possible at all (finite, of the right sign, no share above one).
    pub fn allows(&self, value: f64) -> bool {
        let floor = if self.low < 0.0 {
            f64::NEG_INFINITY
        } else {
            0.0
        };
        value.is_finite() && value >= floor && !(self.is_share() && value > 1.0)
    }
}

/// What set the value of a parameter.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Origin {
    /// The declared default.
    Default,
    /// A word of the scenario, for example `soil.kind = "rich"`.
    Word(String),
    /// A value given in the scenario, with the reason given there.
    Given {
        /// Why, in the user's words.
        why: String,
    },
}

/// One value for every parameter, and what set it.
#[derive(Debug, Clone)]
pub struct ParameterSet {
    values: Vec<f64>,
    origins: Vec<Origin>,
}

impl Default for ParameterSet {
    fn default() -> Self {
        let specs = super::parameters::all();
        ParameterSet {
            values: specs.iter().map(|s| s.default).collect(),
            origins: vec![Origin::Default; specs.len()],
        }
    }
}

impl ParameterSet {
    /// The value of a parameter.
    ///
    /// # Panics
    /// When the id is not declared: ids in code are fixed, those of users are checked before.
    pub fn get(&self, id: &str) -> f64 {
        self.values[super::parameters::index(id).unwrap_or_else(|| panic!("no parameter {id}"))]
    }
    /// What set the value.
    ///
    /// # Panics
    /// When the id is not declared.
    pub fn origin(&self, id: &str) -> &Origin {
        &self.origins[super::parameters::index(id).unwrap_or_else(|| panic!("no parameter {id}"))]
    }
    /// Sets a value. A value given by the user stands against any word set later.
    ///
    /// # Panics
    /// When the id is not declared.
    pub fn set(&mut self, id: &str, value: f64, origin: Origin) {
        let at = super::parameters::index(id).unwrap_or_else(|| panic!("no parameter {id}"));
        if matches!(self.origins[at], Origin::Given { .. }) && matches!(origin, Origin::Word(_)) {
            return;
        }
        self.values[at] = value;
        self.origins[at] = origin;
    }
    /// The same set with one value changed; for the library and for tests.
    pub fn with(mut self, id: &str, value: f64) -> Self {
        self.set(id, value, Origin::Given { why: String::new() });
        self
    }
    /// Every parameter with its value and what set it, in the order of declaration.
    pub fn iter(&self) -> impl Iterator<Item = (&'static ParameterSpec, f64, &Origin)> {
        super::parameters::all()
            .iter()
            .zip(self.values.iter().copied())
            .zip(&self.origins)
            .map(|((s, v), o)| (*s, v, o))
    }
}

/// Parameter values in the number type of the run.
#[derive(Debug, Clone)]
pub struct Values<R> {
    values: Vec<R>,
}

impl<R: Real> Values<R> {
    /// The same values in every lane.
    pub fn of(set: &ParameterSet) -> Self {
        Values {
            values: set.values.iter().map(|&v| R::of(v)).collect(),
        }
    }
    /// The value of a parameter.
    ///
    /// # Panics
    /// When the id is not declared.
    pub fn get(&self, id: &str) -> R {
        self.values[super::parameters::index(id).unwrap_or_else(|| panic!("no parameter {id}"))]
    }
}
