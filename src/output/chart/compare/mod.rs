//! Plans side by side: aligned small panels, one row per plan, the same axes down each column; and every other
//! plan against the first one, with bands.

mod courses;
mod differences;
mod differences_words;
mod drawn;
pub mod furnishing;
mod grid;
mod range;
mod rows;
mod strip;
pub mod words;

use crate::analysis::compare::Comparison;

use super::figure::Figure;
use super::key::Key;
use super::sheet::Sheet;
use super::style::{MUTED, Pen};

use courses::COURSES;
use grid::Grid;

/// Both charts.
pub fn figures(comparison: &Comparison<'_>) -> Vec<Figure> {
    vec![side_by_side(comparison), differences::figure(comparison)]
}

fn side_by_side(comparison: &Comparison<'_>) -> Figure {
    let titles = words::titles(comparison);
    let mut sheet = Sheet::new("compare", &titles, &words::sentences(comparison));
    sheet.key(&[
        Key::Line(Pen::curve(MUTED), "central run"),
        Key::Bands("50 and 90 of 100 plausible tanks"),
        Key::Line(Pen::LIMIT, "limit"),
        Key::Change,
    ]);
    let grid = Grid::of(comparison.strategies.len());
    for (column, course) in COURSES.iter().enumerate() {
        course.draw(&mut sheet, comparison, &grid, column);
    }
    for (row, strategy) in comparison.strategies.iter().enumerate() {
        rows::name(&mut sheet, strategy, &grid, row);
    }
    if grid.has_strip() {
        strip::draw(&mut sheet, comparison, grid.end() + strip::ABOVE);
    }
    sheet.figure
}
