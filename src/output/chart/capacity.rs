//! Ripe is a crossing: what the microbes of each step could oxidise against what comes in.

use crate::analysis::ready::OxidationStep;
use crate::engine::result::Reading;

use super::Story;
use super::axis::{Axis, decades};
use super::capacity_words::{sentences, titles};
use super::ends::{EndName, name_ends};
use super::figure::{Figure, Form, Limit, Line, Upright};
use super::key::Key;
use super::load::coming_in;
use super::rect::Point;
use super::series::{lowest, of_day};
use super::sheet::{Sheet, bold, plain};
use super::style::{AMMONIA, Colour, INK, MUTED, NITRITE, Pen};
use super::weekly::Weekly;
use super::words::short;

/// Most decades on the axis: what lies further down plays no part.
const DECADES: i32 = 4;

/// One of the two steps.
pub struct Step {
    /// Which.
    pub step: OxidationStep,
    /// Title of its panel.
    pub title: &'static str,
    /// Its colour.
    pub colour: Colour,
    /// Lowest capacity of each day, mg N a day.
    pub capacity: Vec<Point>,
    /// First day from which it covers what comes in, to the end.
    pub covers_load: Option<u32>,
    /// First day from which it covers the feed, to the end.
    pub covers_feed: Option<u32>,
}

/// The chart.
pub fn figure(story: &Story<'_>) -> Figure {
    let weekly = Weekly::usual(story);
    let load = coming_in(story.run);
    let steps = steps(story, &load);
    let mut sheet = Sheet::new(
        "capacity",
        &titles(story, &steps, &load),
        &sentences(story, &steps, &load),
    );
    sheet.key(&[
        Key::Line(Pen::curve(MUTED), "what the microbes could oxidise"),
        Key::Line(Pen::dotted(INK), "what comes in"),
        Key::Line(Pen::LIMIT, feed_name(story)),
    ]);
    let feed = story.verdict.feed_mg_n_per_day;
    let all = steps.iter().flat_map(|s| &s.capacity).chain(&load);
    let up = decades(all.map(|p| p.1).chain([feed]), DECADES);
    for (step, room) in steps.iter().zip([(158.0, 444.0), (536.0, 826.0)]) {
        let at = draw_step(story, &weekly, &mut sheet, step, &load, &up, room);
        if step.step == OxidationStep::Nitrite {
            weekly.foot(&mut sheet, at);
        }
    }
    sheet.figure
}

fn feed_name(story: &Story<'_>) -> &'static str {
    if story.verdict.feed_is_planned {
        "planned feed"
    } else {
        "feed of a usual stock"
    }
}

fn steps(story: &Story<'_>, load: &[Point]) -> [Step; 2] {
    let step = |step, title, colour, value: fn(&Reading) -> f64, covers_feed| {
        let capacity: Vec<Point> = (0..=story.run.input.last_day)
            .filter_map(|day| {
                let low = lowest(&of_day(story.run, day), value)?;
                Some((f64::from(day) + 0.5, value(low)))
            })
            .collect();
        Step {
            step,
            title,
            colour,
            covers_load: covers_from(&capacity, load),
            covers_feed,
            capacity,
        }
    };
    let from = story.verdict.capacity_covers_from;
    [
        step(
            OxidationStep::Ammonia,
            "Ammonia step",
            AMMONIA,
            |r| r.ammonia_capacity_mg_n_per_day,
            from[0],
        ),
        step(
            OxidationStep::Nitrite,
            "Nitrite step",
            NITRITE,
            |r| r.nitrite_capacity_mg_n_per_day,
            from[1],
        ),
    ]
}

impl Step {
    /// Its name in the middle of a sentence.
    pub fn name(&self) -> &'static str {
        match self.step {
            OxidationStep::Ammonia => "ammonia step",
            OxidationStep::Nitrite => "nitrite step",
        }
    }
}

/// First day from which capacity is at least the load, every day to the end.
fn covers_from(capacity: &[Point], load: &[Point]) -> Option<u32> {
    let mut from = None;
    for (could, comes) in capacity.iter().zip(load) {
        from = match (could.1 >= comes.1, from) {
            (true, None) => Some(could.0.floor() as u32),
            (true, since) => since,
            (false, _) => None,
        };
    }
    from
}

fn draw_step(
    story: &Story<'_>,
    weekly: &Weekly<'_>,
    sheet: &mut Sheet,
    step: &Step,
    load: &[Point],
    up: &Axis,
    (top, bottom): (f64, f64),
) -> usize {
    let feed = story.verdict.feed_mg_n_per_day;
    let mut panel = weekly.panel(top, bottom, up.clone());
    let (pen, load_pen) = (Pen::curve(step.colour), Pen::dotted(INK));
    panel.lines = drawable("what comes in", load, up, load_pen);
    panel
        .lines
        .extend(drawable("capacity", &step.capacity, up, pen));
    if up.holds(feed) {
        panel.limits = vec![Limit::new(
            feed_name(story),
            feed,
            weekly.across(),
            Pen::LIMIT,
        )];
    }
    let crossings = crossings(story, step, up);
    panel.uprights = crossings
        .iter()
        .filter(|crossing| crossing.is_load)
        .map(|crossing| Upright {
            at: crossing.at.0,
            pen: Pen::hair(INK),
        })
        .collect();
    let hides = [&step.capacity[..], load]
        .concat()
        .iter()
        .any(|p| !up.holds(p.1));
    let unit = if hides {
        format!(
            "mg N a day; each line is ten times the one below, what is under {} is not drawn",
            up.ticks[0].words
        )
    } else {
        "mg N a day; each line is ten times the one below".to_string()
    };
    let at = sheet.panel(panel, step.title, &unit, 14.0);
    for crossing in &crossings {
        sheet.mark(at, crossing.at, Form::Disc, INK);
    }
    for crossing in crossings {
        let words = if crossing.is_load {
            bold(&crossing.words, INK)
        } else {
            plain(&crossing.words, INK)
        };
        sheet.words_at(at, crossing.at, vec![words]);
    }
    weekly.name_absences(sheet, at);
    name_lines(story, sheet, at, step, load);
    at
}

/// Where the capacity of a step first covers something for good.
struct Crossing {
    at: Point,
    words: String,
    /// Whether it is what comes in, which a line through the panel shows, or the feed alone.
    is_load: bool,
}

fn crossings(story: &Story<'_>, step: &Step, up: &Axis) -> Vec<Crossing> {
    let feed = if story.verdict.feed_is_planned {
        "the planned feed"
    } else {
        "a usual feed"
    };
    let crossing = |day: Option<u32>, what: String, is_load| {
        let at = f64::from(day?) + 0.5;
        let same = step.capacity.iter().find(|p| p.0 == at)?;
        let when = match day? {
            0 => "from the start".to_string(),
            day => format!("from {}", story.calendar().day(day)),
        };
        up.holds(same.1).then(|| Crossing {
            at: *same,
            words: format!("covers {what} {when}"),
            is_load,
        })
    };
    let load = "what comes in".to_string();
    let all = if step.covers_load == step.covers_feed {
        vec![crossing(
            step.covers_load,
            format!("{load} and {feed}"),
            true,
        )]
    } else {
        vec![
            crossing(step.covers_load, load, true),
            crossing(step.covers_feed, feed.to_string(), false),
        ]
    };
    all.into_iter().flatten().collect()
}

fn name_lines(story: &Story<'_>, sheet: &mut Sheet, at: usize, step: &Step, load: &[Point]) {
    let up = sheet.figure.panels[at].up.clone();
    let feed = story.verdict.feed_mg_n_per_day;
    let mut names = Vec::new();
    let mut name = |words: &str, points: &[Point], pen| {
        if let Some(end) = points.last().filter(|p| up.holds(p.1)) {
            names.push(EndName::curve(words, short(end.1), end.1, pen));
        }
    };
    name(step.name(), &step.capacity, Pen::curve(step.colour));
    name("comes in", load, Pen::dotted(INK));
    if up.holds(feed) {
        let words = if story.verdict.feed_is_planned {
            "planned feed"
        } else {
            "usual feed"
        };
        names.push(EndName::limit(words, short(feed), feed, Pen::LIMIT));
    }
    name_ends(sheet, at, &names);
    if step.capacity.iter().all(|p| p.1 <= 0.0) {
        let frame = sheet.figure.panels[at].frame;
        let x = (frame.left + frame.right) / 2.0;
        let words = vec![plain("no microbes of this step", MUTED)];
        sheet.say_if_free(at, words, x, frame.bottom - 16.0);
    }
}

/// The pieces of a curve that lie on the axis; a piece that comes from below starts on the floor.
fn drawable(name: &str, points: &[Point], up: &Axis, pen: Pen) -> Vec<Line> {
    let mut pieces: Vec<Vec<Point>> = vec![Vec::new()];
    for (n, &point) in points.iter().enumerate() {
        if !up.holds(point.1) {
            continue;
        }
        let before = n.checked_sub(1).map(|n| points[n]);
        if let Some(under) = before.filter(|p| !up.holds(p.1)) {
            pieces.push(vec![floor_between(under, point, up)]);
        }
        if let Some(piece) = pieces.last_mut() {
            piece.push(point);
        }
        let after = points.get(n + 1).filter(|p| !up.holds(p.1));
        if let (Some(&under), Some(piece)) = (after, pieces.last_mut()) {
            piece.push(floor_between(under, point, up));
        }
    }
    pieces
        .into_iter()
        .filter(|piece| piece.len() > 1)
        .map(|piece| Line::new(name, piece, pen))
        .collect()
}

/// Where the straight line (on the scale of decades) between a point under the floor and one on
/// the axis meets the floor. Zero has no place on that scale and counts as a tenth of the floor.
fn floor_between(under: Point, over: Point, up: &Axis) -> Point {
    let low = up.place(under.1.max(0.1 * up.low));
    let share = -low / (up.place(over.1) - low);
    (under.0 + share * (over.0 - under.0), up.low)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_the_crossing_that_lasts_counts() {
        let load = [(0.5, 5.0), (1.5, 5.0), (2.5, 5.0), (3.5, 5.0)];
        let could = [(0.5, 6.0), (1.5, 4.0), (2.5, 5.0), (3.5, 9.0)];
        assert_eq!(covers_from(&could, &load), Some(2));
        assert_eq!(covers_from(&could[..2], &load[..2]), None);
    }

    #[test]
    fn a_curve_from_below_starts_on_the_floor() {
        let up = decades([1.0, 100.0], DECADES);
        let curve = [(0.0, 0.0), (1.0, 10.0), (2.0, 100.0)];
        let lines = drawable("capacity", &curve, &up, Pen::curve(INK));
        // zero counts as 0.1: half way, on the scale of decades, from there to 10 is 1
        assert_eq!(lines.len(), 1);
        assert_eq!(lines[0].points[0].1, up.low);
        assert!((lines[0].points[0].0 - 0.5).abs() < 1e-12);
    }
}
