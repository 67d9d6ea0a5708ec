//! The model of one tank: processes, their matrix and the shared terms, ready to be evaluated.

use crate::base::real::Real;

use super::canopy::Canopy;
use super::component::Component;
use super::content::Contents;
use super::following::Following;
use super::held::Held;
use super::matrix::Matrix;
use super::observer::Observer;
use super::pool::{MAX_STANDS, Pool};
use super::process::Builder;
use super::processes::{self, Processes};
use super::row::Row;
use super::setup::Setup;
use super::state::State;
use super::temperature::{FactorList, TemperatureTable};
use super::warming::Course;
use super::water::Water;

/// Everything that can change in one tank, and how fast.
#[derive(Debug, Clone)]
pub struct TankModel<R> {
    table: TemperatureTable<R>,
    observer: Observer<R>,
    processes: Processes<R>,
    matrix: Matrix<R>,
    rows: Vec<(usize, Row<R>)>,
    contents: Contents<R>,
    per_yield: [R; 3],
    /// The row of heat, if it moves the temperature.
    heat_row: Option<usize>,
    /// That of the indicator, likewise.
    indicator_row: Option<usize>,
}

impl<R: Real> TankModel<R> {
    /// Builds the model of a tank.
    pub fn new(setup: &Setup<'_, R>) -> Self {
        let contents = Contents::new(setup.values);
        let mut factors = FactorList::new(setup.get("T_hold"));
        let observer = Observer::new(setup, &mut factors);
        let mut builder = Builder {
            setup,
            contents: &contents,
            factors: &mut factors,
        };
        let (processes, rows) = Processes::new(&mut builder);
        TankModel {
            table: factors.table(),
            observer,
            processes,
            matrix: Matrix::new(&rows),
            heat_row: row_that_moves(Pool::Temperature, &rows),
            indicator_row: row_that_moves(Pool::Indicator, &rows),
            rows,
            contents,
            per_yield: ["Y_AOB", "Y_NOB", "Y_K"].map(|id| R::one() / setup.get(id)),
        }
    }

    /// The same tank with only some processes at work and some pools held.
    ///
    /// Rows of the other processes change nothing, and no row changes a held pool, as if whatever a
    /// row takes from or gives to it were made good at once. Rate laws stay as they are, also where one
    /// reads another's (heat reads evaporation).
    #[must_use]
    pub fn limited(mut self, acts: impl Fn(&str) -> bool, held: &[Pool]) -> Self {
        let is_held = |component: &Component| held.iter().any(|&pool| *component == pool.into());
        for (process, row) in &mut self.rows {
            let at_work = acts(processes::IDS[*process]);
            row.entries
                .retain(|(component, _)| at_work && !is_held(component));
        }
        self.matrix = Matrix::new(&self.rows);
        self.heat_row = row_that_moves(Pool::Temperature, &self.rows);
        self.indicator_row = row_that_moves(Pool::Indicator, &self.rows);
        self
    }

    /// Looks at a state: concentrations, pH and the shared terms. What `water` held before serves
    /// as a guess for its pH and nothing else.
    #[inline(always)]
    pub fn look(&self, state: &State<R>, held: &Held<R>, days: R, water: &mut Water<R>) {
        water.state = *state;
        water.held = *held;
        water.days = days;
        water.warms_by_course = false;
        self.see(water);
    }
    /// Looks at what `water` holds: its pools, what is switched and the time.
    #[inline(always)]
    pub fn see(&self, water: &mut Water<R>) {
        let guess = water.hydrogen;
        let temperature = water.temperature();
        self.table.at(temperature, &mut water.factors);
        self.observer.look(water, guess);
    }
    /// Writes the rates of all rows, per day.
    #[inline(always)]
    pub fn rates(&self, water: &Water<R>, rates: &mut [R]) {
        self.processes.rates(water, rates);
    }
    /// Where the temperature comes to in so many days, and the row that moves it; none where nothing does.
    #[inline(always)]
    pub fn warming(&self, water: &Water<R>, days: R) -> Option<(usize, Course<R>)> {
        let row = self.heat_row?;
        Some((row, self.processes.heat.warming(water).course(days)))
    }
    /// How the indicator follows the water, and the row that moves it; none where nothing does.
    #[inline(always)]
    pub fn following(&self, water: &Water<R>) -> Option<(usize, Following<R>)> {
        let row = self.indicator_row?;
        Some((row, self.processes.indicator.following(water)))
    }
    /// The processes.
    pub fn processes(&self) -> &Processes<R> {
        &self.processes
    }
    /// The matrix of all rows.
    pub fn matrix(&self) -> &Matrix<R> {
        &self.matrix
    }
    /// All rows, each with the place of its process in [`processes::IDS`].
    pub fn rows(&self) -> &[(usize, Row<R>)] {
        &self.rows
    }
    /// Name of a row: process and part.
    pub fn row_name(&self, row: usize) -> String {
        let (process, row) = &self.rows[row];
        let id = processes::IDS[*process];
        if row.part.is_empty() {
            id.to_string()
        } else {
            format!("{id} ({})", row.part)
        }
    }
    /// What each pool contains.
    pub fn contents(&self) -> &Contents<R> {
        &self.contents
    }
    /// Light and shade in each stand, by day and night.
    #[inline(always)]
    pub fn canopies(&self, state: &State<R>) -> [Canopy<R>; MAX_STANDS] {
        self.observer.canopies(state)
    }
    /// What the films could oxidise with food in plenty, at the present pH, temperature and oxygen,
    /// mg N/day: to nitrite and beyond, and from nitrite to nitrate.
    ///
    /// Complete oxidisers count for both steps: what they take never shows up as nitrite.
    #[inline(always)]
    pub fn capacity(&self, water: &Water<R>) -> [R; 2] {
        let potential = [
            self.processes.ammonia_oxidation.potential(water),
            self.processes.nitrite_oxidation.potential(water),
            self.processes.complete_oxidation.potential(water),
        ];
        let [ammonia, nitrite, complete] =
            [0, 1, 2].map(|guild| potential[guild] * self.per_yield[guild]);
        [ammonia + complete, nitrite + complete]
    }
}

/// The one row that moves a pool.
fn row_that_moves<R: Real>(pool: Pool, rows: &[(usize, Row<R>)]) -> Option<usize> {
    let moves = |(_, row): &(usize, Row<R>)| {
        let mut components = row.entries.iter().map(|(component, _)| component);
        components.any(|component| *component == pool.into())
    };
    rows.iter().position(moves)
}
