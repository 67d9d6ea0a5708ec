//! Notes with their places: what stands beside the curves of a step.

use crate::analysis::lesson::note::{Note, Of};
use crate::analysis::lesson::taught::Taught;
use crate::analysis::lesson::trace::Trace;
use crate::base::clock::{DAY, TimeOfDay};
use crate::output::chart::words::number;

use super::words::Telling;
use crate::output::text::words::capital;

/// A note at its place.
#[derive(Debug, Clone, PartialEq)]
pub struct Placed {
    /// The panel.
    pub panel: usize,
    /// The curve.
    pub trace: Trace,
    /// Whether it is of the step others are held against.
    pub is_of_base: bool,
    /// Minutes since midnight of day 0.
    pub minute: u32,
    /// The value there.
    pub value: f64,
    /// The words.
    pub words: String,
}

/// The notes of a step. What is said of the base is left out where the step is the base.
pub fn placed(taught: &Taught<'_>, step: usize) -> Vec<Placed> {
    let notes = taught.lesson.notes.iter();
    let shown = notes.filter(|note| note.of == Of::Step || step != taught.lesson.base);
    shown
        .filter_map(|note| place_of(taught, step, note))
        .collect()
}

fn place_of(taught: &Taught<'_>, step: usize, note: &Note) -> Option<Placed> {
    let lesson = taught.lesson;
    let of = match note.of {
        Of::Step => step,
        Of::Base => lesson.base,
    };
    let trace = lesson.traces().iter().position(|&t| t == note.trace)?;
    let holds = |panel: &crate::analysis::lesson::trace::Panel| panel.traces.contains(&note.trace);
    let panel = lesson.panels.iter().position(holds)?;
    let within = lesson.window.noted(lesson.day);
    let (minute, value) = note.place(&taught.courses[of], trace, within, taught.that_minute())?;
    let last_day = taught.steps[of].case.input.last_day;
    let own = |name: &str| match name {
        "value" => Some(number(value, note.trace.digits())),
        // the closing midnight belongs to the last day
        "day" => Some((minute / DAY).min(last_day).to_string()),
        "time" => Some(TimeOfDay::of(minute).to_string()),
        _ => None,
    };
    let words = Telling::of(taught, step).filled(note.words, own).ok()?;
    Some(Placed {
        panel,
        trace: note.trace,
        is_of_base: note.of == Of::Base,
        minute,
        value,
        words: capital(&words),
    })
}
