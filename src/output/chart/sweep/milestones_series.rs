//! One figure along a grid of one value, as points: the middle tank, the band of the others, the central run.

use crate::analysis::compare::value::Value;
use crate::analysis::sweep::Sweep;
use crate::output::chart::bands::OUTER;
use crate::output::chart::figure::Area;
use crate::output::chart::later::later;
use crate::output::chart::rect::Point;
use crate::output::chart::style::Colour;

/// Days by which so many of 100 are ready: the band of the middle one runs between the others.
const READY: [&str; 3] = [
    "ready_10_of_100_day",
    "ready_50_of_100_day",
    "ready_90_of_100_day",
];

/// One figure along the grid.
#[derive(Debug, Clone, PartialEq)]
pub struct Series {
    /// Lower edge of the band; empty of a figure that all tanks have together.
    low: Vec<Point>,
    /// The middle tank.
    pub middle: Vec<Point>,
    /// Upper edge of the band.
    high: Vec<Point>,
    /// The central run.
    pub central: Vec<Point>,
}

impl Series {
    /// Of a figure, by its place in the lines of the sweep; what is later than the last day lies on the line [`later`].
    pub fn of(sweep: &Sweep, place: usize) -> Series {
        let points = sweep.points.iter().zip(&sweep.axes[0].settings);
        let central = points.filter_map(|(p, setting)| Some((setting.number, p.central[place]?)));
        let own = sweep.lines[place].name;
        let [low, high] = match own == READY[1] {
            true => [READY[0], READY[2]].map(|name| along(sweep, name, |v| day(sweep, v))),
            false => [0, 1].map(|end| along(sweep, own, |value| Some(value.ends()?[end]))),
        };
        Series {
            low,
            middle: along(sweep, own, |value| day(sweep, value)),
            high,
            central: central.collect(),
        }
    }
    /// Every height of it.
    pub fn heights(&self) -> impl Iterator<Item = f64> {
        let all = [&self.low, &self.middle, &self.high, &self.central];
        all.into_iter().flatten().map(|point| point.1)
    }
    /// The band, where there is one.
    pub fn band(&self, name: &str, colour: Colour) -> Option<Area> {
        (!self.low.is_empty()).then(|| Area {
            name: format!("{name} spans in 90 of 100 tanks"),
            upper: self.high.clone(),
            lower: self.low.clone(),
            colour,
            alpha: OUTER,
            edge: None,
        })
    }
}

fn day(sweep: &Sweep, value: &Value) -> Option<f64> {
    match value {
        Value::Later => Some(later(sweep.last_day)),
        other => other.middle(),
    }
}

fn along(sweep: &Sweep, name: &str, height: impl Fn(&Value) -> Option<f64>) -> Vec<Point> {
    let values = sweep.line(name).map(|at| &sweep.lines[at].values);
    let values = values.into_iter().flatten().zip(&sweep.axes[0].settings);
    let points = values.filter_map(|(value, setting)| Some((setting.number, height(value)?)));
    points.collect()
}
