//! Dark hours that the air of a plan leaves out.

use crate::base::clock::{DAY, TimeOfDay, Window};
use crate::engine::input::{ModelInput, TimerLine};

/// The dark hours without air, as windows from lights-off on, by the first lines of light and air; none in a
/// tank without light, which has no night.
pub fn dark_without_air(input: &ModelInput) -> Vec<Window> {
    let first = |lines: &[TimerLine]| -> Vec<Window> {
        let day = lines.iter().map(|line| line.from_day).min();
        let lines = lines.iter().filter(|line| Some(line.from_day) == day);
        lines.map(|line| line.window).collect()
    };
    let (light, air) = (first(&input.light), first(&input.air));
    let Some(lit) = light.first() else {
        return Vec::new();
    };
    let bare = |time: TimeOfDay| !light.iter().chain(&air).any(|window| window.holds(time));
    let mut windows: Vec<Window> = Vec::new();
    for minute in 0..DAY {
        let time = |later: u32| TimeOfDay((lit.off.0 + minute + later) % DAY);
        if !bare(time(0)) {
            continue;
        }
        match windows.last_mut() {
            Some(open) if open.off == time(0) => open.off = time(1),
            _ => windows.push(Window {
                on: time(0),
                off: time(1),
            }),
        }
    }
    windows
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::analysis::example::Example;

    fn lines(windows: &[(u32, u32)]) -> Vec<TimerLine> {
        let line = |&(on, off): &(u32, u32)| TimerLine {
            from_day: 0,
            window: Window {
                on: TimeOfDay::at(on, 30),
                off: TimeOfDay::at(off, 30),
            },
            value: 1.0,
        };
        windows.iter().map(line).collect()
    }

    #[test]
    fn air_from_evening_to_early_morning_leaves_both_ends_of_the_night_out() {
        let mut input = Example::default().run().input;
        input.light = lines(&[(11, 18)]);
        input.air = lines(&[(21, 7)]);
        let told = |input: &ModelInput| -> Vec<String> {
            dark_without_air(input)
                .iter()
                .map(Window::to_string)
                .collect()
        };
        assert_eq!(told(&input), ["18:30..21:30", "07:30..11:30"]);
        input.air = lines(&[(18, 11)]);
        assert!(told(&input).is_empty());
        input.air.clear();
        assert_eq!(told(&input), ["18:30..11:30"]);
    }
}
