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

/// Length of a tick that points to the side which keeps the limit.
const TICK: f64 = 8.0;

/// The pen of the border.
pub fn pen() -> Pen {
    Pen::curve(INK).wide(LINE)
}

/// Draws the border of a figure over the cells of a panel; where the kept side is not the same all along, with ticks
/// that point to it.
pub fn draw(sheet: &mut Sheet, panel: &Panel, sweep: &Sweep, line: usize, border: &Border) {
    let edges = edges(sweep, line, border);
    let is_mixed = kept_side(sweep, line, border).is_none();
    for (width, pen) in [(HALO, Pen::curve(WHITE).wide(HALO)), (LINE, pen())] {
        for edge in &edges {
            // corners close where pieces meet
            let half = LINE / 2.0;
            let (from, to) = (panel.at(edge.from), panel.at(edge.to));
            sheet.shape(Shape::Path(longer(from, to, half), pen));
            if is_mixed {
                let tick = tick(panel, edge, TICK + (width - LINE) / 2.0);
                sheet.shape(Shape::Path(tick, pen));
            }
        }
    }
}

/// A short line from the middle of an edge towards the cell that keeps the limit.
fn tick(panel: &Panel, edge: &Edge, length: f64) -> Vec<Point> {
    let middle = panel.at((
        (edge.from.0 + edge.to.0) / 2.0,
        (edge.from.1 + edge.to.1) / 2.0,
    ));
    let towards = panel.at(edge.kept);
    let (across, up) = (towards.0 - middle.0, towards.1 - middle.1);
    let share = length / across.hypot(up).max(length);
    vec![middle, (middle.0 + share * across, middle.1 + share * up)]
}

/// A sample of the border with its ticks, level from a place on.
pub fn sample(sheet: &mut Sheet, (left, y): Point, length: f64, has_ticks: bool) {
    sheet.shape(Shape::Path(vec![(left, y), (left + length, y)], pen()));
    if has_ticks {
        for share in [0.25, 0.75] {
            let x = left + share * length;
            sheet.shape(Shape::Path(vec![(x, y), (x, y - TICK)], pen()));
        }
    }
}

fn longer(a: Point, b: Point, by: f64) -> Vec<Point> {
    match a.0 == b.0 {
        true => vec![(a.0, a.1.max(b.1) + by), (b.0, a.1.min(b.1) - by)],
        false => vec![(a.0.min(b.0) - by, a.1), (a.0.max(b.0) + by, b.1)],
    }
}

/// An edge between a cell that keeps the limit and a neighbour that does not, in cells from the lower left.
struct Edge {
    from: Point,
    to: Point,
    /// Middle of the cell that keeps it.
    kept: Point,
}

fn edges(sweep: &Sweep, line: usize, border: &Border) -> Vec<Edge> {
    let [across, up] = [0, 1].map(|axis| sweep.axes[axis].settings.len());
    let values = &sweep.lines[line].values;
    let kept = |x: usize, y: usize| border.is_kept(&values[sweep.point_at(&[x, y])]);
    let middle = |(x, y): (usize, usize)| (x as f64 + 0.5, y as f64 + 0.5);
    let mut edges = Vec::new();
    for x in 0..across {
        for y in 0..up {
            let corner = |right: usize, over: usize| ((x + right) as f64, (y + over) as f64);
            let beside = (x + 1 < across).then_some(((x + 1, y), corner(1, 0)));
            let over = (y + 1 < up).then_some(((x, y + 1), corner(0, 1)));
            for (other, from) in [beside, over].into_iter().flatten() {
                let is_kept = kept(x, y);
                if is_kept != kept(other.0, other.1) {
                    edges.push(Edge {
                        from,
                        to: corner(1, 1),
                        kept: middle(if is_kept { (x, y) } else { other }),
                    });
                }
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
