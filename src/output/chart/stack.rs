//! Layers on top of each other: what is positive upwards from zero, what is negative downwards.

use super::figure::Area;
use super::rect::Point;
use super::series::last;
use super::style::{Colour, Pen, WHITE};

/// One layer of a stack.
#[derive(Debug, Clone, PartialEq)]
pub struct Layer {
    /// What it shows.
    pub name: &'static str,
    /// Its colour.
    pub colour: Colour,
    /// How much it covers, 0 to 1.
    pub alpha: f64,
    /// Its thickness over time.
    pub points: Vec<Point>,
}

impl Layer {
    /// A layer still without points.
    pub fn new(name: &'static str, colour: Colour, alpha: f64) -> Layer {
        Layer {
            name,
            colour,
            alpha,
            points: Vec::new(),
        }
    }
    /// Its thickness at the start.
    pub fn start(&self) -> f64 {
        self.points.first().map_or(0.0, |p| p.1)
    }
    /// Its thickness at the end.
    pub fn end(&self) -> f64 {
        last(&self.points)
    }
    /// Whether it is ever thicker than so much.
    pub fn reaches(&self, least: f64) -> bool {
        self.points.iter().any(|p| p.1.abs() > least)
    }
}

/// Areas for layers in order from zero outwards, and the middle of each at its end.
///
/// A layer that changes sign shows twice, over zero while positive and under it while negative.
pub fn stacked(layers: &[&Layer]) -> (Vec<Area>, Vec<f64>) {
    let count = layers.first().map_or(0, |l| l.points.len());
    let (mut above, mut below) = (vec![0.0; count], vec![0.0; count]);
    let (mut areas, mut middles) = (Vec::new(), Vec::new());
    for layer in layers {
        let mut middle = 0.0;
        for (sign, base) in [(1.0, &mut above), (-1.0, &mut below)] {
            let part = |p: &Point| sign * (sign * p.1).max(0.0);
            let inner: Vec<f64> = base.clone();
            for (b, p) in base.iter_mut().zip(&layer.points) {
                *b += part(p);
            }
            if !layer.points.iter().any(|p| part(p) != 0.0) {
                continue;
            }
            if layer.points.last().is_some_and(|p| sign * p.1 > 0.0) {
                middle = (inner[count - 1] + base[count - 1]) / 2.0;
            }
            areas.push(area(layer, &inner, base));
        }
        middles.push(middle);
    }
    (areas, middles)
}

fn area(layer: &Layer, inner: &[f64], outer: &[f64]) -> Area {
    let along = |heights: &[f64]| -> Vec<Point> {
        let points = layer.points.iter().zip(heights);
        points.map(|(p, &height)| (p.0, height)).collect()
    };
    Area {
        name: layer.name.to_string(),
        upper: along(outer),
        lower: along(inner),
        colour: layer.colour,
        alpha: layer.alpha,
        edge: Some(Pen::hair(WHITE)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::output::chart::style::{SOIL, WATER};

    #[test]
    fn layers_add_up_away_from_zero() {
        let layer = |name, colour, thick: f64| Layer {
            points: vec![(0.0, 0.0), (1.0, thick)],
            ..Layer::new(name, colour, 1.0)
        };
        let (a, b, c) = (
            layer("a", SOIL, 2.0),
            layer("b", WATER, 3.0),
            layer("c", SOIL, -4.0),
        );
        let (areas, middles) = stacked(&[&a, &b, &c]);
        assert_eq!(middles, [1.0, 3.5, -2.0]);
        assert_eq!(areas[1].upper[1], (1.0, 5.0));
        assert_eq!(areas[2].upper[1], (1.0, -4.0));
    }

    #[test]
    fn a_layer_that_changes_sign_shows_on_both_sides() {
        let layer = Layer {
            points: vec![(0.0, -1.0), (1.0, 2.0)],
            ..Layer::new("a", SOIL, 1.0)
        };
        let (areas, middles) = stacked(&[&layer]);
        assert_eq!((areas.len(), middles[0]), (2, 1.0));
    }
}
