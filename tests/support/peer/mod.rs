//! The same model in the hands of a general-purpose library for ordinary differential equations (crate
//! `ivp`): its explicit methods, which choose their steps by a tolerance.
//!
//! Theirs are the scheme and the steps. Ours are the rate laws, what is switched when, and what events
//! do. The library integrates all pools that a row touches, from one instant at which something changes
//! to the next, and knows neither our grid of steps nor our guard.

mod onlooker;
mod stretch;
mod system;

use std::cell::RefCell;

use firstfill::base::clock::days;
use firstfill::engine::plan::Plan;
use firstfill::engine::result::Side;
use firstfill::model::held::Held;
use firstfill::model::pool::{POOLS, Pool};
use firstfill::model::state::State;
use firstfill::model::water::Water;
use ivp::methods::{DOP853, DOPRI5, RK23, Tolerance};
use ivp::prelude::Status;

use super::step_error::Track;
use onlooker::Onlooker;
use stretch::{Stretch, happen, stretches};
use system::{Desk, System};

/// The explicit methods of the library that choose their own steps.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Method {
    /// Bogacki and Shampine, third order.
    BogackiShampine3,
    /// Dormand and Prince, fifth order.
    DormandPrince5,
    /// Dormand and Prince, eighth order.
    DormandPrince8,
}

/// What the library is asked for. The first step after an instant is its own choice too.
#[derive(Debug, Clone)]
pub struct Asked {
    /// The method.
    pub method: Method,
    /// Tolerance as a share of an amount.
    pub relative: f64,
    /// Tolerance in the unit of each pool.
    pub absolute: [f64; POOLS],
}

/// Sees the pools at a minute: which side of its events, what is switched.
pub type Eye<'a> = &'a mut dyn FnMut(u32, Side, &State<f64>, &Held<f64>);

/// A tank ready to be run by the library.
pub struct Peer<'p> {
    plan: &'p Plan,
    stretches: Vec<Stretch<'p>>,
    /// Places of the pools that a row touches.
    touched: Vec<usize>,
}

impl<'p> Peer<'p> {
    /// Of a plan whose gas needs no tuning.
    pub fn new(plan: &'p Plan) -> Self {
        let touches = |&pool: &usize| {
            let column = plan.model.matrix().column(Pool::at(pool));
            column.iter().any(|amount| *amount != 0.0)
        };
        Peer {
            plan,
            stretches: stretches(plan),
            touched: (0..POOLS).filter(touches).collect(),
        }
    }

    /// Runs the tank to its end; gives its pools, and how often the rates were asked for.
    pub fn run(&self, asked: &Asked) -> (State<f64>, usize) {
        self.shown(asked, &[], &mut |_, _, _, _| {})
    }

    /// What the tank passes through at some minutes, in their order, as a run of ours would note it.
    pub fn track(&self, asked: &Asked, minutes: &[u32]) -> Track {
        let mut track = Track::default();
        let mut water = Water::blank();
        let Plan { model, gauge, .. } = self.plan;
        self.shown(asked, minutes, &mut |minute, side, state, held| {
            model.look(state, held, days(minute), &mut water);
            track.note(&gauge.read(model, &water, minute, side));
        });
        track
    }

    fn shown(&self, asked: &Asked, minutes: &[u32], eye: Eye<'_>) -> (State<f64>, usize) {
        let mut state = self.plan.start;
        let mut looks = 0;
        let of_touched = |numbers: &[f64; POOLS]| -> Vec<f64> {
            self.touched.iter().map(|&pool| numbers[pool]).collect()
        };
        let absolute = of_touched(&asked.absolute);
        let desk = RefCell::new(Desk::new());
        let system = System {
            model: &self.plan.model,
            touched: &self.touched,
            desk: &desk,
        };
        for stretch in &self.stretches {
            let (first, inner) = stretch.parted(minutes);
            happen(self.plan, stretch, &mut state, first.then_some(&mut *eye));
            desk.borrow_mut().begin(&state, &stretch.held);
            let start = of_touched(&state.0);
            let mut onlooker = Onlooker {
                touched: &self.touched,
                held: &stretch.held,
                minutes: inner,
                state: &mut state,
                eye,
            };
            looks += asked.solve(&system, stretch, (&start, &absolute), &mut onlooker);
        }
        (state, looks)
    }
}

impl Asked {
    /// Has the library go over a stretch from where it starts, within absolute tolerances; gives how
    /// often it asked for the rates.
    fn solve(
        &self,
        system: &System<'_>,
        stretch: &Stretch<'_>,
        (start, absolute): (&[f64], &[f64]),
        onlooker: &mut Onlooker<'_>,
    ) -> usize {
        let (from, until) = (days(stretch.from), days(stretch.until));
        let tolerances = (Tolerance::from(self.relative), Tolerance::from(absolute));
        // what makes in-between values costs time, so it is left out where nobody looks
        let dense = !onlooker.minutes.is_empty();
        macro_rules! by {
            ($method:ident) => {{
                let (relative, absolute) = tolerances;
                let method = $method::builder().dense_output(dense).build();
                method.solve(
                    system,
                    from,
                    start,
                    until,
                    relative,
                    absolute,
                    Some(onlooker),
                )
            }};
        }
        let result = match self.method {
            Method::BogackiShampine3 => by!(RK23),
            Method::DormandPrince5 => by!(DOPRI5),
            Method::DormandPrince8 => by!(DOP853),
        };
        let result = result.expect("the settings are the library's own");
        assert_eq!(result.status, Status::Success, "{self:?}");
        result.evals.ode
    }
}
