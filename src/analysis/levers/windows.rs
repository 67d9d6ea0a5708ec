//! Daily windows made longer or shorter at one end.

use crate::base::clock::{DAY, TimeOfDay, Window};
use crate::engine::input::TimerLine;

/// The window with so many minutes on, up to the same end.
pub fn ending_alike(window: Window, minutes: u32) -> Window {
    Window {
        on: TimeOfDay((window.off.0 + DAY - minutes) % DAY),
        off: window.off,
    }
}

/// The window with so many minutes on, from the same beginning.
pub fn beginning_alike(window: Window, minutes: u32) -> Window {
    Window {
        on: window.on,
        off: TimeOfDay((window.on.0 + minutes) % DAY),
    }
}

/// Minutes of each window moved by a step, if every window is still on for a while and off for a while.
pub fn all_fit(lines: &[TimerLine], step: i32) -> bool {
    let moved = |line: &TimerLine| line.window.minutes().checked_add_signed(step);
    let fits = |line: &TimerLine| moved(line).is_some_and(|minutes| (1..DAY).contains(&minutes));
    !lines.is_empty() && lines.iter().all(fits)
}

/// Makes every window longer by a step, or shorter where it is negative, at the end `at` keeps free.
pub fn move_all(lines: &mut [TimerLine], step: i32, at: fn(Window, u32) -> Window) {
    for line in lines {
        let minutes = line.window.minutes().saturating_add_signed(step);
        line.window = at(line.window, minutes);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_window_grows_past_midnight_at_either_end() {
        let night = Window {
            on: TimeOfDay::at(21, 0),
            off: TimeOfDay::at(7, 30),
        };
        assert_eq!(ending_alike(night, 12 * 60).on, TimeOfDay::at(19, 30));
        assert_eq!(ending_alike(night, 2 * 60).on, TimeOfDay::at(5, 30));
        let evening = Window {
            on: TimeOfDay::at(15, 0),
            off: TimeOfDay::at(23, 0),
        };
        let longer = beginning_alike(evening, 10 * 60);
        assert_eq!((longer.off, longer.minutes()), (TimeOfDay::at(1, 0), 600));
    }
}
