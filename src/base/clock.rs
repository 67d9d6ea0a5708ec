//! Time as whole minutes of civil time since midnight of day 0, so that switches are exact.

use std::fmt;

/// Minutes in an hour.
pub const HOUR: u32 = 60;
/// Minutes in a day.
pub const DAY: u32 = 24 * HOUR;

/// Days as a decimal number, from whole minutes.
pub fn days(minute: u32) -> f64 {
    f64::from(minute) / f64::from(DAY)
}

/// A time of day, in minutes since midnight (0 to 1440; 1440 is the closing midnight).
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct TimeOfDay(pub u32);

impl TimeOfDay {
    /// The time `hour:minute`.
    pub const fn at(hour: u32, minute: u32) -> TimeOfDay {
        TimeOfDay(hour * HOUR + minute)
    }
    /// The time of day of a minute counted from midnight of day 0.
    pub fn of(minute: u32) -> TimeOfDay {
        TimeOfDay(minute % DAY)
    }
    /// Hours as a decimal number.
    pub fn hours(self) -> f64 {
        f64::from(self.0) / f64::from(HOUR)
    }
}

impl fmt::Display for TimeOfDay {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:02}:{:02}", self.0 / HOUR, self.0 % HOUR)
    }
}

/// A daily window from `on` until `off`; past midnight allowed; `on == off` means never.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Window {
    /// Switched on at this time.
    pub on: TimeOfDay,
    /// Switched off at this time; the instant itself is already off.
    pub off: TimeOfDay,
}

impl Window {
    /// Never on.
    pub const NEVER: Window = Window {
        on: TimeOfDay(0),
        off: TimeOfDay(0),
    };

    /// Always on.
    pub const ALL_DAY: Window = Window {
        on: TimeOfDay(0),
        off: TimeOfDay(DAY),
    };

    /// Whether the window is on at a time of day.
    pub fn holds(self, time: TimeOfDay) -> bool {
        if self.on <= self.off {
            self.on <= time && time < self.off
        } else {
            time >= self.on || time < self.off
        }
    }
    /// How many minutes a day the window is on.
    pub fn minutes(self) -> u32 {
        if self.on <= self.off {
            self.off.0 - self.on.0
        } else {
            self.off.0 + DAY - self.on.0
        }
    }
}

impl fmt::Display for Window {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}..{}", self.on, self.off)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_window_may_run_past_midnight() {
        let night = Window {
            on: TimeOfDay::at(20, 0),
            off: TimeOfDay::at(8, 0),
        };
        assert!(night.holds(TimeOfDay::at(20, 0)) && night.holds(TimeOfDay::at(0, 0)));
        assert!(
            !night.holds(TimeOfDay::at(8, 0)),
            "the instant of switching off is off"
        );
        assert_eq!(night.minutes(), 12 * HOUR);
        assert!(!Window::NEVER.holds(TimeOfDay(0)));
        assert!(Window::ALL_DAY.holds(TimeOfDay(0)) && Window::ALL_DAY.holds(TimeOfDay(DAY - 1)));
        assert_eq!(Window::ALL_DAY.minutes(), DAY);
    }
}
