//! What a study looks at: the figures of a tank and its ready day. Defined once; `explain milestones` lists them.

use crate::analysis::figure_list::{FIGURES, FigureOf};
use crate::analysis::figures::Figures;
use crate::analysis::milestones::Extreme;

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
#[derive(Debug, Clone, Copy)]
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

impl PartialEq for Milestone {
    fn eq(&self, other: &Milestone) -> bool {
        self.name == other.name
    }
}

/// Where a milestone is read off.
#[derive(Debug, Clone, Copy)]
enum Read {
    /// A figure of the tank as planned.
    Figure(FigureOf),
    /// The ready day, on ripening limits and capacity.
    ReadyDay,
    /// Whether ready by the day of the study.
    ReadyBy,
    /// The first day from which the ripening limits alone hold.
    QuietFrom,
    /// The day of an extreme of the tank as planned; 0 where there is none.
    DayOf(fn(&Figures) -> Option<Extreme>),
}

/// Milestones of the ready day, which stand first.
const OF_READY: [Milestone; 3] = [
    Milestone {
        name: "ready_day",
        unit: "1",
        what: "first day from which the ripening limits and the capacity hold, without animals; the day after the last where there is none",
        short: "ready day",
        read: Read::ReadyDay,
    },
    Milestone {
        name: "ready_by",
        unit: "1",
        what: "1 when ready by the day `ready_by` of the study, without animals, else 0",
        short: "readiness in time",
        read: Read::ReadyBy,
    },
    Milestone {
        name: "quiet_from_day",
        unit: "1",
        what: "first day from which the ripening limits hold, without animals and whatever the capacity; the day after the last where there is none",
        short: "first quiet day",
        read: Read::QuietFrom,
    },
];

macro_rules! days {
    ($($name:ident $short:literal $what:literal $of:expr;)*) => {
        /// Days of highest and lowest values that are no figures, which stand last.
        const DAYS: [Milestone; [$($short),*].len()] = [$(Milestone {
            name: stringify!($name),
            unit: "1",
            what: $what,
            short: $short,
            read: Read::DayOf($of),
        }),*];
    };
}

days! {
    free_ammonia_peak_day "day of the free NH3 peak" "day of the highest free ammonia" |f| Some(f.free_ammonia_peak);
    nitrate_peak_day "day of the nitrate peak" "day of the highest nitrate" |f| Some(f.nitrate_peak);
    oxygen_low_day "day of the worst night" "day of the lowest oxygen" |f| Some(f.oxygen_low);
    co2_high_day "day of the highest CO2" "day of the highest carbon dioxide" |f| Some(f.co2_high);
    kh_low_day "day of the lowest KH" "day of the lowest KH" |f| Some(f.kh_low);
    temperature_jump_day "day of the temperature jump" "day of the largest change of temperature at a water change; 0 without a change" |f| f.temperature_jump;
    ph_jump_day "day of the pH jump" "day of the largest change of pH at a water change; 0 without a change" |f| f.ph_jump;
}

/// All milestones, in the order of the tables.
pub fn all() -> impl Iterator<Item = Milestone> {
    let figures = FIGURES.iter().map(|figure| Milestone {
        name: figure.name,
        unit: figure.unit,
        what: figure.what,
        short: figure.short,
        read: Read::Figure(*figure),
    });
    OF_READY.into_iter().chain(figures).chain(DAYS)
}

impl Milestone {
    /// The milestone of a name.
    pub fn named(name: &str) -> Option<Milestone> {
        all().find(|milestone| milestone.name == name)
    }

    /// Whether it is read off the tank without animals, to the end of the look-ahead.
    pub fn is_of_ripening(&self) -> bool {
        !matches!(self.read, Read::Figure(_) | Read::DayOf(_))
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
            Read::DayOf(extreme) => {
                extreme(&seen.figures).map_or(0.0, |extreme| f64::from(extreme.day()))
            }
        }
    }
}
