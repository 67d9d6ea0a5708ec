//! One plan that is compared: its central run, its members, and who is ready by when.

use crate::analysis::case::Case;
use crate::analysis::cost::Taken;
use crate::analysis::ensemble::bands::Bands;
use crate::analysis::ensemble::curve::ReadyCurve;
use crate::analysis::ensemble::member::{Member, Told};
use crate::analysis::ensemble::{self, Ask, EnsembleError};
use crate::analysis::figures::Figures;
use crate::analysis::outcome::Outcome;
use crate::analysis::uncertain::Uncertain;
use crate::base::stop::Stop;

use super::{Common, CompareError, Entrant};

/// One plan, run.
#[derive(Debug, Clone)]
pub struct Strategy<'a> {
    /// Its short name.
    pub key: String,
    /// The plan.
    pub case: &'a Case,
    /// Its central run and what it means.
    pub outcome: Outcome,
    /// Every member in order, failed ones too.
    pub members: Vec<Member>,
    /// Between which values the members lie, day by day.
    pub bands: Bands,
    /// How many are ready by when.
    pub curve: ReadyCurve,
}

impl<'a> Strategy<'a> {
    /// Runs a plan; `done` hears how many members are done.
    ///
    /// # Errors
    /// When somebody wishes to stop, the central run fails, or too many members do.
    pub fn of(
        entrant: &Entrant<'a>,
        common: Common,
        stop: &Stop,
        done: &mut dyn FnMut(usize),
    ) -> Result<Strategy<'a>, CompareError> {
        let (key, case) = (entrant.key.clone(), entrant.case);
        let central = |why| CompareError::Central {
            key: entrant.key.clone(),
            why: Box::new(why),
        };
        let of_members = |why: EnsembleError| CompareError::Members {
            key: entrant.key.clone(),
            why: Box::new(why),
        };
        stop.check().map_err(|stopped| of_members(stopped.into()))?;
        let outcome = Outcome::of(case).map_err(central)?;
        let uncertain = Uncertain::of(case);
        let input = |member| uncertain.input(case, &uncertain.draw(common.seed, member));
        let ask = Ask {
            case,
            members: common.members,
            drawn_days: &[],
        };
        let ran = ensemble::run(ask, input, stop, |of_all, _| done(of_all)).map_err(of_members)?;
        Ok(Strategy {
            key,
            case,
            outcome,
            curve: ReadyCurve::of(&ran.members, case.input.last_day),
            members: ran.members,
            bands: ran.bands,
        })
    }
    /// What the members tell that did not fail.
    pub fn told(&self) -> impl Iterator<Item = &Told> {
        self.members.iter().filter_map(|m| m.told.as_ref().ok())
    }
    /// What a tank with these figures takes.
    pub fn taken(&self, figures: &Figures) -> Taken {
        Taken {
            litres_filled: self.case.input.tank.volume_l,
            litres_refilled: figures.litres_changed,
            gas_g: figures.gas_g,
        }
    }
    /// What a tank with these figures costs; none where the file gives no prices.
    pub fn cost(&self, figures: &Figures) -> Option<f64> {
        self.case.prices.total(&self.taken(figures))
    }
}
