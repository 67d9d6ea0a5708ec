//! Mean size of the effects of each input against how much they differ: far right matters, high up bends or works
//! with others.

use crate::analysis::study::findings::Found;
use crate::analysis::study::findings::index::Kind;
use crate::analysis::study::findings::judged::judged;
use crate::output::chart::axis::from_zero;
use crate::output::chart::figure::{Anchor, Figure, Line, Panel, Shape};
use crate::output::chart::key::Key;
use crate::output::chart::lever_bars::RANGE;
use crate::output::chart::notes::{height_of, write};
use crate::output::chart::rect::{Point, Rect};
use crate::output::chart::sheet::{LEFT, RIGHT, Sheet, bold, plain, small};
use crate::output::chart::style::{INK, MUTED, Pen, WHITE};
use crate::output::study::Story;
use crate::output::study::words::unit;

use super::hues::hue;
use super::titles;

/// Upper edge of the panel; its lower edge lies this far above the notes; the last base line.
const TOP: f64 = 166.0;
const ABOVE_NOTES: f64 = 74.0;
const LAST_NOTE: f64 = 876.0;
/// From the frame up to the title of the panel, and down to the name of the axis.
const ABOVE: f64 = 16.0;
const BELOW: f64 = 46.0;
/// Steps of the axes; that of the spread reaches no less far than a share of the largest mean.
const STEPS: usize = 6;
const LEAST: f64 = 0.2;
/// Radius of a point and of its ring.
const POINT: f64 = 5.5;
const RING: f64 = 7.0;
/// Most points that are named, and the share of the largest from which they are.
const NAMED: usize = 14;
const NAMED_FROM: f64 = 0.04;
/// Where the key of the groups stands.
const GROUPS: f64 = 1062.0;
const LEADING: f64 = 24.0;

/// The chart of a milestone; none without effects.
pub fn figure(story: &Story<'_>, found: &Found) -> Option<Figure> {
    found.of(Kind::MuStar).next()?;
    let judged = judged(found)?;
    let titles = titles::strongest(story, found, &judged);
    let stem = format!("effects-{}", found.milestone.name);
    let mut sheet = Sheet::new(&stem, &titles, &titles::sentences(story, found, &judged));
    sheet.key(&[
        Key::Line(RANGE, "mean size, 95 of 100 times"),
        Key::Line(
            Pen::reference(MUTED),
            "as much spread as mean: above it, it bends or works with others",
        ),
    ]);
    let notes = titles::limits(story, found);
    let bottom = LAST_NOTE - height_of(&notes) - ABOVE_NOTES;
    let panel = panel(found, bottom);
    let unit = unit(&found.milestone);
    let at = sheet.panel(panel, "Spread of the effects (σ)", unit.trim(), ABOVE);
    let axis = sheet.figure.panels[at].across.clone();
    sheet.ticks_below(at, &axis);
    let words = vec![
        bold("Mean size of the effect from end to end (µ*)", INK),
        plain(unit.trim(), MUTED),
    ];
    sheet.say(words, Anchor::End, RIGHT, bottom + BELOW);
    points(&mut sheet, at, story, found);
    groups(&mut sheet, story);
    write(&mut sheet, &notes, LAST_NOTE);
    Some(sheet.figure)
}

fn panel(found: &Found, bottom: f64) -> Panel {
    let sizes = found
        .of(Kind::MuStar)
        .flat_map(|index| index.ends().into_iter().chain([index.value]));
    let spreads = found.of(Kind::Sigma).map(|index| index.value);
    let largest = found
        .of(Kind::MuStar)
        .map(|index| index.value)
        .fold(0.0, f64::max);
    let frame = Rect::new(LEFT + 16.0, TOP, RIGHT, bottom);
    let (across, up) = (
        from_zero(sizes, 0.0, STEPS),
        from_zero(spreads, LEAST * largest, STEPS),
    );
    let mut panel = Panel::new(frame, across, up);
    let end = panel.across.high.min(panel.up.high);
    let same = vec![(0.0, 0.0), (end, end)];
    panel.lines.push(Line::new(
        "as much spread as mean",
        same,
        Pen::reference(MUTED),
    ));
    panel
}

/// Each input at its place with its interval; the strongest with their names.
fn points(sheet: &mut Sheet, at: usize, story: &Story<'_>, found: &Found) {
    let mut placed: Vec<(usize, Point, [f64; 2])> = found
        .of(Kind::MuStar)
        .map(|index| {
            let spread = found
                .at(Kind::Sigma, index.factor)
                .map_or(0.0, |sigma| sigma.value);
            (index.factor, (index.value, spread), index.ends())
        })
        .collect();
    placed.sort_by(|a, b| b.1.0.total_cmp(&a.1.0));
    for (_, (_, spread), ends) in &placed {
        let ends = ends.map(|end| (end, *spread)).to_vec();
        sheet.figure.panels[at]
            .lines
            .push(Line::new("interval", ends, RANGE));
    }
    for (factor, place, _) in placed.iter().rev() {
        let place = sheet.figure.panels[at].at(*place);
        let colour = hue(story.findings.factors[*factor].group);
        sheet.shape(Shape::Disc(place, RING, WHITE));
        sheet.shape(Shape::Disc(place, POINT, colour));
    }
    // those that may be ignored lie on a heap at the foot and stand in the table
    let largest = placed.first().map_or(0.0, |(_, place, _)| place.0);
    let named = placed
        .into_iter()
        .filter(|(_, place, _)| place.0 >= NAMED_FROM * largest);
    for (factor, place, _) in named.take(NAMED) {
        let name = &story.findings.factors[factor].name;
        sheet.words_at(at, place, vec![bold(name, INK)]);
    }
}

/// A sign and a word per group, right of the panel.
fn groups(sheet: &mut Sheet, story: &Story<'_>) {
    for (place, group) in story.study.groups().into_iter().enumerate() {
        let y = TOP + 8.0 + LEADING * place as f64;
        sheet.shape(Shape::Disc((GROUPS, y), POINT, hue(group)));
        sheet.say(
            vec![small(group.word(), MUTED)],
            Anchor::Start,
            GROUPS + 14.0,
            y + 4.5,
        );
    }
}
