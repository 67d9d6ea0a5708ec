//! What a study looks at: the figures of a tank and its ready day. Defined once; `explain milestones` lists them.

use crate::analysis::figure_list::{FIGURES, FigureOf};
use crate::analysis::figures::Figures;

/// What came of a run, as milestones are read off it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Seen {
    /// Its figures, as planned.
    pub figures: Figures,
    /// First day from which ripening limits and capacity hold, without animals.
    pub ready_day: Option<u32>,
    /// First day from which the ripening limits hold, whatever the capacity.
    pub quiet_from: Option<u32>,
}

/// Milestones of a study that names none.
pub const USUAL: [&str; 5] = [
    "ready_day",
    "ready_by",
    "tan_peak_mg_n_per_l",
    "nitrite_peak_mg_n_per_l",
    "oxygen_low_mg_per_l",
];

/// One milestone of a run.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Milestone {
    /// Name with unit, as in the tables; it stays once published.
    pub name: &'static str,
    /// Unit; `1` for days, pH and yes or no.
    pub unit: &'static str,
    /// What it is.
    pub what: &'static str,
    /// What it is in a few words.
    pub short: &'static str,
    read: Read,
}

/// Where a milestone is read off.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Read {
    /// A figure of the tank as planned.
    Figure(FigureOf),
    /// The ready day, on ripening limits and capacity.
    ReadyDay,
    /// Whether ready by the day of the study.
    ReadyBy,
    /// The first day from which the ripening limits alone hold.
    QuietFrom,
}

/// Milestones of the ready day, which stand first.
const OF_READY: [Milestone; 3] = [
    Milestone {
        name: "ready_day",
        unit: "1",
        what: "first day from which the ripening limits and the capacity hold; the day after the last where there is none",
        short: "ready day",
        read: Read::ReadyDay,
    },
    Milestone {
        name: "ready_by",
        unit: "1",
        what: "1 when ready by the day `ready_by` of the study, else 0",
        short: "readiness in time",
        read: Read::ReadyBy,
    },
    Milestone {
        name: "quiet_from_day",
        unit: "1",
        what: "first day from which the ripening limits hold, whatever the capacity; the day after the last where there is none",
        short: "first quiet day",
        read: Read::QuietFrom,
    },
];

/// All milestones, in the order of the tables.
pub fn all() -> impl Iterator<Item = Milestone> {
    let figures = FIGURES.iter().map(|figure| Milestone {
        name: figure.name,
        unit: figure.unit,
        what: figure.what,
        short: figure.short,
        read: Read::Figure(*figure),
    });
    OF_READY.into_iter().chain(figures)
}

impl Milestone {
    /// The milestone of a name.
    pub fn named(name: &str) -> Option<Milestone> {
        all().find(|milestone| milestone.name == name)
    }

    /// Whether it is read off the tank without animals, to the end of the look-ahead.
    pub fn is_of_ripening(&self) -> bool {
        !matches!(self.read, Read::Figure(_))
    }

    /// Whether it is 1 or 0.
    pub fn is_yes_or_no(&self) -> bool {
        matches!(self.read, Read::ReadyBy)
    }

    /// Whether it is a day that may lie beyond the run.
    pub fn is_a_ready_day(&self) -> bool {
        matches!(self.read, Read::ReadyDay | Read::QuietFrom)
    }

    /// Reads it off; a day beyond the run is the day after the last, a figure that there is none of is 0 (a jump
    /// where no water is changed).
    pub fn of(&self, seen: &Seen, ready_by: u32, last_day: u32) -> f64 {
        let day = |day: Option<u32>| f64::from(day.unwrap_or(last_day + 1));
        match &self.read {
            Read::Figure(figure) => (figure.read)(&seen.figures).unwrap_or(0.0),
            Read::ReadyDay => day(seen.ready_day),
            Read::ReadyBy => f64::from(u8::from(seen.ready_day.is_some_and(|day| day <= ready_by))),
            Read::QuietFrom => day(seen.quiet_from),
        }
    }
}
