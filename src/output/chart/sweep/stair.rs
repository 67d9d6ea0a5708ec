//! The border of a limit on a map: along the edges of cells, never smoothed, so that it crosses no number and
//! claims no more than the points do.

use crate::analysis::sweep::Sweep;
use crate::analysis::sweep::border::Border;
use crate::output::chart::figure::{Panel, Shape};
use crate::output::chart::rect::Point;
use crate::output::chart::sheet::Sheet;
use crate::output::chart::style::{INK, Pen, WHITE};

/// Widths of the line and of the white one under it.
const LINE: f64 = 2.6;
const HALO: f64 = 5.0;

/// The pen of the border.
pub fn pen() -> Pen {
    Pen::curve(INK).wide(LINE)
}

/// Draws the border of a figure over the cells of a panel.
pub fn draw(sheet: &mut Sheet, panel: &Panel, sweep: &Sweep, line: usize, border: &Border) {
    let edges = edges(sweep, line, border);
    for pen in [Pen::curve(WHITE).wide(HALO), pen()] {
        for &(from, to) in &edges {
            // corners close where pieces meet
            let half = LINE / 2.0;
            let ends = longer(panel.at(from), panel.at(to), half);
            sheet.shape(Shape::Path(ends, pen));
        }
    }
}

fn longer(a: Point, b: Point, by: f64) -> Vec<Point> {
    match a.0 == b.0 {
        true => vec![(a.0, a.1.max(b.1) + by), (b.0, a.1.min(b.1) - by)],
        false => vec![(a.0.min(b.0) - by, a.1), (a.0.max(b.0) + by, b.1)],
    }
}

/// Edges between a cell that keeps the limit and a neighbour that does not, in cells from the lower left.
fn edges(sweep: &Sweep, line: usize, border: &Border) -> Vec<(Point, Point)> {
    let [across, up] = [0, 1].map(|axis| sweep.axes[axis].settings.len());
    let values = &sweep.lines[line].values;
    let kept = |x: usize, y: usize| border.is_kept(&values[sweep.point_at(&[x, y])]);
    let mut edges = Vec::new();
    for x in 0..across {
        for y in 0..up {
            let corner = |right: usize, over: usize| ((x + right) as f64, (y + over) as f64);
            if x + 1 < across && kept(x, y) != kept(x + 1, y) {
                edges.push((corner(1, 0), corner(1, 1)));
            }
            if y + 1 < up && kept(x, y) != kept(x, y + 1) {
                edges.push((corner(0, 1), corner(1, 1)));
            }
        }
    }
    edges
}

/// On which side of the line the cells lie that keep the limit: above or below it, or right or left of it where it is
/// more upright than level; none where no side holds for all of it.
pub fn kept_side(sweep: &Sweep, line: usize, border: &Border) -> Option<&'static str> {
    let [across, up] = [0, 1].map(|axis| sweep.axes[axis].settings.len());
    let values = &sweep.lines[line].values;
    let kept = |x: usize, y: usize| border.is_kept(&values[sweep.point_at(&[x, y])]);
    let passed = |before: bool, after: bool| (before != after).then_some(after);
    let upwards = (0..across).flat_map(|x| (1..up).map(move |y| (x, y)));
    let upwards = upwards.filter_map(|(x, y)| passed(kept(x, y - 1), kept(x, y)));
    let sideways = (0..up).flat_map(|y| (1..across).map(move |x| (x, y)));
    let sideways = sideways.filter_map(|(x, y)| passed(kept(x - 1, y), kept(x, y)));
    let (upwards, sideways): (Vec<bool>, Vec<bool>) = (upwards.collect(), sideways.collect());
    let level = agreed(&upwards, ["above", "below"]);
    let upright = agreed(&sideways, ["right of", "left of"]);
    match sideways.len() > upwards.len() {
        true => upright.or(level),
        false => level.or(upright),
    }
}

/// The first word where all hold, the second where none does; neither of none or of a mixture.
fn agreed(holds: &[bool], [yes, no]: [&'static str; 2]) -> Option<&'static str> {
    let first = *holds.first()?;
    let word = if first { yes } else { no };
    holds.iter().all(|&one| one == first).then_some(word)
}
