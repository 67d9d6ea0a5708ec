//! The widest interval against the number of members, milestone by milestone.

use crate::analysis::study::findings::Found;
use crate::analysis::study::findings::index::Kind;
use crate::analysis::study::findings::sizes::{DONE_BELOW, Size};
use crate::output::chart::axis::{Axis, Scale, Tick};
use crate::output::chart::ends::{EndName, name_ends};
use crate::output::chart::figure::{Anchor, Figure, Form, Limit, Line, Panel, width_of};
use crate::output::chart::notes::{height_of, write};
use crate::output::chart::rect::Rect;
use crate::output::chart::sheet::{LEFT, Sheet, bold, small};
use crate::output::chart::style::{INK, MUTED, Pen};
use crate::output::chart::sweep::tint::hue;
use crate::output::chart::words::number;
use crate::output::study::Story;
use crate::output::study::verdict::size_of;

use super::convergence_notes::notes;

/// Most milestones that are drawn: their names need room at the ends.
const DRAWN: usize = 7;
/// Left, top and right edge of the frame; its lower edge lies this far above the notes.
const ACROSS: (f64, f64) = (LEFT, 980.0);
const TOP: f64 = 150.0;
const ABOVE_NOTES: f64 = 82.0;
/// From the frame up to its title and down to the name of the axis.
const ABOVE: f64 = 16.0;
const BELOW: f64 = 46.0;
/// Widths that are named, and the least that is drawn.
const NAMED: [(f64, &str); 10] = [
    (0.001, "0.001"),
    (0.005, "0.005"),
    (0.01, "0.01"),
    (0.02, "0.02"),
    (0.1, "0.1"),
    (0.2, "0.2"),
    (0.5, "0.5"),
    (1.0, "1"),
    (2.0, "2"),
    (5.0, "5"),
];
const LEAST: f64 = 0.001;
/// The last base line.
const LAST_NOTE: f64 = 876.0;
/// Air at both ends of an axis, as a factor; room between two of their names, pixels.
const AIR: f64 = 1.2;
const APART: f64 = 12.0;

/// The chart; none before there is something to be sure of.
pub fn figure(story: &Story<'_>) -> Option<Figure> {
    let all = story.findings.found.iter();
    let (mut told, unknown): (Vec<&Found>, Vec<&Found>) =
        all.partition(|found| !found.sizes.is_empty());
    let first = *told.first()?;
    let title = title(&told);
    let more = told.split_off(DRAWN.min(told.len()));
    let mut sheet = Sheet::new("convergence", &[title], &[format!("{}.", size_of(story))]);
    let notes = notes(&told, &unknown, &more);
    let bottom = LAST_NOTE - height_of(&notes) - ABOVE_NOTES;
    let at = sheet.panel(panel(&told, bottom), &what(first), "", ABOVE);
    let axis = sheet.figure.panels[at].across.clone();
    sheet.ticks_below(at, &axis);
    sheet.say(
        vec![bold("members", INK)],
        Anchor::End,
        ACROSS.1,
        bottom + BELOW,
    );
    let mut names = vec![done()];
    for (place, found) in told.iter().enumerate() {
        let own = hue(found.milestone.name);
        let alike = told[..place]
            .iter()
            .filter(|other| hue(other.milestone.name) == own);
        names.push(draw(&mut sheet, at, found, alike.count()));
    }
    name_ends(&mut sheet, at, &names);
    write(&mut sheet, &notes, LAST_NOTE);
    Some(sheet.figure)
}

/// How many milestones are done, and where the first stands.
fn title(told: &[&Found]) -> String {
    let last = |found: &Found| found.sizes.last().copied();
    let done = told
        .iter()
        .filter(|found| last(found).is_some_and(|size| size.is_done()))
        .count();
    let main = last(told[0]).map_or(String::new(), |size| {
        let widest = number(size.widest, 3);
        format!(
            "{}: widest interval {widest} at {} members",
            told[0].milestone.short, size.members
        )
    });
    let main = crate::output::text::words::capital(&main);
    match (told.len(), done) {
        (1, 1) => format!("{main}, done"),
        (1, _) => format!("{main}, not done yet"),
        (all, some) => format!("{main}; {some} of {all} milestones done"),
    }
}

fn what(found: &Found) -> String {
    let has = |kind| found.of(kind).next().is_some();
    let of = match (has(Kind::Total), has(Kind::MuStar)) {
        (true, _) => "total share",
        (_, true) => "mean effect, over the largest",
        _ => "rank correlation",
    };
    format!("Widest interval of a {of}, 95 of 100 times")
}

fn panel(told: &[&Found], bottom: f64) -> Panel {
    let sizes = || told.iter().flat_map(|found| &found.sizes);
    let up = up(sizes().map(|size| size.widest));
    let frame = Rect::new(ACROSS.0, TOP, ACROSS.1, bottom);
    let mut panel = Panel::new(frame, across(sizes()), up);
    let ends = (panel.across.low, panel.across.high);
    panel
        .limits
        .push(Limit::new("done", DONE_BELOW, ends, Pen::LIMIT));
    panel
}

/// Factors alike take the same room, from a little below the lowest width to a little above the highest.
fn up(widths: impl Iterator<Item = f64>) -> Axis {
    let ends = (DONE_BELOW, DONE_BELOW);
    let (low, high) = widths.fold(ends, |(low, high), width| (low.min(width), high.max(width)));
    let (low, high) = ((low / AIR).max(LEAST), high * AIR);
    let inside = NAMED
        .into_iter()
        .filter(|(value, _)| (low..=high).contains(value));
    let tick = |(value, words): (f64, &str)| Tick {
        value,
        words: words.into(),
    };
    Axis {
        low,
        high,
        scale: Scale::Decades,
        ticks: inside.map(tick).collect(),
    }
}

/// Powers of two, each named where there is room.
fn across<'a>(sizes: impl Iterator<Item = &'a Size>) -> Axis {
    let mut members: Vec<u64> = sizes.map(|size| size.members).collect();
    members.sort_unstable();
    members.dedup();
    let (first, last) = (members[0] as f64, members[members.len() - 1] as f64);
    let mut axis = Axis {
        low: first / AIR,
        high: last * AIR,
        scale: Scale::Decades,
        ticks: Vec::new(),
    };
    let mut free_until = f64::INFINITY;
    for members in members.into_iter().rev() {
        let words = members.to_string();
        let half = width_of(&[small(&words, MUTED)]) / 2.0;
        let x = axis.place(members as f64) * (ACROSS.1 - ACROSS.0);
        let has_room = x + half + APART <= free_until;
        if has_room {
            free_until = x - half;
        }
        let words = if has_room { words } else { String::new() };
        axis.ticks.insert(
            0,
            Tick {
                value: members as f64,
                words,
            },
        );
    }
    axis
}

fn done() -> EndName {
    EndName::limit("done below", number(DONE_BELOW, 2), DONE_BELOW, Pen::LIMIT)
}

/// The line of a milestone, the so-manieth of its hue, and its name for its end.
fn draw(sheet: &mut Sheet, at: usize, found: &Found, alike: usize) -> EndName {
    let hue = hue(found.milestone.name);
    let pen = match alike % 3 {
        0 => Pen::curve(hue),
        1 => Pen::dashed(hue),
        _ => Pen::dotted(hue),
    };
    let floor = sheet.figure.panels[at].up.low;
    let point = |size: &Size| (size.members as f64, size.widest.max(floor));
    let points: Vec<(f64, f64)> = found.sizes.iter().map(point).collect();
    let last = points[points.len() - 1];
    let line = Line::new(found.milestone.short, points.clone(), pen);
    sheet.figure.panels[at].lines.push(line);
    for point in points {
        sheet.mark(at, point, Form::Dot, hue);
    }
    EndName::curve(found.milestone.short, number(last.1, 3), last.1, pen)
}
