//! Timers: what is switched at a minute, and the minutes at which a day's switches change.

use crate::base::clock::{DAY, TimeOfDay, Window};

use super::input::TimerLine;

/// The line of a timer that is valid on a day, if any has begun.
pub fn line_on(lines: &[TimerLine], day: u32) -> Option<&TimerLine> {
    lines
        .iter()
        .filter(|line| line.from_day <= day)
        .max_by_key(|line| line.from_day)
}

/// The value of a timer at a minute; nothing while it is off.
pub fn value_at(lines: &[TimerLine], minute: u32) -> Option<f64> {
    let line = line_on(lines, minute / DAY)?;
    line.window
        .holds(TimeOfDay::of(minute))
        .then_some(line.value)
}

/// Adds the minutes of a day at which a window switches.
pub fn switches(window: Window, day: u32, minutes: &mut Vec<u32>) {
    if window.on != window.off {
        minutes.push(day * DAY + window.on.0);
        minutes.push(day * DAY + window.off.0);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn line(from_day: u32, on: (u32, u32), off: (u32, u32), value: f64) -> TimerLine {
        TimerLine {
            from_day,
            window: Window {
                on: TimeOfDay::at(on.0, on.1),
                off: TimeOfDay::at(off.0, off.1),
            },
            value,
        }
    }

    #[test]
    fn a_later_line_takes_over_from_its_midnight() {
        let lines = [
            line(21, (11, 30), (19, 0), 90.0),
            line(0, (11, 30), (18, 30), 60.0),
        ];
        assert_eq!(value_at(&lines, 20 * DAY + 18 * 60 + 45), None);
        assert_eq!(value_at(&lines, 21 * DAY + 18 * 60 + 45), Some(90.0));
        assert_eq!(
            value_at(&lines, 11 * 60 + 30),
            Some(60.0),
            "the instant of switching on is on"
        );
    }

    #[test]
    fn nothing_is_on_before_the_first_line() {
        assert_eq!(
            value_at(&[line(5, (0, 0), (23, 0), 1.0)], 4 * DAY + 60),
            None
        );
    }
}
