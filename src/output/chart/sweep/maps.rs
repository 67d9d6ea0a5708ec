//! Maps of several figures over the same grid, side by side, each with its own colours and its own limit.

use crate::analysis::sweep::Sweep;
use crate::output::chart::figure::{Anchor, Figure, Span};
use crate::output::chart::fonts::Face;
use crate::output::chart::rect::Rect;
use crate::output::chart::sheet::{LEFT, Sheet, fitting, plain};
use crate::output::chart::style::{INK, MUTED, SENTENCE};
use crate::output::sweep::range::{extremes, is_flat};
use crate::output::sweep::shown;
use crate::output::sweep::words::{bare, small, unit};
use crate::output::text::words::capital;

use super::cells::{self, Numbers};
use super::names::Names;
use super::{map, names, ramp};

/// Most maps on a page.
const MOST: usize = shown::ON_A_MAP;
const TOP: f64 = 168.0;
const BOTTOM: f64 = 704.0;
const RIGHT: f64 = 1136.0;
/// Between two maps; between the names of the rows and the first one.
const GAP: f64 = 52.0;
const TO_FRAME: f64 = 14.0;
/// Room between the names of columns of two maps, half of it.
const APART: f64 = 5.0;
/// Most room for the names of the rows.
const NAMES: f64 = 160.0;
/// From the head of a map up to its title, and to the path of the rows.
const TITLE_UP: f64 = 16.0;
const PATH_UP: f64 = 42.0;
/// From the foot of a map down to its strip of colours; its thickness; down to the border's words.
const STRIP_DOWN: f64 = 72.0;
const STRIP: f64 = 14.0;
const BORDER_DOWN: f64 = 130.0;

/// Draws them.
pub fn figure(sweep: &Sweep, of: &[usize]) -> Figure {
    let of = &of[..of.len().min(MOST)];
    let mut sheet = Sheet::new("maps", &titles(sweep, of), &sentences(sweep));
    let rows = Names::of(&sweep.axes[1], NAMES);
    let first = LEFT + rows.widest + TO_FRAME;
    let wide = (RIGHT - first - GAP * (MOST - 1) as f64) / MOST as f64;
    for (place, &line) in of.iter().enumerate() {
        let left = first + place as f64 * (wide + GAP);
        let frame = Rect::new(left, TOP, left + wide, BOTTOM);
        draw(&mut sheet, sweep, line, frame);
        if place == 0 {
            let panel = sheet.figure.panels[0].clone();
            names::rows(&mut sheet, &panel, &rows, (LEFT, TOP - PATH_UP));
        }
    }
    sheet.figure
}

fn draw(sheet: &mut Sheet, sweep: &Sweep, line: usize, frame: Rect) {
    let panel = cells::panel(sweep, line, frame);
    cells::part(sheet, &panel);
    map::draw_border(sheet, &panel, sweep, line);
    Numbers::fitting(sweep, &panel, &[line]).write(sheet, &panel, sweep, line);
    title(sheet, sweep, line, &frame);
    names::columns(sheet, &panel, &sweep.axes[0], GAP / 2.0 - APART);
    let top = frame.bottom + STRIP_DOWN;
    let strip = Rect::new(frame.left, top, frame.right, top + STRIP);
    ramp::level(sheet, sweep, line, strip);
    let place = (frame.left, frame.bottom + BORDER_DOWN);
    ramp::border(sheet, sweep, line, place, frame.width());
    sheet.figure.panels.push(panel);
}

fn title(sheet: &mut Sheet, sweep: &Sweep, line: usize, frame: &Rect) {
    let figure = &sweep.lines[line];
    let name = capital(figure.short);
    let name = fitting(&[name], Face::SemiBold, SENTENCE, frame.width());
    let mut words = vec![Span::new(&name, Face::SemiBold, SENTENCE, INK)];
    if !unit(figure).is_empty() {
        words.push(plain(unit(figure), MUTED));
    }
    sheet.say(words, Anchor::Start, frame.left, frame.top - TITLE_UP);
}

fn titles(sweep: &Sweep, of: &[usize]) -> Vec<String> {
    let ranges = of.iter().filter_map(|&place| {
        let line = &sweep.lines[place];
        let [lowest, highest] = extremes(line)?;
        let value = |number: usize| bare(line, &line.values[number]);
        if is_flat(line) {
            let value = small(line, &line.values[lowest]);
            return Some(format!("{}: {value}, the same everywhere", line.short));
        }
        Some(format!(
            "{}: {} to {}",
            line.short,
            value(lowest),
            value(highest)
        ))
    });
    let ranges: Vec<String> = ranges.collect();
    vec![
        capital(&ranges.join("; ")),
        "The grid, figure by figure".to_string(),
    ]
}

fn sentences(sweep: &Sweep) -> Vec<String> {
    let members = sweep.common.members;
    vec![format!(
        "Each cell is the middle of the same {members} plausible tanks; a dark line parts what keeps a limit from what does not."
    )]
}
