//! How many of 100 plausible tanks are ready by each day, as steps.

use crate::analysis::ensemble::curve::ReadyCurve;

use super::axis::{Axis, Scale, Tick};
use super::figure::{Area, Line, Panel};
use super::rect::Point;
use super::style::{Pen, READY};

/// How much the area under the steps covers.
const COVER: f64 = 0.13;

/// A step at the midnight that opens each day, of 100; the last day runs to its end.
pub fn steps(curve: &ReadyCurve) -> Vec<Point> {
    let mut points = Vec::new();
    let mut height = 0.0;
    for day in 0..=curve.last_day {
        let at = f64::from(day);
        points.push((at, height));
        height = curve.of_100_by(day);
        points.push((at, height));
    }
    points.push((f64::from(curve.last_day + 1), height));
    points
}

/// An axis from 0 to 100 with so many steps.
pub fn of_100(parts: u32) -> Axis {
    let tick = |n: u32| {
        let value = f64::from(100 * n / parts);
        Tick {
            value,
            words: value.to_string(),
        }
    };
    Axis {
        low: 0.0,
        high: 100.0,
        scale: Scale::Even,
        ticks: (0..=parts).map(tick).collect(),
    }
}

/// Draws the steps in a panel, with the area under them.
pub fn draw_steps(panel: &mut Panel, curve: &ReadyCurve) {
    let points = steps(curve);
    panel.areas.push(Area {
        name: "ready".to_string(),
        lower: points.iter().map(|p| (p.0, 0.0)).collect(),
        upper: points.clone(),
        colour: READY,
        alpha: COVER,
        edge: None,
    });
    let pen = Pen::curve(READY);
    panel.lines.push(Line::new("ready of 100", points, pen));
}
