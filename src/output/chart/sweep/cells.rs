//! The cells of a map: their colours, and as many numbers in them as have room.

use crate::analysis::sweep::Sweep;
use crate::output::chart::axis::{Axis, Scale};
use crate::output::chart::figure::{Anchor, Field, Panel, Shape, Span, width_of};
use crate::output::chart::fonts::Face;
use crate::output::chart::rect::Rect;
use crate::output::chart::sheet::{Sheet, small};
use crate::output::chart::style::{INK, Pen, TICK, WHITE};
use crate::output::sweep::range::is_flat;
use crate::output::sweep::words;

use super::tint;

/// Sizes a main number may have, the largest first.
const BIG: [f64; 3] = [17.0, 15.0, TICK];
/// Room left beside words in a cell, both sides together.
const BESIDE: f64 = 8.0;
/// Height of a cell that holds the main number, and what each line under it adds.
const OF_NUMBER: f64 = 24.0;
const OF_LINE: f64 = 16.0;
/// From the middle of a line to its base line, as a share of its size.
const TO_BASE: f64 = 0.36;
/// Cells smaller than this have no white between them.
const PARTED: f64 = 8.0;

/// An empty panel of cells, coloured by a figure.
pub fn panel(sweep: &Sweep, line: usize, frame: Rect) -> Panel {
    let [across, up] = [0, 1].map(|axis| axis_of(sweep.axes[axis].settings.len()));
    let mut panel = Panel::new(frame, across, up);
    let figure = &sweep.lines[line];
    let (hue, scale) = (tint::hue(figure.name), tint::scale(figure, sweep.last_day));
    panel.title = format!(
        "{} by {} and {}",
        words::with_unit(figure),
        sweep.axes[0].words(),
        sweep.axes[1].words()
    );
    for (number, point) in sweep.points.iter().enumerate() {
        let (x, y) = (point.at[0] as f64, point.at[1] as f64);
        let height = match is_flat(figure) {
            true => Some(scale.low), // pale: there is nothing to see
            false => tint::height(&figure.values[number], sweep.last_day),
        };
        panel.fields.push(Field {
            across: (x, x + 1.0),
            up: (y, y + 1.0),
            colour: height.map_or(WHITE, |height| tint::at_place(hue, scale.place(height))),
            alpha: 1.0,
        });
    }
    panel
}

fn axis_of(count: usize) -> Axis {
    Axis {
        low: 0.0,
        high: count as f64,
        scale: Scale::Even,
        ticks: Vec::new(),
    }
}

/// White lines between the cells.
pub fn part(sheet: &mut Sheet, panel: &Panel) {
    let (across, up) = (panel.across.high as usize, panel.up.high as usize);
    let (wide, tall) = size(panel);
    if wide < PARTED || tall < PARTED {
        return;
    }
    let ends = (panel.up.low, panel.up.high);
    let upright = (1..across).map(|x| [(x as f64, ends.0), (x as f64, ends.1)]);
    let sides = (panel.across.low, panel.across.high);
    let level = (1..up).map(|y| [(sides.0, y as f64), (sides.1, y as f64)]);
    for ends in upright.chain(level) {
        let path = panel.path(&ends);
        sheet.shape(Shape::Path(path, Pen::hair(WHITE).wide(1.5)));
    }
}

fn size(panel: &Panel) -> (f64, f64) {
    let frame = panel.frame;
    (
        frame.width() / panel.across.high,
        frame.height() / panel.up.high,
    )
}

/// What has room in every cell.
#[derive(Debug, Clone, PartialEq)]
pub struct Numbers {
    /// Size of the main number; none where it has no room.
    big: Option<f64>,
    /// The small words under it, cell by cell; as many lines in each.
    small: Vec<Vec<String>>,
}

impl Numbers {
    /// What has room in the cells of a panel, of some figures, the main one first.
    pub fn fitting(sweep: &Sweep, panel: &Panel, of: &[usize]) -> Numbers {
        let (wide, tall) = size(panel);
        let room = (wide - BESIDE, tall);
        let big = big(sweep, of[0], room);
        let ways = [on_one_line, line_by_line].map(|way: Way| {
            let numbers = 0..sweep.points.len();
            let words = numbers.map(|number| way(sweep, number, &of[1..]));
            words.collect::<Vec<Vec<String>>>()
        });
        let small = ways.into_iter().find(|way| has_room(way, room));
        let none = || vec![Vec::new(); sweep.points.len()];
        Numbers {
            small: small.filter(|_| big.is_some()).unwrap_or_else(none),
            big,
        }
    }
    /// Whether cells hold the main number.
    pub fn has_main(&self) -> bool {
        self.big.is_some()
    }
    /// Whether they hold the other figures too.
    pub fn has_others(&self) -> bool {
        self.small.first().is_some_and(|lines| !lines.is_empty())
    }
    /// Writes them.
    pub fn write(&self, sheet: &mut Sheet, panel: &Panel, sweep: &Sweep, main: usize) {
        let Some(size) = self.big else {
            return;
        };
        for (number, point) in sweep.points.iter().enumerate() {
            let (x, y) = (point.at[0] as f64 + 0.5, point.at[1] as f64 + 0.5);
            let (x, middle) = panel.at((x, y));
            let lines = &self.small[number];
            let mut y = middle - OF_LINE * lines.len() as f64 / 2.0;
            let line = &sweep.lines[main];
            let words = words::bare(line, &line.values[number]);
            let big = Span::new(&words, Face::SemiBold, size, INK);
            sheet.say(vec![big], Anchor::Middle, x, y + TO_BASE * size);
            y += size / 2.0 + OF_LINE / 2.0 + 1.0;
            for words in lines {
                let words = vec![small(words, INK)];
                sheet.say(words, Anchor::Middle, x, y + TO_BASE * TICK);
                y += OF_LINE;
            }
        }
    }
}

/// Words of some figures at a point, line by line.
type Way = fn(&Sweep, usize, &[usize]) -> Vec<String>;

/// The largest size that a number has room in, in every cell.
fn big(sweep: &Sweep, main: usize, (wide, tall): (f64, f64)) -> Option<f64> {
    let main = &sweep.lines[main];
    let words: Vec<String> = (main.values.iter())
        .map(|value| words::bare(main, value))
        .collect();
    let fits = |size: &f64| {
        let widths = words.iter().map(|words| Face::SemiBold.width(words, *size));
        tall >= OF_NUMBER && widths.fold(0.0, f64::max) <= wide
    };
    BIG.into_iter().find(fits)
}

/// Whether so many lines have room under the number of every cell.
fn has_room(cells: &[Vec<String>], (wide, tall): (f64, f64)) -> bool {
    let lines = cells.first().map_or(0, Vec::len) as f64;
    let words = cells.iter().flatten();
    let widths = words.map(|words| width_of(&[small(words, INK)]));
    tall >= OF_NUMBER + OF_LINE * lines && widths.fold(0.0, f64::max) <= wide
}

fn line_by_line(sweep: &Sweep, number: usize, others: &[usize]) -> Vec<String> {
    let lines = others.iter().map(|&place| &sweep.lines[place]);
    let words = lines.map(|line| words::small(line, &line.values[number]));
    words.collect()
}

fn on_one_line(sweep: &Sweep, number: usize, others: &[usize]) -> Vec<String> {
    let words = line_by_line(sweep, number, others).join(", ");
    if words.is_empty() {
        Vec::new()
    } else {
        vec![words]
    }
}
