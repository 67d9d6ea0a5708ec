//! Keeps what the library arrives at, and shows it in between by the library's own interpolation.

use firstfill::base::clock::days;
use firstfill::engine::result::Side;
use firstfill::model::held::Held;
use firstfill::model::state::State;
use ivp::dense::StepInterpolant;
use ivp::prelude::ControlFlag;
use ivp::solout::SolOut;

use super::Eye;

/// Looks on over one stretch.
pub struct Onlooker<'a> {
    /// Places of the pools that the library integrates.
    pub touched: &'a [usize],
    /// What is switched.
    pub held: &'a Held<f64>,
    /// Minutes still to be shown.
    pub minutes: &'a [u32],
    /// The pools where the library stands.
    pub state: &'a mut State<f64>,
    /// To whom it is shown.
    pub eye: Eye<'a>,
}

impl SolOut for Onlooker<'_> {
    fn solout(
        &mut self,
        _: f64,
        now: &mut f64,
        y: &mut [f64],
        between: Option<&StepInterpolant<'_>>,
    ) -> ControlFlag {
        while let (Some((&minute, rest)), Some(between)) = (self.minutes.split_first(), between) {
            if days(minute) > *now {
                break;
            }
            let mut then = y.to_vec();
            between.interpolate(days(minute), &mut then);
            self.put(&then);
            (self.eye)(minute, Side::Plain, self.state, self.held);
            self.minutes = rest;
        }
        self.put(y);
        ControlFlag::Continue
    }
}

impl Onlooker<'_> {
    fn put(&mut self, y: &[f64]) {
        for (&pool, amount) in self.touched.iter().zip(y) {
            self.state.0[pool] = *amount;
        }
    }
}
