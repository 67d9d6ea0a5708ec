//! A row of the stoichiometric matrix: what one unit of a process changes.

use crate::base::real::Real;

use super::component::Component;
use super::conserved::Quantity;
use super::content::Contents;
use super::pool::Pool;

/// What one unit of a process changes, constant in time.
#[derive(Debug, Clone)]
pub struct Row<R> {
    /// What the row is, for tables; empty for the only row of a process.
    pub part: String,
    /// Which rows of the process share its fate when a pool runs dry; one number per stand.
    pub group: usize,
    /// Whether the row runs only while the light is on.
    pub in_light: bool,
    /// Whether amounts of the row may be nothing in one tank and something in another.
    pub may_be_nothing: bool,
    /// Amounts made (positive) or used per unit.
    pub entries: Vec<(Component, R)>,
}

impl<R: Real> Row<R> {
    /// An empty row.
    pub fn new(part: impl Into<String>) -> Self {
        Row {
            part: part.into(),
            group: 0,
            in_light: false,
            may_be_nothing: false,
            entries: Vec::new(),
        }
    }
    /// Adds an amount per unit of the process.
    pub fn put(mut self, component: impl Into<Component>, amount: R) -> Self {
        let component = component.into();
        match self.entries.iter_mut().find(|(c, _)| *c == component) {
            Some((_, held)) => *held += amount,
            None => self.entries.push((component, amount)),
        }
        self
    }
    /// Sets the amount of `by` so that `quantity` is neither made nor lost.
    ///
    /// # Panics
    /// When `by` holds none of the quantity.
    pub fn close(
        self,
        contents: &Contents<R>,
        quantity: Quantity,
        by: impl Into<Component>,
    ) -> Self {
        let by = by.into();
        let missing = -self.balance(contents, quantity)
            / contents
                .of(by, quantity)
                .expect("the closing pool holds what it closes");
        self.put(by, missing)
    }
    /// Puts the row among those of a stand.
    pub fn of_stand(mut self, stand: usize) -> Self {
        self.group = stand;
        self
    }
    /// Says that the row runs only while the light is on; its rate must be zero in the dark.
    pub fn in_light(mut self) -> Self {
        self.in_light = true;
        self
    }
    /// Says that amounts of the row may be nothing in one tank and something in another, as in water that
    /// a keeper chooses. What is nothing in all lanes is left out of the matrix; such a row comes last in
    /// every sum, so that tanks side by side add up in the order of each alone.
    pub fn may_be_nothing(mut self) -> Self {
        self.may_be_nothing = true;
        self
    }
    /// Burns what the row takes with oxygen: carbon, phosphorus, potassium and iron return to the
    /// water, nitrogen as ammonia, and alkalinity follows by charge.
    pub fn burn(self, contents: &Contents<R>) -> Self {
        self.close(contents, Quantity::Nitrogen, Pool::Tan)
            .from_water(contents)
    }
    /// Closes everything but nitrogen with the dissolved pools.
    pub fn from_water(self, contents: &Contents<R>) -> Self {
        self.close(contents, Quantity::Phosphorus, Pool::Phosphate)
            .close(contents, Quantity::Potassium, Pool::Potassium)
            .close(contents, Quantity::Iron, Pool::Iron)
            .close(contents, Quantity::Carbon, Pool::Dic)
            .close(contents, Quantity::OxygenDemand, Pool::Oxygen)
            .close(contents, Quantity::Charge, Pool::Alkalinity)
    }
    /// How much of a quantity one unit of the row makes; zero in a closed row.
    pub fn balance(&self, contents: &Contents<R>, quantity: Quantity) -> R {
        let mut sum = R::zero();
        for (component, amount) in &self.entries {
            if let Some(content) = contents.of(*component, quantity) {
                sum += content * *amount;
            }
        }
        sum
    }
    /// The amount of a component per unit, zero if the row does not touch it.
    pub fn amount(&self, component: impl Into<Component>) -> R {
        let component = component.into();
        self.entries
            .iter()
            .find(|(c, _)| *c == component)
            .map_or(R::zero(), |(_, a)| *a)
    }
    /// The row run backwards.
    pub fn reversed(&self, part: impl Into<String>) -> Self {
        Row {
            part: part.into(),
            group: self.group,
            in_light: self.in_light,
            may_be_nothing: self.may_be_nothing,
            entries: self.entries.iter().map(|(c, a)| (*c, -*a)).collect(),
        }
    }
    /// Pools with their amounts.
    pub fn pools(&self) -> impl Iterator<Item = (Pool, R)> + '_ {
        self.entries.iter().filter_map(|(c, a)| match c {
            Component::Pool(pool) => Some((*pool, *a)),
            Component::Outside(..) => None,
        })
    }
}
