//! The widest interval against the number of members, milestone by milestone.

use crate::analysis::study::findings::Found;
use crate::analysis::study::findings::index::Kind;
use crate::analysis::study::findings::sizes::{DONE_BELOW, Size};
use crate::output::chart::axis::{Axis, Scale, Tick};
use crate::output::chart::ends::{EndName, name_ends};
use crate::output::chart::figure::{Anchor, Figure, Form, Limit, Line, Panel, width_of};
use crate::output::chart::notes::{Note, write};
use crate::output::chart::rect::Rect;
use crate::output::chart::sheet::{LEFT, Sheet, bold, small};
use crate::output::chart::style::{INK, MUTED, Pen};
use crate::output::chart::sweep::tint::hue;
use crate::output::chart::words::number;
use crate::output::study::Story;
use crate::output::study::verdict::size_of;

/// Most milestones that are drawn.
const DRAWN: usize = 5;
/// The frame, and from it up to its title and down to the name of the axis.
const FRAME: Rect = Rect::new(LEFT, 150.0, 980.0, 776.0);
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
    let found = story.findings.found.iter();
    let told: Vec<&Found> = found
        .filter(|found| !found.sizes.is_empty())
        .take(DRAWN)
        .collect();
    let first = told.first()?;
    let title = title(&told);
    let mut sheet = Sheet::new("convergence", &[title], &[format!("{}.", size_of(story))]);
    let at = sheet.panel(panel(&told), &what(first), "", ABOVE);
    let axis = sheet.figure.panels[at].across.clone();
    sheet.ticks_below(at, &axis);
    sheet.say(
        vec![bold("members", INK)],
        Anchor::End,
        FRAME.right,
        FRAME.bottom + BELOW,
    );
    let mut names = vec![done()];
    for (place, found) in told.iter().enumerate() {
        names.push(draw(&mut sheet, at, found, place));
    }
    name_ends(&mut sheet, at, &names);
    write(&mut sheet, &[Note::new("Limits", limits())], LAST_NOTE);
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
    let main = crate::output::sweep::words::capital(&main);
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

fn limits() -> String {
    format!(
        "An interval tells what more members would change, not whether the spreads or the model are right. Done: narrower than {DONE_BELOW}."
    )
}

fn panel(told: &[&Found]) -> Panel {
    let sizes = || told.iter().flat_map(|found| &found.sizes);
    let up = up(sizes().map(|size| size.widest));
    let mut panel = Panel::new(FRAME, across(sizes()), up);
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
        let x = axis.place(members as f64) * FRAME.width();
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

/// The line of a milestone, and its name for its end.
fn draw(sheet: &mut Sheet, at: usize, found: &Found, place: usize) -> EndName {
    let hue = hue(found.milestone.name);
    let pen = match place % 3 {
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
