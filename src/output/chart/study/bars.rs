//! One row an input: a bar with its interval, two numbers, and the group it belongs to.

use crate::analysis::study::findings::Found;
use crate::analysis::study::findings::factor::Factor;
use crate::analysis::study::findings::index::{Index, Kind};
use crate::analysis::study::findings::judged::judged;
use crate::output::chart::axis::{Axis, from_zero};
use crate::output::chart::figure::{Anchor, Figure, Shape};
use crate::output::chart::fonts::Face;
use crate::output::chart::lever_bars::RANGE;
use crate::output::chart::notes::{height_of, write};
use crate::output::chart::rect::Rect;
use crate::output::chart::row_scale::RowScale;
use crate::output::chart::sheet::{LEFT, Sheet, bold, fitting, plain, small};
use crate::output::chart::signs::corners;
use crate::output::chart::style::{Colour, INK, MUTED, NAME};
use crate::output::chart::words::number;
use crate::output::study::Story;
use crate::output::study::words::{bare, name, share};

use super::bars_rows::{Rest, Row, Rows};
use super::bars_words::{distance, heads, key, scale_name, stem};
use super::hues::hue;
use super::titles;

/// Upper edge of the rows, left and right edge of the scale, right end of the page's rules.
const TOP: f64 = 150.0;
const ACROSS: (f64, f64) = (432.0, 812.0);
const RIGHT_END: f64 = 1136.0;
/// Right ends of the two columns of numbers, and left end of the groups' words.
const COLUMNS: [f64; 2] = [900.0, 990.0];
const GROUPS: f64 = 1042.0;
/// Height of a row where there is room; base line of the last note; room for the names of the scale.
const ROW: f64 = 56.0;
const LAST_NOTE: f64 = 876.0;
const UNDER_ROWS: f64 = 72.0;
/// Steps of the scale.
const STEPS: usize = 6;
/// Thickness of the outer and of the inner bar, and how much they cover.
pub(super) const OUTER: (f64, f64) = (17.0, 0.32);
pub(super) const INNER: (f64, f64) = (9.0, 0.9);
/// Half the height of the ends of an interval; radius of the sign of a group.
const END: f64 = 4.0;
const DISC: f64 = 5.0;
/// From the middle of a row to its base line, and from a name to the scale.
const SINK: f64 = 4.5;
const GAP: f64 = 16.0;

/// The chart of a milestone; none where effects lead, which are drawn as points, or nothing was found.
pub fn figure(story: &Story<'_>, found: &Found) -> Option<Figure> {
    let judged = judged(found).filter(|judged| judged.leading != Kind::MuStar)?;
    let rows = Rows::of(found, &judged);
    let stem = format!("{}-{}", stem(rows.kind), found.milestone.name);
    let titles = titles::strongest(story, found, &judged);
    let mut sheet = Sheet::new(&stem, &titles, &titles::sentences(story, found, &judged));
    sheet.key(&key(rows.kind));
    let mut notes = titles::limits(story, found);
    notes.splice(0..0, distance(found, rows.kind));
    let room = LAST_NOTE - height_of(&notes) - UNDER_ROWS - TOP;
    let tall = (room / rows.count() as f64).min(ROW);
    let at = scale(&mut sheet, found, &rows, tall);
    for (place, row) in rows.own.iter().enumerate() {
        let y = TOP + tall * (place as f64 + 0.5);
        let factor = &story.findings.factors[row.factor];
        draw(&mut sheet, at, &rows, row, (y, hue(factor.group)));
        say(&mut sheet, found, row, (y, factor));
    }
    if let Some(rest) = &rows.rest {
        let y = TOP + tall * (rows.own.len() as f64 + 0.5);
        say_rest(&mut sheet, at, found, &rows, (y, rest));
    }
    write(&mut sheet, &notes, LAST_NOTE);
    Some(sheet.figure)
}

/// The empty scale, and the heads of the columns.
fn scale(sheet: &mut Sheet, found: &Found, rows: &Rows, tall: f64) -> usize {
    for (end, words) in COLUMNS.into_iter().zip(heads(rows.kind)) {
        sheet.say(vec![small(words, MUTED)], Anchor::End, end, TOP - 12.0);
    }
    let group = vec![small("group", MUTED)];
    sheet.say(group, Anchor::Start, GROUPS, TOP - 12.0);
    let scale = RowScale {
        across: ACROSS,
        top: TOP,
        tall,
        rows: rows.count(),
        right_end: RIGHT_END,
        axis: across(rows),
        name: &scale_name(found, rows.kind),
    };
    scale.draw(sheet)
}

fn across(rows: &Rows) -> Axis {
    let least = if rows.kind == Kind::Range { 1e-6 } else { 0.05 };
    let mut axis = from_zero(rows.values(), least, STEPS);
    if rows.kind == Kind::Rank {
        end_at_one(&mut axis);
    }
    if rows.kind == Kind::Total {
        for tick in &mut axis.ticks {
            tick.words = format!("{} %", number(100.0 * tick.value, 0));
        }
    }
    axis
}

/// No rank lies beyond −1 and 1.
fn end_at_one(axis: &mut Axis) {
    (axis.low, axis.high) = (axis.low.max(-1.0), axis.high.min(1.0));
    let (low, high) = (axis.low, axis.high);
    axis.ticks
        .retain(|tick| low <= tick.value && tick.value <= high);
}

/// The bar, the inner one of what it does alone, and the interval.
fn draw(sheet: &mut Sheet, at: usize, rows: &Rows, row: &Row, (y, colour): (f64, Colour)) {
    let is_share = rows.kind == Kind::Total;
    let form = if is_share { OUTER } else { INNER };
    bar(sheet, at, row.index.value, (y, colour), form);
    if let Some(first) = row.beside.filter(|_| is_share) {
        bar(sheet, at, first.value.max(0.0), (y, colour), INNER);
    }
    if rows.kind == Kind::Range {
        return;
    }
    let Some(ends) = row.index.interval else {
        return;
    };
    let x = ends.map(|end| sheet.figure.panels[at].x(end));
    let level = y.floor() + 0.5;
    sheet.shape(Shape::Path(vec![(x[0], level), (x[1], level)], RANGE));
    for x in x {
        let x = x.floor() + 0.5;
        sheet.shape(Shape::Path(vec![(x, level - END), (x, level + END)], RANGE));
    }
}

fn bar(
    sheet: &mut Sheet,
    at: usize,
    value: f64,
    (y, colour): (f64, Colour),
    (thick, alpha): (f64, f64),
) {
    let panel = &sheet.figure.panels[at];
    let (zero, end) = (panel.x(0.0), panel.x(value));
    let space = Rect::new(
        zero.min(end),
        y - thick / 2.0,
        zero.max(end),
        y + thick / 2.0,
    );
    sheet.shape(Shape::Fill(corners(&space), colour, alpha));
}

/// Name, numbers and group.
fn say(sheet: &mut Sheet, found: &Found, row: &Row, (y, factor): (f64, &Factor)) {
    let baseline = y + SINK;
    let names = [
        format!("{}, {}", name(factor), factor.name),
        name(factor),
        factor.name.clone(),
    ];
    let names = if factor.name == name(factor) {
        &names[1..]
    } else {
        &names[..]
    };
    let room = ACROSS.0 - GAP - LEFT;
    let words = fitting(names, Face::Regular, NAME, room);
    sheet.say(vec![plain(&words, INK)], Anchor::Start, LEFT, baseline);
    let cell = |index: &Index| bare(found, index);
    let cells = match row.index.kind {
        Kind::Total => [row.beside.as_ref().map(cell), Some(cell(&row.index))],
        _ => [Some(cell(&row.index)), row.beside.as_ref().map(cell)],
    };
    let strong = usize::from(row.index.kind == Kind::Total);
    for (place, words) in cells.into_iter().enumerate() {
        let words = words.unwrap_or_else(|| "·".into());
        let span = if place == strong {
            bold(&words, INK)
        } else {
            plain(&words, MUTED)
        };
        sheet.say(vec![span], Anchor::End, COLUMNS[place], baseline);
    }
    sheet.shape(Shape::Disc((GROUPS - 14.0, y), DISC, hue(factor.group)));
    sheet.say(
        vec![plain(factor.group.word(), MUTED)],
        Anchor::Start,
        GROUPS,
        baseline,
    );
}

/// The others as one: of shares a bar of their sum, which they cannot exceed; else the largest in words.
fn say_rest(sheet: &mut Sheet, at: usize, found: &Found, rows: &Rows, (y, rest): (f64, &Rest)) {
    let baseline = y + SINK;
    let words = match rows.kind {
        Kind::Total => format!("the other {} together, at most", rest.count),
        _ => format!("the other {}, each at most", rest.count),
    };
    sheet.say(vec![plain(&words, MUTED)], Anchor::Start, LEFT, baseline);
    if rows.kind == Kind::Total {
        bar(sheet, at, rest.value, (y, MUTED), OUTER);
        bar(sheet, at, rest.beside, (y, MUTED), INNER);
        let cells = [rest.beside, rest.value].map(share);
        for (end, words) in COLUMNS.into_iter().zip(cells) {
            sheet.say(vec![plain(&words, MUTED)], Anchor::End, end, baseline);
        }
    } else {
        let index = Index::new(rows.kind, 0, rest.value, None);
        sheet.say(
            vec![plain(&bare(found, &index), MUTED)],
            Anchor::End,
            COLUMNS[0],
            baseline,
        );
    }
}
