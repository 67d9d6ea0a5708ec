//! One or two values of a scenario varied over a grid, every point on the same members.
//!
//! Start at [`Sweep::of`]. Each point is a scenario of its own, read as if the user had written the values
//! there; what a member draws hangs on seed, number and names alone (`compare`), so that two points differ in
//! what is varied and in nothing else.
//!
//! ```text
//! axis     what is varied, and all it is set to          size     how many runs, and about how long
//! point    one point: central run, members, figures      border   where a figure passes its limit
//! lead     which figure leads
//! ```

pub mod axis;
pub mod border;
pub mod lead;
pub mod point;
pub mod size;

use rayon::prelude::*;

use crate::base::stop::Stop;

use super::case::Case;
use super::compare::lines::Line;
use super::compare::{Common, CompareError};
use super::limits::Limits;
use axis::{Axis, points};
use border::Border;
use point::Point;

/// How many members each point is run on when nothing else is said.
pub const USUAL_MEMBERS: usize = 50;
/// Most values that are varied at once: more fit on no page.
pub const MOST_AXES: usize = 2;
/// Points that one thread works on between two tellings of how far it is.
const POINTS_PER_THREAD: usize = 4;

/// A grid of scenarios, run.
#[derive(Debug, Clone)]
pub struct Sweep {
    /// The plausible tanks of every point.
    pub common: Common,
    /// The last day of every run.
    pub last_day: u32,
    /// Limits of the first point.
    pub limits: Limits,
    /// What is varied.
    pub axes: Vec<Axis>,
    /// Every figure, with its value at every point.
    pub lines: Vec<Line>,
    /// The points; the last axis runs fastest.
    pub points: Vec<Point>,
}

impl Sweep {
    /// Runs a grid; `cases` has the scenario of each of its points, all of one length, and at least one.
    /// `progress` hears how many members are done, of how many.
    ///
    /// # Errors
    /// When somebody wishes to stop, a central run fails, or too many members of a point do.
    pub fn of(
        axes: &[Axis],
        cases: &[Case],
        common: Common,
        stop: &Stop,
        mut progress: impl FnMut(usize, usize),
    ) -> Result<Sweep, CompareError> {
        let places = points(axes);
        let pairs: Vec<(&Vec<usize>, &Case)> = places.iter().zip(cases).collect();
        let mut ran: Vec<(Point, Vec<Line>)> = Vec::with_capacity(pairs.len());
        // points side by side, and the members of each: neither alone keeps all threads at work
        for some in pairs.chunks(POINTS_PER_THREAD * rayon::current_num_threads()) {
            let run = |(at, case): &(&Vec<usize>, &Case)| {
                Point::of(at, &key(axes, at), case, common, stop)
            };
            let results: Vec<Result<_, CompareError>> = some.par_iter().map(run).collect();
            for result in results {
                ran.push(result?);
            }
            progress(ran.len() * common.members, pairs.len() * common.members);
        }
        Ok(Sweep::gathered(axes, &cases[0], common, ran))
    }
    fn gathered(
        axes: &[Axis],
        first: &Case,
        common: Common,
        ran: Vec<(Point, Vec<Line>)>,
    ) -> Sweep {
        let (points, lines): (Vec<Point>, Vec<Vec<Line>>) = ran.into_iter().unzip();
        Sweep {
            common,
            last_day: first.input.last_day,
            limits: first.limits,
            axes: axes.to_vec(),
            lines: side_by_side(lines),
            points,
        }
    }
    /// The place of a figure in the lines, by its name.
    pub fn line(&self, name: &str) -> Option<usize> {
        self.lines.iter().position(|line| line.name == name)
    }
    /// The number of the point at some places of the axes.
    pub fn point_at(&self, at: &[usize]) -> usize {
        let along = self.axes.iter().zip(at);
        along.fold(0, |number, (axis, place)| {
            number * axis.settings.len() + place
        })
    }
    /// Where a figure passes its limit; none when limits are what is varied.
    pub fn border(&self, line: usize) -> Option<Border> {
        let varies_limits = self.axes.iter().any(|a| a.path.starts_with("limits."));
        let border = || Border::of(&self.lines[line], &self.limits, self.last_day);
        if varies_limits { None } else { border() }
    }
}

/// A point in words: `changes.early.share = 20 %, changes.early.every = 3`.
pub fn key(axes: &[Axis], at: &[usize]) -> String {
    let settings = axes.iter().zip(at).map(|(axis, &place)| {
        let words = &axis.settings[place].words;
        format!("{} = {words}", axis.path)
    });
    settings.collect::<Vec<_>>().join(", ")
}

/// The lines of all points as one list, each with the values of all.
fn side_by_side(of_points: Vec<Vec<Line>>) -> Vec<Line> {
    let mut points = of_points.into_iter();
    let mut all = points.next().unwrap_or_default();
    for lines in points {
        for (line, other) in all.iter_mut().zip(lines) {
            line.values.extend(other.values);
        }
    }
    all
}
