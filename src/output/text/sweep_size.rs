//! A grid too large to be run without being asked twice, in words.

use crate::analysis::sweep::size::Size;

/// Seconds of a minute, minutes of an hour.
const SIXTY: f64 = 60.0;

/// Why it is not run: how many runs, about how long, and what to do.
pub fn refusal(size: &Size, members: usize) -> String {
    let (points, runs) = (size.points, size.runs);
    format!(
        "error: {points} points on {members} plausible tanks each are {runs} runs, which take {}\n  \
        = help: add --yes to run them all the same, or take fewer values (the N of FROM..TO:N) or --members",
        about(size.seconds)
    )
}

/// `about 40 seconds`, `about 3 minutes`, `about 5 hours`.
fn about(seconds: f64) -> String {
    let minutes = seconds / SIXTY;
    match seconds {
        few if few < 1.5 => "about a second".to_string(),
        few if few < 1.5 * SIXTY => format!("about {few:.0} seconds"),
        _ if minutes < 1.5 * SIXTY => format!("about {minutes:.0} minutes"),
        _ => format!("about {:.0} hours", minutes / SIXTY),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn times_are_told_in_the_unit_that_people_would_use() {
        let said = [0.3, 42.0, 200.0, 40_000.0].map(about);
        let words = [
            "about a second",
            "about 42 seconds",
            "about 3 minutes",
            "about 11 hours",
        ];
        assert_eq!(said, words);
    }
}
