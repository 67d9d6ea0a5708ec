//! The name of a plan before its row of panels, and what it does in a few words.

use crate::analysis::compare::strategy::Strategy;
use crate::output::chart::figure::Anchor;
use crate::output::chart::fonts::Face;
use crate::output::chart::sheet::{LEFT, Sheet, bold, small};
use crate::output::chart::style::{INK, MUTED, NAME};
use crate::output::chart::words::{counted, number};

use super::grid::Grid;

/// Room for the name, pixels: up to the names of the first panel's ticks.
const ROOM: f64 = 152.0;
/// From one line to the next.
const LEADING: f64 = 16.0;
/// Lines of a name at most.
const LINES: usize = 2;

/// Writes name and calendar of a plan; without a strip of numbers its ready day too.
pub fn name(sheet: &mut Sheet, strategy: &Strategy<'_>, grid: &Grid, row: usize) {
    let mut baseline = grid.frame(row, 0).top + 9.0;
    for line in folded(&strategy.key) {
        sheet.say(vec![bold(&line, INK)], Anchor::Start, LEFT, baseline);
        baseline += LEADING;
    }
    let mut told = vec![changes(strategy)];
    if !grid.has_strip() {
        let day = strategy.curve.day_of(50);
        let day = day.map_or("later".to_string(), |day| format!("day {day}"));
        told.push(format!("50 of 100: {day}"));
    }
    for words in told {
        sheet.say(vec![small(&words, MUTED)], Anchor::Start, LEFT, baseline);
        baseline += LEADING;
    }
}

/// `24 changes, 640 L`.
fn changes(strategy: &Strategy<'_>) -> String {
    let input = &strategy.case.input;
    let changes = input
        .events
        .iter()
        .filter(|event| event.minute < input.end_minute() && event.kind.is_change());
    let litres = strategy.outcome.milestones.litres_changed;
    match changes.count() {
        0 => "no change".to_string(),
        count => format!(
            "{}, {} L",
            counted(count, "change", "changes"),
            number(litres, 0)
        ),
    }
}

/// A name in lines that fit, broken after a hyphen or a space; the last one is cut where it must be.
pub fn folded(name: &str) -> Vec<String> {
    let fits = |line: &str| Face::SemiBold.width(&Face::SemiBold.drawable(line), NAME) <= ROOM;
    let mut lines = vec![String::new()];
    for piece in name.split_inclusive(['-', ' ', '_']) {
        let last = lines.last_mut().expect("there is a line");
        if last.is_empty() || fits(&format!("{last}{piece}")) {
            last.push_str(piece);
        } else {
            lines.push(piece.to_string());
        }
    }
    if lines.len() > LINES {
        let rest = lines.split_off(LINES - 1).concat();
        lines.push(rest);
    }
    for line in &mut lines {
        let is_cut = !fits(line);
        while !fits(&format!("{line}…")) && is_cut {
            line.pop();
        }
        if is_cut {
            line.push('…');
        }
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_long_name_is_folded_at_its_hyphens_and_never_wider_than_its_room() {
        assert_eq!(folded("sixty"), ["sixty"]);
        let lines = folded("no-changes-for-two-weeks");
        assert_eq!(lines.concat(), "no-changes-for-two-weeks");
        assert_eq!(lines.len(), 2);
        let cut = folded(&"endless".repeat(12));
        assert!(cut[0].ends_with('…'), "{cut:?}");
        assert_eq!(folded(&"very-long-name-".repeat(6)).len(), LINES);
    }
}
