//! Notes: short words beside a curve, at a place that the run says.

use std::ops::RangeInclusive;

use super::course::Course;

use super::trace::Trace;

/// Which of the two drawn steps.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Of {
    /// The step that is told.
    Step,
    /// The step it is held against.
    Base,
}

/// Where on a curve.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Where {
    /// Its highest point.
    Highest,
    /// Its lowest point.
    Lowest,
    /// At the midnight that opens the day that is looked at closely.
    ThatDay,
}

/// Words beside a curve. They are a template as a claim's, with `{value}`, `{day}` and `{time}` of the place.
#[derive(Debug, Clone, Copy)]
pub struct Note {
    /// The curve.
    pub trace: Trace,
    /// Whose.
    pub of: Of,
    /// Where on it.
    pub at: Where,
    /// The words.
    pub words: &'static str,
}

impl Note {
    /// A note.
    pub const fn new(trace: Trace, of: Of, at: Where, words: &'static str) -> Note {
        Note {
            trace,
            of,
            at,
            words,
        }
    }
    /// Its place on a course within some minutes: minute and value.
    pub fn place(
        &self,
        course: &Course,
        trace: usize,
        within: RangeInclusive<u32>,
        that_minute: u32,
    ) -> Option<(u32, f64)> {
        let values = course.values.get(trace)?;
        let points = course.minutes.iter().copied().zip(values.iter().copied());
        let points = points.filter(|(minute, _)| within.contains(minute));
        match self.at {
            // the earliest of equal ones
            Where::Highest => points.rev().max_by(|a, b| a.1.total_cmp(&b.1)),
            Where::Lowest => points.min_by(|a, b| a.1.total_cmp(&b.1)),
            Where::ThatDay => Some((that_minute, course.at(trace, that_minute)?)),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_note_finds_its_place_on_the_curve() {
        let course = Course {
            minutes: vec![0, 10, 20, 30],
            values: vec![vec![1.0, 5.0, 5.0, 0.5]],
        };
        let place = |at| Note::new(Trace::Ammonia, Of::Step, at, "").place(&course, 0, 0..=30, 15);
        assert_eq!(place(Where::Highest), Some((10, 5.0)));
        assert_eq!(place(Where::Lowest), Some((30, 0.5)));
        assert_eq!(place(Where::ThatDay), Some((15, 5.0)));
        let note = Note::new(Trace::Ammonia, Of::Step, Where::Lowest, "");
        assert_eq!(note.place(&course, 0, 5..=20, 15), Some((10, 5.0)));
    }
}
