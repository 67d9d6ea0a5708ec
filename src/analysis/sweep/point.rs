//! One point of a grid: its central run, its members, and every figure of both.

use crate::analysis::case::Case;
use crate::analysis::compare::alike::Alike;
use crate::analysis::compare::lines::{Line, OF_100, lines};
use crate::analysis::compare::strategy::Strategy;
use crate::analysis::compare::value::Value;
use crate::analysis::compare::{Common, CompareError, Entrant};
use crate::analysis::ensemble::bands::Bands;
use crate::analysis::ensemble::curve::ReadyCurve;
use crate::analysis::ensemble::member::Member;
use crate::analysis::figure_list::{Better, FIGURES};
use crate::analysis::milestones::figures;
use crate::base::stop::Stop;

/// One point of a grid, run. Of its central run only the figures are kept: a whole one takes a megabyte.
#[derive(Debug, Clone)]
pub struct Point {
    /// Its place on each axis.
    pub at: Vec<usize>,
    /// Every figure of the central run, in the order of the lines of the sweep; none where there is none.
    pub central: Vec<Option<f64>>,
    /// Every member in order, failed ones too.
    pub members: Vec<Member>,
    /// Between which values the members lie, day by day.
    pub bands: Bands,
    /// How many are ready by when.
    pub curve: ReadyCurve,
}

impl Point {
    /// Runs a point; its key stands for it in errors. Its figures come beside it, a line each.
    ///
    /// # Errors
    /// When somebody wishes to stop, the central run fails, or too many members do.
    pub(super) fn of(
        at: &[usize],
        key: &str,
        case: &Case,
        common: Common,
        stop: &Stop,
    ) -> Result<(Point, Vec<Line>), CompareError> {
        let entrant = Entrant {
            key: key.to_string(),
            case,
        };
        let ran = Strategy::of(&entrant, common, stop, &mut |_| {})?;
        let mut lines = lines(std::slice::from_ref(&ran));
        lines.push(ready_of_100(&ran.curve));
        let point = Point {
            at: at.to_vec(),
            central: central(&ran),
            members: ran.members,
            bands: ran.bands,
            curve: ran.curve,
        };
        Ok((point, lines))
    }
}

/// Name of the figure that tells how many are ready at all.
pub const READY_OF_100: &str = "ready_of_100";

fn ready_of_100(curve: &ReadyCurve) -> Line {
    Line {
        name: READY_OF_100,
        unit: "of 100",
        what: "how many of 100 tanks are ready by the last day",
        short: "ready by the last day",
        better: Better::More,
        told_from: 1.0,
        values: vec![Value::One(curve.of_100_by(curve.last_day))],
        alike: Alike::default(),
    }
}

/// The figures of the central run in the order of the lines: ready days, figures, visits, cost, and none of
/// how many are ready.
fn central(ran: &Strategy<'_>) -> Vec<Option<f64>> {
    let own = figures(&ran.outcome.run, &ran.case.limits);
    let day = ran.outcome.verdict.day().map(f64::from);
    let days = std::iter::repeat_n(day, OF_100.len());
    let figures = FIGURES.iter().map(|figure| (figure.read)(&own));
    let visits = Some(f64::from(ran.outcome.milestones.visits));
    days.chain(figures)
        .chain([visits, ran.cost(&own), None])
        .collect()
}
