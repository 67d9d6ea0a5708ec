//! What the page of a lesson draws, and the same as numbers for its script.

use serde_json::{Value, json};

use crate::analysis::lesson::claim::Unsupported;
use crate::analysis::lesson::taught::Taught;
use crate::analysis::lesson::trace::Trace;
use crate::base::clock::DAY;
use crate::output::chart::axis::Axis;
use crate::output::chart::lesson::axis;
use crate::output::chart::lesson::foot::Foot;
use crate::output::chart::words::number;
use crate::output::lesson::notes::placed;
use crate::output::lesson::words::told;
use crate::output::number::{decimal_day, six_digits};

use super::lesson::unbroken;
use super::marks::{Mark, marks};
use super::scale::Scale;

/// All that is drawn of a lesson.
#[derive(Debug)]
pub struct Drawn<'a> {
    /// The lesson.
    pub taught: &'a Taught<'a>,
    /// The upright axis of each panel, the same for all steps.
    pub axes: Vec<Axis>,
    /// The axis of time.
    pub across: Axis,
    /// Both of each panel.
    pub scales: Vec<Scale>,
    /// The marks of each step.
    pub marks: Vec<Vec<Mark>>,
    /// When water is changed in each step, days.
    pub changes: Vec<Vec<f64>>,
    /// When it is dark, days.
    pub dark: Vec<(f64, f64)>,
}

impl<'a> Drawn<'a> {
    /// What is drawn of a lesson.
    pub fn of(taught: &'a Taught<'a>) -> Drawn<'a> {
        let lesson = taught.lesson;
        let steps: Vec<usize> = (0..lesson.steps.len()).collect();
        let across = Foot::of(taught, lesson.shown).axis();
        let axes: Vec<Axis> = (0..lesson.panels.len())
            .map(|place| axis(taught, place, &steps))
            .collect();
        let scale = |up: &Axis| Scale {
            across: (across.low, across.high),
            up: (up.low, up.high),
        };
        let scales: Vec<Scale> = axes.iter().map(scale).collect();
        Drawn {
            marks: (steps.iter())
                .map(|&step| marks(&placed(taught, step), &scales))
                .collect(),
            changes: (steps.iter())
                .map(|&step| Foot::of(taught, step).changes())
                .collect(),
            dark: Foot::of(taught, lesson.shown).dark(),
            taught,
            axes,
            across,
            scales,
        }
    }
    /// The place of a curve in the courses.
    pub fn at(&self, trace: Trace) -> usize {
        let traces = self.taught.lesson.traces();
        traces.iter().position(|&t| t == trace).unwrap_or(0)
    }
    /// The moment that is read off first.
    pub fn that_minute(&self) -> u32 {
        self.taught.that_minute()
    }
    /// Whether hours are drawn, not weeks.
    pub fn is_by_the_hour(&self) -> bool {
        self.taught.lesson.window.is_by_the_hour()
    }
    /// A panel of a step in words, for those who hear it.
    pub fn described(&self, step: usize, place: usize) -> String {
        let lesson = self.taught.lesson;
        let of = |step: usize, trace: Trace| {
            let course = &self.taught.courses[step];
            let values = &course.values[self.at(trace)];
            let points = || course.minutes.iter().zip(values);
            let high = points().rev().max_by(|a, b| a.1.total_cmp(b.1));
            let low = points().min_by(|a, b| a.1.total_cmp(b.1));
            let (Some(high), Some(low), Some(end)) = (high, low, values.last()) else {
                return String::new();
            };
            let last_day = self.taught.steps[step].case.input.last_day;
            let words = |value: f64| number(value, trace.digits());
            format!(
                "{}, {}: highest {} on day {}, lowest {} on day {}, {} at the end.",
                trace.name(),
                lesson.steps[step].label,
                words(*high.1),
                (high.0 / DAY).min(last_day),
                words(*low.1),
                (low.0 / DAY).min(last_day),
                words(*end)
            )
        };
        let traces = lesson.panels[place].traces.iter();
        let mut words: Vec<String> = traces.clone().map(|&trace| of(step, trace)).collect();
        if step != lesson.base {
            words.extend(traces.map(|&trace| of(lesson.base, trace)));
        }
        words.join(" ")
    }
    /// Everything as numbers and words, for the script of the page.
    ///
    /// # Errors
    /// When the numbers of a step support no sentence.
    pub fn data(&self) -> Result<Value, Unsupported> {
        let lesson = self.taught.lesson;
        let steps: Result<Vec<Value>, Unsupported> = (0..lesson.steps.len())
            .map(|step| self.step(step))
            .collect();
        let traces = lesson.traces();
        let panel = |(scale, panel): (&Scale, &crate::analysis::lesson::trace::Panel)| {
            let of: Vec<usize> = panel.traces.iter().map(|&trace| self.at(trace)).collect();
            json!({ "low": scale.up.0, "high": scale.up.1, "traces": of })
        };
        let trace = |t: &Trace| json!({ "name": t.name(), "unit": t.unit(), "digits": t.digits() });
        Ok(json!({
            "base": lesson.base,
            "hours": self.is_by_the_hour(),
            "first": self.across.low,
            "last": self.across.high,
            "panels": self.scales.iter().zip(lesson.panels).map(panel).collect::<Vec<_>>(),
            "traces": traces.iter().map(trace).collect::<Vec<_>>(),
            "steps": steps?,
        }))
    }
    fn step(&self, step: usize) -> Result<Value, Unsupported> {
        let (headline, sentences) = told(self.taught, step)?;
        let course = &self.taught.courses[step];
        let written = |text: String| text.parse::<f64>().unwrap_or_default();
        let days = course
            .minutes
            .iter()
            .map(|&minute| written(decimal_day(minute)));
        let curve = |values: &Vec<f64>| -> Vec<f64> {
            values
                .iter()
                .map(|&value| written(six_digits(value)))
                .collect()
        };
        let mark = |mark: &Mark| {
            let hundredth = |share: f64| (share * 10_000.0).round() / 100.0;
            json!([
                mark.panel,
                hundredth(mark.at.0),
                hundredth(mark.at.1),
                mark.words,
                mark.leader()
            ])
        };
        let panels = 0..self.scales.len();
        Ok(json!({
            "label": self.taught.lesson.steps[step].label,
            "headline": format!("{}.", unbroken(&headline)),
            "sentences": sentences.iter().map(|words| unbroken(words)).collect::<Vec<_>>(),
            "days": days.collect::<Vec<_>>(),
            "curves": course.values.iter().map(curve).collect::<Vec<_>>(),
            "changes": self.changes[step].iter().map(|day| (day * 1e4).round() / 1e4).collect::<Vec<_>>(),
            "marks": self.marks[step].iter().map(mark).collect::<Vec<_>>(),
            "described": panels.map(|place| self.described(step, place)).collect::<Vec<_>>(),
        }))
    }
}
