//! The forecast of a scenario: many plausible tanks like the one described, and what they say together.

use crate::base::stop::Stop;
use crate::engine::input::ModelInput;

use super::case::Case;
use super::ensemble::confirm::{Confirming, confirming};
use super::ensemble::curve::ReadyCurve;
use super::ensemble::next_test::{self, Worth};
use super::ensemble::soil::{self, SoilAmmonia};
use super::ensemble::{self, Ask, Ensemble, EnsembleError};
use super::uncertain::Uncertain;

/// How many members a forecast has when nothing else is said.
pub const USUAL_MEMBERS: usize = 256;
/// Where chance begins when nothing else is said.
pub const USUAL_SEED: u64 = 1;

/// How a forecast is to be made.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Making<'a> {
    /// How many plausible tanks.
    pub members: usize,
    /// Where chance begins: the same seed gives the same tanks.
    pub seed: u64,
    /// Days whose bands are wanted by the hour.
    pub drawn_days: &'a [u32],
}

/// Many plausible tanks and what they say together.
#[derive(Debug, Clone)]
pub struct Forecast {
    /// The seed they were drawn with.
    pub seed: u64,
    /// What was varied.
    pub uncertain: Uncertain,
    /// The members and their bands.
    pub ensemble: Ensemble,
    /// How many are ready by when.
    pub curve: ReadyCurve,
    /// What the tests before the ready day should read.
    pub confirming: Vec<Confirming>,
    /// What each test of the first weeks would be worth, the best first.
    pub tests: Vec<Worth>,
    /// Total ammonia of the first two weeks, without animals.
    pub soil_ammonia: SoilAmmonia,
    /// The same with one bag of soil less; none where there is no such bag.
    pub one_bag_less: Option<SoilAmmonia>,
}

impl Forecast {
    /// Draws, runs and judges the members of a case.
    ///
    /// # Errors
    /// When somebody wishes to stop, or too many members fail.
    pub fn of(
        case: &Case,
        making: Making<'_>,
        stop: &Stop,
        progress: impl FnMut(usize, usize),
    ) -> Result<Forecast, EnsembleError> {
        let uncertain = Uncertain::of(case);
        let member = |number| uncertain.input(case, &uncertain.draw(making.seed, number));
        let ask = Ask {
            case,
            members: making.members,
            drawn_days: making.drawn_days,
        };
        let ensemble = ensemble::run(ask, member, stop, progress)?;
        let last_day = case.input.last_day;
        Ok(Forecast {
            seed: making.seed,
            curve: ReadyCurve::of(&ensemble.members, last_day),
            confirming: confirming(&ensemble.members, &case.kit),
            tests: next_test::worth(&ensemble.members, &case.kit, last_day, making.seed),
            soil_ammonia: soil::shown(&ensemble.members),
            one_bag_less: one_bag_less(case, member, making.members, stop)?,
            ensemble,
            uncertain,
        })
    }
}

/// Soil ammonia with one bag less in every member, where the central tank and its members have one.
fn one_bag_less(
    case: &Case,
    member: impl Fn(usize) -> ModelInput + Sync,
    members: usize,
    stop: &Stop,
) -> Result<Option<SoilAmmonia>, EnsembleError> {
    let less = |input: &ModelInput| soil::one_bag_less(input, case.soil_bag_l);
    if less(&case.input).is_none() {
        return Ok(None);
    }
    let input = |number| {
        let whole = member(number);
        less(&whole).unwrap_or(whole)
    };
    Ok(Some(soil::expected(members, input, stop)?))
}
