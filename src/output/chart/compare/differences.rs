//! Every other plan against the first one, tank by tank: a small panel per figure, a row per plan.

use crate::analysis::compare::Comparison;
use crate::analysis::compare::effect::Effect;
use crate::analysis::compare::strategy::Strategy;
use crate::analysis::figure_list::Better;
use crate::output::chart::axis::{Axis, Scale, about};
use crate::output::chart::figure::{Anchor, Figure, Form, Label, Line, Mark, Panel, Span, Upright};
use crate::output::chart::fonts::Face;
use crate::output::chart::rect::Rect;
use crate::output::chart::sheet::{LEFT, Sheet, bold, plain, small};
use crate::output::chart::style::{INK, MUTED, Pen, SENTENCE};
use crate::output::chart::words::{number, signed};

use super::differences_words::{sentences, titles};
use super::drawn::{DRAWN, Drawn};
use super::rows::folded;

/// Left edges of the columns, and their width.
const LEFTS: [f64; 4] = [250.0, 484.0, 718.0, 952.0];
const WIDTH: f64 = 184.0;
/// Tops of the two bands of panels, and room for a band.
const TOP: f64 = 170.0;
const BETWEEN: f64 = 106.0;
/// Room for one plan: as little as the words over its bar need, as much as looks well.
const ROW: [f64; 2] = [36.0, 130.0];
/// Room for all plans of one band.
const ROOM: f64 = 262.0;
/// From the middle of a row up to the words, and down to the bar.
const WORDS_UP: f64 = 3.0;
const BAR_DOWN: f64 = 9.0;
/// Clear room about the words, pixels.
const CLEAR: f64 = 4.0;
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
        let mut panel = Panel::new(frame, across(&effects), UP);
        panel.title = format!("{} against {}, {}", self.title, first.key, self.unit);
        panel.uprights = vec![Upright {
            at: 0.0,
            pen: Pen::hair(INK),
        }];
        let mut words = Vec::new();
        for (row, effect) in effects.iter().enumerate() {
            let Some(effect) = effect else { continue };
            let y = middle(&frame, (row, others.len()));
            self.bar(&mut panel, effect, y + BAR_DOWN, &others[row].key);
            words.push(self.told(&panel, effect, y - WORDS_UP));
        }
        let axis = panel.across.clone();
        sheet.figure.panels.push(panel);
        sheet.figure.labels.extend(words);
        let at = sheet.figure.panels.len() - 1;
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

    /// The thin and the thick bar with the disc at the mean.
    fn bar(&self, panel: &mut Panel, effect: &Effect, y: f64, key: &str) {
        let up = (panel.frame.bottom - y) / panel.frame.height();
        let [p05, p25, _, p75, p95] = effect.points;
        let bar = |of_100: &str, from: f64, to: f64, width: f64| {
            let name = format!("{key}, {of_100} of 100 tanks");
            Line::new(
                &name,
                vec![(from, up), (to, up)],
                Pen::curve(self.colour).wide(width),
            )
        };
        panel.lines.push(bar("90", p05, p95, 1.4));
        panel.lines.push(bar("50", p25, p75, 5.0));
        panel.marks.push(Mark {
            at: (effect.mean, up),
            form: Form::Disc,
            colour: self.colour,
        });
    }

    /// `−3.1 ± 0.4` over the disc, kept inside the frame and off the line of the first plan.
    fn told(&self, panel: &Panel, effect: &Effect, baseline: f64) -> Label {
        let words = in_words(effect);
        let label = |x: f64| Label::new(vec![bold(&words, INK)], Anchor::Middle, x, baseline);
        let half = label(0.0).space.width() / 2.0 + CLEAR;
        let (left, right) = (panel.frame.left + half, panel.frame.right - half);
        let (wanted, line) = (panel.x(effect.mean), panel.x(0.0));
        let beside = match (wanted - line).abs() >= half {
            true => wanted,
            false if wanted < line => line - half,
            false => line + half,
        };
        let fits = |x: &f64| (left..=right).contains(x);
        let places = [beside, line - half, line + half];
        let x = places.into_iter().find(fits).unwrap_or(wanted);
        label(x.clamp(left, right))
    }
}

/// The mean with its standard error, both to the place in which the error begins to count.
fn in_words(effect: &Effect) -> String {
    let error = effect.standard_error;
    let is_sure = error == 0.0;
    let digits = match if is_sure {
        effect.mean.abs() / 30.0
    } else {
        error
    } {
        size if size >= 2.95 => 0,
        size if size >= 0.295 => 1,
        _ => 2,
    };
    match is_sure {
        true => signed(effect.mean, digits),
        false => format!(
            "{} ± {}",
            signed(effect.mean, digits),
            number(error, digits)
        ),
    }
}

/// An axis that holds every bar and the line of the first plan.
fn across(effects: &[Option<Effect>]) -> Axis {
    let all = effects.iter().flatten();
    let values = all.flat_map(|effect| effect.points.into_iter().chain([effect.mean]));
    let (low, high) = values.fold((0.0_f64, 0.0_f64), |(l, h), v| (l.min(v), h.max(v)));
    about(low, high, STEPS)
}

/// Plans from top to bottom: heights have no names.
const UP: Axis = Axis {
    low: 0.0,
    high: 1.0,
    scale: Scale::Even,
    ticks: Vec::new(),
};
