//! Every other plan against the first one, tank by tank: a small panel per figure, a row per plan.

use crate::analysis::compare::Comparison;
use crate::analysis::compare::effect::Effect;
use crate::analysis::compare::strategy::Strategy;
use crate::analysis::figure_list::Better;
use crate::output::chart::axis::{Axis, Scale, about};
use crate::output::chart::figure::{Anchor, Figure, Panel, Span};
use crate::output::chart::fonts::Face;
use crate::output::chart::rect::Rect;
use crate::output::chart::sheet::{LEFT, Sheet, bold, plain, small};
use crate::output::chart::style::{INK, MUTED, SENTENCE};

use super::differences_words::{sentences, titles};
use super::drawn::{DRAWN, Drawn};
use super::range;
use super::rows::folded;

/// Left edges of the columns, and their width.
const LEFTS: [f64; 5] = [250.0, 435.0, 620.0, 805.0, 990.0];
const WIDTH: f64 = 148.0;
/// Tops of the two bands of panels, and room for a band.
const TOP: f64 = 170.0;
const BETWEEN: f64 = 106.0;
/// Room for one plan: as little as the words over its bar need, as much as looks well.
const ROW: [f64; 2] = [36.0, 130.0];
/// Room for all plans of one band.
const ROOM: f64 = 262.0;
/// Most steps of an axis.
const STEPS: usize = 3;

/// The chart.
pub fn figure(comparison: &Comparison<'_>) -> Figure {
    let mut sheet = Sheet::new("differences", &titles(comparison), &sentences(comparison));
    let key = "disc: mean of the tanks; thick: 50 of 100 tanks, thin: 90 of 100; dark line: as the first plan";
    sheet.say(vec![plain(key, MUTED)], Anchor::Start, LEFT, 102.0);
    let others = &comparison.strategies[1..];
    for (place, one) in DRAWN.iter().enumerate() {
        one.draw(&mut sheet, comparison, frame(place, others.len()));
    }
    for band in 0..DRAWN.len() / LEFTS.len() {
        let frame = frame(band * LEFTS.len(), others.len());
        for (row, strategy) in others.iter().enumerate() {
            name(&mut sheet, strategy, &frame, (row, others.len()));
        }
    }
    sheet.figure
}

fn frame(place: usize, plans: usize) -> Rect {
    let (band, column) = (place / LEFTS.len(), place % LEFTS.len());
    let row = (ROOM / plans as f64).clamp(ROW[0], ROW[1]);
    let height = row * plans as f64;
    let top = TOP + band as f64 * (height + BETWEEN);
    Rect::new(LEFTS[column], top, LEFTS[column] + WIDTH, top + height)
}

/// The middle of the room of a plan.
fn middle(frame: &Rect, (row, plans): (usize, usize)) -> f64 {
    frame.top + frame.height() * (row as f64 + 0.5) / plans as f64
}

fn name(sheet: &mut Sheet, strategy: &Strategy<'_>, frame: &Rect, row: (usize, usize)) {
    let lines = folded(&strategy.key);
    let first = middle(frame, row) + 4.5 - 8.0 * (lines.len() - 1) as f64;
    for (place, line) in lines.iter().enumerate() {
        let baseline = first + 16.0 * place as f64;
        sheet.say(vec![bold(line, INK)], Anchor::Start, LEFT, baseline);
    }
}

impl Drawn {
    fn draw(&self, sheet: &mut Sheet, comparison: &Comparison<'_>, frame: Rect) {
        let (first, last_day) = (&comparison.strategies[0], comparison.last_day);
        let others = &comparison.strategies[1..];
        let effect = |with: &Strategy<'_>| {
            Effect::of(&first.members, &with.members, |told| {
                (self.read)(told, last_day)
            })
        };
        let effects: Vec<Option<Effect>> = others.iter().map(effect).collect();
        let panel = Panel::new(frame, across(&effects), UP);
        let axis = panel.across.clone();
        sheet.figure.panels.push(panel);
        let at = sheet.figure.panels.len() - 1;
        let mut told = Vec::new();
        for (row, effect) in effects.iter().enumerate() {
            let Some(effect) = effect else { continue };
            let middle = middle(&frame, (row, others.len()));
            range::draw(sheet, at, effect, middle, self.colour);
            told.push(format!("{} {}", others[row].key, range::in_words(effect)));
        }
        let (title, unit, told) = (self.title, self.unit, told.join("; "));
        sheet.figure.panels[at].title = format!("{title} against {}, {unit}: {told}", first.key);
        sheet.ticks_below(at, &axis);
        self.head(sheet, &frame);
    }

    fn head(&self, sheet: &mut Sheet, frame: &Rect) {
        let title = Span::new(self.title, Face::SemiBold, SENTENCE, INK);
        let words = vec![title, plain(self.unit, MUTED)];
        sheet.say(words, Anchor::Start, frame.left, frame.top - 28.0);
        let better = match self.better {
            Better::More => "more is better",
            _ => "less is better",
        };
        sheet.say(
            vec![small(better, MUTED)],
            Anchor::Start,
            frame.left,
            frame.top - 11.0,
        );
    }
}

/// An axis that holds every bar and the line of the first plan.
fn across(effects: &[Option<Effect>]) -> Axis {
    let all = effects.iter().flatten();
    let values = all.flat_map(|effect| effect.points.into_iter().chain([effect.mean]));
    let (low, high) = values.fold((0.0_f64, 0.0_f64), |(l, h), v| (l.min(v), h.max(v)));
    match low == high {
        // plans that are alike stand in the middle of an axis of one unit either way
        true => about(-1.0, 1.0, STEPS),
        false => about(low, high, STEPS),
    }
}

/// Plans from top to bottom: heights have no names.
const UP: Axis = Axis {
    low: 0.0,
    high: 1.0,
    scale: Scale::Even,
    ticks: Vec::new(),
};
