//! One value for every parameter, and what set it.

use crate::base::real::Real;

use super::parameter::ParameterSpec;
use super::parameters;

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
///
/// The defaults of all parameters are [`ParameterSet::default`] (see `parameters`).
#[derive(Debug, Clone)]
pub struct ParameterSet {
    entries: Vec<Entry>,
}

#[derive(Debug, Clone)]
struct Entry {
    spec: &'static ParameterSpec,
    value: f64,
    origin: Origin,
}

impl ParameterSet {
    /// The defaults of all parameters, in the order of their declaration.
    pub(super) fn defaults(specs: &[&'static ParameterSpec]) -> Self {
        let entry = |spec: &&'static ParameterSpec| Entry {
            spec,
            value: spec.default,
            origin: Origin::Default,
        };
        ParameterSet {
            entries: specs.iter().map(entry).collect(),
        }
    }
    /// The value of a parameter.
    ///
    /// # Panics
    /// When the id is not declared: ids in code are fixed, those of users are checked before.
    pub fn get(&self, id: &str) -> f64 {
        self.entries[self.place(id)].value
    }
    /// What set the value.
    ///
    /// # Panics
    /// When the id is not declared.
    pub fn origin(&self, id: &str) -> &Origin {
        &self.entries[self.place(id)].origin
    }
    /// Sets a value. A value given by the user stands against any word set later.
    ///
    /// # Panics
    /// When the id is not declared.
    pub fn set(&mut self, id: &str, value: f64, origin: Origin) {
        let place = self.place(id);
        let entry = &mut self.entries[place];
        if matches!(entry.origin, Origin::Given { .. }) && matches!(origin, Origin::Word(_)) {
            return;
        }
        entry.value = value;
        entry.origin = origin;
    }
    /// Puts another value in the place of a parameter, by its number in [`parameters::all`]; what set it
    /// stays. For members of an ensemble, which change many values at once.
    ///
    /// # Panics
    /// When there is no such number.
    pub fn put(&mut self, number: usize, value: f64) {
        self.entries[number].value = value;
    }
    /// The same set with one value changed; for the library and for tests.
    #[must_use]
    pub fn with(mut self, id: &str, value: f64) -> Self {
        self.set(id, value, Origin::Given { why: String::new() });
        self
    }
    /// Every parameter with its value and what set it, in the order of declaration.
    pub fn iter(&self) -> impl Iterator<Item = (&'static ParameterSpec, f64, &Origin)> {
        self.entries
            .iter()
            .map(|entry| (entry.spec, entry.value, &entry.origin))
    }

    fn place(&self, id: &str) -> usize {
        parameters::index(id).unwrap_or_else(|| panic!("no parameter {id}"))
    }
}

/// Parameter values in the number type of the run.
#[derive(Debug, Clone)]
pub struct Values<R> {
    /// In the order of declaration.
    values: Vec<R>,
}

impl<R: Real> Values<R> {
    /// The same values in every lane.
    pub fn of(set: &ParameterSet) -> Self {
        Values {
            values: set.iter().map(|(_, value, _)| R::of(value)).collect(),
        }
    }
    /// The values of tanks side by side, one set per lane.
    pub fn abreast(sets: &[&ParameterSet]) -> Self {
        let all = |place: usize| R::gather(|lane| sets[lane].entries[place].value);
        Values {
            values: (0..sets[0].entries.len()).map(all).collect(),
        }
    }
    /// The value of a parameter.
    ///
    /// # Panics
    /// When the id is not declared.
    pub fn get(&self, id: &str) -> R {
        let place = parameters::index(id).unwrap_or_else(|| panic!("no parameter {id}"));
        self.values[place]
    }
}
