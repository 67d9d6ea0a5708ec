//! A sweep on one screen: of one value a row per point; of two the main figure over the grid.

use crate::analysis::sweep::Sweep;
use crate::analysis::sweep::axis::Axis;
use crate::output::sweep::words::{self, bare, with_unit};
use crate::output::sweep::{Story, range, shown};

use super::words::counted;
use super::{Page, Tone};

/// Most points of a value that are printed, and most columns of a grid.
const MOST_ROWS: usize = 24;
const MOST_COLUMNS: usize = 9;
/// Width of a column of figures, and least width of a number in a grid.
const COLUMN: usize = 9;
const NUMBER: usize = 5;

/// The whole page, but for where the files are.
pub fn page(story: &Story<'_>) -> Page {
    let sweep = story.sweep;
    let mut page = Page::default();
    head(&mut page, story);
    page.gap();
    match sweep.axes.len() {
        1 => points(&mut page, story),
        _ => grid(&mut page, sweep, story.of[0]),
    }
    page.gap();
    for (place, &line) in story.of.iter().enumerate() {
        let label = if place == 0 { "Range" } else { "" };
        page.block(label, Tone::Plain, range(sweep, line));
    }
    let (of, drawn) = (story.of.len(), shown::most_drawn(sweep.axes.len()));
    if of > drawn {
        let words = format!("the first {drawn} of {of} figures; all are in sweep.csv");
        page.block("Drawn", Tone::Plain, words);
    }
    page.gap();
    page
}

fn head(page: &mut Page, story: &Story<'_>) {
    let sweep = story.sweep;
    let words = format!(
        "{}: {} on the same {} plausible tanks, to day {}",
        story.case.name,
        counted(sweep.points.len(), "point"),
        sweep.common.members,
        sweep.last_day
    );
    page.block("firstfill", Tone::Strong, words);
    for axis in &sweep.axes {
        let (first, last) = (&axis.settings[0], &axis.settings[axis.settings.len() - 1]);
        let count = counted(axis.settings.len(), "value");
        let path = &axis.path;
        let what = match &axis.name {
            Some(name) => format!("{name} ({path})"),
            None => path.clone(),
        };
        let words = format!("{what}: {} to {}, {count}", first.words, last.words);
        page.line(Tone::Plain, words);
    }
}

/// One row per point, a column per figure.
fn points(page: &mut Page, story: &Story<'_>) {
    let (sweep, axis) = (story.sweep, &story.sweep.axes[0]);
    columns(page, story);
    let width = widest(axis);
    let heads = (0..story.of.len()).map(|place| format!("{:>COLUMN$}", letter(place)));
    let heads = heads.collect::<String>();
    page.block("Points", Tone::Strong, format!("{:width$}{heads}", ""));
    for (number, setting) in axis.settings.iter().enumerate().take(MOST_ROWS) {
        let lines = story.of.iter().map(|&place| &sweep.lines[place]);
        let cells = lines.map(|line| format!("{:>COLUMN$}", bare(line, &line.values[number])));
        let cells = cells.collect::<String>();
        page.line(Tone::Plain, format!("{:>width$}{cells}", setting.words));
    }
    if axis.settings.len() > MOST_ROWS {
        page.line(Tone::Faint, "the rest is in sweep.csv");
    }
}

/// What the columns are.
fn columns(page: &mut Page, story: &Story<'_>) {
    for (place, &line) in story.of.iter().enumerate() {
        let label = if place == 0 { "Columns" } else { "" };
        let name = with_unit(&story.sweep.lines[line]);
        page.block(label, Tone::Plain, format!("{} {name}", letter(place)));
    }
}

fn letter(place: usize) -> char {
    char::from(b'a' + place as u8)
}

/// The main figure: the first value across, the second one up.
fn grid(page: &mut Page, sweep: &Sweep, line: usize) {
    let (across, up) = (&sweep.axes[0], &sweep.axes[1]);
    if across.settings.len() > MOST_COLUMNS || up.settings.len() > MOST_ROWS {
        let words = "too wide for a screen: see map.png and sweep.csv";
        page.block("Grid", Tone::Plain, words);
        return;
    }
    let name = with_unit(&sweep.lines[line]);
    let words = format!("{name}: across {}, up {}", across.words(), up.words());
    page.block("Grid", Tone::Strong, words);
    let (first, wide) = (widest(up), widest(across).max(NUMBER) + 2);
    for (y, setting) in up.settings.iter().enumerate().rev() {
        let cells = row(sweep, line, y, wide);
        page.line(Tone::Plain, format!("{:>first$}{cells}", setting.words));
    }
    let names = across.settings.iter();
    let names = names.map(|setting| format!("{:>wide$}", setting.words));
    let names = names.collect::<String>();
    page.line(Tone::Faint, format!("{:first$}{names}", ""));
}

/// The cells of one row of the grid.
fn row(sweep: &Sweep, line: usize, y: usize, wide: usize) -> String {
    let figure = &sweep.lines[line];
    let cells = (0..sweep.axes[0].settings.len()).map(|x| {
        let number = sweep.point_at(&[x, y]);
        format!("{:>wide$}", bare(figure, &figure.values[number]))
    });
    cells.collect()
}

/// Signs of the longest setting.
fn widest(axis: &Axis) -> usize {
    let signs = axis.settings.iter().map(|one| one.words.chars().count());
    signs.max().unwrap_or(0)
}

/// From where to where a figure runs, and what keeps its limit.
pub(in crate::output) fn range(sweep: &Sweep, place: usize) -> String {
    let line = &sweep.lines[place];
    let mut words = range::sentences(sweep, place).swap_remove(0);
    if let Some(border) = sweep.border(place) {
        let kept = line.values.iter().filter(|value| border.is_kept(value));
        let side = words::kept(line, border.at);
        words += &format!(
            "; {side} at {} of {} points",
            kept.count(),
            line.values.len()
        );
    }
    words
}
