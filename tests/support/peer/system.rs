//! Our rates and rows as the right-hand side that the library asks for.

use std::cell::RefCell;

use firstfill::base::abreast::{Work, wide};
use firstfill::model::held::Held;
use firstfill::model::matrix::{MAX_ROWS, PerRow};
use firstfill::model::state::State;
use firstfill::model::tank_model::TankModel;
use firstfill::model::water::Water;
use ivp::prelude::FirstOrderSystem;

/// What rates are worked out on; nothing is allocated for them, and the last pH serves as the next guess.
pub struct Desk {
    water: Water<f64>,
    rates: PerRow<f64>,
    per_day: State<f64>,
}

impl Desk {
    /// Nothing on it yet.
    pub fn new() -> Self {
        Desk {
            water: Water::blank(),
            rates: [0.0; MAX_ROWS],
            per_day: State::default(),
        }
    }

    /// Begins a stretch: what is switched, and the pools that no row touches.
    pub fn begin(&mut self, state: &State<f64>, held: &Held<f64>) {
        self.water.state = *state;
        self.water.held = *held;
    }
}

/// The model of a tank, as a system of equations for some of its pools.
pub struct System<'a> {
    /// The model.
    pub model: &'a TankModel<f64>,
    /// Places of the pools that are its unknowns.
    pub touched: &'a [usize],
    /// The desk; behind a cell because the library holds the system fast.
    pub desk: &'a RefCell<Desk>,
}

impl FirstOrderSystem for System<'_> {
    fn derivative(&self, days: f64, y: &[f64], dy: &mut [f64]) {
        wide(Rates {
            system: self,
            days,
            y,
            dy,
        });
    }
}

/// The rates at one state, worked out with the widest instructions, as in our own steps.
struct Rates<'a> {
    system: &'a System<'a>,
    days: f64,
    y: &'a [f64],
    dy: &'a mut [f64],
}

impl Work for Rates<'_> {
    type Output = ();

    #[inline(always)]
    fn go(self) {
        let System { model, touched, .. } = self.system;
        let mut desk = self.system.desk.borrow_mut();
        let Desk {
            water,
            rates,
            per_day,
        } = &mut *desk;
        for (&pool, amount) in touched.iter().zip(self.y) {
            water.state.0[pool] = *amount;
        }
        water.days = self.days;
        model.see(water);
        model.rates(water, &mut rates[..model.matrix().rows()]);
        let lit = water.held.lit;
        (model.matrix()).lead(&State::default(), rates, (1.0, lit), per_day);
        for (&pool, change) in touched.iter().zip(self.dy) {
            *change = per_day.0[pool];
        }
    }
}
